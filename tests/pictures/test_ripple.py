"""Drawn water: its slopes, what a sight line meets on it, and the light it sends."""

import numpy as np
import pytest

from tipsight.afloat import chop
from tipsight.errors import OutOfRange
from tipsight.inputs.case import Wind
from tipsight.pictures.cast import Frame, cast
from tipsight.pictures.ripple import Sheet, cut, heights_spectrum, waves
from tipsight.scene.slopes import slope_variance

WINDS = [
    Wind(2.0),
    Wind(4.0),
    Wind(4.0, 90.0),
    Wind(0.0),
    Wind(0.0, base_slope_variance=2e-2),
    Wind(ripple_height_m=0.015),
]


def drawn(wind, seed=0):
    return waves(chop.sea(wind), wind, slope_variance(wind), near_mm=500.0, far_mm=5500.0,
                 wide_mm=1800.0, seed=seed).at()  # fmt: skip


@pytest.mark.parametrize("wind", WINDS, ids=str)
def test_the_slopes_spread_as_the_scene_has_them(wind):
    """Of four sheets together; a sheet holds some dozens of waves, so it scatters by a tenth."""
    wanted = slope_variance(wind)
    sheets = [drawn(wind, seed) for seed in range(4)]
    assert np.mean([s.rise_away.var() for s in sheets]) == pytest.approx(wanted.along, rel=0.15)
    assert np.mean([s.rise_right.var() for s in sheets]) == pytest.approx(wanted.across, rel=0.15)


def test_slopes_are_those_of_the_heights():
    water = drawn(Wind(4.0))
    rise = (np.roll(water.height_mm, -1, 0) - np.roll(water.height_mm, 1, 0)) / (2 * water.step_mm)
    assert np.corrcoef(rise.ravel(), water.rise_away.ravel())[0, 1] > 0.99
    rise = (np.roll(water.height_mm, -1, 1) - np.roll(water.height_mm, 1, 1)) / (2 * water.step_mm)
    assert np.corrcoef(rise.ravel(), water.rise_right.ravel())[0, 1] > 0.99


def left(sea, slopes):
    """Return the height [mm] and the slope variance that are left of a sea."""
    peak, cut_rad_m, scale = cut(sea, slopes)
    k = np.geomspace(0.2 * peak, 400.0, 2000)
    density = scale * heights_spectrum(peak, k) * np.exp(-k / cut_rad_m)
    height = 4e3 * np.sqrt(np.trapezoid(density, k))
    return height, np.trapezoid(k**2 * density, k)


@pytest.mark.parametrize("wind", WINDS, ids=str)
def test_the_sea_has_its_slopes(wind):
    wanted = sum(slope_variance(wind))
    assert left(chop.sea(wind), wanted)[1] == pytest.approx(wanted, rel=1e-3)


def test_short_waves_are_cut_and_the_height_is_not_given_back():
    """Wind of 4 m/s over 50 m: 14.4 mm, of which waves as gentle as Cox and Munk's leave 10.3."""
    sea = chop.sea(Wind(4.0))
    assert 1e3 * sea.height_m == pytest.approx(14.4, abs=0.05)
    assert left(sea, 0.0106)[0] == pytest.approx(10.3, abs=0.1)


def test_the_steeper_the_slopes_the_more_height_is_left():
    """Uncut, a sea of 4 m/s has a slope variance of 0.0441: then all its height is left."""
    sea = chop.sea(Wind(4.0))
    heights = [left(sea, slopes)[0] for slopes in (0.004, 0.0106, 0.03, 0.0441)]
    assert heights[0] < 0.6 * 14.4
    assert heights == sorted(heights)
    assert heights[-1] == pytest.approx(14.4, rel=0.01)


def test_swirls_without_wind_are_cut_at_their_own_length():
    """300 mm: 2 pi / 0.3 rad/m."""
    assert cut(chop.sea(Wind()), 4e-4)[:2] == pytest.approx((20.944, 20.944), rel=1e-4)


