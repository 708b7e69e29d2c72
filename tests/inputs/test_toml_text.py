"""The question as a file: round trips, and every way in which a file can be wrong."""

import dataclasses
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistakes
from tipsight.inputs import demo, toml_text
from tipsight.inputs.items import ITEMS
from tipsight.inputs.options import as_text
from tipsight.inputs.quantities import written
from tipsight.inputs.question import Question, is_not_sure
from tipsight.inputs.settle import settle

COUNTED_AS_TOLD = ("bites", "sun_out")
"""Items for which it matters whether they were told, and not only what is taken."""


def _uncomment(text):
    kept = "|".join(COUNTED_AS_TOLD)
    return re.sub(rf"(?m)^# (?!{kept})(.*)  # not told, so taken as$", r"\1", text)


def _told_and_taken_alike(question):
    case = settle(question)
    text = toml_text.write(question, case)
    assert settle(toml_text.read(text)) == case
    told = settle(toml_text.read(_uncomment(text)))
    left = {assumed.item for assumed in told.assumed}
    unsure = {key for key, value in question.told().items() if is_not_sure(value)}
    assert left <= {"age", *COUNTED_AS_TOLD} | unsure
    for key in unsure & left:
        assert re.search(rf'(?m)^{key} = "not sure"  # taken as ', text)
    assert dataclasses.replace(told, assumed=()) == dataclasses.replace(case, assumed=())


@pytest.mark.parametrize("name", demo.names())
def test_the_invented_swims_go_there_and_back(name):
    _told_and_taken_alike(demo.question(name))


def test_nothing_told_goes_there_and_back():
    _told_and_taken_alike(Question())


def _values(item):
    choices = [
        st.just(None),
        st.just(item.example),
        st.just("not sure" if item.takes_not_sure else None),
    ]
    if item.words and item.kind in ("word", "yes-no", "length", "pace", "speed", "number"):
        choices.append(st.sampled_from([word.word for word in item.words]))
    if item.low is not None and item.kind in ("mm", "temperature", "number"):
        choices.append(st.floats(item.low, item.high))
        choices.append(st.floats(item.low, item.high).map(lambda value: as_text(item, value)))
    if item.low is not None and item.kind in ("length", "speed"):
        choices.append(
            st.floats(item.low, item.high).map(lambda value: f"{written(value)} {item.unit}")
        )
    return st.one_of(choices)


QUESTIONS = st.fixed_dictionaries({key: _values(item) for key, item in ITEMS.items()})


@settings(deadline=None, derandomize=True, max_examples=100)
@given(QUESTIONS)
def test_any_question_that_stands_goes_there_and_back(told):
    for clashing in (
        "size",
        "parts",
        "at",
        "soaked",
        "bore",
        "run",
        "shadow",
        "weighed_wet",
        "weighed_glued",
    ):
        told[clashing] = None
    for length in ("glued", "takes_showing", "wet"):
        told[length] = None
    told.update(paint="black", when=None, stock="solid", sun_bearing=None)
    if told["trot"] is not None:  # it ends where the trot does
        told["distance"] = "40 yd"
    if told["weighed_tip"] is None:
        told["showing"] = "20 mm"
    if told["looks"] == "not sure":  # then a wind that is uncommented tells how it looks
        told["looks"] = None
    _told_and_taken_alike(Question(**told))


@settings(deadline=None, derandomize=True, max_examples=200)
@given(st.dictionaries(st.sampled_from(sorted(ITEMS)), st.text(max_size=20), max_size=6))
def test_any_text_can_be_written_and_read(told):
    told = Question(**told).told()
    lines = [
        f"[{ITEMS[key].section}]\n{key} = {toml_text.quoted(value)}"
        for key, value in list(told.items())[:1]
    ]
    read = toml_text.read("\n".join(lines))
    assert read.told() == dict(list(told.items())[:1])


