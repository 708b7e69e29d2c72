"""Slow, literal ways to the same numbers: one facet at a time, plain vectors, no quadrature."""

import math
import random


def reflectances(cosine: float, index: float = 1.333) -> tuple[float, float]:
    """Fresnel in its sine and tangent form (p, s), from the angles themselves."""
    angle = math.acos(min(cosine, 1.0))
    if angle < 1e-9:
        normal = ((index - 1.0) / (index + 1.0)) ** 2
        return normal, normal
    inside = math.asin(math.sin(angle) / index)
    p = math.tan(angle - inside) ** 2 / math.tan(angle + inside) ** 2
    s = math.sin(angle - inside) ** 2 / math.sin(angle + inside) ** 2
    return p, s


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a, b):
    return sum(x * y for x, y in zip(a, b, strict=True))


def unit(a):
    size = math.sqrt(dot(a, a))
    return tuple(x / size for x in a)


def facet(down_deg: float, along: float, across: float):
    """One facet: weight, ray height and azimuth [deg], reflectance upright and level; or None."""
    down = math.radians(down_deg)
    view = (math.cos(down), 0.0, math.sin(down))
    normal = unit((-along, -across, 1.0))
    facing = dot(view, normal)
    if facing <= 0.0:
        return None
    ray = tuple(2.0 * facing * n - v for n, v in zip(normal, view, strict=True))
    height = math.degrees(math.asin(max(-1.0, min(1.0, ray[2]))))
    azimuth = math.degrees(math.atan2(ray[1], -ray[0]))
    p, s = reflectances(facing)
    level_axis = (0.0, 1.0, 0.0)
    plane_normal = cross(view, normal)
    if dot(plane_normal, plane_normal) < 1e-18:
        return facing / normal[2], height, azimuth, p, s
    turn = dot(unit(plane_normal), level_axis) ** 2
    upright = turn * p + (1.0 - turn) * s
    level = (1.0 - turn) * p + turn * s
    return facing / normal[2], height, azimuth, upright, level


def crowd(down_deg: float, sd_along: float, sd_across: float, count: int, seed: int):
    """Random facets that are seen; a facet's share of the picture is facing over its tilt."""
    dice = random.Random(seed)  # noqa: S311 - facets, not secrets
    found = []
    while len(found) < count:
        one = facet(down_deg, dice.gauss(0.0, sd_along), dice.gauss(0.0, sd_across))
        if one is not None:
            found.append(one)
    return found


def mean(found, value):
    """Mean of ``value(ray height, azimuth, upright, level)`` as the eye weighs the facets."""
    return sum(w * value(*rest) for w, *rest in found) / sum(w for w, *_ in found)
