"""What must hold of an answer whatever is asked."""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sight_level import visibility_level

from tipsight.advice.advise import advise_case
from tipsight.advice.answer import Answer, Block
from tipsight.advice.bench import Shelf, shelf
from tipsight.advice.choose import Pick
from tipsight.advice.close_look import close_look, is_sound
from tipsight.advice.facts import Limit
from tipsight.advice.sighting import quick_level
from tipsight.advice.swim import Swim, swim
from tipsight.afloat import freshwater, ride
from tipsight.inputs import demo
from tipsight.inputs.case import Case, Finish, Stock, WeighedFloat
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import balance, budget, hull, materials, staircase, tips
from tipsight.scene.look import look
from tipsight.sight.eye import Eye

GENTLE = settings(deadline=None, derandomize=True, max_examples=25)
COSTLY = settings(deadline=None, derandomize=True, max_examples=8)

QUESTIONS = (
    *(demo.question(name) for name in demo.names()),
    Question(distance="12 yd", behind=("dark",), looks="glass", wind="calm", takes="4BB",
             diameter="2 mm", stock="solid", showing="12 mm", paint="black", age="40"),
    Question(distance="25 yd", behind=("not sure",), looks="ripple", takes="8BB", diameter="3 mm",
             stock="cane", showing="20 mm", paint="white", boils="boily", bites="bold"),
    Question(distance="20 yd", behind=("bright 50%", "dark 50%"), sky="dull overcast",
             takes="5BB", diameter="4 mm", stock="thin tube", showing="20 mm", paint="red",
             seen="seen when stared at"),
    Question(distance="25 yd", behind=("bright",), looks="glass", wind="calm", takes="10BB",
             age="30", diameter="2 mm", stock="solid", showing="6 mm", paint="white",
             bites="bold"),
    Question(distance="18 yd", behind=("dark",), looks="fur", pattern="bolo type", takes="5 g",
             diameter="2.5 mm", stock="solid", showing="6 mm", paint="black", age="65"),
)  # fmt: skip


@cache
def case(number: int) -> Case:
    return settle(QUESTIONS[number])


@cache
def here(number: int) -> Swim:
    return swim(case(number))


@cache
def fittings(number: int) -> Shelf:
    return shelf(here(number))


@cache
def answer(number: int) -> Answer:
    return advise_case(case(number), QUESTIONS[number].told())


def blocks(number: int) -> list[Block]:
    told = answer(number)
    found = [told.tip_in_hand, *(change.block for change in told.changes)]
    return found + [step.block for step in told.next_step if step.block is not None]


numbers = st.integers(0, len(QUESTIONS) - 1)


def pick(data: st.DataObject, of: Shelf) -> Pick:
    """Draw any candidate of a shelf."""
    fields = levels(of)
    scheme = data.draw(st.integers(0, len(fields) - 1))
    level, force, change = fields[scheme]
    at = tuple(data.draw(st.integers(0, size - 1)) for size in level.shape)
    return Pick(scheme, *at, float(level[at]), float(force[at[:2]]), float(change[at[:2]]))


HELD: dict[int, list[tuple[np.ndarray, ...]]] = {}


def levels(of: Shelf) -> list[tuple[np.ndarray, ...]]:
    if id(of) not in HELD:
        HELD[id(of)] = [(f.level, f.sink_force_g, f.change_g) for f in of.fields()]
    return HELD[id(of)]


# --- the search and the close look are the same sums


