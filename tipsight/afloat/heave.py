"""How a float follows the water up and down: masses, spring, drag, and its answer to a wave."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import added_mass, body
from tipsight.afloat.freshwater import density_kg_m3, kinematic_viscosity_m2_s
from tipsight.afloat.rig import Rig, displaced_m3, moving_mass_kg
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]


def stiffness_n_m(diameter_mm: ArrayLike, temperature_c: ArrayLike = 10.0) -> Array:
    """Return the force that sinks a painted tip of 0.5 to 30 mm a little [N/m].

    Archimedes: rho g pi d^2 / 4.
    """
    diameter = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    area_m2 = np.pi / 4.0 * 1e-6 * diameter**2
    return np.asarray(density_kg_m3(temperature_c) * GRAVITY_M_S2 * area_m2)


def stiffness_g_per_mm(diameter_mm: ArrayLike, temperature_c: ArrayLike = 10.0) -> Array:
    """Return the force that takes a painted tip of 0.5 to 30 mm down by a millimetre [gf/mm].

    >>> round(float(stiffness_g_per_mm(3.0)), 6)
    0.007066
    """
    return np.asarray(stiffness_n_m(diameter_mm, temperature_c) / GRAVITY_M_S2)


@dataclass(frozen=True, eq=False)
class Parts:
    """Coefficients of a float with D tips; arrays are of shape (D, 1)."""

    spring_n_m: Array
    mass_kg: Array
    """All that moves: float, shot, and the water with both."""
    carried_kg: Array
    """Water whose pressure and added mass push on the float as it moves past."""
    shot_carried_kg: float
    skin: float
    """Skin friction over the root of the frequency [N s^1.5 / m]."""
    body_drag: float
    """Quadratic [N s2 / m2]."""
    shot_drag: float
    slip_m_s: float


def parts(rig: Rig, diameter_mm: ArrayLike, temperature_c: float = 10.0) -> Parts:
    """Return the coefficients of heave of a float with tips of shape (D,), or a scalar, in mm.

    Skin friction of a swinging wall, S sqrt(rho^2 nu w / 2) (Stokes 1851; Batchelor 1967,
    sec. 4.3; from memory); drag rho C A / 2 of the body's largest section and of the shot.
    """
    rho = float(density_kg_m3(temperature_c))
    d = np.atleast_1d(np.asarray(diameter_mm, dtype=float))[:, None]
    largest_m = 2e-3 * float(rig.profile.r_mm.max())
    wet_m2 = 1e-6 * body.wetted_area_mm2(rig.profile)
    return Parts(
        stiffness_n_m(d, temperature_c),
        moving_mass_kg(rig, d, rho),
        rho * displaced_m3(rig, d) + added_mass.heave_added_mass_kg(rig.profile, rig.kappa, rho),
        1.5 * rho * rig.shot_volume_m3,
        wet_m2 * rho * float(np.sqrt(kinematic_viscosity_m2_s(temperature_c) / 2.0)),
        0.5 * rho * rig.body_drag * float(np.pi) / 4.0 * largest_m**2,
        0.5 * rho * rig.shot_drag * rig.shot_area_m2,
        rig.shot_slip_m_s,
    )


def felt_share(rig: Rig, diameter_mm: ArrayLike, wavenumber_rad_m: Array) -> tuple[Array, Array]:
    """Return how much of a wave at the surface the float, (D, F), and its shot, (F,), feel below [-].

    The volume mean of exp(k (z - waterline)), and exp(-k z_shot); k above nothing [rad/m].

    >>> from tipsight.afloat.rig import rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> felt, _ = felt_share(rig(hull, 10.0, 1.0, -30.0, 1.2), 3.0, np.array([16.0]))
    >>> round(float(felt[0, 0]), 2)
    0.55
    """
    d = np.atleast_1d(np.asarray(diameter_mm, dtype=float))[:, None]
    k = wavenumber_rad_m
    hull = 1e-9 * body.section_integral(rig.profile, k, rig.waterline_mm)
    tip = np.pi / 4.0 * 1e-6 * d**2 * -np.expm1(-1e-3 * k * rig.waterline_mm) / k
    return (hull + tip) / displaced_m3(rig, d), np.exp(-k * rig.shot_depth_m)
