"""The question in numbers: small frozen things that the sums take, with unit and scale in every name."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from tipsight.inputs.learnt import Learnt

ColourVision = Literal["normal", "red-weak", "red-blind", "green-weak", "green-blind"]
Tint = Literal["none", "grey", "amber", "brown", "polarised"]
Stocks = Literal[
    "solid", "thin tube", "thick tube", "cane", "quill", "balsa", "glass", "carbon", "hollow glass"
]
LightStick = Literal["none", "3 x 23 mm", "4.5 x 39 mm"]
Fixing = Literal["bulk", "spread", "even"]


@dataclass(frozen=True)
class Place:
    """Where the angler stands and how far off the trot ends."""

    range_m: float = 36.576
    range_doubt: float = 0.10
    """How well the distance is known, as a share of it."""
    eye_height_m: float = 1.5


@dataclass(frozen=True)
class Light:
    """Sky, sun and mist."""

    sky_type: int = 1
    """CIE standard general sky, 1 to 15."""
    turbidity: float = 3.5
    """Linke turbidity, which scales clear skies and the direct beam."""
    beam: bool = False
    """Whether the direct sun reaches the tip."""
    sun_height_deg: float = 30.0
    """True height of the sun's centre, without refraction; -12 to 90."""
    sun_bearing_deg: float = 90.0
    """Between the line of sight and the sun, seen from above: 0 ahead, 180 at the back."""
    visibility_m: float = 20000.0
    """Meteorological optical range (5 %)."""


@dataclass(frozen=True)
class Stretch:
    """Water behind the tip, by what it mirrors."""

    name: str = "bright"
    share: float = 1.0
    """Part of the trot that has this water behind the tip, 0 to 1."""
    bank_height_deg: float = 0.5
    """Skyline of the far bank, seen from the float."""
    bank: str = "dark trees"
    """A row of banks.csv."""
    bank_sunlit: bool = False
    sun_ahead: bool = False
    """The sun lane: the sun stands on the line of sight whatever the bearing says."""
    patchy: bool = False
    """Broken water: too smooth to mix what it mirrors, it shows patches of dark and of bright."""
    might_be: bool = False
    """Whether it is one of those that a part of the trot might have, which is not known."""
    mirrors: str = ""
    """The bank that it mirrors, as told; empty for a word such as dark or bright."""


@dataclass(frozen=True)
class Wind:
    """Wind at the water, and the ripple it makes or the ripple that is seen."""

    speed_m_s: float = 0.0
    """Ten-metre wind that reaches this water."""
    bearing_deg: float = 0.0
    """Between the wind's line and the line of sight: 0 along it, 90 across."""
    fetch_m: float = 50.0
    ripple_height_m: float | None = None
    """Significant height as the angler sees it, instead of the wind's."""
    base_slope_variance: float = 2e-4
    """Of the water without wind, for each axis."""


@dataclass(frozen=True)
class Stream:
    """The moving water."""

    depth_m: float = 1.5
    pace_m_s: float = 0.6
    hold_m_s: float = 0.0
    """How much slower than the surface the float is run."""
    boil_factor: float = 1.0
    boil_doubt: float = 1.0
    """How well that factor is known (x/÷)."""
    manning_n: float = 0.035
    temperature_c: float = 10.0
    water_colour: str = "clear"
    """A row of water_colours.csv."""
    floating_line: bool = True
    dips_per_min_told: float | None = None
    """The angler's own count for the tip in hand, from which the boil factor is worked back."""


@dataclass(frozen=True)
class Angler:
    """Whose eyes."""

    age_years: float = 55.0
    mar_arcmin: float = 1.0
    """Smallest detail resolved at distance, with the spectacles worn; under 1 counts as 1."""
    colour_vision: ColourVision = "normal"
    own_eye_factor: float = 1.0
    """Contrast that eyes of their age need over what these need: over 1 for better ones."""
    own_eye_doubt: float = 1.4
    """How well that factor is known (x/÷)."""
    tint: Tint = "none"


@dataclass(frozen=True)
class Wanted:
    """What the angler asks of the tip."""

    level: float = 5.0
    """2.4 followed, 5 kept in view, 10 easy."""
    bite_share: float = 0.20
    """Largest sink force, as a share of the float's pull."""
    bites_told: bool = False
    """Whether the angler said so; if not, water that asks for it turns them bold."""


@dataclass(frozen=True)
class Finish:
    """One paint as it now stands on the tip."""

    paint: str
    """A row of paints.csv."""
    seasons: float = 0.0
    undercoat: bool = True
    """White underneath, or a pale stick."""
    gloss: bool = False


@dataclass(frozen=True)
class Band:
    """A block of paint, measured downwards from the very top."""

    paint: str
    from_top_mm: float
    to_top_mm: float


@dataclass(frozen=True)
class Stock:
    """What a tip is cut from."""

    kind: Stocks
    diameter_mm: float
    bore_mm: float = 0.0
    density_kg_m3: float = 1050.0
    """Of the material itself, not of the tube as a whole."""


