"""What those who ask have kept of their eyes and waters: read for each request, worked out once."""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from tipsight.box.recorded import Reading
from tipsight.errors import Mistakes
from tipsight.inputs.learnt import ME, NOBODY, Learnt
from tipsight.inputs.question import Question
from tipsight.inputs.saw import today
from webui.asking import Asked
from webui.kept import Kept

if TYPE_CHECKING:
    from tipsight.learning.owner import Owner

KEPT = 64
"""So many persons' lessons are kept; each is a few numbers."""


@dataclass(frozen=True)
class _Of:
    """Of whom something is to be learned."""

    mark: str
    """Of all readings."""
    who: str | None
    water: str | None
    age: str
    sight: str
    on: date
    box: Path
    found: tuple[Reading, ...] = field(compare=False, repr=False)
    question: Question = field(compare=False, repr=False)


def _learnt(of: _Of) -> Learnt:
    from tipsight.learning.known import learnt_of

    return learnt_of(of.box, of.found, of.question, of.who, of.water, of.on, ("who", "water"))


@dataclass(frozen=True)
class Choices:
    """Whose eyes and which water can be chosen."""

    people: tuple[str, ...] = ()
    waters: tuple[str, ...] = ()
    who: str = ME
    """Where nobody is chosen."""
    water: str = ""

    @property
    def any(self) -> bool:
        """Whether there is anything to choose."""
        return bool(self.waters) or len({*self.people, self.who}) > 1

    @property
    def others(self) -> tuple[str, ...]:
        """Persons that can be chosen besides the one who is taken."""
        return tuple(one for one in (*self.people, NOBODY) if one != self.who)


class OwnReadings:
    """The readings in a box, and what is learned from them; of a page without a box there are none."""

    def __init__(self, box: Path | None, who: str | None, water: str | None) -> None:
        self._box, self._who, self._water = box, who, water
        self._kept = Kept(_learnt, most=KEPT, most_bytes=KEPT, size=lambda _: 1)

    def listed(self) -> tuple[Reading, ...]:
        """Return all, dropped ones too; Mistakes if the box cannot be read."""
        if self._box is None or not self._box.exists():
            return ()
        from tipsight.box import keeping, recorded

        with keeping.opened(self._box) as box:
            return recorded.listed(box)

    def owner(self, found: Sequence[Reading], who: str) -> "Owner":
        """Return what is known of a person's eyes by some readings."""
        from tipsight.learning.known import owner_of

        return owner_of(self._box or Path(), found, who, today())

    def choices(self) -> Choices:
        """Return whose eyes and which water can be chosen; of a box that cannot be read, none."""
        try:
            found = self.listed()
        except Mistakes:  # the answer says so
            found = ()
        names = {
            dips: sorted({one.whose for one in found if (one.kind == "dips") is dips})
            for dips in (False, True)
        }
        return Choices(tuple(names[False]), tuple(names[True]), self._who or ME, self._water or "")

    def whose(self, asked: Asked) -> str:
        """Return whose eyes they are; the page's own where nobody is chosen."""
        return asked.who or self._who or ME

    def learned(self, asked: Asked, question: Question) -> Asked:
        """Return what is asked with what was learned of those who ask; Mistakes for an unknown name."""
        found = self.listed()
        who, water = asked.who or self._who, asked.water or self._water
        if self._box is None or (not found and not who and not water):
            return replace(asked, learnt=question.learnt)
        told = question.told()
        mark = hashlib.sha256(repr(found).encode()).hexdigest()
        of = _Of(
            mark,
            who or None,
            water or None,
            repr(told.get("age")),
            repr(told.get("sight")),
            today(),
            self._box,
            found,
            question,
        )
        return replace(asked, learnt=self._kept(of))
