"""``tipsight sheet``: the bench sheet, one page at true size, as a PDF."""

import argparse

from tipsight.commands.asking import add_question, asked, with_tables
from tipsight.commands.writing import add_output, one_of, write

PAPERS = ("a4", "letter")


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    add_output(parser, "tip.pdf")
    add_paper(parser)
    add_question(parser)


def add_paper(parser: argparse.ArgumentParser) -> None:
    """Add the size of paper.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    parser.add_argument(
        "--paper", type=one_of("paper", PAPERS), default="a4", metavar="SIZE", help="a4 or letter"
    )


def run(given: argparse.Namespace) -> str:
    """Write the sheet.

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
        from tipsight.paper import sheet

        answer = advise(asked(given, "sheet").question)
        said = "one page; print at 100 % and measure its two check lines"
        return write(given.out, sheet.pdf(answer, given.paper), said)

    return with_tables(given, do)
