"""A page of paper in millimetres, with type that is kept in the file so that every glyph prints."""

import io
from typing import Any, Literal

from tipsight.errors import Mistake, Mistakes
from tipsight.pictures import letters
from tipsight.units import INCH_MM

Paper = Literal["a4", "letter"]
PAPERS: dict[str, tuple[float, float]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Width and height [mm] (ISO 216; ANSI/ASME Y14.1 A)."""
WIDE_MM, TALL_MM = 190.0, 255.0
"""What a printer reaches on both."""
POINT_MM = INCH_MM / 72.0
HAIR_MM = 0.1


def _face(bold: bool) -> str:
    return letters.BOLD if bold else letters.PLAIN


def width_mm(said: str, points: float, bold: bool = False) -> float:
    """Return how wide words are printed [mm]."""
    return letters.width(said, points, _face(bold)) * POINT_MM


class Page:
    """One sheet; all places in millimetres from the lower left corner of the printed area.

    Raises Mistakes for a paper other than ``a4`` and ``letter``.
    """

    def __init__(self, paper: str, title: str) -> None:
        from reportlab.pdfgen.canvas import Canvas  # type: ignore[import-untyped]

        if paper not in PAPERS:
            raise Mistakes([Mistake("paper", paper, f"say {' or '.join(PAPERS)}", "a4")])
        letters.glyphs()
        wide, tall = PAPERS[paper]
        self._left, self._foot = (wide - WIDE_MM) / 2.0, (tall - TALL_MM) / 2.0
        self._out = io.BytesIO()
        size = (wide / POINT_MM, tall / POINT_MM)
        self._canvas: Any = Canvas(
            self._out, pagesize=size, invariant=1, lang="en-GB", initialFontName=letters.PLAIN
        )
        self._canvas.setTitle(title)
        self._canvas.setViewerPreference("PrintScaling", "None")
        self._canvas.setCreator("tipsight")

    def _at(self, x: float, y: float) -> tuple[float, float]:
        return (x + self._left) / POINT_MM, (y + self._foot) / POINT_MM

    def text(
        self,
        x: float,
        y: float,
        said: str,
        points: float = 8.0,
        bold: bool = False,
        align: Literal["left", "middle", "right"] = "left",
    ) -> None:
        """Print words with the foot of their letters at y."""
        said = letters.printable(said)
        back = {"left": 0.0, "middle": 0.5, "right": 1.0}[align] * width_mm(said, points, bold)
        self._canvas.setFillGray(0.0)
        self._canvas.setFont(_face(bold), points)
        self._canvas.drawString(*self._at(x - back, y), said)

    def lines(
        self,
        x: float,
        y: float,
        said: str,
        wide_mm: float,
        points: float = 8.0,
        bold: bool = False,
    ) -> float:
        """Print words in as many lines as they need; return where the next line stands."""
        for line in letters.broken(said, points, wide_mm / POINT_MM, _face(bold)):
            self.text(x, y, line, points, bold)
            y -= 1.3 * points * POINT_MM
        return y

    def line(
        self,
        x1: float,
        y1: float,
        x2: float,
        y2: float,
        wide_mm: float = 0.25,
        dash_mm: tuple[float, ...] = (),
    ) -> None:
        """Draw a straight line."""
        self._canvas.setStrokeGray(0.0)
        self._canvas.setLineWidth(wide_mm / POINT_MM)
        self._canvas.setDash([d / POINT_MM for d in dash_mm])
        self._canvas.line(*self._at(x1, y1), *self._at(x2, y2))

    def box(
        self,
        x: float,
        y: float,
        wide_mm: float,
        tall_mm: float,
        *,
        fill: str | float | None = None,
        edge_mm: float = 0.2,
    ) -> None:
        """Draw a rectangle from its lower left corner; its edge lies inside, so that its size is true."""
        if fill is not None:
            from reportlab.lib.colors import HexColor  # type: ignore[import-untyped]

            if isinstance(fill, str):
                self._canvas.setFillColor(HexColor(fill))
            else:
                self._canvas.setFillGray(fill)
            corner = self._at(x, y)
            self._canvas.rect(*corner, wide_mm / POINT_MM, tall_mm / POINT_MM, stroke=0, fill=1)
        if edge_mm:
            half = edge_mm / 2.0
            self._canvas.setStrokeGray(0.0)
            self._canvas.setDash([])
            self._canvas.setLineWidth(edge_mm / POINT_MM)
            self._canvas.rect(
                *self._at(x + half, y + half),
                max(wide_mm - edge_mm, 0.0) / POINT_MM,
                max(tall_mm - edge_mm, 0.0) / POINT_MM,
                stroke=1,
                fill=0,
            )

    def outline(
        self, points: list[tuple[float, float]], *, closed: bool = True, wide_mm: float = 0.2
    ) -> None:
        """Draw a line through points."""
        way = self._canvas.beginPath()
        way.moveTo(*self._at(*points[0]))
        for point in points[1:]:
            way.lineTo(*self._at(*point))
        if closed:
            way.close()
        self._canvas.setStrokeGray(0.0)
        self._canvas.setDash([])
        self._canvas.setLineWidth(wide_mm / POINT_MM)
        self._canvas.drawPath(way, stroke=1, fill=0)

    def ruler(self, x: float, y: float, long_mm: float, said: str) -> None:
        """Draw a line to be measured; its length is that between the middles of its end strokes."""
        self.line(x, y, x + long_mm, y, 0.25)
        for end in (x, x + long_mm):
            self.line(end, y - 2.5, end, y + 2.5, HAIR_MM)
        self.text(x + long_mm / 2.0, y + 1.0, said, 8.0, align="middle")

    def turn(self) -> None:
        """Go on with another page."""
        self._canvas.showPage()

    def bytes(self) -> bytes:
        """Return the file."""
        self._canvas.showPage()
        self._canvas.save()
        return self._out.getvalue()
