"""Seconds until it is noticed that a tip has gone."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import OutOfRange
from tipsight.sight.notice import notice_s

YARD_M = 0.9144


# By hand. Calm: 28/L^2. At 40 yd, slope 0.2: 1.12 s x (9/n)^0.4 with n = 2.4 T^0.8 is met by
# T = (1.12 x 3.75^0.4)^(1/1.32) = 1.6264 s, n = 3.542. At 20 yd n = 2.4 x 2^0.8 T^0.8 = 4.1787 T^0.8:
# T = (1.12 x 2.1538^0.4)^(1/1.32) = 1.3749 s. Well seen at 40 yd, level 10: (0.28 x 9^0.4) = 0.6743 s,
# when n = 2.4 x 0.6743^0.8 = 1.751 is more than one look, so T = (0.28 x 3.75^0.4)^(1/1.32) = 0.5690 s;
# at level 20 one look is all: 0.07 x 9^0.4 = 0.1686 s, as 2.4 x 0.1686^0.8 = 0.578.
@pytest.mark.parametrize(
    ("level", "slope", "yards", "seconds"),
    [(2.4, 0.0, 40, 4.8611), (2.5, 0.0, 10, 4.48), (3.5, 0.0, 40, 2.2857), (5.0, 0.0, 60, 1.12),
     (10.0, 0.0, 40, 0.28), (5.0, 0.2, 40, 1.6264), (5.0, 0.2, 20, 1.3749), (10.0, 0.2, 40, 0.5690),
     (20.0, 0.2, 40, 0.1686)],
)  # fmt: skip
def test_by_hand(level, slope, yards, seconds):
    assert float(notice_s(level, slope, yards * YARD_M)) == pytest.approx(seconds, abs=1e-4)


def test_none_for_what_is_not_followed():
    assert np.isnan(notice_s([0.0, 2.39, 2.4], 0.2, 30.0)).tolist() == [True, True, False]


@settings(deadline=None, derandomize=True, max_examples=100)
@given(st.floats(2.4, 60.0), st.floats(0.0, 0.5), st.floats(3.0, 100.0))
def test_it_solves_its_own_equation(level, slope, range_m):
    found = float(notice_s(level, slope, range_m))
    looks = max(1.0, 2.4 * (40 * YARD_M / range_m) ** 0.8 * found**0.8)
    # 2.56 / (0.5 n) over 2.56 / 4.5, the strength of the streaks in so many looks and in the level's
    then = level * (2.56 / (0.5 * looks) / (2.56 / 4.5)) ** -slope
    assert found == pytest.approx(28.0 / then**2, rel=1e-9)


@settings(deadline=None, derandomize=True, max_examples=60)
@given(st.floats(2.4, 30.0), st.floats(0.0, 0.5), st.floats(5.0, 60.0), st.floats(1.0, 3.0))
def test_better_seen_is_sooner_noticed(level, slope, range_m, more):
    now = float(notice_s(level, slope, range_m)) * (1 + 1e-12)
    assert float(notice_s(level * more, slope, range_m)) <= now
    assert float(notice_s(level, slope, range_m / more)) <= now


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"level": -1.0}, "visibility level must be 0 to inf, got -1"),
        ({"streaks_slope": 0.6}, "slope over the streaks must be 0 to 0.5, got 0.6"),
        ({"range_m": 0.0}, "distance must be 0.1 to 1000 m, got 0 m"),
    ],
)
def test_what_is_out_of_range_is_said(change, words):
    with pytest.raises(OutOfRange) as told:
        notice_s(**({"level": 5.0, "streaks_slope": 0.1, "range_m": 30.0} | change))
    assert str(told.value) == words
