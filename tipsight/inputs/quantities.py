"""Forgiving typing: what people type for lengths, speeds, temperatures and weights."""

import math
import re
import unicodedata
from decimal import Decimal
from functools import lru_cache

from tipsight.units import FOOT_M, INCH_M, YARD_M

LENGTHS_M = {  # m; mile: international, exact
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1.0),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), YARD_M),
    **dict.fromkeys(("ft", "foot", "feet", "'"), FOOT_M),
    **dict.fromkeys(("in", "ins", "inch", "inches", '"'), INCH_M),
    **dict.fromkeys(("mm", "millimetre", "millimetres"), 1e-3),
    **dict.fromkeys(("cm", "centimetre", "centimetres"), 1e-2),
    **dict.fromkeys(("km", "kilometre", "kilometres"), 1e3),
    **dict.fromkeys(("mile", "miles", "mi"), 1609.344),
}
SPEEDS_M_S = {  # m/s; mile and nautical mile an hour, exact
    **dict.fromkeys(("m/s", "mps", "m/sec", "ms-1"), 1.0),
    **dict.fromkeys(("mph", "mi/h", "miles an hour"), 0.44704),
    **dict.fromkeys(("km/h", "kmh", "kph"), 1 / 3.6),
    **dict.fromkeys(("kn", "kt", "kts", "knot", "knots"), 1852 / 3600),
    **dict.fromkeys(("ft/s", "fps"), FOOT_M),
}
MASSES_G = {  # g; avoirdupois ounce, exact
    **dict.fromkeys(("g", "gram", "grams", "gm", "gms"), 1.0),
    "mg": 1e-3,
    "kg": 1e3,
    **dict.fromkeys(("oz", "ounce", "ounces"), 28.349523125),
}
_VULGAR = {
    "¼": "1/4",
    "½": "1/2",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅙": "1/6",
    "⅚": "5/6",
    "⅕": "1/5",
}
_MARKS = str.maketrans(
    {
        "−": "-",
        "–": "-",
        "—": "-",
        "‐": "-",
        "‑": "-",
        "′": "'",
        "’": "'",
        "‘": "'",
        "″": '"',
        "”": '"',
        "“": '"',
        "º": "°",
        "×": "x",
        "⁄": "/",
    }
)
_NUMBER = r"[-+]?(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+(?:[.,]\d+)*|[.,]\d+)"
_QUANTITY = re.compile(rf"({_NUMBER})\s*(.*)", re.DOTALL)
_RANGE = re.compile(rf"({_NUMBER})\s*(?:mm|cm)?\s*(?:-|to)\s*({_NUMBER})\s*([a-z\"]*)")
_MIXED = re.compile(
    r"(?<![\d.,/-])([1-9]\d*)\s*(?:-|&|\band\b)\s*(1/2|[12]/3|[13]/4|[1-4]/5|[15]/6|[1357]/8)(?!\d)"
)
"""A whole with a hyphen or ``and`` before its fraction."""
_PACES = re.compile(rf"({_NUMBER})\s*(?:paces?|steps?|strides?)(?:(?: of| at|,) (.+?)(?: each)?)?")
SHORTEST_PACE_M, LONGEST_PACE_M = 0.4, 1.2
"""What a grown person steps on a bank (judgement)."""
_FEET_AND_INCHES = re.compile(
    rf"({_NUMBER})\s*(?:'|ft|foot|feet)\s*({_NUMBER})\s*(?:\"|''|in|ins|inch|inches)?"
)


class Unread(ValueError):  # noqa: N818 - reads as what happened
    """Something typed that cannot be read.

    Parameters
    ----------
    wrong : str
        What is wrong with it, empty where what is allowed says enough.
    says_all : bool
        Whether that tells what to say as well, so that what is allowed need not follow.
    """

    def __init__(self, wrong: str = "", *, says_all: bool = False) -> None:
        self.says_all = says_all
        super().__init__(wrong)


class NoUnit(Unread):
    """A number that wants a unit and has none."""

    def __init__(self, units: str = "") -> None:
        super().__init__(f"say the unit{', ' if units else ''}{units}", says_all=True)


@lru_cache(4096)  # a question asks it of the same few words some hundred times
def clean(text: str) -> str:
    """Return ``text`` in small letters with plain spaces, signs, quotes and fractions.

    >>> clean(" 1¼ in "), clean("1-1/4 in"), clean("−3,5 °C")
    ('1 1/4 in', '1 1/4 in', '-3,5 °c')
    """
    for mark, plain in _VULGAR.items():
        text = text.replace(mark, f" {plain}")
    text = unicodedata.normalize("NFKC", text.translate(_MARKS)).translate(_MARKS)
    return _MIXED.sub(r"\1 \2", " ".join(text.split()).casefold())


