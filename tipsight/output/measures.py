"""How each number is said to an angler: yards and metres, quarter inches, margins, levels, times."""

import math
from dataclasses import dataclass
from typing import Literal

from tipsight.advice.answer import Handling
from tipsight.advice.limits import RIDES, RIDES_WELL
from tipsight.units import FOOT_M, INCH_MM, YARD_M

MOST_MARGIN = 20.0
"""Ride margins above this say no more."""
QUARTERS = ("", "¼", "½", "¾")
TIMES = {1: "once", 2: "twice"}
SHARES = (
    *(
        (0.0, "hardly any"),
        (0.1, "a tenth"),
        (0.2, "a fifth"),
        (0.25, "a quarter"),
        (1 / 3, "a third"),
    ),
    *((0.4, "two fifths"), (0.5, "half"), (0.6, "three fifths"), (2 / 3, "two thirds")),
    *((0.75, "three quarters"), (0.9, "nearly all"), (1.0, "all")),
)
NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True)
class Reader:
    """In which units a reader wants to be told.

    Examples
    --------
    >>> Reader().far(36.576), Reader("m").far(36.576), Reader("m", inches=False).length(31.2)
    ('40 yd', '37 m', '31 mm')
    """

    distances: Literal["yd", "m"] = "yd"
    inches: bool = True
    """Whether lengths of tip stand in inches beside the millimetres."""

    def far(self, range_m: float, whole: bool = True) -> str:
        """Return a distance along the water in the reader's unit, whole or cut to what is below."""
        per = YARD_M if self.distances == "yd" else 1.0
        count = range_m / per
        return f"{count if whole else math.floor(count + 1e-6):.0f} {self.distances}"

    def high(self, height_m: float) -> str:
        """Return a height in feet or metres.

        Examples
        --------
        >>> Reader().high(2.5), Reader("m").high(2.5)
        ('8 ft', '2.5 m')
        """
        return f"{height_m / FOOT_M:.0f} ft" if self.distances == "yd" else f"{height_m:.1f} m"

    def distance(self, range_m: float) -> str:
        """Return a distance in both units where it is told in yards.

        Examples
        --------
        >>> Reader().distance(36.576), Reader("m").distance(36.576)
        ('40 yd (37 m)', '37 m')
        """
        both = self.distances == "yd"
        return f"{self.far(range_m)} ({range_m:.0f} m)" if both else self.far(range_m)

    def length(self, length_mm: float) -> str:
        """Return the length of a tip in whole millimetres and quarter inches.

        Examples
        --------
        >>> Reader().length(31.2), Reader().length(0.2)
        ('31 mm, 1¼ in', '0 mm')
        """
        beside = self.inches and length_mm >= 0.5
        return f"{length_mm:.0f} mm" + (f", {inches(length_mm)}" if beside else "")

    def showing(self, length_mm: float) -> str:
        """Return what is to show, its inches in brackets.

        Examples
        --------
        >>> Reader().showing(30.0), Reader("m", inches=False).showing(30.0)
        ('30 mm (1¼ in)', '30 mm')
        """
        return f"{length_mm:g} mm" + (f" ({inches(length_mm)})" if self.inches else "")

    def goes(self, goes_at_m: float | None, visibility_level: float, wanted: float) -> str:
        """Return the distance at which a tip goes; None where there is none within the search.

        Examples
        --------
        >>> Reader().goes(33.0, 4.0, 5.0), Reader().goes(None, 1.0, 5.0)
        ('goes at about 36 yd', 'goes close in')
        """
        if goes_at_m is not None:
            return f"goes at about {self.far(goes_at_m)}"
        return f"holds past {self.far(91.44)}" if visibility_level >= wanted else "goes close in"


ANGLER = Reader()
"""Yards, with metres beside the asked distance, and inches."""


def inches(length_mm: float) -> str:
    """Return a length in inches to the nearest quarter, below an inch to the nearest eighth.

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


def grams(mass_g: float) -> str:
    """Return a mass, or a force as the mass that would press so hard, to the hundredth.

    Examples
    --------
    >>> grams(0.144), grams(0.002)
    ('0.14 g', 'under 0.01 g')
    """
    return "under 0.01 g" if 0 < abs(mass_g) < 0.005 else f"{mass_g:.2f} g"


def tenths(value: float) -> float:
    """Return a number to the tenth below, so that none is said to reach what it falls short of.

    Examples
    --------
    >>> tenths(4.97), tenths(5.0)
    (4.9, 5.0)
    """
    return math.floor(10 * value + 1e-6) / 10


def margin(ride_margin: float) -> str:
    """Return a ride margin, those above twenty as ``20+``.

    Examples
    --------
    >>> margin(3.14), margin(1.98), margin(41.0)
    ('3.1', '1.9', '20+')
    """
    return "20+" if ride_margin > MOST_MARGIN else f"{tenths(ride_margin):.1f}"


def margins(handled: Handling) -> str:
    """Return a ride margin, and its likely range where the water's boils leave one."""
    ends = [margin(one) for one in (handled.ride_margin_low, handled.ride_margin_high)]
    said = margin(handled.ride_margin)
    return said if ends[0] == ends[1] else f"{said}, likely {' to '.join(ends)}"


