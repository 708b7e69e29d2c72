"""``tipsight box put``: floats into the box, told in one line."""

from typing import Any

import click

from tipsight.box import floats, keeping
from tipsight.commands.box_shared import box_option, told_by, told_options
from tipsight.commands.kept import today
from tipsight.commands.parsing import Alone, Line
from tipsight.inputs.entry import Entry, with_told


def _put(words: tuple[str, ...], box: str | None, **values: Any) -> str:
    """Put floats in, and return how they are told."""
    from tipsight.output import float_words

    items, beside = told_by(words, values)
    entry = with_told(Entry({}), items, **beside)
    with keeping.opened(keeping.place(box), "write") as one:
        twins = floats.told_like(floats.listed(one), entry)
        kept = floats.put(one, entry, today())
    return float_words.put(kept, twins)


run = click.command("put", Line, help="Put floats in, told in one line.")(_put)
run.params += [
    Alone(
        ["words"],
        "the float, its pieces between commas in any order, such as 'quill avon, 6BB, 3 mm quill "
        "20 mm fluorescent orange, twelve of them'; options stand on top of it",
        metavar="[LINE]",
        nargs=-1,
        required=False,
    ),
    box_option(),
    *told_options(),
]
