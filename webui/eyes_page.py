"""Your own eyes on the page: a fence card told, a tap on where the tip went, and all that is kept."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from sqlite3 import Connection
from typing import Any

from flask import Flask, Response, redirect, render_template, request
from werkzeug.datastructures import MultiDict

from tipsight.box import keeping, recorded
from tipsight.box.recorded import Reading
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import saw
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import NOBODY
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.inputs.values import read as read_item
from tipsight.output import eyes_words
from webui.asking import Asked, read
from webui.own_readings import OwnReadings
from webui.writing import Writing

OUT, BACK = tuple(f"out{n}" for n in range(1, 7)), tuple(f"back{n}" for n in range(1, 7))
FIELDS = {
    "pace": ("How long is one of your paces?", "0.85 m", "Such as {}; yard if you took it for one. "
             "Leave it empty if you taped, and say each with its unit."),
    "age": ("How old are you?", "60", "Such as {}. Told once is enough."),
    "sight": ("How sharp is your sight?", "6/9", "Such as {}, with the glasses that you fish in. Told "
              "once is enough."),
    "squares": ("How far off were the two squares still two?", "9 m", "Such as {}, if you tried it; it "
                "then stands for your sharpness."),
    "ruler": ("How long did the ruler of 100 mm come out?", "96 mm", "Such as {}; leave it empty if it "
              "is right."),
    "who": ("Whose eyes?", "me", "A name, if not yours."),
    "day": ("When was it?", "2026-10-03", "Such as {}; leave it empty for today."),
}  # fmt: skip
"""Fields of a card besides its bars: what is asked, an example, and what is said of it."""
SAW = {
    "went": "It went here",
    "followed": "I followed it",
    "not seen": "Not seen",
}
MOST_TYPED = 60
OWN = ("reading",)


@dataclass(frozen=True)
class Sent:
    """A form that could not be taken: what was typed, and what is wrong, by field."""

    form: str = ""
    """Which: ``card`` or ``note``, or nothing."""
    typed: Mapping[str, str] = field(default_factory=dict)
    wrong: tuple[Mistake, ...] = ()
    fields: frozenset[str] = frozenset((*OUT, *BACK, *FIELDS, "far"))

    def of(self, name: str) -> str:
        """Return what was typed into a field."""
        return self.typed.get(name, "")

    def mistakes(self, name: str) -> tuple[Mistake, ...]:
        """Return what is wrong with a field; of no name, what belongs to none."""
        return tuple(
            one
            for one in self.wrong
            if one.item == name or (not name and one.item not in self.fields)
        )


def add(app: Flask, writing: Writing, start: Question, own: OwnReadings, invented: bool) -> None:
    """Add the eyes to an app; of an invented swim no note is kept."""

    def asked_now() -> Asked:
        args = MultiDict((k, v) for k, v in request.args.items(multi=True) if k not in OWN)
        return read(args, start)

    def shown(sent: Sent | None = None, status: int = 200) -> Response:
        from tipsight.pictures import bars_said

        asked, sent = asked_now(), sent or Sent()
        wrong: tuple[Mistake, ...] = ()
        found: tuple[Reading, ...] = ()
        try:
            found = own.listed()
        except Mistakes as mistaken:
            wrong, status = mistaken.mistakes, 422
        who = own.whose(asked)
        one = own.owner(found, who)
        reader = asked.units.reader
        did = _did(found)
        words = ""
        if did is not None:
            without = [each for each in found if each.number != did.number]
            before, now = (own.owner(each, did.whose) for each in (without, found))
            words = eyes_words.known(now) if did.dropped else eyes_words.did(before, now)
        body = render_template(
            "eyes.html",
            asked=asked,
            at=asked.address,
            sent=sent,
            wrong=wrong,
            who=who,
            owner=one,
            heading=eyes_words.known(one),
            narrower=eyes_words.narrower(one),
            cards=[
                (card, each, bars_said.drawing(each, one.belief.factor, reader), eyes_words.odd(each))
                for card, each in one.cards
            ],
            misfits={note.number: eyes_words.misfit(note) for note in one.notes},
            mine=[each for each in found if each.kind != "dips" and each.whose == who],
            told=lambda each: eyes_words.of_reading(each, reader),
            did=did,
            did_words=words,
            people=own.choices().people,
            fields=FIELDS,
            saw=SAW,
            out=OUT,
            back=BACK,
            noting=not (asked.own and invented) and who != NOBODY,
            far=far_of(asked),
            writing=writing,
        )
        return Response(body, status)

    def written(form: str, write: Callable[[Asked], Callable[[Connection], int]]) -> Response:
        """Keep one thing, and go on to what it did; nothing typed is lost if it cannot be kept."""
        path = writing.checked()
        typed = {key: text[:MOST_TYPED] for key, text in request.form.items() if key != "token"}
        if not writing.fresh:
            why = "this page was started anew meanwhile; send it once more"
            return shown(Sent(form, typed, (Mistake("form", "", why, ""),)), 409)
        try:
            asked = asked_now()
            keep = write(asked)
            with keeping.opened(path, "write") as box:
                number = keep(box)
                whose = next(one.whose for one in recorded.listed(box) if one.number == number)
        except Mistakes as wrong:
            return shown(Sent(form, typed, wrong.mistakes), 422)
        mine = "" if whose == own.whose(asked) else whose
        there = (replace(asked, who=mine) if mine else asked).address
        return redirect(f"/eyes{there}{'&' if there else '?'}reading={number}", 303)  # type: ignore[return-value]

    def card() -> Response:
        return written("card", lambda asked: _keep("card", *_card()))

    def note() -> Response:
        def write(asked: Asked) -> Callable[[Connection], int]:
            question = start if asked.own else asked.question()
            if asked.own and invented:
                why = "this is an invented swim; tell your own, then note what you saw"
                raise Mistakes([Mistake("form", "", why, "")])
            settle(question)  # a note that cannot be answered is not kept
            text = asked.units.spoken(ITEMS["distance"], request.form.get("far", ""))
            went = request.form.get("saw", "")
            far_m = saw.FAR.told("far", text[:MOST_TYPED])
            if went not in SAW:
                raise Mistakes([Mistake("form", "", "say whether it went there", "")])
            told = dict(question.told())
            also: dict[str, Any] = {key: told[key] for key in ("age", "sight") if key in told}
            return _keep(
                "note",
                {"saw": went, "range_m": far_m, **also, "question": told},
                own.whose(asked),
                saw.today(),
            )

        return written("note", write)

    def acted(number: int, what: Any) -> Response:
        def keep(box: Connection) -> int:
            return recorded.act(box, number, what, saw.today()).number

        return written("act", lambda asked: keep)

    app.add_url_rule("/eyes", "eyes", shown)
    app.add_url_rule("/eyes/card", "eyes_card", card, methods=["POST"])
    app.add_url_rule("/eyes/note", "eyes_note", note, methods=["POST"])
    for name in ("drop", "back"):
        app.add_url_rule(
            f"/eyes/<int:number>/{name}",
            f"eyes_{name}",
            lambda number, name=name: acted(number, name),
            methods=["POST"],
        )


@dataclass(frozen=True)
class Noting:
    """What the page needs to keep a note of an answer."""

    at: str
    far: str
    may: bool
    saw: Mapping[str, str] = field(default_factory=lambda: SAW)


def noting(asked: Asked, writing: Writing, *, may: bool) -> Noting:
    """Return how an answer is noted; ``may`` of one's own swim alone."""
    return Noting(asked.address, far_of(asked), may and writing.allowed and asked.who != NOBODY)


