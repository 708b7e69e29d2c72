"""Addresses and questions, there and back."""

from urllib.parse import parse_qsl

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from werkzeug.datastructures import MultiDict

from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from webui.asking import MOST_LETTERS, Asked, read, typed_of
from webui.reader_units import Units

TEXT = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=12)
TYPED = st.dictionaries(
    st.sampled_from(list(ITEMS)), st.tuples(TEXT) | st.tuples(TEXT, TEXT), max_size=6
)
UNITS = st.builds(Units, st.sampled_from(["yd", "m"]), st.sampled_from(["ft", "m"]))


def again(query):
    return read(MultiDict(parse_qsl(query, keep_blank_values=True)), demo.question())


@settings(deadline=None, derandomize=True, max_examples=200)
@given(TYPED, UNITS, TYPED)
def test_the_short_address_stays_as_it_is(typed, units, was):
    once = again(Asked(typed, units, was).query())
    assert again(once.query()) == once
    assert once.units == units


@pytest.mark.parametrize("name", demo.names())
def test_a_question_comes_back_from_its_address(name):
    question = demo.question(name)
    asked = again(Asked(typed_of(question)).query())
    assert asked.question().told() == {
        key: value[0] if isinstance(value, tuple) else value
        for key, value in Question(**{k: v[0] for k, v in typed_of(question).items()})
        .told()
        .items()
    }
    assert not asked.own


def test_an_item_told_twice_is_told_as_a_list():
    assert again("behind=dark&behind=bright").question().behind == ("dark", "bright")


def test_before_takes_back_what_was_not_told():
    asked = again("distance=40+yd&paint=black&was_paint=&was_distance=30+yd")
    assert asked.before().told() == {"distance": "30 yd"}
    assert again("distance=40+yd").before() is None


def test_units_alone_keep_the_own_question():
    asked = again("far=m")
    assert asked.own
    assert asked.units == Units("m", "ft")


@pytest.mark.parametrize("far", ["furlong", "", "yd"])
def test_units_that_there_are_none_of_are_the_usual_ones(far):
    assert again(f"distance=40&far={far}").typed == {"distance": ("40 yd",)}


@pytest.mark.parametrize(
    ("key", "typed", "read_as"),
    [
        *(("distance", " 40 ", "40 yd"), ("distance", "36,5", "36,5 yd"), ("eye", "5", "5")),
        *(("depth", "7", "7"), ("open_water", "60", "60 yd"), ("mist", "200", "200")),
        *(("distance", "40 m", "40 m"), ("eye", "sat", "sat"), ("showing", "20", "20")),
        *(("temperature", "10", "10"), ("distance", "-3", "-3")),
    ],
)
def test_a_bare_number_takes_the_unit_of_the_page(key, typed, read_as):
    assert read(MultiDict({key: typed}), Question()).typed == {key: (read_as,)}


def test_too_long_is_told():
    with pytest.raises(Mistakes, match="this is longer than any answer, 2000 letters at the most"):
        Asked({"paint": ("x" * (MOST_LETTERS + 1),)}).question()


def test_too_many_is_told():
    with pytest.raises(Mistakes, match="this says more than 160 things"):
        Asked({"behind": ("dark",) * 161}).question()


def test_a_link_from_the_page_s_own_question_says_the_changes_alone():
    own = read(MultiDict(), Question(distance="40 yd", age="60", paint="black"))
    link = own.link({"distance": "40 yd", "age": "61", "paint": "white", "seasons": ""})
    assert parse_qsl(link) == [("set", "age=61&paint=white")]
    metres = own.in_units(Units("m")).link({"age": "61"})
    assert parse_qsl(metres) == [("far", "m"), ("set", "age=61")]
