"""Cards for the lid of the box, 90 by 120 mm and four on a page: the shotting, and what to show where."""

from collections.abc import Callable, Sequence

from tipsight.advice.advise import examine
from tipsight.advice.answer import Answer, Block
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Case
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import plan, shot
from tipsight.output import measures, names
from tipsight.paper.cells import WATERS, YARDS, Cell, column
from tipsight.paper.leaf import POINT_MM, TALL_MM, Page, Paper
from tipsight.pictures.subject import advised

WIDE_CARD_MM, TALL_CARD_MM = 90.0, 120.0
HEAD_MM = 12.0
"""Of the page above its cards."""
ACROSS_MM, DOWN_MM = 4.0, 2.0
"""Between two cards."""
PLACES = tuple(
    (
        2.0 + i * (WIDE_CARD_MM + ACROSS_MM),
        TALL_MM - HEAD_MM - TALL_CARD_MM - j * (TALL_CARD_MM + DOWN_MM),
    )
    for j in range(2)
    for i in range(2)
)
"""Lower left corner of each card of a page."""
MARK_MM = 1.8
"""How far a cut mark runs out from a corner."""
EDGE_MM = 4.0
POINTS, TITLE_POINTS = 8.0, 10.0
"""The smallest type on a card, read at arm's length without a glass, and that of its title."""
LINE_MM = 1.25 * POINTS * POINT_MM
CELL_YARDS = YARDS[1::3]
"""Distances of the bank card: few, so that each cell can be read."""
LEAD = "Lead: banned on many waters; wash your hands, bite none, lose none."
TRIM_MM = 4.0
"""A shot that moves the waterline by about so much is counted up and down."""


def _page(paper: Paper, title: str) -> Page:
    page = Page(paper, title)
    _head(page)
    return page


def _head(page: Page) -> None:
    page.text(
        2.0, TALL_MM - 6, "Print at 100 %; measure the line, then cut along the marks.", POINTS
    )
    page.ruler(130.0, TALL_MM - 8, 50.0, "50 mm")


def _edge(page: Page, x: float, y: float) -> None:
    """Draw a card's edge, and the marks by which it is cut."""
    page.box(x, y, WIDE_CARD_MM, TALL_CARD_MM, edge_mm=0.1)
    for right in (x, x + WIDE_CARD_MM):
        for up in (y, y + TALL_CARD_MM):
            out_x, out_y = (MARK_MM if at > by else -MARK_MM for at, by in ((right, x), (up, y)))
            page.line(right, up, right + out_x, up, 0.25)
            page.line(right, up, right, up + out_y, 0.25)


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
    return shottings([answer], paper)


def shottings(answers: Sequence[Answer], paper: Paper = "a4") -> bytes:
    """Return a shotting card for each of many floats, four on a page, on as many pages as it takes.

    As `shotting` for the rest.
    """
    return _shottings([(answer.case, advised(answer)[1]) for answer in answers], paper)


def _shottings(each: Sequence[tuple[Case, Block]], paper: Paper) -> bytes:
    page = _page(paper, "Shotting cards" if len(each) > 1 else "Shotting card")
    for number, (case, block) in enumerate(each):
        if number and not number % len(PLACES):
            page.turn()
            _head(page)
        _shotting(page, *PLACES[number % len(PLACES)], case, block)
    return page.bytes()


def of_floats(
    questions: Sequence[Question],
    paper: Paper = "a4",
    progress: Callable[[int, int], None] | None = None,
) -> bytes:
    """Return a shotting card for each of many floats as they are, told by their questions.

    One that sinks with its own tip, or that cannot be looked at, has no card; as `shottings` for
    the rest. Mistakes if none has one.
    """
    each: list[tuple[Case, Block]] = []
    mistakes: list[Mistake] = []
    for n, question in enumerate(questions):
        try:
            each.append((settle(question), examine(question)))
        except Mistakes as wrong:
            mistakes += wrong.mistakes
        if progress:
            progress(n + 1, len(questions))
    if not each:
        raise Mistakes(mistakes)
    return _shottings(each, paper)


def _shotting(page: Page, x: float, y: float, case: Case, block: Block) -> None:
    depth, load = case.stream.depth_m, block.load
    _edge(page, x, y)
    left, wide = x + EDGE_MM, WIDE_CARD_MM - 2 * EDGE_MM
    top = page.lines(
        left,
        y + TALL_CARD_MM - 7.0,
        f"{case.float_.pattern}, {load.shot_metal} shot",
        wide,
        TITLE_POINTS,
        True,
    )
    for said in (
        f"{names.stock(block.tip)}, {measures.ANGLER.length(block.tip.showing_mm)} showing, "
        f"{names.paint(block.tip.bands, block.tip.showing_mm)}",
        f"takes {load.shot_g:.2f} g in air, {load.pull_g:.2f} g in water",
    ):
        top = page.lines(left, top, said, wide, POINTS)
    line_top, line_foot, at = top - 3.0, y + 40.0, left + 7.0
    page.line(at, line_top, at, line_foot, 0.3)
    page.box(at - 1.2, line_top, 2.4, 3.0, edge_mm=0.25)
    hook = [(0.0, 0.0), (0.0, -2.2), (1.6, -2.2), (1.6, -0.8)]
    page.outline([(at + dx, line_foot + dy) for dx, dy in hook], closed=False)
    page.text(at + 4, line_foot - 3.0, f"hook; {depth:.2g} m deep", POINTS)
    places: dict[float, list[plan.Placed]] = {}
    for one in plan.layout([(s.name, s.count, s.where) for s in load.shot], depth):
        places.setdefault(one.from_hook_m, []).append(one)
    tall = line_top - line_foot
    gap = min(4.2, tall / (len(places) + 1))
    rows = _apart([line_foot + tall * m / depth for m in places], gap, line_foot + 1.2)
    for (from_hook_m, group), label in zip(places.items(), rows, strict=True):
        height = line_foot + tall * from_hook_m / depth
        half = 0.9 if group[0].where == plan.BULK else 0.6
        page.box(at - half, height - half, 2 * half, 2 * half, fill=0.0, edge_mm=0.0)
        page.line(at + half, height, at + 3.5, label, 0.1)
        trim = group[0].where == plan.TRIM
        far = "under the float" if trim else f"{100 * from_hook_m:.0f} cm"
        listed = ", ".join(f"{one.count} {one.name}" for one in group)
        page.text(at + 4, label - 1.0, f"{far}: {listed}", POINTS)
    if not places:
        page.text(at + 4, (line_top + line_foot) / 2, "no shot that you have fits", POINTS)
    _more_and_fewer(page, left, y, case, block)


