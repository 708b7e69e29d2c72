"""The water's streaks: levels among them, and what must hold of their spectrum."""

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

# Computed: levels of black tips (contrast -0.95) on open water at 733 cd/m2 from 1.3 m above it,
# age 60 and 25, by another program of the same equations; 1 % (they are printed to 0.01).
TIPS = ((3.0, 12.7), (3.0, 20.0), (3.0, 31.75), (3.0, 50.8), (4.0, 33.0), (5.0, 30.0), (5.0, 40.0),
        (8.0, 40.0))  # fmt: skip
WATERS = {"calm": None, "U 2": (0.165, 127.0, 0.064), "U 4": (0.195, 203.0, 0.089)}
LEVELS = {
    (10, "calm"): (
        (16.70, 29.33),
        (22.74, 39.95),
        (29.95, 52.61),
        (38.70, 67.97),
        (40.09, 70.41),
        (46.52, 81.72),
        (54.28, 95.35),
        (79.15, 139.03),
    ),
    (10, "U 2"): (
        (10.27, 14.10),
        (13.75, 18.70),
        (17.95, 24.32),
        (23.17, 31.32),
        (23.93, 32.31),
        (27.62, 37.17),
        (32.29, 43.43),
        (46.21, 61.22),
    ),
    (10, "U 4"): (
        (10.51, 14.59),
        (14.09, 19.37),
        (18.41, 25.20),
        (23.76, 32.46),
        (24.54, 33.50),
        (28.34, 38.56),
        (33.13, 45.05),
        (47.48, 63.68),
    ),
    (20, "calm"): (
        (4.76, 8.36),
        (7.02, 12.34),
        (9.90, 17.40),
        (13.37, 23.48),
        (13.51, 23.73),
        (15.75, 27.67),
        (19.06, 33.48),
        (29.90, 52.52),
    ),
    (20, "U 2"): (
        (2.98, 4.32),
        (4.34, 6.24),
        (6.00, 8.57),
        (7.99, 11.38),
        (8.15, 11.64),
        (9.52, 13.58),
        (11.41, 16.24),
        (17.71, 25.07),
    ),
    (20, "U 4"): (
        (2.97, 4.36),
        (4.32, 6.32),
        (5.99, 8.71),
        (7.99, 11.57),
        (8.14, 11.83),
        (9.50, 13.79),
        (11.40, 16.50),
        (17.69, 25.48),
    ),
    (30, "calm"): (
        (2.18, 3.83),
        (3.32, 5.83),
        (4.91, 8.62),
        (6.91, 12.15),
        (6.74, 11.84),
        (7.80, 13.70),
        (9.72, 17.07),
        (15.43, 27.11),
    ),
    (30, "U 2"): (
        (1.37, 1.96),
        (2.07, 2.94),
        (3.00, 4.24),
        (4.13, 5.81),
        (4.10, 5.80),
        (4.76, 6.74),
        (5.85, 8.25),
        (9.24, 12.99),
    ),
    (30, "U 4"): (
        (1.30, 1.90),
        (1.97, 2.86),
        (2.86, 4.14),
        (3.95, 5.70),
        (3.91, 5.67),
        (4.54, 6.58),
        (5.59, 8.07),
        (8.82, 12.70),
    ),
    (40, "calm"): (
        (1.24, 2.18),
        (1.91, 3.36),
        (2.90, 5.10),
        (4.24, 7.44),
        (4.00, 7.03),
        (4.60, 8.08),
        (5.86, 10.29),
        (9.34, 16.40),
    ),
    (40, "U 2"): (
        (0.80, 1.12),
        (1.23, 1.72),
        (1.84, 2.56),
        (2.62, 3.61),
        (2.53, 3.51),
        (2.91, 4.06),
        (3.66, 5.07),
        (5.82, 8.05),
    ),
    (40, "U 4"): (
        (0.72, 1.04),
        (1.11, 1.59),
        (1.66, 2.37),
        (2.37, 3.37),
        (2.28, 3.26),
        (2.63, 3.76),
        (3.31, 4.71),
        (5.25, 7.47),
    ),
    (50, "calm"): (
        (0.80, 1.40),
        (1.24, 2.18),
        (1.91, 3.35),
        (2.85, 5.01),
        (2.63, 4.63),
        (3.02, 5.30),
        (3.90, 6.84),
        (6.22, 10.92),
    ),
    (50, "U 2"): (
        (0.54, 0.75),
        (0.83, 1.15),
        (1.27, 1.75),
        (1.86, 2.54),
        (1.75, 2.40),
        (2.01, 2.77),
        (2.56, 3.52),
        (4.09, 5.60),
    ),
    (50, "U 4"): (
        (0.46, 0.65),
        (0.72, 1.01),
        (1.09, 1.53),
        (1.59, 2.23),
        (1.50, 2.11),
        (1.72, 2.42),
        (2.20, 3.08),
        (3.50, 4.91),
    ),
}


