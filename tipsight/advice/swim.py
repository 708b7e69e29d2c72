"""The swim worked out once: the waters over distance, the ripple, the ride and the bare float."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property, lru_cache
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.advice.answer import Block
from tipsight.advice.in_mind import AFLOAT, in_common
from tipsight.advice.waters import Waters, views, water
from tipsight.afloat import chop, hidden, lean, ride
from tipsight.afloat.ride import Ride
from tipsight.afloat.rig import Rig, rig
from tipsight.inputs.case import Case, Finish, Hung, Light, Stream, Stretch, Tip, WeighedFloat
from tipsight.load import balance, budget, hull, line, patterns, shot, tips
from tipsight.sight import eye
from tipsight.units import YARD_M

Array = NDArray[np.float64]

NEAREST_M, FARTHEST_M = 3.0, 100.0
LADDER_YD = (10, 20, 30, 40, 50, 60)
RANGE_M = np.unique(
    np.concatenate(
        [
            [NEAREST_M],
            YARD_M * np.arange(4.0, 61.0),
            YARD_M * np.arange(64.0, 109.0, 4.0),
            [FARTHEST_M],
        ]
    )
)
"""Whole yards to 60, then every fourth: where the level is worked out [m]."""
PEN, BLACK = "felt pen", "black"
DARK = Stretch("dark", bank_height_deg=25.0)
BRIGHT = Stretch("bright", bank_height_deg=0.5)
FRESH_COATS = 3
"""White, colour and colour on a fresh tip (common practice, no source)."""
SHOT_DEPTH_SHARE = {"bulk": 0.6, "spread": 0.5, "even": 0.5}
"""How far down the middle of the shot hangs, as a share of the depth (judgement)."""
SHOT_SLIP = 0.25
"""Of the pace, by which the shot lags behind the water round it (judgement)."""


def finish_of(tip: Tip, name: str) -> Finish:
    """Return the state of one paint on ``tip``; pen ink is always fresh and needs no white."""
    if name == PEN:
        return Finish(PEN, gloss=tip.gloss)
    return Finish(name, tip.seasons, tip.undercoat, tip.gloss)


@tables.derived
def family_of(paint: str) -> str:
    """Return the family of a paint: dark, red, orange, green or pale."""
    return str(tables.row("paints", paint, "paint")["family"])


@dataclass(frozen=True)
class Swim:
    """What all tips share in one question."""

    case: Case
    range_m: Array
    """Rising, the asked distance among them."""
    here: int
    """Where in ``range_m`` the asked distance stands."""
    finishes: tuple[Finish, ...]
    fresh: tuple[int, ...]
    """Which finishes are the shelf's, newly painted."""
    eye: eye.Eye
    sea: chop.Sea
    hidden_mm: Array
    hidden_high_mm: Array
    hull: hull.Hull
    pattern: patterns.Pattern
    rig: Rig
    stream: Stream
    """With the boils worked back from the angler's own count."""
    pull_g: float
    """Of the float with the tip in hand."""
    waters: Waters
    judged: tuple[str, ...]
    """Keys of the waters on which the tip must be seen."""
    unsure: bool
    """Whether the waters are what it might be, not what the trot crosses."""
    diameters_mm: Array
    """Painted diameters whose ride was worked out, rising."""
    ride: Ride
    rigs: dict[Tip, Rig] = field(default_factory=dict, init=False, repr=False, compare=False)
    """What `rigged` has worked out; the same wherever and however the float is looked at."""
    sounds: dict[Tip, bool | None] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    """What `close_look.is_sound` has found; it hangs on no light and no distance."""
    shelves: dict[Hashable, dict[Hashable, Any]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    """What each piece on a shelf costs this float, as `bench.Shelf` has found; it hangs on no light."""
    alongs: dict[tuple[int, Tip], tuple[Array, Array, Array]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    """What `sighting.along` has found, by the water's identity; the same whatever is asked about."""
    looks: dict[Tip, Block] = field(default_factory=dict, init=False, repr=False, compare=False)
    """What `close_look` has found."""

    @cached_property
    def wet_share(self) -> float:
        """Part of its weight that the shot pulls under water."""
        return float(shot.wet_share(self.case.box.shot_metal, self.case.stream.temperature_c))

    @cached_property
    def hung(self) -> tuple[Hung, ...]:
        """The shot on the line now."""
        box, warm = self.case.box, self.case.stream.temperature_c
        return line.hanging(box.hanging, self.pull_g, box.shot, self.hull.fixing, warm)

    @cached_property
    def uprightness(self) -> float:
        """What holds the float up over what tips it, with the tip in hand."""
        tip, warm = self.case.tip, self.case.stream.temperature_c
        rigged, painted_mm = self.rigged(tip), tips.showing_diameter_mm(tip)
        return float(lean.uprightness(rigged, painted_mm, warm))

    @property
    def thickest_mm(self) -> float:
        """Thickest stock that the body takes."""
        return self.pattern.max_body_share * self.hull.body_diameter_mm

    def longest_showing_mm(self, diameter_mm: ArrayLike) -> Array:
        """Return the most that a tip of a diameter can stand [mm]."""
        stands = np.multiply(self.pattern.max_showing_diameters, diameter_mm)
        return np.minimum(self.pattern.max_showing_mm, stands)

    def at(self, range_m: float) -> "Swim":
        """Return the same swim with the tip watched at the nearest of the worked distances."""
        here = int(np.argmin(np.abs(self.range_m - range_m)))
        place = replace(self.case.place, range_m=float(self.range_m[here]))
        return self._on_the_same_waters(here=here, case=replace(self.case, place=place))

    def lit(self, case: Case) -> "Swim":
        """Return the same swim with its waters as the eyes of a case have them."""
        views_ = self.waters.views
        lit = _lit(case, views_, self.finishes, self.range_m, self.here, self.eye, self.sea)
        return self._seen(case=case, waters=lit)

    def wearing(self, finishes: tuple[Finish, ...]) -> "Swim":
        """Return the same swim with its waters lit for other finishes, none of them the shelf's."""
        views_ = self.waters.views
        lit = _lit(self.case, views_, finishes, self.range_m, self.here, self.eye, self.sea)
        return self._seen(finishes=finishes, fresh=(), waters=lit)

    def beside(self, lit: "Swim") -> "Swim":
        """Return the same swim on the waters of another, lit for the finishes of both."""
        return self._seen(finishes=lit.finishes, fresh=(), waters=lit.waters)

    def from_height(self, eye_height_m: float) -> "Swim":
        """Return the same swim looked at from another height; how the float rides stays."""
        case = replace(self.case, place=replace(self.case.place, eye_height_m=eye_height_m))
        mean_mm, high_mm = hidden.hidden_mm(self.sea, self.range_m, eye_height_m)
        raised = self._seen(hidden_mm=np.asarray(mean_mm), hidden_high_mm=np.asarray(high_mm))
        return raised.lit(case)

    def on(self, name: str) -> "Swim":
        """Return the same swim with the tip judged on one stretch alone."""
        return self._on_the_same_waters(judged=self.waters.of(name), unsure=False)

    def _on_the_same_waters(self, **other: Any) -> "Swim":
        found = self._seen(**other)
        object.__setattr__(found, "alongs", self.alongs)
        return found

    def _seen(self, **other: Any) -> "Swim":
        """Return the same float in the same swim, seen otherwise."""
        found = replace(self, **other)
        for one in AFLOAT:
            object.__setattr__(found, one, getattr(self, one))
        return found

    @property
    def adaptation_cd_m2(self) -> float:
        """The dimmest light to which the eye adapts on the judged waters, here."""
        return min(float(self.waters[name].adaptation_cd_m2[self.here]) for name in self.judged)

    def rigged(self, tip: Tip) -> Rig:
        """Return the float cocked by its shot with a tip on it."""
        found = self.rigs.get(tip)
        if found is None:
            found = self.rigs[tip] = _rig(self.case, self.hull, tip)
        return found

    def ride_margin(self, painted_mm: float, showing_mm: ArrayLike) -> Array:
        """Return showing length over its ups and downs for one painted diameter [-]."""
        return np.asarray(ride.ride_margin(showing_mm, self.rides(painted_mm)))

    def wave_rms_mm(self, painted_mm: float) -> float:
        """Return the chop's part of a tip's ups and downs [mm]."""
        return float(self.rides(painted_mm).wave_rms_mm[0])

    def rides(self, painted_mm: float) -> Ride:
        """Return the ride of the worked diameter nearest to a painted one, as arrays of one."""
        i = int(np.argmin(np.abs(self.diameters_mm - painted_mm)))
        return self.ride[i : i + 1]


def swim(case: Case, also_m: Sequence[float] = ()) -> Swim:
    """Return everything that all tips share in a question.

    Parameters
    ----------
    case : Case
        The question.
    also_m : sequence of float
        Other distances that `Swim.at` is going to be asked for, each as exact as the question's [m].

    Returns
    -------
    Swim
        Ready to look at tips.

    Raises
    ------
    Mistakes
        If the float sinks or is shorter than what is glued into it, or the dips told cannot be.

    Examples
    --------
    >>> from tipsight.inputs import demo
    >>> from tipsight.inputs.settle import settle
    >>> swim(settle(demo.question("demo"))).judged
    ('bright', 'bright/1')
    """
    warm = case.stream.temperature_c
    bare = hull.hull_of(case.float_, case.weighed_tip, warm)
    pull_now = budget.pull_g(bare, case.tip, warm)
    sea = chop.sea(case.wind, warm)
    # one ride serves all tips of a diameter: that of the float with the tip by which it is known
    tackle = _rig(
        case, bare, case.weighed_tip if isinstance(case.float_, WeighedFloat) else case.tip
    )
    stream = case.stream
    if stream.dips_per_min_told is not None:
        factor = ride.boil_factor_from_dips(
            stream.dips_per_min_told,
            case.tip.showing_mm,
            tips.showing_diameter_mm(case.tip),
            tackle,
            sea,
            stream,
        )
        stream = replace(stream, boil_factor=factor)
    diameters = _diameters(case)
    distances = np.unique(np.append(RANGE_M, case.place.range_m))
    distances = distances[np.append(True, np.diff(distances) > 1e-6)]
    here = int(np.argmin(np.abs(distances - case.place.range_m)))
    finishes, fresh = _finishes(case)
    eyes = eye.Eye(case.angler.age_years, case.angler.mar_arcmin, case.angler.own_eye_factor)
    hidden_mm, high_mm = hidden.hidden_mm(sea, distances, case.place.eye_height_m)
    by_name = {s.name: s for s in (*case.stretches, DARK, BRIGHT)}
    seen = views(case, by_name.values())
    marks = (here, *(int(np.argmin(np.abs(distances - far))) for far in also_m))
    waters = _lit(case, seen, finishes, distances, marks, eyes, sea)
    found = Swim(
        case=case,
        range_m=distances,
        here=here,
        finishes=finishes,
        fresh=fresh,
        eye=eyes,
        sea=sea,
        hidden_mm=np.asarray(hidden_mm),
        hidden_high_mm=np.asarray(high_mm),
        hull=bare,
        pattern=patterns.pattern(case.float_.pattern),
        rig=tackle,
        stream=stream,
        pull_g=pull_now,
        waters=waters,
        judged=tuple(key for s in case.stretches for key in waters.of(s.name)),
        unsure=any(s.might_be for s in case.stretches),
        diameters_mm=diameters,
        ride=ride_on(tackle, sea, stream, tuple(diameters.tolist())),
    )
    for one, held in zip(AFLOAT, in_common(case), strict=True):
        object.__setattr__(found, one, held)
    return found


def _lit(
    case: Case,
    seen: Mapping[str, tuple[Light, Stretch]],
    finishes: tuple[Finish, ...],
    range_m: Array,
    here: int | tuple[int, ...],
    eyes: eye.Eye,
    sea: chop.Sea,
) -> Waters:
    """Return the waters of some views, each lit when it is first asked for."""
    args = finishes, range_m, here, eyes, sea.clutter_wavelength_mm
    return Waters(seen, lambda light, stretch: water(case, light, stretch, *args))


@lru_cache(maxsize=256)
def ride_on(rigged: Rig, sea: chop.Sea, stream: Stream, painted_mm: tuple[float, ...]) -> Ride:
    """Return how a float rides with tips of several diameters; many swims have one such water."""
    return ride.ride(rigged, sea, stream, painted_mm)


def _diameters(case: Case) -> Array:
    """Return every painted diameter that may be asked about."""
    tip = case.tip
    bare = {s.diameter_mm for s in (*case.box.stock, *case.box.inserts, tip.stock)}
    bare |= {tip.stock.diameter_mm + step for step in (-1.0, -0.5, 0.5, 1.0)}
    painted = {float(tips.painted_diameter_mm(d, FRESH_COATS)) for d in bare if d >= 0.5}
    painted |= {
        float(tips.painted_diameter_mm(s.diameter_mm, tip.coats))
        for s in (*case.box.inserts, tip.stock)
    }
    sleeved = float(tips.painted_diameter_mm(tip.stock.diameter_mm, tip.coats)) + tips.SLEEVE_MM
    return np.array(sorted({*painted, sleeved}))


def _finishes(case: Case) -> tuple[tuple[Finish, ...], tuple[int, ...]]:
    """Return the shelf's paints new, the pen, and those on the tip as they are."""
    shelf = [Finish(name) for name in case.box.paints if name != PEN]
    worn = [finish_of(case.tip, name) for name in (*(b.paint for b in case.tip.bands), PEN)]
    slipped = (
        [Finish(name, gloss=case.tip.gloss) for name in case.box.paints]
        if case.box.sleeves
        else []
    )
    found = tuple(dict.fromkeys((*shelf, *worn, *slipped, Finish(PEN))))
    return found, tuple(range(len(shelf)))


def _rig(case: Case, bare: hull.Hull, known: Tip) -> Rig:
    """Return the float cocked by its shot, with a tip on it."""
    metal, warm = case.box.shot_metal, case.stream.temperature_c
    shot_g = budget.pull_g(bare, known, warm) / float(shot.wet_share(metal, warm))
    share = SHOT_DEPTH_SHARE[bare.fixing]
    return rig(
        balance.outline(bare, known),
        known.wet_mm,
        balance.float_mass_g(bare, known),
        balance.centre_of_mass_mm(bare, known),
        shot_g,
        shot_density_kg_m3=shot.density_kg_m3(metal),
        shot_depth_m=share * case.stream.depth_m,
        shot_slip_m_s=SHOT_SLIP * case.stream.pace_m_s,
    )
