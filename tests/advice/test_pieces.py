"""Small pieces of the advice: resetting, inking and naming a tip."""

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.answer import Nearly
from tipsight.advice.facts import Care, Cure, Failure, Limit, Note, Pen, Show, Undo, Warn
from tipsight.advice.ladder import stretched
from tipsight.advice.limits import least_glued_mm, least_wet_mm
from tipsight.advice.on_the_spot import penned, reset
from tipsight.advice.retelling import paint_words
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.inputs.question import Question
from tipsight.output import doing

TIP = Tip(
    Stock("quill", 3.0, density_kg_m3=300.0),
    20.0,
    10.0,
    5.0,
    (Band("white", 0, 8), Band("black", 8, 20)),
)


def test_showing_more_takes_it_from_the_wet_part():
    more = reset(TIP, 26.0)
    assert (more.showing_mm, more.wet_mm) == (26.0, 4.0)


@pytest.mark.parametrize(
    ("share", "bands"),
    [
        (1.0, [("felt pen", 0, 20)]),
        (0.5, [("felt pen", 0, 10), ("black", 10, 20)]),
        (0.25, [("felt pen", 0, 5), ("white", 5, 8), ("black", 8, 20)]),
    ],
)
def test_ink_covers_from_the_top(share, bands):
    assert [(b.paint, b.from_top_mm, b.to_top_mm) for b in penned(TIP, share).bands] == bands


def test_bands_keep_their_shares_when_stretched():
    assert [b.to_top_mm for b in stretched(TIP, 40.0).bands] == [16, 40]


def test_paint_is_said_from_the_top():
    assert paint_words(TIP.bands, 20.0) == "white 0-8 mm, black 8-20 mm"


def test_what_holds_a_tip():
    assert least_glued_mm(60.0) == 8.0
    assert least_wet_mm(7.4) == 15.0


def test_a_sun_lane_brighter_than_any_field_still_gets_an_answer():
    lane = Question(
        distance="20 yd",
        sky="clear",
        sun_out="yes",
        shadow="much longer",
        sun_is="in my face",
        behind=("sun lane",),
    )
    answer = advise(lane)
    assert answer.tip_in_hand.visibility.by_background[0].name == "sun lane"
    assert Care.SUN in [caution.kind for caution in answer.cautions]


def test_a_grade_that_the_bites_forbid_is_told_with_its_price():
    shy = advise(
        Question(distance="40 yd", behind=("bright",), looks="fur", bites="shy", age="45")
    )
    assert shy.at_the_bench.block.sound
    kept = next(step for step in shy.next_step if step.grade == "kept in view")
    fail = next(f for f in kept.block.fails if f.limit is Limit.BITE)
    assert kept.unusual
    assert fail.value > fail.allowed == pytest.approx(0.1 * kept.block.load.pull_g)
    assert kept.block.visibility.level >= 5.0


def test_the_nearest_miss_of_the_ride_is_the_one_that_rides_best():
    weir = Question(
        distance="20 yd", boils="weir", pace="rushing", looks="wavelets", bites="bold",
        pattern="bolo type", takes="8 g", diameter="5 mm", stock="balsa", showing="25 mm",
    )  # fmt: skip
    answer = advise(weir)
    assert not answer.at_the_bench.block.passes
    near = next(
        w for w in answer.warnings if isinstance(w, Nearly) and w.failure.limit is Limit.RIDE
    )
    assert answer.tip_in_hand.handling.ride_margin < near.failure.value < 2.0
    assert near.failure.allowed == 2.0
    assert near.cures[:2] == (Cure.EASE_OFF, Cure.SHALLOWER)


def test_a_light_stick_is_not_told_to_be_unseen_by_sums_that_leave_out_its_glow():
    dusk = Question(distance="25 yd", sun_height="-6", light_stick="yes")
    offered = next(c for c in advise(dusk).changes if c.kind == "light stick")
    assert doing.change(offered).endswith("its own glow is not in the sums")
    worn = advise(Question(distance="25 yd", sun_height="-6", light_stick_on="3 x 23 mm"))
    assert Warn(Note.LIGHT_NOT_RECKONED) in worn.warnings


