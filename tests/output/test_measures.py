"""Numbers as they are said, and that what is said can be read back."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.answer import ShotLine
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.output import measures, names
from tipsight.output.measures import ANGLER
from tipsight.output.plain import plain

QUARTER = {"": 0.0, "¼": 0.25, "½": 0.5, "¾": 0.75}
often = settings(deadline=None, derandomize=True, max_examples=60)


@pytest.mark.parametrize(
    ("range_m", "said"),
    [(9.144, "10 yd (9 m)"), (36.576, "40 yd (37 m)"), (54.864, "60 yd (55 m)")],
)
def test_yards_are_the_international_yard(range_m: float, said: str) -> None:
    """Published: international yard and pound agreement 1959, one yard is 0.9144 m exactly."""
    assert ANGLER.distance(range_m) == said


@pytest.mark.parametrize(("yards", "said"), [(22.0, "22 yd"), (22.6, "22 yd"), (22.99, "22 yd")])
def test_a_distance_to_come_in_to_is_never_said_too_far(yards: float, said: str) -> None:
    assert ANGLER.far(yards * 0.9144, whole=False) == said
    assert ANGLER.far(22.6 * 0.9144) == "23 yd"


@pytest.mark.parametrize(
    ("length_mm", "said"),
    [
        (1.5, "under 1/8 in"),
        (3.1, "1/8 in"),
        (6.35, "¼ in"),
        (9.0, "3/8 in"),
        (15.0, "5/8 in"),
        (22.5, "7/8 in"),
        (24.5, "1 in"),
        (12.7, "½ in"),
        (19.05, "¾ in"),
        (25.4, "1 in"),
        (31.75, "1¼ in"),
        (44.45, "1¾ in"),
        (57.15, "2¼ in"),
        (60.0, "2¼ in"),
    ],
)
def test_inches_in_quarters_and_short_ones_in_eighths(length_mm: float, said: str) -> None:
    assert measures.inches(length_mm) == said


@given(st.floats(3.2, 300.0))
@often
def test_inches_are_never_more_than_an_eighth_off(length_mm: float) -> None:
    said = measures.inches(length_mm)
    if found := re.fullmatch(r"([1357])/8 in", said):
        said_mm = 25.4 * float(found[1]) / 8
    else:
        found = re.fullmatch(r"(\d*)([¼½¾]?) in", said)
        assert found is not None
        said_mm = 25.4 * (float(found[1] or 0) + QUARTER[found[2]])
    assert abs(said_mm - length_mm) <= 25.4 / (16 if length_mm < 23.8 else 8) + 1e-9


@given(st.floats(1.0, 80.0))
@often
def test_a_length_says_millimetres_first(length_mm: float) -> None:
    found = re.match(r"(\d+) mm, ", ANGLER.length(length_mm))
    assert found is not None
    assert abs(float(found[1]) - length_mm) <= 0.5


@pytest.mark.parametrize(
    ("margin", "said"),
    [(2.0, "2.0"), (1.97, "1.9"), (19.96, "19.9"), (20.0, "20.0"), (20.01, "20+"), (900.0, "20+")],
)
def test_margins_end_at_twenty(margin: float, said: str) -> None:
    assert measures.margin(margin) == said


@pytest.mark.parametrize(
    ("margin", "said"),
    [
        (1.99, "does not ride this water"),
        (2.0, "just rides"),
        (2.99, "just rides"),
        (3.0, "rides well"),
    ],
)
def test_riding_turns_at_two_and_three(margin: float, said: str) -> None:
    assert measures.rides(margin) == said
    assert measures.rides(margin, upright=False) == "falls over"


@pytest.mark.parametrize(
    ("dip_s", "per_min", "said"),
    [
        (1.0, 4.0, "four times a minute, each under about 1 s: strike when it stays down"),
        (0.55, 1.0, "once a minute, each under about ½ s: strike when it stays down"),
        (3.6, 0.25, "once in about 4 minutes, each under about 3½ s: strike when it stays down"),
        (0.8, 14.0, "14 times a minute, each under about ¾ s: strike when it stays down"),
    ],
)
def test_dips(dip_s: float | None, per_min: float, said: str) -> None:
    assert measures.dips(dip_s, per_min) == f"it goes under by itself {said}"


@pytest.mark.parametrize(("dip_s", "per_min"), [(0.8, 1e-6), (None, 0.0)])
def test_a_tip_that_hardly_dips_is_struck_at_any(dip_s: float | None, per_min: float) -> None:
    said = "hardly dips: strike at any"
    assert measures.dips(dip_s, per_min) == said


@given(st.floats(1 / 60, 200.0))
@often
def test_a_rate_is_never_one_minutes(per_min: float) -> None:
    assert "about 1 minutes" not in measures.rate(per_min)
    assert not measures.rate(per_min).startswith("0 ")


@given(st.floats(0.01, 60.0))
@often
def test_a_time_is_never_nothing(duration_s: float) -> None:
    assert measures.seconds(duration_s) != "about  s"
    assert re.fullmatch(r"about \d*[¼½¾]? s", measures.seconds(duration_s))


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [(0.0, 0.01, "under 0.1"), (0.2, 3.14, "0.2 to 3.1"), (9.94, 9.96, "9.9 to 10")],
)
def test_levels(low: float, high: float, said: str) -> None:
    assert measures.levels(low, high) == said


def test_grams_are_never_minus_nothing() -> None:
    assert measures.grams(0.0) == "0.00 g"
    assert measures.grams(-0.001) == "under 0.01 g"
    assert measures.grams(2.404) == "2.40 g"


def test_paint_tells_what_shows_of_each_block() -> None:
    bands = (Band("black", 0, 15), Band("white", 15, 30), Band("red", 30, 45))
    assert names.paint(bands, 45) == "black 15 mm over white 15 mm over red 15 mm"
    assert names.paint(bands, 20) == "black 15 mm over white 5 mm"
    assert names.paint(bands, 10) == "black"
    assert names.paint((), 10) == "bare"


def test_stock_tells_what_the_tip_wears() -> None:
    tip = Tip(Stock("thin tube", 5.0, 4.0), 30.0, sleeve=True, light_stick="3 x 23 mm")
    assert names.stock(tip) == (
        "5 mm thin tube (4 mm bore) with a sleeve with a 3 x 23 mm light stick"
    )


def test_shot_is_told_by_place() -> None:
    lines = (
        ShotLine("SSG", 1, "bulk"),
        ShotLine("BB", 3, "bulk"),
        ShotLine("No 6", 1, "dropper"),
        ShotLine("No 10", 1, "trim under the float"),
    )
    assert names.shot_list(lines) == "bulk SSG, 3 BB; dropper No 6; trim under the float No 10"
    assert names.shot_list(()) == "no shot"


@given(st.text(alphabet="a 1¼½¾×–−°é", max_size=30))
@often
def test_plain_is_plain(text: str) -> None:
    assert plain(text).isascii()


def test_plain_keeps_fractions_apart() -> None:
    assert plain("(1¼ in) ¾ in") == "(1 1/4 in) 3/4 in"


def test_nothing_is_no_length() -> None:
    assert ANGLER.length(0.0) == "0 mm"
