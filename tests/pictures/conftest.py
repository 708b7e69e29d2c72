"""Scenes to be drawn."""

import math
from dataclasses import replace

import pytest

from tipsight.inputs import demo
from tipsight.inputs.case import Light, Stretch, Wind
from tipsight.inputs.settle import settle
from tipsight.pictures import stage


@pytest.fixture(scope="session")
def case():
    return settle(demo.question())


@pytest.fixture(scope="session")
def make(case):
    """Return a scene of wind [m/s], skyline [deg], look-down [deg] and slopes without wind."""

    def scene(
        wind_m_s=3.0,
        skyline_deg=0.5,
        down_deg=2.5,
        light=None,
        bearing_deg=0.0,
        base=2e-4,
        **stretch,
    ):
        range_m = 30.0
        place = replace(
            case.place, range_m=range_m, eye_height_m=range_m * math.tan(math.radians(down_deg))
        )
        asked = replace(
            case,
            place=place,
            wind=Wind(wind_m_s, bearing_deg, base_slope_variance=base),
            light=light or Light(),
        )
        return stage.scene(asked, Stretch("w", 1.0, skyline_deg, **stretch), [case.tip])

    return scene
