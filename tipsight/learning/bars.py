"""The six bars of the fence card: their sizes, how well they are seen, and what a person's readings say."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.learning.belief import G, blurred, went
from tipsight.sight import eye, grades, kernel

Array = NDArray[np.float64]

PAPER_CD_M2 = 1000.0
"""White paper in the shade or under an overcast: 500 to 2000 (from memory)."""
INK_CONTRAST = -0.94
"""Ink that gives back .05 on paper that gives back .85, less 1 (from memory; .02 either way)."""
LINES_MM, EACH_MM = 0.5, 2.5
"""The pale bar is black lines of .5 mm, one each 2.5 mm: no printer's grey, whose dots gain 10 to
20 % (from memory)."""
NEAREST_M, FARTHEST_M = 3.0, 100.0
SQUARE_MM = 3.0
"""Side of the two squares for sharpness, and the gap between them."""

Step = Literal["tape", "measured", "yard"]
STEP_SD: dict[Step, float] = {"tape": 0.01, "measured": 0.03, "yard": 0.08}
"""How well all distances of one card are known together: taped, paces measured along a tape, or a
pace taken for a yard (judgement)."""
BAR_SD, READING_SD, INK_SD, LIGHT_SD = 0.20, 0.20, 0.06, 0.06
"""Of this bar with this eye (ModelFest observers by stimulus, .195); one reading (judgement); ink;
light on the sheet (judgement)."""
STEEP = 1.85
"""-d ln level / d ln distance of the bars, about."""
ODD_SDS = 2.5
"""A bar that lies farther from the rest than this is named."""
LEAST = 3
"""Fewer bars are not enough to say a number."""


@dataclass(frozen=True)
class Bar:
    """One bar of the card."""

    wide_mm: float
    tall_mm: float
    pale: bool = False
    """Made of upright lines, which beyond 9 m are one."""

    @property
    def contrast(self) -> float:
        """Of the bar with the paper [-]."""
        return INK_CONTRAST * (LINES_MM / EACH_MM if self.pale else 1.0)


BARS = (
    Bar(1.2, 9.0),
    Bar(1.5, 15.0),
    Bar(2.2, 18.0),
    Bar(3.0, 3.0),
    Bar(0.8, 45.0),
    Bar(7.5, 30.0, pale=True),
)
"""Numbered from 1, row by row from the top left."""


def level(bar: Bar, range_m: ArrayLike, eyes: eye.Eye, scale: float = 1.0) -> Array:
    """Return the level of a bar at some distances [-], shape (R,).

    Parameters
    ----------
    bar : Bar
        Which.
    range_m : array_like
        Eye to card, shape (R,) [m].
    eyes : Eye
        Whose; the own factor multiplies the level.
    scale : float
        Printed size over true size, 0.5 to 1.5.

    Returns
    -------
    numpy.ndarray
        By `kernel.level_parts` on white paper of 1000 cd/m2.

    Examples
    --------
    >>> level(BARS[0], [20.34 * 0.9144], eye.Eye(25.0)).round(1)
    array([2.4])
    """
    within("printed size", scale, 0.5, 1.5)
    grey, _ = kernel.level_parts(
        kernel.kernels(range_m, PAPER_CD_M2, eyes),
        diameter_mm=scale * bar.wide_mm,
        edges_mm=[[0.0, scale * bar.tall_mm]],
        contrast=[[[bar.contrast, 0.0, 0.0]]],
    )
    return grey


@dataclass(frozen=True)
class Sheet:
    """What a person saw on one card, as it was read: nothing in it is worked out."""

    read_m: Mapping[int, Sequence[float]]
    """Distances at which each bar went or came again, by its number [m]."""
    step: Step = "measured"
    scale: float = 1.0
    """Printed size over true size."""

    def __post_init__(self) -> None:
        within("number of a bar", [*self.read_m], 1, len(BARS))
        for distances in self.read_m.values():
            within("distance of a bar", distances, NEAREST_M, FARTHEST_M, "m")


@dataclass(frozen=True)
class Said:
    """What one bar says by itself."""

    number: int
    range_m: float
    """Mean of its readings, of their logarithms."""
    y: float
    """ln G by this bar alone."""
    sd: float
    odd: bool
    """Whether it lies far from what the others say."""


def said(sheet: Sheet, age_years: float, mar_arcmin: float = 1.0) -> tuple[Said, ...]:
    """Return what each bar says, y = ln 2.4 - ln level, with eyes of an age and a sharpness.

    sd^2 = .20^2 + .20^2/n + .06^2 for n readings. Odd is a bar more than 2.5 of its own sd from the
    median of the others.
    """
    eyes = eye.Eye(age_years, mar_arcmin)
    found = []
    for number, distances in sorted(sheet.read_m.items()):
        if not len(distances):
            continue
        far = float(np.exp(np.mean(np.log(distances))))
        seen = float(level(BARS[number - 1], [far], eyes, sheet.scale)[0])
        sd = float(np.sqrt(BAR_SD**2 + READING_SD**2 / len(distances) + INK_SD**2))
        found.append((number, far, float(np.log(grades.followed() / seen)), sd))
    ys = np.array([y for _, _, y, _ in found])
    return tuple(
        Said(*one, odd=len(found) > LEAST and _odd(ys, at, one[3])) for at, one in enumerate(found)
    )


def _odd(ys: Array, at: int, sd: float) -> bool:
    return bool(abs(ys[at] - np.median(np.delete(ys, at))) > ODD_SDS * sd)


def likelihood(sheet: Sheet, age_years: float, mar_arcmin: float = 1.0) -> Array:
    """Return how likely a card's readings are for each ln G, shape (G, 1).

    The product over its bars of .95 N(g; y, sd) + .05 x .15, blurred by what is common to the
    sheet: (1.85 s_D)^2 + .06^2, of the step and the light.

    Examples
    --------
    >>> from tipsight.learning.belief import believed
    >>> yards = [17, 24, 32, 16, 22, 28]
    >>> card = Sheet({n: [0.9144 * far] * 2 for n, far in enumerate(yards, 1)})
    >>> round(believed(52.9, [likelihood(card, 52.9)]).factor, 2)
    0.94
    """
    product = np.ones_like(G)
    for one in said(sheet, age_years, mar_arcmin):
        product = product * went(G - one.y, one.sd)
    common = float(np.hypot(STEEP * STEP_SD[sheet.step], LIGHT_SD))
    return blurred(product, common)[:, None]


def detail_arcmin(range_m: float) -> float:
    """Return the smallest detail of eyes that see the two squares as two out to a distance [arcmin].

    3/(0.2909 D), 3 mm of gap and 0.2909 mm to an arc minute at a metre. `OutOfRange` outside 1 to
    35 m, beyond which the squares can be no eye's.

    Examples
    --------
    >>> round(detail_arcmin(10.3), 2)
    1.0
    """
    far = float(within("distance of the squares", range_m, 1.0, 35.0, "m"))
    return SQUARE_MM / (0.2909 * far)