MISTAKES = [
    (
        "distance = ",
        "file: this is not TOML at line 1: invalid value; text stands in quotes "
        '(for example distance = "40 yd")',
    ),
    (
        "[place]\ndistance = 40 yd",
        "file: this is not TOML at line 2: expected newline or end of document "
        'after a statement; text stands in quotes (for example distance = "40 yd")',
    ),
    (
        '[place]\ndistance = "40 yd',
        "file: this is not TOML at line 2: unterminated string; text stands in "
        'quotes (for example distance = "40 yd")',
    ),
    (
        '[plaice]\ndistance = "40 yd"',
        "plaice: there is no such section; did you mean 'place'? (for example [place])",
    ),
    (
        'distance = "40 yd"',
        "distance: there is no such section; it belongs under [place] (for example [place])",
    ),
    (
        'place = "here"',
        "place: this is the name of a section, not of an item (for example [place])",
    ),
    (
        '[place]\ndistnce = "40 yd"',
        "distnce: there is no such item in [place]; did you mean 'distance'?",
    ),
    (
        '[place]\ndepth = "7 ft"',
        "depth: it stands under [water], not under [place] (for example [water])",
    ),
    (
        '[place]\ndistance = ["40 yd"]',
        "distance: \"['40 yd']\" will not do; say 3.3 to 109 yd, in yards or metres "
        "(for example 40 yd)",
    ),
    (
        "[behind]\nbehind = [{watr = 'dark'}]",
        "behind: \"[{'watr': 'dark'}]\" will not do; say bright, broken, dark, sun lane or not "
        "sure, or a bank: its height and how far it stands beyond the float (for example "
        "dark 60%; bright 40%)",
    ),
    ("[tip]\npaint = {black = 3}", "paint: \"{'black': 3}\" will not do; "),
    ("[have]\nshot = [true]", "shot: '[True]' will not do; say sizes, all, or none: "),
]


@pytest.mark.parametrize(("text", "line"), MISTAKES)
def test_a_file_that_is_wrong(text, line):
    with pytest.raises(Mistakes) as caught:
        toml_text.read(text)
    assert str(caught.value).startswith(line)
    assert "\n" not in str(caught.value)


def test_everything_wrong_with_a_file_is_told_at_once():
    with pytest.raises(Mistakes) as caught:
        toml_text.read('[plaice]\nx = 1\n[water]\ndepht = "7 ft"\neye = "sat"\n')
    assert [mistake.item for mistake in caught.value.mistakes] == ["plaice", "depht", "eye"]


def test_a_bare_number_wants_a_unit_where_there_are_two():
    with pytest.raises(
        Mistakes, match="distance: '40' will not do; say the unit, yards or metres"
    ):
        settle(toml_text.read("[place]\ndistance = 40"))


def test_a_bare_number_has_the_unit_of_the_item_where_there_is_one():
    question = toml_text.read(
        "[tip]\nshowing = 20\npulls_out = true\n[eyes]\nage = 60\nsight = 0.8"
    )
    case = settle(question)
    assert (case.tip.showing_mm, case.tip.pulls_out, case.angler.age_years) == (20.0, True, 60.0)
    assert case.angler.mar_arcmin == 1.25


def test_a_date_of_the_file_format():
    question = toml_text.read("[light]\nwhen = 2026-03-20T12:13:00Z\nat = '52 N 1.5 W'")
    assert settle(question).light.sun_height_deg == pytest.approx(38.0, abs=0.5)
    day = toml_text.read("[light]\nwhen = 2026-03-20\nat = '52 N 1.5 W'")
    with pytest.raises(
        Mistakes, match="when: '2026-03-20' will not do; say a date, a time and its zone"
    ):
        settle(day)


def test_tables_for_stretches_and_parts():
    question = toml_text.read("""
        [behind]
        behind = [
            {water = "dark", share = 0.6},
            {bank = "trees", height = "9 m", beyond = "20 yd", lit = false, share = "40%"},
        ]
        [float]
        parts = [
            {role = "body", shape = "ellipsoid", material = "balsa", length = 45, top = "14 mm"},
           {role = "stem", shape = "cylinder", material = "cane", length = 9, top = 3, inside = 2}
        ]
    """)
    assert question.behind == ("dark, 60%", "trees, 9 m high, 20 yd beyond, unlit, 40%")
    case = settle(question)
    assert [stretch.share for stretch in case.stretches] == [0.6, 0.4]
    assert case.float_.parts[0].top_mm == 14.0
    assert case.float_.parts[1].inside_mm == 2.0


def test_what_was_told_stands_by_itself_and_what_was_taken_beside_not_sure():
    asked = Question(age=80, depth="not sure")
    lines = toml_text.write(asked, settle(asked)).splitlines()
    assert 'age = "80"' in lines
    assert 'depth = "not sure"  # taken as "1.5 m"' in lines


def test_a_mark_at_the_head_of_a_file_is_left_out():
    assert toml_text.read("\ufeff[place]\ndistance = '40 yd'").distance == "40 yd"
