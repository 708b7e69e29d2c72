"""What to fit at the bench: every stock, length and scheme, with what each costs."""

from collections.abc import Callable, Hashable, Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property, reduce
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from tipsight.advice import choose
from tipsight.advice.answer import Block
from tipsight.advice.candidates import (
    Schemes,
    bands_of,
    pairings,
    schemes,
    showing_lengths_mm,
)
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import Limit
from tipsight.advice.limits import Measures, kept, least_glued_mm, least_wet_mm
from tipsight.advice.sighting import counted
from tipsight.advice.swim import BLACK, FRESH_COATS, Swim, family_of
from tipsight.advice.waters import Water
from tipsight.errors import Mistakes
from tipsight.inputs.case import Stock, Tip, Wanted
from tipsight.load import budget, materials, tips
from tipsight.sight import detect, kernel

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]
T = TypeVar("T")

HEAVY_G, LONGEST_LIGHT_MM = 8.0, 45.0
"""A float that takes less shot than this has no longer tip, whatever the waves (judgement)."""
LONGEST_MM = 60.0
"""No tip is tried longer than this (judgement)."""


def _afloat(work: Callable[["Shelf"], T]) -> cached_property[T]:
    """Keep what hangs on no light with the swim, for shelves of the same pieces on any water."""

    def asked(self: "Shelf") -> T:
        held = self.held
        if work.__name__ not in held:
            held[work.__name__] = work(self)
        found: T = held[work.__name__]
        return found

    asked.__doc__ = work.__doc__
    return cached_property(asked)


