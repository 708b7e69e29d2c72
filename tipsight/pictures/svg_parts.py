"""Pieces of drawings as SVG text for a page: its style sheet tells the letters, 18 px high."""

from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from tipsight import tables

BARE = "#b8a888"
"""Screen colour of an unpainted stick."""


@tables.derived
def swatches() -> dict[str, str]:
    """Return the screen colour of each paint; on a screen only, as paint differs.

    Returns
    -------
    dict of str
        Colours as ``#rrggbb`` by paint.

    Examples
    --------
    >>> swatches()["black"].startswith("#")
    True
    """
    return {row["name"]: row["swatch"] for row in tables.rows("paints")}


def _number(x: float) -> str:
    """Return a length to the tenth of a pixel, without a nought that says nothing."""
    return f"{x:.1f}".removesuffix(".0")


def svg(
    size: tuple[float, float],
    title: str,
    desc: str,
    lines: Iterable[str],
    labels: Iterable[str],
    role: str = "img",
) -> str:
    """Return a whole drawing, to stand in a page whose style sheet says how wide and in what letters.

    Parameters
    ----------
    size : tuple of float
        Width and height [px].
    title, desc : str
        What it is, and what it shows, in words.
    lines : iterable of str
        Its pieces that have an outline and no filling but their own.
    labels : iterable of str
        Its pieces that are filled and have no outline but their own; they lie above the others.
    role : str
        ``img``, or ``group`` where pieces of it can be reached.

    Returns
    -------
    str
        SVG.
    """
    wide, high = (f"{length:.0f}" for length in size)
    return (
        f'<svg viewBox="0 0 {wide} {high}" role="{role}" aria-label={quoteattr(f"{title}. {desc}")} '
        f'fill="none" stroke="currentColor">{"".join(lines)}'
        f'<g fill="currentColor" stroke="none">{"".join(labels)}</g></svg>'
    )


def _more(attributes: str) -> str:
    return f" {attributes}" if attributes else ""


def rect(x: float, y: float, wide: float, high: float, fill: str, more: str = "") -> str:
    """Return a rectangle.

    Parameters
    ----------
    x, y, wide, high : float
        Its upper left corner and size [px].
    fill : str
        Its colour.
    more : str
        Further attributes.

    Returns
    -------
    str
        SVG.
    """
    at = f'x="{_number(x)}" y="{_number(y)}" width="{_number(wide)}" height="{_number(high)}"'
    return f'<rect {at} fill="{fill}"{_more(more)}/>'


def path(d: str, more: str = "", fill: str = "") -> str:
    """Return a path.

    Parameters
    ----------
    d : str
        Its steps.
    more : str
        Further attributes.
    fill : str
        Its colour; none if empty.

    Returns
    -------
    str
        SVG.
    """
    filled = f' fill="{fill}"' if fill else ""
    return f'<path d="{d}"{filled}{_more(more)}/>'


def line(x1: float, y1: float, x2: float, y2: float, width: float, more: str = "") -> str:
    """Return a straight line.

    Parameters
    ----------
    x1, y1, x2, y2 : float
        Its ends [px].
    width : float
        How thick it is [px].
    more : str
        Further attributes.

    Returns
    -------
    str
        SVG.
    """
    d = f"M{_number(x1)} {_number(y1)}L{_number(x2)} {_number(y2)}"
    thick = "" if width == 1 else f'stroke-width="{width:g}"'
    return path(d, f"{thick} {more}".strip())


def text(x: float, y: float, said: str, more: str = "") -> str:
    """Return words.

    Parameters
    ----------
    x, y : float
        Where their foot begins [px].
    said : str
        The words.
    more : str
        Further attributes.

    Returns
    -------
    str
        SVG.
    """
    return f'<text x="{_number(x)}" y="{_number(y)}"{_more(more)}>{escape(said)}</text>'