def test_a_sea_too_gentle_for_its_slopes_is_raised():
    """40 mm seen: with twice the slopes that it has uncut, root two times as high."""
    sea = chop.sea(Wind(ripple_height_m=0.04))
    peak, _, _ = cut(sea, 1.0)
    k = np.geomspace(0.2 * peak, 400.0, 2000)
    shape = heights_spectrum(peak, k)
    uncut = (0.04 / 4.0) ** 2 * np.trapezoid(k**2 * shape, k) / np.trapezoid(shape, k)
    assert left(sea, 2.0 * uncut)[0] == pytest.approx(40.0 * np.sqrt(2.0), rel=1e-3)


def test_another_seed_is_another_sheet_and_the_same_seed_the_same():
    assert not np.allclose(drawn(Wind(3.0), 0).height_mm, drawn(Wind(3.0), 1).height_mm)
    assert np.array_equal(drawn(Wind(3.0), 2).height_mm, drawn(Wind(3.0), 2).height_mm)


def test_no_slope_at_all_is_refused():
    with pytest.raises(OutOfRange, match="slope variance must be"):
        cut(chop.sea(Wind()), 0.0)


def bump(height_mm, at_row, rows=2000):
    """Return level water with one ridge, half a cosine 60 mm long."""
    height = np.zeros((rows, 5))
    ridge = height_mm * np.cos(np.linspace(-np.pi / 2, np.pi / 2, 21)) ** 2
    height[at_row - 10 : at_row + 11] = ridge[:, None]
    return Sheet(height, np.gradient(height, 3.0, axis=0), np.zeros((rows, 5)), 3.0, 500)


def test_level_water_is_seen_level():
    seen = cast(bump(0.0, 600), 0.05, Frame(1.0, 9, 60, 20.0))
    assert not seen.rise_away.any()
    assert seen.crest_mm == 0.0


def test_a_facet_between_two_points_is_a_mix_of_both():
    """Level water whose slope is told as its distance: row u meets it u / 0.05 mm beyond."""
    level, slope = np.zeros((900, 5)), np.repeat((np.arange(900.0) - 300.0)[:, None] * 3.0, 5, 1)
    frame = Frame(0.04, 9, 60, 0.0)
    seen = cast(Sheet(level, slope, level, 3.0, 300), 0.05, frame, finer=1)
    assert seen.rise_away[:, 2] == pytest.approx(frame.heights_mm() / 0.05, rel=1e-9)


def test_a_ridge_hides_what_is_behind_it():
    """A ridge 8 mm high, 300 mm beyond the tip, seen down a slope of a twentieth.

    Its top stands at 300 x 0.05 + 8 = 23 mm in the picture; the sight line over it meets level
    water 8 / 0.05 = 160 mm farther on, so nothing between is seen.
    """
    frame = Frame(0.5, 9, 100, 10.0)
    seen = cast(bump(8.0, 600), 0.05, frame, finer=1)
    up = frame.heights_mm()
    facing, level = seen.rise_away[:, 2] > 1e-6, np.abs(seen.rise_away[:, 2]) < 1e-6
    assert level[up < 13.0].all()
    assert facing[(up > 14.5) & (up < 22.5)].all()
    assert level[up > 24.0].all()


def test_a_ridge_before_the_tip_covers_its_foot():
    """60 mm nearer, 10 mm high: 10 - 60 x 0.05 = 7 mm of the foot."""
    seen = cast(bump(10.0, 480), 0.05, Frame(1.0, 9, 60, 20.0))
    assert seen.crest_mm == pytest.approx(7.0, abs=0.05)


def test_a_short_sheet_repeats_to_both_sides():
    """Seen at a grazing angle, the picture's foot and head lie far off the sheet."""
    water = drawn(Wind(4.0))
    seen = cast(water, 0.004, Frame(4.0, 9, 100, 150.0))
    assert seen.rise_away.shape[0] == 200
    lowest, highest = seen.rise_away[:40, 2], seen.rise_away[-40:, 2]
    assert np.ptp(lowest) > 0.02
    assert np.ptp(highest) > 0.02


def test_a_short_level_sheet_repeats():
    short = bump(0.0, 600, rows=700)
    assert cast(short, 0.01, Frame(1.0, 9, 100, 20.0)).rise_away.shape[0] == 200
