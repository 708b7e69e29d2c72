"""``tipsight pocket``: one file for the phone with all the answers of one float."""

import argparse

from tipsight.commands.asking import add_question, asked, with_tables
from tipsight.commands.writing import add_output, progress, write


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    add_output(parser, "float.html")
    add_question(parser)


def run(given: argparse.Namespace) -> str:
    """Write the file.

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
        from tipsight.paper import pocket

        put = asked(given, "pocket")
        said = pocket.html(put.question, progress("answers"))
        return write(given.out, said.encode(), "send it to the phone; it needs no network")

    return with_tables(given, do)
