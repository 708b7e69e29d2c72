"""Forgiving typing: many ways of saying one thing, and that what is written reads back."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.inputs import clock, quantities
from tipsight.inputs.items import ITEMS, Word, choose
from tipsight.inputs.options import as_text
from tipsight.inputs.quantities import Unread, length_m, mass_g, speed_m_s
from tipsight.inputs.tackle import (
    blocks_said,
    pieces,
    shot_name,
    shot_terms,
    stock_said,
    stock_sizes,
)
from tipsight.inputs.values import read

SAME_LENGTHS = [
    ("40yd", 36.576),
    ("40 yds.", 36.576),
    ("40 Yards", 36.576),
    ("36,5 m", 36.5),
    ("36.5m", 36.5),
    ("36.5\u2009m", 36.5),
    ("36.5\u00a0metres", 36.5),
    ("7 ft", 2.1336),
    ("5'6\"", 1.6764),
    ("5′6″", 1.6764),
    ("5 ft 6 in", 1.6764),
    ("5 ft 6", 1.6764),
    ("1¼in", 0.03175),
    ('1 1/4"', 0.03175),
    ("1¼ in", 0.03175),
    ("½ mile", 804.672),
    ("1.2m", 1.2),
    ("120 cm", 1.2),
    ("20,000 m", 20000.0),
    ("20 km", 20000.0),
    ("−3 m", -3.0),
    ("¾ m", 0.75),
    ("1-1/4 in", 0.03175),
    ("1-¾ in", 0.04445),
    ("1 and 3/4 in", 0.04445),
    ("5 ft 6½ in", 1.6891),
    ("40 paces", 36.576),
    ("40 steps", 36.576),
    ("1 pace", 0.9144),
    ("40 paces of 0.8 m", 32.0),
    ("40 paces of 30 in each", 30.48),
    ("40 paces, 80 cm each", 32.0),
    ("３ m", 3.0),
]


@pytest.mark.parametrize(("text", "metres"), SAME_LENGTHS)
def test_lengths(text, metres):
    assert quantities.length_m(text) == pytest.approx(metres, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("0,6 m/s", 0.6),
        ("12 s", 0.762),
        ("12 seconds for ten yards", 0.762),
        ("Slow Walk", 0.4),
        ("brisk", 0.9),
        ("walking pace", 0.6),
        ("medium", 0.6),
        ("1 mph", 0.44704),
        ("slow", 0.4),
    ],
)
def test_pace(text, value):
    assert read(ITEMS["pace"], text) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "value"),
    [("50F", 10.0), ("50 °F", 10.0), ("10", 10.0), ("10°C", 10.0), ("10,5 c", 10.5)],
)
def test_temperature(text, value):
    assert quantities.temperature_c(text) == pytest.approx(value)


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("6BB", [("BB", 6)]),
        ("6 No.4", [("No 4", 6)]),
        ("6 x no 4", [("No 4", 6)]),
        ("6 x No 4", [("No 4", 6)]),
        ("6 × No. 4's, 2 x BB", [("No 4", 6), ("BB", 2)]),
        ("6 #4", [("No 4", 6)]),
        ("6x4", [("No 4", 6)]),
        ("3AAA+2BB+1 No 8", [("AAA", 3), ("BB", 2), ("No 8", 1)]),
        ("3AAA, 2BB", [("AAA", 3), ("BB", 2)]),
        ("2 swan", [("SSG", 2)]),
        ("4 g olivette + 2 No 8", [("4 g olivette", None), ("No 8", 2)]),
        ("2 x 0,5 g olivette", [("0.5 g olivette", 2)]),
        ("No 4", [("No 4", None)]),
        ("12 bbs", [("BB", 12)]),
    ],
)
def test_shot(text, terms):
    assert list(shot_terms(text)) == terms


@pytest.mark.parametrize("text", ["", "+", ";"])
def test_no_shot_at_all(text):
    with pytest.raises(Unread, match=r"^$"):
        shot_terms(text)


@pytest.mark.parametrize(
    ("text", "kind", "diameter", "bore"),
    [
        ("3 mm quill", "quill", 3.0, None),
        ("quill 3", "quill", 3.0, None),
        ("5/4 mm thin tube", "thin tube", 5.0, 4.0),
        ("5 mm thick tube, 2 mm bore", "thick tube", 5.0, 2.0),
        ("3 mm solid plastic", "solid", 3.0, None),
        ("4 mm hollow tip", "thin tube", 4.0, None),
        ("4 mm tube", "thin tube", 4.0, None),
    ],
)
def test_stock(text, kind, diameter, bore):
    said = stock_said(text)
    assert (said.kind, said.diameter_mm, said.bore_mm) == (kind, diameter, bore)


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("solid 1.5-3", [1.5, 2, 2.5, 3]),
        ("solid 4.5 to 7 mm", [4.5, 5, 6, 7]),
        ("solid 2.2-3", [2.2, 2.5, 3]),
        ("cane 3, 4 and 5", [3, 4, 5]),
        ("solid 2 and solid 3, 4 mm cane", [2, 3, 4]),
        ("quill", [2, 2.5, 3, 3.5, 4, 4.5, 5]),
    ],
)
def test_stock_sizes(text, sizes):
    assert [said.diameter_mm for said in stock_sizes(text)] == sizes


def test_how_thick_a_tip_may_be():
    assert [stock_said(f"{size} mm solid").diameter_mm for size in (0.5, 14)] == [0.5, 14.0]
    for size in (0.49, 14.1):
        with pytest.raises(Unread, match=r"^a tip is 0\.5 to 14 mm thick$"):
            stock_said(f"{size} mm solid")
        with pytest.raises(Unread, match=r"^the sizes go from 0\.5 to 14 mm, the smaller first$"):
            stock_sizes(f"solid {min(size, 3)}-{max(size, 3)}")


def test_pieces_leave_decimals_alone():
    assert pieces("dark 60,5%; bright", commas=False) == ["dark 60,5%", "bright"]
    assert pieces("BB, AAA,No 4") == ["bb", "aaa", "no 4"]


@pytest.mark.parametrize(
    ("text", "names"),
    [("No.4", "No 4"), ("4", "No 4"), ("Swan", "SSG"), ("BBs", "BB"), ("aaa", "AAA")],
)
def test_shot_names(text, names):
    assert shot_name(text) == names


PAINTS = (Word("black"), Word("white"), Word("fluorescent orange"))


@pytest.mark.parametrize(
    ("text", "blocks"),
    [
        ("white", [("white", 0, None)]),
        (
            "black 0-15 mm, fluorescent orange 15-30 mm",
            [("black", 0, 15), ("fluorescent orange", 15, 30)],
        ),
        ("black 10 mm, white 5 mm", [("black", 0, 10), ("white", 10, 15)]),
        ("Black 15 over white", [("black", 0, 15), ("white", 15, None)]),
        ("black 1,5 cm; white 15-30", [("black", 0, 15), ("white", 15, 30)]),
        ("black 0 to 7.5, white", [("black", 0, 7.5), ("white", 7.5, None)]),
        ("hi-vis orange", [("fluorescent orange", 0, None)]),
        ("black 0-½ in, Hi Vis orange", [("black", 0, 12.7), ("fluorescent orange", 12.7, None)]),
    ],
)
def test_blocks(text, blocks):
    said = blocks_said(text, PAINTS)
    assert [(block.paint, block.from_top_mm, block.to_top_mm) for block in said] == blocks


@pytest.mark.parametrize(
    ("text", "iso"),
    [
        ("2026-10-15 17:00 UTC", "2026-10-15T17:00:00+00:00"),
        ("2026-10-15T17:00:00Z", "2026-10-15T17:00:00+00:00"),
        ("2026-10-15 17.00 BST", "2026-10-15T17:00:00+01:00"),
        ("2026-10-15 7:05 +0100", "2026-10-15T07:05:00+01:00"),
        ("2026-10-15 17:00 UTC-5", "2026-10-15T17:00:00-05:00"),
    ],
)
def test_moments(text, iso):
    assert clock.moment(text).isoformat() == iso


def test_a_moment_by_this_computers_clock_has_a_zone():
    assert clock.moment("2026-10-15 17:00 local").tzinfo is not None


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("52.1 N 1.5 W", (52.1, -1.5)),
        ("52.1, -1.5", (52.1, -1.5)),
        ("33S;151.2E", (-33.0, 151.2)),
        ("52.1°N, 1.5°W", (52.1, -1.5)),
    ],
)
def test_places(text, place):
    assert clock.spot(text) == place


@pytest.mark.parametrize(
    ("text", "mar"),
    [
        ("6/9", 1.5),
        ("20/30", 1.5),
        ("0.8", 1.25),
        ("0,8", 1.25),
        ("0.3 logMAR", 10**0.3),
        ("logMAR -0.1", 10**-0.1),
        ("last test fine", 1.0),
        ("1.5 arcmin", 1.5),
    ],
)
def test_acuity(text, mar):
    assert read(ITEMS["sight"], text) == pytest.approx(mar, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "rate"),
    [
        ("3", 3.0),
        ("about 3 times a minute", 3.0),
        ("once a minute", 1.0),
        ("2 per min", 2.0),
        ("0.5/min", 0.5),
    ],
)
def test_rates(text, rate):
    assert read(ITEMS["goes_under"], text) == rate


def test_names_are_told_once():
    assert read(ITEMS["paints"], "black, black; white") == ("black", "white")


NUMBERS = [
    key
    for key, item in ITEMS.items()
    if item.kind in ("mm", "temperature", "angle", "number", "rate", "compass")
]


@settings(deadline=None, derandomize=True, max_examples=200)
@given(st.sampled_from(NUMBERS), st.floats(0.0, 1.0))
def test_what_is_written_reads_back_the_same(key, share):
    item = ITEMS[key]
    value = item.low + share * (item.high - item.low)
    value = min(max(value, item.low), item.high)
    assert read(item, as_text(item, value)) == value
    assert read(item, value) == value


@settings(deadline=None, derandomize=True, max_examples=200)
@given(st.floats(1e-3, 1e3), st.sampled_from(sorted(quantities.LENGTHS_M)))
def test_comma_and_point_are_the_same(value, unit):
    plain = f"{value:.4f}"
    assert quantities.length_m(f"{plain}{unit}") == quantities.length_m(
        f"{plain.replace('.', ',')} {unit}"
    )
    assert math.isclose(
        quantities.length_m(f"{plain} {unit}"), float(plain) * quantities.LENGTHS_M[unit]
    )


@settings(deadline=None, derandomize=True, max_examples=150)
@given(st.sampled_from(sorted(ITEMS)), st.text(max_size=30))
def test_no_text_breaks_a_reader(key, text):
    item = ITEMS[key]
    try:
        read(item, (text,) if item.repeats else text)
    except Unread:
        return


@pytest.mark.parametrize("text", ["wibble", "", "1 2", "12a"])
def test_what_is_no_number(text):
    with pytest.raises(Unread, match=r"^a number is wanted$"):
        quantities.number(text)


def test_a_number_too_long_for_the_sums():
    with pytest.raises(Unread, match=r"^a number is wanted$"):
        quantities.length_m("9" * 400 + " m")


@pytest.mark.parametrize(
    ("key", "text", "word"),
    [
        ("eye", "standing", 1.6),
        ("eye", "Sitting", 1.1),
        ("eye", "1 1/2 m", 1.5),
        ("wind", "medium", 4.4),
    ],
)
def test_words_that_anglers_use(key, text, word):
    assert read(ITEMS[key], text) == word


def test_words_that_anglers_use_for_words():
    assert read(ITEMS["sky"], "cloudy").word == "bright overcast"
    assert read(ITEMS["bites"], "medium").word == "ordinary"
    assert read(ITEMS["paints"], ("hi-vis orange, high vis yellow",)) == (
        "fluorescent orange",
        "fluorescent yellow",
    )


@pytest.mark.parametrize("pace", ["0.39 m", "1.21 m", "2 yd"])
def test_a_pace_that_nobody_steps(pace):
    with pytest.raises(Unread, match=r"^a pace is 16 to 47 inches, 0\.4 to 1\.2 m$"):
        quantities.length_m(f"40 paces of {pace}")


def test_a_pace_needs_its_unit():
    with pytest.raises(Unread, match=r"^say the unit$"):
        quantities.length_m("40 paces of 0.8")


def test_a_fraction_alone_is_asked_back():
    """Who types three quarters for a tip thinks of an inch; who types 7.5 does not."""
    for text in ("¾", "1¾", "3/4"):
        with pytest.raises(Unread, match=r"^say the unit, mm or inches$"):
            read(ITEMS["showing"], text)
    assert read(ITEMS["showing"], "1¾ in") == pytest.approx(44.45)


def test_other_words_are_understood():
    for row in tables.rows("also"):
        item = ITEMS[row["item"]]
        words = {word.word: word for word in item.words}
        assert row["said"] not in words, row
        assert choose(item.words, row["said"].upper()) == words[row["meant"]], row


def test_another_word_is_not_taken_where_its_meaning_is_none():
    with pytest.raises(Unread):
        choose(ITEMS["colour_vision"].words, "sunny")


@pytest.mark.parametrize("read", [speed_m_s, mass_g, length_m])
def test_nothing_needs_no_unit(read):
    assert read("0") == read("0,0") == 0.0
    for text in ("0.1", "-3"):
        with pytest.raises(Unread, match="say the unit"):
            read(text)


@pytest.mark.parametrize(
    ("text", "metres_a_second"),
    [
        ("10 mph", 4.4704), ("18 km/h", 5.0), ("10 ft/s", 3.048),
        ("10 knots", 18520 / 3600),  # of 1852 m an hour
        ("force 1", 0.836), ("F4", 6.688), ("bft 9", 22.572),  # 0.836 times 1, 8 and 27
    ],
)  # fmt: skip
def test_speeds_by_hand(text, metres_a_second):
    assert speed_m_s(text) == pytest.approx(metres_a_second)
