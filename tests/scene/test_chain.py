"""The links of the contrast chain by a second method: whole spectra, brute sums, a literal filter.

Water, black, white, a fluorescent paint and the level of five swims, each worked out once more by
`slow_light` and `slow_scene`, which share no code with the scene, and the level by the transform of
`sight_reference`.
"""

from functools import cache
from types import SimpleNamespace

import numpy as np
import pytest
import sight_reference
from slow_scene import Swim

from tipsight.advice import waters
from tipsight.inputs.case import Angler, Finish, Light, Place, Stream, Stretch, Wind
from tipsight.scene.look import look
from tipsight.sight import eye as eyes
from tipsight.sight import kernel
from tipsight.sight.clutter import Clutter
from tipsight.sight.eye import Eye

RANGE_M, EYE_HEIGHT_M, AGE, RIPPLE_MM = 25.0, 1.6, 55.0, 160.0
FINISHES = Finish("black"), Finish("white"), Finish("fluorescent orange", seasons=1.0)
SWIMS = {
    "bright overcast": (
        Light(sky_type=3, sun_height_deg=30.0, visibility_m=800.0),
        Stretch(),
        Wind(speed_m_s=3.0),
        Stream(),
        Angler(),
    ),
    "dark bank": (
        Light(sky_type=1, sun_height_deg=45.0),
        Stretch("dark", bank_height_deg=25.0),
        Wind(),
        Stream(water_colour="tinged"),
        Angler(tint="amber"),
    ),
    "clear sun from the side": (
        Light(sky_type=12, beam=True, sun_height_deg=30.0, sun_bearing_deg=80.0),
        Stretch("broken", bank_height_deg=10.0, bank="grass", bank_sunlit=True),
        Wind(speed_m_s=4.0, bearing_deg=60.0),
        Stream(water_colour="green"),
        Angler(tint="polarised"),
    ),
    "dusk under cloud": (
        Light(sky_type=1, sun_height_deg=-4.0),
        Stretch(),
        Wind(speed_m_s=1.5),
        Stream(water_colour="tea"),
        Angler(colour_vision="red-weak"),
    ),
    "clear dusk": (
        Light(sky_type=12, beam=True, sun_height_deg=-3.0, sun_bearing_deg=45.0),
        Stretch(),
        Wind(base_slope_variance=2e-3),
        Stream(),
        Angler(),
    ),
}
each = pytest.mark.parametrize("name", SWIMS)


@cache
def slow(name):
    swim = Swim(*SWIMS[name], RANGE_M, EYE_HEIGHT_M)
    return swim, np.array([swim.tip(f.paint, f.seasons) for f in FINISHES])


@cache
def ours(name):
    return look(*SWIMS[name], FINISHES, [RANGE_M], EYE_HEIGHT_M)


@each
def test_water_by_facets_one_by_one(name):
    """0.3 %: light is mixed from fifteen spectra, the facets are summed by 6 nodes a piece; 1 % for
    their spread, whose sum is as coarse but of squares."""
    swim, _ = slow(name)
    seen = ours(name)
    np.testing.assert_allclose(seen.water[0, [0, 3]], swim.water[[0, 3]], rtol=3e-3)
    np.testing.assert_allclose(seen.water[0, 1:3], swim.water[1:3], atol=3e-3 * swim.water[0])
    np.testing.assert_allclose(seen.facet_contrast[0], swim.facet_contrast, rtol=0.01)
    np.testing.assert_allclose(seen.air[0], swim.air, atol=3e-3 * swim.air[0])
    assert seen.slope_rms == pytest.approx(swim.slope_rms, rel=1e-9)


@each
@pytest.mark.parametrize("paint", FINISHES, ids=lambda paint: paint.paint)
def test_paint_by_sides_and_directions_one_by_one(name, paint):
    """Luminance 1.2 %, rods 2 %, colour 1 and 4 % of the luminance: we let bank and water light the
    tip as greys, which here keep their colour."""
    swim, tips = slow(name)
    at = FINISHES.index(paint)
    tip, seen = tips[at], ours(name).tips[at, 0]
    assert seen[0] == pytest.approx(tip[0], rel=0.012)
    assert seen[3] == pytest.approx(tip[3], rel=0.02, abs=0.006 * swim.water[3])
    assert seen[1] == pytest.approx(tip[1], abs=0.01 * tip[0])
    assert seen[2] == pytest.approx(tip[2], abs=0.04 * tip[0])


@each
@pytest.mark.parametrize("paint", FINISHES, ids=lambda paint: paint.paint)
def test_luminance_contrast_of_paint_and_water(name, paint):
    """1.2 % of the tip and 0.3 % of the water, as above."""
    swim, tips = slow(name)
    at = FINISHES.index(paint)
    water, tip = ours(name).water[0, 0], ours(name).tips[at, 0, 0]
    expected = tips[at, 0] / swim.water[0] - 1.0
    assert tip / water - 1.0 == pytest.approx(expected, abs=0.015 * tips[at, 0] / swim.water[0])


@each
def test_sky_correlation_by_facets_one_by_one(name):
    """0.015: a skyline of half a degree falls between the even slopes, 0.0005 of eight times as many."""
    found = float(ours(name).sky_correlation[0])
    assert found == pytest.approx(slow(name)[0].sky_correlation, abs=0.015)


@each
def test_veil_of_glare(name):
    """4 %: patches of some degrees each, where the veil is 2 to 16 % of the water's light."""
    swim, _ = slow(name)
    veil = eyes.veil(*ours(name).sky_glare, AGE).sum()
    assert veil == pytest.approx(swim.veil(AGE), rel=0.04)


@each
@pytest.mark.parametrize("bands", [(0,), (1,), (2,), (2, 0)], ids=str)
def test_level_by_a_literal_filter(name, bands):
    """4 mm by 30 mm, its lowest 5 mm hidden. 2 %: contrasts as above, and a veil by even patches."""
    swim, tips = slow(name)
    light, stretch, wind, stream, angler = SWIMS[name]
    edges, veil, eye = np.linspace(5.0, 35.0, len(bands) + 1), swim.veil(AGE), Eye(AGE)
    contrast, adapted = zip(*(swim.contrast(tips[band], veil) for band in bands), strict=True)
    left = swim.water[0] / (swim.water[0] + veil)  # the veil lies over the streaks, too
    streaks = Clutter(
        left * swim.facet_contrast, RIPPLE_MM, swim.slope_rms, stretch.bank_height_deg, swim.down_deg,
        swim.sky_correlation, across=np.sin(np.radians(wind.bearing_deg)) ** 2,
    )  # fmt: skip
    brute = sight_reference.brute_level(
        4.0, edges, contrast, range_m=RANGE_M, adaptation_cd_m2=adapted[0], eye=eye,
        clutter=streaks,
    )  # fmt: skip
    place = Place(RANGE_M, eye_height_m=EYE_HEIGHT_M)
    case = SimpleNamespace(light=light, wind=wind, stream=stream, angler=angler, place=place)
    around = np.array([20.0, RANGE_M, 30.0])
    water = waters.water(case, light, stretch, FINISHES, around, 1, eye, RIPPLE_MM)
    assert water.adaptation_cd_m2[1] == pytest.approx(adapted[0], rel=0.006)
    found = kernel.level_parts(
        water.at(1), diameter_mm=np.array([4.0]), edges_mm=edges[None],
        contrast=water.contrast[list(bands), 1][None],
    )  # fmt: skip
    assert np.hypot(*found)[0] == pytest.approx(brute, rel=0.02)
