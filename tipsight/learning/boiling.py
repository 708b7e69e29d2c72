"""How much one water boils, learned from what it does to a float: on the whole curve, visit by visit."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tipsight.afloat import ride
from tipsight.afloat.chop import Sea
from tipsight.afloat.rig import Rig
from tipsight.checks import within
from tipsight.inputs.case import Stream
from tipsight.inputs.settle_swim import BOIL_DOUBT
from tipsight.learning.belief import RANGE_SDS

Array = NDArray[np.float64]

F = np.round(np.arange(-40, 101) * 0.02, 2)
"""Natural logarithm of the boil factor."""
WORD_SD, VISIT_SD = float(np.log(BOIL_DOUBT)), 0.25
"""How well a word for the boils is known, and how far one water differs from visit to visit
(judgement)."""
CLUMPED, LOWEST_SD, UNDER_SD = 0.16, 0.15, float(np.log(1.2))
"""Rates are known to x/÷1.5; a lowest mark to 15 %; seconds under to x/÷1.2 (judgement)."""
MOST_A_MINUTE = 60.0
"""A float goes up and down once in a second or slower (`afloat.ride`)."""
LEAST_LIKELY = 1e-200
"""Keeps products and logarithms of likelihoods from nothing."""


@dataclass(frozen=True)
class Curve:
    """What one tip does on one water for each boil factor of the grid."""

    dips_per_min: Array
    rms_mm: Array
    rate_hz: Array
    margin: Array
    """What shows over the ups and downs; below nothing where it is under more than not."""


def curve(rig: Rig, sea: Sea, stream: Stream, showing_mm: float, painted_mm: float) -> Curve:
    """Return what a tip does for each boil factor, by `afloat.ride`."""
    each = [
        ride.ride(rig, sea, replace(stream, boil_factor=float(f)), painted_mm) for f in np.exp(F)
    ]
    return Curve(
        np.array([float(ride.dips_per_min(showing_mm, one)[0]) for one in each]),
        np.array([float(one.rms_mm[0]) for one in each]),
        np.array([float(one.rate_hz[0]) for one in each]),
        np.array([float(ride.ride_margin(showing_mm, one)[0]) for one in each]),
    )


def dips(count: float, minutes: float, on: Curve) -> Array:
    """Return the likelihood of a count of dips, none too, over the grid.

    Negative binomial, mean mu = dips a minute times minutes, shape 1/(.16 + 1/mu): dips come in
    twos and threes, and the rate is known to x/÷1.5. `OutOfRange` outside 0 to 600 dips in 0.25
    to 120 minutes, and over one a second.
    """
    from scipy.stats import nbinom

    n = float(within("dips", count, 0.0, 600.0))
    time = float(within("minutes of counting", minutes, 0.25, 120.0, "minutes"))
    within("dips a minute", n / time, 0.0, MOST_A_MINUTE)
    mu = np.maximum(on.dips_per_min * time, 1e-9)
    shape = 1.0 / (CLUMPED + 1.0 / mu)
    return np.asarray(nbinom.pmf(round(n), shape, shape / (shape + mu)))


def lowest(down_mm: float, on: Curve) -> Array:
    """Return the likelihood of the lowest that the water came over a tip's mark in a minute.

    Of a Gaussian process, mean sigma (m + .577/m), m = sqrt(2 ln 60 nu), sd 1.283 sigma/m (Gumbel's
    law, from memory) and 15 % of the mean. `OutOfRange` outside 0.5 to 200 mm.
    """
    z = float(within("lowest in a minute", down_mm, 0.5, 200.0, "mm"))
    m = np.sqrt(2.0 * np.log(np.maximum(60.0 * on.rate_hz, 2.0)))
    mean = on.rms_mm * (m + 0.577 / m)
    sd = np.hypot(1.283 * on.rms_mm / m, LOWEST_SD * mean)
    return np.asarray(np.exp(-0.5 * ((z - mean) / sd) ** 2) / sd)


def under(seconds: float, per_min: float, on: Curve) -> Array:
    """Return the likelihood of a tip being under so long, so many times a minute.

    share = n s/60, margin = Phi^-1(1 - share), known to x/÷1.2. `OutOfRange` if that is under a
    thousandth or over 0.45 of the time.
    """
    from scipy.special import ndtri

    share = float(within("share of the time under", seconds * per_min / 60.0, 0.001, 0.45))
    margin = float(ndtri(1.0 - share))
    over = np.log(np.maximum(on.margin, 1e-6) / margin)
    return np.asarray(np.exp(-0.5 * (over / UNDER_SD) ** 2))


@dataclass(frozen=True)
class Boils:
    """How likely each boil factor of the grid is; the weights add up to one."""

    weight: Array

    @cached_property
    def told(self) -> tuple[float, float]:
        """Mean and standard deviation of the factor's logarithm."""
        mean = float(self.weight @ F)
        return mean, float(np.sqrt(self.weight @ (F - mean) ** 2))

    @property
    def factor(self) -> float:
        """Boils of this water over those of an even glide."""
        return float(np.exp(self.told[0]))

    @property
    def doubt(self) -> float:
        """How well it is known (x/÷), as `Stream.boil_doubt` has it."""
        return float(np.exp(self.told[1]))

    @property
    def ends(self) -> tuple[float, float]:
        """The range that holds nine in ten."""
        mean, sd = self.told
        return float(np.exp(mean - RANGE_SDS * sd)), float(np.exp(mean + RANGE_SDS * sd))

    @cached_property
    def two(self) -> tuple[float, float] | None:
        """Two factors that both fit what was counted, the likelier first; None if but one does."""
        w = self.weight
        peaks = [
            i for i in range(1, F.size - 1) if w[i] >= w[i - 1] and w[i] > w[i + 1] and w[i] > 1e-3
        ]
        best = sorted(peaks, key=lambda i: -w[i])[:2]
        if len(best) < 2 or w[best[1]] < 0.1 * w[best[0]]:
            return None
        return float(np.exp(F[best[0]])), float(np.exp(F[best[1]]))


