"""``tipsight card``: cards for the lid of the box, and for the wall, as a PDF."""

from typing import TYPE_CHECKING

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import Alone, one_of
from tipsight.commands.writing import output, paper_size, progress, write

if TYPE_CHECKING:
    from tipsight.paper.leaf import Paper

WHICH = (
    "shotting: which shot goes where; bank: what to show at each distance on each water; "
    "wall: marks that look from across a room as the tip does from the bank"
)


@command
@click.argument(
    "card", cls=Alone, says=WHICH, metavar="CARD", type=one_of(("shotting", "bank", "wall"))
)
@output("card.pdf")
@paper_size
def run(put: Asked, card: str, out: str, paper: "Paper") -> str:
    """Write the card, and return what was written."""
    from tipsight.advice.advise import advise
    from tipsight.paper import cards, wall

    answer = advise(put.question)
    if card == "shotting":
        data = cards.shotting(answer, paper)
    elif card == "bank":
        data = cards.bank(answer, paper, progress("cells of the card"))
    else:
        data = wall.pdf(answer, paper)
    return write(out, data, "print at 100 % and measure its check line")
