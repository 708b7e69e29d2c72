"""What wind and stream do to tip and line, which is often more than they do to the float."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat.freshwater import density_kg_m3, kinematic_viscosity_m2_s
from tipsight.afloat.stance import cylinder_drag
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]

AIR_KG_M3 = 1.225
"""ISO 2533 (1975) at sea level; from memory."""
WIRE_DRAG = 1.1
"""Of a long thin line across the wind, Reynolds numbers of 50 to 1000."""


def wind_at_m_s(speed_m_s: ArrayLike, height_m: ArrayLike) -> Array:
    """Return the wind close above the water.

    Parameters
    ----------
    speed_m_s : array_like
        Ten-metre wind [m/s], any shape; 0 to 60.
    height_m : array_like
        Height [m], broadcasts; 0.001 to 10.

    Returns
    -------
    numpy.ndarray
        Wind there [m/s].

    Raises
    ------
    OutOfRange
        If a speed or height is outside its range.

    Notes
    -----
    Power law of a seventh (Hellmann 1916, from memory; engineering practice). At 16 mm it gives
    0.40, where the logarithmic law over 0.2 mm of roughness gives 0.405.

    Examples
    --------
    >>> round(float(wind_at_m_s(10.0, 0.016)), 2)
    3.99
    """
    speed = within("wind", speed_m_s, 0.0, 60.0, "m/s")
    height = within("height above the water", height_m, 1e-3, 10.0, "m")
    return np.asarray(speed * (height / 10.0) ** (1.0 / 7.0))


def wind_on_tip_g(
    speed_m_s: ArrayLike,
    diameter_mm: ArrayLike,
    showing_mm: ArrayLike,
    *,
    side_drag: float | None = None,
) -> Array:
    """Return the push of the wind on what shows of a tip.

    Parameters
    ----------
    speed_m_s : array_like
        Ten-metre wind [m/s], any shape; 0 to 60.
    diameter_mm : array_like
        Painted diameter [mm], broadcasts; 0.5 to 30.
    showing_mm : array_like
        Length out of the water [mm], broadcasts; 2 to 500.
    side_drag : float, optional
        Drag coefficient; `cylinder_drag` of the tip with its image in the water if left out.

    Returns
    -------
    numpy.ndarray
        Push [gf].

    Raises
    ------
    OutOfRange
        If a number is outside its range.

    Notes
    -----
    rho C d L U^2 / 2 with the wind at half the showing height.

    Examples
    --------
    >>> round(float(wind_on_tip_g(8.0, 3.0, 31.75)), 3)
    0.055
    """
    showing = within("showing", showing_mm, 2.0, 500.0, "mm")
    d = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    wind = wind_at_m_s(speed_m_s, 0.5e-3 * showing)
    drag = cylinder_drag(np.maximum(2.0 * showing / d, 1.0)) if side_drag is None else side_drag
    return np.asarray(1e3 / GRAVITY_M_S2 * 0.5 * AIR_KG_M3 * drag * 1e-6 * d * showing * wind**2)


def line_in_air_g(
    speed_m_s: ArrayLike, length_m: ArrayLike, line_mm: ArrayLike, height_m: ArrayLike = 1.0
) -> Array:
    """Return the push of the wind on line in the air; about half of it comes to the float.

    Parameters
    ----------
    speed_m_s : array_like
        Ten-metre wind across the line [m/s], any shape; 0 to 60.
    length_m : array_like
        Line in the air [m], broadcasts; 0 to 200.
    line_mm : array_like
        Its diameter [mm], broadcasts; 0.05 to 1.
    height_m : array_like
        Its mean height [m], broadcasts; 0.001 to 10.

    Returns
    -------
    numpy.ndarray
        Push on the whole [gf].

    Raises
    ------
    OutOfRange
        If a number is outside its range.

    Notes
    -----
    rho C d L U^2 / 2, C = 1.1.

    Examples
    --------
    >>> round(float(line_in_air_g(8.0, 15.0, 0.20)), 1)
    6.8
    """
    long = within("line in the air", length_m, 0.0, 200.0, "m")
    thick = 1e-3 * within("line", line_mm, 0.05, 1.0, "mm")
    wind = wind_at_m_s(speed_m_s, height_m)
    newtons = 0.5 * AIR_KG_M3 * WIRE_DRAG * thick * long * wind**2
    return np.asarray(1e3 / GRAVITY_M_S2 * newtons)


def line_on_water_g(
    sideways_m_s: ArrayLike,
    length_m: ArrayLike,
    line_mm: ArrayLike,
    temperature_c: float = 10.0,
) -> Array:
    """Return the pull of floating line that the stream or the wind drags sideways.

    Parameters
    ----------
    sideways_m_s : array_like
        Speed of the line through the water [m/s], any shape; 0 to 3.
    length_m : array_like
        Line on the water [m], broadcasts; 0 to 200.
    line_mm : array_like
        Its diameter [mm], broadcasts; 0.05 to 1.
    temperature_c : float
        Water [deg C].

    Returns
    -------
    numpy.ndarray
        Pull of the whole [gf].

    Raises
    ------
    OutOfRange
        If a number is outside its range.

    Notes
    -----
    Half of the line is wet; C = 1 + 10 Re^(-2/3) of a cylinder across the flow (White 1991,
    Viscous Fluid Flow, from memory; Reynolds numbers of 1 to 2e5).

    Examples
    --------
    >>> round(float(line_on_water_g(0.05, 20.0, 0.20)), 1)
    0.9
    """
    speed = within("sideways speed", sideways_m_s, 0.0, 3.0, "m/s")
    long = within("line on the water", length_m, 0.0, 200.0, "m")
    thick = 1e-3 * within("line", line_mm, 0.05, 1.0, "mm")
    reynolds = np.maximum(speed * thick / kinematic_viscosity_m2_s(temperature_c), 1e-3)
    drag = 1.0 + 10.0 * reynolds ** (-2.0 / 3.0)
    rho = density_kg_m3(temperature_c)
    return np.asarray(1e3 / GRAVITY_M_S2 * 0.25 * rho * drag * thick * long * speed**2)
