"""What to have on when, worked by hand; and a day against the same questions put one by one."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise, product
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.advice.advise import examine
from tipsight.advice.choose import asked
from tipsight.hours import course as hours
from tipsight.hours.course import Course, Quarter, Spell, course, plan
from tipsight.hours.moments import Moment, moments
from tipsight.inputs import demo
from tipsight.inputs.case import Light, Stretch
from tipsight.scene.setting import in_shade

PLACE, LOOKING = (52.1, -1.5), 225.0
LONDON = ZoneInfo("Europe/London")
DAY = moments(date(2026, 10, 15), LONDON, PLACE, time(13), time(18))
NOON = datetime(2026, 10, 15, 12, tzinfo=UTC)


@pytest.fixture(scope="module")
def sunny() -> Course:
    return course(demo.question("demo").with_options(sky="clear"), DAY, PLACE, LOOKING)


# --- which to have on


# Wanted 5; asked is min(5, max(.85 best, min(best, 2.4))), and 0.95 of it is enough.
@pytest.mark.parametrize(
    ("worst", "on"),
    [
        ([[5.0, 6.0]], [0]),  # both do: the first, the tip in hand
        ([[4.74, 6.0]], [1]),  # under 0.95 of 5
        ([[4.75, 6.0]], [0]),
        (
            [[5.0, 4.0], [5.0, 5.0], [2.0, 5.0]],
            [0, 0, 1],
        ),  # the first lasts longest from the start
        (
            [[5.0, 5.0], [2.0, 5.0], [5.0, 2.0]],
            [1, 1, 0],
        ),  # the second does, though both do at first
        ([[0.9, 0.5]], [None]),  # not seen
        ([[1.9, 2.0], [0.5, 0.9], [2.0, 1.0]], [0, None, 0]),
        ([[2.0, 2.9]], [1]),  # asked 2.465
        ([[2.4, 2.5]], [0]),  # asked 2.4, and 2.28 is enough
    ],
)
def test_what_to_have_on(worst, on):
    assert plan(np.array(worst), 5.0) == on


@settings(deadline=None, derandomize=True, max_examples=60)
@given(st.lists(st.tuples(*[st.floats(1.0, 12.0)] * 3), min_size=1, max_size=6))
def test_no_other_plan_has_fewer_changes(rows):
    worst = np.array(rows)
    need = [0.95 * asked(5.0, float(row.max())) for row in worst]
    found = plan(worst, 5.0)

    def changes(on):
        return sum(one != other for one, other in pairwise(on))

    able = [
        [k for k in range(3) if row[k] >= least] for row, least in zip(worst, need, strict=True)
    ]
    assert all(pick in each for pick, each in zip(found, able, strict=True))
    assert changes(found) == min(changes(each) for each in product(*able))


# --- a day by hand


def at(quarter: int) -> datetime:
    return NOON + quarter * timedelta(minutes=15)


def by_hand(levels, lane=(), shade=()):
    return tuple(
        Quarter(Moment(at(n), 10.0, 200.0), 30.0, n in lane, n in shade, tuple((x,) for x in each))
        for n, each in enumerate(levels)
    )


def test_spells_hold_the_worst_and_the_best_of_what_is_on():
    quarters = by_hand([(5.0, 4.0), (6.0, 5.0), (2.0, 7.0), (0.1, 0.2)])
    assert hours._spells(quarters, [0, 1], 5.0) == (
        Spell(0, at(0), at(1), 5.0, 6.0),
        Spell(1, at(2), at(2), 7.0, 7.0),
        Spell(None, at(3), at(3), 0.2, 0.2),
    )
    assert hours._spells(quarters, [1], 5.0)[0] == Spell(1, at(0), at(2), 4.0, 7.0)


def test_when_a_lane_lies_there_and_when_a_grade_is_last_had(sunny):
    quarters = by_hand([(5.0,), (6.0,), (2.5,), (0.1,)], lane=(0, 1, 3), shade=(2,))
    made = replace(
        sunny, quarters=quarters, at_the_bank=(Spell(0, at(0), at(2), 2.5, 6.0),), at_the_bench=()
    )
    assert made.spells("lane") == ((at(0), at(1)), (at(3), at(3)))
    assert made.spells("shade") == ((at(2), at(2)),)
    assert made.last(5.0, bench=False) == at(1)
    assert made.last(2.4, bench=False) == at(2)
    assert made.last(20.0, bench=False) is None
    assert made.last(1.0, bench=True) is None


# A bank 9 m high and 18.29 m beyond the float stands atan(9/18.29) = 26.2 deg high.
@pytest.mark.parametrize(
    ("sun_deg", "bearing_deg", "shaded"),
    [(26.0, 0.0, True), (26.4, 0.0, False), (26.0, 89.0, True), (26.0, 91.0, False)],
)
def test_the_banks_shadow(sun_deg, bearing_deg, shaded):
    light = Light(beam=True, sun_height_deg=sun_deg, sun_bearing_deg=bearing_deg)
    high = float(np.degrees(np.arctan2(9.0, 20 * 0.9144)))
    assert in_shade(light, Stretch(bank_height_deg=high)) is shaded


# --- a day against plain questions


def test_each_quarter_is_what_a_plain_question_gives(sunny):
    for n in (0, 8, len(DAY) - 1):
        asked_ = hours._at(demo.question("demo").with_options(sky="clear"), DAY[n], PLACE, LOOKING)
        seen = examine(asked_).visibility
        assert [one.name for one in seen.by_background] == list(sunny.waters)
        assert sunny.quarters[n].levels[0] == pytest.approx(
            [one.level for one in seen.by_background], rel=1e-9
        )


def test_the_lane_lies_there_when_the_sun_stands_ahead(sunny):
    """The sun stands due south-west at about 15:40 that day, and low to the side by 18:00."""
    ((start, end),) = sunny.spells("lane")
    nearest = min(sunny.quarters, key=lambda one: one.bearing_deg)
    assert start <= nearest.moment.when <= end
    assert nearest.bearing_deg < 3.0
    assert end - start <= timedelta(hours=1)
    lane = [max(one.worst) for one in sunny.quarters if one.lane]
    out = [max(one.worst) for one in sunny.quarters if one.moment.when.hour == 14]
    assert max(lane) < 0.6 * min(out)


def test_no_lane_and_no_shade_under_an_overcast():
    found = course(demo.question("demo"), DAY[:3], PLACE, LOOKING)
    assert found.spells("lane") == found.spells("shade") == ()


def test_a_bank_that_shades():
    """At 17:00 the sun is 10 deg high and 15 deg to the right of the sight; the bank 26 deg."""
    late = moments(date(2026, 10, 15), LONDON, PLACE, time(17), time(17, 15))
    question = demo.question("demo").with_options(
        sky="clear", behind="trees 9 m high, 20 yd beyond the float"
    )
    assert all(one.shade for one in course(question, late, PLACE, LOOKING).quarters)


def test_a_course_needs_light():
    with pytest.raises(ValueError, match="a course needs a moment with light"):
        course(demo.question("demo"), (), PLACE, LOOKING)
