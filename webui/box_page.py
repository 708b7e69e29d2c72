"""Your floats on the page: searched, put in, changed, dropped and brought back."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date, datetime
from sqlite3 import Connection
from types import MappingProxyType
from typing import Any
from urllib.parse import urlencode

from flask import Flask, Response, redirect, render_template, request
from werkzeug.datastructures import MultiDict

from tipsight.box import floats, keeping
from tipsight.box.floats import Kept, Stale
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import in_a_line
from tipsight.inputs.entry import OF_FLOAT, Entry, sought_words
from tipsight.inputs.items import ITEMS
from tipsight.inputs.quantities import Unread, length_mm
from tipsight.inputs.question import Question
from tipsight.inputs.refitted import retold
from tipsight.inputs.settle_float import shot_mass_g
from tipsight.inputs.values import read as read_item
from tipsight.output import float_words
from webui.asking import Asked, read, typed_of
from webui.writing import Writing

NOTHING: Mapping[str, int] = MappingProxyType({})
MOST_SHOWN = 40
"""Floats on one page; the rest by a tap."""
MOST_TYPED = 5000
OWN = ("find", "kind", "sort", "from", "float")
"""What of an address is the list's own; the rest is the question."""
MOST_RANKED = 200
"""Floats among which the best for a swim is looked for at once; two seconds of one core (measured)."""
HERE, DOES = "here", "does"
SORTS = {
    HERE: "the best for this swim first",
    DOES: "only those that do for this swim",
    **{"number": "by number", "pattern": "by pattern", "load": "by load"},
    "fished": "longest unfished first",
}
"""How the list can be sorted, and what that is called."""


@dataclass(frozen=True)
class Sought:
    """Which floats are looked for, and in which order."""

    find: str = ""
    kind: str = ""
    """A pattern; all where empty."""
    sort: str = "number"
    first: int = 0

    @classmethod
    def told(cls, args: MultiDict[str, str]) -> "Sought":
        """Return what an address looks for; what it does not know is left out."""
        # a button says the order behind what the list of orders says
        text, sort = args.get("from", ""), next(reversed(args.getlist("sort")), "")
        first = int(text) if text.isascii() and text.isdecimal() and len(text) < 6 else 0
        return cls(
            args.get("find", "")[:200],
            args.get("kind", "")[:60],
            sort if sort in SORTS else "number",
            first,
        )

    def among(self, found: Sequence[Kept]) -> tuple[Kept, ...]:
        """Return those that are looked for, in order."""
        words = sought_words(self.find)
        kept = [
            one
            for one in found
            if self.kind in ("", one.entry.told.get("pattern"))
            and all(word in float_words.called(one).casefold() for word in words)
        ]
        return tuple(sorted(kept, key=self._order))

    def _order(self, one: Kept) -> tuple[Any, ...]:
        told = one.entry.told
        if self.sort == "load":
            return _load(told), one.number
        by = {"pattern": told.get("pattern", ""), "fished": one.entry.fished}
        return by.get(self.sort, ""), one.number

    def args(self, other: Mapping[str, int] = NOTHING) -> list[tuple[str, Any]]:
        """Return its part of an address, with some of it told otherwise."""
        told = {"find": self.find, "kind": self.kind, "sort": self.sort, "from": self.first}
        usual = {"find": "", "kind": "", "sort": "number", "from": 0}
        return [(key, value) for key, value in (told | dict(other)).items() if value != usual.get(key)]


def _load(told: Mapping[str, Any]) -> tuple[bool, float]:
    """Return by what floats are put in order of load: what each takes [g], then the sizes of the rest."""
    if told.get("takes"):
        takes = read_item(ITEMS["takes"], told["takes"])
        masses = shot_mass_g({})
        return False, takes if isinstance(takes, float) else sum(n * masses[name] for name, n in takes)
    try:
        return True, length_mm(told.get("size", ""))
    except Unread:  # told by its parts, or by a size of own tables
        return True, math.inf


