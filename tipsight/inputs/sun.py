"""Where the sun stands, from date, time and place."""

from datetime import datetime

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes


def position(when: datetime, latitude_deg: float, longitude_deg: float) -> tuple[float, float]:
    """Return the true height and the azimuth of the sun's centre.

    Parameters
    ----------
    when : datetime
        A moment with its time zone.
    latitude_deg : float
        North positive [deg], -90 to 90.
    longitude_deg : float
        East positive [deg], -180 to 180.

    Returns
    -------
    tuple of float
        Height above the horizon without refraction [deg], and azimuth from north through
        east [deg].

    Raises
    ------
    Mistakes
        If ``when`` has no time zone.
    OutOfRange
        For a place outside those ranges.

    Notes
    -----
    Meeus 1998, Astronomical Algorithms, chapter 25, as in astral; within 0.02 deg of the
    algorithm of Reda and Andreas 2004 for our years.

    Examples
    --------
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


def refraction_deg(sun_height_deg: ArrayLike) -> NDArray[np.float64]:
    """Return how much higher the sun seems than it stands, for show only.

    Parameters
    ----------
    sun_height_deg : array_like
        True height of the sun [deg], -1 to 90, any shape.

    Returns
    -------
    numpy.ndarray
        Refraction [deg].

    Raises
    ------
    OutOfRange
        Outside that range.

    Notes
    -----
    R = 1.02' / tan(h + 10.3 / (h + 5.11)), h in degrees, at 1010 hPa and 10 deg C (Saemundsson
    1986; Meeus 1998, equation 16.4). The sums of light take the true height.

    Examples
    --------
    >>> refraction_deg([0.0, 45.0]).round(3).tolist()
    [0.483, 0.017]
    """
    true = within("height of the sun", sun_height_deg, -1.0, 90.0, "deg")
    return 1.02 / 60.0 / np.tan(np.radians(true + 10.3 / (true + 5.11)))
