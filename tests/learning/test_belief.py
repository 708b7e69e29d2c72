"""The grid of ln G and ln k, and the card: worked examples of our own note, done by other hands."""

import numpy as np
import pytest
from owners import owners
from scipy.optimize import brentq

from tipsight.errors import OutOfRange
from tipsight.learning import bars, belief
from tipsight.sight import eye
from tipsight.units import YARD_M

AGE = brentq(lambda years: float(eye.age_factor(years, 1000.0)) - 1.5, 26, 80)
"""At which the age factor is 1.5, as in the worked examples."""
SEEN = (17, 24, 32, 16, 22, 28)
GOES_YD = {
    # age factor: each bar's distance with G 1 at 1000 cd/m2
    1.0: (20.34, 29.23, 38.90, 18.76, 34.32, 40.50),
    1.5: (16.49, 23.65, 31.53, 15.29, 27.03, 32.45),
    2.0: (14.19, 20.30, 27.10, 13.22, 22.71, 27.59),
    3.0: (11.43, 16.29, 21.81, 10.75, 17.67, 21.76),
}


def card(yards, **how):
    """Return a card seen out and back."""
    return bars.Sheet({n: [YARD_M * far] * 2 for n, far in enumerate(yards, 1)}, **how)


def notes(*told):
    """Return the likelihood of notes with ln level = v - a q, as (kind, level, a, tau)."""
    return [
        kind(belief.G[:, None] + np.log(level / 2.4) - a * belief.Q, tau)
        for kind, level, a, tau in told
    ]


FIVE = (
    (belief.went, 2.0, 0.0, 0.4135),
    (belief.went, 1.8, 0.20, 0.4047),
    (belief.followed, 2.2, 0.20, 0.4047),
    (belief.went, 1.5, 0.34, 0.3700),
    (belief.not_seen, 3.0, 0.20, 0.4047),
)


@pytest.mark.parametrize("factor", GOES_YD)
def test_where_each_bar_goes(factor):
    """Worked out for our note with the same detector; to a hundredth of a yard."""
    eyes = eye.Eye(25.0, 1.0, 1.0 / factor)
    found = [
        brentq(lambda yd, b=bar: float(bars.level(b, [yd * YARD_M], eyes)[0]) - 2.4, 5, 80)
        for bar in bars.BARS
    ]
    assert found == pytest.approx(GOES_YD[factor], abs=0.01)


def test_a_worked_card():
    each = bars.said(card(SEEN), AGE)
    assert [one.y for one in each] == pytest.approx(
        [0.0581, 0.0278, 0.0285, 0.0897, -0.3395, -0.2621], abs=2e-4
    )
    assert {round(one.sd, 4) for one in each} == {0.2522}
    found = belief.believed(AGE, [bars.likelihood(card(SEEN), AGE)])
    assert found.eyes == pytest.approx((-0.0573, 0.1231), rel=0.01)
    assert (found.factor, *found.ends) == pytest.approx((0.944, 0.771, 1.157), rel=0.01)


def test_a_bar_miscounted_is_named_and_moves_little():
    wrong = card((17, 24, 11, 16, 22, 28))
    assert [one.number for one in bars.said(wrong, AGE) if one.odd] == [3]
    assert bars.said(wrong, AGE)[2].y == pytest.approx(-1.8911, abs=2e-4)
    found = belief.believed(AGE, [bars.likelihood(wrong, AGE)])
    assert found.eyes == pytest.approx((-0.0727, 0.1295), rel=0.01)


def test_worked_notes():
    found = belief.believed(60.0, notes(*FIVE))
    assert found.eyes == pytest.approx((0.1412, 0.1959), rel=0.01)
    assert found.streaks == pytest.approx((-0.2148, 0.6057), rel=0.01)
    assert found.tied == pytest.approx(0.436, rel=0.01)
    assert (found.factor, *found.ends) == pytest.approx((1.152, 0.836, 1.593), rel=0.01)


def test_one_note_went_and_one_followed():
    assert belief.believed(60.0, notes(FIVE[0])).eyes == pytest.approx((0.0727, 0.2637), rel=0.01)
    alone = belief.believed(60.0, notes(FIVE[2]))
    assert (*alone.eyes, *alone.streaks) == pytest.approx(
        (0.1801, 0.2987, -0.1456, 0.6698), rel=0.01
    )


