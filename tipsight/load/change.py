"""The few shot that come nearest to a small mass."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from tipsight.checks import within
from tipsight.inputs.case import Shot
from tipsight.load.shot import is_olivette

PIECE_MG, KIND_MG = 3.0, 3.0
"""How far off the mark a shot less, and a size less, may put it; judgement."""
MANY = 9
"""More pieces than this nobody counts on to a line (judgement)."""
Counted = tuple[tuple[str, int], ...]
"""Names of shot and how many of each, heaviest first."""


@dataclass(frozen=True)
class Near:
    """A small mass in shot by name."""

    mass_g: float
    """What was to be made up, in air."""
    shot: Counted
    """Empty when half the lightest is already too much."""
    left_g: float
    """What no shot makes up, in air; negative when it is a little too much."""
    lightest: str | None
    """The lightest to be had; None where there is none."""


def nearest(mass_g: float, shots: Sequence[Shot]) -> Near:
    """Return the few shot that come nearest to a mass: one size, or two; the heaviest beside them.

    Least of error [mg] + 3 a piece + 3 a size, over up to three of a second, lighter size; where
    that makes more than nine, all but one or two of the heaviest are put on first. Olivettes are
    left aside. The mass is in air [g], 0 to 200, or OutOfRange; a force in water is divided by the
    metal's `wet_share` first.

    >>> from tipsight.load.shot import sizes
    >>> nearest(0.59, sizes()).shot
    (('AB', 1),)
    >>> nearest(7.76, sizes()).shot
    (('SSG', 3), ('BB', 7), ('No 5', 1))
    >>> nearest(0.003, sizes()).lightest
    'No 13'
    """
    mass = float(within("mass", mass_g, 0.0, 200.0, "g"))
    useful = [s for s in shots if s.count != 0 and not is_olivette(s.name)]
    useful.sort(key=lambda shot: -shot.mass_g)
    found = _fewer(mass, useful, _one_or_two(mass, useful))
    masses = {shot.name: shot.mass_g for shot in useful}
    return Near(mass, found, mass - _mass(found, masses), useful[-1].name if useful else None)


def _one_or_two(mass_g: float, useful: Sequence[Shot]) -> Counted:
    """Return the best of one size, or of one and up to three of a lighter one; heaviest first."""
    if not useful or mass_g < 0.5 * useful[-1].mass_g:
        return ()
    each = np.array([shot.mass_g for shot in useful])
    limit = np.array([10**6 if shot.count is None else shot.count for shot in useful])
    # Axes of the cost: first size, how many of it (about as many as fill the mass, from three
    # fewer to one more), second size, how many of that.
    about = np.maximum(np.floor(mass_g / each), 1.0)
    first = about[:, np.newaxis] + np.arange(-3.0, 2.0)
    second = np.arange(4.0)
    total = (each[:, np.newaxis] * first)[:, :, np.newaxis, np.newaxis] + each[
        :, np.newaxis
    ] * second
    pieces = first[:, :, np.newaxis, np.newaxis] + second
    cost = np.abs(total - mass_g) * 1e3 + PIECE_MG * pieces + KIND_MG * (second > 0.0)
    lighter = each[np.newaxis, :] < each[:, np.newaxis]
    bad = (first < 1.0) | (first > limit[:, np.newaxis])
    cost = cost + np.where(bad, np.inf, 0.0)[:, :, np.newaxis, np.newaxis]
    ruled_out = (second > 0.0) & (
        ~lighter[:, np.newaxis, :, np.newaxis] | (second > limit[:, np.newaxis])
    )
    cost = np.where(ruled_out, np.inf, cost)
    i, a, j, b = (int(at) for at in np.unravel_index(int(np.argmin(cost)), cost.shape))
    if not np.isfinite(cost[i, a, j, b]):
        return ()
    found = [(useful[i].name, int(first[i, a]))]
    if b:
        found.append((useful[j].name, int(b)))
    return tuple(found)


def _fewer(mass_g: float, useful: Sequence[Shot], found: Counted) -> Counted:
    """Return fewer pieces with the heaviest put on first, where one size makes too many."""
    pieces = sum(count for _, count in found)
    if pieces <= MANY:
        return found
    top = useful[0]
    spare = int(mass_g / top.mass_g) - 1
    if spare < 1 or (top.count is not None and top.count <= spare):
        return found
    both = {top.name: spare}
    rest_g = mass_g - spare * top.mass_g
    for name, number in _fewer(rest_g, useful, _one_or_two(rest_g, useful)):
        both[name] = both.get(name, 0) + number
    return tuple(both.items()) if sum(both.values()) < pieces else found


def _mass(counted: Counted, masses: Mapping[str, float]) -> float:
    return sum(masses[name] * count for name, count in counted)
