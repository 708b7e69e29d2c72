"""What was learned of the one who asks and of his water, taken where the question does not tell."""

from dataclasses import dataclass

ME, NOBODY = "me", "nobody"
"""Whose readings they are where nobody is named; who asks with nothing learned of him."""

@dataclass(frozen=True)
class Lesson:
    """What was learned for one item."""

    item: str
    text: str
    """As a person would tell it."""
    bars: int = 0
    notes: int = 0
    counts: int = 0
    """From how many bars of a fence card, notes from the river, or counts of dips."""

    @property
    def taken(self) -> str:
        """What is told to have been taken.

        >>> Lesson("own_eye", "1.15", bars=6, notes=4).taken
        '1.15, from 6 bars and 4 notes'
        """
        counted = {"bar": self.bars, "note": self.notes, "count": self.counts}
        sources = [f"{n} {name}{'s' if n > 1 else ''}" for name, n in counted.items() if n]
        return f"{self.text}, from {' and '.join(sources)}" if sources else self.text


@dataclass(frozen=True)
class Learnt:
    """All that was learned; it goes with a question, and what the question tells stands before it."""

    lessons: tuple[Lesson, ...] = ()
    own_eye_doubt: float | None = None
    """How well the own-eye factor is known (x/÷); None where it was not learned."""
    boil_doubt: float | None = None
    """Likewise of the boils."""

    def of(self, item: str) -> Lesson | None:
        """Return what was learned for an item."""
        return next((one for one in self.lessons if one.item == item), None)
