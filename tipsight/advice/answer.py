"""The answer: what ``advise`` returns, all of it facts, every number unrounded."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from html import escape
from typing import ClassVar

from tipsight.advice import as_values
from tipsight.advice.facts import (
    Action,
    Caution,
    ComeCloser,
    Cure,
    Doubt,
    Failure,
    Limit,
    OtherStretch,
    Show,
    StandHigher,
    Undo,
    Warn,
)
from tipsight.afloat.rig import Rig
from tipsight.inputs.case import Assumed, Case, Tip
from tipsight.load.causes import Part
from tipsight.load.line import ShotChange


@dataclass(frozen=True)
class Run:
    """A run of distances over which a tip keeps one grade."""

    grade: str
    from_m: float
    to_m: float


@dataclass(frozen=True)
class Sight:
    """How well a tip is seen against one water at the asked distance."""

    name: str
    """Of the water behind the tip, as the case's stretches have it."""
    level: float
    low: float
    high: float
    grade: str
    goes_at_m: float | None
    """Distance beyond which the level stays below the wanted grade; None beyond the search."""
    gone_at_m: float | None
    notice_s: float | None
    """Until a tip that stays down is noticed; None for one that is not followed."""
    colour_share: float
    """Part of the level's energy that colour carries, 0 to 1."""
    runs: tuple[Run, ...] = ()
    """Its grades from 10 to 60 yd, near to far."""


@dataclass(frozen=True)
class Visibility:
    """How well a tip is seen: the worst of the waters, and each of them."""

    level: float
    low: float
    high: float
    grade: str
    goes_at_m: float | None
    gone_at_m: float | None
    notice_s: float | None
    """On the water where it takes longest; None where it is not followed on all."""
    by_background: tuple[Sight, ...]

    @property
    def worst(self) -> Sight:
        """The water on which it is seen worst."""
        return min(self.by_background, key=lambda one: one.level)


@dataclass(frozen=True)
class Handling:
    """How the float rides and what it tells of a bite."""

    sink_force_g: float
    sink_force_high_g: float
    """With the full meniscus, when a dry top is dragged right under."""
    stiffness_g_per_mm: float
    ride_margin: float
    ride_margin_low: float
    ride_margin_high: float
    """If the water boils as much more, or less, than is taken as its boils are in doubt."""
    time_under: float
    dips_per_min: float
    ordinary_dip_s: float | None
    """Length that 95 % of the dips stay below; None when the tip never dips."""
    hidden_mm: float
    hidden_high_mm: float
    slow_bite_g: float | None
    pluck_g: float
    visible_dip_mm: float | None
    lean_deg: float | None
    """In the wind or held back, whichever leans more; None for a float that then lies flat."""
    uprightness: float
    """What holds it up over what tips it; without limit where nothing tips it."""
    upright: bool
    """Whether it stands with a margin."""
    lift_g: float | None
    """How much holding back lifts the float; None when it then lies flat."""

    @property
    def falls_over(self) -> bool:
        """Whether it lies down with all its shot on."""
        return self.uprightness <= 1.0


@dataclass(frozen=True)
class ShotLine:
    """One line of the shot list."""

    name: str
    count: int
    where: str


@dataclass(frozen=True)
class Load:
    """What the float takes with this tip showing so much."""

    shot_metal: str
    shot_g: float
    """In air."""
    pull_g: float
    """In water."""
    change_g: float
    """Shot to put on (positive) or take off (negative), in air, from the float as it is."""
    step: ShotChange
    """The fewest shot to touch for it, of what hangs and of what he has."""
    shot: tuple[ShotLine, ...]
    """What hangs then."""
    short_by_g: float
    """In air."""
    high_mm: float | None
    """How much more of the tip shows for it; None where its body shows."""


@dataclass(frozen=True)
class Block:
    """One tip on this float in this swim: the tip, how it is seen, how it rides, what it takes."""

    tip: Tip
    painted_mm: float
    """Diameter of what shows, its paint and any sleeve included."""
    rig: Rig = field(repr=False, compare=False)
    """The float cocked by its shot with this tip."""
    visibility: Visibility
    handling: Handling
    load: Load
    fails: tuple[Failure, ...] = ()
    """The limits that it does not keep."""

    @property
    def broken(self) -> tuple[Failure, ...]:
        """Those that count, mere wishes that the tip in hand breaks as much left aside."""
        return tuple(fail for fail in self.fails if not fail.as_it_is)

    @property
    def passes(self) -> bool:
        """Whether it keeps every limit that counts."""
        return not self.broken

    @property
    def sound(self) -> bool:
        """Whether it keeps every limit that counts, how it is seen left aside."""
        return all(fail.limit is Limit.SIGHT for fail in self.broken)

    def breaks(self, limit: Limit) -> bool:
        """Return whether it breaks one limit, and that counts."""
        return any(fail.limit is limit for fail in self.broken)


@dataclass(frozen=True)
class Change:
    """Something to do, what comes of it, and the options that make it."""

    actions: tuple[Action, ...]
    """In the order in which they are done; none: leave it as it is."""
    at_the_bank: bool
    undo: Undo
    block: Block
    options: dict[str, str] = field(default_factory=dict)
    either: tuple[str, ...] = ()
    """Paints of other families that do as well."""
    causes: tuple[Part, ...] = ()
    """Of a tip that is fitted: why the float then takes more or less than with the one in hand."""

    @property
    def kind(self) -> str:
        """Its actions by name: 'as it is', 'show more', 'pen and show more', 'fit' ..."""
        names = [
            ("show more" if one.more else "show less") if isinstance(one, Show) else one.do
            for one in self.actions
        ]
        return " and ".join(names) or "as it is"

    @property
    def range_m(self) -> float | None:
        """The distance to which it comes in, None where it stays."""
        return next((one.range_m for one in self.actions if isinstance(one, ComeCloser)), None)

    @property
    def stays(self) -> bool:
        """Whether the angler stays where he is."""
        return not any(
            isinstance(one, ComeCloser | StandHigher | OtherStretch) for one in self.actions
        )

    def does(self, kind: type) -> bool:
        """Return whether an action of a kind is among what it does."""
        return any(isinstance(one, kind) for one in self.actions)


