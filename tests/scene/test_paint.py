"""Paint: energy, fading, names, and what the fluorescent ones do in other lights."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs.case import Finish
from tipsight.scene import daylight, observer, paint, reflectance, spectra

NAMES = [row["name"] for row in tables.rows("paints")]
GLOWING = [row["name"] for row in tables.rows("paints") if row["fluorescent"]]


def luminance_factor(name, light):
    """Share of a light's lumens that a paint gives back, matt and over white."""
    return float(spectra.luminous(paint.surface(Finish(name)) @ light) / spectra.luminous(light))


# The fit of the rows to D65 (computed with CIE 1931; every 5 nm moves it by less than 0.002).
@pytest.mark.parametrize(
    ("name", "factor"),
    [
        ("fluorescent yellow", 0.980), ("fluorescent orange", 0.480), ("fluorescent red", 0.330),
        ("fluorescent pink", 0.520), ("white", 0.850), ("red", 0.088), ("yellow", 0.642),
        ("orange", 0.275), ("green", 0.140), ("blue", 0.046), ("black", 0.026),
        ("felt pen", 0.05),
    ],
)  # fmt: skip
def test_luminance_factor(name, factor):
    assert luminance_factor(name, spectra.daylight(6504.0)) == pytest.approx(factor, abs=2e-3)


# The same paints under other lights, over D65 (computed): blue light of dusk favours those that
# glow, lamp light the plain ones.
@pytest.mark.parametrize(
    ("name", "kelvin", "ratio"),
    [
        ("fluorescent yellow", 4000, 0.93), ("fluorescent yellow", 10000, 1.08),
        ("fluorescent orange", 4000, 0.95), ("fluorescent orange", 25000, 1.19),
        ("fluorescent red", 25000, 1.17), ("fluorescent pink", 25000, 1.19),
        ("orange", 4000, 1.15), ("orange", 25000, 0.84), ("red", 25000, 0.81),
        ("yellow", 25000, 0.93),
    ],
)  # fmt: skip
def test_other_lights(name, kelvin, ratio):
    found = luminance_factor(name, spectra.daylight(kelvin))
    assert found / luminance_factor(name, spectra.daylight(6504.0)) == pytest.approx(
        ratio, abs=0.006
    )


@pytest.mark.parametrize("name", GLOWING)
def test_no_more_quanta_leave_than_come(name):
    nm = spectra.WAVELENGTHS_NM
    whole = np.diag(paint.reflected_part(name)) + paint.glowing_part(name)
    quanta = (whole * nm[:, None] / nm[None, :]).sum(axis=0)
    assert quanta.max() <= 1.0
    power = whole.sum(axis=0)
    assert power.max() <= 1.0


@pytest.mark.parametrize("name", GLOWING)
def test_glow_is_of_longer_wavelength(name):
    assert not np.triu(paint.glowing_part(name)).any()


@pytest.mark.parametrize("name", NAMES)
def test_reflectance_keeps_its_bounds(name):
    part = paint.reflected_part(name)
    assert part.min() >= 0.0
    assert part.max() <= 1.0


@given(name=st.sampled_from(GLOWING), seasons=st.floats(0.0, 20.0))
@settings(deadline=None, derandomize=True, max_examples=30)
def test_glow_halves_in_two_seasons(name, seasons):
    reflected = np.diag(paint.reflected_part(name))
    fresh = paint.surface(Finish(name)) - reflected
    faded = paint.surface(Finish(name, seasons=seasons)) - reflected
    np.testing.assert_allclose(faded, fresh * 0.5 ** (seasons / 2.0), atol=1e-15)


def test_plain_paint_does_not_fade():
    fresh, old = paint.surface(Finish("orange")), paint.surface(Finish("orange", seasons=10.0))
    np.testing.assert_array_equal(fresh, old)


@pytest.mark.parametrize("name", ["fluorescent orange", "white"])
def test_no_white_beneath(name):
    full, dull = paint.surface(Finish(name)), paint.surface(Finish(name, undercoat=False))
    np.testing.assert_allclose(dull, 0.7 * full)


def test_channels_are_light_by_light():
    channels = observer.channels("green-weak", "amber")
    finish = Finish("fluorescent pink", seasons=1.0)
    found = paint.paint_channels([Finish("black"), finish], channels)
    one = paint.surface(finish) @ daylight.basis().spectra[4]
    np.testing.assert_allclose(found[1, 4], one @ channels / math.pi)
    assert paint.paint_channels([], channels).shape == (0, 15, 4)


def test_table():
    table = tables.rows("paints")
    assert all(row["source"] for row in table)
    assert {row["name"] for row in table if row["on_shelf"]} >= {"white", "black"}


@pytest.mark.parametrize(
    "call", [paint.reflected_part, paint.glowing_part, lambda name: paint.surface(Finish(name))]
)
def test_unknown_paint(call):
    with pytest.raises(Mistakes, match="paint: 'tartan' will not do; say one of white, black"):
        call("tartan")


def test_seasons_out_of_range():
    with pytest.raises(OutOfRange, match="seasons must be 0 to 50, got 60"):
        paint.surface(Finish("white", seasons=60.0))


@pytest.mark.parametrize(
    ("change", "text"),
    [
        ({"step": "1.2"}, "reflectance of red must be 0 to 1"),
        ({"width_nm": "0"}, "width of a spectrum's edge must be 0.1 to 500 nm, got 0 nm"),
    ],
)
def test_bad_row(change, text):
    row = {**next(r for r in tables.rows("paints") if r["name"] == "red"), **change}
    with pytest.raises(OutOfRange, match=text):
        reflectance.smooth(row)
