"""The shot that hangs there: named, touched as little as can be, told or taken from the plan."""

from itertools import product

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.facts import Note
from tipsight.advice.swim import swim
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import line

DEMO = demo.question("demo")


def blocks(answer):
    yield answer.tip_in_hand
    for change in (*answer.changes, answer.at_the_bench):
        if change is not None:
            yield change.block
    for step in answer.next_step:
        if step.block is not None:
            yield step.block


def swims():
    """A small grid of what is asked most, each pattern once in every other place."""
    patterns = [word.word for word in ITEMS["pattern"].words]
    places = list(product(("20 yd", "40 yd"), ("bright", "dark"), ("fur", "wavelets")))
    for n, pattern in enumerate(patterns):
        for distance, behind, looks in places[n % 2 :: 4]:
            yield Question(
                distance=distance, behind=behind, looks=looks, pattern=pattern, depth="7 ft"
            )


@pytest.mark.parametrize(
    "asked", list(swims()), ids=lambda q: f"{q.pattern}, {q.distance}, {q.looks}"
)
def test_only_what_hangs_or_lies_in_the_box_is_named(asked):
    answer = advise(asked)
    here = swim(answer.case)
    hangs = {}
    for one in here.hung:
        hangs[one.name] = hangs.get(one.name, 0) + one.count
    had = {one.name for one in answer.case.box.shot}
    masses = {one.name: one.mass_g for one in (*answer.case.box.shot, *here.hung)}
    for block in blocks(answer):
        step, then = block.load.step, {}
        for one in block.load.shot:
            then[one.name] = then.get(one.name, 0) + one.count
        for name, count in step.off:
            assert hangs.get(name, 0) >= count, (name, block.tip)
        assert {name for name, _ in step.on} <= had
        assert sum(count for _, count in (*step.off, *step.on)) <= 6
        # one list for one load: what hung, less what came off, and what went on
        for name in {*hangs, *then}:
            change = dict(step.on).get(name, 0) - dict(step.off).get(name, 0)
            assert then.get(name, 0) == hangs.get(name, 0) + change
        # never over, and within 2 mm, or nearer than any shot of the box could bring it
        shot_g = sum(masses[name] * count for name, count in then.items())
        assert shot_g <= block.load.shot_g + 1e-9
        if block.load.change_g:
            assert block.load.short_by_g >= -1e-9
            lightest_g = min(one.mass_g for one in answer.case.box.shot)
            assert block.load.high_mm <= line.NEAR_MM + 1e-6 or block.load.short_by_g < lightest_g


def test_a_poor_box_says_by_how_much():
    """BB alone: none lands within 2 mm of 30 mm, and the tip then shows more, by what is short."""
    poor = advise(DEMO.with_options(shot="BB", hangs="6 BB"))
    load = poor.at_the_bank.block.load
    stiff = poor.at_the_bank.block.handling.stiffness_g_per_mm
    share = load.pull_g / load.shot_g
    assert load.high_mm > line.NEAR_MM
    assert load.high_mm == pytest.approx(load.short_by_g * share / stiff)
    assert load.step.off == (("BB", 1),)


def test_told_shot_counts_by_its_difference():
    """2.4 g told on a float that takes 2.4 g; the same change from a line 0.05 g lighter."""
    right = advise(DEMO.with_options(hangs="SSG, BB, 2 No 4")).at_the_bank.block.load
    light = advise(DEMO.with_options(hangs="SSG, BB, No 4, No 5")).at_the_bank.block.load
    assert right.change_g == pytest.approx(light.change_g)
    for load, now_g in ((right, 2.40), (light, 2.35)):
        assert now_g + load.change_g - load.step.change_g - now_g == pytest.approx(load.short_by_g)
        assert load.short_by_g >= 0.0


@pytest.mark.parametrize(("hangs", "odd"), [("SSG, BB, 2 No 4", False), ("SSG, AAA, BB", True)])
def test_shot_that_does_not_fit_the_float_is_asked_about(hangs, odd):
    """The demo's float takes 2.40 g; 5 mm of a 3 mm quill are 0.046 g of tin."""
    found = [one for one in advise(DEMO.with_options(hangs=hangs)).warnings]
    said = [one for one in found if one.kind is Note.SHOT_ODD]
    assert bool(said) is odd
    if odd:
        assert said[0].values == pytest.approx({"hangs_g": 2.8, "takes_g": 2.4})


def test_places_told_are_kept():
    case = settle(DEMO.with_options(hangs="bulk SSG; droppers BB, 2 No 4"))
    assert [(one.name, one.count, one.where) for one in swim(case).hung] == [
        ("SSG", 1, "bulk"), ("BB", 1, "dropper"), ("No 4", 2, "dropper"),
    ]  # fmt: skip
