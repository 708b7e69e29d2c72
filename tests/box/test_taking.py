"""A table taken in: each row once, whatever it tells again of."""

from dataclasses import replace
from datetime import date

import pytest

from tipsight.box import floats, keeping, taking
from tipsight.inputs.entry import Entry
from tipsight.inputs.entry_table import Row

DAY = date(2026, 10, 3)
AVON = Entry({"pattern": "quill avon", "takes": "6BB"}, 5)
STICK = Entry({"pattern": "wire stick", "size": "8 mm"}, 2, note="mine")


@pytest.fixture
def box(tmp_path):
    with keeping.opened(tmp_path / "my.box", "write") as one:
        yield one


def there(box):
    return [(kept.number, kept.entry) for kept in floats.listed(box)]


def test_numbers_are_kept_where_they_are_free(box):
    floats.put(box, AVON, DAY)
    floats.drop(box, 1, DAY)
    taken = taking.take_in(
        box, [Row(2, 1, STICK), Row(3, 40, AVON), Row(4, None, replace(AVON, lies="x"))], DAY
    )
    assert [kept.number for kept in taken.put] == [2, 40, 41]
    assert [one.act for one in floats.history(box, 1)] == ["put", "drop"]


def test_the_same_table_again_changes_nothing(box):
    rows = [Row(2, 1, AVON), Row(3, 2, STICK)]
    taking.take_in(box, rows, DAY)
    before = floats.listed(box)
    for way in ("skip", "more", "change", "own"):
        taken = taking.take_in(box, rows, DAY, way)
        assert (taken.same, taken.put, taken.changed, taken.more) == (2, [], [], [])
    assert floats.listed(box) == before
    assert all(twin.same for twin in taking.twins(before, rows))


@pytest.mark.parametrize(
    ("way", "found"),
    [
        ("skip", [(1, AVON), (2, STICK)]),
        ("more", [(1, replace(AVON, alike=8)), (2, STICK)]),
        ("change", [(1, replace(AVON, alike=3, note="new")), (2, STICK)]),
        ("own", [(1, AVON), (2, STICK), (3, replace(AVON, alike=3, note="new"))]),
    ],
)
def test_a_row_that_tells_again_of_a_float(box, way, found):
    taking.take_in(box, [Row(2, 1, AVON), Row(3, 2, STICK)], DAY)
    row = Row(2, None, replace(AVON, alike=3, note="new"))
    (twin,) = taking.twins(floats.listed(box), [row])
    assert (twin.kept.number, twin.same) == (1, False)
    taken = taking.take_in(box, [row], DAY, way)
    assert there(box) == found
    assert len(taken.skipped) == (way == "skip")


def test_a_row_with_a_number_tells_of_that_float_whatever_it_tells(box):
    taking.take_in(box, [Row(2, 1, AVON), Row(3, 2, STICK)], DAY)
    painted = Row(2, 1, Entry({**AVON.told, "paint": "black"}, 5))
    assert [(t.kept.number, t.same) for t in taking.twins(floats.listed(box), [painted])] == [
        (1, False)
    ]
    taken = taking.take_in(box, [painted], DAY, "change")
    assert [kept.entry.told["paint"] for kept in taken.changed] == ["black"]
    assert [one.act for one in floats.history(box, 1)] == ["put", "change"]


def test_a_row_that_tells_what_one_before_it_does(box):
    rows = [Row(2, None, AVON), Row(3, None, AVON), Row(4, None, AVON)]
    assert [(twin.row.at, twin.kept) for twin in taking.twins((), rows)] == [(3, None), (4, None)]
    taking.take_in(box, rows, DAY, "more")
    assert there(box) == [(1, replace(AVON, alike=15))]


def test_rows_with_numbers_of_their_own_are_floats_of_their_own(box):
    rows = [Row(2, 1, AVON), Row(3, 2, AVON)]
    assert taking.twins((), rows) == ()
    taking.take_in(box, rows, DAY)
    assert there(box) == [(1, AVON), (2, AVON)]
