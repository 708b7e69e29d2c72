"""The shot: exact against two other methods, never too much, laid out and said as told."""

from dataclasses import replace
from itertools import combinations_with_replacement, product
from typing import get_args

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from tipsight.errors import OutOfRange
from tipsight.inputs.case import Fixing, Shot
from tipsight.load import change, exact, law, plan, shot

SHARE = float(shot.wet_share("tin"))
TABLE = {size.name: size.mass_g for size in shot.sizes(olivettes=True)}
CALM = settings(deadline=None, derandomize=True, max_examples=25)


def counts_of(answer):
    totals = {}
    for name, count, _ in answer.shot:
        totals[name] = totals.get(name, 0) + count
    return totals


def by_milp(load_g, sizes, rule):
    """The same question put to HiGHS: whole counts of each size in each place."""
    columns = [
        (size.mass_g * size.share * 1e3, place, index)
        for index, size in enumerate(sizes)
        for place in ("bulk", "dropper", "trim")
        if getattr(size, place)
    ]
    pull = np.array([column[0] for column in columns])
    where = np.array([column[1] for column in columns])
    price = np.where(where == "trim", 1.5, 0.5)
    rows = [pull, np.where(where == "bulk", pull, 0.0), where == "dropper", where == "trim"]
    low = [0.0, rule.bulk_low * load_g * 1e3, rule.droppers_low, 0]
    high = [load_g * 1e3, rule.bulk_high * load_g * 1e3, rule.droppers_high, rule.trims_high]
    for index, size in enumerate(sizes):
        if size.count is not None:
            rows.append(np.array([column[2] == index for column in columns]))
            low.append(0)
            high.append(size.count)
    found = milp(
        price - pull,
        constraints=LinearConstraint(np.array(rows, dtype=float), low, high),
        integrality=np.ones(len(columns)),
        bounds=Bounds(0, 200),
        options={"mip_rel_gap": 0.0},
    )
    return load_g * 1e3 + found.fun if found.success else None


def by_enumeration(load_g, sizes, rule):
    """Every count of everything, one after the other."""
    pulls = [size.mass_g * size.share * 1e3 for size in sizes]
    kinds = [
        [i for i, size in enumerate(sizes) if getattr(size, place)]
        for place in ("bulk", "dropper", "trim")
    ]
    best = np.inf
    most = [int(rule.bulk_high * load_g * 1e3 / pulls[i] + 1e-9) for i in kinds[0]]
    for bulk in product(*(range(top + 1) for top in most)):
        heavy = sum(n * pulls[i] for n, i in zip(bulk, kinds[0], strict=True))
        if (
            not rule.bulk_low * load_g * 1e3
            <= heavy + 1e-9
            <= rule.bulk_high * load_g * 1e3 + 2e-9
        ):
            continue
        for dropped in range(rule.droppers_low, rule.droppers_high + 1):
            for trimmed in range(rule.trims_high + 1):
                for d in combinations_with_replacement(kinds[1], dropped):
                    for t in combinations_with_replacement(kinds[2], trimmed):
                        used = [
                            *d,
                            *t,
                            *(i for n, i in zip(bulk, kinds[0], strict=True) for _ in range(n)),
                        ]
                        if any(
                            s.count is not None and used.count(i) > s.count
                            for i, s in enumerate(sizes)
                        ):
                            continue
                        left = load_g * 1e3 - heavy - sum(pulls[i] for i in (*d, *t))
                        if left > -1e-9:
                            cost = left + 0.5 * (sum(bulk) + dropped) + 1.5 * trimmed
                            best = min(best, cost)
    return best if np.isfinite(best) else None


def size(name, count=None, bulk=None, share=SHARE):
    mass = TABLE[name]
    return exact.Size(
        mass,
        share,
        count,
        mass >= 0.25 if bulk is None else bulk,
        0.06 <= mass <= 0.2,
        mass <= 0.06,
    )


RULES = [
    exact.Rule(0.7, 0.92, 2, 4, 3),
    exact.Rule(0.4, 0.92, 1, 4, 3),
    exact.Rule(0.7, 1, 0, 0, 3),
]


@CALM
@given(
    load_g=st.floats(0.8, 7.0),
    rule=st.sampled_from(RULES),
    box=st.lists(
        st.tuples(
            st.sampled_from(sorted(TABLE)), st.sampled_from([None, 1, 2, 5, 9]), st.booleans()
        ),
        min_size=3, max_size=9, unique_by=lambda entry: entry[0],
    ),
)  # fmt: skip
def test_exact_equals_an_integer_program(load_g, rule, box):
    sizes = [size(name, count, bulk or None) for name, count, bulk in box]
    theirs = by_milp(load_g, sizes, rule) if any(s.bulk for s in sizes) else None
    ours = exact.best(load_g, sizes, rule)
    assert (ours is None) == (theirs is None)
    if ours is not None:
        assert ours.cost_mg == pytest.approx(theirs, abs=2e-3)


