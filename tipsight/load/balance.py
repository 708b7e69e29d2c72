"""The finished float as a whole: weight, water shifted, and what stands it up."""

from functools import lru_cache
from itertools import pairwise

import numpy as np

from tipsight.afloat import freshwater
from tipsight.afloat.body import Profile
from tipsight.inputs.case import Tip
from tipsight.load.bored import replaced
from tipsight.load.hull import Hull
from tipsight.load.tips import aloft_g, painted_diameter_mm, tip_mass_g


def float_mass_g(hull: Hull, tip: Tip) -> float:
    """Return what the finished float weighs in air with its tip [g].

    Raises OutOfRange if the tip's diameter or coats are outside their ranges, as all here.

    >>> from tipsight.load import hull, patterns
    >>> tip = patterns.pattern("quill avon").tip
    >>> round(float_mass_g(hull.build(patterns.built("quill avon")), tip), 2)
    1.3
    """
    gone_g, _ = replaced(hull.slices, tip.stock.diameter_mm, tip.glued_mm)
    return hull.mass_g + tip_mass_g(tip) - float(gone_g)


def displaced_mm3(hull: Hull, tip: Tip) -> float:
    """Return the volume of float under water with its tip showing as told [mm3]."""
    _, proud_mm3 = replaced(hull.slices, tip.stock.diameter_mm, tip.glued_mm)
    painted = float(painted_diameter_mm(tip.stock.diameter_mm, tip.coats))
    return hull.volume_mm3 + float(proud_mm3) + np.pi / 4.0 * painted**2 * tip.wet_mm


@lru_cache(maxsize=64)
def outline(hull: Hull, tip: Tip) -> Profile:
    """Return the outline below the tip, as wide as the tip where that is glued into less body.

    What stands out there is taken to be painted as the body is. The same one for the same tip, so
    that what hangs on it need be worked out but once.
    """
    z_mm, r_mm = hull.profile.z_mm, hull.profile.r_mm
    wide = tip.stock.diameter_mm / 2.0 + float(r_mm[0] - hull.slices.top_r_mm[0])
    foot = -tip.glued_mm
    if (r_mm[z_mm >= foot] >= wide).all() and np.interp(-foot, -z_mm, r_mm) >= wide:
        return hull.profile
    points: list[tuple[float, float]] = []
    for top, low, r_top, r_low in zip(z_mm[:-1], z_mm[1:], r_mm[:-1], r_mm[1:], strict=True):
        fall, gain = top - low, r_low - r_top
        cross = top - fall * (wide - r_top) / gain if gain else low
        cuts = sorted({top, low, *(at for at in (foot, cross) if low < at < top)}, reverse=True)
        for start, end in pairwise(cuts):
            ends = [r_top + gain * (top - at) / fall if fall else r_top for at in (start, end)]
            glued = 0.5 * (start + end) > foot
            points += [
                (at, max(r, wide) if glued else r)
                for at, r in zip((start, end), ends, strict=True)
            ]
    return Profile(*np.array(points).T)


def centre_of_mass_mm(hull: Hull, tip: Tip) -> float:
    """Return how far the finished float's centre of mass is above the top of the body [mm].

    Negative for a float that is heavy below. What the tip carries counts at its top, the worst
    place.

    >>> from tipsight.load import hull, patterns
    >>> tip = patterns.pattern("wire avon").tip
    >>> round(centre_of_mass_mm(hull.build(patterns.built("wire avon")), tip))
    -38
    """
    outside_mm = tip.showing_mm + tip.wet_mm
    gone_g, _ = replaced(hull.slices, tip.stock.diameter_mm, tip.glued_mm)
    moment = (
        hull.mass_g * hull.centre_of_mass_mm
        + (tip_mass_g(tip) - aloft_g(tip)) * 0.5 * (outside_mm - tip.glued_mm)
        + aloft_g(tip) * outside_mm
        + float(gone_g) * 0.5 * tip.glued_mm
    )
    return moment / float_mass_g(hull, tip)


def uprighting_g_mm(hull: Hull, tip: Tip, temperature_c: float = 10.0) -> float:
    """Return the moment per radian that stands a float up, all its shot hung from its foot [gf mm].

    About the foot: lift times the height of the centre of lift less weight times the height of the
    centre of mass (metacentric height, the waterplane's own part, about 1e-4 of it, left out);
    standard hydrostatics. Nothing or less means that it falls over. Water at ``temperature_c`` [deg C].
    """
    foot_mm = float(hull.profile.z_mm[-1])
    water = float(freshwater.density_kg_m3(temperature_c)) * 1e-6
    wet_mm3 = displaced_mm3(hull, tip) - hull.volume_mm3
    lift_moment = water * (
        hull.volume_mm3 * (hull.centroid_mm - foot_mm) + wet_mm3 * (0.5 * tip.wet_mm - foot_mm)
    )
    return lift_moment - float_mass_g(hull, tip) * (centre_of_mass_mm(hull, tip) - foot_mm)
