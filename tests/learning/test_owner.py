"""All that one person told, worked out anew: notes through the shipped sums, ages, slips, what to do next."""

from datetime import date, timedelta
from functools import cache

import numpy as np
import pytest

from tipsight.advice.sighting import quick_level
from tipsight.advice.swim import swim
from tipsight.box.recorded import Reading
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.learning import belief, home_water, river
from tipsight.learning.owner import Next, owner
from tipsight.output.learnt_words import water
from tipsight.sight import eye

TODAY = date(2026, 10, 3)
SEEN = (17, 24, 32, 16, 22, 28)
SWIM = {"distance": "34 yd", "behind": ("bright",), "looks": "fur", "known": "counted",
        "diameter": "3 mm", "stock": "quill", "showing": "30 mm", "paint": "black"}  # fmt: skip
ZERO_G, ZERO_Q = 150, 20
"""Where on the grid ln G and ln k are nothing."""


def card(number=1, on=TODAY, step="measured", age="60", **also):
    counts = {f"{n}": [far] for n, far in enumerate(SEEN, 1)}
    told = {"counts": counts, "pace_m": 0.9144, "step": step, "ruler_mm": 100.0, "age": age, **also}
    return Reading("card", "me", on, "1", told, number)


def note(number, saw, yards, on=TODAY, **swim):
    told = {"saw": saw, "range_m": 0.9144 * yards, "question": {**SWIM, **swim}}
    return Reading("note", "me", on, "1", told, number)


def over_of(case):
    return river.over(river.nodes(case, case.place.range_m))


@cache
def where_it_goes(factor=1.0):
    """Return where the tip of the swim goes for eyes of 60, by hand: the level there is 2.4/factor."""
    far = np.geomspace(10.0, 60.0, 9)
    case = settle(Question(**SWIM, age="60"))
    over = [river.nodes(case, 0.9144 * yards)[0, 6, 4] - np.log(2.4) for yards in far]
    return float(np.exp(np.interp(np.log(factor), -np.array(over), np.log(far))))


def test_a_note_has_the_level_of_the_answer_itself():
    case = settle(Question(**SWIM, age="60"))
    over, steep = over_of(case)
    level = quick_level(swim(case), case.tip)
    assert over[ZERO_G, ZERO_Q] == pytest.approx(np.log(level / 2.4), abs=2e-3)
    assert 1.3 < steep < 2.2
    better = settle(Question(**SWIM, age="60", own_eye="1.5"))
    at = int(np.argmin(abs(belief.G - np.log(1.5))))
    level = quick_level(swim(better), better.tip)
    assert over[at, ZERO_Q] == pytest.approx(np.log(level / 2.4), abs=0.01)


@pytest.mark.parametrize("looks", ["glass", "fur", "ripple", "wavelets"])
def test_eyes_help_against_their_own_noise_alone(looks):
    """Level^2 is signal over own plus streaks' noise: with a = -d ln level/d ln k, it goes as G^(1 - 2a)."""
    case = settle(Question(**{**SWIM, "looks": looks}, age="60"))
    over, _ = over_of(case)
    by_eyes = (over[ZERO_G + 5, ZERO_Q] - over[ZERO_G - 5, ZERO_Q]) / 0.10
    by_streaks = -(over[ZERO_G, ZERO_Q + 1] - over[ZERO_G, ZERO_Q - 1]) / 0.20
    assert by_eyes == pytest.approx(1.0 - 2.0 * by_streaks, abs=0.012)
    assert (by_eyes > 0.85) == (looks == "glass")


def test_card_and_notes_are_counted_and_said():
    goes = where_it_goes()
    found = owner([card(), *(note(n, "went", goes) for n in (2, 3))], TODAY)
    assert (found.bars, found.heard, found.enough) == (6, 2, True)
    assert found.learnt.of("own_eye").taken.endswith("from 6 bars and 2 notes")
    assert found.learnt.of("age").text == "60"
    assert found.learnt.own_eye_doubt == pytest.approx(1.14, abs=0.02)
    assert not any(one.odd for one in found.notes)


