"""The water's streaks: levels among them, and what must hold of their spectrum."""

import csv
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sight_level import visibility_level

from tipsight.checks import Outside
from tipsight.errors import OutOfRange
from tipsight.sight import clutter
from tipsight.sight.clutter import Clutter
from tipsight.sight.eye import Eye

WORKED = Path(__file__).with_name("worked_levels.csv")
# of fur, and of winds of 2 and 4 m/s: facet contrast, ripple length, slope, sky's correlation
WATERS = {
    "calm": None,
    "fur": (0.16, 101.0, 0.054, 0.50),
    "U 2": (0.16, 129.0, 0.064, 0.62),
    "U 4": (0.19, 204.0, 0.089, 0.83),
}


def worked():
    with WORKED.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


@pytest.mark.parametrize("row", worked(), ids=lambda row: "-".join(list(row.values())[:3]))
def test_worked_levels(row):
    range_m = float(row["yards"]) * 0.9144
    look_down = float(np.rad2deg(np.arctan(1.3 / range_m)))
    told = WATERS[row["water"]]
    water = told and Clutter(*told[:3], 0.5, look_down, told[3])
    for tip, expected in list(row.items())[3:]:
        d, h = (float(part) for part in tip.split(" x "))
        level = visibility_level(
            d, [0.0, h], [[-0.95, 0.0, 0.0]], range_m=range_m, adaptation_cd_m2=733.0,
            eye=Eye(float(row["age"])), clutter=water,
        )  # fmt: skip
        assert float(level) == pytest.approx(float(expected), rel=5e-3, abs=5.1e-3)


def spectrum(water, fx_per_mm):
    return clutter.spectra(water, fx_per_mm)


RIPPLE = Clutter(0.165, 127.0, 0.064, 0.5, 2.0, 0.6)
waters = st.builds(
    Clutter, st.floats(0.0, 2.0), st.floats(10.0, 1000.0), st.floats(0.005, 0.2),
    st.floats(0.0, 40.0), st.floats(0.5, 25.0), st.floats(0.0, 1.0),
)  # fmt: skip


@settings(deadline=None, derandomize=True, max_examples=100)
@given(waters)
def test_every_water_has_a_finite_falling_spectrum(water):
    found = spectrum(water, np.geomspace(1e-4, 1.0, 50))
    assert np.all(np.isfinite(found))
    assert np.all(found >= 0.0)
    assert np.all(np.diff(found) <= 0.0)


@settings(deadline=None, derandomize=True, max_examples=60)
@given(st.floats(78.0, 507.0), st.floats(0.054, 0.147), st.floats(1.5, 9.0), st.floats(0.05, 1.0))
def test_no_step_between_open_and_banked_water(length, slope, down, sky):
    skylines = np.linspace(0.5, 6.0, 56)
    made = clutter.shape(Clutter(0.3, length, slope, skylines, down, sky))
    for part in made:
        assert np.abs(np.diff(np.log(part))).max() < 0.35


def test_half_way_in_the_logarithm():
    low, mid, high = (
        clutter.shape(Clutter(0.3, 127.0, 0.064, bank, 2.0, 0.6))[0]
        for bank in (0.999, 2.5, 4.001)
    )
    open_, banked = clutter._OPEN, clutter._BANKED
    z = 0.5 * np.deg2rad(2.5) / 0.064
    terms = [1.0, np.log(1.27), np.log(np.tan(np.deg2rad(2.0)) / 0.064), np.log(0.8), z, z**2,
             np.log(0.6)]  # fmt: skip
    assert np.log(mid) == pytest.approx(0.5 * (open_[0] @ terms + banked[0] @ terms))
    assert min(low, high) * 0.5 < mid < max(low, high) * 2.0


# By hand, of a ripple of 100 mm as steep as the look-down. Under a bank: half of 20 deg over a slope
# of 0.054 is 3.2, held at 3: ln B0 = 2.575 + 1.392 ln(0.054/0.08) + 1.081 x 3 - 0.129 x 9. On open
# water, of a sky of 0.5: ln B1 = -3.142 - 0.341 ln(0.054/0.08) - 2.931 ln r; one of 0.01 counts as 0.05.
@pytest.mark.parametrize(
    ("bank", "sky", "k", "expected"),
    [(20.0, 0.5, 0, 4.1099), (20.0, 0.9, 0, 4.1099), (0.5, 0.5, 2, -0.9764), (0.5, 0.01, 2, 5.7725)],
)  # fmt: skip
def test_a_water_by_hand(bank, sky, k, expected):
    water = Clutter(0.5, 100.0, 0.054, bank, float(np.rad2deg(np.arctan(0.054))), sky)
    assert np.log(clutter.shape(water)[k]) == pytest.approx(expected, abs=1e-4)


# Waves across the sight have 1.3^2 = 1.69 times the power under a bank, half way there 1.3 times.
@pytest.mark.parametrize(
    ("bank", "across", "more"),
    [(0.5, 1.0, 1.0), (10.0, 1.0, 1.69), (10.0, 0.5, 1.3), (2.5, 1.0, 1.3), (10.0, 0.0, 1.0)],
)
def test_waves_that_cross_the_sight(bank, across, more):
    along, turned = (Clutter(0.5, 127.0, 0.064, bank, 2.0, 0.6, across=x) for x in (0.0, across))
    ratio = spectrum(turned, [0.0, 0.1]) / spectrum(along, [0.0, 0.1])
    np.testing.assert_allclose(ratio, more)