@GENTLE
@given(number=numbers, data=st.data())
def test_the_search_sees_and_weighs_a_tip_as_the_close_look_does(number, data):
    of = fittings(number)
    found = pick(data, of)
    tip = of.tip(found)
    assert quick_level(of.swim, tip) == pytest.approx(found.level, rel=1e-6, abs=1e-9)
    length = of.schemes[found.scheme].showing_index[found.edges]
    limits = {
        limit: bool(np.broadcast_to(mask, of.pull_g.shape)[found.stock, length])
        for limit, mask in of.limits.items()
    }
    if limits[Limit.BODY] and limits[Limit.ROOM] and limits[Limit.LOAD]:
        pull = budget.pull_grid(
            of.swim.hull, [tip.stock], [[tip.showing_mm]], tip.wet_mm, tip.glued_mm,
            coats=tip.coats, temperature_c=of.swim.case.stream.temperature_c,
        ).item()  # fmt: skip
        assert pull == pytest.approx(of.pull_g[found.stock, length], abs=1e-9)
        assert (pull - of.swim.pull_g) / of.swim.wet_share == pytest.approx(
            found.change_g, abs=1e-9
        )
        if balance.uprighting_g_mm(of.swim.hull, tip, of.swim.case.stream.temperature_c) <= 0:
            assert close_look(of.swim, tip).handling.falls_over
            assert is_sound(of.swim, tip) is None
            return
        block = close_look(of.swim, tip)
        assert block.visibility.level == pytest.approx(found.level, rel=1e-6, abs=1e-9)
        assert block.handling.sink_force_g == pytest.approx(found.sink_force_g, rel=1e-9)
        counted = {fail.limit for fail in block.fails if not fail.as_it_is}
        broken = counted - {Limit.SIGHT, Limit.BALANCE}
        assert broken == {limit for limit, kept in limits.items() if not kept}
        assert is_sound(of.swim, tip) == (not broken)


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_the_whole_shelf_keeps_the_limits_that_a_close_look_words(number):
    """A margin of 2 is the least, and the bites wanted say how much of the pull may sink it."""
    of, told = fittings(number), case(number)
    rides = ride.ride(of.swim.rig, of.swim.sea, of.swim.stream, of.swim.diameters_mm)
    for i, painted in enumerate(of.painted_mm):
        at = int(np.argmin(np.abs(of.swim.diameters_mm - painted)))
        assert of.swim.diameters_mm[at] == pytest.approx(painted, abs=1e-9)
        margin = (of.showing_mm - rides.sink_mm) / rides.tail_rms_mm[at]
        assert (of.limits[Limit.RIDE][i] == (margin >= 2.0)).all()
        sink_g = np.pi / 4 * painted**2 * of.showing_mm * 1e-6
        sink_g *= float(freshwater.density_kg_m3(told.stream.temperature_c))
        most_g = told.wanted.bite_share * of.pull_g[i]
        clear = np.abs(sink_g - most_g) > 1e-9
        assert (of.limits[Limit.BITE][i] == (sink_g <= most_g))[clear].all()


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_the_choice_has_the_level_that_the_search_gave_it(number):
    bench, of = answer(number).at_the_bench, fittings(number)
    if bench.kind != "fit":
        return
    tip = bench.block.tip
    stock, bands = of.stock.index(tip.stock), len(tip.bands)
    scheme = next(i for i, s in enumerate(of.schemes) if s.bands == bands)
    edges = np.array([0.0, *(tip.showing_mm - b.from_top_mm for b in reversed(tip.bands))])
    paints = [of.swim.finishes.index(Finish(b.paint)) for b in reversed(tip.bands)]
    row = np.abs(of.schemes[scheme].edges_mm - edges).max(axis=1).argmin()
    column = (of.schemes[scheme].paints == paints).all(axis=1).argmax()
    assert of.schemes[scheme].edges_mm[row] == pytest.approx(edges)
    assert bench.block.visibility.level == pytest.approx(
        levels(of)[scheme][0][stock, row, column], rel=1e-6
    )


# --- one and many


@GENTLE
@given(
    number=numbers,
    ranges=st.lists(st.floats(3.0, 100.0), min_size=2, max_size=4, unique=True),
    paints=st.lists(st.sampled_from(["black", "white", "fluorescent orange", "red"]),
                    min_size=1, max_size=3, unique=True),
)  # fmt: skip
def test_a_look_at_many_is_a_look_at_each(number, ranges, paints):
    told = case(number)
    finishes = [Finish(name) for name in paints]

    def looked(some, at):
        return look(told.light, told.stretches[0], told.wind, told.stream, told.angler, some,
                    np.array(at), told.place.eye_height_m)  # fmt: skip

    all_ = looked(finishes, ranges)
    for i, range_m in enumerate(ranges):
        one = looked(finishes[-1:], [range_m])
        assert one.water[0] == pytest.approx(all_.water[i], rel=1e-9, abs=1e-9)
        assert one.tips[0, 0] == pytest.approx(all_.tips[-1, i], rel=1e-9, abs=1e-9)
        assert one.facet_contrast[0] == pytest.approx(all_.facet_contrast[i], rel=1e-9)


