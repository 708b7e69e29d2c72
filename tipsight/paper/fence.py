"""The fence card: six bars to walk away from, how to do it, and the pages for the check in the corners."""

from tipsight.learning.bars import BARS, EACH_MM, LINES_MM, SQUARE_MM, Bar
from tipsight.learning.corners import BAR
from tipsight.paper.leaf import TALL_MM, WIDE_MM, Page, Paper

CENTRES_MM = tuple((x, y) for y in (212.5, 127.5, 42.5) for x in (47.5, 142.5))
"""Of the bars in order: 85 mm apart and more, over four blurs of an eye out to 50 m."""
SQUARES_MM = (WIDE_MM / 2.0, 47.0)
"""Between the two squares, with nothing near them."""
STEPS = (
    "Pin page 1 up at the height of your eyes, upright and flat, outdoors in the shade or under cloud, the "
    "sun not on it. Pin blank sheets round it, so that no fence shows within a hand's length of a bar.",
    "Measure the ruler below. If it is not 100 mm long, the printer has shrunk the page: tell its length "
    "(--ruler 96mm).",
    "Measure ten of your own paces along a tape; a tenth of that is your pace (--paces 0.85m). Of all that "
    "you do here it matters most.",
    "Put on the glasses you fish in. Walk straight back from the card, stopping at each pace to look. "
    "Write down where each bar goes: the pace at which you can only just no longer see it.",
    "Walk on five paces more, turn, and come back. Write down where each comes again. Do not hurry: look "
    "as long as you would look for a float.",
    "The two squares below, apart from the rest: how far off can you still see that there are two? "
    "(--squares 9m).",
)
SAFE = (
    "Mind what is behind you as you walk back: choose a field or a path, never a road, and keep well away "
    "from the water's edge. This is no eye test, for driving, for work or for health; if you see less "
    "than you think you should, see an optician."
)
TELL = "tipsight eyes card --age 60 --paces 0.85m 17 24 32 16 22 28"
BACK = (
    "or, with the way back behind it, all twelve: 17 24 32 16 22 28 16 23 30 15 21 27; - for one "
    "that you missed"
)


def _bar(page: Page, bar: Bar, x: float, y: float, of_true: float = 1.0) -> None:
    """Print a bar with its middle at a place."""
    wide, tall = of_true * bar.wide_mm, of_true * bar.tall_mm
    left, foot = x - wide / 2.0, y - tall / 2.0
    if not bar.pale:
        page.box(left, foot, wide, tall, fill=0.0, edge_mm=0.0)
        return
    each, line = of_true * EACH_MM, of_true * LINES_MM
    for n in range(round(bar.wide_mm / EACH_MM)):
        page.box(left + (n + 0.5) * each - line / 2.0, foot, line, tall, fill=0.0, edge_mm=0.0)


def _table(page: Page, top: float) -> float:
    """Print the table to write in; return its foot."""
    columns = (0.0, 32.0, 66.0, 100.0)
    down = 8.0
    for x, said in zip(columns[1:], ("bar", "went at", "came again at"), strict=True):
        page.text(x + 2.0, top - 5.5, said, 8, bold=True)
    for n in range(len(BARS)):
        y = top - (n + 1) * down
        page.line(columns[1], y, 140.0, y, 0.15)
        page.text(columns[1] + 4.0, y - 5.5, f"{n + 1}", 9, bold=True)
    foot = top - (len(BARS) + 1) * down
    for x in (*columns[1:], 140.0):
        page.line(x, top, x, foot, 0.15)
    for y in (top, foot):
        page.line(columns[1], y, 140.0, y, 0.15)
    page.box(0.0, foot + 12.0, 26.0, 36.0, edge_mm=0.15)
    for n, (x, y) in enumerate(CENTRES_MM):
        at = 13.0 + (x - WIDE_MM / 2) * 0.13, foot + 30.0 + (y - TALL_MM / 2) * 0.13
        _bar(page, BARS[n], *at, of_true=0.16)
        page.text(at[0] + 2.0, at[1] - 1.0, f"{n + 1}", 8)
    page.text(0.0, foot + 8.0, "page 1", 8)
    for n, said in enumerate(("date", "age", "light", "one pace", "ruler", "two squares to")):
        y = top - 5.5 - n * down
        page.text(146.0, y, said, 8)
        page.line(168.0, y - 1.0, WIDE_MM, y - 1.0, 0.15)
    return foot


def _told(page: Page) -> None:
    """Print the page of words."""
    page.text(0, TALL_MM - 6, "Fence card: how to", 14, bold=True)
    y = TALL_MM - 14.0
    for n, step in enumerate(STEPS, 1):
        page.text(0, y, f"{n}", 9, bold=True)
        y = page.lines(6.0, y, step, WIDE_MM - 6.0, 9) - 1.2
    y = page.lines(0, y - 0.8, SAFE, WIDE_MM, 9, bold=True) - 2.0
    foot = _table(page, y)
    page.text(0, foot - 7.0, "Then tell it:", 9)
    page.text(22.0, foot - 7.0, TELL, 9, bold=True)
    page.lines(22.0, foot - 11.5, BACK, WIDE_MM - 22.0, 9)
    x, middle = SQUARES_MM
    for left in (x - 1.5 * SQUARE_MM, x + 0.5 * SQUARE_MM):
        page.box(left, middle - SQUARE_MM / 2.0, SQUARE_MM, SQUARE_MM, fill=0.0, edge_mm=0.0)
    page.ruler(0, 6, 100.0, "100 mm")
    page.ruler(108, 6, 76.2, "3 in")
    said = (
        "Print at 100 %, not fitted to the page. Pages 3 and 4 are for the check with a helper: tipsight "
        "eyes corners."
    )
    page.text(0, 0, said, 8)


def pdf(paper: Paper = "a4") -> bytes:
    """Return the fence card: the bars, how to, and two pages for the check in the corners.

    Parameters
    ----------
    paper : str
        ``a4`` or ``letter``.

    Returns
    -------
    bytes
        A PDF of four pages; on all but the second stands nothing but bars.

    Raises
    ------
    Mistakes
        For any other paper.
    """
    page = Page(paper, "Fence card")
    for bar, centre in zip(BARS, CENTRES_MM, strict=True):
        _bar(page, bar, *centre)
    page.turn()
    _told(page)
    for centre in CENTRES_MM[:2]:
        page.turn()
        _bar(page, BARS[BAR - 1], *centre)
    return page.bytes()
