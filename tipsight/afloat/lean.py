"""Whether a float stands, how it leans in wind or when held back, and how that lifts it."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.freshwater import density_kg_m3
from tipsight.afloat.rig import Rig
from tipsight.afloat.stance import Stance, stance
from tipsight.afloat.wind import wind_on_tip_g
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]

LINE_DEG = 3.0  # deg, rise of the line from the float to the rod; judgement
SAFE = 3.0  # times that the moment of the shot has to outdo a top-heavy float's; judgement
_FLAT_DEG = 80.0  # deg; beyond, no lean is told


def upright(
    rig: Rig, diameter_mm: ArrayLike, temperature_c: float = 10.0
) -> tuple[Array, NDArray[np.bool_]]:
    """Return the uprighting moment for each radian [N m], and whether the float stands safely.

    B h_B - W h_G about the foot from which the shot hang; the waterplane's part (1e-8 N m) is
    left out. A float that is top-heavy by itself has to have three times what tips it
    (judgement): pull h_B >= 3 W (h_G - h_B).

    Parameters
    ----------
    rig : the float and its shot
    diameter_mm : painted diameter of the tip, any shape; 0.5 to 30
    temperature_c : water, 0 to 30
    """
    s = stance(rig, diameter_mm, temperature_c)
    tips_it = s.weight_n * (s.weight_at_m - s.lift_at_m)
    stands = (s.shot_pull_n * s.lift_at_m >= SAFE * tips_it) & (s.stiffness_n_m_rad > 0.0)
    return s.stiffness_n_m_rad, np.asarray(stands)


def uprightness(rig: Rig, diameter_mm: ArrayLike, temperature_c: float = 10.0) -> Array:
    """Return how many times the shot's moment outdoes what tips a float over [-].

    Without limit for a float that nothing tips; `SAFE` is the least that stands with a margin.
    ``diameter_mm`` is the tip's with its paint [mm], any shape; 0.5 to 30. See `upright`.

    Examples
    --------
    >>> from tipsight.afloat import body
    >>> from tipsight.afloat.rig import rig
    >>> hull = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> round(float(uprightness(rig(hull, 10.0, 1.0, 30.0, 1.2), 3.0)), 2)
    1.06
    """
    s = stance(rig, diameter_mm, temperature_c)
    tips_it = np.asarray(s.weight_n * (s.weight_at_m - s.lift_at_m))
    held = s.shot_pull_n * s.lift_at_m
    over = tips_it > 0.0
    return np.asarray(np.where(over, held / np.where(over, tips_it, 1.0), np.inf))


def held_back(
    rig: Rig,
    hold_m_s: ArrayLike,
    diameter_mm: ArrayLike,
    temperature_c: float = 10.0,
) -> tuple[Array, Array]:
    """Return how a float leans [deg] and lifts [gf] when it is run slower than the water.

    The lean is of the top towards the rod, below nothing where it leans away; so much more shot as
    the lift keeps the tip where it was. Not numbers where it would lie flatter than 80 deg or
    falls over by itself.

    Moments about the foot, solved exactly: (B' h_B - W h_G) sin a + T sin(psi) h_l sin a =
    T cos(psi) h_l cos a - D h_c, with D = rho C A u^2 cos^2(a) / 2 square to the float (cross-flow
    principle, Hoerner 1965, Fluid-Dynamic Drag, from memory), the shot's drag at the foot,
    T cos(psi) = D cos a + D_shot, and B' = B - lift, lift = T sin(psi) + D sin a. More than the
    tip's own buoyancy of lift pulls the body out, and the sum is then too large.

    Parameters
    ----------
    rig : the float and its shot
    hold_m_s : how much slower, any shape; 0 to 1
    diameter_mm : painted diameter of the tip, broadcasts; 0.5 to 30
    temperature_c : water, 0 to 30
    """
    hold = within("how much slower it is held", hold_m_s, 0.0, 1.0, "m/s")
    s = stance(rig, diameter_mm, temperature_c)
    ram = 0.5 * float(density_kg_m3(temperature_c)) * hold**2
    shot_n = ram * rig.shot_drag * rig.shot_area_m2
    return leaning(s, ram * s.side_drag * s.side_m2, shot_n)


def leaning(
    s: Stance, side_n: ArrayLike, shot_n: ArrayLike, line_deg: float = LINE_DEG
) -> tuple[Array, Array]:
    """Return lean [deg] and lift [gf] of `held_back` from the drags when upright [N].

    The line rises by 0 to 60 deg; solved by ever finer steps to the first balance.
    """
    rise = np.tan(np.radians(float(within("rise of the line", line_deg, 0.0, 60.0, "deg"))))
    side, shot, stiff = np.broadcast_arrays(side_n, shot_n, s.stiffness_n_m_rad)

    def lift_n(angle: Array) -> Array:
        square = side * np.cos(angle) ** 2
        pull = square * np.cos(angle) + shot
        return np.asarray(pull * rise + square * np.sin(angle))

    def uprights(angle: Array) -> Array:
        square = side * np.cos(angle) ** 2
        pull = square * np.cos(angle) + shot
        up = stiff - lift_n(angle) * s.lift_at_m + pull * rise * s.line_at_m
        over = pull * s.line_at_m * np.cos(angle) - square * s.side_at_m
        return np.asarray(up * np.sin(angle) - over)

    share = np.linspace(0.0, 1.0, 161).reshape(-1, *np.ones(stiff.ndim, dtype=int))
    high = np.full(stiff.shape, np.radians(_FLAT_DEG))
    low, found = -high, stiff > 0.0
    for _ in range(4):  # 1 deg between the two, at last 2e-7
        angles = low + share * (high - low)
        above = uprights(angles) >= 0.0
        first = np.asarray(above.argmax(axis=0))
        found = found & above.any(axis=0) & (first > 0)
        low, high = (
            np.take_along_axis(angles, np.maximum(at, 0)[None], axis=0)[0]
            for at in (first - 1, first)
        )
    lifted = 1e3 / GRAVITY_M_S2 * lift_n(high)
    return np.where(found, np.degrees(high), np.nan), np.where(found, lifted, np.nan)


def wind_lean_deg(
    rig: Rig,
    speed_m_s: ArrayLike,
    diameter_mm: ArrayLike,
    showing_mm: ArrayLike,
    temperature_c: float = 10.0,
) -> Array:
    """Return how far the wind leans a drifting float, away from it [deg]; nan if it does not stand.

    The water takes up the push at the middle of the side view, h_water: moments about the foot
    leave tan a = F (h_wind - h_water) / K, K being the uprighting moment for each radian.

    Parameters
    ----------
    rig : the float and its shot
    speed_m_s : ten-metre wind, any shape; 0 to 60
    diameter_mm : painted diameter of the tip, broadcasts; 0.5 to 30
    showing_mm : length out of the water, broadcasts; 2 to 500
    temperature_c : water, 0 to 30
    """
    s = stance(rig, diameter_mm, temperature_c)
    push_n = 1e-3 * GRAVITY_M_S2 * wind_on_tip_g(speed_m_s, diameter_mm, showing_mm)
    arm_m = s.waterline_m + 0.5e-3 * np.asarray(showing_mm, dtype=float) - s.side_at_m
    stiff = s.stiffness_n_m_rad
    lean = np.degrees(np.arctan(push_n * arm_m / np.where(stiff > 0.0, stiff, 1.0)))
    return np.where(stiff > 0.0, lean, np.nan)
