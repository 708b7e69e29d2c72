"""The items themselves: words, examples, defaults, and that question and table agree."""

import ast
import inspect
import itertools
from collections.abc import Sequence
from types import NoneType
from typing import Literal, get_args, get_origin, get_type_hints

import numpy as np
import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS, SECTIONS, items_of, words_of
from tipsight.inputs.quantities import Unread
from tipsight.inputs.question import Question, is_not_sure
from tipsight.inputs.settle import settle
from tipsight.inputs.values import read

NEEDS = {
    "when": {"at": "52.1 N 1.5 W"},
    "bore": {"stock": "thin tube"},
    "paint": {"showing": "30 mm"},
    "weighed_tip": {"takes": "6BB"},
    "goes_under": {"boils": "even"},
    "soaked": {"weighs": "2.1 g"},
}
"""Items whose example stands only beside another."""


NEEDS_UNIT = ("length", "speed", "pace", "mass", "load")
TEXT = ("moment", "spot", "stock", "paint", "text", "legs")
FIXED = ("words", "tints", "stock")
"""Tables whose words the types of the fields name one by one; the others may be added to."""


def _settled(**told):
    """Return the case, or the lines that say what to mend."""
    try:
        return settle(Question(**told))
    except Mistakes as caught:
        return str(caught)


def test_each_example_settles():
    found = {key: _settled(**NEEDS.get(key, {}), **{key: ITEMS[key].example}) for key in ITEMS}
    assert {key: said for key, said in found.items() if isinstance(said, str)} == {}


def test_each_word_can_be_said_in_small_and_large_letters():
    said = [
        (item.key, word.word)
        for item in ITEMS.values()
        for word in item.words
        if item.kind in ("word", "yes-no", "names", "paint", "length", "pace", "speed", "number")
    ]
    assert len(said) > 100
    wrong = [
        (key, word)
        for key, word in said
        if (found := read(ITEMS[key], word)) is None or read(ITEMS[key], word.upper()) != found
    ]
    assert wrong == []


def test_not_sure_takes_the_same_as_not_told():
    keys = [key for key, item in ITEMS.items() if item.takes_not_sure and key != "behind"]
    assert len(keys) > 50
    wrong = [
        key
        for key in keys
        if _settled(**NEEDS.get(key, {}), **{key: "not sure"}) != _settled(**NEEDS.get(key, {}))
    ]
    assert wrong == []


def test_not_told_and_blank_are_nothing():
    nothing = ("not told", "  ", "", None, (), ["not told"], [" ", ""])
    assert [(k, v) for k in ITEMS for v in nothing if Question(**{k: v}).told()] == []


def test_each_default_can_be_said():
    defaults = {key: item.default for key, item in ITEMS.items() if item.default}
    assert len(defaults) > 40
    wrong = [k for k, v in defaults.items() if not is_not_sure(v) and read(ITEMS[k], v) is None]
    assert wrong == []


def test_the_limits_themselves_are_allowed_and_what_is_beyond_is_not():
    said = {"weighings": "No 4 {:g} g", "acuity": "{:g} arcmin", "load": "{:g} g"}
    limited = [item for item in ITEMS.values() if item.low is not None]
    assert len(limited) > 30
    for item in limited:
        form = said.get(item.kind, f"{{:g}} {item.unit if item.kind in NEEDS_UNIT else ''}")
        size = 10.0 if item.kind == "weighings" else 1.0
        for limit, beyond in ((item.low, -1e-3), (item.high, 1e-3)):
            found = read(item, form.format(limit))
            found = found["No 4"] if item.kind == "weighings" else found
            assert found * size == pytest.approx(limit, rel=1e-12), item.key
            with pytest.raises(Unread):
                read(item, form.format(limit + beyond * (1 + abs(limit))))


def _wanted(item):
    """Return what a field of the question should take for an item: types and words."""
    unsure = {"not sure"} if item.takes_not_sure else set()
    if item.repeats:
        return {str, Sequence[str]}
    if item.kind == "yes-no":
        return {bool, "yes", "no"} | unsure
    if item.kind == "word" and item.table in FIXED:
        return {word.word for word in item.words} | unsure
    if item.kind in NEEDS_UNIT or item.kind in TEXT or item.kind == "word":
        return {str}
    return {int if item.kind == "whole" else float, str}


def _taken(key):
    """Return what a field's type lets it take."""
    hints = [one for one in get_args(get_type_hints(Question)[key]) if one is not NoneType]
    return {
        one
        for hint in hints
        for one in (get_args(hint) if get_origin(hint) is Literal else (hint,))
    }


def test_the_question_says_of_each_field_what_the_table_does():
    """Name, order, type, sentence and example, field by field."""
    body = ast.parse(inspect.getsource(Question)).body[0].body
    told = {
        line.target.id: " ".join(says.value.value.split())
        for line, says in itertools.pairwise(body)
        if isinstance(line, ast.AnnAssign)
    }
    assert told.pop("learnt").startswith("No item")
    assert told == {k: f"{i.question} Such as ``{i.example}``." for k, i in ITEMS.items()}
    assert {key: _taken(key) for key in ITEMS} == {k: _wanted(i) for k, i in ITEMS.items()}


def test_a_number_alone_is_taken_just_where_it_could_be_typed():
    """In the same words where it is refused: those that need a unit ask for it."""
    numbers = (-3.0, 0.0, 0.5, 2, 7.5, 45, 310.0, np.float64(20), float("nan"))
    wrong = [
        (key, number)
        for key in ITEMS
        for number in numbers
        if _settled(**{key: number}) != _settled(**{key: f"{number:g}"})
    ]
    assert wrong == []
    for key, item in ITEMS.items():
        if item.kind in NEEDS_UNIT:
            assert f"{key}: '7.5' will not do; say the unit, " in _settled(**{key: 7.5})


def test_the_sections_stand_in_the_order_of_the_items():
    assert list(dict.fromkeys(item.section for item in ITEMS.values())) == list(SECTIONS)


def test_every_item_asks_something_and_shows_an_example():
    for item in ITEMS.values():
        assert item.question.endswith("?")
        assert item.example
        assert item.allows(item.limits).startswith("say ")
        assert item.option == "--" + item.key.replace("_", "-")


def test_the_words_of_an_item_with_numbers_are_within_its_limits():
    for item in ITEMS.values():
        if item.table == "words" and item.low is not None:
            for word in words_of(item.key):
                assert item.low <= word.number <= item.high


def test_items_of_a_section_stand_together():
    assert [item.key for section in SECTIONS for item in items_of(section)] == list(ITEMS)


def test_an_unknown_item_is_refused_with_the_nearest():
    with pytest.raises(
        Mistakes, match=r"^distnce: there is no such item; did you mean 'distance'\?$"
    ):
        Question().with_options(distnce="40 yd")


def test_a_list_may_be_given_as_a_list():
    assert Question(behind=["dark", "bright"]) == Question(behind=("dark", "bright"))


def test_with_options_takes_back_with_none():
    question = Question(depth="7 ft").with_options(depth=None, pace="walk")
    assert question.told() == {"pace": "walk"}
