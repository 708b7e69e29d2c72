"""What the page says of an answer, in the reader's units: what to do, and what stands in the way."""

from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block, Change, Sight, Turns
from tipsight.output import (
    briefly,
    doing,
    head,
    measures,
    names,
    readings,
    sections,
    telling,
    warned,
)
from tipsight.output.measures import Reader, sentence
from tipsight.pictures import subject, trade
from tipsight.sight import grades

LABELS = {
    sections.AS_IS: "Tip in hand",
    sections.BANK: "Now, at the bank",
    sections.BENCH: "At the bench",
}


@dataclass(frozen=True)
class Doing:
    """One thing to do, in a sentence, and what comes of it."""

    words: str
    outcome: str
    undo: str
    grade: str
    level: str


@dataclass(frozen=True)
class Told:
    """A sentence, and the options that make what it tells."""

    words: str
    options: dict[str, str]
    aside: str = ""
    """What stands behind it in small letters."""


class Said:
    """An answer in words for one reader; templates read its fields and never the facts."""

    def __init__(self, answer: Answer, reader: Reader) -> None:
        self.answer, self.reader = answer, reader
        self.wanted = grades.grade(answer.case.wanted.level)
        self.enough = answer.at_the_bank.block.passes
        self.fits = answer.at_the_bench is not None
        self.bench_passes = self.fits and answer.at_the_bench.block.passes  # type: ignore[union-attr]

    def _outcome(self, block: Block) -> str:
        return sentence("; ".join(head.gets(self.answer, self.answer.tip_in_hand, block)))

    def _doing(self, change: Change, words: str) -> Doing:
        seen, same = change.block.visibility, not change.actions
        likely = measures.levels(seen.low, seen.high)
        return Doing(
            sentence(words),
            self._outcome(change.block),
            "" if same else sentence(doing.undo(change)),
            seen.grade,
            f"level {measures.level(seen.level)}, likely {likely}",
        )

    @property
    def now(self) -> Doing:
        """What to do now, at the bank."""
        change = self.answer.at_the_bank
        said = (
            doing.change(change, self.reader)
            if change.actions
            else doing.left_alone(change.block, self.reader)
        )
        found = self._doing(change, said)
        places = head.places(self.answer, self.reader)
        other = [f"Or {one.clauses[0]}." for one in places if one.label == head.OR]
        outcome = " ".join((found.outcome, *other))
        return Doing(found.words, outcome, found.undo, found.grade, found.level)

    @property
    def bench(self) -> Doing | None:
        """What to fit at the bench, None when nothing can be fitted."""
        change = self.answer.at_the_bench
        return None if change is None else self._doing(change, doing.change(change, self.reader))

    @property
    def title(self) -> str:
        """The answer in a few words, for the page's title."""
        seen = self.answer.at_the_bank.block.visibility
        far = self.reader.distance(self.answer.case.place.range_m)
        return f"{seen.grade} at {far}".capitalize()

    @property
    def brief(self) -> str:
        """The answer in one line."""
        change = self.answer.at_the_bank
        return sentence(f"{change.block.visibility.grade}: {doing.change(change, self.reader)}")

    @property
    def swim(self) -> str:
        """What was asked, in one line."""
        case = self.answer.case
        waters = measures.listed([names.whole_water(one) for one in case.stretches])
        far = self.reader.distance(case.place.range_m)
        return f"{far}, {waters} water behind the tip, wanted {self.wanted}."

    @property
    def in_the_way(self) -> tuple[str, ...]:
        """Which limits stand in the way, by how much, and what would cure it."""
        answer = self.answer
        bench = answer.at_the_bench
        fails = bench.block.broken if bench else ()
        stands = tuple(
            warned.warning(one, answer.case, self.reader)
            for one in answer.warnings
            if warned.in_the_way(one)
        )
        bank = () if bench else answer.at_the_bank.block.broken
        said = (*map(telling.failure, fails), *stands)
        return (*map(sentence, said), *(f"At the bank: {telling.failure(one)}." for one in bank))

    @property
    def to_mind(self) -> tuple[str, ...]:
        """What else the answer has to warn of."""
        rest = (one for one in self.answer.warnings if not warned.in_the_way(one))
        said = (sentence(warned.warning(one, self.answer.case, self.reader)) for one in rest)
        return tuple(dict.fromkeys(said))

    @property
    def changes(self) -> tuple[Told, ...]:
        """What can be done, least trouble first."""
        return tuple(
            Told(
                sentence(doing.change(one, self.reader)),
                one.options,
                f"{one.block.visibility.grade}{', enough' if one.block.passes else ', not enough'}; "
                f"{doing.undo(one)}.",
            )
            for one in self.answer.changes
        )

    @property
    def steps(self) -> tuple[tuple[str, str], ...]:
        """The least tip for each grade."""
        return tuple(
            (one.grade, readings.step(self.answer.case, one)) for one in self.answer.next_step
        )

    @property
    def reasons(self) -> tuple[Told, ...]:
        """Why, and what would turn the answer."""
        return tuple(
            Told(
                telling.reason(one, self.answer.case, self.reader),
                one.options if isinstance(one, Turns) else {},
            )
            for one in self.answer.reasons
        )

    @property
    def doubts(self) -> tuple[tuple[str, float], ...]:
        """What is not known, the biggest doubt first, and how wide it makes the range."""
        return tuple((sentence(telling.doubt(one)), one.spread) for one in self.answer.doubts)

    @property
    def cautions(self) -> tuple[tuple[str, str], ...]:
        """What can hurt, and what brings it up."""
        return tuple((telling.caution(one), telling.trigger(one)) for one in self.answer.cautions)

    @property
    def tips(self) -> tuple[tuple[str, str, Block], ...]:
        """The tips to be drawn: label, what they are, and the block."""
        return tuple(
            (
                LABELS[label],
                f"{names.stock(block.tip)}, {self.reader.length(block.tip.showing_mm)} showing",
                block,
            )
            for label, block in sections.subjects(self.answer)
        )

    @property
    def beside(self) -> tuple[tuple[str, Block], ...]:
        """The tip in hand and the advised one, to be drawn side by side."""
        return subject.beside(self.answer)

    @property
    def compared(self) -> tuple[tuple[str, Sight], ...]:
        """What the strips of the first screen are of."""
        return subject.compared(self.answer)

    @property
    def sights(self) -> list[Sight]:
        """The sights of all strips of the page."""
        return [one for _, one in self.compared]

    def reach(self, label: str, seen: Sight) -> str:
        """Return a strip's own line."""
        return briefly.reach(label, seen, self.answer.case.wanted.level, self.reader)

    def runs(self, seen: Sight) -> str:
        """Return the grades of a strip in words."""
        return briefly.runs(seen, self.reader)

    def called(self, seen: Sight) -> str:
        """Return the water of a strip by name."""
        return f"{names.whole_water(names.stretch(self.answer.case, seen.name))} water"

    @property
    def farthest(self) -> str:
        """Where the advised tip goes, as a heading."""
        seen, wanted = subject.advised(self.answer)[1].visibility, self.answer.case.wanted.level
        return self.reader.goes(seen.goes_at_m, seen.level, wanted)

    @property
    def next_up(self) -> str:
        """The least tip of the first grade that is not reached yet, as a heading."""
        now = self.answer.at_the_bank.block.visibility.level
        level = dict(grades.limits())
        later = [one for one in self.answer.next_step if level[one.grade] > now]
        if not later:
            return "there is none"
        return f"{later[0].grade}: {readings.step(self.answer.case, later[0])}"

    @property
    def doubt(self) -> str:
        """The biggest doubt, as a heading."""
        return briefly.doubt(self.answer)

    @property
    def message(self) -> str:
        """The answer as one sends it to a friend."""
        return briefly.message(self.answer, self.reader)

    @property
    def points(self) -> tuple[tuple[str, ...], ...]:
        """Seen against sunk, a row a point."""
        return tuple(
            (
                f"{point.diameter_mm:g} mm",
                self.reader.length(point.showing_mm),
                f"{point.level:.1f}",
                measures.grams(point.sink_force_g),
                measures.rides_short(point.ride_margin),
                "advised"
                if point.chosen
                else trade.IN_HAND
                if point.of == trade.IN_HAND
                else "yes"
                if point.passes
                else "no",
            )
            for point in trade.marked(self.answer.trade_off, self.answer.tip_in_hand)
        )