@dataclass(frozen=True)
class Shelf:
    """All that could be fitted to this float in this swim, and what each piece costs."""

    swim: Swim
    stock: tuple[Stock, ...]
    showing_mm: Array
    schemes: tuple[Schemes, ...]
    left_out: int
    """Ways to divide a tip that were not tried, a band being too small to tell apart."""
    own: Tip | None = None
    """The tip in hand, where it is only to be painted anew: its own lengths stand."""

    @property
    def held(self) -> dict[Hashable, Any]:
        """What was worked out for the same pieces on the same float."""
        which = self.stock, self.showing_mm.tobytes(), self.own
        found = self.swim.shelves.get(which)
        if found is None:
            found = self.swim.shelves[which] = {}
        return found

    def wanting(self, wanted: Wanted) -> "Shelf":
        """Return the same pieces on the same waters for other wishes."""
        case = replace(self.swim.case, wanted=wanted)
        found = replace(self, swim=replace(self.swim, case=case))
        vars(found)["levels"] = self.levels  # what is seen hangs on no wish
        return found

    @property
    def coats(self) -> int:
        """Coats that the tip will have."""
        return self.own.coats if self.own else FRESH_COATS

    @_afloat
    def painted_mm(self) -> Array:
        """Painted diameter of each stock, shape (T,)."""
        bare = np.array([s.diameter_mm for s in self.stock])
        return np.asarray(tips.painted_diameter_mm(bare, self.coats))

    @_afloat
    def wet_mm(self) -> Array:
        """Wet length that each stock needs here, shape (T,)."""
        if self.own:
            return np.array([self.own.wet_mm])
        return np.array([least_wet_mm(self.swim.wave_rms_mm(d)) for d in self.painted_mm])

    @_afloat
    def glued_mm(self) -> Array:
        """Length in the body, shape (T, L)."""
        if self.own:
            return np.array([[self.own.glued_mm]])
        outside = self.showing_mm[None, :] + self.wet_mm[:, None]
        return least_glued_mm(outside)

    @_afloat
    def pull_g(self) -> Array:
        """Pull left for shot, shape (T, L)."""
        return np.asarray(
            budget.pull_grid(
                self.swim.hull,
                self.stock,
                self.showing_mm,
                self.wet_mm[:, None],
                self.glued_mm,
                coats=self.coats,
                temperature_c=self.swim.case.stream.temperature_c,
            )
        )

    @_afloat
    def sink_force_g(self) -> Array:
        """Force that drowns the showing part, shape (T, L)."""
        return np.asarray(
            budget.sink_force_g(
                self.painted_mm[:, None], self.showing_mm, self.swim.case.stream.temperature_c
            )
        )

    @_afloat
    def ride_margin(self) -> Array:
        """Length that shows, over the rms of its ups and downs, shape (T, L)."""
        return np.stack([self.swim.ride_margin(d, self.showing_mm) for d in self.painted_mm])

    @_afloat
    def limits(self) -> dict[Limit, Mask]:
        """Which pieces keep each limit but sight and balance, each broadcasting to (T, L)."""
        told = Measures(
            ride_margin=self.ride_margin,
            sink_force_g=self.sink_force_g,
            pull_g=self.pull_g,
            diameter_mm=np.array([s.diameter_mm for s in self.stock])[:, None],
            showing_mm=self.showing_mm,
            glued_mm=self.glued_mm,
        )
        return kept(self.swim, told)

    @_afloat
    def usual(self) -> Mask:
        """Which pieces are of the pattern's usual range, the longest by half the waves longer."""
        pattern, waves_mm = self.swim.pattern, 1e3 * self.swim.sea.height_m
        thick = np.array([s.diameter_mm for s in self.stock])[:, None]
        longest = pattern.usual_showing_to_mm + waves_mm / 2
        if self.swim.pull_g / self.swim.wet_share < HEAVY_G:
            longest = min(longest, LONGEST_LIGHT_MM)
        wide = (thick >= pattern.usual_from_mm) & (thick <= pattern.usual_to_mm)
        long = (self.showing_mm >= pattern.usual_showing_from_mm) & (self.showing_mm <= longest)
        return np.asarray(wide & long)

    @cached_property
    def levels(self) -> tuple[Array, ...]:
        """Worst level that counts over the judged waters, (D, S, P) by number of bands."""
        return tuple(
            np.minimum.reduce([self._levels(scheme, w) for w in self._judged])
            for scheme in self.schemes
        )

    @property
    def _judged(self) -> list[Water]:
        return [self.swim.waters[key] for key in self.swim.judged]

    def _levels(self, scheme: Schemes, water: Water) -> Array:
        here, swim = self.swim.here, self.swim
        hidden = (swim.hidden_mm[here], swim.hidden_high_mm[here])
        both = kernel.level_grid(
            water.at(here),
            diameter_mm=np.unique(self.painted_mm),
            edges_mm=np.concatenate([detect.cut(scheme.edges_mm, float(h)) for h in hidden]),
            contrast=water.contrast[scheme.paints, here],
        )
        half = len(scheme.edges_mm)
        return counted(both[:, :half], both[:, half:])

    def fields(self, *ignored: Limit, usual: bool = True) -> tuple[choose.Field, ...]:
        """Return what the choice looks at, all limits but sight kept unless some are ignored."""
        masks = [mask for limit, mask in self.limits.items() if limit not in ignored]
        masks += [self.usual] if usual and not self.own else []
        allowed = reduce(np.logical_and, masks, np.ones_like(self.ride_margin, dtype=bool))
        which = np.unique(self.painted_mm, return_inverse=True)[1]
        change = (self.pull_g - self.swim.pull_g) / self.swim.wet_share
        off = np.array([s.diameter_mm - self.swim.case.tip.stock.diameter_mm for s in self.stock])
        return tuple(
            choose.Field(
                level[which],
                self.sink_force_g[:, s.showing_index],
                change[:, s.showing_index],
                allowed[:, s.showing_index],
                np.abs(off),
            )
            for level, s in zip(self.levels, self.schemes, strict=True)
        )

    def either(self, tip: Tip, level: float) -> tuple[str, ...]:
        """Return the paint of each other family that alone gives a tip a level as well."""
        if not self.schemes or self.schemes[0].bands > 1 or tip.stock not in self.stock:
            return ()
        single, stock = self.schemes[0], self.stock.index(tip.stock)
        which = np.unique(self.painted_mm, return_inverse=True)[1][stock]
        at = np.flatnonzero(self.showing_mm[single.showing_index] == tip.showing_mm)
        if not at.size:
            return ()
        worn = {family_of(band.paint) for band in tip.bands}
        found: dict[str, tuple[float, str]] = {}
        for seen, finish in zip(self.levels[0][which, at[0]], single.paints[:, 0], strict=True):
            paint = self.swim.finishes[finish].paint
            family = family_of(paint)
            if family not in worn and seen >= level:
                found[family] = max(found.get(family, (0.0, "")), (float(seen), paint))
        return tuple(paint for _, paint in sorted(found.values(), reverse=True))

    def nearest(self, limit: Limit, level: float) -> tuple[choose.Field, ...]:
        """Return what the choice looks at without one limit, of the ride only what rides best."""
        fields = self.fields(limit, usual=False)
        if limit is not Limit.RIDE:
            return fields
        margins = [self.ride_margin[:, s.showing_index] for s in self.schemes]
        seen = [f.allowed & (f.level.max(axis=-1) >= level) for f in fields]
        best = max(
            float(np.max(m, where=ok, initial=0.0)) for m, ok in zip(margins, seen, strict=True)
        )
        return tuple(
            replace(f, allowed=ok & (m >= best - 1e-9))
            for f, m, ok in zip(fields, margins, seen, strict=True)
        )

    def tip(self, pick: choose.Pick) -> Tip:
        """Return the tip that a pick stands for."""
        scheme = self.schemes[pick.scheme]
        edges, length = scheme.edges_mm[pick.edges], scheme.showing_index[pick.edges]
        names = [self.swim.finishes[f].paint for f in scheme.paints[pick.paints]]
        return Tip(
            self.stock[pick.stock],
            float(self.showing_mm[length]),
            float(self.wet_mm[pick.stock]),
            float(self.glued_mm[pick.stock, length]),
            bands_of(names, edges),
            coats=self.coats,
            pulls_out=bool(self.own and self.own.pulls_out),
        )

    def looked_at(self, picks: Iterable[choose.Pick]) -> Iterator[Block]:
        """Yield the blocks of some tips; those with which it sinks or falls over are passed by."""
        for pick in picks:
            try:
                block = close_look(self.swim, self.tip(pick))
            except Mistakes:
                continue
            if not block.handling.falls_over:
                yield block

    def passing(self, fields: tuple[choose.Field, ...], wanted: float) -> Iterator[Block]:
        """Yield tips that reach a level and keep every other limit, the choice first."""
        return (b for b in self.looked_at(choose.ranked(fields, wanted)) if b.sound)


