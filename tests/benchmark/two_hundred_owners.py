"""200 synthetic owners who read a fence card: whether what is said of their eyes is right (7 s).

Run by hand: ``PYTHONPATH=tests/helpers python tests/benchmark/two_hundred_owners.py``; it ends with 1 if
the bias is .03 or more or the 90 % range holds under .86 or over .94, where the model is as told.
"""

import sys

import numpy as np
from owners import owners

from tipsight.learning import belief

HOW = {
    "paces measured": {},
    "with 15 % slips": {"slips": 0.15},
    "a step taken for a yard, told": {"told": "yard", "true_step": 0.08},
    "the same, not told": {"true_step": 0.08},
}
MISTOLD = "the same, not told"
"""Nothing can hold there: the range is known to be too narrow, .79 by our own note."""


def main() -> int:
    """Print all, and return 1 if one does not keep what was promised."""
    kept = True
    for name, how in HOW.items():
        truth, mean, sd = owners(200, 7, **how)
        off = mean - truth
        held, bias = np.mean(abs(off) < belief.RANGE_SDS * sd), np.mean(off)
        print(
            f"{name}: sd {np.median(sd):.3f}, rms {np.sqrt(np.mean(off**2)):.3f}, "
            f"bias {bias:+.3f}, 90 % range holds {held:.3f}"
        )
        kept &= name == MISTOLD or (abs(bias) < 0.03 and 0.86 <= held <= 0.94)
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