def test_card_and_notes_together():
    found = belief.believed(60.0, [bars.likelihood(card(SEEN), AGE), *notes(*FIVE)])
    assert found.eyes == pytest.approx((-0.0012, 0.1090), abs=0.0011)
    assert found.streaks == pytest.approx((-0.4090, 0.5606), rel=0.01)
    assert found.tied == pytest.approx(0.273, rel=0.01)


def test_one_note_that_contradicts_ten_moves_the_factor_by_less_than_a_tenth():
    """Ten at G 1 and one at a quarter of it: a slip, where a plain Gaussian would move by .11."""
    agree = [(belief.went, 2.4, 0.0, 0.41)] * 10
    both = belief.believed(50.0, notes(*agree, (belief.went, 9.6, 0.0, 0.41)))
    assert abs(both.eyes[0] - belief.believed(50.0, notes(*agree)).eyes[0]) < 0.05


def test_before_any_reading_it_is_known_as_the_answers_have_it():
    assert belief.believed(50.0).doubt == pytest.approx(1.40, abs=0.01)
    assert belief.believed(70.0).doubt == pytest.approx(1.52, abs=0.01)
    assert belief.believed(50.0).ends == pytest.approx((0.572, 1.750), rel=0.01)


def test_printed_too_small_and_told_is_as_if_nearer():
    """A card at 0.94 of its size is at 0.94 of the distance what the true one is: y for y."""
    small = bars.said(card([0.94 * far for far in SEEN], scale=0.94), AGE)
    assert [one.y for one in small] == pytest.approx(
        [one.y for one in bars.said(card(SEEN), AGE)], abs=1e-9
    )


def test_twenty_owners():
    """The short form of `tests/benchmark/two_hundred_owners.py`."""
    truth, mean, sd = owners(20, 11)
    assert abs(np.mean(mean - truth)) < 0.08  # .125/sqrt(20) is .028 for one sd
    assert np.mean(abs(mean - truth) < 1.645 * sd) >= 0.75
    assert np.median(sd) == pytest.approx(0.127, abs=0.012)


def test_a_step_that_is_wrong_and_not_told_moves_all_bars_alike():
    """Paces of 0.84 m taken for yards, 8 % too long: each bar by its p of the note times ln 1.08."""
    true, long_ = bars.said(card(SEEN), AGE), bars.said(card([1.08 * far for far in SEEN]), AGE)
    steep = [(b.y - a.y) / np.log(1.08) for a, b in zip(true, long_, strict=True)]
    assert steep == pytest.approx([1.92, 1.90, 1.91, 1.98, 1.67, 1.80], abs=0.1)
    wrong = belief.believed(AGE, [bars.likelihood(card([1.08 * far for far in SEEN]), AGE)])
    right = belief.believed(AGE, [bars.likelihood(card(SEEN), AGE)])
    assert wrong.eyes[0] - right.eyes[0] == pytest.approx(0.127, abs=0.02)  # 1.86 ln 1.08 x .87
    assert wrong.eyes[1] == pytest.approx(right.eyes[1], abs=0.005)  # and it cannot know


def test_a_step_taken_for_a_yard_and_told_is_known_less_well():
    told = belief.believed(AGE, [bars.likelihood(card(SEEN, step="yard"), AGE)])
    measured = belief.believed(AGE, [bars.likelihood(card(SEEN), AGE)])
    taped = belief.believed(AGE, [bars.likelihood(card(SEEN, step="tape"), AGE)])
    assert [round(one.eyes[1], 3) for one in (taped, measured, told)] == pytest.approx(
        [0.114, 0.123, 0.168], abs=0.006
    )


def test_the_squares():
    """3 mm of gap at 10.31 m are one arc minute: 3/(10313 x .2909e-3)."""
    assert bars.detail_arcmin(10.313) == pytest.approx(1.0, abs=1e-3)
    assert bars.detail_arcmin(6.875) == pytest.approx(1.5, abs=1e-3)
    with pytest.raises(OutOfRange, match="distance of the squares must be 1 to 35 m"):
        bars.detail_arcmin(40.0)


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (lambda: bars.Sheet({7: [20.0]}), "number of a bar must be 1 to 6"),
        (lambda: bars.Sheet({1: [200.0]}), "distance of a bar must be 3 to 100 m"),
        (lambda: bars.Sheet({1: [float("nan")]}), "distance of a bar must be 3 to 100 m"),
        (lambda: bars.said(bars.Sheet({1: [9.0]}, scale=3.0), 50), "printed size must be 0.5 to"),
        (lambda: belief.believed(200.0), "age must be 5 to 120 years"),
    ],
)
def test_what_cannot_be(made, says):
    with pytest.raises(OutOfRange, match=says):
        made()
