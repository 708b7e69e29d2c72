"""The colour of light, the observer and the tints."""

from datetime import datetime
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs import sun
from tipsight.inputs.case import Light
from tipsight.scene import daylight, observer, sky, spectra

properties = settings(deadline=None, derandomize=True, max_examples=60)
lights = st.builds(
    Light,
    sky_type=st.integers(1, 15),
    turbidity=st.floats(1.5, 8.0),
    beam=st.booleans(),
    sun_height_deg=st.floats(-12.0, 90.0),
)
VISIONS = ("normal", "red-weak", "red-blind", "green-weak", "green-blind")


def mired(weights: np.ndarray) -> np.ndarray:
    return weights @ daylight.basis().mired


@properties
@given(lights, st.floats(0.0, 90.0), st.floats(-360.0, 360.0))
def test_every_mix_is_whole(light: Light, height: float, from_sun: float) -> None:
    state = sky.sky_state(light)
    bright = sky.luminance(state, height, from_sun)
    for mix in (
        daylight.sky_weights(state, bright, height, from_sun),
        daylight.beam_weights(state),
        daylight.diffuse_weights(state),
        daylight.ground_weights(state),
    ):
        assert mix.sum() == pytest.approx(1.0, abs=1e-12)
        assert mix.min() >= 0


@properties
@given(lights, st.floats(0.0, 90.0), st.floats(-180.0, 180.0))
def test_colour_of_the_sky_has_no_jumps(light: Light, height: float, from_sun: float) -> None:
    nudged = Light(
        light.sky_type, light.turbidity, light.beam, max(light.sun_height_deg - 1e-4, -12.0)
    )
    here, there = (
        daylight.sky_mired(
            state := sky.sky_state(one), sky.luminance(state, height, from_sun), height, from_sun
        )
        for one in (light, nudged)
    )
    assert here == pytest.approx(there, abs=0.3)


@properties
@given(st.floats(40.0, 652.0))
def test_weights_give_back_their_mired(value: float) -> None:
    assert mired(daylight.weights(value)) == pytest.approx(value, abs=1e-9)


@pytest.mark.parametrize("kelvin", [4300, 5000, 5800, 7200, 9000, 11500, 15000, 21000])
def test_mixing_two_nodes_stays_by_the_spectrum_between_them(kelvin: float) -> None:
    mixed = daylight.weights(1e6 / kelvin) @ daylight.basis().spectra
    wanted = spectra.daylight(kelvin)
    seen = observer.channels()
    assert mixed @ seen == pytest.approx(wanted @ seen, abs=0.06)
    assert (mixed @ seen)[0] == pytest.approx((wanted @ seen)[0], rel=1e-3)
    visible = (spectra.WAVELENGTHS_NM >= 400) & (spectra.WAVELENGTHS_NM <= 700)
    assert mixed[visible] == pytest.approx(wanted[visible], rel=0.04)


@pytest.mark.parametrize(
    ("height", "kelvin"),
    [(2, 10468), (3, 10274), (5, 9613), (7, 9176), (10, 8935), (15, 8971), (20, 9143), (30, 9492)],
)
def test_low_sun_sky_is_as_its_table_was_fitted(height: float, kelvin: float) -> None:
    state = sky.sky_state(Light(sky_type=12, sun_height_deg=height))
    assert mired(daylight.diffuse_weights(state)) == pytest.approx(1e6 / kelvin, rel=0.03)


def test_sun_warms_as_it_sinks_and_sky_cools_at_dusk() -> None:
    heights = (60, 30, 10, 5, 2)
    suns = [mired(daylight.beam_weights(sky.sky_state(Light(sun_height_deg=h)))) for h in heights]
    assert np.diff(suns).min() > 0
    dusk = [
        mired(daylight.diffuse_weights(sky.sky_state(Light(sky_type=12, sun_height_deg=h))))
        for h in (0.0, -3.0, -6.0, -9.0)
    ]
    assert np.diff(dusk).max() < 0


def test_sun_between_two_rows_of_its_colour() -> None:
    """At 4 deg ln(5/4) / ln(6/4) = 0.5503 of the way from 441.70 to 352.36 mired (by hand)."""
    state = sky.sky_state(Light(sky_type=12, beam=True, sun_height_deg=4.0))
    assert mired(daylight.beam_weights(state)) == pytest.approx(392.53, abs=0.01)


def test_glow_lies_over_the_sun() -> None:
    state = sky.sky_state(Light(sky_type=12, sun_height_deg=-1.0))
    over, high, behind = daylight.sky_mired(state, 10.0, [3.0, 60.0, 3.0], [0.0, 0.0, 180.0])
    assert over > 200 > high == pytest.approx(behind)
    assert daylight.sky_mired(state, 10.0, 3.0, 360.0) == pytest.approx(over)


def test_bluest_sky_is_held_at_the_end_of_the_daylight_locus() -> None:
    state = sky.sky_state(Light(sky_type=12, sun_height_deg=60.0))
    assert daylight.sky_mired(state, 100.0, 60.0, 120.0) == 40.0
    assert daylight.weights([10.0, 900.0])[[0, 1], [0, -1]].tolist() == [1.0, 1.0]


