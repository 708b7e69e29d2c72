"""The drawings: to scale, every part named, nothing told by colour alone."""

import math
import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import pairwise

import pytest
import sample
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.advice.answer import Run, Sight, TradePoint
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.pictures import pair, strips
from tipsight.pictures import svg as drawings


def parsed(svg):
    return ET.fromstring(svg.__html__())  # noqa: S314 - our own drawing


BANDS = (Band("black", 0, 12.5), Band("fluorescent orange", 12.5, 20), Band("white", 20, 60))


def drawn(bands=BANDS, showing_mm=30.0, painted_mm=3.2):
    return parsed(drawings.tip(Tip(Stock("quill", 3.0), showing_mm), bands, painted_mm, "Tip"))


def test_a_tip_is_drawn_to_scale():
    rects = drawn().findall("rect")
    tall = [float(one.get("height")) / drawings.PX_PER_MM for one in rects]
    assert tall == [12.5, 7.5, 10.0, 10.0]
    wide = [float(one.get("width")) for one in rects]
    assert wide == pytest.approx([3.2 * drawings.PX_PER_MM] * 4, abs=0.06)


def test_each_band_is_named():
    svg = drawn()
    assert [one.text for one in svg.findall(".//text")][:6] == [
        *("black", "0 to 12.5 mm", "fluorescent orange", "12.5 to 20 mm", "white", "20 to 30 mm"),
    ]
    assert "from the top down black 0 to 12.5 mm, fluorescent orange 12.5 to 20 mm" in svg.get(
        "aria-label"
    )


@settings(deadline=None, derandomize=True, max_examples=60)
@given(st.lists(st.floats(1, 30), min_size=1, max_size=5), st.floats(2, 80))
def test_labels_never_lie_on_each_other(lengths, showing_mm):
    ends = [sum(lengths[: n + 1]) for n in range(len(lengths))]
    bands = tuple(Band("black", end - tall, end) for end, tall in zip(ends, lengths, strict=True))
    svg = drawn(bands, showing_mm)
    down = sorted(float(one.get("y")) for one in svg.findall(".//text") if one.get("x") == "96")
    assert all(lower - upper > 17 for upper, lower in pairwise(down))
    assert down[-1] <= float(svg.get("viewBox").split()[-1])


def test_every_paint_has_a_colour_for_the_screen():
    for row in tables.rows("paints"):
        assert len(drawings.swatches()[row["name"]]) == 7


def points():
    longer = [
        TradePoint(3, 10.0 + 5 * n, 2.0 + n, 0.1 + 0.05 * n, 1.5 + n, n > 2, n == 3, "longer")
        for n in range(5)
    ]
    thicker = [
        TradePoint(3 + n, 26.0, 3.0 + n, 0.2 + 0.2 * n, 4.0, True, False, "thicker")
        for n in range(2)
    ]
    return (*longer, *thicker)


def words_of(link):
    return "".join(link.find("text").itertext())


def test_each_point_can_be_reached_and_says_what_it_is():
    svg = parsed(drawings.seen_against_sunk(points(), 5.0))
    reached = svg.findall(".//a")
    assert [words_of(one) for one in reached if "advised" in words_of(one)] == [
        "3 mm by 25 mm, advised: kept in view, sinks at 0.25 g, rides well"
    ]
    assert len(reached) == len(points())
    assert all("style" not in one.attrib for one in svg.iter())


def test_each_point_leads_to_its_row():
    svg = parsed(drawings.seen_against_sunk(points()[::-1], 5.0))
    led = {
        one.get("href"): words_of(one).split(" mm:")[0].split(" mm, ")[0] for one in svg.iter("a")
    }
    assert led == {
        f"#p{n}": f"{point.diameter_mm:g} mm by {point.showing_mm:.0f}"
        for n, point in enumerate(points()[::-1], 1)
    }


def test_points_stand_where_their_numbers_are():
    svg = parsed(drawings.seen_against_sunk(points(), 5.0))
    at = {
        words_of(one).split(":")[0].split(",")[0]: [
            float(one.find("use").get(k)) for k in ("x", "y")
        ]
        for one in svg.iter("a")
    }
    xs = [at[f"3 mm by {x} mm"] for x in (10, 15, 20, 25, 30)]
    steps = [right[0] - left[0] for left, right in pairwise(xs)]
    assert steps == pytest.approx([steps[0]] * 4, abs=0.11)
    per_log = [
        (a[1] - b[1]) / math.log(m / n)
        for a, b, n, m in zip(xs, xs[1:], (2, 3, 4, 5), (3, 4, 5, 6), strict=False)
    ]
    assert per_log == pytest.approx([per_log[0]] * 4, rel=0.02)


