"""Every item of the question changes a number of the answer, in a stated direction where known."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.answer import Answer
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question

BASE = Question(
    distance="30 yd",
    known="paced",
    eye="1.5 m",
    depth="1.5 m",
    pace="walk",
    looks="fur",
    wind="2 m/s",
    sky="bright overcast",
    behind=("bright",),
    age="50",
    pattern="quill avon",
    takes="6BB",
    diameter="3 mm",
    stock="quill",
    showing="25 mm",
    wet="15 mm",
    paint="fluorescent orange",
)
SUN = replace(
    BASE,
    sky="clear",
    sun_out="yes",
    shadow="as long as you",
    sun_is="behind me",
    looks="glass",
    wind="0 m/s",
)
BUILT = replace(BASE, takes=None, size=None)
WINDY = replace(BASE, looks=None, wind="5 m/s")

Number = Callable[[Answer], object]


def level(answer: Answer) -> float:
    return answer.tip_in_hand.visibility.level


def low(answer: Answer) -> float:
    return answer.tip_in_hand.visibility.low


def width(answer: Answer) -> float:
    seen = answer.tip_in_hand.visibility
    return seen.high / seen.low


def margin(answer: Answer) -> float:
    return answer.tip_in_hand.handling.ride_margin


def shot(answer: Answer) -> float:
    return answer.tip_in_hand.load.shot_g


def sink(answer: Answer) -> float:
    return answer.tip_in_hand.handling.sink_force_g


def lean(answer: Answer) -> float:
    return abs(answer.tip_in_hand.handling.lean_deg)


def pluck(answer: Answer) -> float:
    return answer.tip_in_hand.handling.pluck_g


def list_of_shot(answer: Answer) -> object:
    return answer.tip_in_hand.load.shot


def kinds(answer: Answer) -> object:
    return [change.kind for change in answer.changes]


def fitted(answer: Answer) -> object:
    return answer.at_the_bench and answer.at_the_bench.block.tip


def warned(answer: Answer) -> object:
    return answer.warnings


RISES, FALLS, DIFFERS = "rises", "falls", "differs"

ROWS: dict[str, tuple[Question, object, object, Number, str]] = {
    "distance": (BASE, "20 yd", "40 yd", level, FALLS),
    "known": (BASE, "measured", "guessed", width, RISES),
    "eye": (BASE, "1 m", "3 m", level, DIFFERS),
    "depth": (BASE, "0.8 m", "3 m", margin, DIFFERS),
    "pace": (BASE, "slack", "brisk", margin, FALLS),
    "looks": (BASE, "glass", "wavelets", level, FALLS),
    "wind": (WINDY, "3 m/s", "8 m/s", margin, FALLS),
    "wind_blows": (WINDY, "upstream", "across", level, DIFFERS),
    "sheltered": (WINDY, "no", "yes", margin, RISES),
    "open_water": (WINDY, "pool", "lake", margin, FALLS),
    "boils": (BASE, "even", "weir", margin, FALLS),
    "goes_under": (BASE, "0.2", "3", margin, FALLS),
    "bed": (BASE, "silt", "boulders", margin, FALLS),
    "colour": (
        replace(SUN, behind=("dark",), eye="4 m", distance="12 yd"),
        "clear",
        "chocolate",
        level,
        DIFFERS,
    ),
    "temperature": (BASE, "2 C", "25 C", shot, DIFFERS),
    "run": (BASE, "free", "held hard", lean, RISES),
    "line": (replace(WINDY, wind_blows="across"), "floating", "sinking", warned, DIFFERS),
    "sky": (BASE, "dull overcast", "clear", level, DIFFERS),
    "sun_out": (SUN, "no", "yes", level, DIFFERS),
    "shadow": (SUN, "shorter", "much longer", level, DIFFERS),
    "sun_is": (replace(SUN, behind=("dark",)), "behind me", "in my face", level, FALLS),
    "sun_height": (replace(SUN, shadow=None), "60", "20", level, DIFFERS),
    "sun_bearing": (replace(SUN, sun_is=None, behind=("dark",)), "180", "20", level, FALLS),
    "when": (
        replace(SUN, shadow=None, sun_is=None, at="52.1 N 1.5 W"),
        "2026-06-21 12:00 UTC",
        "2026-12-21 10:00 UTC",
        level,
        DIFFERS,
    ),
    "at": (
        replace(SUN, shadow=None, sun_is=None, when="2026-12-21 12:00 UTC"),
        "58 N 1.5 W",
        "30 N 1.5 W",
        level,
        DIFFERS,
    ),
    "looking": (
        replace(SUN, shadow=None, sun_is=None, when="2026-06-21 08:00 UTC", at="52.1 N 1.5 W"),
        "E",
        "W",
        level,
        DIFFERS,
    ),
    "mist": (BASE, "clear", "fog", level, FALLS),
    "behind": (BASE, ("dark",), ("bright",), level, DIFFERS),
    "trot": (replace(BASE, behind=None), "0-30 dark", "0-30 bright", level, DIFFERS),
    "age": (BASE, "30", "70", level, FALLS),
    "sight": (BASE, "6/6", "6/18", level, FALLS),
    "colour_vision": (replace(BASE, behind=("dark",)), "normal", "red-blind", level, DIFFERS),
    "own_eye": (BASE, "0.7", "1.4", level, RISES),
    "tint": (replace(BASE, sky="dull overcast", sun_height="-4"), "none", "brown", level, DIFFERS),
    "seen": (BASE, "seen when stared at", "easy", fitted, DIFFERS),
    "bites": (
        replace(BASE, diameter="5 mm"),
        "shy",
        "bold",
        lambda a: a.tip_in_hand.fails,
        DIFFERS,
    ),
    "pattern": (BUILT, "quill avon", "bolo type", shot, DIFFERS),
    "takes": (BASE, "4BB", "8BB", shot, RISES),
    "marked_in": (BASE, "lead", "tin", shot, FALLS),
    "takes_showing": (BASE, "15 mm", "35 mm", shot, RISES),
    "weighed_tip": (
        replace(BASE, takes_showing="25 mm", weighed_wet="15 mm"),
        "3 mm quill",
        "5 mm solid",
        shot,
        RISES,
    ),
    "weighed_wet": (
        replace(BASE, weighed_tip="6 mm solid", takes_showing="25 mm"),
        "10 mm",
        "30 mm",
        shot,
        DIFFERS,
    ),
    "weighed_glued": (
        replace(BASE, weighed_tip="5 mm solid", takes_showing="25 mm"),
        "6 mm",
        "12 mm",
        shot,
        RISES,
    ),
    "weighed_coats": (
        replace(BASE, weighed_tip="5 mm solid", takes_showing="25 mm"),
        "0",
        "8",
        shot,
        RISES,
    ),
    "weighs": (BASE, "1.2 g", "1.8 g", pluck, RISES),
    "soaked": (replace(BUILT, weighs="1.2 g"), "1.25 g", "1.35 g", shot, FALLS),
    "size": (BUILT, "10 mm", "14 mm", shot, RISES),
    "parts": (
        BUILT,
        (
            "body, ellipsoid, balsa, 45 mm long, 12 mm thick",
            "stem, cylinder, cane, 80 mm long, 2.5 mm thick",
        ),
        (
            "body, ellipsoid, balsa, 45 mm long, 14 mm thick",
            "stem, cylinder, cane, 80 mm long, 2.5 mm thick",
        ),
        shot,
        RISES,
    ),
    "shotting": (BASE, "bulk and droppers", "shirt-button", list_of_shot, DIFFERS),
    "varnish_coats": (BUILT, "0", "8", shot, DIFFERS),
    "paint_coats": (BUILT, "0", "8", shot, DIFFERS),
    "diameter": (BASE, "2 mm", "4 mm", sink, RISES),
    "stock": (BUILT, "solid", "thin tube", shot, RISES),
    "bore": (replace(BUILT, stock="thin tube", diameter="4 mm"), "1 mm", "3.5 mm", shot, RISES),
    "showing": (BASE, "15 mm", "30 mm", level, RISES),
    "wet": (BUILT, "10 mm", "20 mm", shot, RISES),
    "glued": (BUILT, "6 mm", "20 mm", shot, DIFFERS),
    "paint": (BASE, "black", "white", level, DIFFERS),
    "seasons": (replace(BASE, behind=("dark",)), "0", "6", level, FALLS),
    "finish": (BASE, "matt", "gloss", level, DIFFERS),
    "undercoat": (replace(BASE, behind=("dark",)), "no", "yes", level, RISES),
    "tip_coats": (BASE, "0", "8", sink, RISES),
    "pulls_out": (replace(BASE, inserts=("solid 4",)), "no", "yes", kinds, DIFFERS),
    "sleeve_on": (BASE, "no", "yes", sink, RISES),
    "light_stick_on": (BASE, "none", "3 x 23 mm", shot, FALLS),
    "tips": (BASE, ("solid 1.5-8",), ("cane 3-6",), fitted, DIFFERS),
    "inserts": (replace(BASE, pulls_out="yes"), ("none",), ("solid 4",), kinds, DIFFERS),
    "paints": (
        replace(BASE, seen="seen when stared at"),
        ("white", "yellow"),
        ("red",),
        fitted,
        DIFFERS,
    ),
    "pen": (BASE, "yes", "no", kinds, DIFFERS),
    "sleeves": (BASE, "no", "yes", kinds, DIFFERS),
    "light_stick": (
        replace(BASE, sky="dull overcast", sun_height="-5"),
        "no",
        "yes",
        kinds,
        DIFFERS,
    ),
    "shot": (BASE, ("BB", "No 8"), ("AAA", "No 6", "No 10"), list_of_shot, DIFFERS),
    "shot_metal": (BASE, "tin", "tungsten", shot, FALLS),
    "hangs": (replace(BASE, takes="6BB"), ("6 BB",), ("SSG, 2 BB",), list_of_shot, DIFFERS),
    "ten_weigh": (BASE, ("BB 4.0 g",), ("BB 4.4 g",), shot, RISES),
}


def test_every_item_has_a_row():
    assert set(ROWS) == set(ITEMS)


@pytest.mark.parametrize("item", ROWS)
def test_an_item_changes_a_number(item):
    base, first, second, number, direction = ROWS[item]
    one, two = (number(advise(base.with_options(**{item: value}))) for value in (first, second))
    if direction == RISES:
        assert two > one
    elif direction == FALLS:
        assert two < one
    else:
        assert two != one
