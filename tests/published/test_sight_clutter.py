"""The streaks of the ripple against the random seas that their fit was made from.

Computed, not measured: nobody has published such seas on rivers.
"""

import numpy as np
import pytest

from tipsight.sight import clutter
from tipsight.sight.clutter import Clutter

# Computed: wind m/s, fetch m, ripple length mm, slope, look-down deg, skyline deg, contrast, then
# B0 mm2, f0 1/mm and B1 mm2 of a literal Monte Carlo (random JONSWAP sea, each sight line cast).
SEAS = np.array(
    [
        [1.5, 30.0, 74.0, 0.056, 1.5, 0.5, 0.162, 43.0, 0.0116, 1.97],
        [1.5, 30.0, 74.0, 0.056, 2.5, 0.5, 0.17, 67.0, 0.01, 2.12],
        [1.5, 30.0, 74.0, 0.056, 4.5, 0.5, 0.181, 90.0, 0.0105, 1.84],
        [1.5, 30.0, 74.0, 0.056, 9.0, 0.5, 0.177, 78.0, 0.0109, 0.94],
        [2.0, 50.0, 127.0, 0.064, 1.5, 0.5, 0.162, 218.0, 0.0059, 1.79],
        [2.0, 50.0, 127.0, 0.064, 2.5, 0.5, 0.172, 313.0, 0.0054, 1.75],
        [2.0, 50.0, 127.0, 0.064, 4.5, 0.5, 0.188, 354.0, 0.0058, 1.69],
        [2.0, 50.0, 127.0, 0.064, 9.0, 0.5, 0.2, 337.0, 0.0055, 0.84],
        [3.0, 50.0, 167.0, 0.077, 1.5, 0.5, 0.175, 486.0, 0.0045, 1.32],
        [3.0, 50.0, 167.0, 0.077, 2.5, 0.5, 0.185, 686.0, 0.0041, 1.21],
        [3.0, 50.0, 167.0, 0.077, 4.5, 0.5, 0.205, 818.0, 0.0041, 1.43],
        [3.0, 50.0, 167.0, 0.077, 9.0, 0.5, 0.229, 910.0, 0.0038, 0.72],
        [4.0, 50.0, 203.0, 0.089, 1.5, 0.5, 0.189, 754.0, 0.0038, 0.9],
        [4.0, 50.0, 203.0, 0.089, 2.5, 0.5, 0.2, 898.0, 0.0037, 0.96],
        [4.0, 50.0, 203.0, 0.089, 4.5, 0.5, 0.22, 1136.0, 0.0035, 1.16],
        [4.0, 50.0, 203.0, 0.089, 9.0, 0.5, 0.252, 1715.0, 0.003, 0.66],
        [6.0, 60.0, 301.0, 0.107, 1.5, 0.5, 0.214, 1215.0, 0.0034, 0.56],
        [6.0, 60.0, 301.0, 0.107, 2.5, 0.5, 0.224, 1641.0, 0.0029, 0.61],
        [6.0, 60.0, 301.0, 0.107, 4.5, 0.5, 0.244, 2183.0, 0.0027, 0.86],
        [6.0, 60.0, 301.0, 0.107, 9.0, 0.5, 0.284, 3395.0, 0.0023, 0.55],
        [4.0, 200.0, 507.0, 0.092, 1.5, 0.5, 0.193, 2718.0, 0.0022, 0.63],
        [4.0, 200.0, 507.0, 0.092, 2.5, 0.5, 0.204, 2735.0, 0.0021, 0.78],
        [4.0, 200.0, 507.0, 0.092, 4.5, 0.5, 0.224, 2706.0, 0.0021, 1.09],
        [4.0, 200.0, 507.0, 0.092, 9.0, 0.5, 0.258, 2794.0, 0.0022, 0.56],
        [1.5, 30.0, 74.0, 0.056, 1.5, 10.0, 0.849, 91.0, 0.0126, 0.39],
        [1.5, 30.0, 74.0, 0.056, 9.0, 10.0, 0.585, 50.0, 0.0158, 0.24],
        [2.0, 50.0, 127.0, 0.064, 4.5, 10.0, 0.689, 297.0, 0.008, 0.23],
        [3.0, 50.0, 167.0, 0.077, 2.5, 10.0, 0.649, 298.0, 0.0073, 0.27],
        [4.0, 50.0, 203.0, 0.089, 1.5, 10.0, 0.607, 168.0, 0.0085, 0.33],
        [4.0, 50.0, 203.0, 0.089, 9.0, 10.0, 0.496, 484.0, 0.0067, 0.2],
        [6.0, 60.0, 301.0, 0.107, 4.5, 10.0, 0.495, 437.0, 0.0067, 0.22],
        [4.0, 200.0, 507.0, 0.092, 2.5, 10.0, 0.56, 462.0, 0.0052, 0.19],
    ]
)
IN_DOMAIN = SEAS[SEAS[:, 2] <= 480.0]


def fitted_over_simulated(rows):
    made = clutter.shape([Clutter(r[6], r[2], r[3], r[5], r[4]) for r in rows])
    return np.array(made).T / rows[:, 7:]


KNOWN_MISS = IN_DOMAIN[
    (IN_DOMAIN[:, 2] == 74.0) & (IN_DOMAIN[:, 4] == 9.0) & (IN_DOMAIN[:, 5] == 10.0)
]


# The fit's scatter over all its seas as found when it was made (rms of the logarithm, worst sea);
# these are about a third of them, so a tenth is allowed on the rms.
@pytest.mark.parametrize(
    ("banked", "k", "rms", "worst"),
    [(False, 0, 0.24, 0.51), (False, 1, 0.11, 0.23), (False, 2, 0.22, 0.44),
     (True, 0, 0.34, 1.18), (True, 1, 0.14, 0.35), (True, 2, 0.17, 0.39)],
)  # fmt: skip
def test_the_fit_keeps_its_scatter(banked, k, rms, worst):
    rows = IN_DOMAIN[(IN_DOMAIN[:, 5] > 5.0) == banked]
    off = np.log(fitted_over_simulated(rows)[:, k])
    assert np.abs(off).max() < worst * 1.02
    plain = [o for o, row in zip(off, rows, strict=True) if not np.array_equal(row, KNOWN_MISS[0])]
    assert np.sqrt(np.mean(np.square(plain))) < 1.1 * rms


def test_known_miss_of_the_fit():
    # the shortest ripple at the steepest look-down under a bank: streaks three times too strong
    assert fitted_over_simulated(KNOWN_MISS)[0] == pytest.approx([3.25, 0.74, 0.85], abs=0.01)


@pytest.mark.parametrize("k", [0, 1, 2])
def test_the_fit_is_within_a_third_on_the_whole(k):
    assert np.median(np.abs(np.log(fitted_over_simulated(IN_DOMAIN)[:, k]))) < np.log(1.3)