def number(text: str) -> float:
    """Read a number that stands alone: comma or point, a fraction, a whole and a fraction.

    >>> number("36,5"), number("1 1/4"), number("20,000")
    (36.5, 1.25, 20000.0)
    """
    text = clean(text)
    if not re.fullmatch(_NUMBER, text):
        raise Unread("a number is wanted")
    if "/" in text:
        sign = -1.0 if text.startswith("-") else 1.0
        whole, over, under = re.fullmatch(r"[-+]?(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)", text).groups()  # type: ignore[union-attr]
        if int(under) == 0:
            raise Unread("a number is wanted")
        return sign * (int(whole or 0) + int(over) / int(under))
    if re.fullmatch(r"[-+]?[1-9]\d{0,2}(,\d{3})+(\.\d+)?", text):
        text = text.replace(",", "")
    if text.count(".") + text.count(",") > 1:
        raise Unread("a number is wanted")
    return float(text.replace(",", "."))


def written(value: float) -> str:
    """Return a number in plain figures that read back as the very same number.

    >>> written(20.0), written(7.3), written(1e-7), written(float("inf"))
    ('20', '7.3', '0.0000001', 'nan')
    """
    return format(Decimal(repr(float(value))).normalize(), "f") if math.isfinite(value) else "nan"


def split_unit(text: str) -> tuple[float, str]:
    """Read a number, and the unit behind it in small letters, empty if there is none.

    >>> split_unit("6 MPH")
    (6.0, 'mph')
    """
    match = _QUANTITY.fullmatch(clean(text))
    if not match:
        raise Unread("a number is wanted")
    return number(match[1]), match[2].strip().rstrip(".")


def length_m(text: str) -> float:
    r"""Read a length [m], also in paces, of a yard where it is not told; a bare number is refused.

    >>> length_m("40yd"), round(length_m("5'6\""), 4), length_m("40 paces of 0.8 m")
    (36.576, 1.6764, 32.0)
    """
    plain = clean(text)
    if paces := _PACES.fullmatch(plain):
        pace = _in_unit(paces[2], LENGTHS_M, None) if paces[2] else YARD_M
        if not SHORTEST_PACE_M <= pace <= LONGEST_PACE_M:
            raise Unread("a pace is 16 to 47 inches, 0.4 to 1.2 m")
        return number(paces[1]) * pace
    if both := _FEET_AND_INCHES.fullmatch(plain):
        return number(both[1]) * FOOT_M + number(both[2]) * INCH_M
    return _in_unit(plain, LENGTHS_M, None)


def in_paces(text: str) -> bool:
    """Return whether a length was told in paces.

    >>> in_paces("40 paces"), in_paces("40 yd")
    (True, False)
    """
    return _PACES.fullmatch(clean(text)) is not None


def length_mm(text: str) -> float:
    """Read a length of tackle [mm]; a bare number is in millimetres, a bare fraction refused.

    >>> length_mm("7.3"), length_mm("1¼in")
    (7.3, 31.75)
    """
    plain = clean(text)
    if "/" in plain and re.fullmatch(_NUMBER, plain):
        raise NoUnit("mm or inches")  # who says three quarters thinks of an inch
    return _in_unit(plain, LENGTHS_M, 1e-3, per=1e-3)


def range_mm(text: str) -> tuple[float, float] | None:
    """Read two lengths of tackle [mm] with a hyphen or ``to`` between them, else None.

    >>> range_mm("0-15 mm"), range_mm("1 to 2 cm"), range_mm("15 mm")
    ((0.0, 15.0), (10.0, 20.0), None)
    """
    found = _RANGE.fullmatch(clean(text))
    if not found:
        return None
    unit = found[3] or ""
    return length_mm(found[1] + unit), length_mm(found[2] + unit)


def speed_m_s(text: str) -> float:
    """Read a speed [m/s], or a wind force B of the Beaufort scale, 0 to 12.

    v = 0.836 B^1.5 m/s (WMO, Commission for Maritime Meteorology 1970, Report 3).

    >>> round(speed_m_s("6 mph"), 3), round(speed_m_s("force 3"), 2)
    (2.682, 4.34)
    """
    plain = clean(text)
    if force := re.fullmatch(r"(?:force|f|bft|beaufort)\s*(\d+)", plain):
        if int(force[1]) > 12:
            raise Unread("the wind's force goes from 0 to 12")
        return 0.836 * float(int(force[1]) ** 1.5)
    return _in_unit(plain, SPEEDS_M_S, None)


def temperature_c(text: str) -> float:
    """Read a temperature [C]; a bare number is in degrees Celsius.

    >>> temperature_c("50F"), temperature_c("10,5")
    (10.0, 10.5)
    """
    value, unit = split_unit(text)
    unit = unit.replace("°", "").replace("degrees", "").replace("deg", "").strip()
    if unit in ("", "c", "celsius", "centigrade"):
        return value
    if unit in ("f", "fahrenheit"):
        return (value - 32) * 5 / 9
    raise Unread


def mass_g(text: str) -> float:
    """Read a weight [g]; a bare number is refused.

    >>> mass_g("2,4g")
    2.4
    """
    return _in_unit(clean(text), MASSES_G, None)


def _in_unit(plain: str, units: dict[str, float], bare: float | None, per: float = 1.0) -> float:
    value, unit = split_unit(plain)
    if not unit and bare is None and value != 0.0:  # nothing is nothing in any unit
        raise NoUnit
    if unit and unit not in units:
        raise Unread
    result = value * ((units[unit] if unit else float(bare or 0.0)) / per)
    if not math.isfinite(result):
        raise Unread("a number is wanted")
    return result
