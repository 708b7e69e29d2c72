"""What a bite has to do to be seen, and what drags a tip right under."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.freshwater import density_kg_m3, surface_tension_n_m
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.afloat.rig import Rig, moving_mass_kg
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]
ADVANCING_DEG, RECEDING_DEG = 80.0, 40.0
"""Contact angles of water creeping up a varnished tip, and leaving it; from memory."""
PLUCK_MM, PLUCK_S = 10.0, 0.2
"""A pluck: so far in such a time; judgement."""


def meniscus_g(
    diameter_mm: ArrayLike, contact_angle_deg: ArrayLike = 0.0, temperature_c: ArrayLike = 10.0
) -> Array:
    """Return the pull of the water's skin on a tip.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    contact_angle_deg : array_like
        Between water and tip [deg], broadcasts; 0 to 180.
    temperature_c : array_like
        Water [deg C], broadcasts.

    Returns
    -------
    numpy.ndarray
        Downwards [gf]; upwards (below nothing) on a greasy tip of more than 90 deg.

    Raises
    ------
    OutOfRange
        If a diameter, an angle or the temperature is outside its range.

    Notes
    -----
    On an upright cylinder exactly 2 pi R sigma cos(angle) (de Gennes, Brochard-Wyart and Quere
    2004, Capillarity and Wetting Phenomena, ch. 2; from memory).

    Examples
    --------
    >>> round(float(meniscus_g(3.0)), 4), round(float(meniscus_g(3.0, 60.0)), 4)
    (0.0713, 0.0357)
    """
    edge_m = np.pi * 1e-3 * within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    angle = np.radians(within("contact angle", contact_angle_deg, 0.0, 180.0, "deg"))
    newtons = edge_m * surface_tension_n_m(temperature_c) * np.cos(angle)
    return np.asarray(1e3 / GRAVITY_M_S2 * newtons)


def meniscus_band_g(diameter_mm: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the pull that can come and go with no movement of the tip, in a flat calm.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Band [gf]; ripples shake it out.

    Raises
    ------
    OutOfRange
        If a diameter or the temperature is outside its range.

    Notes
    -----
    2 pi R sigma (cos receding - cos advancing), contact-angle hysteresis, 40 and 80 deg on
    varnish (from memory).

    Examples
    --------
    >>> round(float(meniscus_band_g(3.0)), 3)
    0.042
    """
    creeping = meniscus_g(diameter_mm, ADVANCING_DEG, temperature_c)
    return np.asarray(meniscus_g(diameter_mm, RECEDING_DEG, temperature_c) - creeping)


def sink_force_g(
    diameter_mm: ArrayLike, showing_mm: ArrayLike, temperature_c: float = 10.0
) -> tuple[Array, Array]:
    """Return the force that just drowns what shows, without and with the skin of the water.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    showing_mm : array_like
        Length out of the water [mm], broadcasts; 0 to 500.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    low_g, high_g : numpy.ndarray
        Buoyancy of the showing part [gf], and that with the meniscus that the rim of a dry top
        holds until it floods.

    Raises
    ------
    OutOfRange
        If a diameter, a length or the temperature is outside its range.

    Notes
    -----
    Stiffness times what shows; plus 2 pi R sigma.

    Examples
    --------
    >>> low_g, high_g = sink_force_g(3.0, 31.75)
    >>> round(float(low_g), 3), round(float(high_g), 3)
    (0.224, 0.296)
    """
    showing = within("showing", showing_mm, 0.0, 500.0, "mm")
    low = stiffness_g_per_mm(diameter_mm, temperature_c) * showing
    return np.asarray(low), np.asarray(low + meniscus_g(diameter_mm, 0.0, temperature_c))


def slow_bite_g(
    diameter_mm: ArrayLike, visible_dip_mm: ArrayLike, temperature_c: float = 10.0
) -> Array:
    """Return the slow draw on the hook that moves a tip just enough to be seen.

    Parameters
    ----------
    diameter_mm : array_like
        Painted diameter [mm], any shape; 0.5 to 30.
    visible_dip_mm : array_like
        Smallest dip that the eye sees [mm], broadcasts; 0 and more, or not a number where the
        tip itself is not seen.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Force [gf]; not a number where the dip is not.

    Raises
    ------
    OutOfRange
        If a diameter, a dip or the temperature is outside its range.

    Notes
    -----
    Stiffness times the dip, and half of `meniscus_band_g`, about which the tip stands at rest.

    Examples
    --------
    >>> round(float(slow_bite_g(3.0, 5.0)), 3)
    0.056
    """
    dip = np.asarray(visible_dip_mm, dtype=float)
    within("smallest dip seen", np.where(np.isnan(dip), 0.0, dip), 0.0, 500.0, "mm")
    spring = stiffness_g_per_mm(diameter_mm, temperature_c) * dip
    return np.asarray(spring + 0.5 * meniscus_band_g(diameter_mm, temperature_c))


def pluck_g(
    rig: Rig,
    diameter_mm: ArrayLike,
    *,
    dip_mm: float = PLUCK_MM,
    within_s: float = PLUCK_S,
    temperature_c: float = 10.0,
) -> Array:
    """Return the pluck on the hook that takes the tip down so far in such a time.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameter of the tip [mm], any shape; 0.5 to 30.
    dip_mm : float
        How far [mm]; 0.1 to 100.
    within_s : float
        In what time [s]; 0.02 to 5.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Force [gf], for the weight of the whole rig and not for the tip's spring.

    Raises
    ------
    OutOfRange
        If a number is outside its range.

    Notes
    -----
    Newton: (M + A33 + rho V_shot / 2) 2 s / t^2, steady acceleration from rest. The spring asks
    for less by five times and comes in only at the end, so that this is for what a heavy rig
    deadens; a slow draw is `slow_bite_g`.

    Examples
    --------
    >>> from tipsight.afloat import body, rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> round(float(pluck_g(rig.rig(hull, 10.0, 1.0, -30.0, 1.2), 3.0)), 2)
    0.18
    """
    dip = float(within("dip of a pluck", dip_mm, 0.1, 100.0, "mm"))
    time = float(within("time of a pluck", within_s, 0.02, 5.0, "s"))
    moving = moving_mass_kg(rig, diameter_mm, float(density_kg_m3(temperature_c)))
    return np.asarray(1e3 * moving * 2.0 * 1e-3 * dip / time**2 / GRAVITY_M_S2)
