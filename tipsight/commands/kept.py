"""What the commands share that keep readings: the box, whose they are, and what was learned from them."""

import contextlib
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING, Any

import click

from tipsight.box import keeping, recorded
from tipsight.box.recorded import Kind, Reading
from tipsight.commands.parsing import Said
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import saw
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import ME, Learnt
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question
from tipsight.inputs.values import read

if TYPE_CHECKING:
    from tipsight.learning.home_water import HomeWater
    from tipsight.learning.owner import Owner
    from tipsight.season.swims import Fished

NO_BOX = (
    "no question is kept yet, as there is no box; tell it here, as you asked it, and one is begun: "
    "from then on each question is kept"
)
NOT_ASKED = "no question is kept yet: none was asked since this box was begun; tell it here, as you asked it"
today = saw.today
DAY, FAR, NAME = (Said(one.read, one.allowed, one.example) for one in (saw.DAY, saw.FAR, saw.NAME))

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


def water_of(box: str | None, name: str) -> "HomeWater":
    """Return what is known of a water from what a box has."""
    from tipsight.learning import known

    return known.water_of(keeping.place(box), listed(box), name, today())


def owner_of(box: str | None, who: str) -> "Owner":
    """Return what is known of a person from what a box has."""
    from tipsight.learning import known

    return known.owner_of(keeping.place(box), listed(box), who, today())


def learnt(
    question: Question, box: str | None, who: str | None, water: str | None
) -> Learnt:
    """Return what was learned of a person and of a water; Mistakes for a name that nobody has told."""
    from tipsight.learning import known

    return known.learnt_of(keeping.place(box), listed(box), question, who, water, today())


def fished_by(swims: Sequence["Fished"], box: str | None, who: str | None) -> list["Fished"]:
    """Return swims with what was learned of who fishes them, for the age and sight that each tells."""
    known: dict[tuple[str, ...], Learnt] = {}
    found = []
    for one in swims:
        told = one.question.told()
        eyes = tuple(f"{told.get(key)}" for key in ("age", "sight"))
        if eyes not in known:
            known[eyes] = learnt(one.question, box, who, None)
        found.append(replace(one, question=replace(one.question, learnt=known[eyes])))
    return found


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
