"""The sky hangs together: what it sheds, how it dims, and what it refuses."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import OutOfRange
from tipsight.inputs.case import Light
from tipsight.scene import general_sky, mist, sky, sky_scale

properties = settings(deadline=None, derandomize=True, max_examples=60)
lights = st.builds(
    Light,
    sky_type=st.integers(1, 15),
    turbidity=st.floats(1.5, 8.0),
    beam=st.booleans(),
    sun_height_deg=st.floats(-12.0, 90.0),
)


@properties
@given(lights, st.floats(0.0, 90.0), st.floats(-360.0, 360.0))
def test_luminance_is_positive_and_the_same_on_both_sides(
    light: Light, height: float, from_sun: float
) -> None:
    state = sky.sky_state(light)
    here = sky.luminance(state, height, from_sun)
    assert here > 0
    assert here == pytest.approx(sky.luminance(state, height, -from_sun), rel=1e-9)
    assert here == pytest.approx(sky.luminance(state, height, from_sun + 360.0), rel=1e-9)


@properties
@given(lights)
def test_the_whole_sky_sheds_its_diffuse_light(light: Light) -> None:
    state = sky.sky_state(light)
    height, azimuth, weight = general_sky.nodes(60, 120)
    bright = sky.luminance(state, height, azimuth)
    shed = np.sum(bright * np.sin(np.radians(height)) * weight)
    assert shed == pytest.approx(state.diffuse_lx, rel=2e-4)


@properties
@given(lights, st.floats(-180.0, 180.0))
def test_two_walls_back_to_back_share_the_sky(light: Light, facing: float) -> None:
    state = sky.sky_state(light)
    walls = sky.vertical_lx(state, [facing, facing + 180.0])
    height, azimuth, weight = general_sky.nodes(60, 120)
    part = sky.luminance(state, height, azimuth) * np.cos(np.radians(height)) * weight / 2
    turned, front = np.radians(azimuth), math.radians(facing)
    both = np.abs(np.cos(turned - front)) + np.abs(np.cos(-turned - front))
    assert walls.sum() == pytest.approx(float(np.sum(part * both)), rel=3e-3)


@pytest.mark.parametrize("turbidity", [1.5, 3.5, 5.0, 8.0])
@pytest.mark.parametrize("sky_type", range(1, 16))
def test_a_higher_sun_never_sheds_less(sky_type: int, turbidity: float) -> None:
    heights = np.concatenate([np.arange(-12.0, 6.0, 0.1), np.arange(6.0, 90.5, 1.0)])
    states = [
        sky.sky_state(
            Light(sky_type=sky_type, turbidity=turbidity, beam=sky_type > 6, sun_height_deg=height)
        )
        for height in heights.tolist()
    ]
    assert np.diff([sky.global_lx(state) for state in states]).min() >= 0


@pytest.mark.parametrize("sky_type", range(1, 16))
@pytest.mark.parametrize("joint", [-12.0 + 1e-6, -9.0, 0.0, 3.0, 70.0])
def test_no_jump_where_two_formulas_meet(sky_type: int, joint: float) -> None:
    below, above = (
        sky.sky_state(Light(sky_type=sky_type, sun_height_deg=joint + side)).diffuse_lx
        for side in (-1e-6, 1e-6)
    )
    assert below == pytest.approx(above, rel=1e-4)


def test_twilight_never_dims_as_the_sun_rises() -> None:
    assert np.diff(sky_scale.usno_lx(np.arange(-18.0, 90.0, 0.01))).min() > 0
    for joint in (-12.0, -5.0, -0.8, 5.0, 20.0):
        fine = sky_scale.usno_lx(joint + np.linspace(-0.5, 0.5, 1001))
        assert np.diff(fine).min() > 0


def test_zenith_formula_worked_by_hand() -> None:
    """Type 12, turbidity 3.5, sun 60: 3.755 by the sine, 2.782 by the glow, 0.14 besides."""
    state = sky.sky_state(Light(sky_type=12, turbidity=3.5, sun_height_deg=60.0))
    assert sky.luminance(state, 90.0, 0.0) == pytest.approx(6677, rel=1e-3)
    low = sky.sky_state(Light(sky_type=12, turbidity=3.5, sun_height_deg=5.0))
    assert sky.luminance(low, 90.0, 70.0) == pytest.approx(518, rel=1e-3)


def test_zenith_formula_holds_from_three_degrees_up() -> None:
    """4.336 sin 3 + 3.15 sin^4.43 3 / cos^0.74 3 + 0.14 = 0.36694 kcd/m2 (by hand)."""
    just = sky.sky_state(Light(sky_type=12, turbidity=3.5, sun_height_deg=3.0))
    assert sky.luminance(just, 90.0, 0.0) == pytest.approx(366.94, rel=1e-4)


def test_half_way_up_to_three_degrees_both_formulas_count_alike() -> None:
    light = Light(sky_type=12, turbidity=3.5, sun_height_deg=1.5)
    day = (4.336 * math.sin(math.radians(1.5)) + 0.14) * 1000.0  # the glow is under 1e-6 there
    day *= general_sky.horizontal_sr(12, 1.5)
    both = math.sqrt(day * sky_scale.usno_lx(1.5).item())
    assert sky.sky_state(light).diffuse_lx == pytest.approx(both, rel=1e-4)


def test_above_seventy_degrees_a_clear_sky_grows_as_the_sine() -> None:
    """sin 80 / sin 70 = 1.04801."""
    at = [sky.sky_state(Light(sky_type=12, sun_height_deg=h)).diffuse_lx for h in (70.0, 80.0)]
    assert at[1] / at[0] == pytest.approx(1.04801, abs=1e-5)


@pytest.mark.parametrize(
    ("sky_type", "sun_height", "lux"), [(2, 0.0, 300.0), (4, 30.0, 15018.0), (6, 30.0, 25722.0)]
)
def test_even_overcast_types_by_their_share(sky_type: int, sun_height: float, lux: float) -> None:
    """300 lx and 0.18, 0.22, 0.38 of 133 800 sin h (by hand)."""
    state = sky.sky_state(Light(sky_type=sky_type, sun_height_deg=sun_height))
    assert state.diffuse_lx == pytest.approx(lux, rel=1e-9)


def test_pieces_of_the_twilight_formula_are_joined_over_a_third_of_a_degree() -> None:
    """At -5.2 deg: 5/6 of 0.922181 and 1/6 of 0.923784, logarithms of its two pieces (by hand)."""
    assert sky_scale.usno_lx(-5.2) == pytest.approx(8.36466, rel=2e-6)


@pytest.mark.parametrize(("sun_height", "share"), [(-9.0, 0.0), (-10.5, 0.5), (-12.0, 1.0)])
def test_dusk_evens_out_step_by_step(sun_height: float, share: float) -> None:
    assert sky.sky_state(Light(sun_height_deg=sun_height)).uniform_share == pytest.approx(share)


def test_dusk_ends_in_a_uniform_sky() -> None:
    state = sky.sky_state(Light(sky_type=12, sun_height_deg=-12.0))
    bright = sky.luminance(state, [0.0, 10.0, 90.0], [0.0, 120.0, 0.0])
    assert bright == pytest.approx(np.full(3, state.diffuse_lx / math.pi))


def test_no_beam_from_a_sun_that_is_hidden_or_down() -> None:
    assert sky.sky_state(Light(sky_type=12, beam=False)).beam_normal_lx == 0
    assert sky.sky_state(Light(sky_type=12, beam=True, sun_height_deg=-0.1)).beam_normal_lx == 0


def test_bright_overcast_is_brighter_than_dull() -> None:
    dull, bright = (sky.sky_state(Light(sky_type=kind)).diffuse_lx for kind in (1, 3))
    assert dull < bright


def test_sky_broadcasts() -> None:
    state = sky.sky_state(Light(sky_type=12))
    assert sky.luminance(state, np.ones((3, 1)), np.ones(4)).shape == (3, 4)
    assert sky.vertical_lx(state, np.ones((2, 3))).shape == (2, 3)
    assert sky_scale.beam_normal_lx(np.ones((3, 1)), np.full(2, 3.0)).shape == (3, 2)


@properties
@given(st.floats(0.0, 1000.0), st.floats(20.0, 3e5), st.floats(1.01, 2.0))
def test_more_mist_or_more_way_lets_less_through(way: float, seen: float, more: float) -> None:
    here = mist.transmittance(way, seen)
    assert 0 <= here <= 1
    assert mist.transmittance(way / more, seen) >= here
    assert mist.transmittance(way, min(seen * more, 3e5)) >= here


REFUSED = [
    (lambda: sky.sky_state(Light(sun_height_deg=-13)), "height of the sun must be -12 to 90 deg"),
    (lambda: sky.sky_state(Light(sun_height_deg=math.nan)), "height of the sun must be -12 to 90"),
    (lambda: sky.sky_state(Light(turbidity=9.0)), "turbidity must be 1.5 to 8, got 9"),
    (lambda: sky.sky_state(Light(sky_type=16)), "type of sky must be 1 to 15, got 16"),
    (lambda: general_sky.relative(0, 1, 1, 1), "type of sky must be 1 to 15, got 0"),
    (lambda: general_sky.relative(1, -1, 1, 1), "height above the horizon must be 0 to 90 deg"),
    (lambda: general_sky.relative(1, 1, 1, -1), "height of the sun must be 0 to 90 deg, got -1"),
    (lambda: general_sky.horizontal_sr(1, 91), "height of the sun must be 0 to 90 deg"),
    (lambda: sky_scale.usno_lx(-18.5), "height of the sun must be -18 to 90 deg, got -18.5 deg"),
    (lambda: sky_scale.air_mass(-0.1), "height of the sun must be 0 to 90 deg, got -0.1 deg"),
    (lambda: sky_scale.beam_normal_lx(10, 1), "turbidity must be 1.5 to 8, got 1"),
    (lambda: mist.transmittance(-1, 1000), "range must be 0 to 1000 m, got -1 m"),
    (lambda: mist.transmittance(1, 10), "visibility must be 20 to 300000 m, got 10 m"),
]


@pytest.mark.parametrize(("ask", "text"), REFUSED, ids=[text for _, text in REFUSED])
def test_what_is_out_of_range_is_refused(ask, text: str) -> None:
    with pytest.raises(OutOfRange) as caught:
        ask()
    assert text in str(caught.value)
