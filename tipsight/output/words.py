"""How each number is said to an angler: yards and metres, quarter inches, shot by name."""

import re
from collections.abc import Sequence

from tipsight.advice.answer import ShotLine
from tipsight.inputs.case import Band, Tip

YARD_M, INCH_MM = 0.9144, 25.4
MOST_MARGIN = 20.0
"""Margins above this say no more."""
WELL, JUST = 3.0, 2.0
"""Ride margin that rides well, and the least that rides at all (judgement)."""
_QUARTERS = ("", "¼", "½", "¾")
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_PLAIN = {
    "¼": " 1/4",
    "½": " 1/2",
    "¾": " 3/4",
    "×": "x",
    "–": "-",
    "—": "-",
    "−": "-",
    "°": " deg",
}


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
    """Return a length in inches to the nearest quarter.

    Parameters
    ----------
    length_mm : float
        Length [mm].

    Returns
    -------
    str
        Whole inches and quarters.

    Examples
    --------
    >>> inches(31), inches(25), inches(20), inches(2)
    ('1¼ in', '1 in', '¾ in', 'under ¼ in')
    """
    whole, quarter = divmod(round(4 * length_mm / INCH_MM), 4)
    if not whole and not quarter:
        return "under ¼ in"
    return f"{whole or ''}{_QUARTERS[quarter]} in"


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
    return f"{length_mm:.0f} mm, {inches(length_mm)}"


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
    'pen the top 10 mm (½ in) black and let 30 mm (1¼ in) show'
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
    >>> margin(3.14), margin(41.0)
    ('3.1', '20+')
    """
    return "20+" if ride_margin > MOST_MARGIN else f"{ride_margin:.1f}"


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


def seconds(duration_s: float) -> str:
    """Return a short time as one can feel it.

    Parameters
    ----------
    duration_s : float
        Time [s].

    Returns
    -------
    str
        To the half second, and to the quarter below one.

    Examples
    --------
    >>> seconds(0.1), seconds(0.55), seconds(1.1), seconds(2.4)
    ('about ¼ s', 'about ½ s', 'about 1 s', 'about 2½ s')
    """
    quarters = max(1, round(4 * duration_s)) if duration_s < 1 else 2 * round(2 * duration_s)
    whole, quarter = divmod(quarters, 4)
    return f"about {whole or ''}{_QUARTERS[quarter]} s"


def rate(per_min: float) -> str:
    """Return how often something happens.

    Parameters
    ----------
    per_min : float
        Times a minute [1/min].

    Returns
    -------
    str
        In words up to ten.

    Examples
    --------
    >>> rate(4.2), rate(0.66), rate(31.0), rate(0.001)
    ('four a minute', 'one in about 2 minutes', '31 a minute', 'hardly ever')
    """
    if per_min < 1 / 60:
        return "hardly ever"
    if per_min < 0.67:
        return f"one in about {1 / per_min:.0f} minutes"
    count = max(1, round(per_min))
    return f"{_NUMBERS[count] if count < len(_NUMBERS) else count} a minute"


def dips(ordinary_dip_s: float | None, dips_per_min: float) -> str:
    """Return what to take for the water's own doing, and what to strike at.

    Parameters
    ----------
    ordinary_dip_s : float or None
        Length that nearly all dips stay below [s]; None where the tip never goes under.
    dips_per_min : float
        How often it goes under [1/min].

    Returns
    -------
    str
        A piece of a sentence.

    Examples
    --------
    >>> dips(1.1, 4.2)
    'up to about 1 s, four a minute: strike at longer'
    >>> dips(None, 0.0)
    'hardly ever: strike at any'
    """
    often = rate(dips_per_min)
    if ordinary_dip_s is None or often == "hardly ever":
        return "hardly ever: strike at any"
    return f"up to {seconds(ordinary_dip_s)}, {often}: strike at longer"


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
    return " to ".join(f"{x:.0f}" if x >= 9.95 else f"{x:.1f}" for x in (low, high))


def goes(goes_at_m: float | None, level: float, wanted: float) -> str:
    """Return the distance at which a tip goes.

    Parameters
    ----------
    goes_at_m : float or None
        Distance beyond which the level stays below what is wanted [m]; None where there is none.
    level, wanted : float
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
    return "holds past 100 yd" if level >= wanted else "goes close in"


def paint(bands: Sequence[Band], showing_mm: float) -> str:
    """Return the paint of a tip from the top down, with the height of each block.

    Parameters
    ----------
    bands : sequence of Band
        From the top down.
    showing_mm : float
        Length out of the water [mm].

    Returns
    -------
    str
        One paint, or blocks one over the other.

    Examples
    --------
    >>> paint((Band("black", 0, 15), Band("fluorescent orange", 15, 40)), 30)
    'black 15 mm over fluorescent orange 15 mm'
    """
    shown = [band for band in bands if band.from_top_mm < showing_mm]
    if len(shown) < 2:
        return shown[0].paint if shown else "bare"
    return (
        " over ".join(
            f"{band.paint} {min(band.to_top_mm, showing_mm) - band.from_top_mm:.3g} mm"
            for band in shown[:-1]
        )
        + f" over {shown[-1].paint} {showing_mm - shown[-1].from_top_mm:.3g} mm"
    )


def stock(tip: Tip) -> str:
    """Return what a tip is cut from, with what it wears.

    Parameters
    ----------
    tip : Tip
        The tip.

    Returns
    -------
    str
        Diameter and kind.

    Examples
    --------
    >>> from tipsight.inputs.case import Stock
    >>> stock(Tip(Stock("thin tube", 5.0, 4.0), 30.0))
    '5 mm thin tube (4 mm bore)'
    """
    said = f"{tip.stock.diameter_mm:g} mm {tip.stock.kind}"
    if tip.stock.bore_mm:
        said += f" ({tip.stock.bore_mm:g} mm bore)"
    if tip.sleeve:
        said += " with a sleeve"
    if tip.light_stick != "none":
        said += f" with a {tip.light_stick} light stick"
    return said


def shot_list(lines: Sequence[ShotLine]) -> str:
    """Return a shot list by place.

    Parameters
    ----------
    lines : sequence of ShotLine
        In the order in which they are told.

    Returns
    -------
    str
        Each place with its shot.

    Examples
    --------
    >>> shot_list((ShotLine("BB", 4, "bulk"), ShotLine("No 8", 2, "dropper")))
    'bulk 4 BB; droppers 2 No 8'
    """
    places: dict[str, list[ShotLine]] = {}
    for line in lines:
        places.setdefault(line.where, []).append(line)
    return (
        "; ".join(
            f"{_many(where, sum(line.count for line in group))} "
            + ", ".join(
                line.name if line.count == 1 else f"{line.count} {line.name}" for line in group
            )
            for where, group in places.items()
        )
        or "no shot"
    )


def _many(where: str, count: int) -> str:
    return f"{where}s" if where == "dropper" and count > 1 else where


def plain(text: str) -> str:
    """Return ``text`` for a terminal that prints nothing but plain letters.

    Parameters
    ----------
    text : str
        Any text of ours.

    Returns
    -------
    str
        In ASCII, fractions spelled out.

    Examples
    --------
    >>> plain("31 mm, 1¼ in; ½ s")
    '31 mm, 1 1/4 in; 1/2 s'
    """
    for mark, spelled in _PLAIN.items():
        text = text.replace(mark, spelled)
    text = re.sub(r"(?<=[ (]) +(?=\d/\d)", "", text)
    return text.encode("ascii", "replace").decode("ascii")
