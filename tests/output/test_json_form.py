"""The object for programs: its keys, and that its numbers are the answer's."""

import importlib.util
import json
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tipsight.output.json_form import json_form, nulls, number

_spec = importlib.util.spec_from_file_location("sample", Path(__file__).with_name("sample.py"))
assert _spec is not None
assert _spec.loader is not None
sample = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(sample)

TOP = [
    *("schema", "question", "assumed", "tip_in_hand", "at_the_bank", "at_the_bench", "changes"),
    *("next_step", "by_distance", "trade_off", "reasons", "doubts", "warnings", "cautions"),
]
BLOCK = {
    "tip": "diameter_mm showing_mm stock",
    "paint": None,
    "visibility": "level low high grade goes_at_m gone_at_m by_background",
    "handling": "sink_force_g stiffness_g_per_mm ride_margin time_under dips_per_min "
    "ordinary_dip_s hidden_mm slow_bite_g pluck_g visible_dip_mm lean_deg upright",
    "load": "shot_metal shot_g change_g shot short_by_g",
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
    assert told["schema"] == 1
    for block in (told["tip_in_hand"], told["at_the_bank"], told["at_the_bench"]):
        check_block(block)
    for change in told["changes"]:
        assert list(change) == ["kind", "at_the_bank", "words", "undo", "options", "block"]
        check_block(change["block"])
    for step in told["next_step"]:
        assert list(step) == ["grade", "words", "options", "block"]
    assert told["next_step"][-1]["block"] is None
    for reason in told["reasons"]:
        assert list(reason) == ["words", "options", "block"]
        assert (reason["block"] is None) == (not reason["options"])
    assert [list(one) for one in told["cautions"]] == [["words", "trigger"]] * 2
    assert [list(one) for one in told["doubts"]] == [["name", "words", "spread"]] * 2
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
            assert any(place in warning for warning in told["warnings"])
    said = next(w for w in told["warnings"] if w.startswith("goes_at_m is null in "))
    assert said.endswith("the level does not cross what is wanted within the distances looked at")


def test_an_answer_without_nulls_warns_of_none() -> None:
    assert nulls({"a": [{"b": 1.0}], "block": None, "at_the_bench": None}) == {}
    assert nulls({"a": [{"b": None}]}) == {"b": ["a[0].b"]}


def test_the_question_is_told_back() -> None:
    told = json_form(sample.answer())
    assert told["question"]["behind"] == ["bright"]
    assert told["question"]["distance"] == "40 yd"
