"""Two cards for the lid of the box, 60 by 90 mm: the shotting, and what to show where."""

from collections.abc import Callable

from tipsight.advice.answer import Answer
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import plan, shot
from tipsight.output import measures, names
from tipsight.paper.cells import WATERS, YARDS, Cell, cell
from tipsight.paper.leaf import TALL_MM, Page, Paper, width_mm
from tipsight.pictures.subject import advised

WIDE_CARD_MM, TALL_CARD_MM = 60.0, 90.0
_X, _Y = 2.0, TALL_MM - TALL_CARD_MM - 12.0
"""Lower left corner of the card on its page."""
LINE_MM = 2.3
"""Between the lines of a cell."""
LEAD = "Lead: banned on many waters; wash your hands, bite none, lose none."
TRIM_MM = 4.0
"""A shot that moves the waterline by about so much is counted up and down."""


def _card(paper: Paper, title: str) -> Page:
    page = Page(paper, title)
    page.text(_X, TALL_MM - 6, "Print at 100 %, cut along the line; 60 by 90 mm.", 8)
    page.box(_X, _Y, WIDE_CARD_MM, TALL_CARD_MM, edge_mm=0.15)
    page.ruler(_X + 75, _Y + 20, 50.0, "50 mm")
    page.text(_X + 75, _Y + 12, "measure this first", 7.5)
    return page


def _fit(
    page: Page, x: float, y: float, said: str, points: float, wide_mm: float, bold: bool = False
) -> None:
    """Print a line, smaller where it would not fit."""
    points = min(points, points * wide_mm / max(width_mm(said, points, bold), 1e-6))
    page.text(x, y, said, points, bold)


def _apart(heights_mm: list[float], gap_mm: float, least_mm: float) -> list[float]:
    """Return labels' heights, falling, near those told but no two closer than a gap."""
    found: list[float] = []
    for height in heights_mm[::-1]:
        found.append(max(height, found[-1] + gap_mm if found else least_mm))
    return found[::-1]


def shotting(answer: Answer, paper: Paper = "a4") -> bytes:
    """Return the card that shows which shot goes where on the line, for the tip advised now.

    Parameters
    ----------
    answer : Answer
        The answer.
    paper : str
        ``a4`` or ``letter``.

    Returns
    -------
    bytes
        A PDF of one page.

    Raises
    ------
    Mistakes
        For any other paper.
    """
    case, (_, block) = answer.case, advised(answer)
    depth, load = case.stream.depth_m, block.load
    page = _card(paper, "Shotting card")
    left, top, wide = _X + 3.0, _Y + TALL_CARD_MM, WIDE_CARD_MM - 6.0
    _fit(
        page,
        left,
        top - 5.5,
        f"{case.float_.pattern}, {block.load.shot_metal} shot",
        8.5,
        wide,
        True,
    )
    _fit(
        page,
        left,
        top - 9.5,
        f"{names.stock(block.tip)}, {measures.ANGLER.length(block.tip.showing_mm)} showing",
        6.5,
        wide,
    )
    _fit(
        page,
        left,
        top - 13.2,
        f"takes {load.shot_g:.2f} g in air, {load.pull_g:.2f} g in water",
        6.5,
        wide,
    )
    line_top, line_foot, x = top - 19.0, _Y + 25.0, left + 7.0
    page.line(x, line_top, x, line_foot, 0.3)
    page.box(x - 1.2, line_top, 2.4, 3.0, edge_mm=0.25)
    page.outline(
        [
            (x, line_foot),
            (x, line_foot - 2.2),
            (x + 1.6, line_foot - 2.2),
            (x + 1.6, line_foot - 0.8),
        ],
        closed=False,
    )
    page.text(x + 4, line_foot - 2.4, f"hook; {depth:.2g} m deep", 6)
    places: dict[float, list[plan.Placed]] = {}
    hung = [(one.name, one.count, one.where) for one in load.shot]
    for one in plan.layout(hung, depth):
        places.setdefault(one.from_hook_m, []).append(one)
    gap = min(4.2, (line_top - line_foot) / (len(places) + 1))
    rows = _apart(
        [line_foot + (line_top - line_foot) * m / depth for m in places], gap, line_foot + 1.2
    )
    for (from_hook_m, group), label in zip(places.items(), rows, strict=True):
        y = line_foot + (line_top - line_foot) * from_hook_m / depth
        half = 0.9 if group[0].where == plan.BULK else 0.6
        page.box(x - half, y - half, 2 * half, 2 * half, fill=0.0, edge_mm=0.0)
        page.line(x + half, y, x + 3.5, label, 0.1)
        trim = group[0].where == plan.TRIM
        far = "under the float" if trim else f"{100 * from_hook_m:.0f} cm"
        listed = ", ".join(f"{one.count} {one.name}" for one in group)
        _fit(page, x + 4, label - 0.8, f"{far}: {listed}", 6.5, wide - 12.0)
    if not places:
        page.text(x + 4, (line_top + line_foot) / 2, "no shot that you have fits", 6.5)
    _more_and_fewer(page, left, answer)
    return page.bytes()


