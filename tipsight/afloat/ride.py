"""How a float rides: how often, how long and how deep the water takes its tip."""

from dataclasses import dataclass, replace

import numpy as np
import scipy
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import boils, motion
from tipsight.afloat.chop import Sea
from tipsight.afloat.rig import Rig
from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Stream
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]
# how much wider the boils' part counts for margin and time under, as quadratic drag and a spring
# that ends widen the tails: fitted to runs in the time domain, 1.5 to 3 rms showing, over even and
# boily water (even alone 1.10, boily 1.19, a weir 1.25); dips are as many as without it
TAIL = 1.12
# of the boils' time scale, and how many times the chop's rms the boils' must be to rule the dips'
# length; fitted to such runs
SLOW, SLOW_FROM = 1.1, 2.8
_NEVER_PER_MIN = 1e-3  # dips a minute below which none has a length


@dataclass(frozen=True, eq=False)
class Ride:
    """The water's ups and downs along tips of each diameter; arrays have shape (D,)."""

    wave_rms_mm: Array
    boil_rms_mm: Array
    rms_mm: Array
    tail_rms_mm: Array
    """With the boils' part widened by `TAIL`; what margins are reckoned with."""
    rate_hz: Array
    """How often the water comes up past the still waterline."""
    slow_s: Array
    """How much longer dips last because boils are slow, where as much shows as the rms; 0 in chop
    alone."""
    sink_mm: float
    """How much higher the water piles up on a tip that is held back."""

    def __getitem__(self, at: slice) -> "Ride":
        return Ride(
            self.wave_rms_mm[at],
            self.boil_rms_mm[at],
            self.rms_mm[at],
            self.tail_rms_mm[at],
            self.rate_hz[at],
            self.slow_s[at],
            self.sink_mm,
        )


def ride(rig: Rig, sea: Sea, stream: Stream, diameter_mm: ArrayLike) -> Ride:
    """Return how a float rides with tips of several diameters, whatever shows of them.

    `motion.motion`. A float held back by u has water piled on its tip by u^2 / (2 g) (Bernoulli).

    Parameters
    ----------
    rig : the float and its shot
    sea : the chop
    stream : the moving water
    diameter_mm : painted diameters of the tip, shape (D,) or a scalar, for (1,); 0.5 to 30

    >>> from tipsight.afloat import body, chop, rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig.rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> ride(made, chop.Sea(0.018, 0.389, 238.0, 238.0), Stream(), [2.0, 3.0]).rms_mm.round(1)
    array([7.5, 5.1])
    """
    moved = motion.motion(rig, sea, stream, diameter_mm)
    held = float(within("how much slower it is held", stream.hold_m_s, 0.0, 3.0, "m/s"))
    both_m2 = moved.wave_m2 + moved.boil_m2
    speed_m2_s2 = moved.wave_speed_m2_s2 + moved.boil_speed_m2_s2
    return Ride(
        1e3 * np.sqrt(moved.wave_m2),
        1e3 * np.sqrt(moved.boil_m2),
        1e3 * np.sqrt(both_m2),
        1e3 * np.sqrt(moved.wave_m2 + TAIL**2 * moved.boil_m2),
        np.sqrt(speed_m2_s2 / both_m2) / (2.0 * np.pi),
        _slow_s(moved.boil_m2 / moved.wave_m2, boils.time_scale_s(stream)),
        1e3 * held**2 / (2.0 * GRAVITY_M_S2),
    )


def _slow_s(boil_over_wave: Array, scale_s: float) -> Array:
    """Return `Ride.slow_s` from the ratio of variances."""
    if not np.isfinite(scale_s):
        return np.zeros_like(boil_over_wave)
    share = boil_over_wave**2 / (boil_over_wave**2 + SLOW_FROM**4)
    return np.asarray(SLOW * scale_s * share)


def ride_margin(showing_mm: ArrayLike, ride: Ride) -> Array:
    """Return how many times the water's ups and downs go into what shows [-].

    (showing - piled-up water) / `Ride.tail_rms_mm`, below nothing where the water covers the tip.
    From 3 up it rides, 2 to 3 it blips, 1 to 2 it is dragged under often (judgement).

    Parameters
    ----------
    showing_mm : length out of the water; 0 to 500. Broadcasts against the ride's diameters, (D,)
    ride : how the float rides

    >>> one = np.ones(1)
    >>> float(ride_margin(30.0, Ride(one, one, one, 10 * one, one, one, 0.0))[0])
    3.0
    """
    showing = within("showing", showing_mm, 0.0, 500.0, "mm")
    return np.asarray((showing - ride.sink_mm) / ride.tail_rms_mm)


def time_under(margin: ArrayLike) -> Array:
    """Return the share of time, 0 to 1, that a tip of a ride margin [-] is under water.

    A Gaussian process is above m times its rms for 1 - Phi(m) of the time. Runs of the nonlinear
    equation in the time domain give a fifth more to two fifths less on even water, for margins of
    1.3 to 3; up to 1.6 times as much where it boils and five times at a margin of 3 below a weir
    (of a time that is still below a hundredth).

    >>> round(float(time_under(2.0)), 4)
    0.0228
    """
    return np.asarray(scipy.special.ndtr(-np.asarray(margin, dtype=float)))


