"""Where the sun stands, from date, time and place."""

from datetime import datetime

from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes


def position(when: datetime, latitude_deg: float, longitude_deg: float) -> tuple[float, float]:
    """Return the sun's true height and its azimuth from north through east [deg].

    Meeus 1998, Astronomical Algorithms, chapter 25, as in astral; within 0.02 deg of the algorithm
    of Reda and Andreas 2004 for our years, but nearer to a pole than 0.2 deg as if at 89.8. Height is
    without refraction; north and east are positive, to 90 and 180 deg.

    >>> from datetime import UTC
    >>> height, azimuth = position(datetime(2026, 6, 21, 12, tzinfo=UTC), 51.5, 0.0)
    >>> round(height, 1), round(azimuth)
    (61.9, 179)
    """
    if when.utcoffset() is None:
        raise Mistakes(
            [Mistake("when", str(when), "say the time zone too", "2026-10-15 17:00 +01:00")]
        )
    latitude = within("latitude", latitude_deg, -90.0, 90.0, "deg").item()
    longitude = within("longitude", longitude_deg, -180.0, 180.0, "deg").item()
    from astral import Observer
    from astral.sun import azimuth, elevation

    place = Observer(latitude, longitude, 0.0)
    return elevation(place, when, with_refraction=False), azimuth(place, when)
