"""Makes up the box of tipsight/demo/box.csv by a rule; run it to make the file anew.

Bodies of every pattern in all of its sizes, tips of the thickness that each usually has, paints in
turn. What each takes is worked out and then told as an angler would: in shot of one size.
"""

import csv
import random
from pathlib import Path

from tipsight import tables
from tipsight.advice.swim import swim
from tipsight.errors import Mistakes
from tipsight.inputs.entry import Entry
from tipsight.inputs.entry_table import write
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import budget, shot

ALL = 240
FILE = Path(__file__).parents[2] / "tipsight" / "demo" / "box.csv"
PAINTS = (
    *(
        "fluorescent orange",
        "fluorescent red",
        "fluorescent yellow",
        "black",
        "fluorescent orange",
    ),
    *(
        "black {half} mm, fluorescent orange",
        "fluorescent yellow {half} mm, black",
        "red",
        "white",
    ),
)
SIZES = ("No 8", "No 6", "No 4", "BB", "AAA", "SSG")


def load(grams: float) -> str:
    """Return shot of one size that comes nearest, or the weight where that would be many."""
    for name in SIZES:
        each = tables.row("shot", name, "shot")["mass_g"]
        count = round(grams / each)
        if 2 <= count <= 8 and abs(count * each - grams) < 0.07 * grams:
            return f"{count}{name}" if name.isalpha() else f"{count} {name}"
    return f"{grams:.1f} g"


def kinds(dice: random.Random) -> list[Entry]:
    """Return one or two kinds of each size of each pattern."""
    found = []
    sizes = dict.fromkeys((r["pattern"], r["size"]) for r in tables.rows("pattern_parts"))
    for n, (pattern, size) in enumerate(sizes):
        row = tables.row("patterns", pattern, "pattern")
        low, high = row["usual_from_mm"], row["usual_to_mm"]
        usual, shows = row["tip_diameter_mm"], row["tip_showing_mm"]
        thick = min(max(usual + dice.choice((-0.5, 0, 0, 0.5)), low), high, float(size.split()[0]))
        length = round(shows * dice.choice((0.8, 1, 1, 1.25)))
        tip = {
            "diameter": f"{thick:g} mm",
            "stock": row["tip_stock"],
            "showing": f"{length} mm",
            "paint": PAINTS[n % len(PAINTS)].format(half=max(length // 2, 2)),
        }
        if n % 3 == 0:
            tip["seasons"] = f"{dice.choice((1, 2, 3, 5))}"
        if thick > 4 and row["tip_stock"] == "solid":
            tip["stock"] = "cane" if thick >= 3 else "solid"
        told = {"pattern": pattern, "size": size, **tip}
        try:
            here = swim(settle(Question().with_options(**told)))
            pull = budget.pull_g(here.hull, here.case.tip)
        except Mistakes:
            continue
        if n % 9:  # every ninth is told by its size, as one who makes them knows it
            told = {"pattern": pattern, "takes": load(pull / float(shot.wet_share("tin"))), **tip}
        year = 2012 + n % 14
        found.append(
            Entry(
                told,
                lies=f"tray {1 + n // 9}" if n % 5 else "the tube",
                made=f"{year}-{1 + n % 12:02d}" if n % 4 else f"{year}",
                fished="2026-09" if n % 7 == 2 else "2025" if n % 7 == 5 else "",
                note="invented",
            )
        )
    return found


def made_up() -> str:
    """Return the table: kinds with how many of each, so that there are as many as are wanted."""
    dice = random.Random(12)  # noqa: S311
    found = kinds(dice)
    counts = [1] * len(found)
    for _ in range(ALL - len(found)):
        counts[min(dice.randrange(len(found)), dice.randrange(len(found)))] += 1
    return write(
        (n, Entry(one.told, count, one.lies, one.made, one.fished, one.note))
        for n, (one, count) in enumerate(zip(found, counts, strict=True), 1)
    )


if __name__ == "__main__":
    FILE.write_text(made_up(), encoding="utf-8", newline="")
    print(*list(csv.reader(FILE.open(encoding="utf-8")))[:5], sep="\n")  # noqa: T201
