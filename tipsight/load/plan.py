"""Which shot makes up a load, and where it goes on the line."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tipsight.checks import within
from tipsight.inputs.case import Fixing, Shot
from tipsight.load import exact, law
from tipsight.load.shot import is_olivette, wet_share

SMALL_LOAD_G = 1.2
"""Pull below which any size may be bulk; judgement."""
BULK_LEAST_G = 0.25
"""Smallest shot that goes into a bulk."""
DROPPER_G = (0.06, 0.2)
"""Lightest dropper, and heaviest unless the load is a big one."""
DROPPER_SHARE = 0.03
"""Heaviest dropper as a share of a big load; judgement."""
SMALL_DROPPER_G = 0.02
"""Lightest dropper under a small load."""
TRIM_MOST_G = 0.06
"""Heaviest shot for trimming under the float."""
STRING_G = (0.04, 0.2)
"""Lightest shot of a string, and heaviest unless the load is more than ten of it."""
BULK, DROPPER, TRIM, STRING = "bulk", "dropper", "trim under the float", "spread"
BULK_FROM_HOOK_M = 0.75
"""Where the bulk goes over a full depth: two to three feet; common practice, no source."""
BULK_DEPTH_SHARE = 0.45
"""And in shallow water: below half the depth; common practice, no source."""
_EDGE = 1e-9
EQUAL_MG = 1e-6
"""Costs that differ by no more are equal."""


@dataclass(frozen=True)
class ShotPlan:
    """The shot for a load."""

    shot: tuple[tuple[str, int, str], ...]
    """Name, count and where, heaviest first in each place."""
    shot_g: float
    """In air."""
    pull_g: float
    """In water."""
    left_g: float
    """Pull that no shot makes up."""
    left_out: tuple[str, ...] = ()
    """Sizes that were not counted on, being lead too heavy for the rules."""


@dataclass(frozen=True)
class Placed:
    """Shot at one place on the line."""

    name: str
    count: int
    where: str
    from_hook_m: float


def _size(shot: Shot, share: float, fixing: Fixing, pull_g: float, loose: bool) -> exact.Size:
    mass = shot.mass_g
    trim = mass <= TRIM_MOST_G + _EDGE and not is_olivette(shot.name)
    if loose:
        return exact.Size(mass, share, shot.count, True, False, False)
    if fixing != "bulk":
        most = max(STRING_G[1], pull_g / share / 10.0)
        string = STRING_G[0] - _EDGE <= mass <= most + _EDGE and not is_olivette(shot.name)
        return exact.Size(mass, share, shot.count, string, False, trim)
    small = pull_g < SMALL_LOAD_G
    bulk = small or mass >= BULK_LEAST_G - _EDGE
    least = SMALL_DROPPER_G if small else DROPPER_G[0]
    most = max(DROPPER_G[1], DROPPER_SHARE * pull_g / share)
    dropper = least - _EDGE <= mass <= most + _EDGE
    return exact.Size(mass, share, shot.count, bulk, dropper and not is_olivette(shot.name), trim)


def _rule(fixing: Fixing, pull_g: float) -> exact.Rule:
    if fixing != "bulk":
        return exact.Rule(0.70, 1.0, 0, 0, 3)
    if pull_g < SMALL_LOAD_G:
        return exact.Rule(0.40, 0.92, 1, 4, 3)
    return exact.Rule(0.70, 0.92, 2, 4, 3)


def plan(
    pull_g: float,
    shots: Sequence[Shot],
    fixing: Fixing = "bulk",
    temperature_c: float = 10.0,
) -> ShotPlan:
    """Return the shot that comes nearest under a load with the fewest pieces; never over-shot.

    The optimum is exact (`exact.best`). When no way keeps the rule, whatever comes nearest under the
    load. The bulk has one olivette at most. Below 1.2 g of pull any size may be bulk, 40 to 92 % of
    it, with one to four droppers. Shares, numbers and costs are common practice and judgement.

    Parameters
    ----------
    pull_g : float
        Pull in water to be made up [gf]; 0 to 100, or OutOfRange.
    shots : sequence of Shot
        Sizes to be had, with their metal and how many.
    fixing : str
        'bulk' (70 to 92 % in the bulk, two to four droppers, up to three to trim with), 'spread'
        (a string along the line, and up to three to trim with) or 'even' (such a string of one
        size).
    temperature_c : float
        Water [deg C].

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> plan(1.6, sizes("tin")).shot
    (('SSG', 1, 'bulk'), ('No 5', 1, 'dropper'), ('No 6', 1, 'dropper'))
    """
    load = float(within("load", pull_g, 0.0, 100.0, "g"))
    allowed = law.usable(shots)
    left_out = tuple(shot.name for shot in shots if shot not in allowed)
    shares = [float(wet_share(shot.metal, temperature_c)) for shot in allowed]
    usable = [
        (shot, share)
        for shot, share in zip(allowed, shares, strict=True)
        if shot.mass_g * share <= load + _EDGE and shot.count != 0
    ]
    # First as the pattern is shotted; where no way of that is to be had, any shot anywhere.
    for rule, loose in ((_rule(fixing, load), False), (exact.Rule(0.0, 1.0, 0, 0, 0), True)):
        sizes = [_size(shot, share, fixing, load, loose) for shot, share in usable]
        one_size = fixing == "even" and not loose
        found = None
        for choice in _choices(sizes, [shot.name for shot, _ in usable], one_size):
            # the first of equals stands, as it has the heaviest olivette
            under_mg = found.cost_mg - EQUAL_MG if found else math.inf
            found = exact.best(load, choice, rule, under_mg) or found
        if found:
            return _told(found, usable, fixing, load, left_out)
    return ShotPlan((), 0.0, 0.0, load, left_out)


def _choices(
    sizes: Sequence[exact.Size], names: Sequence[str], one_size: bool
) -> Iterator[list[exact.Size]]:
    """Yield what may be in the bulk together: one olivette at most, or one size of a string."""
    # One olivette, not two, is no sum over counts, so each is tried by itself as the only one.
    olivettes = [i for i, name in enumerate(names) if is_olivette(name)]
    olivettes.sort(key=lambda i: -sizes[i].mass_g)
    if one_size:
        for only in range(len(sizes)):
            yield [replace(s, bulk=s.bulk and i == only) for i, s in enumerate(sizes)]
        return
    for chosen in (*olivettes, -1):
        yield [
            replace(s, bulk=s.bulk and i == chosen, count=1 if i == chosen else None)
            if i in olivettes
            else s
            for i, s in enumerate(sizes)
        ]


def _told(
    best: exact.Best,
    usable: Sequence[tuple[Shot, float]],
    fixing: Fixing,
    load_g: float,
    left_out: tuple[str, ...],
) -> ShotPlan:
    shots, shares = [shot for shot, _ in usable], [share for _, share in usable]
    lines = []
    order = sorted(range(len(shots)), key=lambda i: -shots[i].mass_g)
    for counts, where in (
        (best.bulk, BULK if fixing == "bulk" else STRING),
        (best.droppers, DROPPER),
        (best.trims, TRIM),
    ):
        lines += [(i, counts[i], where) for i in order if counts[i]]
    shot_g = sum(shots[i].mass_g * count for i, count, _ in lines)
    pull_g = sum(shots[i].mass_g * shares[i] * count for i, count, _ in lines)
    told = tuple((shots[i].name, count, where) for i, count, where in lines)
    return ShotPlan(told, shot_g, pull_g, load_g - pull_g, left_out)


def layout(shot: Sequence[tuple[str, int, str]], depth_m: float) -> tuple[Placed, ...]:
    """Return where on the line each shot goes, told by name, count and place, from the float down.

    Trims under the float; the bulk together, two to three feet from the hook or below half the
    depth in shallow water; droppers one by one below it, lightest nearest the hook; a string at
    equal gaps from float to hook, not growing downwards. Common practice, no source; the share of
    a shallow depth is judgement. The depth is from float to hook [m], 0.2 to 12, or OutOfRange.

    >>> from tipsight.load.shot import sizes
    >>> [(p.name, round(p.from_hook_m, 2)) for p in layout(plan(1.6, sizes()).shot, 2.0)]
    [('SSG', 0.75), ('No 5', 0.5), ('No 6', 0.25)]
    """
    depth = float(within("depth", depth_m, 0.2, 12.0, "m"))
    bulk_m = min(BULK_FROM_HOOK_M, BULK_DEPTH_SHARE * depth)
    placed = [Placed(n, c, where, depth) for n, c, where in shot if where == TRIM]
    placed += [Placed(n, c, where, bulk_m) for n, c, where in shot if where == BULK]
    for kind, top_m in ((STRING, depth), (DROPPER, bulk_m)):
        pieces = [name for name, count, where in shot if where == kind for _ in range(count)]
        gap_m = top_m / (len(pieces) + 1)
        placed += [
            Placed(name, 1, kind, top_m - gap_m * (number + 1))
            for number, name in enumerate(pieces)
        ]
    return tuple(placed)