@dataclass(frozen=True)
class Typed:
    """A form that could not be taken: what was typed, why, and what it stands beside."""

    line: str = ""
    mistakes: tuple[Mistake, ...] = ()
    number: int = 0
    """The float that was to be changed; 0 for one that was to be put in."""
    there: Kept | None = None
    """As it is by now, where somebody changed it meanwhile."""


def add(
    app: Flask,
    writing: Writing,
    start: Question,
    learned: Callable[[Asked], tuple[Asked, Question]],
) -> None:
    """Add the box to an app; ``start`` is what is asked where an address asks nothing.

    ``learned`` says what is asked with what was learned of those who ask.
    """

    def shown(
        typed: Typed | None = None, status: int = 200, mistakes: tuple[Mistake, ...] = ()
    ) -> Response:
        asked, sought = _asked(start), Sought.told(request.values)
        found: tuple[Kept, ...] = ()
        head, lines = "", dict[int, str]()
        try:
            found = _listed(writing)
        except Mistakes as wrong:
            mistakes, status = wrong.mistakes, 422
        here = [kept for kept in found if not kept.dropped]
        those = sought.among(here)
        if sought.sort in (HERE, DOES) and those:
            try:
                asked, question = learned(asked)
                those, head, lines = _ranked(question, those, asked, only=sought.sort == DOES)
            except Mistakes as wrong:
                mistakes, status = wrong.mistakes, 422
        body = render_template(
            "box.html",
            asked=asked,
            sought=sought,
            sorts=SORTS,
            floats=those,
            head=head,
            lines=lines,
            many=float_words.how_many(here),
            dropped=[kept for kept in found if kept.dropped],
            patterns=sorted({kept.entry.told.get("pattern", "") for kept in here}),
            words=float_words,
            most=MOST_SHOWN,
            typed=typed or Typed(),
            mistakes=mistakes,
            did=_did(found),
            writing=writing,
            example=in_a_line.EXAMPLE,
            query=asked.tail,
            link=lambda *what: _address(asked, sought, *what),
            with_float=lambda kept: asked.link(_typed_float(kept)),
        )
        return Response(body, status)

    def written(number: int, write: Callable[[Connection, date], Kept]) -> Response:
        """Do one thing to the box, and go back to the list; nothing typed is lost if it fails."""
        path, line = writing.checked(), request.form.get("line", "")[:MOST_TYPED]
        if not writing.fresh:
            why = "this page was started anew meanwhile; send it once more"
            return shown(Typed(line, (Mistake("form", "", why, ""),), number), 409)
        try:
            with keeping.opened(path, "write") as box:
                kept = write(box, datetime.now().astimezone().date())
        except Stale as stale:
            return shown(Typed(line, stale.mistakes, number, stale.there), 409)
        except Mistakes as wrong:
            return shown(Typed(line, wrong.mistakes, number), 422)
        asked, sought = _asked(start), Sought.told(request.values)
        address = _address(asked, sought, {"float": kept.number})
        return redirect(f"{address}#f{kept.number}", 303)  # type: ignore[return-value]

    def put() -> Response:
        return written(0, lambda box, on: floats.put(box, _told(Entry({})), on))

    def change(number: int) -> Response:
        def write(box: Connection, on: date) -> Kept:
            before = floats.one(box, number)
            entry = _told(before.entry)
            if entry == before.entry:
                raise Mistakes([Mistake("line", "", "say what is other than it was", "paint black")])
            return floats.change(box, number, entry, on, was=_mark())

        return written(number, write)

    def drop(number: int) -> Response:
        return written(number, lambda box, on: floats.drop(box, number, on, was=_mark()))

    def back(number: int) -> Response:
        return written(number, lambda box, on: floats.back(box, number, on, was=_mark()))

    def alone(number: int) -> Response:
        try:
            with _open(writing) as box:
                states = floats.history(box, number)
        except Mistakes as wrong:
            return shown(None, 422, wrong.mistakes)
        asked, sought = _asked(start), Sought.told(request.values)
        text = float_words.shown(states)
        body = render_template("float.html", text=text, now=states[-1], back=_address(asked, sought))
        return Response(body)

    def cards() -> Response:
        from tipsight.paper import cards
        from tipsight.season.swims import Fished

        asked, sought = _asked(start), Sought.told(request.values)
        try:
            here = [one for one in _listed(writing) if not one.dropped]
            those = sought.among(here)[sought.first : sought.first + MOST_SHOWN]
            swim = Fished("", 1.0, learned(asked)[1])
            data = cards.of_floats([swim.with_float(one.question()) for one in those])
        except Mistakes as wrong:
            return shown(None, 422, wrong.mistakes)
        return Response(data, mimetype="application/pdf")

    app.add_url_rule("/box", "box", shown)
    app.add_url_rule("/box/cards.pdf", "cards", cards)
    app.add_url_rule("/box/<int:number>", "float", alone)
    app.add_url_rule("/box/put", "put", put, methods=["POST"])
    for name, view in {"change": change, "drop": drop, "back": back}.items():
        app.add_url_rule(f"/box/<int:number>/{name}", name, view, methods=["POST"])


