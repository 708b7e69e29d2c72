"""The bench sheet: the tip and the float at true size, and all that is done to make it."""

from tipsight.advice.answer import Answer, Block
from tipsight.inputs.case import Tip, shown
from tipsight.load import hull, tips
from tipsight.output import measures, names
from tipsight.paper.leaf import TALL_MM, Page, Paper
from tipsight.paper.seat import Seat, seat
from tipsight.paper.sheet_words import column
from tipsight.pictures.subject import Work, made
from tipsight.pictures.svg_parts import swatches

_COLUMN_MM = 74.0
"""Where the words begin, right of the drawings."""
_FLOOR_MM = 20.0
"""Above the check lines."""
_TOP_MM = TALL_MM - 20.0
"""Where the drawings begin."""
UNPAINTED = "#ffffff"
_TITLES: dict[Work, str] = {
    "fit": "to fit at the bench",
    "repaint": "to repaint at the bench",
    "bank": "as it is to be at the bank",
}


def pdf(answer: Answer, paper: Paper = "a4") -> bytes:
    """Return the bench sheet: one page, one to one.

    Parameters
    ----------
    answer : Answer
        The answer; its tip for the bench is drawn, or else the one for the bank.
    paper : str
        ``a4`` or ``letter``; the printed part is the same and fits both.

    Returns
    -------
    bytes
        A PDF.

    Raises
    ------
    Mistakes
        For any other paper.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> pdf(advise(Question(behind=["dark"])))[:5]
    b'%PDF-'
    """
    case = answer.case
    work, block = made(answer)
    tip = block.tip
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    for points in (8.5, 8.0, 7.5, 7.0, 6.5, 6.0):
        page = Page(paper, f"Bench sheet: {names.stock(tip)}")
        foot_mm = column(page, _COLUMN_MM, _TOP_MM, points, answer, body)
        if foot_mm > _FLOOR_MM - 4.0:
            break
    how = seat(body, tip) if work == "fit" else None
    can = block.sound and not (how is not None and how.is_none)
    title = f"tip {_TITLES[work]}" if can else "no tip passes here"
    page.text(0, TALL_MM - 6, f"Bench sheet: {title}", 14, bold=True)
    seen = f"{measures.ANGLER.distance(case.place.range_m)}: {block.visibility.grade}"
    shows = f"{measures.ANGLER.length(tip.showing_mm)} showing"
    page.text(
        0, TALL_MM - 12, f"{case.float_.pattern}; {names.stock(tip)}, {shows}; at {seen}", 8.5
    )
    to_cut = work == "fit" and can
    _piece(page, 20.0, tip, "the piece to cut" if to_cut else "the tip")
    _float(page, 54.0, block, body)
    if to_cut and how:
        _let_in(page, how, tip)
    page.ruler(0, 6, 100.0, "100 mm")
    page.ruler(108, 6, 76.2, "3 in")
    said = "Print at 100 %, not fitted to the page; then measure these two lines before you cut."
    page.text(0, 0, said, 8, bold=True)
    return page.bytes()


def _edges(tip: Tip) -> list[tuple[float, str]]:
    """Return each edge of the cut piece below its top, with all that it is."""
    outside = tip.showing_mm + tip.wet_mm
    marks = [(0.0, "top")]
    above = shown(tip.bands, tip.showing_mm)[:-1]
    marks += [(band.to_top_mm, f"foot of {band.paint}") for band in above]
    marks += [(tip.showing_mm, "waterline"), (outside, "body")]
    marks.append((outside + tip.glued_mm, "end, glued in" if tip.glued_mm else "end"))
    found: dict[float, list[str]] = {}
    for at, said in marks:
        found.setdefault(round(at, 3), []).append(said)
    return [(at, ", ".join(said)) for at, said in found.items()]


