"""The day on the page: the light by the quarter of an hour, which tip to have on when, drawn and said."""

import threading
import time
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, tzinfo
from datetime import time as clock_time
from typing import Any

from flask import Flask, Response, render_template, request
from werkzeug.datastructures import MultiDict

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.clock import compass_deg, day_and_zone, spot, time_of_day
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question
from tipsight.inputs.saw import Reads, today
from tipsight.inputs.settle import settle
from webui.asking import Asked, read
from webui.eyes_page import Sent
from webui.kept import Kept
from webui.reader_units import Units

KEPT, KEPT_BYTES = 16, 4_000_000
"""Days that are kept, so that looking again costs nothing; all of them [bytes]."""
MOST_S = 20.0
"""One day takes about four seconds; a swim of many waters that would hold the machine longer is refused."""
QUARTER_PX = 9.0
OWN = ("day", "place", "facing", "from", "to")
MOST_TYPED = 80


def _reads(reader: Any, allowed: str, example: str) -> Reads[Any]:
    def read(text: str) -> Any:
        try:
            return reader(text)
        except Unread:
            return None

    return Reads(read, allowed, example)


FIELDS = {
    "day": ("Which day?", _reads(day_and_zone, "say a day, and the zone if it is not this computer's",
            "2026-10-15 Europe/London"), "Such as {}; today if left empty."),
    "place": ("Where on earth?", _reads(spot, "say latitude and longitude in degrees", "52.1 N 1.5 W"),
              "Such as {}."),
    "facing": ("Which way do you look, from you to the float?", _reads(compass_deg, "say a point of the "
               "compass, or degrees from north", "south-west"), "Such as {}."),
    "from": ("From when?", _reads(time_of_day, "say a time of day", "12:00"), "Such as {}; first light if "
             "left empty."),
    "to": ("Until when?", _reads(time_of_day, "say a time of day", "17:30"), "Such as {}; the last of "
           "dusk if left empty."),
}  # fmt: skip
"""What is asked, how it is read, and what is said of it."""


@dataclass(frozen=True)
class Day:
    """Which day is asked, and of which swim."""

    question: Question
    day: tuple[date, tzinfo | None]
    place: tuple[float, float]
    looking_deg: float
    hours: tuple[clock_time | None, clock_time | None]
    units: Units


@dataclass(frozen=True)
class Shown:
    """A day as it is shown."""

    drawing: str
    said: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]
    """Each sky with its labelled sentences."""

    @property
    def size(self) -> int:
        """About its memory [bytes]."""
        return 2 * (len(self.drawing) + len(f"{self.said}"))


class Busy(Exception):  # noqa: N818 - reads as what it is
    """Another day is being worked out."""


_ONE = threading.Lock()


def _worked_out(asked: Day) -> Shown:
    """Work a day out; never two at a time, and none for long, so that answers do not wait."""
    from tipsight.hours.skies import under_skies
    from tipsight.output import course_words
    from tipsight.output.measures import sentence
    from tipsight.pictures import course_strip

    until = time.monotonic() + MOST_S

    def tell(done: int, of: int) -> None:
        if time.monotonic() > until:
            why = "this swim takes too long here: ask for fewer hours, or by tipsight day"
            raise Mistakes([Mistake("from", "", why, "")])

    if not _ONE.acquire(blocking=False):
        raise Busy
    try:
        found = under_skies(
            asked.question, asked.day, asked.place, asked.looking_deg, asked.hours, tell
        )
    finally:
        _ONE.release()
    reader = asked.units.reader
    picture = course_strip.drawing(found, QUARTER_PX)
    said = tuple(
        (sky, tuple((label, sentence(words)) for label, words in course_words.said(sky, one, reader)))
        for sky, one in found
    )
    return Shown(picture.alone(), said)


def add(app: Flask, start: Question, learned: Any) -> None:
    """Add the day to an app; ``learned`` says what is asked with what was learned of those who ask."""
    kept = Kept(_worked_out, most=KEPT, most_bytes=KEPT_BYTES, size=lambda one: one.size)

    def shown() -> Response:
        args = MultiDict((k, v) for k, v in request.args.items(multi=True) if k not in OWN)
        asked: Asked = read(args, start)
        typed = {key: request.args.get(key, "").strip()[:MOST_TYPED] for key in OWN}
        typed["place"] = typed["place"] or "".join(asked.typed.get("at", ()))
        typed["facing"] = typed["facing"] or "".join(asked.typed.get("looking", ()))
        wrong: tuple[Mistake, ...] = ()
        day: Shown | None = None
        status = 200
        if request.args.get("day") is not None:
            try:
                asked, question = learned(asked)
                day = kept(_asked(question, typed, asked.units))
            except Mistakes as mistaken:
                wrong, status = mistaken.mistakes, 422
            except Busy:
                why = "another day is being worked out; ask again in a few seconds"
                wrong, status = (Mistake("busy", "", why, ""),), 503
        body = render_template(
            "day.html",
            asked=asked,
            at=asked.address,
            typed=typed,
            ask=Sent("day", typed, tuple(map(_at_field, wrong)), frozenset(OWN)),
            fields=FIELDS,
            day=day,
        )
        return Response(body, status)

    app.add_url_rule("/day", "day", shown)


def _at_field(one: Mistake) -> Mistake:
    """Return a mistake at the field that asked: the end of a day is told as the command names it."""
    return Mistake("to", one.said, one.allowed, one.example) if one.item == "--to" else one


def _asked(question: Question, typed: Mapping[str, str], units: Units) -> Day:
    settle(question)
    found: dict[str, Any] = {}
    wrong: list[Mistake] = []
    for key, (_, reads, _) in FIELDS.items():
        if not typed[key] and key not in ("place", "facing"):
            found[key] = (today(), None) if key == "day" else None
            continue
        try:
            found[key] = reads.told(key, typed[key])
        except Mistakes as mistaken:
            wrong += mistaken.mistakes
    if wrong:
        raise Mistakes(wrong)
    hours = (found["from"], found["to"])
    return Day(question, found["day"], found["place"], found["facing"], hours, units)
