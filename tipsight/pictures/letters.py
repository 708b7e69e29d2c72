"""The two typefaces of papers and pictures, how wide they print, and where a line of them breaks."""

import io
from functools import cache
from importlib import resources
from typing import cast

from tipsight.output.plain import plain

PLAIN, BOLD = "Vera", "VeraBd"
"""Bitstream Vera, which comes with reportlab and may be put into a file."""


def file(name: str) -> io.BytesIO:
    """Return the file of a typeface."""
    folder = resources.files("reportlab").joinpath("fonts")
    return io.BytesIO(folder.joinpath(f"{name}.ttf").read_bytes())


@cache
def glyphs() -> frozenset[int]:
    """Return the letters that the typefaces hold, which makes both known to reportlab."""
    from reportlab.pdfbase import pdfmetrics, ttfonts  # type: ignore[import-untyped]

    for name in (PLAIN, BOLD):
        pdfmetrics.registerFont(ttfonts.TTFont(name, file(name)))
    return frozenset(pdfmetrics.getFont(PLAIN).face.charToGlyph)


def printable(said: str) -> str:
    """Return words with a plain letter, or a question mark, where the typeface has none.

    Examples
    --------
    >>> printable("½ in, \u2264 5 mm, \u540d")
    '½ in, \u2264 5 mm, ?'
    """
    held = glyphs()
    return "".join(
        letter if ord(letter) in held else plain(letter).encode("ascii", "replace").decode()
        for letter in said
    )


def width(said: str, size: float, name: str = PLAIN) -> float:
    """Return how wide words are printed, in the unit of the type's size.

    Examples
    --------
    >>> width("mm", 10.0) > width("il", 10.0)
    True
    """
    from reportlab.pdfbase.pdfmetrics import stringWidth  # type: ignore[import-untyped]

    return float(stringWidth(printable(said), name, size))


def broken(said: str, size: float, wide: float, name: str = PLAIN) -> list[str]:
    """Return words broken into lines no wider than told, in the unit of the type's size.

    Examples
    --------
    >>> broken("let 30 mm show", 10.0, 57.0)
    ['let 30 mm', 'show']
    """
    from reportlab.lib.utils import simpleSplit  # type: ignore[import-untyped]

    return cast(list[str], simpleSplit(printable(said), name, size, wide))
