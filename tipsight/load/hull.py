"""The float without its tip: its outline, weight and centre of mass."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.afloat import body, freshwater
from tipsight.checks import within
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import BuiltFloat, Fixing, Tip, WeighedFloat
from tipsight.load import patterns, shot
from tipsight.load.bored import frustum_mm3, masses_g, replaced
from tipsight.load.materials import material
from tipsight.load.solid import BODY_ROLES, Solid, solid
from tipsight.load.tips import coat, painted_diameter_mm, tip_mass_g

Array = NDArray[np.float64]
KEPT = 256  # floats whose hulls are kept
HOOK_AND_BAIT_G = 0.03
"""Pull of hook and bait, which comes off before any shot; judgement."""


@dataclass(frozen=True, eq=False)
class Hull:
    """A float without its tip; z in mm upwards from where the tip leaves the body."""

    pattern: str
    fixing: Fixing
    profile: body.Profile
    """Painted outline from z = 0 downwards."""
    volume_mm3: float
    centroid_mm: float
    """Height of the centre of its volume (negative)."""
    mass_g: float
    """With coats and fittings, without the tip and before any of the body is bored out for it."""
    centre_of_mass_mm: float
    """Height of that mass's centre (negative)."""
    body_diameter_mm: float
    """Largest, unpainted."""
    body_length_mm: float
    body_material: str
    body_density_kg_m3: float
    materials: tuple[str, ...]
    """All that it is made of, for cautions."""
    slices: Solid
    """What is where, for what a glued tip takes the place of."""
    varnish_coats: int
    paint_coats: int


def _painted(
    slices: Solid, varnish_coats: int, paint_coats: int
) -> tuple[body.Profile, Array, Array]:
    """Return the painted outline, and mass and height of each slice's coats."""
    varnish_mm, varnish_kg_m3 = coat("varnish")
    paint_mm, paint_kg_m3 = coat("paint")
    varnished = float(within("coats of varnish", varnish_coats, 0.0, 20.0))
    painted = float(within("coats of paint", paint_coats, 0.0, 20.0))
    under = np.full(slices.top_r_mm.shape, varnished * varnish_mm)
    over = np.where(slices.body, painted * paint_mm, 0.0)
    height = slices.top_z_mm - slices.foot_z_mm
    steps = [np.zeros_like(under), under, under + over]
    volume = [frustum_mm3(height, slices.top_r_mm + t, slices.foot_r_mm + t) for t in steps]
    mass = 1e-6 * (varnish_kg_m3 * (volume[1] - volume[0]) + paint_kg_m3 * (volume[2] - volume[1]))
    z = np.stack([slices.top_z_mm, slices.foot_z_mm], axis=1).ravel()
    r = np.stack([slices.top_r_mm + steps[2], slices.foot_r_mm + steps[2]], axis=1).ravel()
    keep = np.append(True, (np.diff(z) != 0.0) | (np.diff(r) != 0.0))
    return body.Profile(z[keep], r[keep]), mass, 0.5 * (slices.top_z_mm + slices.foot_z_mm)


def _assemble(
    float_: BuiltFloat,
    fixing: Fixing,
    *,
    body_scale: float = 1.0,
    total_g: float | None = None,
    tip: Tip | None = None,
) -> Hull:
    """Put a hull together; a told weight is brought about by a heavier or lighter body."""
    slices = solid(float_.parts, body_scale)
    profile, coat_g, coat_z = _painted(slices, float_.varnish_coats, float_.paint_coats)
    part_g, part_z = masses_g(slices)
    fittings_z = float(slices.foot_z_mm[-1]) / 2.0
    weight = 1.0
    if total_g is not None:
        rest_g, body_g = _rest_and_body_g(slices, float(coat_g.sum()) + float_.fittings_g, tip)
        weight = (total_g - rest_g) / body_g
        if weight <= 0.0:
            raise Mistakes(
                [
                    Mistake(
                        "weighs",
                        f"{total_g:.2f} g",
                        f"all but the body already weighs {rest_g:.2f} g; look at the parts",
                        f"{rest_g + body_g:.2f} g",
                    )
                ]
            )
    part_g[0] = np.where(slices.body, weight * part_g[0], part_g[0])
    slices = _reweighted(slices, weight)
    mass_g = float(part_g.sum() + coat_g.sum()) + float_.fittings_g
    moment = (
        float((part_g * part_z).sum() + (coat_g * coat_z).sum()) + float_.fittings_g * fittings_z
    )
    mass_g += float_.drunk_g  # by the body, all through it
    moment += float_.drunk_g * float(np.mean(coat_z[slices.body]))
    main = max(
        (part for part in float_.parts if part.role in BODY_ROLES),
        key=lambda part: part.length_mm * max(part.top_mm, part.foot_mm) ** 2,
    )
    return Hull(
        float_.pattern,
        fixing,
        profile,
        float(body.volume_mm3(profile)),
        float(body.centroid_mm(profile)),
        mass_g,
        moment / mass_g,
        slices.body_diameter_mm,
        slices.body_length_mm,
        main.material,
        weight * material(main.material).density_kg_m3,
        tuple(dict.fromkeys(part.material for part in float_.parts)),
        slices,
        float_.varnish_coats,
        float_.paint_coats,
    )


