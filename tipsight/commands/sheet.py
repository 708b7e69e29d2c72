"""``tipsight sheet``: the bench sheet, one page at true size, as a PDF."""

from typing import TYPE_CHECKING

from tipsight.commands.asking import Asked, command
from tipsight.commands.writing import output, paper_size, write

if TYPE_CHECKING:
    from tipsight.paper.leaf import Paper


@command
@output("tip.pdf")
@paper_size
def run(put: Asked, out: str, paper: "Paper") -> str:
    """Write the sheet, and return what was written."""
    from tipsight.advice.advise import advise
    from tipsight.paper import sheet

    answer = advise(put.question)
    put.keep()
    said = "one page; print at 100 % and measure its two check lines"
    return write(out, sheet.pdf(answer, paper), said)
