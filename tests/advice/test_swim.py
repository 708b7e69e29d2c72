"""The swim worked out once: its tackle, its distances, and where two things are the same."""

from dataclasses import replace

import numpy as np
import pytest
import sample

from tipsight.advice.swim import SHOT_DEPTH_SHARE, swim
from tipsight.load import budget, shot

TIP = sample.CASE.tip


def test_the_float_is_cocked_by_its_shot() -> None:
    """2.40 g of tin, which keeps 0.863 of it in water; its middle at six tenths of seven feet."""
    rig = sample.SWIM.rig
    assert sample.CASE.stream.depth_m == pytest.approx(7 * 0.3048)
    assert rig.shot_mass_kg == pytest.approx(2.4e-3)
    assert rig.shot_depth_m == pytest.approx(0.6 * 7 * 0.3048)
    assert rig.shot_slip_m_s == pytest.approx(0.25 * 0.6)  # a quarter of the pace
    assert rig.shot_density_kg_m3 == float(shot.density_kg_m3("tin"))
    assert rig.waterline_mm == 10.0  # what is wet
    assert SHOT_DEPTH_SHARE == {"bulk": 0.6, "spread": 0.5, "even": 0.5}


def test_a_tip_of_its_own_is_cocked_by_what_it_leaves_for_shot() -> None:
    longer = replace(TIP, showing_mm=30.0, wet_mm=0.0)
    rig = sample.SWIM.rigged(longer)
    pull_g = budget.pull_g(sample.SWIM.hull, longer, 10.0)
    assert rig.shot_mass_kg == pytest.approx(1e-3 * pull_g / sample.SWIM.wet_share)
    assert rig.waterline_mm == 0.0


@pytest.mark.parametrize(("diameter_mm", "longest_mm"), [(2.0, 24.0), (3.0, 36.0), (4.0, 40.0)])
def test_how_long_a_tip_can_stand(diameter_mm: float, longest_mm: float) -> None:
    pattern = replace(sample.SWIM.pattern, max_showing_diameters=12.0, max_showing_mm=40.0)
    there = replace(sample.SWIM, pattern=pattern)
    assert there.longest_showing_mm(diameter_mm) == pytest.approx(longest_mm)


def test_the_asked_distance_is_one_of_those_worked_out() -> None:
    for range_m in (36.576, 36.6, 17.3):
        case = replace(sample.CASE, place=replace(sample.CASE.place, range_m=range_m))
        there = swim(case)
        assert there.range_m[there.here] == pytest.approx(range_m)
        assert (np.diff(there.range_m) > 0).all()
        assert there.range_m[[0, -1]].tolist() == [3.0, 100.0]
    assert sample.SWIM.at(20.0).range_m[sample.SWIM.at(20.0).here] == pytest.approx(22 * 0.9144)