def recoated(hull: Hull, varnish_coats: int, paint_coats: int) -> tuple[float, float]:
    """Return what more a hull takes up [mm3] and weighs [g] with other coats than its own.

    Raises OutOfRange for more than 20 coats.
    """
    (profile, mass, _), (_, own, _) = (
        _painted(hull.slices, *coats)
        for coats in ((varnish_coats, paint_coats), (hull.varnish_coats, hull.paint_coats))
    )
    more_mm3 = float(body.volume_mm3(profile)) - hull.volume_mm3
    return more_mm3, float(mass.sum() - own.sum())


def _reweighted(slices: Solid, weight: float) -> Solid:
    return replace(slices, outer_kg_m3=np.where(slices.body, weight, 1.0) * slices.outer_kg_m3)


def _rest_and_body_g(slices: Solid, extras_g: float, tip: Tip | None) -> tuple[float, float]:
    """Return what a float weighs without its body's own material, and what that weighs [g].

    The tip is counted in, and what it takes the place of is not.
    """
    part_g, _ = masses_g(slices)
    body_g = float(part_g[0][slices.body].sum())
    rest_g = float(part_g.sum()) - body_g + extras_g
    if tip is None:
        return rest_g, body_g
    where = tip.stock.diameter_mm, tip.glued_mm
    gone_g = float(replaced(slices, *where)[0])
    gone_else_g = float(replaced(_reweighted(slices, 0.0), *where)[0])
    return rest_g + tip_mass_g(tip) - gone_else_g, body_g - (gone_g - gone_else_g)


def build(float_: BuiltFloat, tip: Tip | None = None) -> Hull:
    """Return the hull of a float known by its parts, without the tip.

    ``weighs_g`` makes the body heavier or lighter until the float weighs so much with ``tip``, or
    without one. Raises Mistakes if the parts do not make a float, a material or pattern is in no
    table, or the float is said to weigh less than its stem; OutOfRange for more than 20 coats.

    >>> hull = build(patterns.built("quill avon", "12 mm"))
    >>> hull.body_diameter_mm, hull.fixing
    (12.0, 'bulk')
    """
    usual: Fixing = patterns.pattern(float_.pattern).fixing if float_.pattern else "bulk"
    fixing = float_.fixing or usual
    return _assemble(float_, fixing, total_g=float_.weighs_g, tip=tip)


@tables.derived
def _pattern_pulls(name: str) -> tuple[tuple[float, str], ...]:
    """Return about what each size of a pattern pulls with its usual tip, for choosing a size."""
    pulls = []
    for size in patterns.sizes(name):
        tip = patterns.pattern(name).tip
        hull = build(patterns.built(name, size))
        wet_mm3 = tip.wet_mm * np.pi / 4.0 * tip.stock.diameter_mm**2
        pulls.append(((hull.volume_mm3 + wet_mm3) * 1e-3 - hull.mass_g - tip_mass_g(tip), size))
    return tuple(pulls)


