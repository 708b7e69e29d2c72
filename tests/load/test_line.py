"""The fewest shot to touch: worked by hand, against every way there is, and by an integer program."""

from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from tipsight.inputs.case import Hung, Shot
from tipsight.load import line
from tipsight.load.shot import sizes

TABLE = {one.name: one.mass_g for one in sizes()}
CALM = settings(deadline=None, derandomize=True, max_examples=60)


def hung(*told):
    return tuple(Hung(name, count, where, TABLE[name]) for name, count, where in told)


NOW = hung(("SSG", 1, "bulk"), ("BB", 1, "bulk"), ("No 4", 2, "dropper"))  # 1.6 + .4 + 2 x .2


# Masses of shot.csv: SSG 1.6, AAA .8, AB .6, BB .4, No 1 .3, No 4 .2, No 6 .1, No 8 .06, No 10 .04 g.
@pytest.mark.parametrize(
    ("to_g", "near_g", "off", "on"),
    [
        (2.40, 0.02, {}, {}),
        (2.41, 0.02, {}, {}),  # so little short that nothing is touched
        (2.46, 0.02, {}, {"No 8": 1}),
        (2.31, 0.02, {"BB": 1}, {"No 1": 1}),  # in the bulk; a No 4 for a No 6 would be a dropper
        (2.20, 0.02, {"No 4": 1}, {}),
        (2.00, 0.02, {"BB": 1}, {}),  # one of the bulk, not two droppers
        (4.00, 0.02, {}, {"SSG": 1}),
        (0.80, 0.02, {"SSG": 1}, {}),
        (0.00, 0.02, {"SSG": 1, "BB": 1, "No 4": 2}, {}),
    ],
)
def test_by_hand(to_g, near_g, off, on):
    step, then = line.touch(NOW, to_g, near_g, sizes())
    assert (dict(step.off), dict(step.on)) == (off, on)
    assert step.left_g == pytest.approx(to_g - line.mass_g(then))
    assert step.change_g == pytest.approx(line.mass_g(then) - line.mass_g(NOW))


def test_it_is_never_over():
    """A hair under the least change there is: something has to come off."""
    step, then = line.touch(NOW, 2.3999, 0.01, sizes())
    assert line.mass_g(then) <= 2.3999
    assert step.off


def test_where_none_lands_the_nearest_below_in_few_pieces():
    """With BB alone to put on, from 2.4 to 2.55 g: nothing, .15 short, as all else is lower."""
    bare = (Shot("BB", 0.4),)
    step, _then = line.touch(NOW, 2.55, 0.02, bare)
    assert (step.on, step.off) == ((), ())
    assert step.left_g == pytest.approx(0.15)
    # to 2.25: a No 4 off leaves 2.2; no other way comes nearer
    step, _ = line.touch(NOW, 2.25, 0.02, bare)
    assert (step.on, step.off) == ((), (("No 4", 1),))
    # a BB for the two No 4 lands at the same mass as nothing: fewer pieces stand first
    assert line.touch(NOW, 2.42, 0.01, bare)[0].off == ()


def test_counts_hold_what_hangs_too():
    """Of two No 8 one hangs already: for 0.12 g more there is one left, and a No 8 is not there."""
    few = (Shot("No 8", 0.06, count=2), Shot("No 10", 0.04, count=3))
    now = hung(("BB", 1, "bulk"), ("No 8", 1, "dropper"))
    step, _ = line.touch(now, 0.58, 0.001, few)
    assert dict(step.on) == {"No 10": 3}  # .46 + .12
    step, _ = line.touch(now, 0.52, 0.001, few)
    assert dict(step.on) == {"No 8": 1}


def test_runs_of_one_size_where_four_are_not_enough():
    step, then = line.touch(NOW, 2.4 + 9 * 1.6 + 0.06, 0.02, sizes())
    assert dict(step.on) == {"SSG": 9, "No 8": 1}
    assert step.off == ()
    assert line.mass_g(then) == pytest.approx(16.86)


def test_olivettes_stay_unless_nothing_else_lands_there():
    now = (Hung("4 g olivette", 1, "bulk", 4.0), *hung(("No 4", 1, "dropper")))
    step, _ = line.touch(now, 4.0, 0.02, sizes(olivettes=True))
    assert dict(step.off) == {"No 4": 1}
    step, _ = line.touch(now, 5.2, 0.02, sizes(olivettes=True))
    assert sum(n for _, n in (*step.off, *step.on)) <= 3
    assert "4 g olivette" not in dict(step.off)
    step, then = line.touch(now, 0.5, 0.02, sizes(olivettes=True))
    assert dict(step.off)["4 g olivette"] == 1
    assert 0.48 <= line.mass_g(then) <= 0.5
    assert line.touch(now[:1], 0.0, 0.02, ())[1] == ()


# --- where it hangs


