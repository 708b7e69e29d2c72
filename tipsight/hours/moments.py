"""The quarters of an hour of one day, by the clock of a zone, and where the sun stands in each."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.settle_swim import LAST_DUSK_DEG
from tipsight.inputs.sun import position

QUARTER = timedelta(minutes=15)


@dataclass(frozen=True)
class Moment:
    """A time of the day, with the sun's true height and its azimuth from north through east."""

    when: datetime
    sun_height_deg: float
    sun_azimuth_deg: float


def by_the_clock(day: date, at: time, zone: tzinfo | None) -> datetime:
    """Return a time of a day in a zone, None being that of this computer's clock."""
    naive = datetime.combine(day, at)
    return naive.astimezone() if zone is None else naive.replace(tzinfo=zone)


def moments(
    day: date,
    zone: tzinfo | None,
    place: tuple[float, float],
    start: time | None = None,
    end: time | None = None,
) -> tuple[Moment, ...]:
    """Return each quarter of an hour of a day, from the first light to the last of dusk.

    Where the clocks change the day has 23 or 25 hours; those in which the sun stands lower than
    the sums of light go, 12 deg below level, are left out, so that a polar night has none.

    Parameters
    ----------
    day : date
        By the clock of the zone.
    zone : tzinfo, optional
        That of this computer's clock if None.
    place : tuple of float
        Latitude and longitude, north and east positive [deg].
    start, end : time, optional
        By the same clock; the whole day if not told.

    Raises
    ------
    Mistakes
        If it ends before it begins.

    Examples
    --------
    >>> found = moments(date(2026, 6, 21), UTC, (52.0, 0.0), time(11), time(12))
    >>> len(found), round(found[-1].sun_height_deg)
    (5, 61)
    """
    first = by_the_clock(day, start or time(0), zone)
    last = by_the_clock(day, end, zone) if end else by_the_clock(day + timedelta(1), time(0), zone)
    if last <= first:
        said = f"{start:%H:%M}" if start else "midnight"
        raise Mistakes(
            [Mistake("--to", f"{end:%H:%M}", f"it begins at {said}: end later", "17:30")]
        )
    found, now = [], first.astimezone(UTC)
    while now <= last.astimezone(UTC):
        height, azimuth = position(now, *place)
        if height >= LAST_DUSK_DEG:
            here = now.astimezone() if zone is None else now.astimezone(zone)
            found.append(Moment(here, float(height), float(azimuth)))
        now += QUARTER
    return tuple(found)
