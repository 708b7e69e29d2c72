"""The object for programs: its keys, and that its numbers are the answer's."""

import json
import math
from dataclasses import replace
from typing import Any

import pytest
import sample

from tipsight.output.json_form import json_form, nulls, number
from tipsight.output.measures import Reader

TOP = [
    *("schema", "question", "assumed", "tip_in_hand", "at_the_bank", "at_the_bench", "changes"),
    *("next_step", "by_distance", "trade_off", "reasons", "doubts", "warnings", "cautions"),
]
BLOCK = {
    "tip": "diameter_mm showing_mm stock",
    "paint": None,
    "visibility": "level low high grade goes_at_m gone_at_m notice_s by_background",
    "handling": "sink_force_g stiffness_g_per_mm ride_margin ride_margin_low ride_margin_high "
    "time_under dips_per_min ordinary_dip_s hidden_mm slow_bite_g pluck_g visible_dip_mm lean_deg upright",
    "load": "shot_metal shot_g change_g put_on take_off shot short_by_g high_mm",
    "passes": None,
    "fails": None,
}


def check_block(block: dict[str, Any]) -> None:
    assert list(block) == list(BLOCK)
    for name, keys in BLOCK.items():
        if keys is not None:
            assert list(block[name]) == keys.split()
    for band in block["paint"]:
        assert list(band) == ["paint", "from_top_mm", "to_top_mm"]
    for water in block["visibility"]["by_background"]:
        assert list(water) == ["name", "level", "low", "high", "grade"]
    for line in block["load"]["shot"]:
        assert list(line) == ["name", "count", "where"]


def test_the_keys_are_exactly_those_of_the_schema() -> None:
    told = json_form(sample.answer(waters=("dark", "bright")))
    assert list(told) == TOP
    assert told["schema"] == 2
    for block in (told["tip_in_hand"], told["at_the_bank"], told["at_the_bench"]):
        check_block(block)
    for change in told["changes"]:
        assert list(change) == [
            "kind",
            "at_the_bank",
            "actions",
            "undo",
            "options",
            "either",
            "causes",
            "block",
            "text",
        ]
        check_block(change["block"])
    for step in told["next_step"]:
        assert list(step) == ["grade", "in_hand", "unusual", "options", "block", "text"]
    assert told["next_step"][-1]["block"] is None
    for reason in told["reasons"]:
        assert (next(iter(reason)), list(reason)[-1]) == ("kind", "text")
        assert ("block" in reason) == (reason["kind"] == "turns") == ("options" in reason)
    assert [list(one) for one in told["cautions"]] == [["kind", "stock", "text", "trigger"]] * 2
    assert [list(one) for one in told["doubts"]] == [["kind", "spread", "text"]] * 2
    assert list(told["by_distance"][0]) == ["range_m", "tip_in_hand", "advised"]
    assert all(list(one) == ["item", "taken"] for one in told["assumed"])


@pytest.mark.parametrize("bench", [True, False])
def test_it_is_json_and_nothing_more(bench: bool) -> None:
    told = json_form(sample.answer(bench=bench))
    assert json.loads(json.dumps(told, allow_nan=False)) == told
    assert (told["at_the_bench"] is None) is not bench


def test_numbers_keep_four_figures() -> None:
    assert number(0.000123456) == 0.0001235
    assert number(36.576) == 36.58
    assert number(math.nan) is None
    assert number(-math.inf) is None
    assert json_form(sample.answer())["by_distance"][0]["tip_in_hand"] == {
        "dark": 8.123,
        "bright": 2.0,
    }


def test_margins_end_at_twenty() -> None:
    answer = sample.answer()
    calm = replace(
        answer.tip_in_hand, handling=replace(answer.tip_in_hand.handling, ride_margin=850.0)
    )
    told = json_form(replace(answer, tip_in_hand=calm))
    assert told["tip_in_hand"]["handling"]["ride_margin"] == 20.0
    assert [point["ride_margin"] for point in told["trade_off"]] == [3.0, 2.9, 20.0]


