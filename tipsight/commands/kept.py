"""What the commands share that keep readings: the box, whose they are, and what was learned from them."""

import contextlib
from collections.abc import Iterator, Sequence
from datetime import date
from typing import TYPE_CHECKING, Any

import click

from tipsight.box import keeping, recorded
from tipsight.box.recorded import Kind, Reading
from tipsight.commands.parsing import Said
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import ME, NOBODY, Learnt, Lesson
from tipsight.inputs.quantities import Unread, length_m
from tipsight.inputs.question import Question
from tipsight.inputs.values import read
from tipsight.units import YARD_M

if TYPE_CHECKING:
    from tipsight.learning.home_water import HomeWater
    from tipsight.learning.owner import Owner
    from tipsight.learning.worked import Array, Worked

NO_BOX = (
    "no question is kept yet, as there is no box; tell it here, as you asked it, and one is begun: "
    "from then on each question is kept"
)
NOT_ASKED = "no question is kept yet: none was asked since this box was begun; tell it here, as you asked it"
NEAR_M, FAR_M = 3.0, 100.0
MOST_LETTERS = 60


def today() -> date:
    """Return the day it is here."""
    from datetime import datetime

    return datetime.now().astimezone().date()


def _day(text: str) -> date | None:
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        return None
    return day if date(1900, 1, 1) <= day <= today() else None


def _far(text: str) -> float | None:
    try:
        found = length_m(text)
    except Unread:
        return None
    return found if NEAR_M <= found <= FAR_M else None


def _name(text: str) -> str | None:
    plain = " ".join(text.split())
    return plain if 0 < len(plain) <= MOST_LETTERS and plain != NOBODY else None


DAY = Said(_day, "say a day, today or before", "2026-10-03")
FAR = Said(_far, f"say how far, with its unit, {NEAR_M / YARD_M:.1f} to {FAR_M / YARD_M:.0f} yd", "34yd")
NAME = Said(_name, f"say a name, {MOST_LETTERS} letters at the most", "me")

on_day = click.option("--date", "day", type=DAY, metavar="DAY", help="when it was; today if not told")
box_file = click.option(
    "--box", metavar="FILE", help="the file in which readings are kept; the usual place if not told"
)
whose = click.option(
    "--who", type=NAME, default=ME, metavar="NAME", help=f"whose eyes, if not {ME!r}"
)


def item(key: str, option: str) -> Said:
    """Return the reader of an item's option, which gives back the text as it was typed."""

    def as_typed(text: str) -> str | None:
        try:
            read(ITEMS[key], text)
        except Unread:
            return None
        return text

    return Said(as_typed, ITEMS[key].allows(ITEMS[key].limits), f"{option} {ITEMS[key].example}")


def keep(box: str | None, kind: Kind, whose: str, day: date | None, told: dict[str, Any]) -> int:
    """Keep a reading; return its number."""
    from tipsight.learning.owner import MODEL

    with keeping.opened(keeping.place(box), "write") as one:
        return recorded.add(one, Reading(kind, whose, day or today(), MODEL, told))


def listed(box: str | None) -> tuple[Reading, ...]:
    """Return all readings of a box; none if there is no box yet and none was named."""
    path = keeping.place(box)
    if not path.exists():
        if box is not None:
            raise Mistakes([Mistake("--box", box, "there is no such file", "--box my.box")])
        return ()
    with keeping.opened(path) as one:
        return recorded.listed(one)


def of_person(found: Sequence[Reading], who: str) -> list[Reading]:
    """Return a person's readings."""
    return [one for one in found if one.kind != "dips" and one.whose == who]


def of_water(found: Sequence[Reading], name: str) -> list[Reading]:
    """Return a water's readings."""
    return [one for one in found if one.kind == "dips" and one.whose == name]


@contextlib.contextmanager
def worked_out(box: str | None) -> Iterator["Worked"]:
    """Lend what was worked out of readings before, and keep what was added; nothing ever fails for it."""
    from collections import ChainMap

    from tipsight.box import worked_out
    from tipsight.learning.worked import HERE, sums

    path = keeping.place(box)
    before: dict[str, Array] = {}
    added: dict[str, Array] = {}
    if path.exists():
        with contextlib.suppress(Mistakes), keeping.opened(path) as one:
            before = worked_out.recalled(one, sums())
    yield ChainMap(added, before, HERE)
    if not added:
        return
    if len(HERE) > worked_out.MOST:
        HERE.clear()
    HERE.update(added)
    if path.exists():
        with contextlib.suppress(Mistakes), keeping.opened(path, "write") as one:
            worked_out.remember(one, sums(), added)


def water_of(box: str | None, name: str) -> "HomeWater":
    """Return what is known of a water from what a box has."""
    from tipsight.learning.home_water import home_water

    with worked_out(box) as worked:
        return home_water(name, of_water(listed(box), name), today(), worked)


def owner_of(box: str | None, who: str, question: Question | None = None) -> "Owner":
    """Return what is known of a person from what a box has, his age and sight as a question tells them."""
    from tipsight.learning.owner import owner

    told = question.told() if question else {}

    def number(key: str) -> float | None:
        try:
            return float(read(ITEMS[key], told[key])) if key in told else None
        except (Unread, TypeError, ValueError):
            return None  # not sure, or a mistake that the question's own reading tells

    with worked_out(box) as worked:
        return owner(
            of_person(listed(box), who),
            today(),
            name=who,
            age_years=number("age"),
            mar_arcmin=number("sight"),
            worked=worked,
        )


def learnt(
    question: Question, box: str | None, who: str | None, water: str | None
) -> Learnt:
    """Return what was learned of a person and of a water; Mistakes for a name that nobody has told."""
    found = listed(box)
    mistakes = []
    if who not in (None, NOBODY) and not of_person(found, f"{who}"):
        mistakes.append(_unknown("--who", f"{who}", found, dips=False))
    if water is not None and not of_water(found, water):
        mistakes.append(_unknown("--water", water, found, dips=True))
    if mistakes:
        raise Mistakes(mistakes)
    mine = of_person(found, who or ME)
    known = Learnt()
    if who != NOBODY and any(not one.dropped for one in mine):
        known = owner_of(box, who or ME, question).learnt
    lessons: list[Lesson] = list(known.lessons)
    if water is not None:
        lessons.append(water_of(box, water).lesson)
    return Learnt(tuple(lessons), known.own_eye_doubt)


def _unknown(option: str, name: str, found: Sequence[Reading], *, dips: bool) -> Mistake:
    names = sorted({one.whose for one in found if (one.kind == "dips") == dips})
    why = f"there are readings of {', '.join(names)}" if names else "there are no readings yet"
    return Mistake(option, name, why, f"{option} {names[0]}" if names else "")


def told_again(box: str | None) -> Question:
    """Return what was asked last; Mistakes if nothing is kept."""
    listed(box)  # a box that was named and is not there is a mistake of its own
    path = keeping.place(box)
    found, why = None, NO_BOX
    if path.exists():
        with keeping.opened(path) as one:
            found, why = recorded.asked_last(one), NOT_ASKED
    if found is None:
        raise Mistakes([Mistake("--last", "", why, "tipsight note mine.toml --went 34yd")])
    return Question().with_options(
        **{key: tuple(value) if isinstance(value, list) else value for key, value in found.items()}
    )


def keep_asked(question: Question, box: str | None) -> None:
    """Keep a question as the last one asked, where there is a box; an answer never fails for it."""
    path = keeping.place(box)
    if path.exists():
        with contextlib.suppress(Mistakes), keeping.opened(path, "write") as one:
            recorded.keep_asked(one, dict(question.told()))
