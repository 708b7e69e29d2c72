"""A day in June and in December, in both hemispheres, with clocks going back, and one without a night."""

from datetime import date, time
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from tipsight.hours.course import course
from tipsight.hours.moments import moments
from tipsight.inputs.learnt import Learnt, Lesson
from tipsight.inputs.question import Question
from tipsight.output.course_words import text

SWIM = Question(distance="30 yd", behind=("bright",), looks="ripple", sky="clear")
LONDON, MELBOURNE, OSLO = (
    ZoneInfo(name) for name in ("Europe/London", "Australia/Melbourne", "Europe/Oslo")
)
NORTH, SOUTH, ARCTIC = (52.0, 0.0), (-37.0, 145.0), (69.6, 18.9)
NOON, ONE = (time(12), time(12, 15)), (time(13), time(13, 30))
# day, zone, place, looking, hours; the sun's bearing from the line of sight and its height, by common
# geometry: at noon 90 - |latitude - declination|, at midnight |latitude| + |declination| - 90
YEAR = {
    "June, north": (date(2026, 6, 21), LONDON, NORTH, 180.0, ONE, 0.0, 61.4),
    "December, north": (date(2026, 12, 21), LONDON, NORTH, 180.0, NOON, 0.0, 14.6),
    "June, south": (date(2026, 6, 21), MELBOURNE, SOUTH, 0.0, NOON, 0.0, 29.6),
    "December, south": (date(2026, 12, 21), MELBOURNE, SOUTH, 180.0, ONE, 180.0, 76.4),
    "no night": (date(2026, 6, 21), OSLO, ARCTIC, 0.0, (time(0, 30), time(1)), 0.0, 3.0),
}  # fmt: skip


@pytest.mark.parametrize("which", YEAR)
def test_the_sun_of_the_season(which):
    day, zone, place, looking, hours, bearing, height = YEAR[which]
    found = course(SWIM, moments(day, zone, place, *hours), place, looking)
    nearest = min(found.quarters, key=lambda one: abs(one.bearing_deg - bearing))
    assert nearest.moment.sun_height_deg == pytest.approx(height, abs=0.6)
    sideways = abs(nearest.bearing_deg - bearing) * np.cos(np.radians(height))
    assert sideways < 4.0  # the clock's noon is near the sun's
    if bearing == 180.0:
        assert not any(one.lane for one in found.quarters)
    assert "THE DAY" in text([("clear sky", found)])


def test_clocks_that_go_back_in_the_light():
    """A summer night in the Antarctic: two hours are told twice, and each quarter is worked out once."""
    troll, place = ZoneInfo("Antarctica/Troll"), (-72.0, 2.5)
    each = moments(date(2026, 10, 25), troll, place, time(0, 45), time(1, 15))
    assert len({one.when.utctimetuple() for one in each}) == len(each)
    assert [f"{one.when:%H:%M %z}" for one in each][:2] == ["00:45 +0200", "01:00 +0200"]
    assert min(one.sun_height_deg for one in each) > -12.0
    whole = moments(date(2026, 10, 25), troll, place, time(1), time(2))
    told = [f"{one.when:%H:%M}" for one in moments(date(2026, 10, 25), troll, place)]
    assert told.count("01:30") == 2
    found = course(SWIM, whole[-2:], place, 0.0)
    assert len(found.quarters) == 2


def test_own_eyes_are_in_the_day():
    """Eyes half as good: the factor stands in each quarter as if it had been told."""
    afternoon = (time(14), time(14, 15))
    each = moments(date(2026, 10, 15), LONDON, NORTH, *afternoon)[:1]
    learnt = Learnt((Lesson("own_eye", "0.5", bars=6),), own_eye_doubt=1.14)
    plain, told, learned = (
        course(one, each, NORTH, 225.0).quarters[0].levels[0]
        for one in (SWIM, SWIM.with_options(own_eye="0.5"), Question(**dict(SWIM.told()), learnt=learnt))
    )
    assert learned == told
    assert max(learned) < 0.8 * max(plain)