@dataclass(frozen=True)
class Step:
    """The least tip that reaches a grade, None where it is out of reach."""

    grade: str
    block: Block | None
    in_hand: bool = False
    """Whether it is the tip in hand as it is."""
    unusual: bool = False
    """Whether it is beyond what people make for this pattern."""
    options: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Rung:
    """The tip in hand and the advised one at one distance, on dark and on bright water."""

    range_m: float
    in_hand: dict[str, float]
    advised: dict[str, float]


@dataclass(frozen=True)
class TradePoint:
    """One length of the advised tip: what it gains in sight and costs in sink force."""

    diameter_mm: float
    showing_mm: float
    level: float
    sink_force_g: float
    ride_margin: float
    passes: bool
    chosen: bool
    of: str
    """'longer' or 'thicker': which row of points it belongs to."""


@dataclass(frozen=True)
class Size:
    """Why: the angle that the tip takes up."""

    kind: ClassVar = "size"
    range_m: float
    showing_mm: float
    diameter_mm: float
    tall_arcmin: float
    wide_arcmin: float


@dataclass(frozen=True)
class PaintShows:
    """Why: the paint that shows best on one water, and its contrast in luminance."""

    kind: ClassVar = "paint"
    water: str
    paint: str
    contrast: float


@dataclass(frozen=True)
class WaterHides:
    """Why: what nearer ripples hide of the foot, and what share of the level the streaks take."""

    kind: ClassVar = "water hides"
    hidden_mm: float
    streaks_share: float


@dataclass(frozen=True)
class Turns:
    """What would turn the answer: other water behind the tip, or other eyes."""

    kind: ClassVar = "turns"
    options: dict[str, str]
    block: Block
    water: str = ""
    colour_vision: str = ""
    """As told, where normal colour vision would turn it."""
    level: float | None = None
    """Of the tip in hand as told, where only its level turns; the block has the other."""


Reason = Size | PaintShows | WaterHides | Turns


@dataclass(frozen=True)
class Unsure:
    """One thing that is not known, and how many times wider it makes the range of the level."""

    kind: Doubt
    spread: float


@dataclass(frozen=True)
class Nearly:
    """A tip that could be seen but breaks a limit, and what would cure it."""

    kind: ClassVar = "nearly"
    block: Block
    failure: Failure
    cures: tuple[Cure, ...]

    @property
    def facts(self) -> Mapping[str, object]:
        """What it holds beside the block, by name."""
        return {**vars(self.failure), "cures": self.cures}


@dataclass(frozen=True)
class Answer:
    """The whole answer to one question."""

    case: Case
    question: Mapping[str, object]
    """What was told, by item."""
    assumed: tuple[Assumed, ...]
    tip_in_hand: Block
    at_the_bank: Change
    """The least troublesome thing to do now; the best of them when none is enough."""
    at_the_bench: Change | None
    """What to fit, the best compromise where nothing keeps all; None when nothing can be fitted."""
    changes: tuple[Change, ...]
    next_step: tuple[Step, ...]
    by_distance: tuple[Rung, ...]
    trade_off: tuple[TradePoint, ...]
    reasons: tuple[Reason, ...]
    doubts: tuple[Unsure, ...]
    """Largest first."""
    warnings: tuple[Warn | Nearly, ...]
    cautions: tuple[Caution, ...]

    def to_dict(self) -> as_values.Told:
        """Return all facts as plain values, under the names that ``--json`` has; no sentence."""
        return as_values.answer(self)

    def row(self) -> dict[str, float | str | bool | None]:
        """Return one flat row for a table: what was asked, then each of the three tips."""
        return as_values.row(self)

    def __repr__(self) -> str:
        bench = self.at_the_bench
        return (
            f"<Answer at {self.case.place.range_m:.1f} m: in hand {_brief(self.tip_in_hand)}; at "
            f"the bank {self.at_the_bank.kind}; at the bench {_brief(bench.block) if bench else None}>"
        )

    def _repr_html_(self) -> str:
        bench = self.at_the_bench
        rows = [("in hand", self.tip_in_hand), ("at the bank", self.at_the_bank.block)]
        rows += [("at the bench", bench.block)] if bench else []
        heads = ("tip", "stock", "diameter_mm", "showing_mm", "paint", "grade", "level")
        cells = "".join(
            "<tr>" + "".join(f"<td>{escape(one)}</td>" for one in (name, *_cells(block))) + "</tr>"
            for name, block in rows
        )
        head = "".join(f"<th>{one}</th>" for one in heads)
        return f"<table><thead><tr>{head}</tr></thead><tbody>{cells}</tbody></table>"


def _cells(block: Block) -> tuple[str, ...]:
    tip, seen = block.tip, block.visibility
    paints = " over ".join(band.paint for band in tip.bands)
    size = f"{tip.stock.diameter_mm:g}", f"{tip.showing_mm:g}"
    return (tip.stock.kind, *size, paints, seen.grade, f"{seen.level:.2g}")


def _brief(block: Block) -> str:
    tip = block.tip
    return f"{tip.stock.diameter_mm:g} x {tip.showing_mm:g} mm, {block.visibility.grade}"
