"""What surrounds the water: sky and bank by direction, light on the tip, glare, its own colour."""

import math
from dataclasses import replace

import numpy as np
import pytest

from tipsight import tables
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs.case import Angler, Light, Stream, Stretch, Wind
from tipsight.scene import bank, cylinder, daylight, fresnel, glare, observer, sky, water_body
from tipsight.scene.setting import _tip_nodes, around, setting, sky_channels, tip_lx

SUNNY = Light(sky_type=12, beam=True, sun_height_deg=30.0, sun_bearing_deg=60.0)
BRIGHT, BROKEN = Stretch(), Stretch("broken", bank_height_deg=10.0)


def at(light, stretch=BRIGHT, stream=None):
    return setting(light, stretch, Wind(speed_m_s=3.0), stream or Stream(), Angler())


def test_uniform_sky_lights_a_stick_by_half():
    """∫ L cos e G dω = π L / 2 without the images in the water (elementary)."""
    height, azimuth, weight = _tip_nodes(0.0)
    part = weight * np.cos(np.radians(height)) * cylinder.seen_share(azimuth)
    assert part.sum() == pytest.approx(math.pi / 2.0, rel=1e-6)
    here = at(Light(sky_type=5), Stretch(bank_height_deg=0.0), stream=Stream(water_colour="tea"))
    image = (part * fresnel.level_reflectance(height).mean).sum() / math.pi
    level = tip_lx(here).sum() / here.state.diffuse_lx
    assert level == pytest.approx(0.5 + image + 0.0019 / 2.0, rel=1e-4)


@pytest.mark.parametrize("bearing", [0.0, 60.0, 120.0, 180.0])
def test_sun_on_the_stick(bearing):
    light = replace(SUNNY, sun_bearing_deg=bearing)
    with_sun, without = tip_lx(at(light)), tip_lx(at(replace(light, beam=False)))
    state = sky.sky_state(light)
    image = 1.0 + float(fresnel.level_reflectance(30.0).mean)
    beam = state.beam_normal_lx * math.cos(math.radians(30.0)) * image
    below = 0.0245 * state.beam_normal_lx * math.sin(math.radians(30.0)) / 2.0
    expected = beam * float(cylinder.seen_share(180.0 - bearing)) + below
    assert (with_sun - without).sum() == pytest.approx(expected, rel=0.01)


def test_sky_at_the_back_lights_the_tip_best():
    light = replace(SUNNY, beam=False)
    level = [
        tip_lx(at(replace(light, sun_bearing_deg=b))).sum() for b in (0.0, 60.0, 120.0, 180.0)
    ]
    assert np.all(np.diff(level) > 0.0)
    assert level[3] > 1.5 * level[0]


@pytest.mark.parametrize(("name", "factor"), [("dark trees", 0.03), ("snow", 0.85)])
def test_a_bank_to_the_zenith_takes_the_half_of_the_sky_ahead(name, factor):
    """Elementary for a uniform sky: the shares of ∫ G on either side, and a bank of known grey."""
    light, wall = Light(sky_type=5), Stretch(bank=name, bank_height_deg=89.0)
    tea = Stream(water_colour="tea")
    open_ = tip_lx(at(light, Stretch(bank_height_deg=0.0), stream=tea)).sum()
    turn = np.linspace(0.0, 180.0, 100001)
    share = cylinder.seen_share(turn)
    behind = share[turn <= 90.0].sum() / share.sum()
    expected = open_ * (behind + (1.0 - behind) * factor * 0.55)
    assert tip_lx(at(light, wall, stream=tea)).sum() == pytest.approx(expected, rel=0.01)


def test_a_bank_in_the_sun_lights_the_tip_from_ahead():
    """Sun at the back on snow: .85 / π E cos h of ∫ cos φ G dφ ∫ cos² e (1 + R) de (by quadrature)."""
    back = replace(SUNNY, sun_bearing_deg=180.0)
    wall = Stretch(bank="snow", bank_height_deg=89.0)
    dim, lit = (tip_lx(at(back, replace(wall, bank_sunlit=on))).sum() for on in (False, True))
    level, upright = np.radians(np.linspace(-90.0, 90.0, 2001)), np.linspace(0.0, 89.0, 2001)
    round_ = np.trapezoid(np.cos(level) * cylinder.seen_share(180.0 - np.degrees(level)), level)
    image = np.cos(np.radians(upright)) ** 2 * (1.0 + fresnel.level_reflectance(upright).mean)
    shed = sky.sky_state(back).beam_normal_lx * math.cos(math.radians(30.0)) * 0.85 / math.pi
    expected = shed * round_ * np.trapezoid(image, np.radians(upright))
    assert lit - dim == pytest.approx(expected, rel=0.01)