@pytest.mark.parametrize("load_g", [0.5, 0.93, 1.31, 1.7])
@pytest.mark.parametrize("limited", [False, True])
def test_exact_equals_enumeration(load_g, limited):
    rule = RULES[1] if load_g < 1.2 else RULES[0]
    sizes = [
        size("BB"), size("No 1", 1 if limited else None),
        size("No 4", 2 if limited else None, True),
        size("No 8", 3 if limited else None), size("No 10"),
    ]  # fmt: skip
    found = exact.best(load_g, sizes, rule)
    assert found is not None
    assert found.cost_mg == pytest.approx(by_enumeration(load_g, sizes, rule), abs=1e-6)


def test_exact_with_two_metals_in_the_bulk():
    tungsten = float(shot.wet_share("tungsten"))
    sizes = [size("2 g olivette", 1, True, tungsten), size("BB"), size("No 4"), size("No 8")]
    found = exact.best(3.4, sizes, RULES[0])
    assert found is not None
    # bulk of mixed metals is told apart to 0.1 mg of pull, a piece at most half of that
    assert found.cost_mg == pytest.approx(by_milp(3.4, sizes, RULES[0]), abs=0.5)
    assert found.bulk[0] == 1


@CALM
@given(pull_g=st.floats(0.0, 20.0), fixing=st.sampled_from(get_args(Fixing)))
def test_plan_adds_up_and_never_over_shoots(pull_g, fixing):
    answer = plan.plan(pull_g, shot.sizes(), fixing)
    total = sum(TABLE[name] * count for name, count in counts_of(answer).items())
    assert answer.shot_g == pytest.approx(total)
    assert answer.pull_g == pytest.approx(total * SHARE)
    assert answer.pull_g + answer.left_g == pytest.approx(pull_g)
    assert answer.left_g >= -1e-9
    if pull_g > 0.3 and fixing != "even":
        assert answer.left_g < 0.009  # a No 13 in water


BOXES = [
    ("SSG", "AAA", "BB", "No 3", "No 5", "No 8", "No 10", "No 12"),
    ("SSG", "BB", "No 8"),
    ("AAA", "No 3", "No 4", "No 6", "No 10"),
    ("AB", "No 1", "No 9", "No 11"),
    ("No 3", "No 12"),
    ("BB", "No 4"),
]
LOADS = [0.36, 0.62, 0.83, 1.13, 1.19, 1.21, 1.66, 2.31, 3.17, 4.42, 6.13, 9.71]


@pytest.mark.parametrize("box", BOXES)
@pytest.mark.parametrize("pull_g", LOADS)
@pytest.mark.parametrize("fixing", ["bulk", "spread"])
def test_a_plan_keeps_the_rule_at_the_least_cost(box, pull_g, fixing):
    """The rules of common practice, written here a second time and put to HiGHS."""
    sizes = [Shot(name, TABLE[name], "tin") for name in box if TABLE[name] * SHARE <= pull_g]
    small, heaviest = pull_g < 1.2, max(0.2, 0.03 * pull_g / SHARE)
    if fixing == "bulk":
        rule = exact.Rule(0.4, 0.92, 1, 4, 3) if small else exact.Rule(0.7, 0.92, 2, 4, 3)
        least = 0.02 if small else 0.06
        allowed = [
            exact.Size(m, SHARE, None, small or m >= 0.25, least <= m <= heaviest, m <= 0.06)
            for m in (size.mass_g for size in sizes)
        ]
    else:
        rule, string = exact.Rule(0.7, 1.0, 0, 0, 3), max(0.2, pull_g / SHARE / 10.0)
        allowed = [
            exact.Size(s.mass_g, SHARE, None, 0.04 <= s.mass_g <= string, False, s.mass_g <= 0.06)
            for s in sizes
        ]
    answer = plan.plan(pull_g, sizes, fixing)
    theirs = by_milp(pull_g, allowed, rule) if any(size.bulk for size in allowed) else None
    if theirs is None:  # nothing keeps the rule, so all of it is in one place
        assert len({where for _, _, where in answer.shot}) == 1
        return
    price = {"bulk": 0.5, "spread": 0.5, "dropper": 0.5, "trim under the float": 1.5}
    cost_mg = answer.left_g * 1e3 + sum(count * price[where] for _, count, where in answer.shot)
    assert cost_mg == pytest.approx(theirs, abs=2e-3)


