"""Which tip and which waters of an answer are drawn."""

from tipsight.advice.answer import Answer, Block
from tipsight.advice.swim import BRIGHT, DARK
from tipsight.inputs.case import Stretch


def waters(answer: Answer) -> tuple[Stretch, ...]:
    """Return the waters on which the answer judges a tip.

    Parameters
    ----------
    answer : Answer
        The answer.

    Returns
    -------
    tuple of Stretch
        As told; dark and bright where it was not known.
    """
    told = {stretch.name: stretch for stretch in (DARK, BRIGHT, *answer.case.stretches)}
    judged = [seen.name for seen in answer.tip_in_hand.visibility.by_background]
    return tuple(told[name] for name in judged)


def advised(answer: Answer) -> tuple[str, Block]:
    """Return what is advised, and where it is done.

    Parameters
    ----------
    answer : Answer
        The answer.

    Returns
    -------
    title : str
        At the bank, or at the bench.
    block : Block
        The tip.
    """
    bank, bench = answer.at_the_bank, answer.at_the_bench
    if bank.block.passes or bench is None:
        return "Advised, at the bank", bank.block
    return "Advised, at the bench", bench.block


def made(answer: Answer) -> tuple[str, Block]:
    """Return the tip that is made: the one for the bench if there is one.

    Parameters
    ----------
    answer : Answer
        The answer.

    Returns
    -------
    title : str
        What it is.
    block : Block
        The tip.
    """
    if answer.at_the_bench is not None and answer.at_the_bench.kind != "as it is":
        verb = "repaint" if answer.at_the_bench.kind == "repaint" else "fit"
        return f"to {verb} at the bench", answer.at_the_bench.block
    title, block = advised(answer)
    return title.lower().replace("advised, ", "as it is to be "), block
