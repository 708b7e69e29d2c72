"""The page as a Flask app: one address, one answer."""

import json
import pickle  # only to measure: nothing is ever read back
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any
from urllib.parse import parse_qsl

from flask import Flask, Response, redirect, render_template, request
from werkzeug.datastructures import MultiDict
from werkzeug.exceptions import HTTPException

from tipsight.advice.answer import Answer
from tipsight.errors import Mistake, Mistakes, OutOfRange
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.output import briefly
from tipsight.output.json_form import json_form
from tipsight.pictures import svg
from tipsight.units import YARD_M
from webui import (
    box_page,
    day_page,
    eyes_page,
    files,
    findings,
    first_screen,
    form,
    safety,
    say,
    takeaway,
    water_icons,
    whatif,
)
from webui.asking import Asked, read
from webui.kept import Kept
from webui.own_readings import Choices, OwnReadings
from webui.reader_units import Units
from webui.writing import Writing

KEPT, KEPT_BYTES = 256, 24_000_000
"""Answers that are kept, so that going back costs nothing, and the memory that they may take."""
PAGES_BYTES = 4_000_000
"""Of whole pages that are kept as they were written: some fifty."""
BYTES_TO_ONE_PICKLED = 7
"""Memory of an answer (measured: 130 kB) to its length when pickled (19 kB); it holds no array."""
_COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten")


def _advise(question: Question) -> Answer:
    from tipsight.advice.advise import advise

    return advise(question)


def _bytes(answer: Answer) -> int:
    return BYTES_TO_ONE_PICKLED * len(pickle.dumps(answer))


def create_app(
    own: Question | None = None,
    *,
    hosts: Sequence[str] = (),
    box: Path | None = None,
    let_write: bool = False,
    who: str | None = None,
    water: str | None = None,
    advise: Callable[[Question], Answer] = _advise,
) -> Flask:
    """Return the page as an app.

    Parameters
    ----------
    own : Question, optional
        What is asked when nobody has typed anything; an invented swim if not given.
    hosts : sequence of str
        Addresses under which it may be asked, besides those of this machine alone.
    box : Path, optional
        The file in which floats and readings are kept; nothing is kept without one.
    let_write : bool
        Whether those who ask under ``hosts`` may write into it, too.
    who, water : str, optional
        Whose eyes and which of the own waters are taken where none is chosen.
    advise : callable
        What answers a question.

    Returns
    -------
    flask.Flask
        Ready to be served.

    Examples
    --------
    >>> create_app().test_client().get("/nowhere").status_code
    404
    """
    app = Flask(__name__, static_folder=None)
    writing = Writing(box, let_write)
    readings = OwnReadings(box, who, water)
    safety.guard(app, hosts)
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.jinja_env.globals.update(
        drawings=svg,
        pictures=first_screen,
        waters=water_icons,
        takeaway=takeaway,
        whatif=whatif,
        items=ITEMS,
        spaced=form.spaced,
        writing=writing,
        built=files.add(app),
    )
    start = demo.question() if own is None else own
    kept = Kept(advise, most=KEPT, most_bytes=KEPT_BYTES, size=_bytes)
    pages = Kept(_rendered, most=KEPT, most_bytes=PAGES_BYTES, size=len)

    def learned(asked: Asked) -> tuple[Asked, Question]:
        """Return what is asked with what was learned of those who ask, and its question."""
        asked = readings.learned(asked, start if asked.own else asked.question())
        return asked, replace(start, learnt=asked.learnt) if asked.own else asked.question()

    @app.get("/")
    def page() -> Response:
        asked = read(request.args, start)
        fragment = "X-Fragment" in request.headers
        if not fragment and not asked.is_short(request.args):
            return redirect(f"/?{asked.query()}", 303)  # type: ignore[return-value]
        choices = readings.choices()
        may = not asked.own or own is not None
        try:
            asked, question = learned(asked)
            answer = _answer(kept, question)
            before = None if asked.beside else _before(kept, asked)
            either = _either(kept, asked.question()) if _asks_water(answer) else ()
            beside = asked.kept_question()
            held = None if beside is None else _answer(kept, beside)
        except Mistakes as wrong:
            told = asked.retold(wrong)
            return _page(asked, choices, mistakes=told, fragment=fragment)
        noted = eyes_page.noting(asked, writing, may=may)
        make = partial(
            _page,
            asked,
            choices,
            answer=answer,
            before=before,
            earlier=_earlier(kept, learned, start),
            held=held,
            either=either,
            invented=asked.own and own is None,
            fragment=fragment,
            noted=noted,
        )
        if fragment:  # what changed hangs on what was shown before
            return make()
        whole = _Whole((asked.key, asked.own, choices, noted.may, request.host_url), [make])
        return Response(pages(whole), headers={"Vary": "X-Fragment"})

    @app.get("/advise.json")
    def as_json() -> Response:
        asked = read(request.args, start, strict=True)
        try:
            told: dict[str, Any] = json_form(_answer(kept, learned(asked)[1]))
        except Mistakes as wrong:
            listed = [
                {"item": m.item, "said": m.said, "allowed": m.allowed, "example": m.example}
                for m in wrong.mistakes
            ]
            return _json({"mistakes": listed}, 422)
        return _json(told, 200)

    def answered() -> tuple[Asked, Answer]:
        asked, question = learned(read(request.args, start))
        return asked, _answer(kept, question)

    takeaway.add(app, answered)
    box_page.add(app, writing, start, learned)
    day_page.add(app, start, learned)
    eyes_page.add(app, writing, start, readings, invented=own is None)

    @app.errorhandler(HTTPException)
    def failed(error: HTTPException) -> tuple[str, int]:
        code = error.code or 500
        return render_template("other.html", code=code, says=_SAYS.get(code, _SAYS[500])), code

    return app


