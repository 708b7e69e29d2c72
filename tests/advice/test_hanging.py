"""The shot that hangs there: named, touched as little as can be, told or taken from the plan."""

from dataclasses import replace
from itertools import product

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.facts import Note
from tipsight.advice.swim import swim
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.output import readings
from tipsight.output.shotting import shotting

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
            near = block.load.high_mm is not None and block.load.high_mm <= 2.0 + 1e-6
            assert near or block.load.short_by_g < lightest_g


def test_a_poor_box_says_by_how_much():
    """5 BB and 6 No 8, 0.184 g to come off: three No 8 are 0.18, four 0.24; a BB for three 0.22.

    So 0.036 g too much comes off, and of a 3 mm quill that is 4 mm.
    """
    poor = advise(DEMO.with_options(shot="BB, No 8", hangs="5 BB, 6 No 8", wet="30 mm"))
    block = poor.at_the_bank.block
    load, stiff = block.load, block.handling.stiffness_g_per_mm
    assert load.change_g == pytest.approx(-0.184, abs=5e-4)
    assert (load.step.off, load.step.on) == ((("BB", 1),), (("No 8", 3),))
    assert load.short_by_g == pytest.approx(0.22 + load.change_g)
    assert load.high_mm == pytest.approx(load.short_by_g * load.pull_g / load.shot_g / stiff)
    assert readings.high(block) == "; 4 mm more than that shows: no shot you have comes nearer"


def test_where_the_body_comes_out_no_length_of_tip_is_said():
    """Two BB, of 0.4 g, under a float that takes 2.4 g: 1.6 g short, and 10 mm of 3 mm quill are
    0.08 g."""
    bare = advise(DEMO.with_options(shot="2 BB", pen="no", showing="25 mm"))
    load = next(one.block.load for one in bare.changes if one.block.load.change_g)
    assert load.high_mm is None
    assert 1.4 < load.short_by_g < 1.7
    assert readings.high(replace(bare.tip_in_hand, load=load)) == (
        f"; {load.short_by_g:.2f} g short, so that its body shows: no shot you have comes nearer"
    )


@pytest.mark.parametrize(
    ("hangs", "said"),
    [
        ("SSG", "1.60 g; 0.80 g short of what it takes"),
        ("SSG, AAA, BB", "2.80 g; 0.40 g more than it takes"),
        ("SSG, BB, 2 No 4", "2.40 g; nothing left over"),
    ],
)
def test_the_shot_list_says_what_he_told_is_short_of(hangs, said):
    """Of 2.4 g; nobody has said that no shot of his makes it up."""
    asked = DEMO.with_options(hangs=hangs, takes="2.4 g")
    assert said in " ".join(shotting(settle(asked)).split())


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
