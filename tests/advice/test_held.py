"""Where what was told is held at the end of what the sums know, the answer says so."""

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.doubtful import _held
from tipsight.advice.swim import swim
from tipsight.inputs import demo
from tipsight.inputs.settle import settle
from tipsight.output import warned

TOLD = demo.question("demo")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"distance": "95 yd", "known": "guessed"}, "the distance may lie outside 3 to 100 m"),
        ({"distance": "4 yd", "known": "guessed"}, "the distance may lie outside 3 to 100 m"),
        (
            {"looks": None, "wind": "12 m/s", "open_water": "10 m"},
            "so steep a sea breaks: its waves are taken as a tenth as high",
        ),
        (
            {"looks": None, "wind": "15 m/s", "open_water": "lake"},
            "no slopes of water were measured in a wind over 14 m/s",
        ),
        ({"boils": "4"}, "water that boils more than a weir is taken to look like a weir's"),
        (
            {"pace": "2.5 m/s", "run": "1.5 m/s"},
            "held back by more than 1 m/s: how it leans and lifts is that at 1 m/s",
        ),
        ({"distance": "4 yd", "eye": "5 m"}, "what the crests hide at worst is not known"),
        ({"sky": "clear", "sun_height": "75"}, "with the sun over 70 deg a clear sky"),
        ({"sun_height": "-1"}, "after sunset the sky is taken to be spread as at sunset"),
        ({"sight": "6/5"}, "sight better than 6/6 counts as 6/6"),
        ({"age": "16"}, "eyes under 25 count as 25"),
    ],
)
def test_what_is_held_is_said(change, said):
    case = settle(TOLD.with_options(**change))
    words = [warned.warning(one, case) for one in _held(swim(case))]
    assert any(said in line for line in words), words


@pytest.mark.parametrize("name", ["demo", "match"])
def test_nothing_is_said_where_nothing_is_held(name):
    assert _held(swim(settle(demo.question(name)))) == []


@pytest.mark.parametrize(
    "change",
    [
        {"sight": "6/6"},
        {"age": "25"},
        {"boils": "weir"},
        {"pace": "2.5 m/s", "run": "1 m/s"},
        {"sky": "clear", "sun_height": "70"},
        {"sky": "dull overcast", "sun_height": "80"},
        {"sun_height": "0"},
        {"looks": None, "wind": "14 m/s", "open_water": "lake"},
        {"looks": "100 mm", "wind": "15 m/s"},  # the waves are seen, and have no wind's slopes
    ],
)
def test_up_to_the_end_nothing_is_said(change):
    assert _held(swim(settle(TOLD.with_options(**change)))) == []


def test_the_answer_carries_it():
    assert "eyes under 25 count as 25" in warned.warnings(advise(TOLD.with_options(age="16")))


def test_an_age_beyond_the_sums_is_said():
    held = [a.taken for a in settle(TOLD.with_options(age="90")).assumed if a.item == "age"]
    assert held == ["85, beyond which the sums do not go"]