_SAYS = {
    400: ("Not this address", "The page is only open under the address that it was started with."),
    403: ("Not from another site", "Another site asked for this; only the page itself may."),
    404: ("Nothing here", "There is no such page."),
    405: ("Only asking", "The page answers questions; it takes nothing else."),
    413: ("Too much", "That is more than any question needs."),
    414: ("Too long", "That address is longer than any question."),
    503: ("Too much at once", "Several pictures are being drawn already. Ask again in a minute."),
    500: ("Something broke", "The sums could not be done. Change one thing and ask again."),
}
"""What is said when there is no page."""


@dataclass(frozen=True)
class _Whole:
    """A whole page by all that it hangs on."""

    of: tuple[Hashable, ...]
    make: list[Callable[[], Response]] = field(compare=False, repr=False)
    """What writes it, taken out when it has: what is kept is to hold no answer."""


def _rendered(whole: _Whole) -> bytes:
    page: bytes = whole.make.pop()().data
    return page


def _answer(kept: Callable[[Question], Answer], question: Question) -> Answer:
    try:
        return kept(question)
    except OutOfRange as outside:
        raise Mistakes([Mistake("sums", "", str(outside), "")]) from outside


def _before(kept: Callable[[Question], Answer], asked: Asked) -> Answer | None:
    """Return the answer before the change, None where there was none."""
    try:
        earlier = asked.before()
        return None if earlier is None else _answer(kept, earlier)
    except Mistakes:
        return None


def _page(
    asked: Asked,
    choices: Choices,
    *,
    answer: Answer | None = None,
    before: Answer | None = None,
    earlier: Answer | None = None,
    held: Answer | None = None,
    either: tuple[tuple[str, Answer], ...] = (),
    mistakes: tuple[Mistake, ...] = (),
    invented: bool = False,
    fragment: bool = False,
    noted: eyes_page.Noting | None = None,
) -> Response:
    mistakes = form.in_order(mistakes)
    count = len(mistakes)
    number = _COUNTS[count] if count < len(_COUNTS) else f"{count}"
    heading = f"{number} thing{'' if count == 1 else 's'} to mend"
    body = render_template(
        "_both.html" if fragment and answer else "_mend.html" if fragment else "page.html",
        asked=asked,
        choices=choices,
        answer=answer,
        mistakes=mistakes,
        heading=heading,
        invented=invented,
        noted=noted,
        parts=() if fragment else form.fields(asked, mistakes),
        quick=() if fragment else form.quick(asked, mistakes, _range_m(answer)),
        said_of=form.said_of,
        **_told(asked, answer, before, earlier or before, held, either),
        units=asked.units,
        other_units=_other_units(asked.units),
    )
    response = Response(body, 200 if answer else 422)
    response.headers["Vary"] = "X-Fragment"
    return response


def _range_m(answer: Answer | None) -> float:
    """Return the asked distance, and where there is no answer the middle of the strips."""
    return answer.case.place.range_m if answer is not None else 35 * YARD_M


def _asks_water(answer: Answer) -> bool:
    """Return whether it was not told which water is behind the tip."""
    return any(one.item == "behind" for one in answer.assumed)


def _either(
    kept: Callable[[Question], Answer], question: Question
) -> tuple[tuple[str, Answer], ...]:
    """Return the answers on dark and on bright water."""
    words = ("dark", "bright")
    return tuple((word, _answer(kept, question.with_options(behind=word))) for word in words)


def _earlier(
    kept: Kept[Question, Answer],
    learned: Callable[[Asked], tuple[Asked, Question]],
    start: Question,
) -> Answer | None:
    """Return the answer that the page showed when a part of it was asked for, if it is kept."""
    query = request.headers.get("X-Before")
    if query is None or len(query) > safety.MOST_QUERY:
        return None
    asked = read(MultiDict(parse_qsl(query, keep_blank_values=True)), start)
    try:
        return kept.held(learned(asked)[1])
    except Mistakes:
        return None


def _told(
    asked: Asked,
    answer: Answer | None,
    before: Answer | None,
    earlier: Answer | None,
    held: Answer | None,
    either: tuple[tuple[str, Answer], ...],
) -> dict[str, object]:
    """Return what the templates say of an answer, in the page's units."""
    if answer is None:
        return {}
    reader = asked.units.reader
    return {
        "said": say.Said(answer, reader),
        "readings": findings.four(answer, reader),
        "own_eye": next(
            (one.taken for one in answer.assumed if asked.learnt.of(one.item) and one.item == "own_eye"),
            "",
        ),
        "change": briefly.changed(earlier, answer) if earlier else "",
        "beside": findings.beside(held, answer, reader) if held else (),
        "either": tuple(
            (word, one.at_the_bank.block, briefly.advised(one, reader)) for word, one in either
        ),
        "changed": findings.changed(asked, before, answer, reader) if before else (),
        "trot": findings.trot(asked, answer) if answer.case.trot else None,
    }


def _other_units(units: Units) -> tuple[tuple[str, str], ...]:
    """Return the switches of the page's units: what each says, and what it sets."""
    far, high = ("m" if units.far == "yd" else "yd"), ("m" if units.high == "ft" else "ft")
    names = {"m": "metres", "yd": "yards", "ft": "feet"}
    return (
        (f"Distances in {names[far]}", f"far={far}"),
        (f"Heights in {names[high]}", f"high={high}"),
    )


def _json(told: dict[str, Any], status: int) -> Response:
    return Response(
        json.dumps(told, indent=2, allow_nan=False) + "\n", status, mimetype="application/json"
    )
