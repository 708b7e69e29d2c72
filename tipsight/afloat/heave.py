"""How a float follows the water up and down: masses, spring, drag, and its answer to a wave."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import added_mass, body, chop
from tipsight.afloat.freshwater import density_kg_m3, kinematic_viscosity_m2_s
from tipsight.afloat.rig import Rig, displaced_m3, moving_mass_kg
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]


def stiffness_n_m(diameter_mm: ArrayLike, temperature_c: ArrayLike = 10.0) -> Array:
    """Return the force that it takes to sink a tip a little.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    temperature_c : array_like
        Water [deg C], broadcasts.

    Returns
    -------
    numpy.ndarray
        Stiffness [N/m].

    Raises
    ------
    OutOfRange
        If a diameter or the temperature is outside its range.

    Notes
    -----
    Archimedes: rho g pi d^2 / 4.

    Examples
    --------
    >>> round(float(stiffness_n_m(3.0)), 4)
    0.0693
    """
    diameter = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    area_m2 = np.pi / 4.0 * 1e-6 * diameter**2
    return np.asarray(density_kg_m3(temperature_c) * GRAVITY_M_S2 * area_m2)


def stiffness_g_per_mm(diameter_mm: ArrayLike, temperature_c: ArrayLike = 10.0) -> Array:
    """Return the force that takes a tip down by a millimetre.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    temperature_c : array_like
        Water [deg C], broadcasts.

    Returns
    -------
    numpy.ndarray
        Stiffness [gf/mm].

    Raises
    ------
    OutOfRange
        If a diameter or the temperature is outside its range.

    Notes
    -----
    `stiffness_n_m` in grams as force.

    Examples
    --------
    >>> round(float(stiffness_g_per_mm(3.0)), 6)
    0.007066
    """
    return np.asarray(stiffness_n_m(diameter_mm, temperature_c) / GRAVITY_M_S2)


def natural_period_s(rig: Rig, diameter_mm: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the period in which a float bobs by itself.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameter of the tip [mm], any shape; 0.5 to 30.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Period [s], same shape.

    Raises
    ------
    OutOfRange
        If a diameter or the temperature is outside its range.

    Notes
    -----
    2 pi sqrt(moving mass / stiffness), undamped.

    Examples
    --------
    >>> from tipsight.afloat.rig import rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> round(float(natural_period_s(rig(hull, 10.0, 1.0, -30.0, 1.2), 3.0)), 1)
    1.4
    """
    moving = moving_mass_kg(rig, diameter_mm, float(density_kg_m3(temperature_c)))
    return np.asarray(2.0 * np.pi * np.sqrt(moving / stiffness_n_m(diameter_mm, temperature_c)))


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
    """Return the coefficients of heave of a float with tips of several diameters.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameters of the tip [mm], shape (D,) or a scalar; 0.5 to 30.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    Parts
        Masses, spring and drag.

    Raises
    ------
    OutOfRange
        If a diameter or the temperature is outside its range.

    Notes
    -----
    Skin friction of a swinging wall, S sqrt(rho^2 nu w / 2) (Stokes 1851; Batchelor 1967,
    sec. 4.3; from memory); drag rho C A / 2 of the body's largest section and of the shot.

    Examples
    --------
    >>> from tipsight.afloat.rig import rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> parts(rig(hull, 10.0, 1.0, -30.0, 1.2), [2.0, 3.0]).mass_kg.shape
    (2, 1)
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
    """Return how much of a wave at the surface the float, and its shot, feel below.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameters of the tip [mm], shape (D,) or a scalar.
    wavenumber_rad_m : numpy.ndarray
        Wavenumbers [rad/m], shape (F,), above nothing.

    Returns
    -------
    float_share, shot_share : numpy.ndarray
        Shapes (D, F) and (F,) [-].

    Raises
    ------
    OutOfRange
        If a diameter or a wavenumber is outside its range.

    Notes
    -----
    The volume mean of exp(k (z - waterline)), and exp(-k z_shot).

    Examples
    --------
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


def relative_motion(
    rig: Rig,
    diameter_mm: ArrayLike,
    period_s: ArrayLike,
    temperature_c: float = 10.0,
    *,
    drag: bool = False,
) -> NDArray[np.complex128]:
    """Return how far the water runs up a tip in a regular wave, for each unit of the wave.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameters of the tip [mm], shape (D,) or a scalar.
    period_s : array_like
        Periods of the wave [s], shape (F,) or a scalar; 0.05 to 60.
    temperature_c : float
        Water [deg C].
    drag : bool
        Whether skin friction and the steady drag of the shot damp it; without, as the
        potential theory of the outside check.

    Returns
    -------
    numpy.ndarray
        1 - Z / a, complex, shape (D, F) [-].

    Raises
    ------
    OutOfRange
        If a diameter, a period or the temperature is outside its range.

    Notes
    -----
    Slender vertical body: Z/a = [C - w^2 ((rho V + A33) e + 1.5 rho V_s e_s) + i w B] over
    [C - w^2 (M + A33 + rho V_s / 2) + i w B], e the volume mean of exp(k z) (Newman 1977, Marine
    Hydrodynamics, ch. 6; from memory). Within 0.013 of boundary elements for 0.2 to 1 s.

    Examples
    --------
    >>> from tipsight.afloat.rig import rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> round(float(abs(relative_motion(rig(hull, 10.0, 1.0, -30.0, 1.2), 3.0, 0.4)[0, 0])), 2)
    0.68
    """
    period = np.atleast_1d(within("wave period", period_s, 0.05, 60.0, "s"))
    omega = 2.0 * np.pi / period
    felt, felt_shot = felt_share(rig, diameter_mm, chop.wavenumber_rad_m(omega, temperature_c))
    p = parts(rig, diameter_mm, temperature_c)
    skin = p.skin * np.sqrt(omega) if drag else 0.0
    shot = p.shot_drag * p.slip_m_s if drag else 0.0
    pushed = p.carried_kg * felt + p.shot_carried_kg * felt_shot
    behind = -(omega**2) * (p.mass_kg - pushed) + 1j * omega * (
        skin * (1.0 - felt) + shot * (1.0 - felt_shot)
    )
    whole = p.spring_n_m - omega**2 * p.mass_kg + 1j * omega * (skin + shot)
    return np.asarray(behind / whole)
