"""Grades, how far off a tip is lost, and the smallest dip."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.errors import OutOfRange
from tipsight.sight import dip, grades, kernel, reach
from tipsight.sight.clutter import Clutter
from tipsight.sight.eye import Eye

YOUNG, OLD = Eye(25.0), Eye(60.0)
often = settings(deadline=None, derandomize=True, max_examples=80)


@pytest.mark.parametrize(
    ("level", "word"),
    [
        (0.0, "not seen"), (0.999, "not seen"), (1.0, "in and out"), (2.39, "in and out"),
        (2.4, "followed"), (4.99, "followed"), (5.0, "kept in view"),
        (9.99, "kept in view"), (10.0, "easy"), (19.9, "easy"), (20.0, "stands out"),
        (1e6, "stands out"),
    ],
)  # fmt: skip
def test_grade(level, word):
    assert grades.grade(level) == word


@pytest.mark.parametrize("level", [-0.1, float("nan")])
def test_no_grade_for_what_is_no_level(level):
    with pytest.raises(OutOfRange, match=f"visibility level must be 0 to inf, got {level:g}"):
        grades.grade(level)


def test_grades_can_be_put_right(tmp_path):
    own = "word,from_level,source\neasy,7,mine\n"
    (tmp_path / "grades.csv").write_text(own, encoding="utf-8")
    with tables.using(tmp_path):
        assert (grades.grade(6.9), grades.grade(7.0)) == ("kept in view", "easy")
    assert grades.grade(7.0) == "kept in view"


def test_goes_at_is_straight_in_the_logarithms():
    r = np.array([10.0, 20.0, 40.0])
    assert reach.goes_at(r, 1600.0 / r**2, 2.0) == pytest.approx(np.sqrt(800.0))


def test_goes_at_the_last_crossing():
    r, level = [10.0, 20.0, 30.0, 40.0, 50.0], [9.0, 1.0, 8.0, 2.0, 1.0]
    assert 30.0 < reach.goes_at(r, level, 5.0) < 40.0


def test_goes_at_the_ends():
    r = [10.0, 20.0, 40.0]
    assert reach.goes_at(r, [3.0, 2.0, 1.0], 5.0) == 10.0
    assert reach.goes_at(r, [9.0, 8.0, 6.0], 5.0) is None
    assert reach.goes_at(r, [9.0, 5.0, 4.0], 5.0) == pytest.approx(20.0)
    assert 10.0 < reach.goes_at(r, [9.0, 0.0, 0.0], 5.0) < 20.0


@often
@given(st.lists(st.floats(0.0, 50.0), min_size=2, max_size=12), st.floats(0.5, 20.0))
def test_beyond_it_the_level_stays_below(levels, wanted):
    r = np.linspace(5.0, 60.0, len(levels))
    found = reach.goes_at(r, levels, wanted)
    beyond = [v for d, v in zip(r, levels, strict=True) if found is not None and d > found + 1e-9]
    assert all(v < wanted for v in beyond)
    if found is None:
        assert levels[-1] >= wanted


def test_goes_at_tells_mistakes():
    with pytest.raises(ValueError, match="2 levels do not fit 3 distances"):
        reach.goes_at([1.0, 2.0, 3.0], [1.0, 2.0], 1.0)
    with pytest.raises(OutOfRange, match="step between distances must be"):
        reach.goes_at([1.0, 1.0], [1.0, 2.0], 1.0)
    with pytest.raises(OutOfRange, match=r"first distance must be 0\.001 to 1e\+06 m, got 0 m"):
        reach.goes_at([0.0, 1.0], [1.0, 2.0], 1.0)
    with pytest.raises(OutOfRange, match="visibility level must be 0 to inf, got nan"):
        reach.goes_at([1.0, 2.0], [1.0, float("nan")], 1.0)
    with pytest.raises(OutOfRange, match=r"level wanted must be 1e-06 to 1e\+06, got 0"):
        reach.goes_at([1.0, 2.0], [1.0, 2.0], 0.0)


def test_a_black_tip_goes_between_the_worked_levels():
    r = np.geomspace(3.0, 100.0, 40)
    down = np.rad2deg(np.arctan(1.3 / r))
    streaks = Clutter(0.16, 129.0, 0.064, 0.5, down, 0.62)
    tip = {"diameter_mm": 5.0, "edges_mm": [0.0, 30.0], "contrast": [[-0.95, 0.0, 0.0]]}
    calm, broken = (
        np.hypot(*kernel.level_parts(kernel.kernels(r, 733.0, OLD, water), **tip))
        for water in (None, streaks)
    )
    assert np.all(np.diff(calm) < 0.0)
    assert np.all(broken < calm)
    # the worked levels are 8.32 at 30 yd and 4.91 at 40 yd; 5.59 and 3.56 among streaks
    for level, wanted, yards in ((calm, 8.32, 30), (calm, 4.91, 40), (broken, 5.59, 30)):
        assert reach.goes_at(r, level, wanted) / 0.9144 == pytest.approx(yards, rel=5e-3)


# Worked out once by another program of the same equations, 2.5 x 30 mm tip; half the last figure.
@pytest.mark.parametrize(
    ("level", "range_m", "light", "dip_mm", "half"),
    [(39.7, 10.0, 1000.0, 1.4, 0.05), (12.8, 20.0, 1000.0, 2.6, 0.05),
     (4.5, 36.0, 1000.0, 9.7, 0.05), (22.4, 36.0, 1000.0, 3.4, 0.06)],
)  # fmt: skip
def test_dip_regression(level, range_m, light, dip_mm, half):
    found = dip.visible_dip_mm(level, 30.0, 0.0, range_m, YOUNG, light)
    assert float(found) == pytest.approx(dip_mm, abs=half)


# By hand at 20 m (5.8178 mm an arc minute) in 1000 cd/m2, s = 1.7 x 10^-0.08 = 1.4140'. 60 mm is
# 10.313'; at level 10 lab = hypot(0.08, 0.94 x 1.4140/10) = 0.15513', so the place is kept to
# sqrt(0.46540^2 + 0.41253^2) = 0.62192'; 4 mm of ripple is 0.68755', together 0.92709'. A smallest
# detail of 2' blurs by 0.86603': lab x 1.17265. 5 mm goes by its light: 10^-0.4, or 0.15 at least.
@pytest.mark.parametrize(
    ("level", "showing", "ripple", "detail", "dip_mm"),
    [(10.0, 60.0, 0.0, 1.0, 3.618), (10.0, 60.0, 4.0, 1.0, 5.394), (10.0, 60.0, 0.0, 2.0, 3.980),
     (10.0, 5.0, 0.0, 1.0, 1.991), (200.0, 5.0, 0.0, 1.0, 0.750)],
)  # fmt: skip
def test_dip_by_hand(level, showing, ripple, detail, dip_mm):
    found = dip.visible_dip_mm(level, showing, ripple, 20.0, Eye(25.0, detail), 1000.0)
    assert float(found) == pytest.approx(dip_mm, abs=1e-3)


# Rule of thumb of the same source: 0.3', 0.5' and 1' at levels 20, 10 and 5; 35 %.
@pytest.mark.parametrize(("level", "arcmin"), [(20.0, 0.3), (10.0, 0.5), (5.0, 1.0)])
def test_dip_rule_of_thumb(level, arcmin):
    found = dip.visible_dip_mm(level, 30.0, 0.0, 36.0, YOUNG, 1000.0)
    assert float(found) / (36.0 * 0.29089) == pytest.approx(arcmin, rel=0.35)


def test_no_dip_is_promised_of_what_is_not_followed():
    found = dip.visible_dip_mm([2.39, 2.4], 30.0, 0.0, 36.0, YOUNG, 100.0)
    assert np.isnan(found).tolist() == [True, False]


@often
@given(
    st.floats(2.4, 60.0), st.floats(3.0, 60.0), st.floats(0.0, 10.0), st.floats(5.0, 60.0),
    st.floats(0.1, 3000.0), st.floats(1.0, 3.0),
)  # fmt: skip
def test_dip_gets_no_easier(level, showing, ripple, range_m, light, more):
    found = float(dip.visible_dip_mm(level, showing, ripple, range_m, YOUNG, light))
    assert 0.0 < found < showing
    worse = [
        dip.visible_dip_mm(level / more, showing, ripple, range_m, YOUNG, light),
        dip.visible_dip_mm(level, showing, ripple * more, range_m, YOUNG, light),
        dip.visible_dip_mm(level, showing, ripple, range_m, Eye(25.0, more), light),
        dip.visible_dip_mm(level, showing, ripple, range_m, YOUNG, light, looks_away=True),
    ]
    assert all(np.isnan(w) or w >= found * (1 - 1e-12) for w in worse)


def test_a_gaze_that_leaves_the_tip_needs_more():
    tip = (20.0, 60.0, 0.0, 20.0, YOUNG, 1000.0)
    kept, left = (float(dip.visible_dip_mm(*tip, looks_away=away)) for away in (False, True))
    assert left == pytest.approx(2.2 * 20.0 * 0.29089, rel=1e-3)
    assert kept < left / 3.0


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"level": -1.0}, "visibility level must be 0 to inf, got -1"),
        ({"showing_mm": 0.0}, "showing length must be 0.001 to 10000 mm, got 0 mm"),
        ({"ripple_rms_mm": -1.0}, "ripple must be 0 to 10000 mm, got -1 mm"),
        ({"range_m": 0.0}, "distance must be 0.1 to 1000 m, got 0 m"),
        ({"adaptation_cd_m2": 0.0}, "luminance must be 1e-06 to 1e+10 cd/m2, got 0 cd/m2"),
    ],
)
def test_dip_tells_what_is_out_of_range(change, words):
    whole = {"level": 5.0, "showing_mm": 30.0, "ripple_rms_mm": 1.0, "range_m": 20.0,
             "eye": YOUNG, "adaptation_cd_m2": 100.0}  # fmt: skip
    with pytest.raises(OutOfRange) as told:
        dip.visible_dip_mm(**(whole | change))
    assert str(told.value) == words
