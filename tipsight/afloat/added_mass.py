"""Water that has to move along with a body."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.body import Profile
from tipsight.checks import within

Array = NDArray[np.float64]
FLAT_END = 0.99  # one flat end of a long cylinder, over (2/3) pi rho R^3; boundary elements


def spheroid(aspect: ArrayLike) -> Array:
    """Return added over displaced mass of a prolate spheroid [-], moving along its axis.

    Lamb (1932), Hydrodynamics, art. 114-115 (articles from memory), length over diameter a of 1
    to 200: e^2 = 1 - 1 / a^2, alpha = 2 (1 - e^2) / e^3 (atanh e - e), k1 = alpha / (2 - alpha).
    Below an aspect of 1.0001 the sphere's 1/2.

    >>> round(float(spheroid(4.0)), 4)
    0.0816
    """
    ratio = within("length over diameter", aspect, 1.0, 200.0)
    safe = np.maximum(ratio, 1.0001)
    e2 = 1.0 - 1.0 / safe**2
    e = np.sqrt(e2)
    alpha = 2.0 * (1.0 - e2) / (e2 * e) * (np.arctanh(e) - e)
    return np.where(ratio < 1.0001, 0.5, alpha / (2.0 - alpha))


def kappa(profile: Profile) -> float:
    """Return how much water a body drags along when it heaves, over (2/3) pi rho R^3 [-].

    Each end counts by how far it takes to fall to half the largest radius R: as half a spheroid of
    the same taper (`spheroid`), and from a hemisphere's 0.5 to a flat end's 0.99 in a straight
    line by that length; an end that never falls so far counts as flat (judgement). Within 10 % of
    potential flow for spars, spheroids and balls with tip and stem, and dowels with a tapered
    foot. Too much for what tapers in straight lines: drops 1.2 times, cones 1.5 to 1.8, and up to
    twice for sticks and for stems over half as wide as the body. In the patterns that makes the
    ups and downs less than 1 % and a pluck less than 4 % too much.

    >>> ball = 0.5 * (1.0 - np.cos(np.linspace(0.0, np.pi, 201)))
    >>> outline = Profile(-20.0 * ball, 20.0 * np.sqrt(ball * (1.0 - ball)))
    >>> round(kappa(outline), 2)
    1.0
    """
    z, r = profile.z_mm, profile.r_mm
    largest = float(r.max())
    wide = np.flatnonzero(r >= largest * (1.0 - 1e-9))
    return _end(z[wide[-1] :], r[wide[-1] :], largest) + _end(
        -z[wide[0] :: -1], r[wide[0] :: -1], largest
    )


def _end(z: Array, r: Array, largest: float) -> float:
    """Return one end's part, the outline running away from the widest section downwards in z."""
    under = np.flatnonzero(r < largest / 2.0)
    if under.size == 0:
        fall = 0.0
    else:
        i = under[0]
        share = (r[i - 1] - largest / 2.0) / (r[i - 1] - r[i])
        fall = float((z[0] - z[i - 1]) + share * (z[i - 1] - z[i])) / largest
    aspect = fall / np.sqrt(0.75)
    if aspect >= 1.0:
        return float(aspect * spheroid(min(aspect, 200.0)))
    return float(FLAT_END + (0.5 - FLAT_END) * aspect)


def heave_added_mass_kg(profile: Profile, kappa: float, density_kg_m3: float) -> float:
    """Return the water that heaves along with a body [kg]: A33 = kappa (2/3) pi rho R^3, kappa 0 to 5.

    >>> spar = Profile(np.array([0.0, -200.0]), np.array([10.0, 10.0]))
    >>> round(1000 * heave_added_mass_kg(spar, 0.99, 1000.0), 3)
    2.073
    """
    factor = float(within("added-mass factor", kappa, 0.0, 5.0))
    radius_m = 1e-3 * float(profile.r_mm.max())
    return factor * 2.0 / 3.0 * float(np.pi) * density_kg_m3 * radius_m**3
