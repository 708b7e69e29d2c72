"""The whole look: surroundings, light on the tip, water, mist, glasses, glare."""

import math
from dataclasses import replace

import literal_water as reference
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs.case import Angler, Finish, Light, Stream, Stretch, Wind
from tipsight.scene import (
    bank,
    cylinder,
    daylight,
    facets,
    glare,
    glint,
    mist,
    observer,
    sky,
)
from tipsight.scene.look import look, reflected, shade
from tipsight.scene.setting import setting, sky_channels

DULL = Light(sky_type=1, sun_height_deg=30.0)
SUNNY = Light(sky_type=12, beam=True, sun_height_deg=30.0, sun_bearing_deg=60.0)
DUSK = Light(sky_type=1, sun_height_deg=-4.0)
BRIGHT, DARK = Stretch(), Stretch("dark", bank_height_deg=25.0)
BROKEN = Stretch("broken", bank_height_deg=10.0)
LANE = Stretch("sun lane", sun_ahead=True)
BREEZE, CALM = Wind(speed_m_s=3.0), Wind()
BLACK, WHITE = Finish("black"), Finish("white")
RANGES = np.array([5.0, 20.0, 40.0])


def at(light=DULL, stretch=BRIGHT, wind=BREEZE, stream=None, angler=None):
    return setting(light, stretch, wind, stream or Stream(), angler or Angler())


def looked(light=DULL, stretch=BRIGHT, wind=BREEZE, finishes=(BLACK, WHITE), angler=None):
    return look(light, stretch, wind, Stream(), angler or Angler(), finishes, RANGES, 1.5)


@pytest.mark.parametrize("light", [DULL, SUNNY, DUSK])
@pytest.mark.parametrize("stretch", [BRIGHT, BROKEN])
def test_water_against_the_literal_way(light, stretch):
    here, skyline = at(light, stretch), stretch.bank_height_deg
    crowd = facets.visible(4.0, here.slopes, skyline)
    ours = crowd.weight @ reflected(here, crowd)
    sd = [math.sqrt(v) for v in here.slopes]
    weight, height, azimuth, upright, level = np.array(
        reference.crowd(4.0, *sd, count=12000, seed=3)
    ).T
    mirrored = (upright + level) / 2.0
    weights = daylight.sky_weights
    high = np.abs(height)
    turn = azimuth - here.sun_azimuth_deg
    bright = sky.luminance(here.state, high, turn)
    light_in = bright[:, None] * (weights(here.state, bright, high, turn) @ here.seen)
    dim = bank.light_on(
        here.state, stretch.bank, stretch.bank_sunlit, 180.0 + turn[high < skyline]
    )
    light_in[high < skyline] = dim @ observer.reflected(bank.spectrum(stretch.bank), here.channels)
    each = mirrored[:, None] * light_in + (1.0 - mirrored)[:, None] * here.below / 0.97963
    literal = weight @ each / weight.sum()
    error = np.sqrt((weight[:, None] ** 2 * (each - literal) ** 2).sum(axis=0)) / weight.sum()
    assert error[0] < 0.015 * literal[0]
    assert (np.abs(ours - literal) < 4.0 * error).all()


@pytest.mark.parametrize("tint", ["none", "polarised"])
def test_shade_is_what_look_sums(tint):
    here = at(SUNNY, BROKEN, angler=Angler(tint=tint))
    crowd = facets.visible(3.0, here.slopes, 10.0)
    dice = np.random.default_rng(1)
    slope = dice.normal(0.0, np.sqrt(here.slopes), (200000, 2))
    weight = np.maximum(
        math.sin(math.radians(3.0)) - slope[:, 0] * math.cos(math.radians(3.0)), 0.0
    )
    drawn = weight @ shade(here, 3.0, slope[:, 0], slope[:, 1]) / weight.sum()
    mean = crowd.weight @ reflected(here, crowd)
    np.testing.assert_allclose(drawn, mean, atol=0.02 * mean[0])


