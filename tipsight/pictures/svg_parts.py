"""Pieces of drawings as SVG text, with presentation attributes alone."""

from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from tipsight import tables

BARE = "#b8a888"
"""Screen colour of an unpainted stick."""
INK = 'stroke="currentColor"'


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


def svg(
    size: tuple[float, float], title: str, desc: str, parts: Iterable[str], role: str = "img"
) -> str:
    """Return a whole drawing.

    Parameters
    ----------
    size : tuple of float
        Width and height [px].
    title, desc : str
        What it is, and what it shows, in words.
    parts : iterable of str
        Its pieces.
    role : str
        ``img``, or ``group`` where pieces of it can be reached.

    Returns
    -------
    str
        SVG.
    """
    wide, high = (f"{length:.0f}" for length in size)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" width="{wide}" '
        f'height="{high}" role="{role}" aria-label={quoteattr(f"{title}. {desc}")} '
        f'font-size="18" font-family="sans-serif" fill="currentColor"><title>{escape(title)}</title>'
        f"<desc>{escape(desc)}</desc>{''.join(parts)}</svg>"
    )


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
    at = f'x="{x:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{high:.1f}"'
    return f'<rect {at} fill="{fill}" {more}/>'


def path(d: str, more: str = "", fill: str = "none") -> str:
    """Return a path.

    Parameters
    ----------
    d : str
        Its steps.
    more : str
        Further attributes.
    fill : str
        Its colour.

    Returns
    -------
    str
        SVG.
    """
    return f'<path d="{d}" fill="{fill}" {more}/>'


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
    d = f"M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}"
    return path(d, f'{INK} stroke-width="{width}" {more}')


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
    return f'<text x="{x:.1f}" y="{y:.1f}" {more}>{escape(said)}</text>'
