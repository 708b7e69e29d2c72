"""A cell says in few words what a change says in many."""

from dataclasses import replace

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.facts import CarryLight, Insert, Pen, Show, Sleeve
from tipsight.inputs import demo
from tipsight.inputs.case import Stock
from tipsight.inputs.question import Question
from tipsight.load.line import ShotChange
from tipsight.paper.cells import Cell, asked, told


@pytest.fixture(scope="module")
def change():
    return advise(demo.question()).at_the_bank


QUILL = Stock("solid", 2.5)


@pytest.mark.parametrize(
    ("actions", "off", "on", "cell", "show", "shot"),
    [
        ((), (), (), Cell(30.0, "easy"), "30 mm", "shot as it is"),
        ((Show(30.0, True),), (("No 6", 1),), (), Cell(30.0, "easy", off=(("No 6", 1),)),
         "30 mm", "off a No 6"),
        ((Show(30.0, False),), (), (("No 8", 2),), Cell(30.0, "easy", on=(("No 8", 2),)),
         "30 mm", "on two No 8"),
        ((Pen(10.0, False),), (), (), Cell(30.0, "easy", pen=True), "30 mm, pen", "shot as it is"),
        ((Pen(30.0, True), Show(30.0, True)), (("BB", 1), ("No 8", 1)), (),
         Cell(30.0, "easy", pen=True, off=(("BB", 1), ("No 8", 1))), "30 mm, pen",
         "off a BB and a No 8"),
        ((Sleeve("white", 30.0),), (("No 10", 1),), (),
         Cell(30.0, "easy", sleeve=True, off=(("No 10", 1),)), "30 mm, sleeve", "off a No 10"),
        ((CarryLight("3 x 23 mm"),), (), (), Cell(30.0, "easy", light_stick=True),
         "30 mm, light stick", "shot as it is"),
        ((Insert(QUILL, 30.0),), (), (), Cell(30.0, "easy", insert_mm=2.5),
         "30 mm, 2.5 mm insert", "shot as it is"),
        ((Insert(QUILL, 30.0), Pen(9.0, False)), (), (),
         Cell(30.0, "easy", pen=True, insert_mm=2.5), "30 mm, 2.5 mm insert, pen",
         "shot as it is"),
    ],
)  # fmt: skip
def test_a_cell_is_what_is_done(change, actions, off, on, cell, show, shot):
    block = replace(
        change.block,
        tip=replace(change.block.tip, showing_mm=30.0, stock=QUILL),
        load=replace(change.block.load, step=ShotChange(on, off, 0.0, 0.0)),
        visibility=replace(change.block.visibility, grade="easy"),
    )
    found = told(replace(change, actions=actions, block=block))
    assert (found, found.show, found.shot) == (cell, show, shot)


def test_shot_may_go_on_and_come_off():
    cell = Cell(9.6, "easy", on=(("No 1", 1),), off=(("BB", 1),))
    assert (cell.show, cell.shot) == ("10 mm", "off a BB and on a No 1")


def test_the_sun_is_not_asked_of_where_there_is_none():
    question = Question(sky="clear", sun_out=True)
    assert asked(question, 30, "dark", "fur", "dull overcast").told().get("sun_out") is None
    assert asked(question, 30, "dark", "fur", "hazy").sun_out is True
    assert asked(question, 30, "dark").sky == "clear"