@pytest.mark.parametrize("vision", VISIONS)
def test_all_eyes_agree_on_the_luminance_of_daylight(vision: observer.ColourVision) -> None:
    seen = spectra.daylight(6504.0) @ observer.channels(vision)
    assert seen[0] == pytest.approx(1.0, abs=1e-9)
    assert seen[1:3] == pytest.approx(0.0, abs=0.01)


def test_a_weak_eye_lies_between_and_a_blind_one_has_no_red_green() -> None:
    for colour in ("red", "green"):
        normal, weak, blind = (
            observer.channels(word)
            for word in ("normal", f"{colour}-weak", f"{colour}-blind")  # type: ignore[arg-type]
        )
        assert weak == pytest.approx(0.4 * normal + 0.6 * blind)
        assert not blind[:, 1].any()


def test_red_is_dark_to_the_red_blind_and_bright_to_the_green_blind() -> None:
    red = np.where(spectra.WAVELENGTHS_NM > 600, 0.8, 0.03)
    normal, red_blind, green_blind = (
        (spectra.daylight(6504.0) * red @ observer.channels(vision))[0]
        for vision in ("normal", "red-blind", "green-blind")
    )
    assert red_blind < 0.8 * normal < normal < green_blind


def test_a_matt_surface_reflects_by_lambert_and_a_matrix_may_shift_light() -> None:
    eye = observer.channels()
    white = observer.reflected(np.ones(97), eye)
    assert white == pytest.approx(observer.seen(eye) / np.pi)
    matrix = np.zeros((97, 97))
    matrix[spectra.WAVELENGTHS_NM == 520, spectra.WAVELENGTHS_NM == 400] = 0.5
    glow = observer.reflected(matrix, eye)
    at_400 = daylight.basis().spectra[:, spectra.WAVELENGTHS_NM == 400][:, 0]
    assert glow == pytest.approx(
        np.outer(0.5 * at_400, eye[spectra.WAVELENGTHS_NM == 520][0]) / np.pi
    )


def test_tints_darken_all_channels_and_grey_leaves_the_hue() -> None:
    clear, grey = observer.channels(), observer.channels("normal", "grey")
    assert grey == pytest.approx(0.15 * clear)
    violet = spectra.WAVELENGTHS_NM == 420
    assert observer.transmittance("amber")[violet] < 0.5 * observer.transmittance("grey").max()


@properties
@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_only_a_polariser_tells_the_halves_apart(upright: float, level: float) -> None:
    assert observer.passed(upright, level, "brown") == pytest.approx((upright + level) / 2)
    assert observer.passed(upright, upright, "polarised") == pytest.approx(upright)
    worn = observer.passed(upright, level, "polarised")
    assert worn == pytest.approx((100 * upright + level) / 101)


def test_a_tint_that_makes_light_is_refused(tmp_path: Path) -> None:
    (tmp_path / "tints.csv").write_text(
        "name,says,transmittance,low,edge_nm,width_nm,polarised,source\nrose,,0.9,0.1,600,5,no,own\n"
    )
    refused = pytest.raises(OutOfRange, match="transmittance of the rose tint must be 0 to 1, got")
    with tables.using(tmp_path), refused:
        observer.transmittance("rose")  # type: ignore[arg-type]


REFUSED = [
    (lambda: observer.channels("tired"), "colour vision: 'tired' will not do; say normal, red"),
    (lambda: observer.transmittance("pink"), "tint: 'pink' will not do; say none, grey, amber"),
    (lambda: observer.passed(0.1, 0.1, "pink"), "tint: 'pink' will not do"),
    (lambda: observer.reflected(np.ones(81), np.ones((97, 4))), "wavelengths of a reflectance"),
    (lambda: observer.reflected(np.ones((1, 97)), np.ones((97, 4))), "reflectance must be 97 to"),
    (lambda: observer.reflected(0.5, np.ones((97, 4))), "dimensions of a reflectance must be 1"),
    (lambda: spectra.daylight(3999), "colour temperature must be 4000 to 25000 K, got 3999 K"),
    (lambda: spectra.daylight_xy(3e4), "colour temperature must be 4000 to 25000 K, got 30000 K"),
    (lambda: spectra.planck(900), "colour temperature must be 1000 to 25000 K, got 900 K"),
    (lambda: sun.position(datetime(2026, 6, 1, 12), 52, 0), "say the time zone too"),
    (lambda: sun.position(datetime.now().astimezone(), 91, 0), "latitude must be -90 to 90 deg"),
    (lambda: sun.position(datetime.now().astimezone(), 0, 181), "longitude must be -180 to 180"),
]


@pytest.mark.parametrize(("ask", "text"), REFUSED, ids=[text for _, text in REFUSED])
def test_what_will_not_do_is_refused(ask, text: str) -> None:
    with pytest.raises((OutOfRange, Mistakes)) as caught:
        ask()
    assert text in str(caught.value)


@pytest.mark.parametrize(
    "name",
    [
        *("cones", "d_series", "general_sky", "kittler", "usno", "sun_colour", "twilight_colour"),
        *("skies", "tints"),
    ],
)
def test_every_row_names_its_source(name: str) -> None:
    kinds = ("published: ", "common practice", "from memory", "judgement", "computed")
    assert all(row["source"].startswith(kinds) for row in tables.rows(name))


def test_cached_arrays_cannot_be_written_to() -> None:
    for array in (observer.channels(), observer.cones(), observer.transmittance("none")):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 1.0