@GENTLE
@given(number=numbers, diameters=st.lists(st.floats(0.8, 9.0), min_size=2, max_size=5))
def test_a_ride_of_many_tips_is_the_ride_of_each(number, diameters):
    """To 1e-3: drag and motion are brought to a balance by steps, for all tips at once."""
    of = here(number)
    all_ = ride.ride(of.rig, of.sea, of.stream, diameters)
    for i, diameter in enumerate(diameters):
        one = ride.ride(of.rig, of.sea, of.stream, diameter)
        for name in ("wave_rms_mm", "boil_rms_mm", "rms_mm", "tail_rms_mm", "rate_hz"):
            assert getattr(one, name)[0] == pytest.approx(getattr(all_, name)[i], rel=1e-3), name


kinds = st.sampled_from(["solid", "thin tube", "cane", "quill", "balsa"])


@GENTLE
@given(
    number=numbers,
    stocks=st.lists(st.builds(materials.stock, kinds, st.floats(2.0, 6.0)), min_size=2,
                    max_size=4),
    showing=st.lists(st.floats(2.0, 60.0), min_size=2, max_size=4),
)  # fmt: skip
def test_a_grid_of_pulls_is_each_pull(number, stocks, showing):
    hull = here(number).hull
    grid = budget.pull_grid(hull, stocks, showing)
    for i, piece in enumerate(stocks):
        for j, length in enumerate(showing):
            one = budget.pull_grid(hull, [piece], [length])
            assert one.shape == (1, 1)
            assert one[0, 0] == pytest.approx(grid[i, j], abs=1e-9)


# --- what floats displaces its weight, and more shot shows less


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_upthrust_equals_weight_in_every_block(number):
    for block in blocks(number):
        tip, float_ = block.tip, here(number).hull
        warm = case(number).stream.temperature_c
        weight_g = balance.float_mass_g(float_, tip) + block.load.pull_g + hull.HOOK_AND_BAIT_G
        water_g_mm3 = 1e-6 * float(freshwater.density_kg_m3(warm))
        upthrust_g = water_g_mm3 * balance.displaced_mm3(float_, tip)
        assert upthrust_g == pytest.approx(weight_g, rel=1e-9)
        assert block.load.shot_g * here(number).wet_share == pytest.approx(block.load.pull_g)


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_the_shot_listed_is_never_too_much(number):
    mass = {shot.name: shot.mass_g for shot in case(number).box.shot}
    for block in blocks(number):
        hung = sum(mass[line.name] * line.count for line in block.load.shot)
        assert hung <= block.load.shot_g + 1e-9
        assert hung + block.load.short_by_g == pytest.approx(block.load.shot_g, abs=1e-6)


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_shot_to_each_band_rises_as_the_tip_goes_down(number):
    told = case(number)
    for block in blocks(number):
        steps = staircase.staircase(
            here(number).hull, block.tip, told.box.shot_metal, told.box.shot,
            told.stream.temperature_c,
        )  # fmt: skip
        showing = [step.showing_mm for step in steps]
        assert showing == sorted(showing, reverse=True)
        for one, two in pairwise(steps):
            deeper_mm = one.showing_mm - two.showing_mm
            assert two.shot_g > one.shot_g if deeper_mm > 0 else two.shot_g == one.shot_g


