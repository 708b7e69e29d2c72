"""Where the forces on an upright float act: buoyancy, weight, and the water's drag."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.afloat import body
from tipsight.afloat.freshwater import density_kg_m3
from tipsight.afloat.rig import Rig, displaced_m3
from tipsight.checks import within
from tipsight.nature import GRAVITY_M_S2

Array = NDArray[np.float64]

_SLENDER = np.log([1.0, 2.0, 5.0, 10.0, 40.0])
_SLENDER_DRAG = np.array([0.63, 0.68, 0.74, 0.82, 0.98])
_ENDLESS_DRAG = 1.20


def cylinder_drag(length_over_diameter: ArrayLike) -> Array:
    """Return the drag coefficient on the side view of cylinders, length over diameter 1 to 1000.

    Matthews (2002; name and year from memory), Aeronautical Engineer's Data Book, drag of
    cylinders by length: 0.63 at 1 to 0.98 at 40, 1.20 for one without end; by the logarithm
    between, and towards 1.20 by the reciprocal beyond 40.

    >>> cylinder_drag([1.0, 10.0, 40.0]).round(2).tolist()
    [0.63, 0.82, 0.98]
    """
    ratio = within("length over diameter", length_over_diameter, 1.0, 1000.0)
    short = np.interp(np.log(ratio), _SLENDER, _SLENDER_DRAG)
    long = _ENDLESS_DRAG - (_ENDLESS_DRAG - short) * 40.0 / ratio
    return np.asarray(np.where(ratio <= 40.0, short, long))


@dataclass(frozen=True, eq=False)
class Stance:
    """Forces and their heights above the foot, from which a float leans; arrays by diameter."""

    lift_n: Array
    """Buoyancy of all that is under water."""
    lift_at_m: Array
    weight_n: float
    weight_at_m: float
    shot_pull_n: Array
    side_m2: Array
    """Side view of what is under water."""
    side_at_m: Array
    waterline_m: float
    line_at_m: float
    side_drag: Array

    @property
    def stiffness_n_m_rad(self) -> Array:
        """Uprighting moment for each radian of lean."""
        return self.lift_n * self.lift_at_m - self.weight_n * self.weight_at_m


def stance(
    rig: Rig,
    diameter_mm: ArrayLike,
    temperature_c: float = 10.0,
) -> Stance:
    """Return the forces on an upright float with painted tips of any shape, 0.5 to 30 mm.

    The shot hang from the foot; the drag across the flow is that of a cylinder of the mean
    slenderness, from the foot to the waterline.
    """
    if isinstance(diameter_mm, float):  # one tip, which is asked about leans of several causes
        return _of_one(rig, diameter_mm, temperature_c)
    return _stance(rig, diameter_mm, temperature_c)


def _stance(rig: Rig, diameter_mm: ArrayLike, temperature_c: float) -> Stance:
    rho = float(density_kg_m3(temperature_c))
    d = within("tip diameter", diameter_mm, 0.5, 30.0, "mm")
    z, r = rig.profile.z_mm, rig.profile.r_mm
    foot, wet = float(z[-1]), rig.waterline_mm
    volume = displaced_m3(rig, d)
    hull_m3, hull_at = 1e-9 * body.volume_mm3(rig.profile), body.centroid_mm(rig.profile) - foot
    lift_at = (hull_m3 * hull_at + (volume - hull_m3) * (0.5 * wet - foot)) / volume
    height = z[:-1] - z[1:]
    area = height * (r[:-1] + r[1:])
    moment = area * (z[1:] - foot) + height**2 * (2.0 * r[:-1] + r[1:]) / 3.0
    side = area.sum() + d * wet
    side_at = (moment.sum() + d * wet * (0.5 * wet - foot)) / side
    length = wet - foot
    lift_n = rho * GRAVITY_M_S2 * volume
    weight_n = rig.mass_kg * GRAVITY_M_S2
    return Stance(
        lift_n,
        1e-3 * lift_at,
        weight_n,
        1e-3 * (rig.centre_of_mass_mm - foot),
        lift_n - weight_n,
        1e-6 * side,
        1e-3 * side_at,
        1e-3 * length,
        1e-3 * (rig.line_mm - foot),
        cylinder_drag(np.maximum(length**2 / side, 1.0)),
    )


_of_one = lru_cache(maxsize=64)(_stance)
