"""The items themselves: words, examples, defaults, and that question and table agree."""

from dataclasses import fields

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.items import ITEMS, SECTIONS, items_of, words_of
from tipsight.inputs.kinds import is_not_sure, read
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

NEEDS = {
    "when": {"at": "52.1 N 1.5 W"},
    "bore": {"stock": "thin tube"},
    "paint": {"showing": "30 mm"},
    "weighed_tip": {"takes": "6BB"},
    "goes_under": {"boils": "even"},
}
"""Items whose example stands only beside another."""


@pytest.mark.parametrize("key", ITEMS)
def test_the_example_settles(key):
    settle(Question(**NEEDS.get(key, {}), **{key: ITEMS[key].example}))


@pytest.mark.parametrize("key", ITEMS)
def test_every_word_can_be_said(key):
    item = ITEMS[key]
    for word in item.words:
        if item.kind in ("word", "yes-no", "names", "paint", "length", "pace", "speed", "number"):
            assert read(item, word.word) is not None
            assert read(item, word.word.upper()) == read(item, word.word)


@pytest.mark.parametrize(
    "key", [key for key, item in ITEMS.items() if item.takes_not_sure and key != "behind"]
)
def test_not_sure_takes_the_same_as_not_told(key):
    base = NEEDS.get(key, {})
    unsure, untold = settle(Question(**base, **{key: "not sure"})), settle(Question(**base))
    assert unsure == untold


@pytest.mark.parametrize("key", ITEMS)
def test_not_told_and_blank_are_nothing(key):
    assert Question(**{key: "not told"}).told() == Question(**{key: "  "}).told() == {}


@pytest.mark.parametrize("key", [key for key, item in ITEMS.items() if item.default])
def test_the_default_can_be_said(key):
    assert is_not_sure(ITEMS[key].default) or read(ITEMS[key], ITEMS[key].default) is not None


@pytest.mark.parametrize("key", [key for key, item in ITEMS.items() if item.low is not None])
def test_the_limits_themselves_are_allowed(key):
    item = ITEMS[key]
    if item.kind in ("weighings",):
        assert read(item, f"No 4 {item.low} g")
        return
    assert read(item, item.low) == item.low
    assert read(item, item.high) == item.high


def test_question_and_items_agree():
    assert [field.name for field in fields(Question)] == list(ITEMS)
    assert list(dict.fromkeys(item.section for item in ITEMS.values())) == list(SECTIONS)


def test_every_item_asks_something_and_shows_an_example():
    for item in ITEMS.values():
        assert item.question.endswith("?")
        assert item.example
        assert item.allowed.startswith("say ")
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
