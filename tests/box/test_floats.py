"""Floats in the box: as they were told, with all that they ever were, and never two at odds."""

import os
import sqlite3
from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tipsight.box import floats, keeping
from tipsight.box.floats import Stale
from tipsight.errors import Mistakes
from tipsight.inputs.entry import Entry, checked, with_told
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle

DAY = date(2026, 10, 3)
STEP = 1 if "TIPSIGHT_KILLS" in os.environ else 4
"""Of the bytes that are flipped; the long form of the tests flips every one."""
AVON = Entry({"pattern": "quill avon", "takes": "6BB", "paint": "fluorescent orange"}, 12)
STICK = Entry(
    {"pattern": "wire stick", "size": "8.5 mm"}, lies="tray 2", made="2019-03", note="kept dry"
)


@pytest.fixture
def box(tmp_path):
    with keeping.opened(tmp_path / "my.box", "write") as one:
        yield one


def test_a_float_comes_out_as_it_was_told(box):
    odd = replace(STICK, lies="Åsa's “röd” ‮ box 🎣", note="=1+1\n-- '; DROP TABLE held")
    put = [floats.put(box, one, DAY) for one in (AVON, odd)]
    assert floats.listed(box) == tuple(put)
    assert [(one.number, one.entry, one.act, one.on) for one in put] == [
        (1, AVON, "put", DAY),
        (2, odd, "put", DAY),
    ]


def test_its_question_asks_of_this_float(box):
    floats.put(box, AVON, DAY)
    (kept,) = floats.listed(box)
    assert kept.question() == Question(
        pattern="quill avon", takes="6BB", paint="fluorescent orange"
    )
    assert settle(replace(kept.question(), distance="30 yd")).float_.shot_g == pytest.approx(2.4)


def test_a_repaint_adds_to_its_history(box):
    first = floats.put(box, AVON, DAY)
    black = with_told(AVON, {"paint": "black"}, alike=11)
    now = floats.change(box, 1, black, DAY + timedelta(7), was=first.mark)
    assert (now.entry.told["paint"], now.entry.alike, now.act) == ("black", 11, "change")
    assert floats.history(box, 1) == (first, now)
    assert floats.change(box, 1, black, DAY + timedelta(8)) == now, "nothing new was told"


def test_a_dropped_float_comes_back_as_it_was(box):
    floats.put(box, AVON, DAY)
    for _ in range(2):
        floats.drop(box, 1, DAY)
        assert floats.listed(box) == ()
        assert [one.dropped for one in floats.listed(box, dropped=True)] == [True]
        with pytest.raises(Mistakes, match="it was dropped; bring it back first"):
            floats.change(box, 1, STICK, DAY)
        floats.back(box, 1, DAY)
        assert [one.entry for one in floats.listed(box)] == [AVON]
    with pytest.raises(Mistakes, match="float 1: it is in the box"):
        floats.back(box, 1, DAY)
    assert [one.act for one in floats.history(box, 1)] == ["put", "drop", "back", "drop", "back"]


def test_a_change_made_from_what_is_no_longer_so_shows_both(box):
    first = floats.put(box, AVON, DAY)
    theirs = floats.change(box, 1, replace(AVON, alike=11), DAY)
    mine = replace(AVON, lies="tray 1")
    with pytest.raises(Stale, match="float 1: it was changed meanwhile; look at it and") as stale:
        floats.change(box, 1, mine, DAY, was=first.mark)
    assert (stale.value.there, stale.value.yours) == (theirs, mine)
    for act in (floats.drop, floats.back):
        with pytest.raises(Stale):
            act(box, 1, DAY, was=first.mark)
    assert floats.listed(box) == (theirs,)


def test_there_is_no_such_float(box):
    with pytest.raises(Mistakes, match="float 7: there is no such float"):
        floats.one(box, 7)


def test_all_that_is_wrong_is_told_at_once():
    wrong = Entry(
        {"patern": "x", "distance": "40 yd"}
        | {"pattern": "quill avon", "takes": "6 bananas", "paint": "mauve\0"},
        alike=0,
        lies="x" * 201,
        made="1.3.2019",
        fished="2019-13",
        note="a\x07b",
    )
    with pytest.raises(Mistakes) as told:
        checked(wrong)
    said = str(told.value)
    for line in (
        "patern: a float has no such item; did you mean 'pattern'?",
        "distance: a float has no such item",
        "takes: '6 bananas' will not do; there is no shot 'bananas' in the table; ",
        "paint: 'mauve\\x00' will not do; ",
        "lies: 'xxxxxxxxxxxxxxxxxxxx...' will not do; 200 letters are the most",
        "note: a letter in it is no letter",
        "alike: '0' will not do; say how many, 1 to 9999 (for example 12)",
        "made: '1.3.2019' will not do; say a year, a month or a day (for example 2019, 2019-03",
        "fished: '2019-13' will not do; say a year, a month or a day",
    ):
        assert line in said
    assert "paint: a letter in it is no letter" in said