def _blurred(likelihood: Array) -> Array:
    return np.asarray(np.exp(-0.5 * ((F[:, None] - F) / VISIT_SD) ** 2) @ likelihood)


def explained(likelihood: Array) -> bool:
    """Return whether any boils of the grid explain a reading; one that none explains says nothing."""
    return bool(likelihood.max() > LEAST_LIKELY)


def _together(likelihoods: Iterable[Array]) -> Array:
    """Return readings of one visit in one, the likeliest factor at 1."""
    log = np.zeros_like(F)  # in logarithms, as a product of many small ones is nothing
    for one in likelihoods:
        if explained(one):
            log = log + np.log(np.maximum(one / one.max(), LEAST_LIKELY))
    return np.asarray(np.exp(log - log.max()))


def boils(
    word: float, before: Iterable[Sequence[Array]] = (), today: Sequence[Array] = ()
) -> Boils:
    """Return how much a water boils today, from visits before it and from what is seen on it now.

    Parameters
    ----------
    word : float
        The word for its boils as a factor: 1 even, 2 boily, 3 a weir.
    before : iterable of sequence of numpy.ndarray
        Of each earlier visit, the likelihood of each of its readings.
    today : sequence of numpy.ndarray
        Of each reading of today.

    Returns
    -------
    Boils
        Prior N(ln word, .40); each visit lies .25 from the water's own mean, and so does today, so that
        a visit of sd s weighs 1/(s^2 + .25^2). A reading that no boils explain is left aside.

    Examples
    --------
    >>> boils(2.0).factor.__round__(2)
    2.0
    """
    mean = float(np.log(within("word for the boils", word, 0.5, 6.0)))
    weight = np.exp(-0.5 * ((F - mean) / WORD_SD) ** 2)
    visits = [_together(each) for each in before]
    for one in visits:
        weight = weight * _blurred(one)
    if visits:
        weight = _blurred(weight / weight.sum())
    weight = weight * _together(today)
    return Boils(weight / weight.sum())