def test_one_olivette_at_the_most():
    box = [Shot("2 g olivette", 2.0, "tin"), Shot("BB", 0.4, "tin"), Shot("No 8", 0.06, "tin")]
    answer = plan.plan(4.4 * SHARE, box)  # two of them, 91 % of it, would be the fewest pieces
    assert counts_of(answer)["2 g olivette"] == 1


def test_sizes_come_heaviest_first():
    masses = [size.mass_g for size in shot.sizes(olivettes=True)]
    assert masses == sorted(masses, reverse=True)


@pytest.mark.parametrize(
    ("depth_m", "places"),
    [
        # two droppers below a bulk at 45 % of one metre, and at 75 cm in two
        (1.0, [("SSG", 0.45), ("No 5", 0.30), ("No 6", 0.15)]),
        (2.0, [("SSG", 0.75), ("No 5", 0.50), ("No 6", 0.25)]),
    ],
)
def test_layout_of_a_bulk_by_hand(depth_m, places):
    placed = plan.layout(plan.plan(1.6, shot.sizes()).shot, depth_m)
    assert [(one.name, pytest.approx(one.from_hook_m)) for one in placed] == places


def test_layout_of_a_string_by_hand():
    six = plan.ShotPlan(
        (("No 4", 3, "spread"), ("No 8", 1, "trim under the float")), 0.66, 0.57, 0
    )
    placed = plan.layout(six.shot, 2.0)
    assert [(one.name, one.from_hook_m) for one in placed] == [
        ("No 8", 2.0), ("No 4", 1.5), ("No 4", 1.0), ("No 4", 0.5),
    ]  # fmt: skip


ODD = [Shot(one.name, one.mass_g + 0.0013 * (n % 5 + 1)) for n, one in enumerate(shot.sizes())]
"""Shot weighed so finely that no two sizes have a tenth of a milligram's multiple in common."""
OLIVETTES = [one for one in shot.sizes(olivettes=True) if shot.is_olivette(one.name)]


@pytest.mark.parametrize("few", [None, 20])
@pytest.mark.parametrize("pull_g", [4.0, 30.0, 48.0])
def test_finely_weighed_shot_under_a_heavy_load_costs_no_more_than_its_sums(
    pull_g, few, monkeypatch
):
    """Never over-shot, and no table is longer than the sums that are told apart."""
    tables, offer = [], exact._with

    def counted(index, grain, limit, fewest, trace):
        tables.append(fewest.size)
        offer(index, grain, limit, fewest, trace)

    monkeypatch.setattr(exact, "_with", counted)
    box = [replace(one, count=few) for one in ODD] + OLIVETTES
    found = plan.plan(pull_g, box)
    assert max(tables) <= exact.MOST_SUMS + 1
    assert len(tables) < 1500
    weigh = {one.name: one.mass_g for one in box}
    pulled = sum(weigh[name] * count * SHARE for name, count, _ in found.shot)
    assert pulled == pytest.approx(found.pull_g)
    # a grain is 1.1 mg at the most; some 25 pieces are each rounded up by half of one, taken together
    assert 0 <= pull_g - pulled < 0.015
    assert few is None or max(counts_of(found).values()) <= few


def test_small_loads_have_their_own_rule():
    answer = plan.plan(0.6, shot.sizes())
    wheres = [where for _, _, where in answer.shot]
    assert wheres[0] == "bulk"
    assert "dropper" in wheres
    assert plan.plan(0.004, shot.sizes()).shot == ()
    assert plan.plan(0.05, shot.sizes()).left_g < 0.009


def test_stock_runs_out():
    box = [Shot("BB", 0.4, "tin", 3), Shot("No 4", 0.2, "tin", 2), Shot("No 8", 0.06, "tin", 0)]
    answer = plan.plan(5.0, box)
    assert counts_of(answer) == {"BB": 3, "No 4": 2}
    assert answer.left_g == pytest.approx(5.0 - 1.6 * SHARE)


def test_heavy_lead_is_left_out_and_light_lead_is_used():
    box = [Shot("BB", 0.4, "lead"), Shot("No 8", 0.06, "lead"), Shot("No 4", 0.2, "tin")]
    answer = plan.plan(1.0, box)
    assert answer.left_out == ("BB",)
    assert "BB" not in counts_of(answer)