def test_what_goes_on_takes_the_place_of_what_came_off():
    _, then = line.touch(NOW, 2.31, 0.02, sizes())
    assert [(one.name, one.count, one.where) for one in then] == [
        ("SSG", 1, "bulk"), ("No 1", 1, "bulk"), ("No 4", 2, "dropper"),
    ]  # fmt: skip
    now = hung(("SSG", 1, "bulk"), ("No 5", 1, "dropper"))  # 1.75
    _, then = line.touch(now, 1.81, 0.005, (Shot("No 6", TABLE["No 6"]), Shot("No 3", 0.25)))
    # nothing of these lands at 1.81 exactly; what was nearest still says where each hangs
    assert all(one.where for one in then)


def places(then):
    return [(one.name, one.count, one.where) for one in then]


def test_of_two_that_go_on_the_heavier_takes_the_bulk():
    """2.4 to 2.345 g: the BB for a No 1 and a No 10, and the No 10 is no bulk but a trim."""
    few = tuple(one for one in sizes() if one.name in ("SSG", "BB", "No 1", "No 4", "No 10"))
    step, then = line.touch(NOW, 2.345, 0.01, few)
    assert (dict(step.off), dict(step.on)) == ({"BB": 1}, {"No 1": 1, "No 10": 1})
    assert places(then) == [
        ("SSG", 1, "bulk"), ("No 1", 1, "bulk"),
        ("No 4", 2, "dropper"), ("No 10", 1, "trim under the float"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("on", "where"),
    [
        ("No 3", "dropper"),  # .25 g is within one and a half times the .2 g of a No 4
        ("No 6", "dropper"),
        ("AB", "bulk"),  # three times as heavy
    ],
)
def test_a_dropper_gives_its_place_to_what_is_like_it(on, where):
    now = hung(("SSG", 1, "bulk"), ("No 4", 1, "dropper"))
    to_g = 1.6 + TABLE[on]
    step, then = line.touch(now, to_g, 0.001, (Shot(on, TABLE[on], count=1),))
    assert (dict(step.off), dict(step.on)) == ({"No 4": 1}, {on: 1})
    assert (on, 1, where) in places(then)


def test_heavy_droppers_that_were_told_stay_droppers():
    now = hung(("SSG", 1, "bulk"), ("AAA", 1, "dropper"))
    _, then = line.touch(now, 2.2, 0.001, (Shot("AB", 0.6),))
    assert places(then) == [("SSG", 1, "bulk"), ("AB", 1, "dropper")]


def test_a_size_in_both_places_comes_off_the_bulk_as_bulk():
    """To lose 0.1 g a BB goes for a No 1 or a No 4 for a No 6, all of the bulk: the bigger."""
    now = hung(("BB", 1, "bulk"), ("BB", 1, "dropper"), ("No 4", 1, "bulk"))
    shots = (Shot("No 1", 0.3), Shot("No 6", 0.1))
    step, then = line.touch(now, 0.9, 0.001, shots)
    assert (dict(step.off), dict(step.on)) == ({"BB": 1}, {"No 1": 1})
    assert places(then) == [
        ("No 1", 1, "bulk"), ("No 4", 1, "bulk"), ("BB", 1, "dropper"),
    ]  # fmt: skip


def test_light_shot_goes_under_the_float_and_heavy_into_the_bulk():
    _, then = line.touch(NOW, 2.46, 0.02, sizes())
    assert ("No 8", "trim under the float") in {(one.name, one.where) for one in then}
    _, then = line.touch(NOW, 4.0, 0.02, sizes())
    assert next((one.name, one.count, one.where) for one in then) == ("SSG", 2, "bulk")


def test_a_trim_comes_off_before_a_dropper():
    now = hung(("BB", 1, "bulk"), ("No 8", 1, "dropper"), ("No 8", 1, "trim under the float"))
    _, then = line.touch(now, 0.46, 0.01, sizes())
    assert [(one.name, one.where) for one in then] == [("BB", "bulk"), ("No 8", "dropper")]


def test_told_shot_hangs_where_it_is_told_or_where_such_shot_hangs():
    told = (
        Hung("SSG", 1, "", 1.6),
        Hung("No 4", 2, "", 0.2),
        Hung("No 10", 1, "trim under the float", 0.04),
    )
    assert [(h.name, h.where) for h in line.hanging(told, 9.0, ())] == [
        ("SSG", "bulk"), ("No 4", "dropper"), ("No 10", "trim under the float"),
    ]  # fmt: skip
    assert {h.where for h in line.hanging(told[:2], 9.0, (), "spread")} == {"spread"}


# --- against every way, and against an integer program


SMALL = ("BB", "No 4", "No 8", "No 10")


def every_way(now, to_g, near_g, shots):
    """The least number of pieces touched by trying every way, None if none lands."""
    here = {one.name: one.count for one in now}
    options = []
    for name in {*here, *(one.name for one in shots)}:
        most = here.get(name, 0)
        left = next((4 if s.count is None else s.count - most for s in shots if s.name == name), 0)
        options.append([(name, n) for n in range(-most, max(left, 0) + 1)])
    best = None
    for change in product(*options):
        if sum(max(n, 0) for _, n in change) > line.MOST_ON:
            continue
        mass = sum(TABLE[name] * n for name, n in change) + line.mass_g(now)
        if mass <= to_g + 1e-9 and to_g - mass <= near_g + 1e-9:
            pieces = sum(abs(n) for _, n in change)
            best = pieces if best is None else min(best, pieces)
    return best


@CALM
@given(
    counts=st.lists(st.integers(0, 3), min_size=4, max_size=4),
    to=st.integers(0, 250),
    near=st.integers(1, 4),
    had=st.lists(st.one_of(st.none(), st.integers(0, 4)), min_size=4, max_size=4),
)
def test_no_way_touches_fewer(counts, to, near, had):
    now = hung(*((name, n, "bulk") for name, n in zip(SMALL, counts, strict=True) if n))
    shots = [Shot(name, TABLE[name], count=n) for name, n in zip(SMALL, had, strict=True)]
    to_g, near_g = to / 100, near / 100
    best = every_way(now, to_g, near_g, shots)
    step, then = line.touch(now, to_g, near_g, shots)
    touched = sum(n for _, n in (*step.off, *step.on))
    assert line.mass_g(then) <= to_g + 1e-9
    if best is None:  # but by a long run of the heaviest that he has
        assert step.left_g > near_g or sum(n for _, n in step.on) > line.MOST_ON
    else:
        assert step.left_g <= near_g + 1e-9
        assert touched == best
    for name, n in step.on:
        limit = next(one.count for one in shots if one.name == name)
        hangs = next((one.count for one in now if one.name == name), 0)
        assert limit is None or n <= limit - hangs
    for name, n in step.off:
        assert n <= next(one.count for one in now if one.name == name)


# scipy's milp (HiGHS) as a general-purpose library: least sum of pieces off and on, mass in reach.
@pytest.mark.parametrize("to_g", [0.31, 0.9, 1.77, 2.05, 2.31, 2.77, 3.13, 3.9, 5.21])
def test_an_integer_program_touches_no_fewer(to_g):
    near_g = 0.018
    off = [(one.mass_g, one.count) for one in NOW]
    on = [(one.mass_g, line.MOST_ON) for one in sizes()]
    mass = np.array([-m for m, _ in off] + [m for m, _ in on])
    need = to_g - line.mass_g(NOW)
    put = np.array([0.0] * len(off) + [1.0] * len(on))
    found = milp(
        np.ones(mass.size),
        integrality=np.ones(mass.size),
        bounds=Bounds(0, [n for _, n in off] + [n for _, n in on]),
        constraints=[
            LinearConstraint(mass, need - near_g, need),
            LinearConstraint(put, 0, line.MOST_ON),
        ],
    )
    assert found.success
    step, _ = line.touch(NOW, to_g, near_g, sizes())
    assert sum(n for _, n in (*step.off, *step.on)) == round(found.fun)


def test_many_shot_on_the_line_stay_within_reason():
    """Twenty kinds of ways to take off are more than are tried: the fewest are, and it lands."""
    now = hung(*((name, 6, "bulk") for name in ("BB", "No 1", "No 4", "No 5", "No 6", "No 8")))
    step, then = line.touch(now, line.mass_g(now) - 0.5, 0.02, sizes())
    assert 0.0 <= step.left_g <= 0.02
    assert sum(n for _, n in (*step.off, *step.on)) <= 2
    assert line.mass_g(then) == pytest.approx(line.mass_g(now) + step.change_g)


def test_the_bulk_stands_before_a_bigger_dropper():
    """To lose 0.1 g: a No 4 of the bulk for a No 6, not the BB dropper for a No 1."""
    now = hung(("No 4", 2, "bulk"), ("BB", 1, "dropper"))
    step, _ = line.touch(now, 0.7, 0.001, (Shot("No 1", 0.3), Shot("No 6", 0.1)))
    assert (dict(step.off), dict(step.on)) == ({"No 4": 1}, {"No 6": 1})


def test_every_size_on_the_line_can_come_off():
    """One each of all: any one of them may go, though there are 2 to the number of them ways."""
    each = tuple(Hung(one.name, 1, "bulk", one.mass_g) for one in sizes())
    assert len(each) > 14
    for one in each:
        step, _ = line.touch(each, line.mass_g(each) - one.mass_g, 1e-6, ())
        assert step.left_g == pytest.approx(0.0, abs=1e-6)
        assert sum(n for _, n in step.off) == 1


def test_it_is_never_over_though_not_all_ways_are_tried():
    """4 x 15 pieces are 65 536 ways; from 6 g to next to nothing all must go."""
    now = hung(*((name, 15, "bulk") for name in ("No 4", "No 6", "No 8", "No 10")))
    for to_g in (0.0, 0.03, 0.5, 1.0, 3.0):
        _, then = line.touch(now, to_g, 0.01, ())
        assert line.mass_g(then) <= to_g + 1e-9
    assert line.mass_g(line.touch(now, 0.03, 0.01, ())[1]) == 0.0