def rides(ride_margin: float, upright: bool = True) -> str:
    """Return how a float keeps its head up: well, just, or no.

    Examples
    --------
    >>> rides(4.0), rides(2.5), rides(1.0), rides(4.0, upright=False)
    ('rides well', 'just rides', 'does not ride this water', 'falls over')
    """
    if not upright:
        return "falls over"
    if ride_margin >= RIDES_WELL:
        return "rides well"
    return "just rides" if ride_margin >= RIDES else "does not ride this water"


def rides_short(ride_margin: float) -> str:
    """Return how a float rides, short enough for a column."""
    if ride_margin >= RIDES_WELL:
        return "well"
    return "just" if ride_margin >= RIDES else "no"


def level(visibility_level: float) -> str:
    """Return a visibility level, one decimal below ten; never up to a grade it falls short of.

    Examples
    --------
    >>> level(5.44), level(4.97), level(9.96), level(283.4)
    ('5.4', '4.9', '9.9', '283')
    """
    whole = visibility_level >= 10 - 1e-7
    return f"{visibility_level:.0f}" if whole else f"{tenths(visibility_level):.1f}"


def levels(low: float, high: float) -> str:
    """Return a range of visibility levels, two figures each at the most.

    Examples
    --------
    >>> levels(1.24, 13.6), levels(0.01, 0.02)
    ('1.2 to 14', 'under 0.1')
    """
    if high < 0.05:
        return "under 0.1"
    return " to ".join(f"{end:.0f}" if end >= 9.95 else f"{end:.1f}" for end in (low, high))


def figures(value: float) -> str:
    """Return a number to two figures, whole from a hundred.

    Examples
    --------
    >>> figures(0.0513), figures(283.4)
    ('0.051', '283')
    """
    return f"{value:.2g}" if value < 100 else f"{value:.0f}"


def seconds(duration_s: float) -> str:
    """Return a short time as one can feel it: to the half second, to the quarter below one.

    Examples
    --------
    >>> seconds(0.1), seconds(0.55), seconds(1.1), seconds(2.4)
    ('about ¼ s', 'about ½ s', 'about 1 s', 'about 2½ s')
    """
    quarters = max(1, round(4 * duration_s)) if duration_s < 1 else 2 * round(2 * duration_s)
    whole, quarter = divmod(quarters, 4)
    return f"about {whole or ''}{QUARTERS[quarter]} s"


def rate(per_min: float) -> str:
    """Return how often something happens, in words up to ten.

    Examples
    --------
    >>> rate(4.2), rate(0.66), rate(31.0), rate(0.001)
    ('four times a minute', 'once in about 2 minutes', '31 times a minute', 'hardly ever')
    """
    if per_min < 1 / 60:
        return "hardly ever"
    if per_min < 0.67:
        return f"once in about {1 / per_min:.0f} minutes"
    count = max(1, round(per_min))
    return f"{TIMES.get(count, f'{number(count)} times')} a minute"


def number(count: int) -> str:
    """Return a count, in words up to ten.

    Examples
    --------
    >>> number(4), number(12)
    ('four', '12')
    """
    return NUMBERS[count] if count < len(NUMBERS) else f"{count}"


def dips(ordinary_dip_s: float | None, dips_per_min: float, sound: bool = True) -> str:
    """Return what the water does by itself, and what to strike at.

    ``ordinary_dip_s`` is what nearly all dips stay below, None where the tip never goes under; a
    float that is not ``sound`` does not ride, and shows no bite that could be told.

    Examples
    --------
    >>> dips(1.1, 4.2)
    'it goes under by itself four times a minute, each under about 1 s: strike when it stays down'
    >>> dips(6.0, 17.0, sound=False)
    'it goes under by itself 17 times a minute: too often to tell a bite by'
    >>> dips(None, 0.0)
    'hardly dips: strike at any'
    """
    if ordinary_dip_s is None or dips_per_min < 1 / 60:
        return "hardly dips: strike at any"
    often = f"it goes under by itself {rate(dips_per_min)}"
    if not sound:
        return f"{often}: too often to tell a bite by"
    return f"{often}, each under {seconds(ordinary_dip_s)}: strike when it stays down"


def share(part: float) -> str:
    """Return a share in words, to the nearest of the usual ones.

    Examples
    --------
    >>> share(0.48), share(0.31), share(0.9), share(0.04)
    ('half', 'a third', 'nearly all', 'hardly any')
    """
    return min(SHARES, key=lambda one: abs(one[0] - part))[1]


def listed(words: list[str], last: str = "and") -> str:
    """Return words as a list in a sentence.

    Examples
    --------
    >>> listed(["dark", "bright", "broken"]), listed(["dark"])
    ('dark, bright and broken', 'dark')
    """
    return f" {last} ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def sentence(words: str) -> str:
    """Return words begun with a capital and ended with a stop.

    Examples
    --------
    >>> sentence("leave it as it is")
    'Leave it as it is.'
    """
    plain = words.strip().rstrip(".")
    return f"{plain[:1].upper()}{plain[1:]}."
