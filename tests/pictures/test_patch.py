"""The picture of a water with a tip in it: facets, sparkles, mist and bands."""

import numpy as np
import pytest

from tipsight.inputs.case import Light
from tipsight.pictures import patch
from tipsight.pictures.cast import Frame
from tipsight.scene.look import shade

NARROW = Frame(1.25, 400, 200, 100.0)
CLEAR = Light(12, 3.5, True, 35.0, 120.0)


@pytest.mark.parametrize(("pixel_mm", "casts"), [(0.1, 1), (0.3, 3), (1.25, 10), (2.0, 16)])
def test_a_row_is_mixed_of_eight_casts_a_millimetre(make, pixel_mm, casts):
    of, frame = make(), Frame(pixel_mm, 20, 30, 5.0)
    seen = patch.seen_on(of, patch.water_sheet(of, frame), frame)
    assert len(seen.rise_away) == 30 * casts


def test_a_picture_is_the_light_of_its_facets(make, monkeypatch):
    """Row by row the mean over the columns, of which the sheet has a few more at its edges."""
    of = make()
    sheet = patch.water_sheet(of, NARROW)
    seen = patch.seen_on(of, sheet, NARROW)
    facets = shade(of.here, 2.5, -seen.rise_away, seen.rise_right)
    told = facets.reshape(200, 10, -1, 4).mean(axis=(1, 2))
    found, _ = patch.rippled(of, sheet, NARROW)
    assert found.mean(axis=1) == pytest.approx(told, rel=0.03)
    monkeypatch.setattr(patch, "AT_ONCE", 7)
    assert np.array_equal(patch.rippled(of, sheet, NARROW, seen=seen)[0], found)


def picture(of, seed=0):
    return patch.rippled(of, patch.water_sheet(of, NARROW, seed), NARROW, seed)[0]


def test_glitter_falls_at_random_with_the_answers_mean(make):
    """Sun lane: sparkles bring the mean up to that of the water with its glint."""
    of = make(3.0, 0.5, 4.5, Light(12, 3.5, True, 25.0, 0.0), sun_ahead=True)
    found = np.mean([picture(of, seed).mean(axis=(0, 1)) for seed in range(6)], axis=0)
    calm = make(3.0, 0.5, 4.5, Light(12, 3.5, False, 25.0, 0.0), sun_ahead=True)
    assert of.water[0] > 1.02 * calm.water[0]
    assert found[0] == pytest.approx(of.water[0], rel=0.05)


def test_no_sparkles_where_the_bank_hides_the_sun(make):
    of = make(3.0, 30.0, 4.5, Light(12, 3.5, True, 25.0, 0.0))
    assert not patch._sparkles(of, NARROW, 0).any()


def test_mist_lies_over_tip_and_water(make, case):
    thick = make(3.0, 10.0, 2.5, Light(visibility_m=100.0))
    thin = make(3.0, 10.0, 2.5)
    spread = [picture(of)[..., 0].std() for of in (thick, thin)]
    assert spread[0] < 0.7 * spread[1]


def test_bands_stand_where_they_are_and_light_adds_up(make, case):
    of = make()
    frame = Frame(0.5, 41, 80, 5.0)
    picture = patch.with_tip(patch.blank(of, frame), of, frame, case.tip, 4.0)
    extra = (picture - of.water)[..., 0].sum() * frame.pixel_mm**2
    tip = of.look.tips[0, 0, 0] - of.water[0]
    wide = 3.0 + 2 * 3 * 0.03
    assert extra == pytest.approx(tip * wide * (20.0 - 4.0), rel=1e-9)
    rows = np.flatnonzero(np.abs(picture - of.water).sum(axis=(1, 2)) > 0)
    assert frame.heights_mm()[rows[0]] == pytest.approx(4.0, abs=0.5)
    assert frame.heights_mm()[rows[-1]] == pytest.approx(20.0, abs=0.5)