def steps(case: Case, block: Block) -> tuple[str, list[tuple[int, float]]]:
    """Return a small shot by name, and what shows [mm] with two fewer to two more of it.

    It is the shot that moves the waterline by nearest to 4 mm; where it sinks, what shows is under 0.
    """
    warm, tip, metal = case.stream.temperature_c, block.tip, case.box.shot_metal
    stiff = float(stiffness_g_per_mm(block.painted_mm, warm))
    share = float(shot.wet_share(metal, warm))
    had = [s for s in case.box.shot if not shot.is_olivette(s.name)] or list(shot.sizes(metal))
    one = min(had, key=lambda s: abs(s.mass_g * share / stiff - TRIM_MM))
    step_mm = one.mass_g * float(shot.wet_share(one.metal, warm)) / stiff
    return one.name, [(n, tip.showing_mm - n * step_mm) for n in (-2, -1, 0, 1, 2)]


def _more_and_fewer(page: Page, left: float, y: float, case: Case, block: Block) -> None:
    name, rows = steps(case, block)
    tip, wide = block.tip, WIDE_CARD_MM - 2 * EDGE_MM
    outside = tip.showing_mm + tip.wet_mm
    page.line(left, y + 33.0, left + wide, y + 33.0, 0.1)
    page.text(left, y + 28.0, f"{name}, so many more or fewer: mm showing", POINTS, True)
    across = wide / len(rows)
    for at, (count, shows) in enumerate(rows):
        middle = left + (at + 0.5) * across
        said = ("2 fewer", "1 fewer", "as it is", "1 more", "2 more")[at]
        text = "sinks" if shows <= 0 else "body out" if shows > outside else f"{shows:.0f} mm"
        page.text(middle, y + 22.5, said, POINTS, align="middle")
        page.text(middle, y + 17.5, text, POINTS, bold=not count, align="middle")
    page.text(left, y + 12.0, "counted from the list above", POINTS)
    if shot.is_lead(block.load.shot_metal):
        page.lines(left, y + 7.5, LEAD, wide, POINTS)


def bank(
    answer: Answer, paper: Paper = "a4", progress: Callable[[int, int], None] | None = None
) -> bytes:
    """Return the card that says what to show at four distances on each water.

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
    question = Question(**answer.question, learnt=answer.case.learnt)  # type: ignore[arg-type]  # as told
    if settle(question) != answer.case:
        raise ValueError("the answer does not hold the question that it answers")
    behind = [w for w in WATERS if w != "sun lane"]
    found: dict[tuple[int, str], Cell] = {}
    for name in behind:
        each = column(question, CELL_YARDS, name)
        found |= {(yard, name): one for yard, one in each.items()}
        if progress:
            progress(len(found), len(CELL_YARDS) * len(behind))
    page = _page(paper, "Bank card")
    x, y = PLACES[0]
    _edge(page, x, y)
    left, wide, tip = x + EDGE_MM, WIDE_CARD_MM - 2 * EDGE_MM, answer.tip_in_hand.tip
    pattern = f"{answer.case.float_.pattern}: what to show"
    down = page.lines(left, y + TALL_CARD_MM - 7.0, pattern, wide, TITLE_POINTS, True)
    down = page.lines(
        left, down, f"{names.stock(tip)}, {names.paint(tip.bands, tip.showing_mm)}", wide
    )
    across = (wide - YARD_MM) / len(behind)
    down -= 1.0
    page.text(left, down, "yd", POINTS, bold=True)
    for at, name in enumerate(behind):
        page.text(left + YARD_MM + at * across, down, name, POINTS, bold=True)
    for yard in CELL_YARDS:
        down -= 1.2
        page.line(left, down, left + wide, down, 0.1)
        page.text(left, down - LINE_MM, f"{yard}", POINTS, bold=True)
        feet = [
            _cell(
                page, left + YARD_MM + at * across, down - LINE_MM, across - 1.5, found[yard, name]
            )
            for at, name in enumerate(behind)
        ]
        down = min(feet) + LINE_MM - 0.8
    sky = answer.question.get("sky") or "bright overcast"
    looks = answer.question.get("looks") or "as told"
    page.lines(
        left, max(down - 4.5, y + 3.0), f"for {sky}; surface: {looks}; other days differ", wide
    )
    return page.bytes()


YARD_MM = 8.0
"""Of the column with the distances."""


def _cell(page: Page, x: float, y: float, wide_mm: float, one: Cell) -> float:
    """Print a cell in lines that stay in its column; return where the next line would stand."""
    y = page.lines(x, y, one.show, wide_mm, POINTS, bold=True)
    for said in (one.shot, one.grade):
        y = page.lines(x, y, said, wide_mm, POINTS)
    return y
