"""``tipsight card``: cards for the lid of the box, and for the wall, as a PDF."""

import argparse

from tipsight.commands.asking import add_question, asked, with_tables
from tipsight.commands.sheet import add_paper
from tipsight.commands.writing import add_output, one_of, progress, write

CARDS = ("shotting", "bank", "wall")


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    parser.add_argument(
        "card",
        type=one_of("card", CARDS),
        metavar="CARD",
        help="shotting: which shot goes where; bank: what to show at each distance on each water; "
        "wall: marks that look from across a room as the tip does from the bank",
    )
    add_output(parser, "card.pdf")
    add_paper(parser)
    add_question(parser)


def run(given: argparse.Namespace) -> str:
    """Write the card.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.

    Returns
    -------
    str
        What was written.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended, or if it cannot be written.
    """

    def do() -> str:
        from tipsight.advice.advise import advise
        from tipsight.paper import cards, wall

        answer = advise(asked(given, f"card {given.card}").question)
        if given.card == "shotting":
            data = cards.shotting(answer, given.paper)
        elif given.card == "bank":
            data = cards.bank(answer, given.paper, progress("cells of the card"))
        else:
            data = wall.pdf(answer, given.paper)
        return write(given.out, data, "one page; print at 100 % and measure its check line")

    return with_tables(given, do)
