"""Why a float takes more or less shot than it did: the change of its load, cause by cause."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import product
from math import factorial

import numpy as np

from tipsight.afloat import freshwater
from tipsight.inputs.case import BuiltFloat, Case, Tip, WeighedFloat
from tipsight.load.bored import replaced
from tipsight.load.budget import pull_g
from tipsight.load.hull import HOOK_AND_BAIT_G, Hull, hull_of, recoated
from tipsight.load.shot import wet_share
from tipsight.load.tips import (
    aloft_g,
    coat_mass_g_per_mm,
    painted_diameter_mm,
    stock_mass_g_per_mm,
)

LEAST_G = 0.0005
"""Less than this is not told: half of what any scale of the trade shows (judgement)."""


class Cause(StrEnum):
    """What changes the load of a float."""

    TIP_WEIGHT = "tip weight"
    TIP_WET = "tip wet"
    TIP_COATS = "tip coats"
    BODY_COATS = "body coats"
    SHOULDER = "shoulder"
    BODY = "body"
    WATER_DRUNK = "water drunk"
    TEMPERATURE = "temperature"
    UNEXPLAINED = "unexplained"


@dataclass(frozen=True)
class Part:
    """What one cause adds to the shot that a float takes, in air."""

    cause: Cause
    shot_g: float


@dataclass(frozen=True)
class Account:
    """The change of a load: from what, to what, and the causes, the largest first."""

    old_g: float
    new_g: float
    parts: tuple[Part, ...]
    """They add up to the change."""


@dataclass(frozen=True)
class State:
    """A float with its tip in its water, each property by the cause that it stands for."""

    body: Hull
    """With its own coats."""
    varnish_coats: int
    paint_coats: int
    weight: Tip
    """The tip that is weighed."""
    wet: Tip
    """The tip whose thickness is under water and in the body."""
    tip_coats: int
    wet_mm: float
    drunk_g: float
    temperature_c: float


def _shot_g(state: State, metal: str) -> float:
    """Return the shot in air that a float takes: `budget.pull_grid` for one tip, term by term."""
    body, weight, wet = state.body, state.weight, state.wet
    outside_mm = weight.showing_mm + weight.wet_mm
    stock_g = float(stock_mass_g_per_mm([weight.stock])[0]) * (outside_mm + weight.glued_mm)
    coats_g = float(coat_mass_g_per_mm(weight.stock.diameter_mm, state.tip_coats)) * outside_mm
    gone_g, _ = replaced(body.slices, weight.stock.diameter_mm, weight.glued_mm)
    _, proud_mm3 = replaced(body.slices, wet.stock.diameter_mm, wet.glued_mm)
    painted_mm = float(painted_diameter_mm(wet.stock.diameter_mm, state.tip_coats))
    more_mm3, more_g = recoated(body, state.varnish_coats, state.paint_coats)
    volume_mm3 = (
        body.volume_mm3 + more_mm3 + float(proud_mm3) + np.pi / 4 * painted_mm**2 * state.wet_mm
    )
    mass_g = body.mass_g + more_g + stock_g + coats_g + aloft_g(weight) - float(gone_g)
    water = float(freshwater.density_kg_m3(state.temperature_c)) * 1e-6
    pull = water * volume_mm3 - mass_g - state.drunk_g - HOOK_AND_BAIT_G
    return pull / float(wet_share(metal, state.temperature_c))


_OF: dict[Cause, tuple[str, ...]] = {
    Cause.TIP_WEIGHT: ("weight",),
    Cause.TIP_WET: ("wet",),
    Cause.TIP_COATS: ("tip_coats",),
    Cause.BODY_COATS: ("varnish_coats", "paint_coats"),
    Cause.SHOULDER: ("wet_mm",),
    Cause.BODY: ("body",),
    Cause.WATER_DRUNK: ("drunk_g",),
    Cause.TEMPERATURE: ("temperature_c",),
}
"""The properties of a state that each cause changes."""


def shared(causes: Sequence[Cause], worth: Callable[[frozenset[Cause]], float]) -> list[Part]:
    """Return what each cause adds, on average over all orders in which they may come.

    The only way to share out a change so that the parts add up to it, what changes nothing has no
    part, and no order is favoured (Shapley 1953, A value for n-person games).

    Parameters
    ----------
    causes : sequence of Cause
        Those that are there.
    worth : callable
        The load once some of them have come.

    Examples
    --------
    >>> area = lambda came: (3.0 if Cause.TIP_WET in came else 2.0) * (
    ...     5.0 if Cause.SHOULDER in came else 4.0)
    >>> [part.shot_g for part in shared([Cause.TIP_WET, Cause.SHOULDER], area)]
    [4.5, 2.5]
    """
    n = len(causes)
    found = dict.fromkeys(causes, 0.0)
    for chosen in product((False, True), repeat=n):
        came = frozenset(cause for cause, is_in in zip(causes, chosen, strict=True) if is_in)
        value, k = worth(came), len(came)
        for cause in causes:
            if cause in came:
                found[cause] += value * factorial(k - 1) * factorial(n - k) / factorial(n)
            else:
                found[cause] -= value * factorial(k) * factorial(n - k - 1) / factorial(n)
    return [Part(cause, found[cause]) for cause in causes]


def _state(case: Case, body: Hull, tip: Tip) -> State:
    made = case.float_
    return State(
        body=body,
        varnish_coats=made.varnish_coats,
        paint_coats=made.paint_coats,
        weight=tip,
        wet=tip,
        tip_coats=tip.coats,
        wet_mm=tip.wet_mm,
        drunk_g=made.drunk_g,
        temperature_c=case.stream.temperature_c,
    )


def _bare(made: WeighedFloat | BuiltFloat) -> WeighedFloat | BuiltFloat:
    """Return a float without what stands in its state by itself: coats and water drunk."""
    coats = {name: getattr(WeighedFloat, name) for name in ("varnish_coats", "paint_coats")}
    return replace(made, drunk_g=0.0, **coats)


def _same_tip(weight: Tip, wet: Tip) -> bool:
    """Return whether two tips displace the same, however long and of whatever they are."""
    return (weight.stock.diameter_mm, weight.glued_mm) == (wet.stock.diameter_mm, wet.glued_mm)


def account(old: Case, new: Case, tip: Tip | None = None) -> Account:
    """Return why a float takes what it now takes and not what it took.

    Parameters
    ----------
    old, new : Case
        The float as it was and as it is; shot is reckoned in the metal of the new one.
    tip : Tip, optional
        On the new float in place of its own.

    Returns
    -------
    Account
        A weighed float that was weighed anew is taken for the same body: what its other causes do
        not explain is unexplained. One that was not weighed anew, and one that is built, takes what
        its causes make of it.

    Raises
    ------
    Mistakes
        If one of them sinks.

    Notes
    -----
    The terms of `budget.pull_grid`, shared out by `shared`. A tip is told apart by its weight, by
    its thickness under water, by its paint, and by how much of it is under water.
    """
    metal, now = new.box.shot_metal, tip or new.tip
    warm = old.stream.temperature_c
    first = hull_of(_bare(old.float_), old.weighed_tip, warm)
    both_weighed = isinstance(old.float_, WeighedFloat) and isinstance(new.float_, WeighedFloat)
    second = first
    if not both_weighed and _bare(old.float_) != _bare(new.float_):
        second = hull_of(_bare(new.float_), new.weighed_tip, new.stream.temperature_c)
    before, after = _state(old, first, old.tip), _state(new, second, now)
    if _same_tip(before.wet, after.wet):  # of another material or length alone
        after = replace(after, wet=before.wet)
    there = [
        cause
        for cause, names in _OF.items()
        if any(getattr(before, name) != getattr(after, name) for name in names)
    ]

    def worth(came: frozenset[Cause]) -> float:
        names = [name for cause in came for name in _OF[cause]]
        return _shot_g(replace(before, **{name: getattr(after, name) for name in names}), metal)

    parts = shared(there, worth)
    old_g, new_g = worth(frozenset()), worth(frozenset(there))
    if both_weighed and (_told(old), old.weighed_tip) != (_told(new), new.weighed_tip):
        measured = hull_of(_bare(new.float_), new.weighed_tip, new.stream.temperature_c)
        share = float(wet_share(metal, new.stream.temperature_c))
        found_g = pull_g(measured, now, new.stream.temperature_c) / share
        parts.append(Part(Cause.UNEXPLAINED, found_g - new_g))
        new_g = found_g
    parts.sort(key=lambda part: -abs(part.shot_g))
    return Account(old_g, new_g, tuple(parts))


def _told(case: Case) -> tuple[float, str] | None:
    """Return the shot that a float was told to take: of another metal as much is another load."""
    made = case.float_
    return (made.shot_g, made.shot_metal) if isinstance(made, WeighedFloat) else None
