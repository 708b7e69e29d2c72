"""Where the sun stands, against almanacs: the whole earth, June and December, both hemispheres."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from tipsight.inputs import sun

J2000 = datetime(2000, 1, 1, 12, tzinfo=UTC)
PLACES = [
    (latitude, longitude)
    for latitude in (-68.0, -37.0, -1.0, 23.0, 52.0, 70.0)
    for longitude in (-120.0, 0.0, 145.0)
]


def almanac(when: datetime, latitude_deg: float, longitude_deg: float) -> tuple[float, float]:
    """Return height and azimuth by the low-precision formulas of the Astronomical Almanac, page C5.

    From memory; good to 0.01 deg from 1950 to 2050. Sidereal time as in its section B.
    """
    n = (when - J2000).total_seconds() / 86400
    anomaly = np.radians((357.528 + 0.9856003 * n) % 360)
    along = np.radians(280.460 + 0.9856474 * n + 1.915 * np.sin(anomaly) + 0.020 * np.sin(2 * anomaly))
    tilt = np.radians(23.439 - 4e-7 * n)
    right = np.arctan2(np.cos(tilt) * np.sin(along), np.cos(along))
    up = np.arcsin(np.sin(tilt) * np.sin(along))
    sidereal_h = 18.697374558 + 24.06570982441908 * n
    hour = np.radians(15 * sidereal_h + longitude_deg) - right
    north = np.radians(latitude_deg)
    high = np.arcsin(np.sin(north) * np.sin(up) + np.cos(north) * np.cos(up) * np.cos(hour))
    from_south = np.arctan2(
        np.sin(hour), np.cos(hour) * np.sin(north) - np.tan(up) * np.cos(north)
    )
    return float(np.degrees(high)), float(np.degrees(from_south) + 180) % 360


@pytest.mark.parametrize(("latitude", "longitude"), PLACES)
def test_sun_by_the_almanacs_own_formulas(latitude: float, longitude: float) -> None:
    for month in (3, 6, 10, 12):
        start = datetime(2026, month, 21, tzinfo=UTC)
        for hour in range(0, 24, 3):
            when = start + timedelta(hours=hour)
            height, azimuth = sun.position(when, latitude, longitude)
            high, round_ = almanac(when, latitude, longitude)
            assert height == pytest.approx(high, abs=0.03)
            off = abs((azimuth - round_ + 180) % 360 - 180) * np.cos(np.radians(high))
            assert off < 0.03  # on the sky: near the zenith an azimuth turns fast


def test_sun_of_meeus_own_example() -> None:
    """Meeus 1998, example 25.a (from memory): 13 October 1992, 0 h TD, declination -7.78507 deg.

    So high it stands over the pole, and a degree from it on the mean of all sides; TD was 59 s before UT.
    """
    when = datetime(1992, 10, 13, tzinfo=UTC) - timedelta(seconds=59)
    each = [sun.position(when, 89.0, longitude)[0] for longitude in (-90.0, 0.0, 90.0, 180.0)]
    assert np.mean(each) == pytest.approx(-7.78507, abs=0.01)


def test_sun_rises_due_east_at_the_equinox() -> None:
    """Common geometry: over the equator it then goes up straight from the east to the zenith."""
    for hour, height, azimuth in ((7, 15.0, 90.0), (9, 45.0, 90.0), (15, 45.0, 270.0)):
        when = datetime(2026, 3, 20, hour, tzinfo=UTC) + timedelta(minutes=7.5)  # equation of time
        found = sun.position(when, 0.0, 0.0)
        assert found == pytest.approx((height, azimuth), abs=0.3)
