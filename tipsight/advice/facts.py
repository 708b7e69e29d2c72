"""What an answer may say: kinds, names and numbers. The words for each are made in ``output``."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import ClassVar

from tipsight.inputs.case import Band, LightStick, Stock


class Limit(StrEnum):
    """What a tip must keep to; `limits` says how each is measured."""

    SIGHT = "sight"
    RIDE = "ride"
    BITE = "bite"
    STRENGTH = "strength"
    BALANCE = "balance"
    BODY = "body"
    ROOM = "room"
    GLUE = "glue"
    LOAD = "load"


class Cure(StrEnum):
    """What would help where a limit is broken."""

    COME_CLOSER = "come closer"
    STAND_HIGHER = "stand higher"
    OTHER_STRETCH = "other stretch"
    EASE_OFF = "ease off"
    SHALLOWER = "shallower"
    MORE_TOP = "more top"
    NEXT_SIZE = "next size"
    CALMER_WATER = "calmer water"
    BOLDER_BITES = "bolder bites"
    MORE_SHOT = "more shot"
    BIGGER_FLOAT = "bigger float"
    LIGHTER_TIP = "lighter tip"
    THICKER_TIP = "thicker tip"
    THICKER_BODY = "thicker body"
    LONGER_BODY = "longer body"
    MORE_GLUED = "more glued in"


@dataclass(frozen=True)
class Failure:
    """A limit that a tip does not keep: what it has, and the least or the most that is allowed."""

    limit: Limit
    value: float
    allowed: float
    as_it_is: bool = False
    """Whether it is a wish that the tip in hand breaks as much: it is told, and counts for nothing."""


@dataclass(frozen=True)
class Show:
    """Let so much show."""

    do: ClassVar = "show"
    showing_mm: float
    more: bool
    """Whether that is more than shows now."""


@dataclass(frozen=True)
class Pen:
    """Blacken the top with a felt pen."""

    do: ClassVar = "pen"
    ink_mm: float
    whole: bool
    """Whether that is all that shows."""


@dataclass(frozen=True)
class Sleeve:
    """Slip a sleeve over what shows."""

    do: ClassVar = "sleeve"
    paint: str
    over_mm: float


@dataclass(frozen=True)
class Insert:
    """Swap the tip for another."""

    do: ClassVar = "insert"
    stock: Stock
    showing_mm: float


@dataclass(frozen=True)
class CarryLight:
    """Put a light stick on."""

    do: ClassVar = "light stick"
    size: LightStick


@dataclass(frozen=True)
class ComeCloser:
    """Fish it no farther than so far."""

    do: ClassVar = "come closer"
    range_m: float


@dataclass(frozen=True)
class StandHigher:
    """Look from so high above the water."""

    do: ClassVar = "stand higher"
    eye_height_m: float


@dataclass(frozen=True)
class OtherStretch:
    """Fish a stretch with other water behind the tip."""

    do: ClassVar = "other stretch"
    water: str


@dataclass(frozen=True)
class Repaint:
    """Paint the same tip anew."""

    do: ClassVar = "repaint"
    showing_mm: float
    bands: tuple[Band, ...]


@dataclass(frozen=True)
class Fit:
    """Glue in another tip."""

    do: ClassVar = "fit"
    stock: Stock
    showing_mm: float
    bands: tuple[Band, ...]


Action = (
    Show
    | Pen
    | Sleeve
    | Insert
    | CarryLight
    | ComeCloser
    | StandHigher
    | OtherStretch
    | Repaint
    | Fit
)


class Undo(StrEnum):
    """Whether what is done can be undone."""

    NOTHING = "nothing to undo"
    EASY = "can be undone"
    PAINT_LOST = "ends the paint beneath for the day"
    UNTIL_CUT = "can be undone while nothing is cut"
    NEVER = "cannot be undone"


class Note(StrEnum):
    """What a reader should know before trusting a number; each with the numbers it carries."""

    WEIGHT_ODD = "weight odd"  # weighs_g, usual_g
    SHOT_ODD = "shot odd"  # hangs_g, takes_g
    LEAD_LEFT_OUT = "lead left out"
    NO_STOCK = "no stock"
    SUN_LANE = "sun lane"
    BOLD_ASKED = "bold asked"
    OUT_OF_REACH = "out of reach"  # level, wanted, goes_at_m
    NONE_BETTER = "none better"  # goes_at_m
    NOTHING_FITS = "nothing fits"
    AS_IT_IS = "as it is"  # limit, value, allowed
    TOP_HEAVY = "top heavy"
    FALLS_OVER = "falls over"
    LIES_FLAT = "lies flat"
    HELD_LIFTS = "held lifts"  # lift_g
    SINKING_LINE = "sinking line"
    SHOULDER_OUT = "shoulder out"  # wet_mm
    LIGHT_NOT_RECKONED = "light not reckoned"
    HARDLY_DIPS = "hardly dips"
    NO_DIP_SEEN = "no dip seen"
    COLOUR_CARRIES = "colour carries"  # waters
    SEEN_TO_THE_END = "seen to the end"  # farthest_m
    LIGHT_AIR = "light air"
    LANE_GLASSES = "lane glasses"
    WAVES_ACROSS = "waves across"
    OUTSIDE = "outside"  # name, value, low, high, unit, waters
    DISTANCE_BEYOND = "distance beyond"  # nearest_m, farthest_m
    BREAKING = "breaking"
    STRONG_WIND = "strong wind"  # limit_m_s
    HARDER_THAN_WEIR = "harder than a weir"
    HELD_HARD = "held hard"  # limit_m_s
    CRESTS_BEYOND = "crests beyond"
    HIGH_SUN = "high sun"  # limit_deg
    AFTER_SUNSET = "after sunset"
    SHARP_EYES = "sharp eyes"
    YOUNG_EYES = "young eyes"  # limit_years
    DIVISIONS_LEFT_OUT = "divisions left out"  # count


@dataclass(frozen=True)
class Warn:
    """One thing to know: its kind, its numbers and names."""

    kind: Note
    values: Mapping[str, float | str | tuple[str, ...]] = field(default_factory=dict)

    @property
    def facts(self) -> Mapping[str, object]:
        """What it holds, by name."""
        return self.values


class Doubt(StrEnum):
    """What is not known, and spreads the level."""

    DISTANCE = "distance"
    EYES = "eyes"
    STREAKS = "streaks"
    SEA = "sea"
    WATER = "water"
    RIPPLE = "ripple"
    BEHIND = "behind"


class Care(StrEnum):
    """What this advice touches that can hurt."""

    LEAD = "lead"
    SUN = "sun"
    WADING = "wading"
    LIGHT_STICK = "light stick"
    DUSK = "dusk"
    QUILL = "quill"
    DUST = "dust"
    PAINT = "paint"
    FOAM = "foam"


@dataclass(frozen=True)
class Caution:
    """A caution, and the stock that brings it up where one does."""

    kind: Care
    stock: str = ""