def test_ten_notes_find_eyes_again():
    """Of one who sees 1.3 times as well, each note just where the sums have it: prior and ten notes."""
    goes = where_it_goes(1.3)
    found = owner([note(n, "went", goes, age="60") for n in range(1, 11)], TODAY, age_years=60.0)
    low, high = found.belief.ends
    assert low < 1.3 < high
    assert 1.05 < found.belief.factor < 1.35
    assert found.belief.streaks[1] > 0.4  # the streaks' strength is not learned


@pytest.mark.parametrize(("saw", "sign"), [("followed", 1), ("not seen", -1)])
def test_a_note_without_an_end_moves_one_way_alone(saw, sign):
    found = owner([note(1, saw, where_it_goes())], TODAY, age_years=60.0)
    assert sign * found.belief.eyes[0] > 0.05


def test_a_note_that_contradicts_is_named_and_moves_little():
    goes = where_it_goes()
    right = [card(), *(note(n, "went", goes) for n in range(2, 6))]
    plain = owner(right, TODAY)
    wrong = owner([*right, note(9, "followed", 3.5 * goes)], TODAY)
    assert [one.number for one in wrong.notes if one.odd] == [9]
    assert abs(wrong.belief.eyes[0] - plain.belief.eyes[0]) < 0.05
    dropped = Reading(*list(vars(note(9, "went", 3.5 * goes)).values())[:6], dropped=True)
    again = owner([*right, dropped], TODAY)
    assert again.belief.eyes == plain.belief.eyes
    assert again.left_out == (9,)


def test_a_card_of_ten_years_ago_is_read_with_the_eyes_of_then():
    """They were 50, and needed 1.43 for 1.65: the same distances speak for so much worse eyes."""
    then = TODAY - timedelta(days=3652.5)
    now, old = owner([card()], TODAY), owner([card(on=then, age="50")], TODAY)
    assert old.age_years == pytest.approx(60.0, abs=0.01)
    factor = float(eye.age_factor(60.0, 1000.0) / eye.age_factor(50.0, 1000.0))
    for today, before in zip(now.cards[0][1], old.cards[0][1], strict=True):
        assert today.y - before.y == pytest.approx(np.log(factor), abs=2e-3)
    assert old.belief.factor < now.belief.factor


def test_a_note_long_after_is_read_with_the_eyes_of_then():
    """At 70 the same tip at the same distance has a level less by the age factors, beside open ripple."""
    goes = where_it_goes()
    calm = {**SWIM, "looks": "glass", "distance": f"{goes} yd"}
    now, old = (
        owner([note(1, "went", goes, TODAY - timedelta(days=days), looks="glass")], TODAY, age_years=70.0)
        for days in (0.0, 3652.5)
    )
    factor = float(eye.age_factor(70.0, 1000.0) / eye.age_factor(60.0, 1000.0))
    each = (swim(settle(Question(**calm, age=age))) for age in ("70", "60"))
    levels = [np.log(quick_level(here, here.case.tip) / 2.4) for here in each]
    assert levels[1] - levels[0] == pytest.approx(np.log(factor), abs=0.03)
    assert now.notes[0].on - old.notes[0].on == timedelta(days=3652)
    assert now.belief.eyes[0] - old.belief.eyes[0] > 0.03


def test_an_age_told_otherwise_works_all_out_again():
    plain, older = owner([card()], TODAY), owner([card()], TODAY, age_years=70.0)
    factor = float(eye.age_factor(70.0, 1000.0) / eye.age_factor(60.0, 1000.0))
    assert older.cards[0][1][0].y - plain.cards[0][1][0].y == pytest.approx(np.log(factor), abs=2e-3)


def test_sharpness_comes_from_the_squares():
    found = owner([card(squares_m=6.875)], TODAY)
    assert found.mar_arcmin == pytest.approx(1.5, abs=1e-3)
    assert found.learnt.of("sight").text == "1.5 arcmin"
    assert owner([card(sight="6/12")], TODAY).mar_arcmin == pytest.approx(2.0)