def _over_rms(showing_mm: ArrayLike, ride: Ride) -> Array:
    """Return the margin by which dips are counted: as `ride_margin`, without `TAIL`."""
    showing = within("showing", showing_mm, 0.0, 500.0, "mm")
    return np.asarray((showing - ride.sink_mm) / ride.rms_mm)


def dips_per_min(showing_mm: ArrayLike, ride: Ride) -> Array:
    """Return how often a tip goes under with no fish about [1/min].

    What shows [mm], 0 to 500, broadcasts against the ride's diameters, (D,). Rice (1945), Bell
    System Technical Journal 24, sec. 3.3 (from memory): up-crossings of m times the rms by a
    Gaussian process, rate exp(-m^2 / 2). Runs of the nonlinear equation give as many within a
    fifth up to twice the rms, and from there to three times it, where dips are one or a few a
    minute, up to half as many again (1.8 times where it boils).

    >>> one = np.ones(1)
    >>> rides = Ride(one, one, 10 * one, one, 0.5 * one, one, 0.0)
    >>> float(dips_per_min(20.0, rides)[0].round(2))
    4.06
    """
    m = _over_rms(showing_mm, ride)
    return np.asarray(60.0 * ride.rate_hz * np.exp(-0.5 * m**2))


def ordinary_dip_s(showing_mm: ArrayLike, ride: Ride) -> Array:
    """Return the length that 95 % of the dips stay below [s], so that a longer one is a bite.

    What shows [mm], 0 to 500, broadcasts against the ride's diameters, (D,). Not a number where
    the tip dips less than once in a thousand minutes, or is under more often than not.

    Chop: dips last P / nu in the mean, P the Gaussian share of time and nu the dips, and above a
    high level each is a parabola whose height is exponential, so that its length follows
    Rayleigh's law (Leadbetter, Lindgren and Rootzen 1983, Extremes and Related Properties, ch. 10;
    from memory) and the 95th percentile is sqrt(4 ln 20 / pi) = 1.953 times the mean. Boils: water
    with a correlation of exp(-t / T) comes back from m times its rms in about T / m, and a tip
    once under has no spring left; the part of T that counts is fitted to runs of the nonlinear
    equation in the time domain, whose dips are 0.6 to 1.25 times as long on even water, up to 1.5
    times where it boils and up to 2.7 below a weir.

    >>> one = np.ones(1)
    >>> rides = Ride(one, one, 10 * one, one, 0.5 * one, 1.2 * one, 0.0)
    >>> float(ordinary_dip_s(20.0, rides)[0].round(2))
    1.26
    """
    m = _over_rms(showing_mm, ride)
    each = dips_per_min(showing_mm, ride)
    none = (each < _NEVER_PER_MIN) | (m <= 0.0)
    mean_s = 60.0 * time_under(m) / np.where(none, 1.0, each)
    slow_s = ride.slow_s / np.where(none, 1.0, m)
    return np.where(none, np.nan, np.sqrt(np.log(20.0) * 4.0 / np.pi) * mean_s + slow_s)


def boil_factor_from_dips(
    dips: float, showing_mm: float, diameter_mm: float, rig: Rig, sea: Sea, stream: Stream
) -> float:
    """Return how boily the water must be for a tip to go under so often, 0 to 10 [-].

    The first rise of `dips_per_min` through the count. Mistakes where the waves alone put the tip
    under more often, or no boils would so often.

    Parameters
    ----------
    dips : the angler's own count with no fish about, a minute; 0.01 to 60
    showing_mm, diameter_mm : length of that tip out of the water, and its painted diameter
    rig, sea, stream : float and water; the stream's own boil factor does not matter
    """
    count = float(within("times a minute that it goes under", dips, 0.01, 60.0))

    def surplus(factor: float) -> float:
        rides = ride(rig, sea, replace(stream, boil_factor=factor), diameter_mm)
        each = float(dips_per_min(showing_mm, rides)[0])
        return float(np.log(max(each, 1e-300) / count))

    low = surplus(0.0)
    if low > 0.0:
        raise Mistakes(
            [
                Mistake(
                    "goes under",
                    f"{count:g} a minute",
                    f"the waves alone put this tip under {count * np.exp(low):.2g} times a minute",
                    "a calmer surface, or a higher count",
                )
            ]
        )
    grid = np.geomspace(0.05, boils.MOST_BOIL, 24)
    before = 0.0
    for factor in grid:
        if surplus(float(factor)) >= 0.0:
            return float(scipy.optimize.brentq(surplus, before, float(factor), xtol=1e-6))
        before = float(factor)
    raise Mistakes(
        [
            Mistake(
                "goes under",
                f"{count:g} a minute",
                "no boils put this tip under so often, not even ten times those of an even glide",
                "a lower count, or a faster pace",
            )
        ]
    )