def _piece(page: Page, x: float, tip: Tip, what: str) -> None:
    """Draw the whole tip, its edges marked for a pencil."""
    top, bare = _TOP_MM - 6.0, tip.stock.diameter_mm
    page.text(x, top + 3.0, f"{what}, 1:1", 7, align="middle")
    _paint(page, x, top, tip, bare)
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    page.box(x - bare / 2, top - whole, bare, whole, edge_mm=0.1)
    if tip.stock.bore_mm:
        for side in (-0.5, 0.5):
            at = x + side * tip.stock.bore_mm
            page.line(at, top - whole, at, top, 0.1, (1.0, 1.0))
    label = top + 3.0
    for at, said in _edges(tip):
        y = top - at
        label = min(y - 1.0, label - 3.2)
        page.line(x - bare / 2 - 4, y, x + bare / 2, y, 0.1)
        page.line(x - bare / 2 - 4, y, x - bare / 2 - 6, label + 1.0, 0.1)
        page.text(x - bare / 2 - 6.5, label, f"{at:.0f}", 7, bold=True, align="right")
        page.text(x + bare / 2 + 2, label, said, 6)


def _paint(page: Page, x: float, top: float, tip: Tip, wide_mm: float) -> None:
    """Draw the blocks of paint that show, about x, in their screen colours."""
    for band in shown(tip.bands, tip.showing_mm):
        tall, fill = band.to_top_mm - band.from_top_mm, swatches().get(band.paint, UNPAINTED)
        at = x - wide_mm / 2, top - band.to_top_mm
        page.box(*at, wide_mm, tall, fill=fill, edge_mm=0.1)


def _let_in(page: Page, how: Seat, tip: Tip) -> None:
    """Draw where the body is cut back, or the tip tapered, in broken lines."""
    outside, half = tip.showing_mm + tip.wet_mm, tip.stock.diameter_mm / 2
    root = _TOP_MM - 6.0 - outside
    if how.back_mm is not None:
        y = root - how.back_mm
        page.line(54.0 - half - 4, y, 54.0 + half + 4, y, 0.2, (1.0, 0.8))
        page.text(54.0 + half + 4.5, y - 1.0, "cut back", 6)
    elif how.peg_mm is not None:
        for side in (-1, 1):
            x, foot = 20.0 + side * how.peg_mm / 2, root - tip.glued_mm
            page.line(x, foot, x, root, 0.2, (1.0, 0.8))


def _float(page: Page, x: float, block: Block, body: hull.Hull) -> None:
    """Draw the float's outline with its tip, cut off where the page ends."""
    top, tip, painted = _TOP_MM - 6.0, block.tip, block.painted_mm
    page.text(x, top + 3.0, "the float, 1:1", 7, align="middle")
    _paint(page, x, top, tip, painted)
    outside = tip.showing_mm + tip.wet_mm
    wet = float(tips.painted_diameter_mm(tip.stock.diameter_mm, tip.coats))  # no sleeve there
    page.box(x - wet / 2, top - outside, wet, tip.wet_mm, edge_mm=0.1)
    water = top - tip.showing_mm
    for side in (-1, 1):
        page.line(
            x + side * (painted / 2 + 0.5),
            water,
            x + side * (painted / 2 + 8),
            water,
            0.2,
            (1.0, 0.8),
        )
    page.text(x + painted / 2 + 1, water + 0.8, "water", 6)
    root, z, r = top - outside, body.profile.z_mm, body.profile.r_mm
    room = root - _FLOOR_MM
    lowest = -float(z[-1])
    kept = [(float(b), root + float(a)) for a, b in zip(z, r, strict=True) if -a <= room]
    if lowest > room:
        kept.append((float(_radius_at(body, -room)), _FLOOR_MM))
    if lowest <= room:
        page.outline([*((x + b, y) for b, y in kept), *((x - b, y) for b, y in kept[::-1])])
    else:
        page.outline([(x + b, y) for b, y in kept], closed=False)
        page.outline([(x - b, y) for b, y in kept], closed=False)
        page.outline(
            [
                (x - 6, _FLOOR_MM - 0.6),
                (x - 2, _FLOOR_MM + 0.6),
                (x + 2, _FLOOR_MM - 0.6),
                (x + 6, _FLOOR_MM + 0.6),
            ],
            closed=False,
        )
        page.text(x, _FLOOR_MM - 4, f"goes on {lowest - room:.0f} mm", 6, align="middle")


def _radius_at(body: hull.Hull, z_mm: float) -> float:
    z, r = body.profile.z_mm, body.profile.r_mm
    i = next(i for i, at in enumerate(z) if at <= z_mm)
    if i == 0 or z[i] == z[i - 1]:
        return float(r[i])
    return float(r[i - 1] + (r[i] - r[i - 1]) * (z_mm - z[i - 1]) / (z[i] - z[i - 1]))
