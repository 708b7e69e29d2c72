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
_ROUNDING_MM = 1e-9  # of sums of lengths: a cut so near to the end of a part is at its end
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


def _check_parts(parts: Sequence[Part]) -> None:
    """Raise Mistakes with all that is wrong with a list of parts."""
    wrong = []
    above_mm = 0.0
    if not any(part.role in BODY_ROLES for part in parts):
        wrong.append(
            Mistake("parts", "", "a float needs a body", "body ellipsoid balsa 60 x 12 mm")
        )
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
        narrowest_mm = part.top_mm if part.shape == "cylinder" else min(part.top_mm, part.foot_mm)
        no_wall = part.bore_mm >= narrowest_mm and part.bore_mm != 0.0
        if min(part.top_mm, part.foot_mm, part.bore_mm) < 0.0 or no_wall:
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
    """Return parts, from the top of the body downwards, as slices with z = 0 at the top.

    What runs on inside is put in its place; where a body runs to a point inside which a stem is
    thicker, the stem shows. ``body_scale`` multiplies the diameters of body and shoulder. Raises
    Mistakes if the parts do not make a float, or a material is in no table.

    >>> slices = solid([Part("body", "cone", "balsa", 60, 12, 3)])
    >>> slices.body_length_mm, slices.body_diameter_mm
    (60.0, 12.0)
    """
    _check_parts(parts)
    tops_mm = np.concatenate([[0.0], -np.cumsum([part.length_mm for part in parts])])
    cuts_mm = {top + part.inside_mm for top, part in zip(tops_mm, parts, strict=False)}
    rows: list[tuple[float, ...]] = []
    for number, part in enumerate(parts):
        scale = body_scale if part.role in BODY_ROLES else 1.0
        depth, radius = _outline(part)
        z = tops_mm[number] - depth
        z[-1] = tops_mm[number + 1]
        nodes = np.array(
            sorted(
                {*z, *(c for c in cuts_mm if z[-1] + _ROUNDING_MM < c < z[0] - _ROUNDING_MM)},
                reverse=True,
            )
        )
        r = scale * np.interp(-nodes, -z, radius)
        own = material(part.material).density_kg_m3
        for top, foot, top_r, foot_r in zip(nodes[:-1], nodes[1:], r[:-1], r[1:], strict=True):
            core = next(
                (
                    below
                    for at, below in zip(tops_mm[number + 1 :], parts[number + 1 :], strict=False)
                    if at + below.inside_mm >= top - _ROUNDING_MM
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
                (
                    top,
                    foot,
                    max(top_r, core_r),
                    max(foot_r, core_r),
                    own,
                    core_r,
                    inner,
                    bore,
                    is_body,
                )
            )
    top, foot, top_r, foot_r, own, core_r, inner, bore, is_body = np.array(rows).T
    return Solid(top, foot, top_r, foot_r, own, core_r, inner, bore, is_body > 0.5)
