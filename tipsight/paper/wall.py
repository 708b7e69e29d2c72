"""The wall card: marks that take up the tip's own angle from across a room, and a number for own eyes."""

from dataclasses import dataclass

import numpy as np

from tipsight.advice.answer import Answer, Block
from tipsight.learning import bars
from tipsight.output import measures, names
from tipsight.paper.leaf import TALL_MM, WIDE_MM, Page, Paper
from tipsight.pictures.subject import made
from tipsight.sight import eye, grades, reach
from tipsight.units import FOOT_M, YARD_M

HANG_M = (3.0, 5.0, 8.0)
"""How far off the card is hung."""
GREY = 0.5
"""Of the grey mark, of the printer's white."""
OWN_EYES = (0.6, 0.75, 0.9, 1.0, 1.15, 1.3, 1.6)
"""How own eyes may compare with others of the same age; over 1 they are better."""
YOURS_MM, YOURS_TALL_MM = 71.0, 40.0
"""Where it is said how to find one's own number, and what that takes; lower marks send it overleaf."""
ABOVE_MM, BELOW_MM, NEXT_MM = 24.0, 16.0, 20.0
"""Above the tallest mark of a row, below its marks for their words, and down to the next row."""
NOTES_MM = 36.0
"""Of the first page's foot, for what the card cannot show and its check lines."""
TOP_MM = TALL_MM - 2.0
"""Where the first row of any other page begins."""


@dataclass(frozen=True)
class Mark:
    """One tip to be printed."""

    title: str
    width_mm: float
    """Painted."""
    height_mm: float
    """Showing."""


def marks(answer: Answer) -> tuple[Mark, ...]:
    """Return the four tips of the card.

    Advised, in hand, and the advised one a quarter inch longer and half a millimetre thicker.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> [m.title.split(":")[0] for m in marks(advise(Question(behind=["dark"])))]
    ['advised', 'in hand', 'longer', 'thicker']
    """
    advised, hand = made(answer)[1], answer.tip_in_hand

    def mark(title: str, block: Block, longer: float = 0.0, thicker: float = 0.0) -> Mark:
        of = block.tip
        said = f"{of.stock.diameter_mm + thicker:.3g} by {of.showing_mm + longer:.3g} mm"
        return Mark(f"{title}: {said}", block.painted_mm + thicker, of.showing_mm + longer)

    return (
        mark("advised", advised),
        mark("in hand", hand),
        mark("longer", advised, longer=6.35),
        mark("thicker", advised, thicker=0.5),
    )


def scaled(mark: Mark, range_m: float, hang_m: float) -> tuple[float, float]:
    """Return width and height of a mark printed to hang at one distance as it looks at another [mm].

    Examples
    --------
    >>> scaled(Mark("", 4.0, 40.0), 40.0, 5.0)
    (0.5, 5.0)
    """
    return mark.width_mm * hang_m / range_m, mark.height_mm * hang_m / range_m


def rows(answer: Answer) -> dict[float, float]:
    """Return how far off each row is hung [m], with its tallest mark [mm]; what no page holds is left out.

    Only a long tip at a few yards has such a mark, as it is then printed larger than it is.
    """
    each, far = marks(answer), answer.case.place.range_m
    tall = {hang: max(scaled(mark, far, hang)[1] for mark in each) for hang in HANG_M}
    return {hang: mm for hang, mm in tall.items() if ABOVE_MM + mm + BELOW_MM <= TOP_MM}


def own_distances_m(answer: Answer) -> dict[float, float | None]:
    """Return how far off the card's largest black mark goes, by how own eyes compare with others.

    It goes where its level falls to that at which people say that they see it; on shaded white paper
    of 1000 cd/m2, by `bars.level`. None where it is seen to the end, 60 m.
    """
    angler = answer.case.angler
    wide, tall = scaled(marks(answer)[0], answer.case.place.range_m, max(rows(answer)))
    far = np.geomspace(1.0, 60.0, 120)
    found: dict[float, float | None] = {}
    for factor in OWN_EYES:
        eyes = eye.Eye(angler.age_years, angler.mar_arcmin, factor)
        seen = bars.level(bars.Bar(wide, tall), far, eyes)
        found[factor] = reach.goes_at(far, seen, grades.followed())
    return found


