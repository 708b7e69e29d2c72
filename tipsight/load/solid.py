"""A float without its tip, as slices from the top of the body downwards: what is where."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.case import Part
from tipsight.load.materials import material

Array = NDArray[np.float64]
BODY_ROLES = ("body", "shoulder")
_ROUND = 0.5 * (1.0 - np.cos(np.linspace(0.0, np.pi, 81)))


@dataclass(frozen=True, eq=False)
class Solid:
    """Slices of a body of revolution, each a frustum; every array has one number a slice.

    A slice is `outer` material from its surface in to `core_mm` (or to its own bore), then the
    core's material in to the core's bore.
    """

    top_z_mm: Array
    foot_z_mm: Array
    top_r_mm: Array
    foot_r_mm: Array
    outer_kg_m3: Array
    core_r_mm: Array
    """Radius where the outer material ends: the core's, or the bore's."""
    core_kg_m3: Array
    bore_r_mm: Array
    body: NDArray[np.bool_]
    """Whether the slice belongs to the body or shoulder (and is painted as such)."""

    @property
    def body_length_mm(self) -> float:
        """How far down the body reaches."""
        return float(-self.foot_z_mm[self.body].min()) if self.body.any() else 0.0

    @property
    def body_diameter_mm(self) -> float:
        """The body's largest diameter, unpainted."""
        return float(2.0 * np.maximum(self.top_r_mm, self.foot_r_mm)[self.body].max())


def _outline(part: Part) -> tuple[Array, Array]:
    """Return depths below the part's top and radii there."""
    if part.shape in ("cylinder", "cone"):
        foot_mm = part.top_mm if part.shape == "cylinder" else part.foot_mm
        return np.array([0.0, part.length_mm]), np.array([part.top_mm, foot_mm]) / 2.0
    if part.shape == "ellipsoid":
        depth = _ROUND * part.length_mm
        along = 2.0 * _ROUND - 1.0
        return depth, part.top_mm / 2.0 * np.sqrt(np.maximum(1.0 - along**2, 0.0))
    upright = part.foot_mm >= part.top_mm
    along = 1.0 - _ROUND[:41] * 2.0
    depth = (1.0 - along) * part.length_mm
    radius = max(part.top_mm, part.foot_mm) / 2.0 * np.sqrt(np.maximum(1.0 - along**2, 0.0))
    return (depth, radius) if upright else (part.length_mm - depth[::-1], radius[::-1])


def check_parts(parts: Sequence[Part]) -> None:
    """Raise what is wrong with a list of parts, all at once.

    Parameters
    ----------
    parts : sequence of Part
        From the top of the body downwards.

    Raises
    ------
    Mistakes
        If there is no body, a length or diameter is nothing, a bore leaves no wall, or a part
        runs on inside further than there is anything above it.

    Examples
    --------
    >>> check_parts([Part("body", "ellipsoid", "balsa", 60, 12, 12)])
    """
    wrong = []
    above_mm = 0.0
    if not any(part.role in BODY_ROLES for part in parts):
        wrong.append(Mistake("parts", "", "a float needs a body", "body ellipsoid balsa 60 x 12 mm"))
    for part in parts:
        said = f"{part.role} of {part.length_mm:g} mm, {part.top_mm:g} to {part.foot_mm:g} mm"
        widest_mm = max(part.top_mm, part.foot_mm)
        if not (0.0 < part.length_mm <= 1000.0 and 0.0 < widest_mm <= 100.0):
            wrong.append(
                Mistake(
                    "parts",
                    said,
                    "a part is up to 1000 mm long and 100 mm thick, and not nothing",
                    "stem of 90 mm, 3 to 3 mm",
                )
            )
        if min(part.top_mm, part.foot_mm) < 0.0 or not 0.0 <= part.bore_mm < widest_mm:
            wrong.append(
                Mistake(
                    "parts",
                    f"{said}, bore {part.bore_mm:g} mm",
                    "no diameter is below nothing and the bore leaves a wall",
                    "tube 4 mm with a bore of 3 mm",
                )
            )
        if not 0.0 <= part.inside_mm <= above_mm:
            wrong.append(
                Mistake(
                    "parts",
                    f"{said}, {part.inside_mm:g} mm inside",
                    f"there are only {above_mm:g} mm above it to run on inside",
                    f"{above_mm:g} mm inside",
                )
            )
        above_mm += part.length_mm
    if wrong:
        raise Mistakes(wrong)