def from_bank(water, range_m, bank=0.5):
    look_down = float(np.rad2deg(np.arctan(1.3 / range_m)))
    return water and Clutter(*water, bank, look_down)


@pytest.mark.parametrize("place", list(LEVELS))
def test_worked_levels(place):
    yards, water = place
    range_m = yards * 0.9144
    for (d, h), (old, young) in zip(TIPS, LEVELS[place], strict=True):
        for age, expected in ((60.0, old), (25.0, young)):
            level = visibility_level(
                d, [0.0, h], [[-0.95, 0.0, 0.0]], range_m=range_m, adaptation_cd_m2=733.0,
                eye=Eye(age), clutter=from_bank(WATERS[water], range_m),
            )  # fmt: skip
            assert float(level) == pytest.approx(expected, rel=5e-3, abs=5.1e-3)


@pytest.mark.parametrize(
    ("d", "h", "yards", "contrast", "expected"),
    [(3.0, 31.75, 20, 8.0, 19.8), (3.0, 31.75, 40, 8.0, 5.8), (5.0, 30.0, 40, 8.0, 9.2),
     (5.0, 40.0, 40, -0.8, 1.1)],
)  # fmt: skip
def test_worked_levels_on_half_dark_water(d, h, yards, contrast, expected):
    range_m = yards * 0.9144
    level = visibility_level(
        d, [0.0, h], [[contrast, 0.0, 0.0]], range_m=range_m, adaptation_cd_m2=300.0,
        eye=Eye(60.0), clutter=from_bank((0.77, 127.0, 0.064), range_m, 10.0),
    )  # fmt: skip
    assert float(level) == pytest.approx(expected, abs=0.06)


def spectrum(water, fx_per_mm):
    return clutter.spectra([water], np.reshape(fx_per_mm, (1, -1)))[0]


RIPPLE = Clutter(0.165, 127.0, 0.064, 0.5, 2.0)
waters = st.builds(
    Clutter, st.floats(0.0, 2.0), st.floats(10.0, 1000.0), st.floats(0.005, 0.2),
    st.floats(0.0, 40.0), st.floats(0.5, 25.0),
)  # fmt: skip


@settings(deadline=None, derandomize=True, max_examples=100)
@given(waters)
def test_every_water_has_a_finite_falling_spectrum(water):
    found = spectrum(water, np.geomspace(1e-4, 1.0, 50))
    assert np.all(np.isfinite(found))
    assert np.all(found >= 0.0)
    assert np.all(np.diff(found) <= 0.0)


@settings(deadline=None, derandomize=True, max_examples=60)
@given(st.floats(74.0, 480.0), st.floats(0.056, 0.107), st.floats(1.5, 9.0))
def test_no_step_between_open_and_banked_water(length, slope, down):
    skylines = np.linspace(0.5, 6.0, 56)
    made = clutter.shape([Clutter(0.3, length, slope, bank, down) for bank in skylines])
    for part in made:
        assert np.abs(np.diff(np.log(part))).max() < 0.35


def test_half_way_in_the_logarithm():
    low, mid, high = (
        clutter.shape([Clutter(0.3, 127.0, 0.064, bank, 2.0)])[0][0]
        for bank in (0.999, 2.5, 4.001)
    )
    open_, banked = clutter._OPEN, clutter._BANKED
    z = 0.5 * np.deg2rad(2.5) / 0.064
    terms = [1.0, np.log(1.27), np.log(np.tan(np.deg2rad(2.0)) / 0.064), np.log(0.8), z, z**2]
    assert np.log(mid) == pytest.approx(0.5 * (open_[0] @ terms + banked[0] @ terms))
    assert min(low, high) * 0.5 < mid < max(low, high) * 2.0


def test_a_bank_by_hand():
    # half of 20 deg over a slope of 0.056 is 3.1, held at 3; ripple of 100 mm, look-down as steep
    # as the slope: ln B0 = 3.407 + 1.875 ln 0.7 + 1.957 x 3 - 0.373 x 9 = 5.2522
    water = Clutter(0.5, 100.0, 0.056, 20.0, float(np.rad2deg(np.arctan(0.056))))
    assert np.log(clutter.shape([water])[0][0]) == pytest.approx(5.2522, abs=1e-4)