def _make_it_yours(page: Page, y: float, answer: Answer) -> None:
    """Print how to find one's own number, and where to put it."""
    page.text(0, y, "Make it yours", 9, bold=True)
    said = (
        "Hang it outdoors in the shade at the height of your eyes, white paper round it. With the glasses "
        f"you fish in look at the advised black mark of the row for {max(rows(answer)):g} m and walk back "
        "until you can only just not see it; walk on till it comes again; take the middle, in yards or "
        "metres. Mind what is behind you. Under the distance nearest to yours stands your number; write it "
        "down:"
    )
    y = page.lines(0, y - 5.0, said, WIDE_MM, 8)
    each = own_distances_m(answer)
    across = (WIDE_MM - 30.0) / len(each)
    for down, name in ((0.0, "it goes at"), (4.5, "own eye")):
        page.text(0, y - 1.0 - down, name, 8, bold=True)
    for at, (factor, far) in enumerate(each.items()):
        x = 30.0 + at * across
        words = "farther" if far is None else f"{far / YARD_M:.0f} yd, {far:.0f} m"
        page.text(x, y - 1.0, words, 8)
        page.text(x, y - 5.5, f"{factor:g}", 8, bold=True)
    page.lines(
        0,
        y - 11.0,
        "Tell it with every question: tipsight advise --own-eye NUMBER, or own_eye in the file of your "
        "question. It is no eye test; for that see an optician.",
        WIDE_MM,
        8,
    )


def pdf(answer: Answer, paper: Paper = "a4") -> bytes:
    """Return the wall card, to hang at 3, 5 or 8 m: one page, and others where its marks fill it.

    Parameters
    ----------
    answer : Answer
        The answer.
    paper : str
        ``a4`` or ``letter``.

    Returns
    -------
    bytes
        A PDF.

    Raises
    ------
    Mistakes
        For any other paper.
    """
    far = answer.case.place.range_m
    page = Page(paper, "Wall card")
    page.text(
        0,
        TALL_MM - 6,
        f"Wall card: the angle of a tip at {measures.ANGLER.distance(far)}",
        14,
        bold=True,
    )
    page.lines(
        0,
        TALL_MM - 12,
        "Hang it upright in even light. Stand with your eye the said distance from it "
        "and look at that row alone: each mark is as wide and as tall to you as the tip at the water. "
        "Left of each pair black, right of it grey.",
        WIDE_MM,
        8,
    )
    each = marks(answer)
    across = WIDE_MM / len(each)
    _notes(page, answer)
    row_foot, floor, first = TALL_MM - 26.0, NOTES_MM, True
    for hang, tallest in rows(answer).items():
        if row_foot - ABOVE_MM - tallest - BELOW_MM < floor:
            page.turn()
            row_foot, floor, first = TOP_MM, 0.0, False
        page.line(0, row_foot, WIDE_MM, row_foot, 0.1)
        page.text(0, row_foot - 5, f"From {hang:g} m ({hang / FOOT_M:.1f} ft)", 9, bold=True)
        foot = row_foot - ABOVE_MM - tallest
        for column, one in enumerate(each):
            wide, tall = scaled(one, far, hang)
            middle = (column + 0.5) * across
            page.box(middle - 10 - wide / 2, foot, wide, tall, fill=0.0, edge_mm=0.0)
            page.box(middle + 10 - wide / 2, foot, wide, tall, fill=GREY, edge_mm=0.0)
            page.text(middle, foot - 11.5, one.title, 8, align="middle")
            page.text(middle, foot - 15.2, f"{wide:.2f} by {tall:.2f} mm", 8, align="middle")
        row_foot = foot - NEXT_MM
    if first and row_foot >= YOURS_MM:
        row_foot = YOURS_MM
    elif first or row_foot < YOURS_TALL_MM:
        page.turn()
        row_foot = TALL_MM - 8.0
    else:
        row_foot -= 4.0
    _make_it_yours(page, row_foot, answer)
    return page.bytes()


def _notes(page: Page, answer: Answer) -> None:
    """Print what the card cannot show, and its check lines."""
    said = (
        "What this cannot show: ink is not fluorescent, paper is not water, and the light in a room or a "
        "garden differs from that on the river; nothing here moves, and there is no ripple. It shows size "
        "alone. A coarse printer makes the thinnest marks too wide: look at them with a glass. "
        f"The tips: advised {names.stock(made(answer)[1].tip)}, "
        f"in hand {names.stock(answer.tip_in_hand.tip)}."
    )
    page.lines(0, 32, said, WIDE_MM, 8)
    page.ruler(0, 6, 100.0, "100 mm")
    page.ruler(108, 6, 76.2, "3 in")
    page.text(
        0, 0, "Print at 100 %, not fitted to the page; then measure these two lines.", 8, bold=True
    )
