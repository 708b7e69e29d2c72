"""The question as a person puts it: one field for each item, None where nothing was told."""

from dataclasses import dataclass, fields, replace

from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.answers import Value, is_told
from tipsight.inputs.items import ITEMS
from tipsight.inputs.spelling import nearest


@dataclass(frozen=True)
class Question:
    """What the angler said, item by item.

    Every field is None (not told), text as a person types it, a number in the item's own unit
    (``ITEMS[key].unit``), a truth, or for a list a tuple of texts.

    Examples
    --------
    >>> Question(distance="40 yd", tint="none").told()
    {'distance': '40 yd', 'tint': 'none'}
    """

    distance: Value | None = None
    known: Value | None = None
    eye: Value | None = None

    depth: Value | None = None
    pace: Value | None = None
    looks: Value | None = None
    wind: Value | None = None
    wind_blows: Value | None = None
    sheltered: Value | None = None
    open_water: Value | None = None
    boils: Value | None = None
    goes_under: Value | None = None
    bed: Value | None = None
    colour: Value | None = None
    temperature: Value | None = None
    run: Value | None = None
    line: Value | None = None

    sky: Value | None = None
    sun_out: Value | None = None
    shadow: Value | None = None
    sun_is: Value | None = None
    sun_height: Value | None = None
    sun_bearing: Value | None = None
    when: Value | None = None
    at: Value | None = None
    looking: Value | None = None
    mist: Value | None = None

    behind: Value | None = None

    age: Value | None = None
    sight: Value | None = None
    colour_vision: Value | None = None
    own_eye: Value | None = None
    tint: Value | None = None

    seen: Value | None = None
    bites: Value | None = None

    pattern: Value | None = None
    takes: Value | None = None
    marked_in: Value | None = None
    takes_showing: Value | None = None
    weighed_tip: Value | None = None
    weighed_wet: Value | None = None
    weighed_glued: Value | None = None
    weighed_coats: Value | None = None
    weighs: Value | None = None
    size: Value | None = None
    parts: Value | None = None
    shotting: Value | None = None
    varnish_coats: Value | None = None
    paint_coats: Value | None = None

    diameter: Value | None = None
    stock: Value | None = None
    bore: Value | None = None
    showing: Value | None = None
    wet: Value | None = None
    glued: Value | None = None
    paint: Value | None = None
    seasons: Value | None = None
    finish: Value | None = None
    undercoat: Value | None = None
    tip_coats: Value | None = None
    pulls_out: Value | None = None
    sleeve_on: Value | None = None
    light_stick_on: Value | None = None

    tips: Value | None = None
    inserts: Value | None = None
    paints: Value | None = None
    pen: Value | None = None
    sleeves: Value | None = None
    light_stick: Value | None = None
    shot: Value | None = None
    shot_metal: Value | None = None
    ten_weigh: Value | None = None

    def __post_init__(self) -> None:
        for field in fields(self):
            if isinstance(value := getattr(self, field.name), list):
                object.__setattr__(self, field.name, tuple(value))

    def told(self) -> dict[str, Value]:
        """Return the items that say anything, in the order in which they are asked."""
        items = {field.name: getattr(self, field.name) for field in fields(self)}
        return {key: value for key, value in items.items() if is_told(value)}

    def with_options(self, **changes: Value | None) -> "Question":
        """Return the question with some items told otherwise; None takes one back.

        Raises
        ------
        Mistakes
            If there is no such item.
        """
        check_items(changes)
        return replace(self, **changes)


def check_items(keys: "dict[str, Value | None]") -> None:
    """Refuse keys that are no items of the question, with the nearest spelling.

    Parameters
    ----------
    keys : dict
        Keyed by what should be items.

    Raises
    ------
    Mistakes
        Naming every key that is not an item.

    Examples
    --------
    >>> check_items({"distance": "40 yd"})
    """
    unknown = [key for key in keys if key not in ITEMS]
    if unknown:
        raise Mistakes(
            [
                Mistake(key, "", f"there is no such item{nearest(key, ITEMS)}", "")
                for key in unknown
            ]
        )
