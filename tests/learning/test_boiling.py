"""Boils of one water: check values of our own note by a stand-in, and the shipped ride."""

import numpy as np
import pytest

from tipsight.advice.swim import swim
from tipsight.afloat import ride
from tipsight.errors import OutOfRange
from tipsight.inputs import demo
from tipsight.inputs.settle import settle
from tipsight.learning import boiling
from tipsight.load.tips import showing_diameter_mm

_f = np.exp(boiling.F)
_rms = np.hypot(3.0, 3.696 * _f**1.2)
_rate = 2.4 * _f**-0.8
STAND_IN = boiling.Curve(60.0 * _rate * np.exp(-0.5 * (20.0 / _rms) ** 2), _rms, _rate, 20.0 / _rms)


@pytest.mark.parametrize(
    ("seen", "mean", "sd"),
    [
        (boiling.dips(6, 2, STAND_IN), 0.5082, 0.1238),
        (boiling.dips(0, 3, STAND_IN), -0.1513, 0.2695),
        (boiling.lowest(14, STAND_IN), -0.1786, 0.2631),
    ],
    ids=["six in two minutes", "none in three", "lowest 14 mm"],
)
def test_worked_counts(seen, mean, sd):
    found = boiling.boils(1.0, today=[seen])
    assert found.told == pytest.approx((mean, sd), rel=0.01)


def test_a_worked_range():
    found = boiling.boils(1.0, today=[boiling.dips(6, 2, STAND_IN)])
    assert (found.factor, *found.ends) == pytest.approx((1.66, 1.36, 2.03), rel=0.01)


def test_seconds_under_say_a_margin():
    """1.37 s twice a minute: a share of .0457, a margin of 1.688; 20/1.688 = 11.85 mm rms, f 2.56."""
    flat = boiling.under(1.37, 2, STAND_IN)
    assert np.exp(boiling.F[np.argmax(flat)]) == pytest.approx(2.56, abs=0.06)


def test_another_visit_is_known_less_well_than_today():
    """One visit of sd s about the same water: today sd goes up by the .25 of a visit, twice."""
    seen = boiling.dips(6, 2, STAND_IN)
    today, next_time = boiling.boils(1.0, today=[seen]), boiling.boils(1.0, before=[[seen]])
    assert today.told[1] < 0.13
    assert 0.25 < next_time.told[1] < 0.40
    many = boiling.boils(1.0, before=[[seen]] * 20)
    assert many.told[1] == pytest.approx(0.25, abs=0.03)


def test_a_count_that_two_waters_give_is_told_as_two():
    """On a curve that rises to 20 a minute and falls again, 15 a minute are on either side."""
    hump = 20.0 * np.exp(-0.5 * ((boiling.F - 0.6) / 0.25) ** 2)
    curve = boiling.Curve(hump, _rms, _rate, 20.0 / _rms)
    found = boiling.boils(2.0, today=[boiling.dips(120, 10, curve)] * 4)
    assert found.two is not None
    low, high = sorted(found.two)
    assert low < np.exp(0.6) < high
    assert boiling.boils(1.0, today=[boiling.dips(6, 2, STAND_IN)]).two is None


def test_on_the_shipped_ride_a_water_is_found_again():
    """Counts that the ride itself gives at 1.6 times come out as 1.6, within the range."""
    here = swim(settle(demo.question("demo")))
    tip = here.case.tip
    around = here.rig, here.sea, here.stream
    on = boiling.curve(*around, tip.showing_mm, showing_diameter_mm(tip))
    each = np.interp(np.log(1.6), boiling.F, on.dips_per_min)
    found = boiling.boils(1.0, today=[boiling.dips(round(20 * each), 20, on)])
    assert found.ends[0] < 1.6 < found.ends[1]
    assert found.told[1] < 0.2
    again = ride.ride(*around, showing_diameter_mm(tip))
    assert on.rms_mm[40] == pytest.approx(float(again.rms_mm[0]), rel=1e-9)


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (lambda: boiling.dips(-1, 2, STAND_IN), "dips must be 0 to 600"),
        (lambda: boiling.dips(3, 0, STAND_IN), "minutes of counting must be 0.25 to 120"),
        (lambda: boiling.dips(61, 1, STAND_IN), "dips a minute must be 0 to 60"),
        (lambda: boiling.lowest(0, STAND_IN), "lowest in a minute must be 0.5 to 200 mm"),
        (lambda: boiling.under(40, 3, STAND_IN), "share of the time under must be 0.001 to 0.45"),
        (lambda: boiling.boils(9.0), "word for the boils must be 0.5 to 6"),
    ],
)
def test_what_cannot_be(made, says):
    with pytest.raises(OutOfRange, match=says):
        made()


def normal(mean, sd):
    return np.exp(-0.5 * ((boiling.F - mean) / sd) ** 2)


def test_visits_weigh_as_how_well_each_is_known_and_how_far_visits_lie_apart():
    """By hand, our note: 1/(.3^2 + .25^2) = 6.557, 1/(.1^2 + .25^2) = 13.793, the word 1/.4^2 = 6.25;
    the next visit lies .25 from their mean."""
    found = boiling.boils(1.0, before=[[normal(0.6, 0.3)], [normal(0.2, 0.1)]])
    weights = 6.557 + 13.793 + 6.25
    mean, sd = (0.6 * 6.557 + 0.2 * 13.793) / weights, np.sqrt(1 / weights + 0.25**2)
    assert found.told == pytest.approx((mean, sd), abs=2e-3)
    today = boiling.boils(1.0, [[normal(0.6, 0.3)], [normal(0.2, 0.1)]], [normal(0.5, 0.2)])
    both = 1 / sd**2 + 1 / 0.2**2
    by_hand = (mean / sd**2 + 0.5 / 0.2**2) / both, both**-0.5
    assert today.told == pytest.approx(by_hand, abs=2e-3)


def test_readings_that_no_boils_explain_leave_what_was_known():
    nothing = np.zeros_like(boiling.F)
    assert not boiling.explained(nothing)
    assert boiling.boils(2.0, today=[nothing]).factor == pytest.approx(2.0, rel=0.01)
    seen = boiling.dips(6, 2, STAND_IN)
    known = boiling.boils(1.0, before=[[seen]])
    assert boiling.boils(1.0, before=[[seen], [nothing]], today=[nothing]).told[0] > 0.1
    assert boiling.boils(1.0, before=[[seen]], today=[nothing]).told == pytest.approx(known.told)


def test_two_readings_that_cannot_both_be_leave_something():
    """Neither is nothing by itself, but their product is."""
    found = boiling.boils(1.0, today=[normal(-0.7, 0.02), normal(1.9, 0.02)])
    assert found.told[0] == pytest.approx(-0.7, abs=0.01)  # the one nearer the word