def test_every_null_is_told_with_its_reason() -> None:
    told = json_form(sample.answer())
    assert told["at_the_bench"]["visibility"]["goes_at_m"] is None
    for places in nulls({key: value for key, value in told.items() if key != "warnings"}).values():
        for place in places:
            assert any(place in warning.get("places", ()) for warning in told["warnings"])
    said = next(w for w in told["warnings"] if w.get("key") == "goes_at_m")
    assert said["kind"] == "null"
    assert said["text"].startswith("goes_at_m is null in at_the_bench.visibility.goes_at_m")
    assert said["text"].endswith(
        "the level does not cross what is wanted within the distances looked at"
    )


def test_whether_a_tip_passes_is_told_and_by_how_much_it_fails() -> None:
    told = json_form(sample.answer())
    assert told["at_the_bench"]["passes"] is True
    assert told["tip_in_hand"]["passes"] is False
    assert told["tip_in_hand"]["fails"] == [
        {"limit": "sight", "value": 1.6, "allowed": 5.0, "as_it_is": False}
    ]


def test_a_change_says_what_it_does_beside_its_text() -> None:
    pen = next(
        c for c in json_form(sample.answer())["changes"] if c["kind"] == "pen and show more"
    )
    assert pen["actions"] == [
        {"do": "pen", "ink_mm": 10.0, "whole": False},
        {"do": "show", "showing_mm": 30.0, "more": True},
    ]
    assert pen["undo"] == "ends the paint beneath for the day"
    assert pen["block"]["load"]["take_off"] == [{"name": "No 8", "count": 1}]
    assert pen["text"] == (
        "pen the top 10 mm (3/8 in) black and let 30 mm (1¼ in) show: take off a No 8"
    )


def test_what_stands_in_the_way_is_told_as_facts() -> None:
    near = json_form(sample.answer(bench=False))["warnings"][0]
    assert (near["kind"], near["limit"], near["value"], near["allowed"]) == (
        "nearly",
        "ride",
        1.2,
        2.0,
    )
    assert near["cures"] == ["calmer water"]
    assert near["block"]["tip"]["showing_mm"] == 25.0


def test_the_texts_follow_the_reader_and_the_numbers_do_not() -> None:
    yards = json_form(sample.answer())
    metres = json_form(sample.answer(), Reader("m", inches=False))
    assert yards["changes"][1]["text"] != metres["changes"][1]["text"]
    assert "yd" not in json.dumps([c["text"] for c in metres["changes"]])
    assert yards["by_distance"] == metres["by_distance"]


def test_to_dict_holds_the_same_facts_unrounded_and_no_sentence() -> None:
    answer = sample.answer()
    facts, told = answer.to_dict(), json_form(answer)
    assert list(facts) == TOP[1:]
    assert facts["by_distance"][0]["tip_in_hand"]["dark"] == 8.123456
    assert "text" not in json.dumps(facts)
    assert facts["tip_in_hand"]["fails"] == told["tip_in_hand"]["fails"]


def test_a_row_is_flat_and_names_each_tip() -> None:
    row = sample.answer(bench=False).row()
    assert row["tip_in_hand_showing_mm"] == 20.0
    assert row["at_the_bank_level"] == 2.9
    assert row["at_the_bench_level"] is None
    assert all(isinstance(one, str | float | int | bool | None) for one in row.values())
    assert list(row) == list(sample.answer().row())


def test_an_answer_is_short_in_a_console_and_a_table_in_a_notebook() -> None:
    assert repr(sample.answer()) == (
        "<Answer at 36.6 m: in hand 3 x 20 mm, in and out; at the bank pen and show more; at the "
        "bench 5 x 45 mm, kept in view>"
    )
    table = sample.answer()._repr_html_()
    assert table.count("<tr>") == 4
    assert "<td>black over fluorescent orange</td>" in table


def test_an_answer_without_nulls_warns_of_none() -> None:
    assert nulls({"a": [{"b": 1.0}], "block": None, "at_the_bench": None}) == {}
    assert nulls({"a": [{"b": None}]}) == {"b": ["a[0].b"]}


def test_the_question_is_told_back() -> None:
    told = json_form(sample.answer())
    assert told["question"]["behind"] == ["bright"]
    assert told["question"]["distance"] == "40 yd"
