"""The quarters of an hour of a day: clocks, polar days, both hemispheres."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from tipsight.errors import Mistakes
from tipsight.hours.moments import by_the_clock, moments

LONDON, TROMSO = ZoneInfo("Europe/London"), ZoneInfo("Europe/Oslo")
FAR_NORTH = (69.6, 18.9)


def all_day(day, zone, place):
    """Every quarter from midnight to midnight, if the sun never went too low."""
    found = moments(day, zone, place)
    return found, {one.when.astimezone(UTC) for one in found}


# 24 hours have 96 quarters and an end; a polar day loses none of them
@pytest.mark.parametrize(
    ("day", "hours"), [(date(2026, 6, 21), 24), (date(2026, 10, 25), 25), (date(2026, 3, 29), 23)]
)
def test_a_day_has_as_many_quarters_as_its_clock(day, hours, monkeypatch):
    monkeypatch.setattr("tipsight.hours.moments.position", lambda *_: (10.0, 180.0))
    found, apart = all_day(day, LONDON, (52.0, 0.0))
    assert len(found) == len(apart) == 4 * hours + 1
    assert found[-1].when - found[0].when == timedelta(days=1)  # by the clock on the wall


def test_clocks_that_go_back_tell_an_hour_twice(monkeypatch):
    monkeypatch.setattr("tipsight.hours.moments.position", lambda *_: (10.0, 180.0))
    said = [f"{one.when:%H:%M %z}" for one in moments(date(2026, 10, 25), LONDON, (52.0, 0.0))]
    assert "01:30 +0100" in said
    assert "01:30 +0000" in said


def test_polar_day_and_polar_night():
    day = moments(date(2026, 6, 21), TROMSO, FAR_NORTH)
    assert len(day) == 97
    assert min(one.sun_height_deg for one in day) > 0.0
    assert max(one.sun_height_deg for one in moments(date(2026, 12, 21), TROMSO, FAR_NORTH)) < 0.0
    assert moments(date(2026, 12, 21), UTC, (89.0, 0.0)) == ()


# At noon of the longest and the shortest day the sun stands 90 - latitude + 23.44 deg and 90 -
# latitude - 23.44 deg high, due south; south of the equator the other way about, due north
# (common geometry; the obliquity is from the IAU 2006 value of 23.439 deg, from memory).
@pytest.mark.parametrize(
    ("day", "latitude", "height", "azimuth"),
    [
        (date(2026, 6, 21), 52.0, 61.44, 180.0),
        (date(2026, 12, 21), 52.0, 14.56, 180.0),
        (date(2026, 12, 21), -37.0, 76.44, 0.0),
        (date(2026, 6, 21), -37.0, 29.56, 0.0),
    ],
)
def test_noon_of_the_solstices(day, latitude, height, azimuth):
    noon = moments(day, UTC, (latitude, 0.0), time(12), time(12, 15))[0]
    assert noon.sun_height_deg == pytest.approx(height, abs=0.05)
    assert (
        abs((noon.sun_azimuth_deg - azimuth + 180.0) % 360.0 - 180.0) < 3.0
    )  # solar noon is near


def test_it_ends_after_it_begins():
    with pytest.raises(Mistakes, match=r"it begins at 17:30: end later"):
        moments(date(2026, 10, 15), LONDON, (52.0, 0.0), time(17, 30), time(12))
    with pytest.raises(Mistakes, match=r"it begins at midnight: end later"):
        moments(date(2026, 10, 15), LONDON, (52.0, 0.0), None, time(0))


def test_no_zone_is_this_computers():
    here = by_the_clock(date(2026, 10, 15), time(12), None)
    assert here == datetime(2026, 10, 15, 12).astimezone()
    (first, _) = moments(date(2026, 6, 15), None, (0.0, 0.0), time(12), time(12, 15))
    assert first.when.hour == 12
