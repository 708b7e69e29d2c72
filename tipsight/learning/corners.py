"""The check with a helper: in which corner is the bar? Where to stand next, and what it comes to."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tipsight.checks import within
from tipsight.learning.bars import BAR_SD, BARS, level
from tipsight.learning.belief import G
from tipsight.sight import eye
from tipsight.units import YARD_M

Array = NDArray[np.float64]

PLACES = ("upper left", "upper right", "lower left", "lower right")
"""The two pages either way up."""
YARDS = np.arange(6, 61)
"""Where he may be sent."""
BAR = 2
"""The bar that stands alone on the pages."""
GUESSED, SPREAD, LAPSES = 0.25, 0.39, 0.02
"""Right by chance; spread of the levels at which it is just seen (Blackwell 1946, by the shipped
notes); not right though plainly seen (judgement)."""
EYES_SD = 0.27
"""Of the eye alone, with no say-so in it (ModelFest, 16 observers)."""
SAYS = (1.6, 3.6)
"""How readily people say "gone" [level]; only outside it is worth a word (judgement)."""


@dataclass(frozen=True)
class Look:
    """One look: from how far, and whether he named the right corner."""

    yards: int
    right: bool


@dataclass(frozen=True)
class Eyes:
    """What the looks come to."""

    mean: float
    """Of ln e, e how well these eyes see for their age with no say-so in it."""
    sd: float
    next_yards: int
    """From where the next look tells the most."""
    gain_nat: float
    """How much it is expected to tell."""

    @property
    def whole_sd(self) -> float:
        """With what one bar differs from others with the same eye, .20."""
        return float(np.hypot(self.sd, BAR_SD))


def _entropy(right: Array) -> Array:
    p = np.clip(right, 1e-12, 1.0 - 1e-12)
    return np.asarray(-p * np.log(p) - (1.0 - p) * np.log(1.0 - p))


@lru_cache(maxsize=4)
def _right(age_years: float, mar_arcmin: float) -> Array:
    """Return the chance of naming the right corner at each ln e and distance, shape (G, Y)."""
    from scipy.special import ndtr

    far = YARDS * YARD_M
    seen = level(BARS[BAR - 1], far, eye.Eye(age_years, mar_arcmin))
    own = np.exp(G)[:, None] * seen
    return np.asarray(GUESSED + (1.0 - GUESSED - LAPSES) * ndtr((own - 1.0) / SPREAD))


def after(looks: Iterable[Look], age_years: float, mar_arcmin: float = 1.0) -> Eyes:
    """Return what some looks come to, and where the next tells the most.

    P(right) = .25 + .73 Phi((e level - 1)/.39), ln e ~ N(0, .27); next is the distance of the
    greatest expected information H(sum w P) - sum w H(P) (Watson and Pelli 1983; Kontsevich and
    Tyler 1999). Four places, as people who are new to it do best with them (Jaekel and Wichmann
    2006). `OutOfRange` for a look from outside 6 to 60 yd.

    Examples
    --------
    >>> after([], 53.26).next_yards
    34
    """
    right = _right(age_years, mar_arcmin)
    weight = np.exp(-0.5 * (G / EYES_SD) ** 2)
    for look in looks:
        within("distance of a look", look.yards, float(YARDS[0]), float(YARDS[-1]), "yd")
        chance = right[:, look.yards - YARDS[0]]
        weight = weight * (chance if look.right else 1.0 - chance)
        weight = weight / weight.max()
    weight = weight / weight.sum()
    mean = float(weight @ G)
    sd = float(np.sqrt(weight @ (G - mean) ** 2))
    gain = _entropy(weight @ right) - weight @ _entropy(right)
    best = int(np.argmax(gain))
    return Eyes(mean, sd, int(YARDS[best]), float(gain[best]))


def says_gone(eyes: Eyes, goes_m: float, age_years: float, mar_arcmin: float = 1.0) -> float:
    """Return the own level at which a person who lost bar 2 at a distance says "gone" [-].

    e times the level of the bar there; known to x/÷1.2.

    Examples
    --------
    >>> round(says_gone(Eyes(0.0, 0.1, 34, 0.1), 23.65 * 0.9144, 53.26), 1)
    2.4
    """
    seen = level(BARS[BAR - 1], [goes_m], eye.Eye(age_years, mar_arcmin))
    return float(np.exp(eyes.mean) * seen[0])
