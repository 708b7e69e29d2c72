"""Yards or metres, feet or metres: one switch for the whole page."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass

from tipsight.inputs.items import Item
from tipsight.inputs.quantities import Unread, clean, length_m
from tipsight.output.measures import Reader
from tipsight.units import FOOT_M, YARD_M

_BARE = re.compile(r"\d+(?:[.,]\d+)?")


@dataclass(frozen=True)
class Units:
    """What a bare number means, and in what distances are told.

    >>> Units("m").reader.far(33.0), Units().far
    ('33 m', 'yd')
    """

    far: str = "yd"
    """Of distances: yd or m."""
    high: str = "ft"
    """Of heights and depths: ft or m."""

    @classmethod
    def told(cls, args: Mapping[str, str]) -> "Units":
        """Return the units that an address asks for; what it cannot mean counts as not told."""
        return cls(
            "m" if args.get("far") == "m" else "yd", "m" if args.get("high") == "m" else "ft"
        )

    @property
    def args(self) -> tuple[tuple[str, str], ...]:
        """What an address says of them; nothing for yards and feet."""
        pairs = (("far", self.far, "yd"), ("high", self.high, "ft"))
        return tuple((key, unit) for key, unit, usual in pairs if unit != usual)

    def of(self, item: Item) -> str:
        """Return the unit of a bare number typed for an item, empty where it needs none."""
        if item.kind != "length":
            return ""
        return {"feet or metres": self.high, "yards or metres": self.far}.get(item.units, "")

    def spoken(self, item: Item, text: str) -> str:
        """Return what was typed with the page's unit behind a bare number."""
        unit = self.of(item)
        return f"{clean(text)} {unit}" if unit and _BARE.fullmatch(clean(text)) else text

    def limits(self, item: Item) -> str:
        """Return an item's limits in the page's units, rounded inwards."""
        metres = {"yd": YARD_M, "ft": FOOT_M}.get(self.of(item))
        if metres is None or item.low is None or item.high is None:
            return item.limits
        low, high = math.ceil(10 * item.low / metres) / 10, math.floor(item.high / metres)
        return f"{low:g} to {high} {self.of(item)}"

    def taken(self, item: Item, text: str) -> str:
        """Return what is taken for an item that is not told, in the page's units."""
        unit = self.of(item)
        try:
            metres = length_m(text) if unit else None
        except Unread:
            metres = None  # a word, such as how he stands
        if metres is None:
            return text
        return f"{metres / {'yd': YARD_M, 'ft': FOOT_M, 'm': 1.0}[unit]:.2g} {unit}"

    @property
    def reader(self) -> Reader:
        """In which units the answer is told; who counts in metres has no use for inches."""
        return Reader("m", inches=False) if self.far == "m" else Reader()
