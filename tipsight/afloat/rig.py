"""The float with its shot below it, as the water feels it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import added_mass
from tipsight.afloat.body import Profile, volume_mm3
from tipsight.checks import within

Array = NDArray[np.float64]
BODY_DRAG, SHOT_DRAG = 0.5, 0.45
"""Of a faired body end-on, and of small spheres at Reynolds numbers of 700 to 4000."""


@dataclass(frozen=True, eq=False)
class Rig:
    """A float cocked by its shot; heights z in mm upwards from where the tip leaves the body."""

    profile: Profile
    """The hull, from z = 0 downwards."""
    waterline_mm: float
    """Length of tip that is under water."""
    mass_kg: float
    """Of the float with its tip, without shot."""
    centre_of_mass_mm: float
    """Height of that mass's centre."""
    shot_mass_kg: float
    """All shot, in air."""
    shot_density_kg_m3: float
    shot_depth_m: float
    """From the waterline down to the middle of the shot."""
    shot_area_m2: float
    """Sum of the shots' cross-sections."""
    kappa: float
    """`added_mass.kappa` of the hull."""
    body_drag: float = BODY_DRAG
    shot_drag: float = SHOT_DRAG
    shot_slip_m_s: float = 0.15
    """Steady flow past the shot, which the float tows through slower water."""
    line_mm: float = 0.0
    """Height at which the line leaves the float: the top rubber, at the tip's root."""

    @property
    def shot_volume_m3(self) -> float:
        """Volume of all the shot."""
        return self.shot_mass_kg / self.shot_density_kg_m3

    @property
    def waterline_to_foot_mm(self) -> float:
        """How deep the float's foot hangs."""
        return self.waterline_mm - float(self.profile.z_mm[-1])


def shot_area_m2(mass_g: ArrayLike, density_kg_m3: float) -> float:
    """Return the summed cross-section of round shot.

    Parameters
    ----------
    mass_g : array_like
        Mass of each shot [g], any shape; 0 to 100.
    density_kg_m3 : float
        Of the metal [kg/m3]; 1500 to 25000.

    Returns
    -------
    float
        Area [m2].

    Raises
    ------
    OutOfRange
        If a mass or the density is outside its range.

    Notes
    -----
    Spheres: pi / 4 (6 m / (pi rho))^(2/3) each.

    Examples
    --------
    >>> round(1e6 * shot_area_m2([0.4] * 11, 7290.0))
    192
    """
    mass_kg = 1e-3 * within("shot", mass_g, 0.0, 100.0, "g")
    density = float(within("density of shot", density_kg_m3, 1500.0, 25000.0, "kg/m3"))
    return float((np.pi / 4.0 * (6.0 * mass_kg / (np.pi * density)) ** (2.0 / 3.0)).sum())


def rig(
    profile: Profile,
    waterline_mm: float,
    mass_g: float,
    centre_of_mass_mm: float,
    shot_g: float,
    *,
    shot_density_kg_m3: float = 7290.0,
    shot_depth_m: float = 1.0,
    each_g: float = 0.4,
    shot_slip_m_s: float = 0.15,
) -> Rig:
    """Return a float and its shot put together.

    Parameters
    ----------
    profile : Profile
        The hull, from z = 0 downwards.
    waterline_mm : float
        Length of tip under water [mm]; 0 to 200.
    mass_g : float
        Float with its tip, in air [g]; 0.01 to 100.
    centre_of_mass_mm : float
        Height of its centre from the tip's root [mm].
    shot_g : float
        All shot, in air [g]; 0 to 100.
    shot_density_kg_m3 : float
        Of its metal [kg/m3].
    shot_depth_m : float
        From the waterline to the middle of the shot [m]; 0.01 to 20.
    each_g : float
        Mass of one of them [g], for what the water drags at: a BB unless told.
    shot_slip_m_s : float
        Steady flow past the shot [m/s]; 0 to 3. About a quarter of the pace (judgement).

    Returns
    -------
    Rig
        With the hull's own added mass.

    Raises
    ------
    OutOfRange
        If any of them is outside its range.

    Examples
    --------
    >>> hull = Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> round(made.waterline_to_foot_mm)
    70
    """
    within("wet part of the tip", waterline_mm, 0.0, 200.0, "mm")
    within("weight of the float", mass_g, 0.01, 100.0, "g")
    within("shot", shot_g, 0.0, 100.0, "g")
    within("depth of the shot", shot_depth_m, 0.01, 20.0, "m")
    within("flow past the shot", shot_slip_m_s, 0.0, 3.0, "m/s")
    within("mass of one shot", each_g, 1e-3, 100.0, "g")
    return Rig(
        profile=profile,
        waterline_mm=float(waterline_mm),
        mass_kg=1e-3 * mass_g,
        centre_of_mass_mm=float(centre_of_mass_mm),
        shot_mass_kg=1e-3 * shot_g,
        shot_density_kg_m3=float(shot_density_kg_m3),
        shot_depth_m=float(shot_depth_m),
        shot_area_m2=shot_g / each_g * shot_area_m2(each_g, shot_density_kg_m3),
        kappa=added_mass.kappa(profile),
        shot_slip_m_s=float(shot_slip_m_s),
    )


def displaced_m3(rig: Rig, diameter_mm: ArrayLike) -> Array:
    """Return the volume of float under water with tips of several diameters.

    Parameters
    ----------
    rig : Rig
        The float.
    diameter_mm : array_like
        Painted diameter of the tip [mm], any shape; 0.5 to 30.

    Returns
    -------
    numpy.ndarray
        Volume [m3], same shape.

    Raises
    ------
    OutOfRange
        If a diameter is outside 0.5 to 30 mm.

    Examples
    --------
    >>> hull = Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> round(float(displaced_m3(made, 3.0)) * 1e6, 2)
    3.04
    """
    diameter = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    wet_mm3 = np.pi / 4.0 * diameter**2 * rig.waterline_mm
    return np.asarray(1e-9 * (volume_mm3(rig.profile) + wet_mm3))


def moving_mass_kg(rig: Rig, diameter_mm: ArrayLike, density_kg_m3: float) -> Array:
    """Return the mass that has to be moved when a fish moves the float: all that hangs and drags.

    Parameters
    ----------
    rig : Rig
        The float and its shot.
    diameter_mm : array_like
        Painted diameter of the tip [mm], any shape; 0.5 to 30.
    density_kg_m3 : float
        Water [kg/m3].

    Returns
    -------
    numpy.ndarray
        Float, shot and the water that goes with both [kg], same shape.

    Raises
    ------
    OutOfRange
        If a diameter is outside 0.5 to 30 mm.

    Notes
    -----
    M + A33 + rho V_shot / 2 (half its volume for a sphere). By Archimedes M is the mass of the
    water that float and shot take the place of: a thicker tip is balanced with more shot.

    Examples
    --------
    >>> hull = Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> round(1000 * float(moving_mass_kg(made, 3.0, 999.7)), 1)
    3.6
    """
    added = added_mass.heave_added_mass_kg(rig.profile, rig.kappa, density_kg_m3)
    water = displaced_m3(rig, diameter_mm) + 1.5 * rig.shot_volume_m3
    return np.asarray(density_kg_m3 * water + added)
