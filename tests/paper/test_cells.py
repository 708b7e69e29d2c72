"""A cell says in few words what a change says in many."""

from dataclasses import replace

import pytest

from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.inputs.question import Question
from tipsight.paper.cells import Cell, asked, told


@pytest.fixture(scope="module")
def change():
    return advise(demo.question()).at_the_bank


@pytest.mark.parametrize(
    ("kind", "shot", "cell"),
    [
        ("as it is", "leave the shot as it is", ("30 mm", "shot as it is")),
        ("show more", "take off a No 6", ("30 mm", "off a No 6")),
        ("show less", "put on two No 8", ("30 mm", "on two No 8")),
        ("pen", "", ("30 mm, pen", "shot as it is")),
        ("pen and show more", "take off a BB and a No 8", ("30 mm, pen", "off a BB and a No 8")),
        ("sleeve", "take off a No 10", ("30 mm, sleeve", "off a No 10")),
    ],
)
def test_what_is_told(change, kind, shot, cell):
    block = replace(
        change.block,
        tip=replace(change.block.tip, showing_mm=30.0),
        load=replace(change.block.load, change_words=shot),
    )
    found = told(replace(change, kind=kind, block=block))
    assert found == Cell(*cell, change.block.visibility.grade)


def test_the_sun_is_not_asked_of_where_there_is_none():
    question = Question(sky="clear", sun_out=True)
    assert asked(question, 30, "dark", "fur", "dull overcast").told().get("sun_out") is None
    assert asked(question, 30, "dark", "fur", "hazy").sun_out is True
    assert asked(question, 30, "dark").sky == "clear"