def solid(parts: Sequence[Part], body_scale: float = 1.0) -> Solid:
    """Return parts laid end to end as slices, with what runs on inside put in its place.

    Parameters
    ----------
    parts : sequence of Part
        From the top of the body downwards; z = 0 at the top.
    body_scale : float
        Multiplies the diameters of body and shoulder [-].

    Returns
    -------
    Solid
        Lengths in mm, densities in kg/m3.

    Raises
    ------
    Mistakes
        If the parts do not make a float, or a material is in no table.

    Notes
    -----
    Where a body runs to a point inside which a stem is thicker, the stem shows.

    Examples
    --------
    >>> slices = solid([Part("body", "cone", "balsa", 60, 12, 3)])
    >>> slices.body_length_mm, slices.body_diameter_mm
    (60.0, 12.0)
    """
    check_parts(parts)
    tops_mm = np.concatenate([[0.0], -np.cumsum([part.length_mm for part in parts])])
    cuts_mm = {top + part.inside_mm for top, part in zip(tops_mm, parts, strict=False)}
    rows: list[tuple[float, ...]] = []
    for number, part in enumerate(parts):
        scale = body_scale if part.role in BODY_ROLES else 1.0
        depth, radius = _outline(part)
        z = tops_mm[number] - depth
        nodes = np.array(sorted({*z, *(c for c in cuts_mm if z[-1] < c < z[0])}, reverse=True))
        r = scale * np.interp(-nodes, -z, radius)
        own = material(part.material).density_kg_m3
        for top, foot, top_r, foot_r in zip(nodes[:-1], nodes[1:], r[:-1], r[1:], strict=True):
            core = next(
                (
                    below
                    for at, below in zip(tops_mm[number + 1 :], parts[number + 1 :], strict=False)
                    if at + below.inside_mm >= top - 1e-9
                ),
                None,
            )
            is_body = float(part.role in BODY_ROLES)
            if core is None:
                bore = part.bore_mm / 2.0
                rows.append((top, foot, top_r, foot_r, own, bore, 0.0, bore, is_body))
                continue
            core_r, bore = core.top_mm / 2.0, core.bore_mm / 2.0
            inner = material(core.material).density_kg_m3
            rows.append(
                (top, foot, max(top_r, core_r), max(foot_r, core_r), own, core_r, inner, bore, is_body)
            )
    table = np.array(rows).T
    return Solid(*table[:8], body=table[8] > 0.5)


def frustum_mm3(height_mm: Array, top_r_mm: Array, foot_r_mm: Array) -> Array:
    """Return the volume of frusta.

    Parameters
    ----------
    height_mm, top_r_mm, foot_r_mm : numpy.ndarray
        Height and end radii [mm], broadcast.

    Returns
    -------
    numpy.ndarray
        Volume [mm3].

    Notes
    -----
    pi h / 3 (r0^2 + r0 r1 + r1^2): Weisstein, "Conical Frustum", MathWorld, eq. 7; exact.

    Examples
    --------
    >>> round(float(frustum_mm3(np.array(3.0), np.array(1.0), np.array(1.0))), 4)
    9.4248
    """
    squares = top_r_mm**2 + top_r_mm * foot_r_mm + foot_r_mm**2
    return np.asarray(np.pi / 3.0 * height_mm * squares)


def frustum_centroid_share(top_r_mm: Array, foot_r_mm: Array) -> Array:
    """Return how far below the upper end of frusta their centroid lies.

    Parameters
    ----------
    top_r_mm, foot_r_mm : numpy.ndarray
        End radii [mm], broadcast, not both nothing.

    Returns
    -------
    numpy.ndarray
        Distance from the upper end as a share of the height [-].

    Notes
    -----
    (r0^2 + 2 r0 r1 + 3 r1^2) / (4 (r0^2 + r0 r1 + r1^2)): Weisstein, "Conical Frustum",
    MathWorld, eq. 12, measured from the other end.

    Examples
    --------
    >>> float(frustum_centroid_share(np.array(0.0), np.array(1.0)))
    0.75
    """
    squares = top_r_mm**2 + top_r_mm * foot_r_mm + foot_r_mm**2
    moment = top_r_mm**2 + 2.0 * top_r_mm * foot_r_mm + 3.0 * foot_r_mm**2
    return np.asarray(moment / (4.0 * squares))


def masses_g(slices: Solid) -> tuple[Array, Array]:
    """Return mass and height of the centre of mass of each slice's two materials.

    Parameters
    ----------
    slices : Solid
        What is where.

    Returns
    -------
    mass_g, z_mm : numpy.ndarray
        Mass [g] and height above the top of the body [mm] (negative), shape (2, slices): the
        outer material, then the core.

    Examples
    --------
    >>> mass, z = masses_g(solid([Part("stem", "cylinder", "balsa", 100, 10, 10),
    ...     Part("body", "cylinder", "balsa", 1, 10, 10)]))
    >>> round(float(mass[0, 0]), 4), float(z[0, 0])
    (1.0996, -50.0)
    """
    height = slices.top_z_mm - slices.foot_z_mm
    whole = frustum_mm3(height, slices.top_r_mm, slices.foot_r_mm)
    middle = 0.5 * (slices.top_z_mm + slices.foot_z_mm)
    whole_z = slices.top_z_mm - height * frustum_centroid_share(slices.top_r_mm, slices.foot_r_mm)
    inner = np.pi * height * slices.core_r_mm**2
    outer = whole - inner
    outer_z = np.where(outer > 0.0, (whole * whole_z - inner * middle) / np.maximum(outer, 1e-12), middle)
    core = np.pi * height * (slices.core_r_mm**2 - slices.bore_r_mm**2)
    mass = np.array([outer * slices.outer_kg_m3, core * slices.core_kg_m3]) * 1e-6
    return mass, np.array([outer_z, middle])
