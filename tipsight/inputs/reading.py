"""Forgiving typing: what people type for lengths, speeds, temperatures and weights."""

import math
import re
import unicodedata
from decimal import Decimal

from tipsight.units import FOOT_M, INCH_M, YARD_M

LENGTHS_M = {
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1.0),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), YARD_M),
    **dict.fromkeys(("ft", "foot", "feet", "'"), FOOT_M),
    **dict.fromkeys(("in", "ins", "inch", "inches", '"'), INCH_M),
    **dict.fromkeys(("mm", "millimetre", "millimetres"), 1e-3),
    **dict.fromkeys(("cm", "centimetre", "centimetres"), 1e-2),
    **dict.fromkeys(("km", "kilometre", "kilometres"), 1e3),
    **dict.fromkeys(("mile", "miles", "mi"), 1609.344),
}
SPEEDS_M_S = {
    **dict.fromkeys(("m/s", "mps", "m/sec", "ms-1"), 1.0),
    **dict.fromkeys(("mph", "mi/h", "miles an hour"), 0.44704),
    **dict.fromkeys(("km/h", "kmh", "kph"), 1 / 3.6),
    **dict.fromkeys(("kn", "kt", "kts", "knot", "knots"), 1852 / 3600),
    **dict.fromkeys(("ft/s", "fps"), FOOT_M),
}
MASSES_G = {
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
_FEET_AND_INCHES = re.compile(
    rf"({_NUMBER})\s*(?:'|ft|foot|feet)\s*({_NUMBER})\s*(?:\"|''|in|ins|inch|inches)?"
)


class Unread(ValueError):  # noqa: N818 - reads as what happened
    """Something typed that cannot be read; its text is what to say instead, or empty."""


def clean(text: str) -> str:
    """Return ``text`` in small letters with plain spaces, signs, quotes and fractions.

    Parameters
    ----------
    text : str
        As typed.

    Returns
    -------
    str
        The same, plainer.

    Examples
    --------
    >>> clean(" 1¼ in ")
    '1 1/4 in'
    >>> clean("−3,5 °C")
    '-3,5 °c'
    """
    for mark, plain in _VULGAR.items():
        text = text.replace(mark, f" {plain}")
    text = unicodedata.normalize("NFKC", text.translate(_MARKS)).translate(_MARKS)
    return " ".join(text.split()).casefold()


def number(text: str) -> float:
    """Read a number: comma or point, a fraction, a whole and a fraction.

    Parameters
    ----------
    text : str
        The number alone.

    Returns
    -------
    float
        Its value.

    Raises
    ------
    Unread
        If it is not a plain finite number.

    Examples
    --------
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

    Parameters
    ----------
    value : float
        Any number.

    Returns
    -------
    str
        Without an exponent; what is no finite number is written so that it cannot be read.

    Examples
    --------
    >>> written(20.0), written(7.3), written(1e-7), written(float("inf"))
    ('20', '7.3', '0.0000001', 'nan')
    """
    return format(Decimal(repr(float(value))).normalize(), "f") if math.isfinite(value) else "nan"


def split_unit(text: str) -> tuple[float, str]:
    """Read a number and what follows it.

    Parameters
    ----------
    text : str
        A number and perhaps a unit.

    Returns
    -------
    tuple of float and str
        The number, and the unit in small letters, empty if there is none.

    Raises
    ------
    Unread
        If it does not begin with a number.

    Examples
    --------
    >>> split_unit("6 MPH")
    (6.0, 'mph')
    """
    match = _QUANTITY.fullmatch(clean(text))
    if not match:
        raise Unread("a number is wanted")
    return number(match[1]), match[2].strip().rstrip(".")


def length_m(text: str, bare: float | None = None) -> float:
    r"""Read a length in metres.

    Parameters
    ----------
    text : str
        Such as ``40yd``, ``36,5 m``, ``1¼in``, ``5'6"``.
    bare : float, optional
        Metres in the unit that a bare number is in; without it a bare number is refused. [m]

    Returns
    -------
    float
        The length. [m]

    Raises
    ------
    Unread
        If it cannot be read or its unit is missing.

    Examples
    --------
    >>> length_m("40yd"), round(length_m("5'6\""), 4), length_m("3", bare=1e-3)
    (36.576, 1.6764, 0.003)
    """
    plain = clean(text)
    if both := _FEET_AND_INCHES.fullmatch(plain):
        return number(both[1]) * FOOT_M + number(both[2]) * INCH_M
    return _in_unit(plain, LENGTHS_M, bare)


def length_mm(text: str) -> float:
    """Read a length of tackle in millimetres; a bare number is in millimetres.

    Parameters
    ----------
    text : str
        Such as ``3``, ``3 mm``, ``1 1/4"``.

    Returns
    -------
    float
        The length. [mm]

    Raises
    ------
    Unread
        If it cannot be read.

    Examples
    --------
    >>> length_mm("7.3"), length_mm("1¼in")
    (7.3, 31.75)
    """
    return _in_unit(clean(text), LENGTHS_M, 1e-3, per=1e-3)


def range_mm(text: str) -> tuple[float, float] | None:
    """Read two lengths of tackle with a hyphen or ``to`` between them.

    Parameters
    ----------
    text : str
        Such as ``0-15 mm``; a bare number is in millimetres.

    Returns
    -------
    tuple of float or None
        Both ends [mm]; None if it is not two lengths.

    Raises
    ------
    Unread
        If one of two cannot be read.

    Examples
    --------
    >>> range_mm("0-15 mm"), range_mm("1 to 2 cm"), range_mm("15 mm")
    ((0.0, 15.0), (10.0, 20.0), None)
    """
    found = _RANGE.fullmatch(clean(text))
    if not found:
        return None
    unit = found[3] or ""
    return length_mm(found[1] + unit), length_mm(found[2] + unit)


def speed_m_s(text: str) -> float:
    """Read a speed, or a wind force of the Beaufort scale.

    Parameters
    ----------
    text : str
        Such as ``6 mph``, ``0,6 m/s``, ``force 3``.

    Returns
    -------
    float
        The speed. [m/s]

    Raises
    ------
    Unread
        If it cannot be read or its unit is missing.

    Notes
    -----
    v = 0.836 B^1.5, the Beaufort scale's own formula, B 0 to 12 (WMO, Commission for Maritime
    Meteorology 1970, Report 3).

    Examples
    --------
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
    """Read a temperature; a bare number is in degrees Celsius.

    Parameters
    ----------
    text : str
        Such as ``10``, ``10 °C``, ``50F``.

    Returns
    -------
    float
        The temperature. [C]

    Raises
    ------
    Unread
        If it cannot be read.

    Examples
    --------
    >>> temperature_c("50F"), temperature_c("10,5")
    (10.0, 10.5)
    """
    value, unit = split_unit(text)
    unit = unit.replace("°", "").replace("degrees", "").replace("deg", "").strip()
    if unit in ("", "c", "celsius", "centigrade"):
        return value
    if unit in ("f", "fahrenheit"):
        return (value - 32) * 5 / 9
    raise Unread("")


def mass_g(text: str) -> float:
    """Read a weight in grams.

    Parameters
    ----------
    text : str
        Such as ``2.4 g``, ``1/4 oz``.

    Returns
    -------
    float
        The mass. [g]

    Raises
    ------
    Unread
        If it cannot be read or its unit is missing.

    Examples
    --------
    >>> mass_g("2,4g")
    2.4
    """
    return _in_unit(clean(text), MASSES_G, None)


def _in_unit(plain: str, units: dict[str, float], bare: float | None, per: float = 1.0) -> float:
    value, unit = split_unit(plain)
    if not unit and bare is None and value != 0.0:
        raise Unread("say the unit")
    if unit and unit not in units:
        raise Unread("")
    result = value * ((units[unit] if unit else float(bare or 0.0)) / per)
    if not math.isfinite(result):
        raise Unread("a number is wanted")
    return result