def test_shapes_and_names():
    seen = looked(finishes=[BLACK, WHITE, Finish("red", gloss=True)])
    assert seen.water.shape == seen.air.shape == (3, 4)
    assert seen.tips.shape == (3, 3, 4)
    for one in (seen.range_m, seen.look_down_deg, seen.facet_contrast, seen.sparkle_mm2):
        assert one.shape == (3,)
    assert (seen.name, seen.share, seen.bank_height_deg) == ("bright", 1.0, 0.5)
    assert seen.sky_glare[0].shape == seen.sky_glare[1].shape
    assert seen.look_down_deg == pytest.approx(np.degrees(np.arctan(1.5 / RANGES)))
    assert looked(finishes=[]).tips.shape == (0, 3, 4)


def test_distances_do_not_meddle_with_each_other():
    one = look(SUNNY, BROKEN, BREEZE, Stream(), Angler(), [WHITE], [20.0], 1.5)
    many = looked(SUNNY, BROKEN, finishes=[WHITE])
    np.testing.assert_allclose(one.water[0], many.water[1], rtol=1e-12)
    np.testing.assert_allclose(one.tips[:, 0], many.tips[:, 1], rtol=1e-12)
    eyes = look(SUNNY, BROKEN, BREEZE, Stream(), Angler(), [WHITE], RANGES, [1.0, 1.5, 2.0])
    np.testing.assert_allclose(eyes.water[1], many.water[1], rtol=1e-12)


@pytest.mark.parametrize("stretch", [BRIGHT, DARK, BROKEN, LANE])
def test_another_distance_joined_is_one_look(stretch):
    """Between, before and behind the others: as if all had been asked for at once, to the rounding."""
    around = SUNNY, stretch, BREEZE, Stream(), Angler(), (BLACK, WHITE)
    whole = look(*around, [5.0, 12.0, 20.0, 40.0, 60.0], 1.5)
    joined = look(*around, [12.0, 40.0], 1.5).with_more(look(*around, [5.0, 20.0, 60.0], 1.5))
    for name in vars(whole):
        one, other = getattr(whole, name), getattr(joined, name)
        if isinstance(one, str):
            assert one == other
        else:
            for a, b in zip(np.atleast_1d(one), np.atleast_1d(other), strict=True):
                assert b == pytest.approx(a, rel=1e-12, abs=1e-15)


def test_facet_contrast_of_bright_and_broken_water():
    """In a breeze: a fifth on bright water, over a half where bank and sky mix (computed, by
    casting a sea of 3 m/s)."""
    assert looked().facet_contrast[2] == pytest.approx(0.2, abs=0.1)
    assert 0.5 < looked(stretch=BROKEN).facet_contrast[2] < 1.0


def test_black_shows_on_bright_water_and_white_on_dark():
    """Common practice, no source."""
    bright, dark = looked(), looked(stretch=DARK, wind=CALM)
    contrast = [(s.tips[..., 0] - s.water[:, 0]) / s.water[:, 0] for s in (bright, dark)]
    assert (contrast[0][0] < -0.8).all()
    assert (np.abs(contrast[0][1]) < np.abs(contrast[0][0]))[1:].all()
    assert (contrast[1][1] > 3.0).all()
    assert (np.abs(contrast[1][0]) < np.abs(contrast[1][1])).all()


def test_water_is_duller_where_it_is_rippled_or_mirrors_a_bank():
    """At a low line of sight ripple mirrors less, and a higher, under cloud brighter, sky."""
    level = [looked(stretch=s, wind=CALM).water[2, 0] for s in (BRIGHT, BROKEN, DARK)]
    assert level[0] > 3.0 * level[1] >= 3.0 * level[2]
    assert looked(wind=CALM).water[2, 0] > 1.1 * looked(wind=Wind(speed_m_s=6.0)).water[2, 0]


@given(
    height=st.floats(0.0, 25.0), sky_type=st.sampled_from([1, 3, 5, 8, 12, 13]),
    sun=st.floats(-12.0, 60.0), bearing=st.floats(0.0, 180.0), beam=st.booleans(),
    wind=st.floats(0.0, 8.0), turn=st.floats(0.0, 90.0),
)  # fmt: skip
@settings(deadline=None, derandomize=True, max_examples=25)
def test_any_scene_is_sound(height, sky_type, sun, bearing, beam, wind, turn):
    light = Light(sky_type=sky_type, beam=beam, sun_height_deg=sun, sun_bearing_deg=bearing)
    seen = looked(light, Stretch(bank_height_deg=height), Wind(speed_m_s=wind, bearing_deg=turn))
    for part in (seen.water, seen.tips, seen.air, seen.facet_contrast, seen.sparkle_mm2):
        assert np.isfinite(part).all()
    assert (seen.water[:, 0] > 0.0).all()
    assert (seen.water[:, 3] > 0.0).all()
    assert (seen.tips[0, :, 0] < seen.tips[1, :, 0]).all()
    assert (seen.facet_contrast >= 0.0).all()
    lux, angle = seen.sky_glare
    assert (lux >= 0.0).all()
    assert ((angle > 0.0) & (angle < 180.0)).all()


