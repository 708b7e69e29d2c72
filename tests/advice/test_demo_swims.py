"""The three invented demo swims: what an angler who knows them would say of the answers.

Sizes are common practice without a source; the directions are what the tests hold.
"""

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.answer import Turns
from tipsight.inputs import demo
from tipsight.output import doing, telling, warned

DARK_PAINTS = ("black", "felt pen", "red", "blue")


@pytest.fixture(scope="module")
def answers():
    return {name: advise(demo.question(name)) for name in ("demo", "match", "dusk")}


def said(answer):
    parts = [
        *(doing.change(c) for c in answer.changes),
        *(telling.reason(r, answer.case) for r in answer.reasons),
    ]
    return " ".join([*parts, *warned.warnings(answer)]).lower()


def change(answer, kind):
    return next(c for c in answer.changes if c.kind == kind)


def test_gone_at_thirty_five_is_a_matter_of_area_and_of_dark_paint(answers):
    answer = answers["demo"]
    assert answer.tip_in_hand.visibility.level < 1
    assert "pen" in answer.at_the_bank.kind
    more = answer.at_the_bank.block
    assert 5 <= more.tip.showing_mm - 20 <= 10
    assert more.load.change_g < 0
    assert (
        doing.shot(more) == "swap the BB for a No 1"
    )  # of what hangs there, and a little lighter
    bench = answer.at_the_bench.block
    area = bench.tip.stock.diameter_mm * bench.tip.showing_mm
    assert 105 <= area <= 240  # 3 x 35 mm is followed; 140 to 170 mm2 would be kept in view
    assert bench.tip.bands[0].paint in DARK_PAINTS
    assert bench.visibility.level >= 2.4
    assert bench.handling.sink_force_g > answer.tip_in_hand.handling.sink_force_g


def test_the_least_trouble_comes_first(answers):
    order = [
        "as it is",
        "show more",
        "pen",
        "pen and show more",
        "sleeve",
        "insert",
        "pen and show more and come closer",
        "fit",
    ]
    kinds = [c.kind for c in answers["demo"].changes]
    assert kinds == [kind for kind in order if kind in kinds]
    assert kinds[0] == "as it is"
    assert "pen and show more" in kinds


def test_the_mirrored_case_turns_the_paint_round():
    answer = advise(demo.question("demo").with_options(behind=("dark",)))
    assert answer.at_the_bench.block.tip.bands[0].paint in (
        "white",
        "yellow",
        "fluorescent yellow",
    )


def test_dark_reflection_wants_paint_not_size(answers):
    answer = answers["match"]
    block = answer.at_the_bench.block
    assert block.tip.stock.diameter_mm == 3.5
    assert block.tip.showing_mm == 6
    assert block.load.change_g == pytest.approx(0, abs=0.02)
    assert block.tip.bands[0].paint in ("white", "yellow", "fluorescent yellow")
    assert "sleeve" in [c.kind for c in answer.changes]


def test_red_weak_eyes_and_a_light_stick_at_dusk(answers):
    answer = answers["dusk"]
    eyes = next(
        r for r in answer.reasons if isinstance(r, Turns) and r.colour_vision == "red-weak"
    )
    assert eyes.options == {"colour_vision": "normal"}
    assert "red" not in answer.at_the_bench.block.tip.bands[0].paint
    stick = change(answer, "light stick")
    assert stick.block.load.change_g == pytest.approx(
        -0.26 / 0.863, abs=0.02
    )  # stick and holder, in tin
    assert "rules" in doing.change(stick)
    assert any("rules" in telling.caution(c) for c in answer.cautions)


@pytest.mark.parametrize("name", ["demo", "match", "dusk"])
def test_polarised_glasses_are_never_the_cure(answers, name):
    assert "polarised" not in said(answers[name])


def test_twelve_yards_in_calm_shade_never_gets_a_forty_yard_tip():
    near = demo.question("demo").with_options(
        distance="12 yd", behind=("dark",), looks="glass", wind="calm", sky="dull overcast"
    )
    answer = advise(near)
    assert answer.at_the_bank.kind in ("as it is", "show less")
    tip = answer.at_the_bench.block.tip
    assert tip.stock.diameter_mm * tip.showing_mm <= 60
    for step in answer.next_step:
        assert step.block is not None
        assert step.block.tip.stock.diameter_mm * step.block.tip.showing_mm <= 60
