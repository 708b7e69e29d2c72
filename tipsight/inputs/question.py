"""The question as a person puts it: one field for each item, None where nothing was told."""

from collections.abc import Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any, Literal

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.case import ColourVision, LightStick, Stocks, Tint
from tipsight.inputs.items import ITEMS, NOT_SURE, NOT_TOLD
from tipsight.inputs.learnt import Learnt
from tipsight.inputs.quantities import clean

Value = str | float | bool | tuple[str, ...]
"""What may be told for some item."""
Length = str
"""A length with its unit, or a word of the item: ``40 yd``, ``36,5 m``, ``5'6"``, ``stood``."""
Speed = str
"""A speed with its unit, or a word of the item: ``6 mph``, ``0.6 m/s``, ``12 s``, ``walk``."""
Weight = str
"""A weight with its unit, ``2.4 g``; of shot also sizes by name, ``6BB``."""
Millimetres = float | str
"""A length of tackle; a number alone is in millimetres."""
Number = float | str
"""A number, read as if it were typed; the item says in what."""
Whole = int | str
"""A whole number."""
YesNo = bool | Literal["yes", "no"]
"""A truth, or said."""
Unsure = Literal["not sure"]
Shadow = Literal["much shorter than you", "shorter", "as long as you", "twice", "much longer"]
Side = Literal["behind me", "over a shoulder", "from the side", "half in my face", "in my face"]
Shotting = Literal["as the pattern", "bulk and droppers", "shirt-button", "even string"]
Several = str | Sequence[str]
"""A list of texts, or all in one text with semicolons between."""


def is_told(value: object) -> bool:
    """Return whether ``value`` says anything; None, blanks and ``not told`` do not.

    >>> is_told("40 yd"), is_told(" "), is_told("not told"), is_told(("not told",))
    (True, False, False, False)
    """
    if isinstance(value, tuple):
        return any(map(is_told, value))
    if value is None:
        return False
    return not (isinstance(value, str) and clean(value) in ("", NOT_TOLD))


def is_not_sure(value: object) -> bool:
    """Return whether ``value`` says that the person is not sure.

    >>> is_not_sure("Not sure"), is_not_sure("dark")
    (True, False)
    """
    return isinstance(value, str) and clean(value) in NOT_SURE


