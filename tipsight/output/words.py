"""How each number is said to an angler: yards and metres, quarter inches, margins, levels."""

import re

from tipsight.advice.limits import REFUSED, RIDES, tenths
from tipsight.units import INCH_MM
from tipsight.units import YARD_M as YARD_M

MOST_MARGIN = 20.0
"""Margins above this say no more."""
WELL, JUST = RIDES, REFUSED
"""Ride margin that rides well, and the least that rides at all (judgement)."""
QUARTERS = ("", "¼", "½", "¾")


def yards(range_m: float) -> str:
    """Return a distance in yards with metres beside it.

    Parameters
    ----------
    range_m : float
        Distance [m].

    Returns
    -------
    str
        Both, whole.

    Examples
    --------
    >>> yards(36.576)
    '40 yd (37 m)'
    """
    return f"{range_m / YARD_M:.0f} yd ({range_m:.0f} m)"


def inches(length_mm: float) -> str:
    """Return a length in inches to the nearest quarter, below an inch to the nearest eighth.

    Parameters
    ----------
    length_mm : float
        Length [mm].

    Returns
    -------
    str
        Whole inches and quarters, or eighths.

    Examples
    --------
    >>> inches(31), inches(25), inches(20), inches(9), inches(1)
    ('1¼ in', '1 in', '¾ in', '3/8 in', 'under 1/8 in')
    """
    eighths = round(8 * length_mm / INCH_MM)
    if not eighths:
        return "under 1/8 in"
    if eighths < 8 and eighths % 2:
        return f"{eighths}/8 in"
    whole, quarter = divmod(round(eighths / 2 if eighths < 8 else 4 * length_mm / INCH_MM), 4)
    return f"{whole or ''}{QUARTERS[quarter]} in"


def length(length_mm: float) -> str:
    """Return the length of a tip in whole millimetres and quarter inches.

    Parameters
    ----------
    length_mm : float
        Length [mm].

    Returns
    -------
    str
        Millimetres first.

    Examples
    --------
    >>> length(31.2)
    '31 mm, 1¼ in'
    """
    return f"{length_mm:.0f} mm, {inches(length_mm)}" if length_mm >= 0.5 else "0 mm"


def with_inches(words: str) -> str:
    """Return ``words`` with inches set behind each length of tip.

    Parameters
    ----------
    words : str
        A sentence that says how many millimetres are to show.

    Returns
    -------
    str
        The same, with inches.

    Examples
    --------
    >>> with_inches("pen the top 10 mm black and let 30 mm show")
    'pen the top 10 mm (3/8 in) black and let 30 mm (1¼ in) show'
    """
    return re.sub(
        r"(?<=top )(\d+(?:\.\d+)?) mm|(\d+(?:\.\d+)?) mm(?= show)",
        lambda found: f"{found[0]} ({inches(float(found[1] or found[2]))})",
        words,
    )


def grams(mass_g: float) -> str:
    """Return a mass in grams to the hundredth.

    Parameters
    ----------
    mass_g : float
        Mass, or force as the mass that would press so hard [g].

    Returns
    -------
    str
        With its unit.

    Examples
    --------
    >>> grams(0.144), grams(0.002)
    ('0.14 g', 'under 0.01 g')
    """
    return "under 0.01 g" if 0 < abs(mass_g) < 0.005 else f"{mass_g:.2f} g"


def margin(ride_margin: float) -> str:
    """Return a ride margin, those above twenty as ``20+``.

    Parameters
    ----------
    ride_margin : float
        Showing length over the rms of the ups and downs [-].

    Returns
    -------
    str
        With one decimal.

    Examples
    --------
    >>> margin(3.14), margin(1.98), margin(41.0)
    ('3.1', '1.9', '20+')
    """
    return "20+" if ride_margin > MOST_MARGIN else f"{tenths(ride_margin):.1f}"


def rides(ride_margin: float, upright: bool = True) -> str:
    """Return how a float keeps its head up.

    Parameters
    ----------
    ride_margin : float
        Showing length over the rms of the ups and downs [-].
    upright : bool
        Whether it stands at all.

    Returns
    -------
    str
        Well, just, or no.

    Examples
    --------
    >>> rides(4.0), rides(2.5), rides(1.0), rides(4.0, upright=False)
    ('rides well', 'just rides', 'does not ride this water', 'falls over')
    """
    if not upright:
        return "falls over"
    if ride_margin >= WELL:
        return "rides well"
    return "just rides" if ride_margin >= JUST else "does not ride this water"


def level(visibility_level: float) -> str:
    """Return a visibility level.

    Parameters
    ----------
    visibility_level : float
        The level [-].

    Returns
    -------
    str
        One decimal below ten, none above; never up to a grade that it falls short of.

    Examples
    --------
    >>> level(5.44), level(4.97), level(9.96), level(283.4)
    ('5.4', '4.9', '9.9', '283')
    """
    whole = visibility_level >= 10 - 1e-7
    return f"{visibility_level:.0f}" if whole else f"{tenths(visibility_level):.1f}"


def levels(low: float, high: float) -> str:
    """Return a range of visibility levels.

    Parameters
    ----------
    low, high : float
        The range [-].

    Returns
    -------
    str
        Two figures each at the most.

    Examples
    --------
    >>> levels(1.24, 13.6), levels(0.01, 0.02)
    ('1.2 to 14', 'under 0.1')
    """
    if high < 0.05:
        return "under 0.1"
    return " to ".join(f"{end:.0f}" if end >= 9.95 else f"{end:.1f}" for end in (low, high))


def goes(goes_at_m: float | None, visibility_level: float, wanted: float) -> str:
    """Return the distance at which a tip goes.

    Parameters
    ----------
    goes_at_m : float or None
        Distance beyond which the level stays below what is wanted [m]; None where there is none.
    visibility_level, wanted : float
        The level at the asked distance, and the one that is wanted [-].

    Returns
    -------
    str
        A piece of a sentence.

    Examples
    --------
    >>> goes(33.0, 4.0, 5.0), goes(None, 9.0, 5.0), goes(None, 1.0, 5.0)
    ('goes at about 36 yd', 'holds past 100 yd', 'goes close in')
    """
    if goes_at_m is not None:
        return f"goes at about {goes_at_m / YARD_M:.0f} yd"
    return "holds past 100 yd" if visibility_level >= wanted else "goes close in"
