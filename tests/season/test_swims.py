"""A season as it is written: what all share, each swim on top of it, a ladder; and what will not do."""

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.season import swims

TEXT = """
[all.place]
eye = "5 ft"
distance = "20 yd"
[all.float]
pattern = "wire stick"
[[swim]]
name = "glide"
often = 6
place.distance = "30 yd"
[[swim]]
name = "pool"
behind.behind = ["dark"]
"""


def test_a_swim_stands_on_what_all_share() -> None:
    glide, pool = swims.read(TEXT)
    assert (glide.name, glide.often, pool.often) == ("glide", 6.0, 1.0)
    assert glide.question.told() == {"distance": "30 yd", "eye": "5 ft", "pattern": "wire stick"}
    assert pool.question.told()["behind"] == ("dark",)
    assert pool.question.distance == "20 yd"


def test_a_float_puts_away_the_float_of_the_swim() -> None:
    glide = swims.read(TEXT)[0]
    put = glide.with_float(Question(takes="6BB", distance="9 yd"))
    assert put.told() == {"distance": "30 yd", "eye": "5 ft", "takes": "6BB"}


def test_a_ladder_climbs_through_all_it_names() -> None:
    text = '[all.eyes]\nage = "60"\n[ladder]\ndistance = ["20 yd", "30 yd"]\nbehind = ["dark", "bright"]\n'
    found = swims.read(text)
    assert [one.name for one in found] == [
        "dark, 20 yd", "dark, 30 yd", "bright, 20 yd", "bright, 30 yd",
    ]  # fmt: skip
    assert found[3].question.told() == {"distance": "30 yd", "behind": ("bright",), "age": "60"}


def test_the_ladder_that_comes_with_it() -> None:
    found = swims.ladder(Question(age="60"))
    assert len(found) == 4 * 3 * 2 * 2
    assert {settle(one.question).angler.age_years for one in found} == {60.0}


def test_the_invented_season_says_that_it_is_and_is_no_question() -> None:
    assert demo.season().startswith("# An invented season of twenty-four swims")
    assert len(swims.invented()) == 24
    assert sum(one.often for one in swims.invented()) == 123
    assert demo.SEASON not in demo.names()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "there is no swim in it"),
        ("[swims]\n", "a season has no such part; did you mean 'swim'"),
        ("[swim]\nname = 'x'\n", "each swim stands under a line of its own"),
        ("[[swim]]\nname = 3\n", "swim 1: '3' will not do; a name is a text"),
        ("[[swim]]\nname = 'a'\noften = -1\n", "a: often: '-1' will not do; say how often it is"),
        ("[[swim]]\noften = true\n", "say how often it is fished as a number"),
        ("[[swim]]\nname = 'a'\n[[swim]]\nname = 'a'\n", "two swims have this name"),
        ("[[swim]]\nname = 'a'\nplace.distance = '40'\n", "a: distance: '40' will not do; say the unit"),
        ("[[swim]]\nname = 'a'\nplace.distanc = '40 yd'\n", "a: distanc: there is no such item"),
        ("[[swim]]\nname = 'a'\nwater.goes_under = 3\n", "this was seen of one tip; a season has many"),
        ("all = 3\n[[swim]]\nname = 'a'\n", "what all share stands in sections"),
        ("ladder = 3\n", "a ladder is a section"),
        ("[ladder]\npattern = ['wire stick']\n", "a ladder climbs by items of the swim"),
        ("[ladder]\ndistance = '20 yd'\n", "the steps of a ladder stand in a list"),
        (f"[ladder]\ndistance = {list(range(400))}\nage = {list(range(400))}\n",
         "that makes 160000 swims, and 100000 are the most"),
        ("[ladder]\ndistance = ['20']\n", "20: distance: '20' will not do"),
        ("[[swim]\n", "this is not TOML at line 1"),
    ],
)  # fmt: skip
def test_what_will_not_do_is_told(text: str, said: str) -> None:
    with pytest.raises(Mistakes) as wrong:
        swims.read(text)
    assert said in str(wrong.value)
