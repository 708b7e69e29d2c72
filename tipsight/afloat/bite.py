"""What a bite has to do to be seen, and what drags a tip right under."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.freshwater import density_kg_m3, surface_tension_n_m
from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.afloat.rig import Rig, moving_mass_kg
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]
ADVANCING_DEG = 80.0  # contact angle of water creeping up a varnished tip; from memory
RECEDING_DEG = 40.0  # and leaving it; from memory
PLUCK_MM, PLUCK_S = 10.0, 0.2  # mm in s; judgement


def meniscus_g(
    diameter_mm: ArrayLike, contact_angle_deg: ArrayLike = 0.0, temperature_c: ArrayLike = 10.0
) -> Array:
    """Return the downward pull of the water's skin on a tip [gf]; all arguments broadcast.

    On an upright cylinder exactly 2 pi R sigma cos(angle), below nothing on a greasy tip of more
    than 90 deg (de Gennes, Brochard-Wyart and Quere 2004, Capillarity and Wetting Phenomena, ch.
    2; from memory).

    >>> round(float(meniscus_g(3.0)), 4), round(float(meniscus_g(3.0, 60.0)), 4)
    (0.0713, 0.0357)
    """
    edge_m = np.pi * 1e-3 * within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    angle = np.radians(within("contact angle", contact_angle_deg, 0.0, 180.0, "deg"))
    newtons = edge_m * surface_tension_n_m(temperature_c) * np.cos(angle)
    return np.asarray(1e3 / GRAVITY_M_S2 * newtons)


def meniscus_band_g(diameter_mm: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return the pull that can come and go with no movement of the tip, in a flat calm [gf].

    2 pi R sigma (cos receding - cos advancing), contact-angle hysteresis; ripples shake it out.

    >>> round(float(meniscus_band_g(3.0)), 3)
    0.042
    """
    creeping = meniscus_g(diameter_mm, ADVANCING_DEG, temperature_c)
    return np.asarray(meniscus_g(diameter_mm, RECEDING_DEG, temperature_c) - creeping)


def sink_force_g(
    diameter_mm: ArrayLike, showing_mm: ArrayLike, temperature_c: float = 10.0
) -> tuple[Array, Array]:
    """Return the force that just drowns what shows, without and with the skin of the water [gf].

    Stiffness times what shows, exact geometry; plus the 2 pi R sigma that the rim of a dry top
    holds until it floods.

    Parameters
    ----------
    diameter_mm : painted diameter, any shape; 0.5 to 30
    showing_mm : length out of the water, broadcasts; 0 to 500
    temperature_c : water, 0 to 30

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
    """Return the slow draw on the hook that moves a tip just enough to be seen [gf].

    Stiffness times the dip, and half of `meniscus_band_g`, about which the tip stands at rest.

    Parameters
    ----------
    diameter_mm : painted diameter, any shape; 0.5 to 30
    visible_dip_mm : smallest dip that the eye sees, broadcasts; 0 to 500, or not a number, as the
        draw is then, where the tip itself is not seen
    temperature_c : water, 0 to 30

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
    """Return the pluck on the hook that takes the tip down so far in such a time [gf].

    Newton: (M + A33 + rho V_shot / 2) 2 s / t^2, steady acceleration from rest, for the weight of
    the whole rig. The tip's spring asks for less by five times and comes in only at the end, so
    that this is for what a heavy rig deadens; a slow draw is `slow_bite_g`.

    Parameters
    ----------
    rig : the float and its shot
    diameter_mm : painted diameter of the tip, any shape; 0.5 to 30
    dip_mm, within_s : how far, 0.1 to 100, in what time, 0.02 to 5
    temperature_c : water, 0 to 30

    >>> from tipsight.afloat import body, rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> round(float(pluck_g(rig.rig(hull, 10.0, 1.0, -30.0, 1.2), 3.0)), 2)
    0.18
    """
    dip = float(within("dip of a pluck", dip_mm, 0.1, 100.0, "mm"))
    time = float(within("time of a pluck", within_s, 0.02, 5.0, "s"))
    moving = moving_mass_kg(rig, diameter_mm, float(density_kg_m3(temperature_c)))
    return np.asarray(1e3 * moving * 2.0 * 1e-3 * dip / time**2 / GRAVITY_M_S2)