def test_how_a_tip_rides_is_told_by_shape():
    shapes = []
    for margin in (1.0, 2.5, 4.0):
        svg = drawings.seen_against_sunk(
            (TradePoint(3, 25, 4.0, 0.2, margin, True, False, "longer"),), 5.0
        )
        tree = parsed(svg)
        name = tree.find(".//use").get("href").removeprefix("#")
        mark = tree.find(f".//g[@id='{name}']/g")
        shapes.append((mark[0].tag, mark[0].get("fill", "currentColor")))
    assert [shape for shape, _ in shapes] == ["path", "circle", "circle"]
    assert [fill for _, fill in shapes[1:]] == ["none", "currentColor"]


def test_no_points_is_no_crash():
    assert drawings.seen_against_sunk((), 5.0).title == "Seen against sunk"


def test_strips_are_as_long_as_their_runs_and_each_grade_has_a_pattern():
    """Five pixels and a bit to the yard: 354 over 50."""
    far = ("stands out", "easy", "kept in view", "followed", "in and out", "not seen")
    ends = [10, 15, 20, 30, 40, 50, 60]
    runs = tuple(
        Run(word, a * 0.9144, b * 0.9144) for word, a, b in zip(far, ends, ends[1:], strict=False)
    )
    seen = Sight("dark", 3.0, 2.0, 4.0, "followed", 27.432, 45.72, None, 0.0, runs)
    svg = parsed(strips.strip("As it is", seen, 40 * 0.9144))
    rects = svg.findall("rect")
    yard = 354 / 50
    wide = [float(one.get("width")) for one in rects]
    assert wide == pytest.approx([n * yard for n in (5, 5, 10, 10, 10, 10)], abs=0.06)
    assert len({one.get("fill") for one in rects}) == 6
    marked = svg.findall("path")[-1].get("d")
    assert float(marked[1:].split()[0]) == pytest.approx(30 * yard, abs=0.06)
    assert svg.get("aria-label") == (
        "As it is. stands out to 15 yd, easy to 20 yd, kept in view to 30 yd, followed to 40 yd, "
        "in and out to 50 yd, not seen to 60 yd"
    )
    whole = strips.strips([("As it is", seen)], 40 * 0.9144, 5.0)
    assert "As it is: goes at about 30 yd" in whole.alone()
    assert all(word in whole.alone() for word in far)


def test_two_tips_stand_on_one_waterline_to_one_scale():
    first, second = (
        replace(sample.answer().tip_in_hand, tip=Tip(Stock("quill", 3.0), long, bands=BANDS))
        for long in (15.0, 30.0)
    )
    svg = parsed(pair.pair([("As it is", first), ("At the bench", second)]))
    rects = [
        {k: float(one.get(k)) for k in ("x", "y", "width", "height")}
        for one in svg.findall("rect")
    ]
    shown = [one for one in rects if one["height"] != pair._WET]
    feet = [one["y"] + one["height"] for one in shown]
    water = max(feet)
    assert sum(one["height"] for one in shown if one["x"] > 150) == pytest.approx(
        2 * sum(one["height"] for one in shown if one["x"] < 150), rel=0.01
    )
    assert feet.count(pytest.approx(water, abs=0.11)) == 2
    said = [one.text for one in svg.iter("text")]
    assert {"As it is", "At the bench", "10 mm"} <= set(said)
    assert "orange 3 mm" not in said
    assert max(map(len, said)) <= pair.LETTERS


def test_the_tip_in_hand_and_the_advised_one_are_marked_and_no_point_stands_twice():
    twice = (*points(), replace(points()[3], of="thicker"))
    svg = parsed(drawings.seen_against_sunk(twice, 5.0, sample.answer().tip_in_hand))
    said = [words_of(one) for one in svg.iter("a")]
    assert len(said) == len(points()) + 1
    assert (
        sum(", advised: " in one for one in said) == sum(", in hand: " in one for one in said) == 1
    )
    words = [one.text for one in svg.findall("./g/text")]
    assert {"advised", "in hand", "level: how well it is seen", "what sinks it, in grams"} <= set(
        words
    )