def test_what_would_narrow_it_most():
    nothing, stepped = owner([], TODAY), owner([card(step="yard")], TODAY)
    assert nothing.narrower[0][0] is Next.CARD
    assert stepped.narrower[0][0] is Next.PACES
    assert stepped.narrower[0][1] == pytest.approx(1.14, abs=0.01)
    few = card()
    few.told["counts"] = {"1": [17], "2": [24], "3": [], "4": [16], "5": [], "6": []}
    assert owner([few], TODAY).narrower[0][0] is Next.BARS
    assert not owner([note(1, "went", 34)], TODAY).enough


def test_a_note_whose_paint_is_gone_is_left_out_and_kept():
    lost = note(2, "went", 34, paint="my own green")
    found = owner([card(), lost], TODAY)
    assert [one.read for one in found.notes] == [False]
    assert found.belief.eyes == owner([card()], TODAY).belief.eyes


def test_how_readily_he_says_gone_needs_corners_and_bar_two():
    looks = [[34, True], [36, True], [38, False], [34, True], [38, True], [40, False]]
    checked = Reading("corners", "me", TODAY, "1", {"looks": looks}, 2)
    found = owner([card(), checked], TODAY)
    assert 1.2 < found.says_gone < 5.0
    assert owner([checked], TODAY).says_gone is None
    assert found.belief.eyes == owner([card()], TODAY).belief.eyes  # a check, not counted


def dips(number, count, minutes, on=TODAY, **swim):
    told = {"dips": count, "minutes": minutes, "question": {**SWIM, "showing": "12 mm", **swim}}
    return Reading("dips", "Mill run", on, "1", told, number)


def test_a_water_drifts_between_visits():
    before = TODAY - timedelta(days=30)
    today = home_water.home_water("Mill run", [dips(1, 6, 2), dips(2, 5, 2)], TODAY)
    later = home_water.home_water("Mill run", [dips(1, 6, 2, before), dips(2, 5, 2, before)], TODAY)
    assert (today.counts, today.visits, later.visits) == (2, 1, 1)
    assert later.boils.told[1] > max(today.boils.told[1], 0.25)
    assert today.lesson.taken.endswith("from 2 counts")


def test_a_count_that_no_boils_explain_is_named_and_takes_nothing_away(monkeypatch):
    before = TODAY - timedelta(days=30)
    told = [dips(1, 6, 2, before), dips(2, 9, 3)]
    likely = home_water.likelihood

    def none_of_the_second(one, worked):
        found, word = likely(one, worked)
        return (0.0 * found if one.number == 2 else found), word

    monkeypatch.setattr(home_water, "likelihood", none_of_the_second)
    found = home_water.home_water("Mill run", told, TODAY)
    plain = home_water.home_water("Mill run", told[:1], TODAY)
    assert (found.counts, found.unexplained) == (1, (2,))
    assert found.boils.told == plain.boils.told
    said = " ".join(water(found, told).split())
    assert "no boils explain reading 2, so it is left out" in said


def test_none_in_three_minutes_tells_too():
    calm = home_water.home_water("Mill run", [dips(1, 0, 3, showing="20 mm")], TODAY)
    busy = home_water.home_water("Mill run", [dips(1, 9, 3, showing="20 mm")], TODAY)
    assert calm.boils.factor < 0.95 < 1.4 < busy.boils.factor


def test_lowest_and_seconds_and_what_cannot_be_read():
    asked = {**SWIM, "showing": "12 mm"}
    each = [
        Reading("dips", "w", TODAY, "1", {"lowest_mm": 30.0, "question": asked}, 1),
        Reading("dips", "w", TODAY, "1", {"seconds": 1.5, "per_min": 4, "question": asked}, 2),
        Reading("dips", "w", TODAY, "1", {"lowest_mm": 9.0, "question": {"paint": "nothing"}}, 3),
    ]
    found = home_water.home_water("w", each, TODAY)
    assert (found.counts, found.unread) == (2, (3,))
    assert found.boils.factor > 1.1
