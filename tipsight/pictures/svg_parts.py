"""Pieces of drawings as SVG text, and a whole drawing for a page or to stand alone."""

from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape, quoteattr

from tipsight import tables

BARE = "#b8a888"
"""Screen colour of an unpainted stick."""
_REACHED = (
    "<style>a text{fill:none}a:hover text,a:focus text{fill:currentColor}a{outline:none}</style>"
)
"""Words of a point show when it is reached."""


@tables.derived
def swatches() -> dict[str, str]:
    """Return the screen colour of each paint as ``#rrggbb``; on a screen only, as paint differs.

    Examples
    --------
    >>> swatches()["black"].startswith("#")
    True
    """
    return {row["name"]: row["swatch"] for row in tables.rows("paints")}


@dataclass(frozen=True)
class Drawing:
    """What a drawing shows, in words and in pieces of SVG."""

    size_px: tuple[float, float]
    title: str
    desc: str
    lines: Sequence[str]
    """Pieces that have an outline and no filling but their own."""
    labels: Sequence[str]
    """Pieces that are filled and have no outline but their own; they lie above the others."""
    points: Sequence[tuple[int, str]] = ()
    """Pieces that can be reached, each with its row in a table beside the drawing."""

    @property
    def words(self) -> str:
        """What it is and what it shows."""
        return f"{self.title}: {self.desc}"

    def __html__(self) -> str:
        """Return it for a page, whose style sheet says how wide and in what letters."""
        points = [f'<a href="#p{row}">{piece}</a>' for row, piece in self.points]
        return self._svg("", "", "", points)

    def alone(self) -> str:
        """Return it with a size, letters and a title of its own; its points lead nowhere.

        Examples
        --------
        >>> "<title>A tip</title>" in Drawing((9, 8), "A tip", "3 mm", [], []).alone()
        True
        """
        wide, high = self.size_px
        size = f'xmlns="http://www.w3.org/2000/svg" width="{wide:.0f}" height="{high:.0f}" '
        letters = ' font-size="18" font-family="sans-serif"'
        said = f"<title>{escape(self.title)}</title><desc>{escape(self.desc)}</desc>"
        points = [f'<a tabindex="0">{piece}</a>' for _, piece in self.points]
        return self._svg(size, letters, said + (_REACHED if points else ""), points)

    def _svg(self, size: str, letters: str, first: str, points: Sequence[str]) -> str:
        wide, high = self.size_px
        reached = f'<g stroke-width="3">{"".join(points)}</g>' if points else ""
        return (
            f'<svg {size}viewBox="0 0 {wide:.0f} {high:.0f}" role="{"group" if points else "img"}" '
            f'aria-label={quoteattr(f"{self.title}. {self.desc}")} fill="none" '
            f'stroke="currentColor"{letters}>{first}{"".join(self.lines)}'
            f'<g fill="currentColor" stroke="none">{"".join(self.labels)}{reached}</g></svg>'
        )


def _number(x: float) -> str:
    """Return a length to the tenth of a pixel, without a nought that says nothing."""
    return f"{x:.1f}".removesuffix(".0")


def _more(attributes: str) -> str:
    return f" {attributes}" if attributes else ""


def rect(x: float, y: float, wide: float, high: float, fill: str, more: str = "") -> str:
    """Return a rectangle from its upper left corner [px]."""
    at = f'x="{_number(x)}" y="{_number(y)}" width="{_number(wide)}" height="{_number(high)}"'
    return f'<rect {at} fill="{fill}"{_more(more)}/>'


def path(d: str, more: str = "", fill: str = "") -> str:
    """Return a path of some steps, unfilled if no colour is told."""
    filled = f' fill="{fill}"' if fill else ""
    return f'<path d="{d}"{filled}{_more(more)}/>'


def line(x1: float, y1: float, x2: float, y2: float, width: float, more: str = "") -> str:
    """Return a straight line between two points [px]."""
    d = f"M{_number(x1)} {_number(y1)}L{_number(x2)} {_number(y2)}"
    thick = "" if width == 1 else f'stroke-width="{width:g}"'
    return path(d, f"{thick} {more}".strip())


def text(x: float, y: float, said: str, more: str = "") -> str:
    """Return words that begin at the foot of their first letter [px]."""
    return f'<text x="{_number(x)}" y="{_number(y)}"{_more(more)}>{escape(said)}</text>'
