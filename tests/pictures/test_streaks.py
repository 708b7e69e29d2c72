"""The drawn water as it is cast, corrected by nothing, against the fit that the answer reckons with.

A few waters of the 47 that ``tests/helpers/cast_streaks.py`` prints, as each is cast for seconds.
"""

import math
from functools import cache

import cast_streaks
import numpy as np
import pytest
from cast_streaks import BANK_RMS, OPEN_RMS, fitted, form, level, measured, told, water

from tipsight.pictures import patch
from tipsight.pictures.cast import Frame
from tipsight.sight.clutter import spectra

OPEN = [  # wind, fetch, look-down, sky, skyline
    (2, 50, 2.5, 1, 0.5),
    (2, 50, 9, 3, 0.5),
    (3, 50, 1.5, 1, 0.5),
    (4, 50, 4.5, 3, 0.5),
    (6, 60, 2.5, 3, 0.5),
]
BANK = [
    (2, 50, 2.5, 3, 20),
    (3, 50, 9, 3, 10),
    (4, 50, 2.5, 3, 10),
    (3, 50, 4.5, 1, 25),
]
CALM = [(0, 50, 2.5, 3, 0.5), (0, 50, 4.5, 3, 10, 0.0, 3e-3)]
RANGES_M = 9.0, 18.0, 37.0


@pytest.fixture(scope="session")
def cast_of():
    """Return the streaks of three casts of a water, of six without wind, each cast once."""

    def once(wind, *row):
        of = water(wind, *row)
        return of, measured(of, 3 if wind else 6)

    return cache(once)


def off(cast_of, rows):
    """Return the logarithms of B0, f0 and B1 as cast over those of the fit, shape (rows, 3)."""
    casts = [cast_of(*row) for row in rows]
    return np.log([cast.shape / fitted(of, cast.r) for of, cast in casts])


def rms(logarithms):
    return np.sqrt((logarithms**2).mean(axis=0))


def seen(cast_of, row, range_m, *bearing_deg):
    """Return the level of a tip among cast streaks over that among those of the fit."""
    of, cast = cast_of(*row, *bearing_deg)
    noise = spectra(told(of), cast.across_per_mm)
    among = level(cast.across_per_mm, cast.f**2 * cast.power, range_m)
    return among / level(cast.across_per_mm, noise, range_m)


def test_open_water_has_the_fits_streaks(cast_of):
    """Within the fit's own rms of each logarithm, .41, .11 and .29; over 25 waters it is .29, .08
    and .25, none more than .8 off in B0."""
    found = off(cast_of, OPEN)
    assert (rms(found) < OPEN_RMS).all(), found.round(2)
    assert np.abs(found[:, 0]).max() < 0.8


def test_water_under_a_bank_has_the_fits_streaks(cast_of):
    """Within the fit's rms of B0 and f0, .36 and .14; over 22 waters it is .29 and .14."""
    found = off(cast_of, BANK)[:, :2]
    assert (rms(found) < BANK_RMS[:2]).all(), found.round(2)


def test_fine_grain_under_a_bank_is_less_than_the_fit_has(cast_of):
    """A known miss, held to its size: rms .42 where the fit has .26, more on longer waves (.9 at
    most, half of it at a wind of 4). B1 hangs on how finely a sea is drawn and cast."""
    found = off(cast_of, BANK)[:, 2]
    assert -0.55 < found.mean() < -0.15, found.round(2)
    assert found.min() > -1.0


@pytest.mark.parametrize("row", [*OPEN, *BANK], ids=str)
def test_a_tip_is_seen_among_them_as_the_answer_says(cast_of, row):
    """Within 15 %, at 10, 20 and 40 yd; over 47 waters .93 to 1.16."""
    for range_m in RANGES_M:
        assert seen(cast_of, row, range_m) == pytest.approx(1.0, abs=0.15), range_m


