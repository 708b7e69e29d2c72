"""What each bar of a fence card says of the eyes by itself, as a small picture."""

import math
from collections.abc import Sequence

from tipsight.learning.bars import Said
from tipsight.output.measures import Reader
from tipsight.pictures.svg_parts import Drawing, line, path, rect, text

LEFT, WIDE, RIGHT, ROW, TOP = 96.0, 176.0, 96.0, 32.0, 16.0
HALF = 2.0
"""How many times less and more the ends of the picture are."""
ROUND = 6.0


def _x(ln_factor: float) -> float:
    share = (ln_factor / math.log(HALF) + 1.0) / 2.0
    return LEFT + WIDE * min(max(share, 0.0), 1.0)


def drawing(each: Sequence[Said], all_together: float, reader: Reader) -> Drawing:
    """Return a row for each bar, from half to twice the usual, and where all say so together.

    A bar's line is as far as it may be wrong by itself; one that lies far from the rest is open,
    and named.
    """
    high = TOP + ROW * len(each)
    middle = _x(math.log(all_together))
    lines = [line(_x(0.0), TOP, _x(0.0), high, 1, 'stroke-dasharray="3 4"')]
    lines.append(line(middle, TOP, middle, high, 3))
    labels = []
    for row, one in enumerate(each):
        y = TOP + ROW * (row + 0.5)
        lines.append(line(_x(one.y - one.sd), y, _x(one.y + one.sd), y, 2))
        at = _x(one.y)
        if one.odd:
            lines.append(rect(at - ROUND, y - ROUND, 2 * ROUND, 2 * ROUND, "none", 'stroke-width="3"'))
        else:
            half = f"a{ROUND:g} {ROUND:g} 0 1 0"
            d = f"M{at - ROUND:.1f} {y:.1f}{half} {2 * ROUND:g} 0{half} {-2 * ROUND:g} 0"
            labels.append(path(d))
        labels.append(text(0, y + 6, f"{one.number}: {reader.far(one.range_m)}"))
        labels.append(text(LEFT + WIDE + 12, y + 6, f"{math.exp(one.y):.2f}{' odd' if one.odd else ''}"))
    for ln_factor, said in ((-1.0, "half"), (0.0, "usual"), (1.0, "twice")):
        x = _x(ln_factor * math.log(HALF))
        labels.append(text(x, high + 22, said, 'text-anchor="middle"'))
    desc = "each bar with the distance at which it went, and where all of them lie together"
    size = (LEFT + WIDE + RIGHT, high + 30)
    return Drawing(size, "What each bar says of your eyes", desc, lines, labels)
