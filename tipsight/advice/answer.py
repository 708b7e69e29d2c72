"""The answer: what ``advise`` returns, every number unrounded, every choice with what makes it."""

from dataclasses import dataclass, field

from tipsight.inputs.case import Assumed, Band, Case, Tip


@dataclass(frozen=True)
class Sight:
    """How well a tip is seen against one water at the asked distance."""

    name: str
    """The water behind the tip: dark, bright ..."""
    level: float
    low: float
    high: float
    grade: str
    goes_at_m: float | None
    """Distance beyond which the level stays below the wanted grade; None beyond the search."""
    gone_at_m: float | None
    colour_share: float
    """Part of the level's energy that colour carries, 0 to 1."""


@dataclass(frozen=True)
class Visibility:
    """How well a tip is seen: the worst of the waters, and each of them."""

    level: float
    low: float
    high: float
    grade: str
    goes_at_m: float | None
    gone_at_m: float | None
    by_background: tuple[Sight, ...]


@dataclass(frozen=True)
class Handling:
    """How the float rides and what it tells of a bite."""

    sink_force_g: float
    sink_force_high_g: float
    """With the full meniscus, when a dry top is dragged right under."""
    stiffness_g_per_mm: float
    ride_margin: float
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
    upright: bool
    lift_g: float | None
    """How much holding back lifts the float; None when it then lies flat."""


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
    change_words: str
    """The same by name: 'take off a No 8'."""
    shot: tuple[ShotLine, ...]
    short_by_g: float


@dataclass(frozen=True)
class Block:
    """One tip on this float in this swim: the tip, how it is seen, how it rides, what it takes."""

    tip: Tip
    bands: tuple[Band, ...]
    visibility: Visibility
    handling: Handling
    load: Load
    fails: tuple[str, ...] = ()
    """Which limits it does not meet, in words."""

    @property
    def passes(self) -> bool:
        """Whether it meets every limit."""
        return not self.fails

    @property
    def fails_but_sight(self) -> tuple[str, ...]:
        """The limits that it does not meet, how it is seen left aside."""
        return tuple(fail for fail in self.fails if not fail.startswith("sight"))


@dataclass(frozen=True)
class Change:
    """Something to do, what comes of it, and the options that make it."""

    kind: str
    """'as it is', 'show more', 'show less', 'pen', 'pen and show more', 'sleeve', 'insert',
    'pen and insert', 'light stick', 'move', 'repaint', 'fit'."""
    at_the_bank: bool
    words: str
    undo: str
    """'can be undone', 'ends the fluorescent for the day', 'cannot be undone'."""
    block: Block
    options: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Step:
    """The least tip that reaches a grade."""

    grade: str
    block: Block | None
    words: str
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
class Reason:
    """Why; and where it says what would turn the answer, the options that do."""

    words: str
    options: dict[str, str] = field(default_factory=dict)
    block: Block | None = None


@dataclass(frozen=True)
class Doubt:
    """One thing that is not known, and how far it spreads the level (high over low)."""

    name: str
    words: str
    spread: float


@dataclass(frozen=True)
class Caution:
    """A caution that this advice touches, and what brings it up."""

    words: str
    trigger: str


@dataclass(frozen=True)
class Answer:
    """The whole answer to one question."""

    case: Case
    question: dict[str, object]
    """What was told, by item."""
    assumed: tuple[Assumed, ...]
    tip_in_hand: Block
    at_the_bank: Change
    """The least troublesome thing to do now; the best of them when none is enough."""
    at_the_bench: Change | None
    """What to fit; None when nothing passes."""
    changes: tuple[Change, ...]
    next_step: tuple[Step, ...]
    by_distance: tuple[Rung, ...]
    trade_off: tuple[TradePoint, ...]
    reasons: tuple[Reason, ...]
    doubts: tuple[Doubt, ...]
    """Largest first."""
    warnings: tuple[str, ...]
    cautions: tuple[Caution, ...]
