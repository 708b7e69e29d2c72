"""``tipsight box change``, ``drop`` and ``back``: nothing is overwritten, nothing is gone for good."""

from typing import Any

import click

from tipsight.box import floats
from tipsight.commands.box_shared import (
    NUMBER,
    box_option,
    to_write,
    told_by,
    told_options,
)
from tipsight.commands.kept import today
from tipsight.commands.parsing import Alone, Line, whole
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.entry import with_told
from tipsight.inputs.entry_table import HIGHEST
from tipsight.inputs.refitted import refitted

EXAMPLE = 'tipsight box change 12 "paint black, eleven of them"'


def _change(
    number: int,
    words: tuple[str, ...],
    told_wrong: bool,
    was: int | None,
    box: str | None,
    **values: Any,
) -> str:
    """Tell a float otherwise, and return what is new."""
    from tipsight.output import float_words

    with to_write(box) as one:
        before = floats.one(one, number)
        items, beside = told_by(words, values)
        also = {} if told_wrong else refitted(before.entry.told, items)
        entry = with_told(before.entry, {**items, **also}, **beside)
        if entry == before.entry:
            why = "say what is other than it was"
            raise Mistakes([Mistake("change", f"{number}", why, EXAMPLE)])
        after = floats.change(one, number, entry, today(), was=was)
    return float_words.changed(before, after, also)


def _act(numbers: tuple[int, ...], box: str | None, *, does: str) -> str:
    from tipsight.output import float_words

    if not numbers:
        raise Mistakes(
            [Mistake("float", "", "say the number of a float", f"tipsight box {does} 12")]
        )
    with to_write(box) as one:
        act = floats.drop if does == "drop" else floats.back
        found = [act(one, number, today()) for number in dict.fromkeys(numbers)]
    return float_words.acted(found)


def _drop(numbers: tuple[int, ...], box: str | None) -> str:
    """Take floats out."""
    return _act(numbers, box, does="drop")


def _back(numbers: tuple[int, ...], box: str | None) -> str:
    """Bring floats in again."""
    return _act(numbers, box, does="back")


run = click.command("change", Line, help="Tell a float otherwise; what it was stays.")(_change)
run.params += [
    Alone(["number"], "the number of the float", metavar="NUMBER", type=NUMBER),
    Alone(
        ["words"],
        "what is other than it was, told as to 'put'; an item that is 'not told' is taken back",
        metavar="[LINE]",
        nargs=-1,
        required=False,
    ),
    click.Option(
        ["--told-wrong"],
        is_flag=True,
        help="mend what was told wrongly, and nothing else; without it a new tip leaves what the "
        "float takes to the tip that it had, and a new paint has no seasons",
    ),
    click.Option(
        ["--was"],
        type=whole(1, HIGHEST, 12),
        metavar="MARK",
        help="its mark when you looked at it ('list --json' tells it); refused if it has another",
    ),
    box_option(),
    *told_options(),
]
drop = click.command("drop", Line, help="Take floats out of the box; 'back' brings them in.")(
    _drop
)
back = click.command("back", Line, help="Bring dropped floats in again, as they were.")(_back)
for line in (drop, back):
    line.params += [
        Alone(
            ["numbers"],
            "the numbers of the floats",
            metavar="NUMBER ...",
            type=NUMBER,
            nargs=-1,
            required=False,
        ),
        box_option(),
    ]
