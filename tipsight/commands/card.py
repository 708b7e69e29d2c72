"""``tipsight card``: cards for the lid of the box, the wall and the fence, as a PDF."""

from typing import TYPE_CHECKING

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import Alone, one_of
from tipsight.commands.writing import output, paper_size, progress, write

if TYPE_CHECKING:
    from tipsight.paper.leaf import Paper

WHICH = (
    "shotting: which shot goes where; bank: what to show at each distance on each water; "
    "wall: marks that look from across a room as the tip does from the bank; "
    "fence: six bars to walk away from, by which your own eyes are learned"
)


@command
@click.argument(
    "card", cls=Alone, says=WHICH, metavar="CARD", type=one_of(("shotting", "bank", "wall", "fence"))
)
@output("card.pdf")
@paper_size
def run(put: Asked, card: str, out: str, paper: "Paper") -> str:
    """Write the card, and return what was written."""
    if card == "fence":
        from tipsight.paper import fence

        said = "four pages; print at 100 %, measure the ruler of page 2, pin up page 1"
        return write(out, fence.pdf(paper), said)
    from tipsight.advice.advise import advise
    from tipsight.paper import cards, wall

    answer = advise(put.question)
    if card == "shotting":
        data = cards.shotting(answer, paper)
    elif card == "bank":
        data = cards.bank(answer, paper, progress("cells of the card"))
    else:
        data = wall.pdf(answer, paper)
    put.keep()
    return write(out, data, "print at 100 % and measure its check line")