@dataclass(frozen=True)
class Question:
    """What the angler said, item by item; each is understood as if it were typed.

    So a number stands alone only where the command line takes one without a unit. Every item may
    be left out (None or ``not told``), and most may be ``not sure``. Many more ways of saying a
    thing are understood than the types tell (``data/also.csv``); `tipsight.inputs.settle.settle`
    raises `tipsight.Mistakes` with all that are not.

    Examples
    --------
    >>> Question(distance="40 yd", age=60, behind=["dark 60%", "bright"], pen=False).told()
    {'distance': '40 yd', 'behind': ('dark 60%', 'bright'), 'age': 60, 'pen': False}
    """

    # Where you stand
    distance: Length | None = None
    """How far is the end of the trot? Such as ``40 yd``."""
    known: Literal["measured", "counted", "paced", "guessed"] | Unsure | None = None
    """How do you know that distance? Such as ``paced``."""
    eye: Length | None = None
    """How high is your eye above the water? Such as ``5 ft``."""

    # The water
    depth: Length | None = None
    """How deep is the water at the end of the trot? Such as ``7 ft``."""
    pace: Speed | None = None
    """How fast does it run? Such as ``12 s``."""
    looks: Millimetres | None = None
    """How does the surface look? Such as ``ripple``."""
    wind: Speed | None = None
    """How much wind? Such as ``6 mph``."""
    wind_blows: Literal["upstream", "downstream", "across"] | Unsure | None = None
    """Which way does the wind blow? Such as ``upstream``."""
    sheltered: YesNo | Unsure | None = None
    """Is the water sheltered by trees or banks? Such as ``no``."""
    open_water: Length | None = None
    """How far does the wind cross open water before it reaches the float? Such as ``reach``."""
    boils: Number | None = None
    """How much does the water boil? Such as ``boily``."""
    goes_under: Number | None = None
    """About how many times a minute does the tip in hand go under with no fish about? Such as
    ``3``."""
    bed: Literal["silt", "gravel", "cobbles", "boulders"] | Unsure | None = None
    """What is the bed? Such as ``gravel``."""
    colour: str | None = None
    """What colour is the water? Such as ``clear``."""
    temperature: Number | None = None
    """How warm is the water? Such as ``10 C``."""
    run: Speed | None = None
    """How do you run the float? Such as ``checked``."""
    line: Literal["floating", "sinking"] | Unsure | None = None
    """Does your line float or sink? Such as ``floating``."""

    # The light
    sky: str | None = None
    """What is the sky like? Such as ``bright overcast``."""
    sun_out: YesNo | Unsure | None = None
    """Is the sun out? Such as ``yes``."""
    shadow: (
        Literal[
            "much shorter than you",
            "shorter",
            "as long as you",
            "twice",
            "much longer",
            "not sure",
        ]
        | None
    ) = None
    """How long is your shadow? Such as ``twice``."""
    sun_is: (
        Literal[
            "behind me",
            "over a shoulder",
            "from the side",
            "half in my face",
            "in my face",
            "not sure",
        ]
        | None
    ) = None
    """Where is the sun as you look at the float? Such as ``behind me``."""
    sun_height: Number | None = None
    """How high is the sun? Such as ``25``."""
    sun_bearing: Number | None = None
    """How far round is the sun from the line along which you look? Such as ``135``."""
    when: str | None = None
    """Which day and time? Such as ``2026-10-15 17:00 UTC``."""
    at: str | None = None
    """Where on earth? Such as ``52.1 N 1.5 W``."""
    looking: Number | None = None
    """Which way do you look, by the compass? Such as ``NE``."""
    mist: Length | None = None
    """Is there mist? Such as ``mist``."""

    # The water behind the tip
    behind: Several | None = None
    """What does the water behind the tip mirror? Such as ``dark 60%; bright 40%``."""
    trot: str | None = None
    """Does the water change along the trot? Such as ``0-15 dark, 15-30 bright, 30-40 broken boily``."""

    # Your eyes
    age: Number | None = None
    """How old are your eyes? Such as ``60``."""
    sight: Number | None = None
    """How good is your distance sight, with the glasses you wear to fish? Such as ``6/9``."""
    colour_vision: ColourVision | Unsure | None = None
    """How do you see colours? Such as ``normal``."""
    own_eye: Number | None = None
    """How do your eyes compare with others of your age? Such as ``1.2``."""
    tint: Tint | None = None
    """What tint do you wear? Such as ``none``."""

    # What you want of the tip
    seen: Literal["followed", "kept in view", "easy"] | Unsure | None = None
    """How well must the tip be seen? Such as ``kept in view``."""
    bites: Literal["shy", "ordinary", "bold"] | Unsure | None = None
    """How shy are the bites? Such as ``shy``."""

    # The float
    pattern: str | None = None
    """Which pattern of float? Such as ``quill avon``."""
    takes: Weight | None = None
    """How much shot does it take? Such as ``6BB``."""
    marked_in: str | None = None
    """Which metal was that shot? Such as ``tin``."""
    takes_showing: Millimetres | None = None
    """How much tip shows when it takes that? Such as ``20 mm``."""
    weighed_tip: str | None = None
    """Which tip was on it then? Such as ``3 mm quill``."""
    weighed_wet: Millimetres | None = None
    """How much of that tip was under water outside the body? Such as ``10 mm``."""
    weighed_glued: Millimetres | None = None
    """How much of that tip was glued in? Such as ``5 mm``."""
    weighed_coats: Whole | None = None
    """How many coats were on that tip? Such as ``3``."""
    weighs: Weight | None = None
    """What does the whole float weigh, dry, tip and all? Such as ``2.1 g``."""
    soaked: Weight | None = None
    """What does it weigh after an hour's soak? Such as ``2.15 g``."""
    size: str | None = None
    """Which size of the pattern? Such as ``12 mm``."""
    parts: Several | None = None
    """Which parts is it built of? Such as ``body, ellipsoid, balsa, 45 mm long, 14 mm thick``."""
    shotting: (
        Literal["as the pattern", "bulk and droppers", "shirt-button", "even string", "not sure"]
        | None
    ) = None
    """How is the line shotted? Such as ``shirt-button``."""
    varnish_coats: Whole | None = None
    """How many coats of varnish are on the float? Such as ``3``."""
    paint_coats: Whole | None = None
    """How many coats of paint are on the body? Such as ``2``."""

    # The tip in hand
    diameter: Millimetres | None = None
    """How thick is the tip? Such as ``3 mm``."""
    stock: Stocks | None = None
    """What is it made of? Such as ``quill``."""
    bore: Millimetres | None = None
    """How wide is the bore of the tube? Such as ``2 mm``."""
    showing: Millimetres | None = None
    """How much of it shows? Such as ``20 mm``."""
    wet: Millimetres | None = None
    """How much of it is under water, outside the body? Such as ``10 mm``."""
    glued: Millimetres | None = None
    """How much of it is glued into the body? Such as ``5 mm``."""
    paint: str | None = None
    """How is it painted? Such as ``black 0-15 mm, fluorescent orange 15-30 mm``."""
    seasons: Number | None = None
    """How many seasons has that paint been in use? Such as ``1``."""
    finish: Literal["gloss", "matt"] | Unsure | None = None
    """Is it gloss or matt? Such as ``matt``."""
    undercoat: YesNo | Unsure | None = None
    """Is there white under the paint? Such as ``yes``."""
    tip_coats: Whole | None = None
    """How many coats are on the tip? Such as ``3``."""
    pulls_out: YesNo | Unsure | None = None
    """Does the tip pull out? Such as ``no``."""
    sleeve_on: YesNo | Unsure | None = None
    """Is there a sleeve on it? Such as ``no``."""
    light_stick_on: LightStick | Unsure | None = None
    """Is there a light stick on it? Such as ``none``."""

    # What you have
    tips: Several | None = None
    """Which tip stock have you? Such as ``solid 1.5-8``."""
    inserts: Several | None = None
    """Which tips fit this float and can be swapped at the bank? Such as ``solid 3``."""
    paints: Several | None = None
    """Which paints have you? Such as ``black``."""
    pen: YesNo | Unsure | None = None
    """Have you a black felt pen? Such as ``yes``."""
    sleeves: YesNo | Unsure | None = None
    """Have you slip-on sleeves? Such as ``no``."""
    light_stick: YesNo | Unsure | None = None
    """Have you light sticks? Such as ``no``."""
    shot: Several | None = None
    """Which shot have you? Such as ``BB``."""
    shot_metal: str | None = None
    """Which metal is your shot? Such as ``tin``."""
    hangs: Several | None = None
    """What shot hangs on the line now? Such as ``SSG, BB, 2 No 4``."""
    ten_weigh: Several | None = None
    """What do ten of your shot weigh? Such as ``No 4 1.9 g``."""

    learnt: Learnt = field(default=Learnt(), kw_only=True)
    """No item: what was learned of the one who asks, taken where nothing else is told."""

    def __post_init__(self) -> None:
        for one in fields(self):
            if isinstance(value := getattr(self, one.name), list):
                object.__setattr__(self, one.name, tuple(value))

    def told(self) -> dict[str, Value]:
        """Return the items that say anything, in the order in which they are asked."""
        items = {key: getattr(self, key) for key in ITEMS}
        return {key: value for key, value in items.items() if is_told(value)}

    def with_options(self, **changes: Value | None) -> "Question":
        """Return the question with some items told otherwise; None takes one back.

        Raises
        ------
        Mistakes
            If there is no such item.
        """
        check_items(changes)
        told: dict[str, Any] = changes  # what does not serve is told when it is settled
        return replace(self, **told)


def check_items(keys: "dict[str, Value | None]") -> None:
    """Refuse, all at once, keys that are no items of the question."""
    unknown = [key for key in keys if key not in ITEMS]
    if unknown:
        why = "there is no such item"
        raise Mistakes([Mistake(key, "", f"{why}{nearest(key, ITEMS)}", "") for key in unknown])
