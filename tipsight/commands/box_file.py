"""``tipsight box copy`` and ``demo``: a copy of the box, and one with invented floats."""

from pathlib import Path

import click

from tipsight.box import copying, floats, keeping, taking
from tipsight.commands.box_shared import box_option, there
from tipsight.commands.kept import today
from tipsight.commands.parsing import Alone, Line
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import demo as invented
from tipsight.inputs import entry_table


def _copy(file: str, box: str | None) -> str:
    """Copy the box."""
    from tipsight.output import float_words

    copying.copy(there(box), Path(file))
    with keeping.opened(Path(file)) as one:
        return f"{file}: {float_words.how_many(floats.listed(one))}\n"


def _demo(box: str | None) -> str:
    """Fill a box that is named, and that has no floats in it."""
    from tipsight.output import float_words

    if box is None:
        why = "name a file for the invented floats, so that your own box stays your own"
        raise Mistakes([Mistake("--box", "", why, "tipsight box demo --box demo.box")])
    rows = entry_table.read(invented.box().encode()).rows
    with keeping.opened(Path(box), "write") as one:
        if floats.listed(one, dropped=True):
            why = "there are floats in it; name another file for the invented ones"
            raise Mistakes([Mistake("--box", box, why, "--box demo.box")])
        taken = taking.take_in(one, rows, today())
    return f"{box}: {float_words.how_many(taken.put)}, all invented\n"


run = click.command("copy", Line, help="Copy the box, safe while it is in use.")(_copy)
run.params += [
    Alone(["file"], "the copy; an earlier copy gives way to it", metavar="FILE"),
    box_option(),
]
demo = click.command("demo", Line, help="Fill a box with 240 invented floats.")(_demo)
demo.params += [box_option()]
