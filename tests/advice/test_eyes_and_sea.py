"""What the doubts of own eyes and of the sea itself do to the level."""

from dataclasses import replace

import numpy as np
import pytest

from tipsight.advice.facts import Doubt
from tipsight.advice.sighting import quick_level, seen
from tipsight.advice.swim import swim
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

TIP = {"distance": "40 yd", "diameter": "3 mm", "showing": "40 mm", "paint": "black"}


def doubts(**told):
    here = swim(settle(Question(**(TIP | told))))
    water = here.waters[here.judged[0]]
    return seen(here, water, here.case.tip).doubts


@pytest.mark.parametrize(("age", "factor"), [(60, 1.4), (65, 1.4), (66, 1.5), (80, 1.5)])
def test_eyes_are_told_to_so_much_on_calm_water(age, factor):
    """Where the eye sets the limit, its doubt is that of the level."""
    worse, better = doubts(age=age, behind=["bright"], looks="glass")[Doubt.EYES]
    assert np.exp([-worse, better]) == pytest.approx([factor, factor], rel=0.07)


@pytest.mark.parametrize(("age", "factor"), [(20, 1.4), (65, 1.4), (66, 1.5)])
def test_how_well_own_eyes_are_known(age, factor):
    assert settle(Question(**TIP, age=age)).angler.own_eye_doubt == factor


# The sine squared of what the wind makes with the sight.
@pytest.mark.parametrize(("bearing_deg", "share"), [(0.0, 0.0), (60.0, 0.75), (90.0, 1.0)])
def test_waves_run_as_the_wind_does(bearing_deg, share):
    case = settle(Question(**TIP, wind="3 m/s", behind=["dark"]))
    here = swim(replace(case, wind=replace(case.wind, bearing_deg=bearing_deg)))
    assert here.waters["dark"].clutter.across == pytest.approx(share)


def test_own_eyes_count_for_less_among_streaks():
    worse, better = doubts(age=60, behind=["bright"], looks="ripple")[Doubt.EYES]
    assert 1.1 < np.exp(better) < np.exp(-worse) < 1.35


def test_the_sea_is_in_doubt_by_what_it_takes_and_no_more():
    for looks, behind, factor in (("ripple", "bright", 1.2), ("ripple", "dark", 1.35)):
        down, up = doubts(age=45, behind=[behind], looks=looks)[Doubt.SEA]
        assert np.exp([-down, up]) == pytest.approx([factor, factor])
    glass = doubts(
        age=85, behind=["dark"], looks="glass", sun_height="-6 deg", sky="dull overcast"
    )
    assert 1.0 <= np.exp(glass[Doubt.SEA][1]) < 1.1


def test_own_eyes_told_move_the_eyes_part_alone():
    calm, broken = (
        np.log(
            np.divide(
                *(
                    quick_level(
                        of := swim(
                            settle(Question(**TIP, own_eye=own, behind=["bright"], looks=looks))
                        ),
                        of.case.tip,
                    )
                    for own in (1.4, 1.0)
                )
            )
        )
        for looks in ("glass", "ripple")
    )
    assert 0.0 < broken < calm <= np.log(1.4)
