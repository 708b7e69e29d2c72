"""The advice put to a grid of swims, as a practised angler would: ``python tests/benchmark/grid.py``.

Counts what he would laugh at: monsters, needles, shot that is not on the line, changes that gain
nothing, answers without a way out, and paints that flip for 5 % of the distance or of the eye's
height. ``--read N`` prints every Nth answer whole.
"""

import argparse
from collections import Counter
from dataclasses import replace
from itertools import product

from tipsight.advice.advise import advise
from tipsight.advice.answer import Answer
from tipsight.advice.facts import ComeCloser, Fit, OtherStretch, StandHigher
from tipsight.advice.on_the_spot import _gains
from tipsight.advice.swim import family_of, swim
from tipsight.inputs.question import Question
from tipsight.output import warned
from tipsight.output.text import text

YARDS = (12, 20, 30, 40)
SKIES = ("dull overcast", "bright overcast", "broken cloud", "clear")
WATERS = (("glass", "slack"), ("fur", "walk"), ("ripple", "walk"), ("wavelets", "brisk"))
BEHIND = ("dark", "bright", "broken", "dark 50%; bright 50%")
FLOATS = (
    {"pattern": "quill avon", "takes": "6BB"}, {"pattern": "long cane balsa", "takes": "8BB"},
    {"pattern": "bolo type", "takes": "4 g"}, {"pattern": "canal balsa", "takes": "0.6 g"},
    {"pattern": "chunky trotter", "takes": "9 g"},
)  # fmt: skip
AGES = ("40", "60", "70")
MOVES = (ComeCloser, StandHigher, OtherStretch)


def swims() -> list[Question]:
    """Return the grid: each distance, sky, water and background; floats and ages by turns."""
    found = []
    for n, (yards, sky, (looks, pace), behind) in enumerate(product(YARDS, SKIES, WATERS, BEHIND)):
        for k in (0, 2):
            told = FLOATS[(n + k) % len(FLOATS)]
            question = Question(
                distance=f"{yards} yd", sky=sky, looks=looks, pace=pace, behind=behind,
                age=AGES[(n + k) % len(AGES)], eye="stood", depth="7 ft", **told,
            )  # fmt: skip
            if k == 0 or n % 2:
                found.append(question)
    return found


def families(answer: Answer) -> frozenset[str]:
    """Return the families of paint that the bench names, those that will do as well among them."""
    bench = answer.at_the_bench
    if bench is None or not bench.block.passes:
        return frozenset()
    worn = {family_of(band.paint) for band in bench.block.tip.bands}
    return frozenset(worn | {family_of(paint) for paint in bench.either})


def laughable(answer: Answer) -> list[str]:
    """Return what a practised angler would laugh at."""
    found, case = [], answer.case
    bench, here = answer.at_the_bench, swim(case)
    pattern, light = here.pattern, here.pull_g / here.wet_share < 8.0
    if bench is not None and any(isinstance(a, Fit) for a in bench.actions):
        tip = bench.block.tip
        if bench.block.passes and light and (tip.showing_mm > 45 or tip.stock.diameter_mm >= 5):
            chunky = pattern.usual_from_mm >= 5
            found += [] if chunky and tip.showing_mm <= 45 else ["monster"]
        if bench.block.passes and tip.stock.diameter_mm < pattern.usual_from_mm:
            found.append("needle")
    hangs = Counter()
    for one in here.hung:
        hangs[one.name] += one.count
    had = {shot.name for shot in case.box.shot}
    for change in (*answer.changes, *((bench,) if bench else ())):
        step = change.block.load.step
        if any(hangs[name] < count for name, count in step.off):
            found.append("shot that is not on the line")
        if any(name not in had for name, _ in step.on):
            found.append("shot that he has not got")
        if sum(count for _, count in (*step.off, *step.on)) > 6:
            found.append("a list of shot")
        still = [one for one in change.actions if not isinstance(one, MOVES)]
        only_stay = still and len(still) == len(change.actions) and change.at_the_bank
        if only_stay and change.kind != "light stick" and not _gains(answer.tip_in_hand, change.block):
            found.append("a change that gains nothing")
    led = answer.at_the_bank.block.passes or (bench is not None and bench.block.passes)
    out = any(isinstance(a, MOVES) for c in answer.changes for a in c.actions)
    if not (led or out or any(warned.in_the_way(one) for one in answer.warnings)):
        found.append("no way out")
    return found


def main() -> int:
    """Put the grid, and print the counts and the swims that are laughed at."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--read", type=int, default=0)
    parser.add_argument("--flips", action="store_true", help="also look for paints that flip")
    asked = parser.parse_args()
    counts, grades = Counter(), Counter()
    questions = swims()
    for n, question in enumerate(questions):
        answer = advise(question)
        best = max(
            (b for b in (answer.at_the_bank, answer.at_the_bench) if b is not None),
            key=lambda one: one.block.visibility.level,
        )
        grades[best.block.visibility.grade] += 1
        told = laughable(answer)
        if asked.flips and (mine := families(answer)):
            far = float(question.distance.split()[0])
            for nudged in (
                replace(question, distance=f"{1.05 * far:.2f} yd"),
                replace(question, eye=f"{1.05 * answer.case.place.eye_height_m:.3f} m"),
            ):
                other = families(advise(nudged))
                if other and not mine & other:
                    told.append("a flip")
        for one in set(told):
            counts[one] += 1
            bench = answer.at_the_bench
            print(f"{one}: {question.told()}  {bench.block.tip if bench else None}")
        if asked.read and n % asked.read == 0:
            print(f"\n--- {question.told()}\n{text(answer)}")
    print(f"\n{len(questions)} swims; best grade: {dict(grades)}")
    print(f"laughed at: {dict(counts) or 'nothing'}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
