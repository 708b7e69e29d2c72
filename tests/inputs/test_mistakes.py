"""Every item answers what it cannot use with one clear line, pinned in mistakes.csv."""

import csv
from pathlib import Path

import pytest

from tipsight import tables
from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS
from tipsight.inputs.parts import sizes_of
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

LISTS = (
    *("paints", "water_colours", "materials", "patterns", "shot"),
    *("shot_metals", "skies", "tints", "stock"),
)


def _rows():
    with (Path(__file__).parent / "mistakes.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def _said(text):
    if text in ("nan", "3.0"):
        return float(text)
    if text == "True":
        return True
    return tuple(text.split("|")[:-1]) if text.endswith("|") else text


def _listed(table, last):
    names = [row["name"] for row in tables.rows(table) if not row["name"].endswith(" olivette")]
    return ", ".join(names[:-1]) + last + names[-1]


def _line(row):
    """Return the lines that answer a row's question, empty if it stands."""
    try:
        settle(Question(**{row["item"]: _said(row["said"])}))
    except Mistakes as caught:
        return str(caught)
    return ""


def _expected(row):
    """Return what may stand in the row, its lists written either way."""
    for last in (" or ", ", "):
        text = row["text"].replace("{sizes}", ", ".join(sizes_of("quill avon")))
        for table in LISTS:
            text = text.replace("{" + table + "}", _listed(table, last))
        yield text


def test_each_line_of_the_table():
    assert len(_rows()) > 250
    found = [(row["item"], row["said"], _line(row), list(_expected(row))) for row in _rows()]
    wrong = [one for one in found if one[2] not in one[3]]
    assert wrong == []


def test_every_item_is_in_the_table():
    assert {row["item"] for row in _rows()} == set(ITEMS)


def test_every_item_with_limits_is_tried_on_both_sides_and_with_nan():
    for item in ITEMS.values():
        said = [row["said"] for row in _rows() if row["item"] == item.key]
        assert any("wibble" in text for text in said)
        if item.low is not None and item.kind not in ("acuity", "weighings"):
            assert "nan" in said
            assert len(said) >= 4


def test_all_mistakes_are_told_at_once_in_the_order_of_the_question():
    question = Question(age="6", depth="40 ft", distance="40", shot="No 7", behind="drk; brigt")
    with pytest.raises(Mistakes) as caught:
        settle(question)
    items = [mistake.item for mistake in caught.value.mistakes]
    assert items == ["distance", "depth", "behind", "behind", "age", "shot"]


def test_a_mistake_in_an_item_that_is_of_no_use_is_told_too():
    with pytest.raises(Mistakes, match="weighed_wet: 'long' will not do"):
        settle(Question(size="12 mm", weighed_wet="long"))


def test_a_mistake_is_told_once():
    with pytest.raises(Mistakes) as caught:
        settle(Question(boils="wild", looks="wild"))
    assert len(caught.value.mistakes) == 2
