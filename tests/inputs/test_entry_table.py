"""Floats as a table: out and in again is the same, and all that is wrong is told by row and column."""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistakes
from tipsight.inputs import demo, entry_table
from tipsight.inputs.entry import OF_FLOAT, Entry, checked
from tipsight.inputs.items import ITEMS

AVON = {"pattern": "quill avon", "takes": "6BB"}


def again(floats):
    found = entry_table.read(entry_table.write(floats).encode())
    assert found.mistakes == ()
    return [(row.number, row.entry) for row in found.rows]


def test_a_thousand_rows_come_in_as_they_went_out():
    odd = (
        "",
        "=1+1",
        "'=1",
        "-x",
        "@me",
        "+",
        "'",
        "''+",
        'a "b", c;\td\ne',
        "Åsa 🎣",
        "‮שלום",
        "O'Neill",
    )
    floats = [
        (
            n,
            Entry(
                {**AVON, "paint": "black 5 mm, red"},
                n,
                f"tray {n % 12}",
                "2019-03",
                "2025",
                odd[n % 12],
            ),
        )
        for n in range(1, 1001)
    ]
    floats[5] = (
        6,
        Entry({"pattern": "bolo type", "takes": "4 g", "pulls_out": "no"}, lies="=A1", note="-"),
    )
    floats = [(n, checked(entry)) for n, entry in floats]
    assert again(floats) == floats


TEXTS = st.text(st.characters(exclude_categories=("Cc", "Cs")), max_size=9)
GUARDED = st.builds(
    "".join, st.tuples(st.sampled_from(["", "'", "''"]), st.sampled_from("=+-@'x"), TEXTS)
)


@settings(max_examples=60, deadline=None)
@given(GUARDED, GUARDED, st.integers(1, 9999))
def test_whatever_is_noted_comes_in_as_it_went_out(lies, note, alike):
    entry = checked(Entry(AVON, alike, lies, note=note))
    assert again([(3, entry)]) == [(3, entry)]


def test_a_cell_that_looks_like_a_formula_goes_out_with_one_apostrophe_and_loses_one():
    """What begins with = + - @ a spreadsheet may run (common practice: OWASP on CSV injection)."""
    for text in ("=1+1", "+1", "-1", "@x", "'=1"):
        rows = list(csv.reader(io.StringIO(entry_table.write([(1, Entry(AVON, note=text))]))))
        assert dict(zip(*rows, strict=True))["note"] == f"'{text}"
    for text in ("it's", "'quoted'", "a=b", "6-9"):
        rows = list(csv.reader(io.StringIO(entry_table.write([(1, Entry(AVON, note=text))]))))
        assert dict(zip(*rows, strict=True))["note"] == text


def test_the_columns_are_the_question_tables():
    head = entry_table.write([]).strip().split(",")
    assert head[:6] == ["number", "alike", "lies", "made", "fished", "note"]
    assert set(head[6:]) <= set(OF_FLOAT)
    assert {"pattern", "takes", "size", "diameter", "stock", "showing", "paint"} <= set(head)
    examples = {key: ITEMS[key].example for key in OF_FLOAT}
    told = {key: examples[key] for key in ("pattern", "takes", "weighs", "pulls_out", "finish")}
    assert again([(1, Entry(told))]) == [(1, checked(Entry(told)))]


@pytest.mark.parametrize("mark", [",", ";", "\t"])
@pytest.mark.parametrize("how", ["utf-8", "utf-8-sig", "utf-16"])
def test_whatever_a_spreadsheet_writes(mark, how):
    rows = (
        ("How many", "Pattern", "takes", "", "Last fished"),
        (" 2 ", "Quill avon", "6BB", "", "2025"),
    )
    text = "".join(f"{mark.join(row)}\r\n" for row in rows)
    (row,) = entry_table.read(text.encode(how)).rows
    assert (row.at, row.number) == (2, None)
    assert row.entry == Entry({"pattern": "Quill avon", "takes": "6BB"}, 2, fished="2025")


def test_all_mistakes_are_told_by_row_and_column():
    text = (
        "number,alike,pattern,takes,paint,made,weighs\n"
        "1,2,quill avon,6BB,red,2019,\n"
        "x,0,quill avn,six,mauve,March,2\n"
        "\n"
        "1,1,bolo type,4 g,red,,\n"
        ",1.5,bolo type,,red,,,more\n"
        ",1,wire stick,4 No 4,,,\n"
    )
    found = entry_table.read(text.encode())
    assert [row.at for row in found.rows] == [2, 7]
    told = [(mistake.item, mistake.said) for mistake in found.mistakes]
    assert told == [
        ("row 3, number", "x"),
        ("row 3, alike", "0"),
        ("row 3, pattern", "quill avn"),
        ("row 3, paint", "mauve"),
        ("row 3, takes", "six"),
        ("row 3, weighs", "2"),
        ("row 3, made", "March"),
        ("row 5, number", "1"),
        ("row 6, columns", ""),
        ("row 6, alike", "1.5"),
        ("row 6, takes", ""),
    ]
    said = "\n".join(map(str, found.mistakes))
    for line in (
        "row 3, number: 'x' will not do; say a whole number, 1 to 999999999",
        "row 5, number: '1' will not do; row 2 has this number too; leave it out for another float",
        "row 6, columns: there are more cells than columns",
    ):
        assert line in said


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "row 1: name the columns here"),
        (b";;;\n1;2;3;4\n", "row 1: name the columns here"),
        (
            b"pattern,takse\nquill avon,6BB\n",
            "row 1: 'takse' will not do; there is no such column; did you mean",
        ),
        (b"pattern,takes,Pattern\n", "row 1: 'Pattern' will not do; two columns have this name"),
        (
            b"pattern,note\nquill avon,\xe9t\xe9\n",
            "file: this is not text in UTF-8; save the table as CSV",
        ),
        (b"PK\x03\x04\0\0", "file: this is no table; save it from the spreadsheet as CSV"),
        (
            b'pattern,takes\n"quill" avon,6BB\n',
            "file: a cell that begins with a quotation mark does not end",
        ),
        (b"pattern\n" + b"x\n" * 20_001, "file: these are 20001 rows, and 20000 are the most"),
    ],
)
def test_what_is_no_table_of_floats(data, says):
    with pytest.raises(Mistakes) as told:
        entry_table.read(data)
    assert says in str(told.value)


def test_the_invented_box_has_240_floats_of_every_pattern():
    found = entry_table.read(demo.box().encode())
    assert found.mistakes == ()
    assert sum(row.entry.alike for row in found.rows) == 240
    assert {row.entry.told["pattern"] for row in found.rows} == {
        w.word for w in ITEMS["pattern"].words
    }
    assert {row.entry.note for row in found.rows} == {"invented"}
