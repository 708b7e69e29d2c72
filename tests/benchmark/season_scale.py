"""CPU seconds of a season's jobs: floats by swims, what to make, and the sweep at several sizes.

Run by hand: ``python tests/benchmark/season_scale.py [floats] [swims of a sweep ...]``.
"""

import sys
import time
from itertools import islice, product

from tipsight.advice.advise import sweep
from tipsight.inputs.question import Question
from tipsight.season import making, swims
from tipsight.season.served import served


def box(count: int) -> list[Question]:
    """Return invented floats, no two alike."""
    each = product(
        ("quill avon", "wire stick", "bolo type", "straight balsa", "cane stick"),
        ("1 g", "1.4 g", "2 g", "2.6 g", "3.2 g", "4 g"),
        (("2 mm", "solid"), ("3 mm", "quill"), ("4 mm", "quill")),
        ("10 mm", "14 mm", "20 mm", "25 mm", "30 mm"),
        ("black", "fluorescent orange", "white"),
    )
    return [
        Question(pattern=a, takes=b, diameter=c[0], stock=c[1], showing=d, paint=e)
        for a, b, c, d, e in islice(each, count)
    ]


def ladder(count: int) -> list[Question]:
    """Return swims of a ladder as fine as it must be."""
    shared = Question(age="55", takes="6BB", diameter="3 mm", stock="quill", paint="black")
    far = [f"{8 + 0.04 * n:.2f} yd" for n in range(max(count // 12, 1) + 1)]
    light = product(("glass", "ripple", "wavelets"), ("dark", "bright"), ("bright overcast", "dull overcast"))
    found = [
        shared.with_options(distance=d, looks=a, behind=(b,), sky=c) for a, b, c in light for d in far
    ]
    return found[:count]


def main() -> None:
    floats = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    season = swims.invented()
    begun = time.process_time()
    served(box(floats), season)
    print(f"{floats} floats x {len(season)} swims: {time.process_time() - begun:.1f} s of CPU")
    begun = time.process_time()
    told = making.make(season, [], 4)
    print(f"make 4 of {told.tried:,}: {time.process_time() - begun:.1f} s of CPU")
    for count in map(int, sys.argv[2:]):
        begun = time.process_time()
        asked = ladder(count)
        n = sum(1 for _ in sweep(asked))
        took = time.process_time() - begun
        print(f"sweep of {n}: {took:.1f} s of CPU, {1e3 * took / n:.0f} ms a swim")


if __name__ == "__main__":
    main()