def test_the_spectrum_grows_with_the_square_of_the_contrast():
    double = Clutter(0.33, 127.0, 0.064, 0.5, 2.0, 0.6)
    one, two = (spectrum(c, [0.0, 0.01]) for c in (RIPPLE, double))
    np.testing.assert_allclose(two, 4.0 * one)


def test_sparkles_lie_on_top():
    lane = Clutter(0.165, 127.0, 0.064, 0.5, 2.0, 0.6, sparkle_mm2=7.0)
    more = spectrum(lane, [0.0, 0.1]) - spectrum(RIPPLE, [0.0, 0.1])
    np.testing.assert_allclose(more, 7.0)
    assert not Clutter(0.0, 127.0, 0.064, 0.5, 2.0, 0.6, sparkle_mm2=7.0).is_nothing
    assert Clutter(0.0, 127.0, 0.064, 0.5, 2.0, 0.6).is_nothing
    assert Clutter(0.2, 127.0, 0.064, 0.5, 2.0, 0.6, factor=0.0).is_nothing


def test_factor_is_on_the_power_of_the_noise():
    seen = {"range_m": 36.6, "adaptation_cd_m2": 700.0, "eye": Eye(60.0)}
    tip = (4.0, [0.0, 33.0], [[-0.95, 0.0, 0.0]])
    by_factor = visibility_level(
        *tip, **seen, clutter=Clutter(0.165, 127.0, 0.064, 0.5, 2.0, 0.6, factor=4.0)
    )
    by_contrast = visibility_level(
        *tip, **seen, clutter=Clutter(0.33, 127.0, 0.064, 0.5, 2.0, 0.6)
    )
    assert float(by_factor) == pytest.approx(float(by_contrast), rel=1e-12)


def test_what_is_held_at_the_edge_is_said():
    assert clutter.outside_domain(RIPPLE) == ()
    wild = Clutter(0.2, 20.0, 0.004, 30.0, 15.0, 0.6)
    edge = Clutter(0.2, 78.0, 0.054, 25.0, 9.0, 0.6)
    assert clutter.outside_domain(wild) == (
        Outside("peak_wavelength_mm", 20.0, 78.0, 507.0, "mm"),
        Outside("slope_rms", 0.004, 0.054, 0.147, ""),
        Outside("bank_height_deg", 30.0, 0.5, 25.0, "deg"),
        Outside("look_down_deg", 15.0, 1.5, 9.0, "deg"),
    )
    np.testing.assert_allclose(spectrum(wild, [0.0, 0.1]), spectrum(edge, [0.0, 0.1]))
    assert clutter.outside_domain(Clutter(0.0, 20.0, 0.004, 30.0, 15.0, 0.6)) == ()


def test_a_ripple_a_little_too_long_is_held_without_a_word():
    edge, little, much = (Clutter(0.2, mm, 0.08, 5.0, 2.0, 0.6) for mm in (507.0, 560.0, 561.0))
    np.testing.assert_allclose(spectrum(little, [0.0, 0.1]), spectrum(edge, [0.0, 0.1]))
    assert clutter.outside_domain(little) == ()
    assert clutter.outside_domain(much) == (
        Outside("peak_wavelength_mm", 561.0, 78.0, 507.0, "mm"),
    )


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"facet_contrast": -0.1}, "contrast of the water's facets must be 0 to 1000, got -0.1"),
        ({"peak_wavelength_mm": 0.0}, "length of the ripple must be 0.001 to 1e+06 mm, got 0 mm"),
        ({"slope_rms": 0.0}, "slope of the ripple must be 1e-06 to 1, got 0"),
        ({"bank_height_deg": 91.0}, "height of the far bank must be 0 to 90 deg, got 91 deg"),
        ({"look_down_deg": 0.0}, "look-down must be 0.001 to 90 deg, got 0 deg"),
        ({"sky_correlation": 1.1}, "correlation of the sky must be 0 to 1, got 1.1"),
        ({"across": -0.1}, "share of waves across must be 0 to 1, got -0.1"),
        ({"sparkle_mm2": -1.0}, "density of sparkles must be 0 to 1e+12 mm2, got -1 mm2"),
        ({"factor": -1.0}, "factor on the streaks must be 0 to 1000, got -1"),
    ],
)
def test_what_is_out_of_range_is_said(change, words):
    whole = {"facet_contrast": 0.2, "peak_wavelength_mm": 127.0, "slope_rms": 0.064,
             "bank_height_deg": 0.5, "look_down_deg": 2.0, "sky_correlation": 0.6}  # fmt: skip
    with pytest.raises(OutOfRange) as told:
        Clutter(**(whole | change))
    assert str(told.value) == words


# Half way between 1 and 4 deg the middle of 1.2 and 1.35 in the logarithm, sqrt(1.62).
@pytest.mark.parametrize(("bank", "doubt"), [(0.5, 1.2), (25.0, 1.35), (2.5, 1.27279)])
def test_the_doubt_of_the_sea(bank, doubt):
    sea = Clutter(0.3, 127.0, 0.064, bank, 2.0, 0.6)
    assert clutter.sea_doubt(sea) == pytest.approx(doubt, abs=1e-5)