@pytest.mark.parametrize(
    ("told", "says"),
    [
        ({}, "pattern: say which pattern it is"),
        ({"pattern": "quill avon"}, "takes: say what shot it takes, its size, or its parts"),
        ({"pattern": "quill avon", "takes": "not told"}, "takes: say what shot it takes"),
        ({"pattern": "quill avon", "size": "99 mm"}, "size: '99 mm' will not do"),
        ({"pattern": "quill avon", "takes": "6BB", "size": "12 mm"}, "leave one out"),
    ],
)
def test_a_float_is_known_by_its_pattern_and_by_what_it_takes_or_how_it_is_built(told, says):
    with pytest.raises(Mistakes, match=says):
        checked(Entry(told))


def test_the_file_itself_refuses_what_no_box_holds(box):
    floats.put(box, AVON, DAY)
    good = "'put', '2026-10-03', '{}', 1, '', '', '', '', '0123456789abcdef')"
    into = "INSERT INTO held_state (held, act, made_on, told, alike, lies, made, fished, note, seal) VALUES "
    for bad, says in (
        (f"{into} (99, {good}", "FOREIGN KEY"),
        (f"{into} (1, {good.replace('put', 'lose')}", "CHECK"),
        (f"{into} (1, {good.replace('2026-10-03', 'then')}", "CHECK"),
        (f"{into} (1, {good.replace('{}', '[]')}", "CHECK"),
        (f"{into} (1, {good.replace(', 1,', ', 0,')}", "CHECK"),
        ("UPDATE held_state SET alike = 3", "a state is never altered"),
        ("DELETE FROM held_state", "a state is never taken out"),
        ("DELETE FROM held", "FOREIGN KEY"),
    ):
        with pytest.raises(sqlite3.IntegrityError, match=says):
            box.execute(bad)


def test_a_number_may_be_told_where_it_is_free(box):
    assert floats.put(box, AVON, DAY, 40).number == 40
    assert floats.put(box, STICK, DAY).number == 41


TEXTS = st.text(st.characters(exclude_categories=("Cc", "Cs")), max_size=12)
ENTRIES = st.builds(
    Entry,
    st.sampled_from([AVON.told, STICK.told, {"pattern": "bolo type", "takes": "4 g"}]),
    st.integers(1, 9999),
    lies=TEXTS,
    made=st.sampled_from(["", "2019", "2019-03", "2019-03-24"]),
    note=TEXTS,
)
STEPS = st.lists(
    st.tuples(st.sampled_from(["put", "change", "drop", "back"]), st.integers(1, 5), ENTRIES),
    max_size=12,
)


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(STEPS)
def test_any_steps_leave_what_a_plain_list_in_memory_has(tmp_path_factory, steps):
    path = tmp_path_factory.mktemp("steps") / "my.box"
    model = {}  # number -> states, each (act, entry)
    for act, number, entry in steps:
        states, plain = model.get(number), checked(entry)
        gone = bool(states) and states[-1][0] == "drop"
        try:
            with keeping.opened(path, "write") as box:
                if act == "put":
                    floats.put(box, entry, DAY)
                elif act == "change":
                    floats.change(box, number, entry, DAY)
                else:
                    {"drop": floats.drop, "back": floats.back}[act](box, number, DAY)
            refused = False
        except Mistakes:
            refused = True
        if act == "put":
            model[len(model) + 1] = [("put", plain)]
            assert not refused
        elif states is None or gone != (act == "back"):
            assert refused
        else:
            assert not refused
            if act != "change" or plain != states[-1][1]:
                states.append((act, plain if act == "change" else states[-1][1]))
    if model:
        with keeping.opened(path) as box:
            living = [(n, s[-1][1]) for n, s in model.items() if s[-1][0] != "drop"]
            assert [(k.number, k.entry) for k in floats.listed(box)] == living
            for number, states in model.items():
                assert [(k.act, k.entry) for k in floats.history(box, number)] == states


def test_a_flipped_byte_is_found_or_harms_nothing(tmp_path):
    path = tmp_path / "my.box"
    with keeping.opened(path, "write") as box:
        for n in range(3):
            floats.put(box, replace(AVON, lies=f"tray {n}"), DAY)
    with keeping.opened(path) as box:
        before = floats.listed(box)
    whole = path.read_bytes()
    written = [at for at, byte in enumerate(whole) if byte]
    refused = 0
    for at in [*range(100), *written[100::STEP]]:
        path.write_bytes(whole[:at] + bytes([whole[at] ^ 0x10]) + whole[at + 1 :])
        said = []
        try:
            with keeping.opened(path) as box:
                assert floats.listed(box) == before, at
        except Mistakes as wrong:
            said = str(wrong).splitlines()
        refused += len(said)
        assert len(said) <= 1
    assert refused > 100