def test_weighed_shot_overrides_the_table():
    light = plan.plan(1.04, [Shot("No 4", 0.17, "tin")], "spread")
    assert counts_of(light) == {"No 4": 7}


def test_a_string_is_falling_or_even():
    falling = plan.plan(1.5, shot.sizes(), "spread")
    masses = [TABLE[name] for name, _, where in falling.shot if where == "spread"]
    assert masses == sorted(masses, reverse=True)
    even = plan.plan(1.5, shot.sizes(), "even")
    assert len([where for _, _, where in even.shot if where == "spread"]) == 1


@pytest.mark.parametrize("depth_m", [0.3, 1.0, 2.0, 6.0])
@pytest.mark.parametrize("fixing", ["bulk", "spread"])
def test_layout_runs_from_the_float_to_the_hook(depth_m, fixing):
    answer = plan.plan(2.07, shot.sizes(), fixing)
    placed = plan.layout(answer.shot, depth_m)
    assert sum(p.count for p in placed) == sum(count for _, count, _ in answer.shot)
    heights = [p.from_hook_m for p in placed]
    assert heights == sorted(heights, reverse=True)
    assert max(heights) <= depth_m
    assert min(heights) > 0.0
    if fixing == "bulk":
        bulk = [p.from_hook_m for p in placed if p.where == "bulk"]
        assert bulk[0] <= min(0.75, depth_m / 2)
    else:
        gaps = -np.diff([depth_m, *[h for h in heights if h < depth_m], 0.0])
        assert gaps == pytest.approx(gaps[0])


@pytest.mark.parametrize(
    ("mass_g", "counted"),
    [
        (0.46, (("BB", 1), ("No 8", 1))), (0.4, (("BB", 1),)), (0.8, (("AAA", 1),)),
        (1.2, (("AB", 2),)), (0.003, ()), (0.0, ()), (0.066, (("No 8", 1),)),
        (8.0, (("SSG", 5),)), (1.6, (("SSG", 1),)), (2.4, (("SSG", 1), ("AAA", 1))),
        (0.14, (("No 6", 1), ("No 10", 1))),
    ],
)  # fmt: skip
def test_nearest_few_shot(mass_g, counted):
    near = change.nearest(mass_g, shot.sizes())
    assert near.shot == counted
    assert (near.mass_g, near.lightest) == (mass_g, "No 13")


def test_more_than_nine_of_a_size_are_not_counted_on():
    """Twelve No 1 make 3.6 g to the hair; an SSG and the rest of 2 g, another and a No 1, do."""
    box = [Shot("SSG", 1.6, "tin"), Shot("No 1", 0.3, "tin")]
    assert change.nearest(3.6, box).shot == (("SSG", 2), ("No 1", 1))
    assert change.nearest(2.7, box).shot == (("No 1", 9),)
    # seven BB and a No 5 are nearest to the 2.96 g that three SSG leave
    assert change.nearest(7.76, shot.sizes()).shot == (("SSG", 3), ("BB", 7), ("No 5", 1))


def test_half_the_lightest_is_its_least():
    assert change.nearest(0.006, shot.sizes()).shot == (("No 13", 1),)
    assert change.nearest(0.004, shot.sizes()).shot == ()


def test_nearest_without_a_box():
    assert change.nearest(0.33, []) == change.Near(0.33, (), 0.33, None)
    assert change.nearest(0.4, [Shot("BB", 0.4, "tin", 0)]) == change.Near(0.4, (), 0.4, None)


@CALM
@given(mass_g=st.floats(0.02, 12.0))
def test_nearest_is_near(mass_g):
    near = change.nearest(mass_g, shot.sizes())
    said_g = sum(TABLE[name] * count for name, count in near.shot)
    assert abs(said_g - mass_g) < 0.035
    assert near.left_g == pytest.approx(mass_g - said_g)


@pytest.mark.parametrize(
    ("call", "text"),
    [
        (lambda: plan.plan(-0.1, []), "load must be 0 to 100 g, got -0.1 g"),
        (lambda: plan.plan(float("nan"), []), "load must be 0 to 100 g, got nan g"),
        (lambda: plan.layout((), 13), "depth must be 0.2 to 12 m, got 13 m"),
        (lambda: change.nearest(201, []), "mass must be 0 to 200 g, got 201 g"),
        (lambda: law.lead_allowed(-1), "mass of one shot must be 0 to 1000 g, got -1 g"),
        (lambda: shot.diameter_mm(101, "tin"), "mass of one shot must be 0 to 100 g, got 101 g"),
    ],
)
def test_out_of_range(call, text):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert str(caught.value) == text