def test_the_spectrum_grows_with_the_square_of_the_contrast():
    double = Clutter(0.33, 127.0, 0.064, 0.5, 2.0)
    one, two = (spectrum(c, [0.0, 0.01]) for c in (RIPPLE, double))
    np.testing.assert_allclose(two, 4.0 * one)


def test_the_power_of_the_streaks_is_about_the_contrast_squared():
    # flat up the picture and halved by 0.15 cycles/mm, so about 0.3 wide over both signs
    fx = np.linspace(-0.15, 0.15, 20001)
    power = np.trapezoid(spectrum(RIPPLE, fx), fx) * 0.3
    assert 0.5 < power / 0.165**2 < 2.0


def test_sparkles_lie_on_top():
    lane = Clutter(0.165, 127.0, 0.064, 0.5, 2.0, sparkle_mm2=7.0)
    more = spectrum(lane, [0.0, 0.1]) - spectrum(RIPPLE, [0.0, 0.1])
    np.testing.assert_allclose(more, 7.0)
    assert not Clutter(0.0, 127.0, 0.064, 0.5, 2.0, sparkle_mm2=7.0).is_nothing
    assert Clutter(0.0, 127.0, 0.064, 0.5, 2.0).is_nothing
    assert Clutter(0.2, 127.0, 0.064, 0.5, 2.0, factor=0.0).is_nothing


def test_factor_is_on_the_power_of_the_noise():
    seen = {"range_m": 36.6, "adaptation_cd_m2": 700.0, "eye": Eye(60.0)}
    tip = (4.0, [0.0, 33.0], [[-0.95, 0.0, 0.0]])
    by_factor = visibility_level(
        *tip, **seen, clutter=Clutter(0.165, 127.0, 0.064, 0.5, 2.0, factor=4.0)
    )
    by_contrast = visibility_level(*tip, **seen, clutter=Clutter(0.33, 127.0, 0.064, 0.5, 2.0))
    assert float(by_factor) == pytest.approx(float(by_contrast), rel=1e-12)


def test_what_is_held_at_the_edge_is_said():
    assert clutter.outside_domain(RIPPLE) == ()
    wild = Clutter(0.2, 20.0, 0.004, 30.0, 15.0)
    edge = Clutter(0.2, 74.0, 0.056, 20.0, 9.0)
    assert clutter.outside_domain(wild) == (
        Outside("peak_wavelength_mm", 20.0, 74.0, 480.0, "mm"),
        Outside("slope_rms", 0.004, 0.056, 0.107, ""),
        Outside("bank_height_deg", 30.0, 0.5, 20.0, "deg"),
        Outside("look_down_deg", 15.0, 1.5, 9.0, "deg"),
    )
    np.testing.assert_allclose(spectrum(wild, [0.0, 0.1]), spectrum(edge, [0.0, 0.1]))
    assert clutter.outside_domain(Clutter(0.0, 20.0, 0.004, 30.0, 15.0)) == ()
    assert [out.value for out in clutter.outside_domain(Clutter(0.2, 1320.0, 0.08, 5.0, 2.0))] == [
        1320.0
    ]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"facet_contrast": -0.1}, "contrast of the water's facets must be 0 to 1000, got -0.1"),
        ({"peak_wavelength_mm": 0.0}, "length of the ripple must be 0.001 to 1e+06 mm, got 0 mm"),
        ({"slope_rms": 0.0}, "slope of the ripple must be 1e-06 to 1, got 0"),
        ({"bank_height_deg": 91.0}, "height of the far bank must be 0 to 90 deg, got 91 deg"),
        ({"look_down_deg": 0.0}, "look-down must be 0.001 to 90 deg, got 0 deg"),
        ({"sparkle_mm2": -1.0}, "density of sparkles must be 0 to 1e+12 mm2, got -1 mm2"),
        ({"factor": -1.0}, "factor on the streaks must be 0 to 1000, got -1"),
    ],
)
def test_what_is_out_of_range_is_said(change, words):
    whole = {"facet_contrast": 0.2, "peak_wavelength_mm": 127.0, "slope_rms": 0.064,
             "bank_height_deg": 0.5, "look_down_deg": 2.0}  # fmt: skip
    with pytest.raises(OutOfRange) as told:
        Clutter(**(whole | change))
    assert str(told.value) == words
