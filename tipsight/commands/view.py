"""``tipsight view``: the view from the bank as a PNG, or a drawing as SVG."""

import argparse

from tipsight.commands.asking import add_question, asked, with_tables
from tipsight.commands.writing import one_of, write

EYES = ("good", "told")
DRAWINGS = ("tip", "float", "shot", "sunk")


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    parser.add_argument(
        "-o", "--out", metavar="FILE", help="the file to write; view.png or view.svg if not told"
    )
    parser.add_argument(
        "--eyes",
        type=one_of("eyes", EYES),
        default="good",
        metavar="WHOSE",
        help="good: young eyes of full colour; told: the eyes of the question, their age, "
        "sight and colour vision",
    )
    parser.add_argument(
        "--svg",
        type=one_of("svg", DRAWINGS),
        metavar="DRAWING",
        help="a drawing in place of the view: tip, float, shot (to each band) or sunk "
        "(what is seen against what sinks it)",
    )
    parser.add_argument(
        "--ripple", type=int, default=0, metavar="NUMBER", help="another of the many ripples; 0"
    )
    add_question(parser)


def run(given: argparse.Namespace) -> str:
    """Write the picture.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.

    Returns
    -------
    str
        What was written, and in words what it shows.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended, or if it cannot be written.
    """

    def do() -> str:
        from tipsight.advice.advise import advise
        from tipsight.pictures import drawn, view

        answer = advise(asked(given, "view").question)
        if given.svg:
            said = drawn.drawing(answer, given.svg)
            return write(given.out or "view.svg", said.encode(), drawn.words_of(said))
        data = view.png(answer, given.eyes, abs(given.ripple))
        return write(given.out or "view.png", data, view.describe(answer))

    return with_tables(given, do)
