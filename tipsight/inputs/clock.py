"""Day, time, place and bearing as people type them."""

import re
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo
from zoneinfo import ZoneInfo

from tipsight.inputs.items import matchable
from tipsight.inputs.quantities import Unread, clean, split_unit

POINTS = [
    *("n", "nne", "ne", "ene", "e", "ese", "se", "sse"),
    *("s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw"),
]
_SHORT = {"north": "n", "south": "s", "east": "e", "west": "w"}
_MOMENT = re.compile(
    r"(\d{4}-\d{2}-\d{2})[t ]+(\d{1,2})[:.](\d{2})(?::\d{2}(?:\.\d+)?)?\s*([a-z_/+\-:\d ]*)"
)
_SPOT = re.compile(
    r"([-+]?\d+(?:\.\d+)?)\s*°?\s*([ns]?)[\s,;]+([-+]?\d+(?:\.\d+)?)\s*°?\s*([ew]?)"
)
_OFFSET = re.compile(r"(?:utc|gmt)?\s*([-+])(\d{1,2}):?([0-5]\d)?")


def moment(text: str) -> datetime:
    """Read a day, a time and its zone: UTC, an offset, a name of the zone database, or ``local``.

    >>> moment("2026-10-15 17:00 +01:00").isoformat()
    '2026-10-15T17:00:00+01:00'
    """
    found = _MOMENT.fullmatch(clean(text))
    if not found:
        raise Unread
    try:
        naive = datetime.fromisoformat(f"{found[1]} {int(found[2]):02d}:{found[3]}")
    except ValueError:
        raise Unread("there is no such day or time") from None
    zone = found[4].strip()
    if not zone:
        raise Unread(
            "say the zone: UTC, +01:00, Europe/London, or local for this computer", says_all=True
        )
    if zone == "local":
        return naive.astimezone()
    if zone in ("utc", "z", "gmt"):
        return naive.replace(tzinfo=UTC)
    if zone == "bst":
        return naive.replace(tzinfo=timezone(timedelta(hours=1)))
    if offset := _OFFSET.fullmatch(zone):
        shift = timedelta(hours=int(offset[2]), minutes=int(offset[3] or 0))
        if shift <= timedelta(hours=14):
            return naive.replace(tzinfo=timezone(-shift if offset[1] == "-" else shift))
    try:
        return naive.replace(tzinfo=ZoneInfo(text.split()[-1]))
    except (KeyError, ValueError, OSError):
        raise Unread("that zone is not known") from None


def day_and_zone(text: str) -> tuple[date, tzinfo | None]:
    """Read a day and the zone behind it; None is the zone of this computer.

    >>> day_and_zone("2026-10-15 utc")[0].isoformat()
    '2026-10-15'
    """
    day, _, zone = text.strip().partition(" ")
    plain = clean(zone)
    try:
        if plain in ("", "local"):
            return date.fromisoformat(day), None
        return date.fromisoformat(day), UTC if plain in ("utc", "gmt", "z") else ZoneInfo(zone.strip())
    except (KeyError, ValueError, OSError):
        raise Unread from None


def time_of_day(text: str) -> time:
    """Read a time of day.

    >>> time_of_day("7.30").isoformat()
    '07:30:00'
    """
    try:
        return datetime.strptime(text.strip().replace(".", ":"), "%H:%M").time()
    except ValueError:
        raise Unread from None


def spot(text: str) -> tuple[float, float]:
    """Read a place on earth: latitude, north positive, and longitude, east positive [deg].

    >>> spot("52.1 N 1.5 W"), spot("52.1, -1.5")
    ((52.1, -1.5), (52.1, -1.5))
    """
    found = _SPOT.fullmatch(clean(text))
    if not found:
        raise Unread
    north = float(found[1]) * (-1 if found[2] == "s" else 1)
    east = float(found[3]) * (-1 if found[4] == "w" else 1)
    if abs(north) > 90 or abs(east) > 180:
        raise Unread("latitude goes to 90 degrees and longitude to 180")
    return north, east


def angle_deg(text: str) -> float:
    """Read an angle [deg].

    >>> angle_deg("25"), angle_deg("−3,5°")
    (25.0, -3.5)
    """
    value, rest = split_unit(text)
    if rest not in ("", "°", "deg", "degree", "degrees"):
        raise Unread
    return value


def compass_deg(text: str) -> float:
    """Read one of sixteen points of the compass, or degrees from north, eastwards [deg].

    >>> compass_deg("NE"), compass_deg("south west"), compass_deg("310")
    (45.0, 225.0, 310.0)
    """
    plain = matchable(text)
    for word, letter in _SHORT.items():
        plain = plain.replace(word, letter)
    if (point := plain.replace(" ", "")) in POINTS:
        return 22.5 * POINTS.index(point)
    return angle_deg(text)
