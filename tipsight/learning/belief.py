"""What is believed of one person's eyes and of the streaks, on a grid, and how readings move it."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.inputs.settle import OLD_YEARS

Array = NDArray[np.float64]

G = np.round(np.arange(-150, 151) * 0.01, 2)
"""Natural logarithm of the own-eye factor."""
Q = np.round(np.arange(-20, 21) * 0.1, 1)
"""Natural logarithm of what multiplies the power of the streaks."""
PRIOR_SD, PRIOR_SD_OLD, STREAKS_SD = 0.34, 0.42, float(np.log(2.0))
"""Of ln G to 65 years and over it, and of ln k: the doubts of `settle` and of `advice` as they stand
before anything is known (16 observers of ModelFest .27, say-so .20; the rest judgement)."""
SLIPS, SLIP_DENSITY = 0.05, 0.15
"""Share of readings that say nothing, spread over 3 to 100 m (judgement)."""
RANGE_SDS = 1.645
"""Half a range that holds 90 in 100, in standard deviations."""


@dataclass(frozen=True)
class Belief:
    """How likely each pair of ln G and ln k is; the weights, shape (G, Q), add up to one."""

    weight: Array

    def _of(self, values: Array, axis: int) -> tuple[float, float]:
        mass = self.weight.sum(axis=axis)
        mean = float(mass @ values)
        return mean, float(np.sqrt(mass @ (values - mean) ** 2))

    @cached_property
    def eyes(self) -> tuple[float, float]:
        """Mean and standard deviation of ln G."""
        return self._of(G, 1)

    @cached_property
    def streaks(self) -> tuple[float, float]:
        """Mean and standard deviation of ln k."""
        return self._of(Q, 0)

    @cached_property
    def tied(self) -> float:
        """Correlation of the two: how far a note leaves open which of them it speaks of."""
        (g, g_sd), (q, q_sd) = self.eyes, self.streaks
        return float((G - g) @ self.weight @ (Q - q)) / (g_sd * q_sd)

    @property
    def factor(self) -> float:
        """The own-eye factor."""
        return float(np.exp(self.eyes[0]))

    @property
    def doubt(self) -> float:
        """How well it is known (x/÷), as `Angler.own_eye_doubt` has it."""
        return float(np.exp(self.eyes[1]))

    @property
    def ends(self) -> tuple[float, float]:
        """The range of the factor that holds nine in ten."""
        mean, sd = self.eyes
        low, high = np.exp([mean - RANGE_SDS * sd, mean + RANGE_SDS * sd])
        return float(low), float(high)


def _normal(x: Array, sd: float | Array) -> Array:
    return np.asarray(np.exp(-0.5 * (x / sd) ** 2) / (sd * np.sqrt(2.0 * np.pi)))


def prior_sd(age_years: float) -> float:
    """Return the standard deviation of ln G before any reading."""
    return PRIOR_SD_OLD if age_years > OLD_YEARS else PRIOR_SD


def believed(age_years: float, likelihoods: Iterable[Array] = ()) -> Belief:
    """Return what is believed at an age after some readings.

    Parameters
    ----------
    age_years : float
        Of the eyes.
    likelihoods : iterable of numpy.ndarray
        Of independent readings, each broadcasts to (G, Q).

    Returns
    -------
    Belief
        Prior ln G ~ N(0, .34), over 65 years .42, and ln k ~ N(0, ln 2), times the readings.

    Examples
    --------
    >>> believed(50.0).factor, round(believed(50.0).doubt, 2)
    (1.0, 1.4)
    """
    within("age", age_years, 5.0, 120.0, "years")
    log = -0.5 * (G[:, None] / prior_sd(age_years)) ** 2 - 0.5 * (Q / STREAKS_SD) ** 2
    for one in likelihoods:
        log = log + np.log(np.maximum(one, 1e-300))
    weight = np.exp(log - log.max())
    return Belief(weight / weight.sum())


def went(over: ArrayLike, sd: float | Array) -> Array:
    """Return the likelihood of "it went here" on the grid.

    Parameters
    ----------
    over : array_like
        ln of the own level there over the level at which people say that a thing has gone, for each
        pair of the grid.
    sd : array_like
        How well that is known.

    Returns
    -------
    numpy.ndarray
        .95 N(over; 0, sd) + .05 x .15: one reading in twenty is a slip.
    """
    return (1.0 - SLIPS) * _normal(np.asarray(over, dtype=float), sd) + SLIPS * SLIP_DENSITY


def followed(over: ArrayLike, sd: float | Array) -> Array:
    """Return the likelihood of "I could follow it to here": it goes farther off; .95 Phi + .025."""
    from scipy.special import ndtr

    return np.asarray((1.0 - SLIPS) * ndtr(np.asarray(over, dtype=float) / sd) + SLIPS / 2.0)


def not_seen(over: ArrayLike, sd: float | Array) -> Array:
    """Return the likelihood of "not seen here": it goes nearer by; .95 Phi + .025."""
    return followed(-np.asarray(over, dtype=float), sd)


def blurred(likelihood: Array, sd: float) -> Array:
    """Return a likelihood over ln G, shape (G,), with a doubt common to all its readings in it."""
    step = _normal(G[:, None] - G, max(sd, 1e-3))
    return np.asarray(step @ likelihood * 0.01)