def weighed(float_: WeighedFloat, weighed_tip: Tip, temperature_c: float = 10.0) -> Hull:
    """Return the hull of a float known by the shot that it takes with a tip showing so much.

    The pattern at the size nearest in load, its body thicker or thinner until the float with that
    tip takes exactly that shot; one smaller than the smallest is as much shorter in the body
    (judgement). Archimedes: rho V = mass + shot (1 - rho / rho_shot) + hook and
    bait, solved for the body's diameter, in water at ``temperature_c`` [deg C]. A float of unknown
    weight is taken to weigh the pattern's share of its pull, but no less than its parts with a body
    of the lightest of its material. Raises Mistakes if a name is in no table, or the float cannot
    take that shot at that weight.

    >>> hull = weighed(WeighedFloat("quill avon", 2.4), patterns.pattern("quill avon").tip)
    >>> round(hull.body_diameter_mm, 1)
    9.9
    """
    chosen = patterns.pattern(float_.pattern)
    water = float(freshwater.density_kg_m3(temperature_c)) * 1e-6
    pull_g = float_.shot_g * float(shot.wet_share(float_.shot_metal, temperature_c))
    if not 0.0 < pull_g <= 100.0:
        raise Mistakes(
            [
                Mistake(
                    "takes", f"{float_.shot_g:g} g", "a float takes some shot, up to 100 g", "6BB"
                )
            ]
        )
    _, size = min(_pattern_pulls(chosen.name), key=lambda row: abs(row[0] - pull_g))
    smallest = size == chosen.sizes[0]
    pattern_float = patterns.built(chosen.name, size)
    painted_r_mm = (
        float(painted_diameter_mm(weighed_tip.stock.diameter_mm, weighed_tip.coats)) / 2.0
    )
    wet_mm3 = weighed_tip.wet_mm * np.pi * painted_r_mm**2

    lightest = material(chosen.body).low_kg_m3 / material(chosen.body).density_kg_m3

    def surplus(scale: float) -> tuple[float, float]:
        """Return the lift that is left over, and what the whole float then weighs."""
        slices = solid(_shorter(pattern_float, scale, smallest).parts, scale)
        outline, coat_g, _ = _painted(
            slices, pattern_float.varnish_coats, pattern_float.paint_coats
        )
        _, proud_mm3 = replaced(slices, weighed_tip.stock.diameter_mm, weighed_tip.glued_mm)
        extras_g = float(coat_g.sum()) + pattern_float.fittings_g
        rest_g, body_g = _rest_and_body_g(slices, extras_g, weighed_tip)
        total_g = float_.weighs_g or max(chosen.mass_share * pull_g, rest_g + lightest * body_g)
        lift_g = water * (float(body.volume_mm3(outline)) + float(proud_mm3) + wet_mm3)
        return lift_g - total_g - pull_g - HOOK_AND_BAIT_G, total_g

    scale = _root(lambda at: surplus(at)[0], 0.05, 8.0)
    if scale is None:
        raise Mistakes(
            [
                Mistake(
                    "takes",
                    f"{float_.shot_g:g} g on a {chosen.name}",
                    "no body of this pattern takes just that with this tip",
                    "another pattern, or the parts of the float",
                )
            ]
        )
    total_g = surplus(scale)[1]
    return _assemble(
        _shorter(pattern_float, scale, smallest),
        float_.fixing or chosen.fixing,
        body_scale=scale,
        total_g=total_g,
        tip=weighed_tip,
    )


def _shorter(float_: BuiltFloat, scale: float, smallest: bool) -> BuiltFloat:
    """Return a pattern's smallest size with its body shortened, any other as it is."""
    share = min(scale, 1.0) if smallest else 1.0
    parts = (
        replace(
            part,
            length_mm=part.length_mm * (share if part.role in BODY_ROLES else 1.0),
            inside_mm=part.inside_mm * share,
        )
        for part in float_.parts
    )
    return replace(float_, parts=tuple(parts))


def _root(function: Callable[[float], float], low: float, high: float) -> float | None:
    """Return where a rising function crosses nothing (Illinois form of false position)."""
    f_low, f_high = function(low), function(high)
    if f_low > 0.0 or f_high < 0.0:
        return None
    side = 0
    for _ in range(200):
        middle = (low * f_high - high * f_low) / (f_high - f_low)
        f_middle = function(middle)
        if abs(f_middle) < 1e-13:
            break
        if f_middle < 0.0:
            low, f_low, f_high, side = middle, f_middle, f_high / (2.0 if side < 0 else 1.0), -1
        else:
            high, f_high, f_low, side = middle, f_middle, f_low / (2.0 if side > 0 else 1.0), 1
    return middle


def hull_of(
    float_: WeighedFloat | BuiltFloat, weighed_tip: Tip, temperature_c: float = 10.0
) -> Hull:
    """Return the hull of a float, known whichever way: by `build` or `weighed`.

    Parameters
    ----------
    float_ : WeighedFloat or BuiltFloat
        The float.
    weighed_tip : Tip
        The tip with which it takes its shot, or with which it weighs what it is said to.
    temperature_c : float
        Water [deg C] in which it takes its shot.

    Raises
    ------
    Mistakes, OutOfRange
        As those two.

    Examples
    --------
    >>> tip = patterns.pattern("bolo type").tip
    >>> hull_of(patterns.built("bolo type"), tip).body_diameter_mm
    16.5
    """
    return _hull_of(tables.in_use(), float_, weighed_tip, temperature_c)


@lru_cache(maxsize=KEPT)
def _hull_of(
    _own: tables.Tables | None,
    float_: WeighedFloat | BuiltFloat,
    weighed_tip: Tip,
    temperature_c: float,
) -> Hull:
    """Work a float out once for all the swims that it is asked about with the same tables."""
    if isinstance(float_, WeighedFloat):
        return weighed(float_, weighed_tip, temperature_c)
    return build(float_, weighed_tip)
