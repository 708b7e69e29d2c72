"""In which units a reader is spoken to: limits, and what is taken for what he did not tell."""

import math
from dataclasses import dataclass
from typing import Literal

from tipsight.inputs.items import Item
from tipsight.inputs.quantities import LENGTHS_M, SPEEDS_M_S, Unread, length_m


@dataclass(frozen=True)
class Spoken:
    """The units in which a reader tells distances and heights.

    >>> from tipsight.inputs.items import ITEMS
    >>> Spoken().limits(ITEMS["distance"]), Spoken("m", "m").limits(ITEMS["distance"])
    ('3.3 to 109 yd', '3 to 100 m')
    """

    far: Literal["yd", "m"] = "yd"
    """Of distances along the water, and with it of speeds: miles an hour or metres a second."""
    high: Literal["ft", "m"] = "ft"
    """Of heights and depths."""

    def of(self, item: Item) -> str:
        """Return the unit in which a length of the item is told, empty where it has but one."""
        if item.kind != "length":
            return ""
        return {"feet or metres": self.high, "yards or metres": self.far}.get(item.units, "")

    def limits(self, item: Item) -> str:
        """Return an item's limits in the reader's units, rounded inwards."""
        if item.low is None or item.high is None:
            return item.limits
        unit = self.of(item)
        if unit in ("yd", "ft"):
            return f"{_up(item.low / LENGTHS_M[unit])} to {_most(item.high, unit)}"
        if self.far == "yd" and "miles" in item.units:
            return f"{math.ceil(item.low / LENGTHS_M['yd'])} yd to {_most(item.high, 'miles')}"
        if self.far == "yd" and item.kind in ("speed", "pace"):
            most = math.floor(10 * item.high / SPEEDS_M_S["mph"]) / 10
            return f"{_up(item.low / SPEEDS_M_S['mph'])} to {most:g} mph"
        return item.limits

    def allowed(self, item: Item) -> str:
        """Return what may be said for an item, in words."""
        return item.allows(self.limits(item))

    def taken(self, item: Item, text: str) -> str:
        """Return what is taken for an item that is not told.

        >>> from tipsight.inputs.items import ITEMS
        >>> Spoken().taken(ITEMS["eye"], "1.5 m"), Spoken("m").taken(ITEMS["distance"], "40 yd")
        ('4.9 ft', '37 m')
        """
        unit = self.of(item)
        try:
            metres = length_m(text) if unit else None
        except Unread:
            metres = None  # a word, such as how he stands
        return text if metres is None else f"{metres / LENGTHS_M[unit]:.2g} {unit}"

    def most_far(self, range_m: float) -> str:
        """Return the greatest distance that may be told."""
        return _most(range_m, self.far)

    def most_high(self, height_m: float) -> str:
        """Return the greatest height that may be told."""
        return _most(height_m, self.high)

    def speed(self, speed_m_s: float) -> str:
        """Return a speed.

        >>> Spoken().speed(0.6), Spoken("m").speed(0.6)
        ('1.3 mph', '0.6 m/s')
        """
        unit = "mph" if self.far == "yd" else "m/s"
        return f"{speed_m_s / SPEEDS_M_S[unit]:.2g} {unit}"


ANGLERS = Spoken()
"""Yards and feet, where nobody said otherwise."""


def _up(value: float) -> str:
    return f"{math.ceil(10 * value - 1e-9) / 10:g}"


def _most(length: float, unit: str) -> str:
    return f"{math.floor(length / LENGTHS_M[unit] + 1e-9)} {unit}"