@GENTLE
@given(number=numbers, showing=st.floats(5.0, 60.0), more=st.floats(0.5, 20.0))
def test_more_showing_of_one_stick_is_less_shot_and_more_to_sink(number, showing, more):
    hull, tip = here(number).hull, case(number).tip
    outside = 100.0
    low, high = (
        budget.pull_grid(hull, [tip.stock], [[x]], outside - x).item()
        for x in (showing + more, showing)
    )
    assert low < high
    painted = tips.painted_diameter_mm(tip.stock.diameter_mm, tip.coats)
    assert budget.sink_force_g(painted, showing + more) > budget.sink_force_g(painted, showing)


# --- sight, the contrasts held


@GENTLE
@given(
    number=numbers,
    range_m=st.floats(5.0, 60.0),
    farther=st.floats(1.0, 1.6),
    age=st.floats(20.0, 60.0),
    older=st.floats(0.0, 15.0),
    through=st.floats(0.05, 1.0),
)
def test_a_tip_is_seen_no_better_farther_off_older_or_through_mist(
    number, range_m, farther, age, older, through
):
    of = here(number)
    water, tip = of.waters[of.judged[0]], case(number).tip
    painted = float(tips.painted_diameter_mm(tip.stock.diameter_mm, tip.coats))
    contrast = water.contrast[-1:, of.here]

    def level(distance, years, share):
        return float(
            visibility_level(
                painted, [0.0, tip.showing_mm], share * contrast, range_m=distance,
                adaptation_cd_m2=water.adaptation_cd_m2[of.here], eye=Eye(years),
                clutter=water.clutter[of.here],
            )
        )  # fmt: skip

    now = level(range_m, age, 1.0) * (1 + 1e-9)
    assert level(range_m * farther, age, 1.0) <= now
    assert level(range_m, age + older, 1.0) <= now
    assert level(range_m, age, through) <= now


@COSTLY
@given(number=numbers, age=st.floats(10.0, 60.0), older=st.floats(1.0, 15.0))
def test_the_tip_in_hand_is_seen_no_better_by_older_eyes(number, age, older):
    levels_ = []
    for years in (age, age + older):
        aged = replace(case(number), angler=replace(case(number).angler, age_years=years))
        levels_.append(quick_level(swim(aged), aged.tip))
    assert levels_[1] <= levels_[0] * (1 + 1e-9)


# --- the choice


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_nothing_in_the_trade_off_beats_the_choice_in_all_ways(number):
    told = answer(number)
    points = told.trade_off
    chosen = [p for p in points if p.chosen]
    assert chosen
    for point in points:
        better = (
            point.level >= chosen[0].level * (1 + 1e-9),
            point.sink_force_g <= chosen[0].sink_force_g * (1 - 1e-9),
            point.ride_margin >= chosen[0].ride_margin,
        )
        assert not all(better)
        if told.at_the_bench.block.passes and told.at_the_bench.kind == "fit":
            tip = replace(told.at_the_bench.block.tip.stock, diameter_mm=point.diameter_mm)
            on_shelf = on(fittings(number), tip, point.showing_mm)
            if on_shelf and point.passes:
                assert point.sink_force_g >= chosen[0].sink_force_g * (1 - 1e-9)


def on(of: Shelf, piece: Stock, showing_mm: float) -> bool:
    return showing_mm in of.showing_mm and any(
        (s.kind, s.diameter_mm) == (piece.kind, piece.diameter_mm) for s in of.stock
    )


@pytest.mark.parametrize("number", range(len(QUESTIONS)))
def test_what_is_advised_keeps_its_limits_when_it_is_told_in_round_figures(number):
    """The options are what a person reads and types; told again, the tip does all it promised."""
    bench = answer(number).at_the_bench
    again = settle(QUESTIONS[number].with_options(**bench.options))
    block = close_look(swim(again), again.tip)
    assert block.passes == bench.block.passes
    assert [f.limit for f in block.fails] == [f.limit for f in bench.block.fails]
    for measure in (block.tip.showing_mm, block.tip.wet_mm, block.tip.glued_mm):
        assert measure == round(measure, 3)
    if isinstance(again.float_, WeighedFloat):
        assert block.load.shot_g == pytest.approx(bench.block.load.shot_g, abs=1e-6)
