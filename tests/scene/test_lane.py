"""The lane beside the line of sight as a source of glare, held to a fine sum over directions."""

import numpy as np
import pytest

from tipsight.inputs.case import Angler, Light, Stream, Stretch, Wind
from tipsight.scene.glint import glint
from tipsight.scene.glitter import beside
from tipsight.scene.setting import setting
from tipsight.sight import eye

LANE = Stretch("sun lane", bank_height_deg=0.5, sun_ahead=True)


def here(height=20.0, stretch=LANE, **light):
    sun = Light(sky_type=12, beam=True, sun_height_deg=height, **light)
    return setting(sun, stretch, Wind(speed_m_s=2.5), Stream(), Angler())


def fine(of, height, look_down, step=0.1):
    """Sum the veil of patches of a tenth of a degree, half a degree to 30 degrees away, at 25 years."""
    down = np.arange(0.1 + step / 2, 45.0, step)
    sight = np.array([np.cos(np.radians(look_down)), 0.0, -np.sin(np.radians(look_down))])
    veil = 0.0
    for turn in np.arange(-40.0 + step / 2, 40.0, step):
        d, a = np.radians(down), np.radians(turn)
        way = np.stack([np.cos(d) * np.cos(a), np.cos(d) * np.sin(a) + 0 * d, -np.sin(d)])
        cosine = sight @ way
        angle = np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0)))
        bright = of.state.beam_normal_lx * glint(down, height, -turn, of.slopes).per_lux
        lux = bright * cosine * np.cos(d) * np.radians(step) ** 2
        out = angle >= 0.5
        veil += eye.veil(lux[out], angle[out], 25.0).sum()
    return float(veil)


@pytest.mark.parametrize(("height", "look_down"), [(20.0, 3.1), (10.0, 2.0)])
def test_the_veil_of_the_lane_is_that_of_a_fine_sum(height, look_down):
    """The fine one is itself within a hundredth of one with patches half as wide."""
    of = here(height)
    coarse = float(eye.veil(*beside(of, look_down), 25.0).sum())
    assert coarse == pytest.approx(fine(of, height, look_down), rel=0.03)


def test_no_lane_dazzles_where_no_sun_gets_to_the_water():
    overcast = setting(Light(sky_type=1), LANE, Wind(), Stream(), Angler())
    behind_trees = here(stretch=Stretch("dark", bank_height_deg=30.0))
    for of in (overcast, behind_trees):
        assert beside(of, 3.0)[0].sum() == 0.0


def test_a_lane_to_the_side_dazzles_less():
    lux, angle = beside(here(), 3.1)
    aside, away = beside(here(stretch=Stretch(bank_height_deg=0.5), sun_bearing_deg=20.0), 3.1)
    assert 0.0 < eye.veil(aside, away, 25.0).sum() < 0.2 * eye.veil(lux, angle, 25.0).sum()
