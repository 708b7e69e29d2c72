"""The usual range of a pattern's tips, paints that do as well, and dips: worked by hand."""

from dataclasses import replace

import numpy as np
import pytest
import sample

from tipsight.advice import bench
from tipsight.advice.bench import shelf
from tipsight.advice.close_look import close_look
from tipsight.advice.swim import swim
from tipsight.afloat import ride
from tipsight.inputs import demo
from tipsight.inputs.case import Band
from tipsight.inputs.settle import settle

SHELF = shelf(sample.SWIM)


def usual(pull_g: float, height_m: float, to_mm: float):
    """Which lengths are usual in waves of a height, on a pattern whose longest is told."""
    here = replace(
        sample.SWIM,
        pull_g=pull_g,
        sea=replace(sample.SWIM.sea, height_m=height_m),
        pattern=replace(sample.SWIM.pattern, usual_showing_to_mm=to_mm),
    )
    lengths = SHELF.showing_mm[replace(SHELF, swim=here).usual.any(axis=0)]
    return float(lengths.min()), float(lengths.max())


# The longest grows by half the waves: 30 mm and waves of 20 mm make 40; under 8 g of shot 45 mm is
# the most, from there up the pattern's own.
@pytest.mark.parametrize(
    ("shot_g", "height_m", "to_mm", "longest"),
    [(2.0, 0.002, 30.0, 30.0), (2.0, 0.020, 30.0, 40.0), (2.0, 0.040, 40.0, 45.0),
     (7.9, 0.040, 40.0, 45.0), (8.1, 0.040, 40.0, 60.0)],
)  # fmt: skip
def test_the_longest_usual_tip(shot_g, height_m, to_mm, longest):
    pull_g = shot_g * sample.SWIM.wet_share
    assert usual(pull_g, height_m, to_mm)[1] == longest


def test_the_shortest_usual_tip_is_the_patterns():
    assert usual(2.0, 0.002, 30.0)[0] == sample.SWIM.pattern.usual_showing_from_mm
    assert bench.LONGEST_LIGHT_MM == 45.0


def test_either_names_another_family_that_does_as_well_and_not_its_own():
    """On dark water a fluorescent orange tip: white or yellow and red do as well, orange is its own."""
    here = swim(settle(demo.question("match").with_options(behind="dark", showing="6 mm")))
    on = shelf(here)
    i = next(n for n, s in enumerate(on.stock) if (s.kind, s.diameter_mm) == ("solid", 3.5))
    tip = replace(
        here.case.tip, stock=on.stock[i], showing_mm=6.0,
        bands=(Band("fluorescent orange", 0.0, 6.0),),
    )  # fmt: skip
    found = on.either(tip, 1.0)
    families = {bench.family_of(paint) for paint in found}
    assert "orange" not in families
    assert families <= {"dark", "red", "green", "pale"}
    assert {"pale", "red"} <= families
    assert len(families) == len(found)
    assert on.either(tip, np.inf) == ()


def test_dips_are_those_of_the_ride_of_its_diameter():
    here = swim(settle(demo.question("match").with_options(looks="wavelets", boils="weir")))
    block = close_look(here, here.case.tip)
    i = int(np.argmin(np.abs(here.diameters_mm - block.painted_mm)))
    found = ride.dips_per_min(here.case.tip.showing_mm, here.ride)
    assert found[i] > 0.5
    assert block.handling.dips_per_min == pytest.approx(found[i])
