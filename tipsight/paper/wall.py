"""The wall card: printed marks that take up the tip's own angle from across a room or a garden."""

from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block
from tipsight.output import measures, names
from tipsight.paper.leaf import TALL_MM, WIDE_MM, Page, Paper
from tipsight.pictures.subject import made
from tipsight.units import FOOT_M

HANG_M = (3.0, 5.0, 8.0)
"""How far off the card is hung."""
GREY = 0.5
"""Of the grey mark, of the printer's white."""


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


def pdf(answer: Answer, paper: Paper = "a4") -> bytes:
    """Return the wall card: one page to hang at 3, 5 or 8 m.

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
    row_foot = TALL_MM - 26.0
    for hang in HANG_M:
        tallest = max(scaled(m, far, hang)[1] for m in each)
        page.line(0, row_foot, WIDE_MM, row_foot, 0.1)
        page.text(0, row_foot - 5, f"From {hang:g} m ({hang / FOOT_M:.1f} ft)", 9, bold=True)
        foot = row_foot - 24.0 - tallest
        for column, one in enumerate(each):
            wide, tall = scaled(one, far, hang)
            middle = (column + 0.5) * across
            page.box(middle - 10 - wide / 2, foot, wide, tall, fill=0.0, edge_mm=0.0)
            page.box(middle + 10 - wide / 2, foot, wide, tall, fill=GREY, edge_mm=0.0)
            page.text(middle, foot - 11.5, one.title, 8, align="middle")
            page.text(
                middle, foot - 15.2, f"{wide:.2f} by {tall:.2f} mm", 8, align="middle"
            )
        row_foot = foot - 20.0
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
    return page.bytes()
