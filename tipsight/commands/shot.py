"""``tipsight shot``: the bench's load job alone, with no water and no light in it."""

import argparse

from tipsight.commands.asking import add_question, asked, with_tables


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    add_question(parser)


def run(given: argparse.Namespace) -> str:
    """Return what the float takes to each mark of its tip, and the shot for it.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.

    Returns
    -------
    str
        To be printed.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended.
    """

    def do() -> str:
        from tipsight.inputs.settle import settle
        from tipsight.output.shotting import shotting

        return shotting(settle(asked(given, "shot").question))

    return with_tables(given, do)
