"""How a tip that is thicker than the body's top is let into it."""

from dataclasses import dataclass

import numpy as np

from tipsight.inputs.case import Tip
from tipsight.load.hull import Hull

WALL_MM = 0.5
"""Left around a hole, and the thinnest that is drilled; common practice, no source."""
LEAST_PEG_MM = 1.0
"""The thinnest peg that a tip is tapered to; common practice, no source."""


@dataclass(frozen=True)
class Seat:
    """What is to be done so that a tip goes in: cut the body back, or else taper the tip."""

    top_mm: float
    """Thickness of the body's top as it is."""
    back_mm: float | None
    """How much of the body's top comes off, so that a hole for the whole tip keeps its wall."""
    peg_mm: float | None
    """To what the glued part is tapered; None where it is not, and where it cannot be."""

    @property
    def is_none(self) -> bool:
        """Whether the tip cannot be let in at all."""
        return self.back_mm is None and self.peg_mm is None


def seat(body: Hull, tip: Tip) -> Seat | None:
    """Return how a tip is let in; None where it goes in as it is or is not glued in.

    The body is cut back by no more than half of what is glued in.
    """
    bare, z = tip.stock.diameter_mm, -body.profile.z_mm
    wide = 2.0 * body.profile.r_mm
    top_mm = float(wide[0])
    if not tip.glued_mm or bare <= top_mm:
        return None
    down = np.linspace(0.0, tip.glued_mm / 2.0, 201)
    enough = np.interp(down, z, wide) >= bare + 2.0 * WALL_MM
    if enough.any():
        return Seat(top_mm, float(down[enough.argmax()]), None)
    peg_mm = top_mm - 2.0 * WALL_MM
    return Seat(top_mm, None, peg_mm if peg_mm >= LEAST_PEG_MM else None)
