"""What all kept readings say for one question: of the person who asks, and of his water."""

import contextlib
from collections import ChainMap
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from tipsight.box import keeping, worked_out
from tipsight.box.recorded import Reading
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import ME, NOBODY, Learnt, Lesson
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question
from tipsight.inputs.values import read
from tipsight.learning import worked as of_process
from tipsight.learning.home_water import HomeWater, home_water
from tipsight.learning.owner import Owner, owner
from tipsight.learning.worked import Array, Worked


def of_person(found: Sequence[Reading], who: str) -> list[Reading]:
    """Return a person's readings."""
    return [one for one in found if one.kind != "dips" and one.whose == who]


def of_water(found: Sequence[Reading], name: str) -> list[Reading]:
    """Return a water's readings."""
    return [one for one in found if one.kind == "dips" and one.whose == name]


def named(found: Sequence[Reading], *, waters: bool) -> list[str]:
    """Return the names of the persons, or of the waters, of which there are readings."""
    return sorted({one.whose for one in found if (one.kind == "dips") == waters})


@contextlib.contextmanager
def worked_before(box: Path) -> Iterator[Worked]:
    """Lend what was worked out of readings before, and keep what was added; nothing ever fails for it."""
    before: dict[str, Array] = {}
    added: dict[str, Array] = {}
    if box.exists():
        with contextlib.suppress(Mistakes), keeping.opened(box) as one:
            before = worked_out.recalled(one, of_process.sums())
    yield ChainMap(added, before, of_process.HERE)
    if not added:
        return
    if len(of_process.HERE) > worked_out.MOST:
        of_process.HERE.clear()
    of_process.HERE.update(added)
    if box.exists():
        with contextlib.suppress(Mistakes), keeping.opened(box, "write") as one:
            worked_out.remember(one, of_process.sums(), added)


def water_of(box: Path, found: Sequence[Reading], name: str, today: date) -> HomeWater:
    """Return what is known of a water from what a box has."""
    with worked_before(box) as worked:
        return home_water(name, of_water(found, name), today, worked)


def owner_of(
    box: Path, found: Sequence[Reading], who: str, today: date, question: Question | None = None
) -> Owner:
    """Return what is known of a person from what a box has, his age and sight as a question tells them."""
    told = question.told() if question else {}

    def number(key: str) -> float | None:
        try:
            return float(read(ITEMS[key], told[key])) if key in told else None
        except (Unread, TypeError, ValueError):
            return None  # not sure, or a mistake that the question's own reading tells

    with worked_before(box) as worked:
        return owner(
            of_person(found, who),
            today,
            name=who,
            age_years=number("age"),
            mar_arcmin=number("sight"),
            worked=worked,
        )


def learnt_of(
    box: Path,
    found: Sequence[Reading],
    question: Question,
    who: str | None,
    water: str | None,
    today: date,
    names: tuple[str, str] = ("--who", "--water"),
) -> Learnt:
    """Return what was learned of a person and of a water.

    Parameters
    ----------
    box : Path
        Where what was worked out before is kept.
    found : sequence of Reading
        All that are kept in it.
    question : Question
        Whose age and sight stand before those told with the readings.
    who, water : str, optional
        By name; the one who asks, and no water, if not told.
    today : date
        Ages of readings go back from it.
    names : tuple of str
        What asks for person and water where it is asked.

    Raises
    ------
    Mistakes
        For a name of which there are no readings.
    """
    mistakes = []
    if who not in (None, NOBODY) and not of_person(found, f"{who}"):
        mistakes.append(_unknown(names[0], f"{who}", named(found, waters=False)))
    if water is not None and not of_water(found, water):
        mistakes.append(_unknown(names[1], water, named(found, waters=True)))
    if mistakes:
        raise Mistakes(mistakes)
    known = Learnt()
    if who != NOBODY and any(not one.dropped for one in of_person(found, who or ME)):
        known = owner_of(box, found, who or ME, today, question).learnt
    lessons: list[Lesson] = list(known.lessons)
    boil_doubt = None
    if water is not None:
        home = water_of(box, found, water, today)
        lessons.append(home.lesson)
        boil_doubt = home.boils.doubt
    return Learnt(tuple(lessons), known.own_eye_doubt, boil_doubt)


def _unknown(asks: str, name: str, names: Sequence[str]) -> Mistake:
    why = f"there are readings of {', '.join(names)}" if names else "there are no readings yet"
    return Mistake(asks, name, why, f"{asks} {names[0]}" if names else "")
