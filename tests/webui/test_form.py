"""The questions as fields: all of them, in a person's order, with what was typed."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistake
from tipsight.inputs.items import ITEMS, SECTIONS
from webui import form, water_icons
from webui.asking import Asked
from webui.reader_units import Units


def all_fields(parts):
    return [one for part in parts for one in (*part.fields, *part.folded)]


def field(key, **typed):
    told = {name: (text,) for name, text in typed.items()}
    return next(one for one in all_fields(form.fields(Asked(told))) if one.item.key == key)


def test_every_question_is_asked_once():
    assert sorted(one.item.key for one in all_fields(form.fields(Asked({})))) == sorted(ITEMS)
    assert sorted(form.ORDER) == sorted(SECTIONS)


def test_what_most_leave_alone_is_folded():
    for part in form.fields(Asked({})):
        assert not any(one.item.folded for one in part.fields)
        assert all(one.item.folded for one in part.folded)
        assert not part.open


@settings(deadline=None, derandomize=True, max_examples=100)
@given(st.sampled_from(list(ITEMS)), st.text(min_size=1, max_size=20))
def test_what_was_typed_is_kept(key, text):
    one = field(key, **{key: text})
    if one.look in ("radios", "choose"):
        assert one.value in [word.word for word in one.words] + [""]
    else:
        assert one.value == text


@pytest.mark.parametrize(
    ("key", "typed", "look", "value"),
    [
        *(("sky", "Hazy", "radios", "hazy"), ("sky", "cleer", "text", "cleer")),
        *(("colour_vision", "red weak", "choose", "red-weak"), ("pen", "y", "text", "y")),
        *(("pace", "12 s", "taps", "12 s"), ("bed", "", "choose", ""), ("parts", "", "lines", "")),
        *(("behind", "dark 60%; bright", "taps", "dark 60%; bright"), ("age", "60", "text", "60")),
    ],
)
def test_how_each_kind_is_answered(key, typed, look, value):
    one = field(key, **({key: typed} if typed else {}))
    assert (one.look, one.value) == (look, value)


def test_each_water_has_its_drawing():
    for word in ITEMS["behind"].words:
        assert water_icons.water(word.word).startswith("<svg")
    assert len({water_icons.water(word.word) for word in ITEMS["behind"].words}) == 5


def test_mistakes_stand_at_their_fields():
    wrong = Mistake("distance", "frog", "say 3 to 100 m", "40 yd")
    parts = form.fields(Asked({"distance": ("frog",)}), (wrong,))
    one = next(one for one in all_fields(parts) if one.item.key == "distance")
    assert one.mistakes == ("'frog' will not do; say 3 to 100 m (for example 40 yd)",)
    assert one.described_by == "distance distance-m"


def test_sizes_are_those_of_the_pattern():
    assert "16.5 mm" in field("size", pattern="bolo type").hint
    assert "12 mm" in field("size").hint


@pytest.mark.parametrize(
    ("units", "key", "limits"),
    [
        *((Units(), "distance", "3.3 to 109 yd"), (Units("m"), "distance", "3 to 100 m")),
        *((Units(), "eye", "1 to 39 ft"), (Units("yd", "m"), "eye", "0.3 to 12 m")),
        *((Units(), "age", "8 to 100 years"), (Units(), "showing", "1 to 80 mm")),
    ],
)
def test_limits_in_the_units_of_the_page(units, key, limits):
    assert units.limits(ITEMS[key]) == limits


def test_limits_told_in_other_units_are_within_the_true_ones():
    for item in ITEMS.values():
        for units, metres in ((Units(), {"yd": 0.9144, "ft": 0.3048}),):
            if unit := units.of(item):
                low, high = (
                    float(x) for x in units.limits(item).removesuffix(f" {unit}").split(" to ")
                )
                assert item.low <= low * metres[unit]
                assert high * metres[unit] <= item.high


@pytest.mark.parametrize(
    ("units", "key", "taken", "said"),
    [
        *((Units(), "eye", "1.5 m", "4.9 ft"), (Units("yd", "m"), "eye", "1.5 m", "1.5 m")),
        *((Units("m"), "distance", "40 yd", "37 m"), (Units(), "depth", "0.6 m/s", "0.6 m/s")),
        *((Units(), "temperature", "10 C", "10 C"),),
    ],
)
def test_what_is_taken_in_the_units_of_the_page(units, key, taken, said):
    assert units.taken(ITEMS[key], taken) == said