@pytest.mark.parametrize("row", [*OPEN, *BANK, *CALM], ids=str)
def test_their_mean_and_spread_are_those_of_the_facet_sum(cast_of, row):
    """Mean within 5 % and rms over mean within 10 %; over 47 waters .92 to 1.00 of the sum, which
    knows nothing of how heights and slopes of neighbours hang together."""
    of, cast = cast_of(*row)
    assert cast.mean[0] == pytest.approx(of.water[0], rel=0.05)
    assert cast.mean[3] == pytest.approx(of.water[3], rel=0.05)
    assert cast.f == pytest.approx(float(of.look.facet_contrast[0]), rel=0.10)
    assert cast.r == pytest.approx(float(of.look.sky_correlation[0]), abs=0.06)


@pytest.mark.parametrize("row", [(4, 50, 2.5, 3, 10)])
def test_waves_across_the_sight_cost_under_a_bank_what_the_answer_takes(cast_of, row):
    """Within 15 %: the answer has 1.3 times the contrast there, the drawn water that of waves that
    cross. Found: .89 to .93; without the 1.3 it would be .75 to .80."""
    for range_m in RANGES_M[1:]:
        assert seen(cast_of, row, range_m, 90.0) == pytest.approx(1.0, abs=0.15)


def test_waves_across_the_sight_cost_little_on_open_water(cast_of):
    """So the answer does nothing there: .85 at 20 yd, .96 at 40."""
    for range_m in RANGES_M[1:]:
        assert seen(cast_of, (3, 50, 2.5, 3, 0.5), range_m, 90.0) == pytest.approx(1.0, abs=0.2)


@pytest.mark.parametrize("row", [(3, 50, 2.5, 3, 10)])
def test_waves_aslant_are_between(cast_of, row):
    """At 45 degrees, where the answer takes half of it under a bank: .98 to 1.16, on its careful
    side, as such waves cost nothing yet."""
    for range_m in RANGES_M[1:]:
        assert 0.9 < seen(cast_of, row, range_m, 45.0) < 1.25


@pytest.mark.parametrize("row", [(2, 50, 2.5, 3, 0.5), (6, 60, 1.5, 3, 0.5)])
def test_crests_cover_half_of_what_the_answer_takes_off(row):
    """A known miss, .42 to .66: the drawn sea has lost height with its short waves."""
    of, covered = water(*row), []
    for seed in range(8):
        sheet = patch.water_sheet(of, Frame(1.25, 60, 240, 100.0), seed)
        before = np.arange(sheet.tip_row + 1) - sheet.tip_row
        lift = (before * sheet.step_mm * of.slope_of_sight)[:, None]
        crest = (sheet.height_mm[: sheet.tip_row + 1] + lift).max(axis=0)
        covered.append(np.maximum(crest, 0.0).mean())
    assert 0.35 < np.mean(covered) / of.hidden_mm < 0.75


def test_the_shape_is_found_again_in_a_picture_made_of_it():
    """B0 100 mm2, f0 0.01 /mm, B1 0.1 mm2 filtered out of white noise; 12 pictures scatter by 8 %."""
    frame, rng = cast_streaks.FRAME, np.random.default_rng(3)
    shape, step = (frame.rows, 505), (frame.pixel_mm, 3.0)
    across = np.abs(np.fft.fftfreq(shape[1], step[1]))
    gain = np.sqrt(form(across, 100.0, 0.01, 0.1) / math.prod(step))
    power = 0.0
    for _ in range(12):
        picture = np.fft.ifft2(np.fft.fft2(rng.standard_normal(shape)) * gain).real
        found = cast_streaks.spectrum(picture, *step)
        up = np.abs(np.fft.fftfreq(frame.rows, frame.pixel_mm))
        power = power + found[(up > 0.002) & (up < 0.03)].mean(axis=0) / 12
    streaks = cast_streaks.Streaks(np.zeros(4), 1.0, 1.0, across, power)
    assert streaks.shape == pytest.approx([100.0, 0.01, 0.1], rel=0.08)