def steps(answer: Answer) -> tuple[str, list[tuple[int, float]]]:
    """Return a small shot by name, and what shows [mm] with two fewer to two more of it.

    It is the shot that moves the waterline by nearest to 4 mm; where it sinks, what shows is under 0.
    """
    case, (_, block) = answer.case, advised(answer)
    warm, tip, metal = case.stream.temperature_c, block.tip, case.box.shot_metal
    stiff = float(stiffness_g_per_mm(block.painted_mm, warm))
    share = float(shot.wet_share(metal, warm))
    had = [s for s in case.box.shot if not shot.is_olivette(s.name)] or list(shot.sizes(metal))
    one = min(had, key=lambda s: abs(s.mass_g * share / stiff - TRIM_MM))
    step_mm = one.mass_g * float(shot.wet_share(one.metal, warm)) / stiff
    return one.name, [(n, tip.showing_mm - n * step_mm) for n in (-2, -1, 0, 1, 2)]


def _more_and_fewer(page: Page, left: float, answer: Answer) -> None:
    name, rows = steps(answer)
    tip = advised(answer)[1].tip
    outside = tip.showing_mm + tip.wet_mm
    page.line(left, _Y + 20.5, left + WIDE_CARD_MM - 6, _Y + 20.5, 0.1)
    _fit(
        page,
        left,
        _Y + 17.0,
        f"{name}, so many more or fewer: mm showing",
        6.5,
        WIDE_CARD_MM - 6,
        True,
    )
    for column, (count, shows) in enumerate(rows):
        x = left + column * 11.0
        said = ("two fewer", "one fewer", "as it is", "one more", "two more")[column]
        text = "sinks" if shows <= 0 else "body out" if shows > outside else f"{shows:.0f} mm"
        page.text(x + 5, _Y + 12.5, said, 5, align="middle")
        page.text(x + 5, _Y + 8.5, text, 6.5, bold=not count, align="middle")
    page.text(left, _Y + 4.8, "counted from the list above", 5)
    if shot.is_lead(advised(answer)[1].load.shot_metal):
        _fit(page, left, _Y + 2.0, LEAD, 5, WIDE_CARD_MM - 6)


def bank(
    answer: Answer, paper: Paper = "a4", progress: Callable[[int, int], None] | None = None
) -> bytes:
    """Return the card that says what to show at each distance on each water.

    Parameters
    ----------
    answer : Answer
        An answer for this float; its question is asked again at every distance and water.
    paper : str
        ``a4`` or ``letter``.
    progress : callable, optional
        Told how many cells are done, and of how many.

    Returns
    -------
    bytes
        A PDF of one page.

    Raises
    ------
    Mistakes
        For any other paper.
    ValueError
        For an answer that was not given by `advise`, as it cannot be asked again.
    """
    question = Question(**answer.question)  # type: ignore[arg-type]  # it holds what was told
    if settle(question) != answer.case:
        raise ValueError("the answer does not hold the question that it answers")
    yards, behind = YARDS[::2], [w for w in WATERS if w != "sun lane"]
    found: dict[tuple[int, str], Cell] = {}
    for yard in yards:
        for name in behind:
            found[yard, name] = cell(question, yard, name)
            if progress:
                progress(len(found), len(yards) * len(behind))
    page = _card(paper, "Bank card")
    left, top, wide = _X + 3.0, _Y + TALL_CARD_MM, WIDE_CARD_MM - 6.0
    tip = answer.tip_in_hand.tip
    _fit(page, left, top - 5.5, f"{answer.case.float_.pattern}: what to show", 8.5, wide, True)
    _fit(
        page,
        left,
        top - 9.3,
        f"{names.stock(tip)}, {names.paint(tip.bands, tip.showing_mm)}",
        6,
        wide,
    )
    y, across = top - 14.0, (wide - 7.0) / len(behind)
    page.text(left, y, "yd", 6, bold=True)
    for column, name in enumerate(behind):
        page.text(left + 7 + column * across, y, name, 6, bold=True)
    tall = (y - _Y - 7.0) / len(yards)
    for row, yard in enumerate(yards):
        y = top - 16.0 - row * tall
        page.line(left, y + 0.6, left + wide, y + 0.6, 0.1)
        page.text(left, y - 3.2, f"{yard}", 7, bold=True)
        for column, name in enumerate(behind):
            one, x = found[yard, name], left + 7 + column * across
            # with an insert there is too much for one line
            apart = one.insert_mm is not None
            _fit(page, x, y - 2.8, one.length if apart else one.show, 6, across - 1, True)
            lines = [", ".join(one.aids)] if apart else []
            lines += [one.shot, one.grade]
            for number, line in enumerate(lines):
                _fit(page, x, y - 2.8 - LINE_MM * (number + 1), line, 5.2, across - 1)
    sky = answer.question.get("sky") or "bright overcast"
    looks = answer.question.get("looks") or "as told"
    _fit(page, left, _Y + 2.5, f"for {sky}; surface: {looks}; other days differ", 5.2, wide)
    return page.bytes()
