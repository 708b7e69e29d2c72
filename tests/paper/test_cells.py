"""A cell says in few words what a change says in many."""

from dataclasses import replace

import pytest

from tipsight.advice.advise import advise
from tipsight.inputs import demo
from tipsight.inputs.case import Stock
from tipsight.inputs.question import Question
from tipsight.load.shot import sizes
from tipsight.paper.cells import Cell, asked, told


@pytest.fixture(scope="module")
def change():
    return advise(demo.question()).at_the_bank


BOX = sizes("tin")


@pytest.mark.parametrize(
    ("kind", "change_g", "cell", "show", "shot"),
    [
        ("as it is", 0.0, Cell(30.0, "easy"), "30 mm", "shot as it is"),
        ("show more", -0.10, Cell(30.0, "easy", off=(("No 6", 1),)), "30 mm", "off a No 6"),
        ("show less", 0.12, Cell(30.0, "easy", on=(("No 8", 2),)), "30 mm", "on two No 8"),
        ("pen", 0.0, Cell(30.0, "easy", pen=True), "30 mm, pen", "shot as it is"),
        ("pen and show more", -0.46, Cell(30.0, "easy", pen=True, off=(("BB", 1), ("No 8", 1))),
         "30 mm, pen", "off a BB and a No 8"),
        ("sleeve", -0.04, Cell(30.0, "easy", sleeve=True, off=(("No 10", 1),)),
         "30 mm, sleeve", "off a No 10"),
        ("light stick", 0.0, Cell(30.0, "easy", light_stick=True),
         "30 mm, light stick", "shot as it is"),
        ("insert", 0.0, Cell(30.0, "easy", insert_mm=2.5), "30 mm, 2.5 mm insert", "shot as it is"),
        ("pen and insert", 0.0, Cell(30.0, "easy", pen=True, insert_mm=2.5),
         "30 mm, 2.5 mm insert, pen", "shot as it is"),
    ],
)  # fmt: skip
def test_a_cell_is_what_is_done(change, kind, change_g, cell, show, shot):
    """Shot as the table has it: BB 0.40 g, No 6 0.10 g, No 8 0.06 g, No 10 0.04 g."""
    block = replace(
        change.block,
        tip=replace(change.block.tip, showing_mm=30.0, stock=Stock("solid", 2.5)),
        load=replace(change.block.load, change_g=change_g),
        visibility=replace(change.block.visibility, grade="easy"),
    )
    found = told(replace(change, kind=kind, block=block), BOX)
    assert (found, found.show, found.shot) == (cell, show, shot)


def test_shot_may_go_on_and_come_off():
    cell = Cell(9.6, "easy", on=(("No 1", 1),), off=(("BB", 1),))
    assert (cell.show, cell.shot) == ("10 mm", "off a BB and on a No 1")


def test_shot_that_is_used_up_is_not_named(change):
    block = replace(change.block, load=replace(change.block.load, change_g=-0.10))
    without = [replace(s, count=0) if s.name == "No 6" else s for s in BOX]
    assert told(replace(change, block=block), without).off == (("No 9", 2),)


def test_the_sun_is_not_asked_of_where_there_is_none():
    question = Question(sky="clear", sun_out=True)
    assert asked(question, 30, "dark", "fur", "dull overcast").told().get("sun_out") is None
    assert asked(question, 30, "dark", "fur", "hazy").sun_out is True
    assert asked(question, 30, "dark").sky == "clear"