def far_of(asked: Asked) -> str:
    """Return the asked distance as it was told, nothing where it was not."""
    return "".join(asked.typed.get("distance", ())[:1])


def _keep(kind: Any, told: dict[str, Any], who: str, on: Any) -> Callable[[Connection], int]:
    from tipsight.learning.owner import MODEL

    return lambda box: recorded.add(box, Reading(kind, who, on, MODEL, told))


def _did(found: Sequence[Reading]) -> Reading | None:
    """Return the reading to which something was just done, if the address tells of one."""
    number = request.args.get("reading", "")
    return next((one for one in found if f"{one.number}" == number and one.kind != "dips"), None)


def _card() -> tuple[dict[str, Any], str, Any]:
    """Return a card as it was typed, or Mistakes by field."""
    typed = {key: request.form.get(key, "").strip()[:MOST_TYPED] for key in (*OUT, *BACK, *FIELDS)}
    wrong: list[Mistake] = []

    def told(name: str, reads: saw.Reads[Any], otherwise: Any) -> Any:
        if not typed[name]:
            return otherwise
        try:
            return reads.told(name, typed[name])
        except Mistakes as mistaken:
            wrong.extend(mistaken.mistakes)
            return otherwise

    text = typed["pace"]
    typed["pace"] = saw.in_metres(text)
    pace = told("pace", saw.PACE, None)
    squares = told("squares", saw.SQUARES, None)
    ruler = told("ruler", saw.RULER, 100.0)
    who, on = told("who", saw.NAME, "me"), told("day", saw.DAY, saw.today())
    also = {"squares_m": squares} | {key: typed[key] or None for key in ("age", "sight")}
    for key in ("age", "sight"):
        try:
            if typed[key]:
                read_item(ITEMS[key], typed[key])
        except Unread:
            item = ITEMS[key]
            wrong.append(Mistake(key, typed[key], item.allows(item.limits), item.example))
    back = BACK if any(typed[key] for key in BACK) else ()
    seen = [typed[key] or saw.MISSED for key in (*OUT, *back)]
    counts: dict[str, Any] = {}
    paceless = bool(text) and pace is None
    try:
        counts = saw.card(seen, ("measured", 0.85) if paceless else pace)
    except Mistakes as mistaken:
        names = {f"bar {n + 1}": key for n, key in enumerate(OUT)}
        names |= {f"bar {n + 1} back": key for n, key in enumerate(BACK)}
        wrong += [
            replace(one, item=names[one.item])
            if one.item in names
            else Mistake("form", "", one.allowed, "")
            for one in mistaken.mistakes
        ]
    if wrong:
        raise Mistakes(wrong)
    return {**counts, "ruler_mm": ruler, **{k: v for k, v in also.items() if v is not None}}, who, on
