"""The float with its shot below it, as the water feels it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import added_mass
from tipsight.afloat.body import Profile, volume_mm3
from tipsight.checks import within

Array = NDArray[np.float64]
BODY_DRAG = 0.5  # of a faired body end-on; judgement
SHOT_DRAG = (
    0.45  # of small spheres at Reynolds numbers of 700 to 4000; Barati and Clift, by fluids
)


@dataclass(frozen=True)
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


def shot_area_m2(mass_g: ArrayLike, density_kg_m3: float) -> float:
    """Return the summed cross-section of round shot [m2], each of 0 to 100 g, 1500 to 25000 kg/m3.

    Spheres: pi / 4 (6 m / (pi rho))^(2/3) each.

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
    """Return a float and its shot put together, with the hull's own added mass.

    Parameters
    ----------
    profile : the hull, from z = 0 downwards
    waterline_mm : length of tip under water; 0 to 200
    mass_g : float with its tip, in air; 0.01 to 100
    centre_of_mass_mm : height of its centre from the tip's root
    shot_g : all shot, in air; 0 to 100
    shot_density_kg_m3 : of its metal, 1500 to 25000; tin unless told
    shot_depth_m : from the waterline to the middle of the shot; 0.01 to 20
    each_g : mass of one of them, for what the water drags at; a BB unless told
    shot_slip_m_s : steady flow past the shot; 0 to 3, about a quarter of the pace (judgement)

    >>> hull = Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> round(1e6 * made.shot_area_m2)
    52
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
    """Return the volume of float under water with painted tips of any shape, 0.5 to 30 mm [m3]."""
    diameter = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    wet_mm3 = np.pi / 4.0 * diameter**2 * rig.waterline_mm
    return np.asarray(1e-9 * (volume_mm3(rig.profile) + wet_mm3))


def moving_mass_kg(rig: Rig, diameter_mm: ArrayLike, density_kg_m3: float) -> Array:
    """Return the mass that has to be moved when a fish moves the float: all that drags [kg].

    M + A33 + rho V_shot / 2 (half its volume for a sphere). By Archimedes M is the mass of the
    water that float and shot take the place of: a thicker tip is balanced with more shot.

    >>> hull = Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
    >>> made = rig(hull, 10.0, 1.0, -30.0, 1.2)
    >>> round(1000 * float(moving_mass_kg(made, 3.0, 999.7)), 1)
    3.6
    """
    added = added_mass.heave_added_mass_kg(rig.profile, rig.kappa, density_kg_m3)
    water = displaced_m3(rig, diameter_mm) + 1.5 * rig.shot_volume_m3
    return np.asarray(density_kg_m3 * water + added)
