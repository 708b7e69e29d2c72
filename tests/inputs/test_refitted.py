"""A float with another tip still took its shot with the one before."""

from dataclasses import replace

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.question import Question
from tipsight.inputs.refitted import refitted
from tipsight.inputs.settle import settle

AVON = {
    "pattern": "quill avon",
    "takes": "6BB",
    "diameter": "3 mm",
    "stock": "quill",
    "showing": "20 mm",
}


def settled(before, told):
    after = {**before, **told, **refitted(before, told)}
    return settle(Question().with_options(**after))


def test_a_new_tip_leaves_the_weighing_where_it_was():
    before = {**AVON, "wet": "8 mm", "tip_coats": "2"}
    told = {"diameter": "4 mm", "stock": "cane", "showing": "30 mm", "wet": "12 mm"}
    case = settled(before, told)
    then = settle(Question().with_options(**before)).weighed_tip
    assert replace(case.weighed_tip, bands=then.bands) == then
    assert (case.tip.stock.kind, case.tip.stock.diameter_mm, case.tip.showing_mm) == (
        "cane",
        4.0,
        30.0,
    )
    assert case.float_.shot_g == pytest.approx(2.4)


def test_a_pattern_s_usual_tip_was_on_it_where_none_was_told():
    bare = {"pattern": "quill avon", "takes": "6BB"}
    case = settled(bare, {"diameter": "4 mm", "stock": "cane"})
    assert case.weighed_tip.stock == settle(Question().with_options(**bare)).tip.stock
    assert case.weighed_tip.showing_mm == 25.0


@pytest.mark.parametrize("wet", [{}, {"wet": "15 mm"}])
def test_the_same_stick_that_shows_more_took_its_shot_at_the_mark_before(wet):
    """Of 35 mm out of the body (30 where none was told wet), 25 show now."""
    out_mm = 35.0 if wet else 30.0
    case = settled({**AVON, **wet}, {"showing": "25 mm"})
    assert (case.weighed_tip.showing_mm, case.weighed_tip.wet_mm) == (20.0, out_mm - 20.0)
    assert (case.tip.showing_mm, case.tip.wet_mm) == (25.0, out_mm - 25.0)
    assert case.weighed_tip.stock == case.tip.stock
    with pytest.raises(
        Mistakes, match="of this tip stands out of the body; show less, or say weighed_tip"
    ):
        settled({**AVON, **wet}, {"showing": "45 mm"})


def test_a_second_new_tip_does_not_move_the_weighing():
    once = {**AVON, "diameter": "4 mm", **refitted(AVON, {"diameter": "4 mm"})}
    assert refitted(once, {"diameter": "5 mm"}) == {}
    assert once["weighed_tip"] == "3 mm quill"


def test_shot_told_anew_was_found_with_the_tip_of_now():
    once = {**AVON, "diameter": "4 mm", **refitted(AVON, {"diameter": "4 mm"})}
    assert refitted(once, {"takes": "5BB"}) == dict.fromkeys(
        ("takes_showing", "weighed_tip", "weighed_wet")
    )
    assert refitted(once, {"takes": "5BB", "takes_showing": "10 mm"}) == dict.fromkeys(
        ("weighed_tip", "weighed_wet")
    )


@pytest.mark.parametrize(
    ("before", "told", "more"),
    [
        ({"paint": "red", "seasons": "3"}, {"paint": "black"}, {"seasons": None}),
        ({"paint": "red", "seasons": "3"}, {"paint": "black", "seasons": "1"}, {}),
        ({"paint": "red", "seasons": "3"}, {"paint": "red"}, {}),
        ({"stock": "thin tube", "bore": "2 mm"}, {"stock": "cane"}, {"bore": None}),
    ],
)
def test_a_new_paint_has_no_seasons_and_another_stick_no_bore(before, told, more):
    built = {"pattern": "quill avon", "size": "12 mm"}
    assert refitted({**built, **before}, told) == more


def test_what_is_not_of_the_tip_changes_nothing_else():
    assert refitted(AVON, {"weighs": "2.1 g", "finish": "gloss"}) == {}
