"""The check with a helper: check values of our own note, and simulated lookers."""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.stats import norm

from tipsight.errors import OutOfRange
from tipsight.learning import bars, corners
from tipsight.learning.corners import Look
from tipsight.sight import eye
from tipsight.units import YARD_M

AGE = brentq(lambda years: float(eye.age_factor(years, 1000.0)) - 1.5, 26, 80)


def test_the_first_look_and_the_next():
    first = corners.after([], AGE)
    assert (first.next_yards, first.gain_nat) == (34, pytest.approx(0.0757, rel=0.01))
    right = corners.after([Look(34, True)], AGE)
    assert (right.mean, right.sd) == pytest.approx((0.0590, 0.2583), rel=0.01)
    assert right.next_yards == 34
    wrong = corners.after([Look(34, False)], AGE)
    assert (wrong.mean, wrong.sd) == pytest.approx((-0.1667, 0.2295), rel=0.01)
    assert wrong.next_yards == 31


def test_twenty_looks_of_a_person_with_better_eyes():
    """Of ten who see 1.3 times as well the mean comes out within .16/sqrt(10), three times over."""
    rng = np.random.default_rng(5)
    found = []
    for _ in range(10):
        looks = []
        for _ in range(20):
            yards = corners.after(looks, AGE).next_yards
            seen = float(bars.level(bars.BARS[1], [yards * YARD_M], eye.Eye(AGE))[0])
            looks.append(Look(yards, rng.random() < 0.25 + 0.73 * norm.cdf((1.3 * seen - 1) / 0.39)))
        found.append(corners.after(looks, AGE))
    assert np.mean([one.mean for one in found]) == pytest.approx(np.log(1.3), abs=0.15)
    assert np.mean([one.sd for one in found]) == pytest.approx(0.12, abs=0.015)
    assert found[0].whole_sd == pytest.approx(np.hypot(found[0].sd, 0.20))


def test_how_readily_he_says_gone():
    """Where bar 2 goes at 23.65 yd with usual eyes its level is 2.4; with eyes 1.5 times better 3.6."""
    usual = corners.Eyes(0.0, 0.1, 34, 0.1)
    better = corners.Eyes(float(np.log(1.5)), 0.1, 34, 0.1)
    goes_m = 23.65 * YARD_M
    assert corners.says_gone(usual, goes_m, AGE) == pytest.approx(2.4, rel=2e-3)
    assert corners.says_gone(better, goes_m, AGE) == pytest.approx(3.6, rel=2e-3)


def test_a_look_from_too_far():
    with pytest.raises(OutOfRange, match="distance of a look must be 6 to 60 yd"):
        corners.after([Look(61, True)], AGE)