def test_lead_that_is_not_counted_on_is_said():
    told = {"pattern": "quill avon", "takes": "4AAA", "showing": "20 mm", "marked_in": "lead"}
    lead, tin = (advise(Question(**told, shot_metal=metal)) for metal in ("lead", "tin"))
    assert Warn(Note.LEAD_LEFT_OUT) in lead.warnings
    assert Warn(Note.LEAD_LEFT_OUT) not in tin.warnings


def test_a_pen_on_the_way_closer_cannot_be_undone():
    closer = [
        c
        for c in advise(Question(distance="40 yd", behind=("bright",))).changes
        if c.range_m is not None and c.does(Pen)
    ]
    assert closer
    assert closer[0].undo is Undo.PAINT_LOST


LANE = {"sky": "clear", "sun_height": "25", "distance": "40 yd"}


def test_one_comes_closer_with_what_is_done_anyway():
    found = advise(Question(behind=("sun lane", "broken"), **LANE))
    closer = next(c for c in found.changes if c.range_m is not None)
    assert closer.block.tip == found.at_the_bank.block.tip


def test_a_tip_longer_than_it_can_stand_is_let_down_though_it_is_not_seen():
    found = advise(Question(distance="60 yd", behind=("broken",), showing="60 mm"))
    assert found.tip_in_hand.fails[1] == Failure(Limit.STRENGTH, 60.0, 35.0)
    assert found.at_the_bank.actions == (Show(35.0, more=False),)
    assert found.at_the_bank.block.load.step.on


def test_an_insert_may_be_penned_too():
    told = {"inserts": "solid 2, 3, 4", "pulls_out": "yes", "pattern": "hollow-tip foam taper"}
    float_ = {"takes": "6 g", "diameter": "3 mm", "stock": "thin tube", "showing": "20 mm"}
    open_water = Question(distance="35 yd", behind=("bright",), **told, **float_)
    found = {c.kind: c for c in advise(open_water).changes}
    plain, inked = found["insert"].block, found["insert and pen"].block
    assert inked.visibility.level > plain.visibility.level
    assert inked.tip.bands[0].paint == "felt pen"
    swap, pen = found["insert and pen"].actions
    assert (swap.stock.kind, swap.stock.diameter_mm) == ("solid", 4.0)
    assert pen.ink_mm == inked.tip.bands[0].to_top_mm
    no_pen = advise(Question(distance="35 yd", behind=("bright",), pen="no", **told, **float_))
    assert "insert and pen" not in {c.kind for c in no_pen.changes}


@pytest.mark.parametrize(("weighs", "asked"), [("9 g", True), ("1.1 g", False)])
def test_a_float_far_heavier_than_its_like_is_asked_about(weighs, asked):
    told = Question(pattern="quill avon", takes="6BB", weighs=weighs, behind=("dark",))
    said = [one for one in advise(told).warnings if one.kind == Note.WEIGHT_ODD]
    assert bool(said) is asked


POOR_SHELF = {"tips": "quill 2", "paints": "orange", "behind": ("dark",), "distance": "40 yd"}


def test_nothing_is_fitted_that_is_seen_worse_than_the_tip_in_hand():
    found = advise(Question(**{**POOR_SHELF, "distance": "45 yd"}, seen="easy"))
    assert found.at_the_bench.actions == ()
    assert found.at_the_bench.block.visibility.level >= found.tip_in_hand.visibility.level
    assert Note.NONE_BETTER in [one.kind for one in found.warnings]


def test_the_next_step_may_be_the_tip_in_hand():
    found = advise(Question(**POOR_SHELF))
    kept = next(step for step in found.next_step if step.grade == "kept in view")
    assert kept.in_hand
    assert kept.block == found.tip_in_hand
    assert kept.options == {}