def test_the_left_is_as_the_right():
    left = looked(replace(SUNNY, sun_bearing_deg=70.0), BROKEN)
    right = looked(replace(SUNNY, sun_bearing_deg=-70.0), BROKEN)
    np.testing.assert_allclose(left.water, right.water, rtol=1e-9)
    np.testing.assert_allclose(left.tips, right.tips, rtol=1e-9)


def test_low_sun_behind_the_bank_is_gone():
    low = replace(SUNNY, sun_height_deg=15.0, sun_bearing_deg=20.0)
    assert at(low, BRIGHT).sun_in_view
    assert not at(low, DARK).sun_in_view
    bearings = (-89.0, 89.0, 91.0, 160.0, 271.0)
    seen = [at(replace(low, sun_bearing_deg=b), DARK).sun_in_view for b in bearings]
    assert seen == [False, False, True, True, False]
    assert looked(low, DARK).sparkle_mm2.max() == 0.0
    assert looked(replace(low, sun_bearing_deg=160.0), DARK).sparkle_mm2.max() == 0.0
    angle = looked(low, BRIGHT).sky_glare[1]
    assert angle.shape[1] == looked(low, DARK).sky_glare[1].shape[1] + 1


def test_sun_lane():
    low = replace(SUNNY, sun_height_deg=12.0, sun_bearing_deg=100.0)
    lane, open_ = looked(low, LANE), looked(low, BRIGHT)
    assert (lane.water[:, 0] > 20.0 * open_.water[:, 0]).all()
    assert (lane.sparkle_mm2 > 1.0).all()
    assert open_.sparkle_mm2.max() < 1e-3
    sun = lane.sky_glare[1][:, 0]
    assert sun == pytest.approx(12.0 + lane.look_down_deg)
    assert lane.sky_glare[0][2, 0] == pytest.approx(
        sky.sky_state(low).beam_normal_lx * math.cos(math.radians(sun[2])), rel=0.03
    )


@pytest.mark.parametrize("tint", ["none", "polarised"])
def test_glitter_adds_its_mean_and_its_sparkles(tint):
    light = replace(SUNNY, sun_height_deg=12.0, visibility_m=2000.0)
    lane = looked(light, LANE, angler=Angler(tint=tint))
    here = at(light, LANE, angler=Angler(tint=tint))
    crowd = facets.visible(lane.look_down_deg, here.slopes, 0.5)
    calm = np.einsum("rf,rfc->rc", crowd.weight, reflected(here, crowd))
    found = glint.glint(lane.look_down_deg, 12.0, 0.0, here.slopes)
    kept = observer.passed(found.upright, found.level, tint)
    beam = here.state.beam_normal_lx * (daylight.beam_weights(here.state) @ here.seen)
    clear = mist.transmittance(np.hypot(RANGES, 1.5), 2000.0)[:, None]
    sparkle = kept[:, None] * beam / glint.SUN_SR
    water = clear * (calm + found.coverage[:, None] * sparkle) + lane.air
    np.testing.assert_allclose(lane.water, water, rtol=1e-9)
    np.testing.assert_allclose(
        lane.sky_glare[0], glare.glare(here, lane.look_down_deg, water[:, 0])[0], rtol=1e-9
    )
    ratio = (clear * sparkle / water)[:, 0]
    np.testing.assert_allclose(lane.sparkle_mm2, 0.2 * found.coverage * ratio**2, rtol=1e-9)
    assert found.per_lux == pytest.approx(
        found.coverage / glint.SUN_SR * (found.upright + found.level) / 2.0
    )


@pytest.mark.parametrize(("height", "glitters"), [(0.04, False), (0.06, True), (2.0, True)])
def test_a_sun_on_the_horizon_glitters_no_more(height, glitters):
    lane = replace(LANE, bank_height_deg=0.0)
    seen = looked(replace(SUNNY, sun_height_deg=height), lane)
    assert bool(seen.sparkle_mm2.max() > 0.0) == glitters


