"""Shot said by name, and what is said of lead and harm."""

import pytest

from tipsight.load import change, materials, shot, staircase
from tipsight.load.line import ShotChange
from tipsight.output import shot_words


@pytest.mark.parametrize(
    ("mass_g", "words"),
    [
        (0.46, "a BB and a No 8"), (0.4, "a BB"), (0.8, "a AAA"), (1.2, "two AB"),
        (0.003, "less than a No 13"), (0.0, "nothing"), (0.066, "a No 8"), (8.0, "five SSG"),
        (1.6, "an SSG"), (2.4, "an SSG and a AAA"), (0.14, "a No 6 and a No 10"),
    ],
)  # fmt: skip
def test_said_in_shot(mass_g, words):
    assert shot_words.near(change.nearest(mass_g, shot.sizes())) == words


def test_said_without_a_box():
    assert shot_words.near(change.nearest(0.33, [])) == "0.33 g"


@pytest.mark.parametrize(
    ("counted", "words"),
    [
        ((), "nothing"),
        ((("AB", 1),), "an AB"),
        ((("BB", 10), ("No 8", 11)), "ten BB and 11 No 8"),
    ],
)
def test_counted(counted, words):
    assert shot_words.counted(counted) == words


@pytest.mark.parametrize(
    ("on", "off", "left", "words"),
    [
        ((), (("No 8", 1),), ["No 8"], "take off a No 8"),
        ((), (("No 8", 1),), ["BB"], "take off the No 8"),
        ((), (("No 8", 2),), ["BB"], "take off two No 8"),
        ((), (), [], "leave the shot as it is"),
        ((("BB", 1),), (), [], "put on a BB"),
        ((("SSG", 1), ("No 8", 2)), (), [], "put on an SSG and two No 8"),
        ((("No 1", 1),), (("BB", 1),), [], "swap the BB for a No 1"),
        ((("AB", 1),), (("BB", 1), ("No 4", 1)), ["No 4"], "swap the BB and a No 4 for an AB"),
    ],
)
def test_what_to_do_to_the_shot(on, off, left, words):
    assert shot_words.change(ShotChange(on, off, 0.0, 0.0), left) == words


@pytest.mark.parametrize(
    ("mark", "paint", "words"),
    [
        ("shoulder", "", "the body's shoulder"),
        ("as told", "", "as it is to show"),
        ("band", "white", "the foot of the white"),
        ("top", "", "the very top"),
    ],
)
def test_marks(mark, paint, words):
    assert shot_words.mark(staircase.Step(mark, paint, 5.0, 1.0, 1.2, ())) == words


@pytest.mark.parametrize(
    ("material", "finish", "words"),
    [
        ("foam", "quick glue", "quick glue melts foam unless it is sold as safe for foam"),
        ("abs", "cellulose", "cellulose crazes or melts this plastic"),
        ("balsa", "water-based", "water-based paint raises the grain: rub down between coats"),
    ],
)
def test_what_harms(material, finish, words):
    assert shot_words.harm(materials.harms(material, finish)) == words


def test_care_with_lead():
    assert shot_words.lead_care() == (
        "lead is counted on only up to 0.06 g (No 8 and smaller), where a local code could allow "
        "it; check the current rules and the fishery's own. Do not bite lead shot, wash your "
        "hands after it, and keep it from children"
    )