def test_bank_lit_dim_and_against_the_light():
    state = sky.sky_state(SUNNY)
    lit = bank.light_on(state, "brick", True, 0.0).sum()
    shut = bank.light_on(state, "brick", False, 0.0).sum()
    direct = state.beam_normal_lx * math.cos(math.radians(30.0))
    assert lit - shut == pytest.approx(direct)
    assert bank.light_on(state, "dark trees", True, 0.0).sum() - shut == pytest.approx(direct / 2)
    against = bank.light_on(state, "brick", True, 180.0).sum()
    assert against == pytest.approx(bank.light_on(state, "brick", False, 180.0).sum())
    uniform = sky.sky_state(Light(sky_type=5))
    level = bank.light_on(uniform, "mud", False, [0.0, 90.0]).sum(axis=-1)
    np.testing.assert_allclose(level, uniform.diffuse_lx * 0.55, rtol=1e-3)


# Luminance factor under D65 of each kind of bank (judgement, but the one that was meant).
@pytest.mark.parametrize(
    ("name", "factor"),
    [
        ("dark trees", 0.03), ("bare trees", 0.10), ("grass", 0.08), ("reed", 0.20),
        ("brick", 0.14), ("mud", 0.08), ("concrete", 0.30), ("snow", 0.85),
    ],
)  # fmt: skip
def test_how_bright_a_bank_is(name, factor):
    d65 = daylight.weights(1e6 / 6504.0)
    grey = observer.reflected(bank.spectrum(name), observer.channels())[:, 0] * math.pi
    assert float(d65 @ grey) == pytest.approx(factor, rel=0.12)


@pytest.mark.parametrize("name", [row["name"] for row in tables.rows("water_colours")])
def test_water_body_has_its_luminance_factor(name):
    d65 = daylight.weights(1e6 / 6504.0)
    level = observer.reflected(water_body.spectrum(name), observer.channels())[:, 0] * math.pi
    assert float(d65 @ level) == pytest.approx(water_body.luminance_factor(name), rel=0.05)


def test_around_splits_at_the_skyline():
    here = at(SUNNY, BROKEN)
    low, high = around(here, [9.999, 10.0], 40.0)
    np.testing.assert_allclose(high, sky_channels(here, 10.0, 40.0))
    facing = 180.0 + 40.0 - 60.0
    light = bank.light_on(here.state, "dark trees", False, facing)
    wall = light @ observer.reflected(bank.spectrum("dark trees"), here.channels)
    np.testing.assert_allclose(low, wall, rtol=1e-3, atol=1e-2)
    np.testing.assert_allclose(around(here, -9.999, 40.0), low)


def test_sky_colour_is_the_mix_of_the_basis():
    here = at(SUNNY)
    bright = sky.luminance(here.state, 25.0, 20.0 - 60.0)
    mixed = bright * (daylight.sky_weights(here.state, bright, 25.0, -40.0) @ here.seen)
    np.testing.assert_allclose(sky_channels(here, 25.0, 20.0), mixed, rtol=1e-9)


def test_glare_of_a_uniform_sky_is_half_of_it():
    """Upper half of the field, all of it brighter than black water: π L / 2 (elementary)."""
    here = at(Light(sky_type=5), Stretch(bank_height_deg=0.0))
    lux, angle = glare.glare(here, np.array([0.1]), np.array([0.0]))
    assert lux.sum() == pytest.approx(here.state.diffuse_lx / 2.0, rel=0.05)
    assert angle.max() < 91.0
    grey = here.state.diffuse_lx / math.pi / 2.0
    half, _ = glare.glare(here, np.array([0.1]), np.array([grey]))
    assert half.sum() == pytest.approx(lux.sum() / 2.0, rel=0.01)


TABLES = ["paints", "banks", "water_colours"]


@pytest.mark.parametrize("name", TABLES)
def test_every_row_names_its_source(name):
    assert all(row["source"] for row in tables.rows(name))


@pytest.mark.parametrize("call", [bank.self_shade, bank.spectrum])
def test_unknown_bank(call):
    with pytest.raises(Mistakes, match="bank: 'lawn' will not do"):
        call("lawn")


@pytest.mark.parametrize("call", [water_body.luminance_factor, water_body.spectrum])
def test_unknown_water(call):
    with pytest.raises(Mistakes, match="water colour: 'beer' will not do"):
        call("beer")


@pytest.mark.parametrize(("height"), [91.0, -91.0])
def test_around_out_of_range(height):
    with pytest.raises(OutOfRange, match="height above the horizon must be -90 to 90 deg"):
        around(at(SUNNY), height, 0.0)