@dataclass(frozen=True)
class Tip:
    """A tip on a float: what shows, what is wet, what is glued in, and its paint."""

    stock: Stock
    showing_mm: float
    wet_mm: float = 10.0
    glued_mm: float = 5.0
    bands: tuple[Band, ...] = ()
    """From the top down; the last band runs on to the foot of the tip."""
    seasons: float = 0.0
    gloss: bool = False
    undercoat: bool = True
    coats: int = 3
    """All coats on the tip, white and clear ones included."""
    pulls_out: bool = False
    sleeve: bool = False
    """A slip-on sleeve over the showing part: a millimetre thicker there."""
    light_stick: LightStick = "none"
    """Carried above the water."""


@dataclass(frozen=True)
class Part:
    """One piece of a built float, from the top of the body downwards."""

    role: Literal["body", "shoulder", "stem", "keel"]
    shape: Literal["cylinder", "cone", "ellipsoid", "dome"]
    material: str
    """A row of materials.csv."""
    length_mm: float
    top_mm: float
    """Diameter at the upper end (for an ellipsoid the largest diameter)."""
    foot_mm: float
    """Diameter at the lower end."""
    bore_mm: float = 0.0
    inside_mm: float = 0.0
    """How far the part runs on inside the one above it (a stem right through a body)."""


@dataclass(frozen=True)
class WeighedFloat:
    """A float known by what it takes, with its tip at a known mark."""

    pattern: str
    """A row of patterns.csv."""
    shot_g: float
    """In air, of the metal it was marked in."""
    shot_metal: str = "tin"
    """A row of shot_metals.csv."""
    weighs_g: float | None = None
    fixing: Fixing | None = None
    """How it is shotted, if not as the pattern is."""
    varnish_coats: int = 3
    paint_coats: int = 2
    drunk_g: float = 0.0
    """Water that it drinks in an hour: it took its shot as it was, wet or dry."""


@dataclass(frozen=True)
class BuiltFloat:
    """A float known by its parts; the load is worked out."""

    pattern: str
    parts: tuple[Part, ...]
    varnish_coats: int = 3
    paint_coats: int = 2
    fittings_g: float = 0.03
    """Rings and rubbers."""
    weighs_g: float | None = None
    fixing: Fixing | None = None
    """How it is shotted, if not as the pattern is."""
    drunk_g: float = 0.0
    """Water that it drinks in an hour."""


@dataclass(frozen=True)
class Shot:
    """One size of shot in the box."""

    name: str
    mass_g: float
    metal: str = "tin"
    count: int | None = None
    """How many there are; None is plenty."""


@dataclass(frozen=True)
class Hung:
    """Shot of one size at one place on the line."""

    name: str
    count: int
    where: str
    """Empty where that was not told."""
    mass_g: float
    """Of one, in air."""


@dataclass(frozen=True)
class Box:
    """What the angler has, from which alone is advised."""

    stock: tuple[Stock, ...] = ()
    inserts: tuple[Stock, ...] = ()
    """Tips that can be swapped at the bank."""
    paints: tuple[str, ...] = ()
    pen: bool = True
    sleeves: bool = False
    light_stick: bool = False
    shot: tuple[Shot, ...] = ()
    shot_metal: str = "tin"
    hanging: tuple[Hung, ...] = ()
    """Shot on the line, as it was told; nothing if it was not."""


@dataclass(frozen=True)
class Assumed:
    """An item that was not told, and what was taken for it."""

    item: str
    taken: str


@dataclass(frozen=True)
class Leg:
    """One stretch along the trot."""

    from_m: float
    to_m: float
    told: tuple[tuple[str, str], ...]
    """What it tells otherwise than the question, by item."""


@dataclass(frozen=True)
class Case:
    """The whole question in numbers."""

    place: Place
    light: Light
    stretches: tuple[Stretch, ...]
    wind: Wind
    stream: Stream
    angler: Angler
    wanted: Wanted
    float_: WeighedFloat | BuiltFloat
    weighed_tip: Tip
    """The tip with which a weighed float takes its shot; the tip in hand unless told."""
    tip: Tip
    """The tip in hand."""
    box: Box
    assumed: tuple[Assumed, ...] = field(default=())
    other_lights: tuple[Light, ...] = ()
    """What the light may turn to while he fishes; the tip must do in each."""
    trot: tuple[Leg, ...] = ()
    """Its stretches where the water changes along it; the last one is that of the far end."""
    learnt: Learnt = field(default=Learnt())
    """What had been learned of the one who asks, as it came with the question."""


def shown(bands: Sequence[Band], showing_mm: float) -> tuple[Band, ...]:
    """Return the bands that show, the last of them as far down as the water.

    Examples
    --------
    >>> shown((Band("black", 0, 15), Band("white", 15, 20)), 30)[-1].to_top_mm
    30
    """
    above = [band for band in bands if band.from_top_mm < showing_mm]
    return tuple(
        replace(band, to_top_mm=showing_mm if n == len(above) - 1 else band.to_top_mm)
        for n, band in enumerate(above)
    )
