"""The strip over the wide panels: sky, far bank and the water up to it, in the scene's own light."""

import math
from dataclasses import replace

import numpy as np
import pytest

from tipsight import Question, advise
from tipsight.inputs.case import Light
from tipsight.pictures import far_bank, panels
from tipsight.pictures.subject import waters
from tipsight.scene.look import look
from tipsight.scene.setting import around, sky_channels

FRAME = panels.frames(30.0, 30.0)[0]


def test_the_bank_stands_to_its_skyline_and_the_sky_over_it(make):
    """A row is a degree: seven of bank, one half bank and half sky, twelve of sky."""
    of = make(skyline_deg=7.5)
    rows = far_bank.strip(of, FRAME)[:, 0]
    sky = around(of.here, 14.5, 0.0)
    over = rows[: far_bank.ABOVE_PX][::-1]  # from the edge up
    assert np.ptp(over[:7, 0]) == pytest.approx(0.0, abs=1e-6 * sky[0])
    assert over[0, 0] < 0.5 * over[12, 0]
    assert over[14] == pytest.approx(sky, rel=0.01)
    assert over[7, 0] == pytest.approx((over[6, 0] + over[8, 0]) / 2.0, rel=0.02)


def test_no_bank_no_line(make):
    rows = far_bank.strip(make(skyline_deg=0.0), FRAME)[: far_bank.ABOVE_PX, 0, 0]
    assert np.abs(np.diff(rows)).max() < 0.05 * rows.mean()


def test_mist_lies_before_the_bank(make):
    """Koschmieder: at the distance to which one sees in mist, 5 % of the contrast with the sky at
    the horizon are left (WMO No. 8: meteorological optical range)."""
    of = make(skyline_deg=7.0, light=Light(visibility_m=far_bank.EDGE_M))
    bank, horizon = around(of.here, 0.5, 0.0)[0], sky_channels(of.here, 0.0, 0.0)[0]
    foot = far_bank.strip(of, FRAME)[far_bank.ABOVE_PX - 1, 0, 0]
    assert (horizon - foot) / (horizon - bank) == pytest.approx(0.05, abs=0.001)


def test_the_water_runs_from_the_far_edge_to_the_top_of_the_panel(make):
    """Eye 1.31 m, 30 m off: 118 pixels of 1.5875 mm over the foot, 187 mm, meet the water at
    30 / (1 - 0.187 / 1.31) = 35.0 m; its last row is that water's mean, its first that of 300 m."""
    of = make(skyline_deg=7.5)
    eye_m = 30.0 * math.tan(math.radians(2.5))
    rows = far_bank.strip(of, FRAME)[far_bank.ABOVE_PX :, 0]
    case = of.case
    parts = case.light, of.stretch, case.wind, case.stream, case.angler
    top = 0.62 * 190 * 30.0 / 5.0 / (96 / 25.4) * 1e-3
    told = look(*parts, of.finishes, [300.0, 30.0 / (1.0 - top / eye_m)], eye_m).water
    assert rows[0] == pytest.approx(told[0], rel=1e-6)
    assert rows[-1] == pytest.approx(told[1], rel=1e-4)
    low = replace(FRAME, below_mm=-2e3)  # its top over the horizon
    assert far_bank.strip(of, low)[-1, 0] == pytest.approx(told[0], rel=1e-6)


def test_under_a_bank_the_far_water_is_dark_with_its_mirror(make):
    bank, bare = (far_bank.strip(make(skyline_deg=s), FRAME)[-6, 0, 0] for s in (15.0, 0.5))
    assert bank < 0.5 * bare


def test_it_stands_over_the_panel_alone():
    answer = advise(Question(behind=["dark"], distance="30 yd"))
    panel, inset = panels.pictures(answer, waters(answer)[0])[:2]
    assert (panel.shape, inset.shape) == ((190 + 34, 430, 3), (190, 130, 3))
    assert (panel[32:34] == 255).all()
    assert (np.ptp(panel[:32].astype(int), axis=1) == 0).all()
