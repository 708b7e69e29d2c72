"""One line that tells of a float: each piece is known by what it is."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import Mistakes
from tipsight.inputs import in_a_line
from tipsight.inputs.entry import Entry, checked

AVON = "quill avon, 6BB, 3 mm quill 20 mm fluorescent orange"


@pytest.mark.parametrize(
    ("line", "told", "also"),
    [
        (
            f"{AVON}, twelve of them",
            "pattern=quill avon|takes=6BB|diameter=3 mm|stock=quill|showing=20 mm"
            "|paint=fluorescent orange",
            {"alike": 12},
        ),
        (
            "bolo type; 4 g; 3 mm solid 30 mm black 0-15 mm, fluorescent orange 15-30 mm, x3, "
            "in the Long tray, note: leaks, a bit",
            "pattern=bolo type|takes=4 g|diameter=3 mm|stock=solid|showing=30 mm"
            "|paint=black 0-15 mm, fluorescent orange 15-30 mm",
            {"alike": 3, "lies": "the Long tray", "note": "leaks, a bit"},
        ),
        (
            "peacock waggler, 3AAA, 2BB, 4mm peacock, showing 12 mm, red, made 2019, last fished 2026-09",
            "pattern=bottom-end peacock|takes=3AAA, 2BB|diameter=4mm|stock=quill|showing=12 mm|paint=red",
            {"made": "2019", "fished": "2026-09"},
        ),
        (
            "wire stick, 8.5 mm body, 3,5 mm solid, 8 mm showing, black, a pair of them",
            "pattern=wire stick|size=8.5 mm|diameter=3,5 mm|stock=solid|showing=8 mm|paint=black",
            {"alike": 2},
        ),
        (
            "hollow-tip balsa taper, takes 5 g, 5/4 mm thin tube 35 mm fluo yellow, gloss, no undercoat, "
            "2 seasons, pulls out",
            "pattern=hollow-tip balsa taper|takes=5 g|diameter=5 mm|bore=4 mm|stock=thin tube"
            "|showing=35 mm|paint=fluo yellow|finish=gloss|undercoat=no|seasons=2|pulls_out=yes",
            {},
        ),
        (
            "quill avon, weighed tip 3 mm quill, takes showing: 20 mm, quill 2 mm, 5 mm glued in, 2.4 g",
            "pattern=quill avon|weighed_tip=3 mm quill|takes_showing=20 mm|stock=quill|diameter=2 mm"
            "|glued=5 mm|takes=2.4 g",
            {},
        ),
    ],
)
def test_a_line_is_read(line, told, also):
    found = in_a_line.read(line)
    assert found.told == dict(one.split("=") for one in told.split("|"))
    assert found.also == also
    assert checked(Entry(found.told, **also)).told.keys() == found.told.keys()


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("quil avon, 6BB", "line: 'quil avon' will not do; did you mean 'quill avon'?"),
        ("stick float, 6BB", "did you mean 'alloy stick 1.6', 'alloy stick 2.0', 'wire stick' or"),
        (
            f"{AVON}, 30 mm",
            "line: '30 mm' will not do; say its pattern, load, tip, paint or how many",
        ),
        (f"{AVON}, 4BB", "takes is told twice"),
        (f"{AVON}, 2.5 of them", "a whole number is wanted"),
        (f"{AVON}, 3 mm mauve", "line: '3 mm mauve' will not do"),
        (f"{AVON}, 3 mm quill 20 mm mauve", "line: '3 mm quill 20 mm mauve' will not do"),
    ],
)
def test_what_tells_nothing_is_told_with_its_piece(line, says):
    with pytest.raises(Mistakes) as told:
        in_a_line.read(line)
    assert says in str(told.value)


def test_every_piece_that_tells_nothing_is_told_at_once():
    with pytest.raises(Mistakes) as told:
        in_a_line.read("quill avon, one two, three four, 6BB")
    assert [mistake.said for mistake in told.value.mistakes] == ["one two", "three four"]


PIECES = (
    *(
        "quill avon",
        "6BB",
        "3 mm quill",
        "20 mm",
        "fluorescent orange",
        "twelve of them",
        "x3",
        "in",
        "note",
    ),
    *(
        "paint",
        "2 seasons",
        "5/4 mm thin tube",
        "weighed tip",
        "1/0",
        "0 of them",
        "3 x 23 mm body",
        "inf",
    ),
    *("black 0-15 mm", "15-30", "nan", "\0", "٣", "²mm", "takes", "not told", ":", "no undercoat"),
)
TYPED = st.lists(st.sampled_from(PIECES) | st.text(max_size=4), max_size=8).flatmap(
    lambda words: st.sampled_from([" ", ", ", ";"]).map(lambda mark: mark.join(words))
)


@settings(max_examples=60, deadline=None)
@given(TYPED)
def test_whatever_is_typed_is_read_or_told_as_a_mistake(line):
    try:
        found = in_a_line.read(line)
        entry = checked(Entry(found.told, **found.also))
    except Mistakes:
        return
    assert checked(entry) == entry