def test_mist():
    clear, mist_ = looked(), looked(replace(DULL, visibility_m=150.0))
    kept = mist.transmittance(np.hypot(RANGES, 1.5), 150.0)
    gap = clear.tips - clear.water
    np.testing.assert_allclose(
        (mist_.tips - mist_.water),
        gap * (kept / mist.transmittance(np.hypot(RANGES, 1.5), 20000.0))[:, None],
        rtol=1e-6,
        atol=1e-6,
    )
    horizon = sky_channels(at(), 0.0, 0.0)
    np.testing.assert_allclose(mist_.air, (1.0 - kept)[:, None] * horizon)
    spread = [
        one.facet_contrast * one.water[:, 0] / mist.transmittance(np.hypot(RANGES, 1.5), far)
        for one, far in ((clear, 20000.0), (mist_, 150.0))
    ]
    np.testing.assert_allclose(spread[0], spread[1])
    assert (mist_.facet_contrast < clear.facet_contrast).all()


def test_gloss_mirrors_water_on_both_sides():
    matt, shiny = looked(finishes=[BLACK, Finish("black", gloss=True)], wind=CALM).tips
    water = looked(wind=CALM).water
    near, far = cylinder.gloss_shares()
    np.testing.assert_allclose((shiny - matt)[:, 0], (near + far) * water[:, 0], rtol=0.03)
    light = replace(SUNNY, beam=False, visibility_m=300000.0)
    sunny = looked(light, finishes=[BLACK, Finish("black", gloss=True)])
    turned = looked(replace(light, sun_bearing_deg=240.0))
    mixed = near * turned.water + far * sunny.water
    np.testing.assert_allclose((sunny.tips[1] - sunny.tips[0])[:, 0], mixed[:, 0], rtol=0.01)
    assert sunny.water[2, 0] > 1.3 * turned.water[2, 0]


@pytest.mark.parametrize("tint", [row["name"] for row in tables.rows("tints")])
def test_tints_darken_tip_and_water_nearly_alike(tint):
    plain, tinted = looked(), looked(angler=Angler(tint=tint))
    share = next(float(r["transmittance"]) for r in tables.rows("tints") if r["name"] == tint)
    assert tinted.tips[1, 2, 0] == pytest.approx(share * plain.tips[1, 2, 0], rel=0.05)
    low, high = (0.7, 0.95) if tint == "polarised" else (0.94, 1.06)
    assert low < tinted.water[2, 0] / (share * plain.water[2, 0]) < high


def test_colour_blind_have_no_red_green():
    seen = looked(
        finishes=[Finish("fluorescent orange")], angler=Angler(colour_vision="red-blind")
    )
    assert np.abs(seen.tips[..., 1]).max() < 1e-9
    assert np.abs(looked(finishes=[Finish("fluorescent orange")]).tips[..., 1]).min() > 1.0


ASKED = {
    "light": DULL,
    "stretch": BRIGHT,
    "wind": CALM,
    "stream": Stream(),
    "angler": Angler(),
    "finishes": [BLACK],
    "range_m": 20.0,
    "eye_height_m": 1.5,
}


@pytest.mark.parametrize(
    ("change", "text"),
    [
        ({"stretch": Stretch(bank="lawn")}, "bank: 'lawn' will not do; say one of dark trees"),
        (
            {"stream": Stream(water_colour="beer")},
            "water colour: 'beer' will not do; say one of clear",
        ),
        ({"finishes": [Finish("tartan")]}, "paint: 'tartan' will not do"),
    ],
)
def test_unknown_words(change, text):
    with pytest.raises(Mistakes) as told:
        look(**(ASKED | change))
    assert text in str(told.value)


@pytest.mark.parametrize(
    ("change", "text"),
    [
        ({"range_m": 0.5}, "range must be 1 to 300 m, got 0.5 m"),
        ({"eye_height_m": 40.0}, "eye height must be 0.1 to 30 m, got 40 m"),
        ({"stretch": Stretch(bank_height_deg=95.0)}, "skyline must be 0 to 89 deg, got 95 deg"),
    ],
)
def test_out_of_range(change, text):
    with pytest.raises(OutOfRange) as told:
        look(**(ASKED | change))
    assert str(told.value) == text
