"""Whose eyes and which water are taken: what can be chosen, and what is learned of whom."""

from datetime import date

import pytest

from tipsight.box import keeping, recorded
from tipsight.errors import Mistakes
from tipsight.inputs.question import Question
from webui.asking import Asked
from webui.own_readings import Choices, OwnReadings

DAY = date(2026, 10, 3)
SWIM = Question(distance="34 yd", behind="bright")


def card(*paces):
    counts = {f"{n}": [float(far)] for n, far in enumerate(paces, 1)}
    return {"counts": counts, "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0}


@pytest.fixture(scope="module")
def box(tmp_path_factory):
    """Ann sees farther than I; a count of dips on one water."""
    path = tmp_path_factory.mktemp("own") / "my.box"
    dips = {"dips": 6.0, "minutes": 2.0, "question": dict(SWIM.told())}
    with keeping.opened(path, "write") as one:
        recorded.add(one, recorded.Reading("card", "me", DAY, "1", card(17, 24, 32, 16, 22, 28)))
        recorded.add(one, recorded.Reading("card", "Ann", DAY, "1", card(30, 40, 50, 28, 45, 52)))
        recorded.add(one, recorded.Reading("dips", "Mill run", DAY, "1", dips))
    return path


def taken(own, item, question=SWIM, **who):
    lesson = own.learned(Asked({}, **who), question).learnt.of(item)
    return lesson and lesson.taken


@pytest.mark.parametrize(
    ("choices", "any_", "others"),
    [
        (Choices(), False, ("nobody",)),
        (Choices(("me",)), False, ("nobody",)),
        (Choices(("Ann",)), True, ("Ann", "nobody")),
        (Choices(("Ann", "me")), True, ("Ann", "nobody")),
        (Choices(("Ann", "me"), who="Ann"), True, ("me", "nobody")),
        (Choices(("me",), who="nobody"), True, ("me",)),
        (Choices(waters=("Mill run",)), True, ("nobody",)),
    ],
)
def test_what_can_be_chosen_by_hand(choices, any_, others):
    assert (choices.any, choices.others) == (any_, others)


def test_persons_and_waters_are_told_apart(box):
    assert OwnReadings(box, None, None).choices() == Choices(("Ann", "me"), ("Mill run",), "me", "")
    told = OwnReadings(box, "Ann", "Mill run").choices()
    assert (told.who, told.water) == ("Ann", "Mill run")


def test_whose_they_are(box):
    mine, anns = OwnReadings(box, None, None), OwnReadings(box, "Ann", None)
    assert [own.whose(Asked({})) for own in (mine, anns)] == ["me", "Ann"]
    assert anns.whose(Asked({}, who="me")) == "me"


def test_the_page_that_is_started_for_somebody_takes_his_eyes_and_water(box):
    plain, anns = OwnReadings(box, None, None), OwnReadings(box, "Ann", "Mill run")
    mine, hers = taken(plain, "own_eye"), taken(plain, "own_eye", who="Ann")
    assert float(mine.partition(",")[0]) < 1.0 < float(hers.partition(",")[0])
    assert taken(anns, "own_eye") == hers
    assert taken(anns, "own_eye", who="me") == mine
    assert taken(plain, "boils") is None
    counted = taken(plain, "boils", water="Mill run")
    assert counted.endswith("from 1 count")
    assert taken(anns, "boils") == counted


@pytest.mark.parametrize(("item", "young", "old"), [("age", "25", "75"), ("sight", "6/5", "6/12")])
def test_one_page_keeps_apart_what_is_learned_for_another_age_or_sight(box, item, young, old):
    """The same bars say more of the eyes of one who should see less."""
    own = OwnReadings(box, None, None)
    questions = [SWIM.with_options(**{item: told}) for told in (young, old)]
    kept = [taken(own, "own_eye", question=one) for one in questions]
    assert kept == [taken(OwnReadings(box, None, None), "own_eye", question=one) for one in questions]
    assert float(kept[0].partition(",")[0]) < float(kept[1].partition(",")[0])


@pytest.mark.parametrize("how", [{"who": "Zed"}, {"water": "Zed"}])
def test_a_name_of_which_nothing_is_kept_is_told_of_an_empty_box_too(tmp_path, how):
    path = tmp_path / "my.box"
    with keeping.opened(path, "write"):
        pass
    for own, asked in (
        (OwnReadings(path, None, None), Asked({}, **how)),
        (OwnReadings(path, how.get("who"), how.get("water")), Asked({})),
    ):
        with pytest.raises(Mistakes) as told:
            own.learned(asked, SWIM)
        assert [(one.item, one.said, one.allowed) for one in told.value.mistakes] == [
            (*how, "Zed", "there are no readings yet")
        ]


def test_without_a_box_or_readings_nothing_is_learned(tmp_path):
    for path in (None, tmp_path / "none.box"):
        own = OwnReadings(path, None, None)
        assert (own.listed(), own.choices()) == ((), Choices())
        assert own.learned(Asked({}), SWIM).learnt == SWIM.learnt
