"""Cells of the pocket file against `advise`, by hand: ``python tests/benchmark/pocket_cells.py 200``.

The suite does twenty; all 2,640 of the three invented floats take some ten minutes.
"""

import random
import sys

from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.paper.cells import RIPPLES, SKIES, WATERS, YARDS, asked, cell, told


def main(count: int) -> int:
    """Compare so many cells, chosen at random but always the same; return how many differ."""
    keys = [
        (name, sky, ripple, yards, water)
        for name in demo.names()
        for sky in SKIES
        for ripple in RIPPLES
        for yards in YARDS
        for water in WATERS
    ]
    wrong = 0
    for name, sky, ripple, yards, water in random.Random(7).sample(keys, min(count, len(keys))):  # noqa: S311
        question = demo.question(name)
        answer = advise(asked(question, yards, water, ripple, sky))
        found = cell(question, yards, water, ripple, sky)
        if found != told(answer.at_the_bank, answer.case.box.shot):
            wrong += 1
            print(name, sky, ripple, yards, water, found)
    print(f"{wrong} of {min(count, len(keys))} cells differ")
    return wrong


if __name__ == "__main__":
    sys.exit(bool(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)))
