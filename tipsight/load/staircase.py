"""The staircase: what shot brings each edge of paint on the tip down to the surface."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tipsight.afloat.heave import stiffness_g_per_mm
from tipsight.inputs.case import Shot, Tip
from tipsight.load import law
from tipsight.load.budget import pull_g
from tipsight.load.change import Counted, nearest
from tipsight.load.hull import Hull
from tipsight.load.shot import sizes, wet_share
from tipsight.load.tips import SLEEVE_MM, painted_diameter_mm

Mark = Literal["shoulder", "as told", "band", "top"]
"""Foot of the tip, where it is to show to, foot of a band, very top."""


@dataclass(frozen=True)
class Step:
    """One mark on the tip, and the shot that brings it to the surface."""

    mark: Mark
    paint: str
    """Of the band whose foot it is; empty for the other marks."""
    showing_mm: float
    pull_g: float
    """In water."""
    shot_g: float
    """In air."""
    shot: Counted


def staircase(
    hull: Hull,
    tip: Tip,
    metal: str = "tin",
    shots: Sequence[Shot] | None = None,
    temperature_c: float = 10.0,
) -> tuple[Step, ...]:
    """Return the shot that brings each mark of a tip to the surface, least shot first.

    The body's shoulder (the foot of the tip), the foot of each band, the tip showing as told, and
    the very top; marks that the float reaches with no shot at all are left out. Along a parallel tip
    the load rises by the stiffness for each millimetre; a sleeve makes the part above the waterline
    thicker. ``shots`` are the sizes to say it in, None for the whole table. Raises as
    `budget.pull_g`, and Mistakes if the metal is in no table.

    >>> from tipsight.load import hull, patterns
    >>> tip = patterns.pattern("quill avon").tip
    >>> steps = staircase(hull.build(patterns.built("quill avon")), tip)
    >>> [(step.mark, step.showing_mm) for step in steps]
    [('shoulder', 35.0), ('as told', 25.0), ('top', 0.0)]
    """
    base_g = pull_g(hull, tip, temperature_c)
    painted = painted_diameter_mm(tip.stock.diameter_mm, tip.coats)
    wet_stiffness = float(stiffness_g_per_mm(painted, temperature_c))
    sleeve_mm = SLEEVE_MM if tip.sleeve else 0.0
    dry_stiffness = float(stiffness_g_per_mm(painted + sleeve_mm, temperature_c))
    outside_mm = tip.showing_mm + tip.wet_mm
    marks: list[tuple[Mark, str, float]] = [
        ("shoulder", "", outside_mm),
        ("as told", "", tip.showing_mm),
        # The last band runs on to the body, whatever it is said to end at.
        *(
            ("band", band.paint, band.to_top_mm)
            for band in tip.bands[:-1]
            if 0.0 < band.to_top_mm < outside_mm
        ),
        ("top", "", 0.0),
    ]
    share = float(wet_share(metal, temperature_c))
    had = law.usable(shots or sizes(metal))
    steps = []
    for mark, paint, showing_mm in sorted(marks, key=lambda entry: -entry[2]):
        deeper_mm = tip.showing_mm - showing_mm
        pull = base_g + (dry_stiffness if deeper_mm > 0.0 else wet_stiffness) * deeper_mm
        if pull > 0.0:
            near = nearest(pull / share, had)
            steps.append(Step(mark, paint, showing_mm, pull, pull / share, near.shot))
    return tuple(steps)
