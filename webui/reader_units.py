"""Yards or metres, feet or metres: one switch for the whole page."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from tipsight.inputs.items import Item
from tipsight.inputs.quantities import clean
from tipsight.inputs.spoken import Spoken
from tipsight.output.measures import Reader

_BARE = re.compile(r"\d+(?:[.,]\d+)?")


@dataclass(frozen=True)
class Units(Spoken):
    """The page's units: in what it tells limits and distances, and what a bare number means.

    >>> Units("m").reader.far(33.0), Units().far
    ('33 m', 'yd')
    """

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

    def bare(self, item: Item) -> str:
        """Return the unit of a bare number typed for an item, empty where it is asked back.

        A height is as often told in metres, and 1.5 ft would do too: feet are never taken.
        """
        unit = self.of(item)
        return "" if unit == "ft" else unit

    def spoken(self, item: Item, text: str) -> str:
        """Return what was typed with the page's unit behind a bare number."""
        unit = self.bare(item)
        return f"{clean(text)} {unit}" if unit and _BARE.fullmatch(clean(text)) else text

    @property
    def reader(self) -> Reader:
        """In which units the answer is told; who counts in metres has no use for inches."""
        return Reader("m", inches=False) if self.far == "m" else Reader()
