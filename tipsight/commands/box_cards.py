"""``tipsight box cards``: a shotting card for each float of the box, four on a page."""

from typing import TYPE_CHECKING

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.box_shared import floats_in
from tipsight.commands.writing import output, paper_size, progress, write
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.entry import sought_words

if TYPE_CHECKING:
    from tipsight.paper.leaf import Paper


@command
@click.option(
    "--find",
    default="",
    metavar="WORDS",
    help="only floats in whose line all of these words stand, such as 'avon tray'",
)
@output("cards.pdf")
@paper_size
def run(put: Asked, find: str, out: str, paper: "Paper") -> str:
    """Write a shotting card for each of your floats as it is, for the water of a question."""
    from tipsight.output import float_words
    from tipsight.paper import cards
    from tipsight.season.swims import Fished

    words = sought_words(find)
    kept = [
        one
        for one in floats_in(put.box)
        if all(word in float_words.called(one).casefold() for word in words)
    ]
    if not kept:
        why = "no float has all of these words" if words else "there is no float in the box yet"
        raise Mistakes([Mistake("--find", find, why, "--find avon")])
    swim = Fished("", 1.0, put.question)
    data = cards.of_floats(
        [swim.with_float(one.question()) for one in kept], paper, progress("cards made")
    )
    sheets = -(-len(kept) // len(cards.PLACES))
    pages = "one page" if sheets == 1 else f"{sheets} pages"
    return write(out, data, f"{len(kept)} cards on {pages}; print at 100 % and measure the check line")