def _ranked(
    question: Question, kept: Sequence[Kept], asked: Asked, *, only: bool
) -> tuple[tuple[Kept, ...], str, dict[int, str]]:
    """Return floats, the best for a swim first, a sentence on all, and a line on each by its number.

    ``only`` those that would do, with something done at the bank or without.
    """
    from tipsight.output import rank_words
    from tipsight.season.ranking import rank
    from tipsight.season.served import kinds_of

    questions = [one.question() for one in kept]
    if (kinds := len(kinds_of(questions)[0])) > MOST_RANKED:
        why = f"{kinds} kinds of float are too many at once; look for some words, or for one pattern"
        raise Mistakes([Mistake("sort", "", why, "avon")])
    found = rank(question, questions)
    reader = asked.units.reader
    told = [one for one in found.floats if one.trouble is not None or not only]
    lines = {kept[one.float_].number: rank_words.line(one, found, reader) for one in told}
    return tuple(kept[one.float_] for one in told), rank_words.head(found, reader), lines


@contextmanager
def _open(writing: Writing) -> Iterator[Connection]:
    if writing.box is None:
        raise Mistakes([Mistake("box", "", "this page was started without one", "tipsight page")])
    with keeping.opened(writing.box) as box:
        yield box


def _listed(writing: Writing) -> tuple[Kept, ...]:
    """Return all floats, dropped ones too; none of a box that is not there yet."""
    if writing.box is None or not writing.box.exists():
        return ()
    with _open(writing) as box:
        return floats.listed(box, dropped=True)


def _asked(start: Question) -> Asked:
    args = MultiDict((k, v) for k, v in request.args.items(multi=True) if k not in OWN)
    return read(args, start)


def _address(
    asked: Asked, sought: Sought, other: Mapping[str, int] = NOTHING, of: str = "/box"
) -> str:
    """Return the address of the list, or of its cards, with some of what is sought told otherwise."""
    pairs = sought.args(other)
    both = "&".join(part for part in (asked.tail, urlencode(pairs)) if part)
    return f"{of}?{both}" if both else of


def _told(base: Entry) -> Entry:
    found = in_a_line.read(request.form.get("line", "")[:MOST_TYPED])
    return retold(base, found.told, **found.also)


def _mark() -> int | None:
    text = request.form.get("was", "")
    return int(text) if text.isascii() and text.isdecimal() and len(text) < 10 else None


def _did(found: Sequence[Kept]) -> Kept | None:
    """Return the float to which something was just done, if the address tells of one."""
    number = request.args.get("float", "")
    return next((one for one in found if f"{one.number}" == number), None)


def _typed_float(one: Kept) -> dict[str, str]:
    """Return what a float sets in the question, whatever float it told of before."""
    typed = typed_of(one.question())
    return {key: "".join(typed.get(key, ())) for key in OF_FLOAT}