def repaint(swim: Swim) -> Shelf:
    """Return the tip in hand, as long and as thick as it is, in every paint."""
    tip = swim.case.tip
    showing = np.array([tip.showing_mm])
    return Shelf(swim, (tip.stock,), showing, *painted(swim, showing), own=tip)


def shelf(swim: Swim) -> Shelf:
    """Return all that the angler could fit."""
    showing = showing_lengths_mm(min(LONGEST_MM, swim.pattern.max_showing_mm))
    had = tuple(dict.fromkeys((*swim.case.box.stock, *swim.case.box.inserts)))
    stock = had or materials.shelf()
    return Shelf(swim, stock, showing, *painted(swim, showing))


def painted(
    swim: Swim, showing_mm: Array, range_m: float | None = None
) -> tuple[tuple[Schemes, ...], int]:
    """Return all ways to paint lengths of tip with the shelf's paints, and how many are left out.

    A band must be told apart at a distance [m]; at the asked one if none is told.
    """
    names = [swim.finishes[i].paint for i in swim.fresh]
    black = names.index(BLACK) if BLACK in names else None
    pairs = pairings([family_of(name) for name in names], black)
    fresh = [(swim.fresh[i], swim.fresh[j]) for i, j in pairs]
    far = float(swim.range_m[swim.here]) if range_m is None else range_m
    return schemes(showing_mm, swim.fresh, fresh, far)
