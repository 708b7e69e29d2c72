"""The four readings of an answer, its grades over distance, and what one change did."""

from collections.abc import Callable
from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block
from tipsight.advice.limits import RIDES_WELL
from tipsight.output import doing, measures, names, readings, sections
from tipsight.output.measures import Reader, sentence
from tipsight.sight import grades
from webui import say
from webui.asking import Asked


@dataclass(frozen=True)
class Reading:
    """One of the four readings, of each tip that the answer is about."""

    title: str
    rows: tuple[tuple[str, str, tuple[str, ...]], ...]
    """Label of the tip, the word for it, and the numbers in sentences."""


Row = tuple[str, tuple[str, ...]]


def _sight(answer: Answer, block: Block, reader: Reader) -> Row:
    seen = block.visibility
    low, high = grades.grade(seen.low), grades.grade(seen.high)
    likely = measures.levels(seen.low, seen.high)
    span = low if low == high else f"{low} to {high}"
    each = (
        f"on {names.whole_water(names.stretch(answer.case, one.name))}: {one.grade} "
        f"({measures.level(one.level)}), "
        f"{reader.goes(one.goes_at_m, one.level, answer.case.wanted.level)}"
        for one in seen.by_background
    )
    said = f"level {measures.level(seen.level)}, likely {likely}: {span}"
    return seen.grade, (said, *each)


def _ride(block: Block) -> Row:
    handled = block.handling
    rides = measures.rides(handled.ride_margin, handled.upright)
    dips = measures.dips(handled.ordinary_dip_s, handled.dips_per_min)
    hides = f"ripples hide {handled.hidden_mm:.0f} mm" if handled.hidden_mm >= 1 else ""
    margin = f"margin {measures.margin(handled.ride_margin)}, where {RIDES_WELL:g} is well"
    return rides, tuple(filter(None, (margin, f"dips of its own {dips}", hides)))


def four(answer: Answer, reader: Reader) -> tuple[Reading, ...]:
    """Return sight, ride, bite and shot of the tip in hand and of those advised."""
    case = answer.case
    of = [(say.LABELS[label], block) for label, block in sections.subjects(answer)]

    def reading(title: str, told: Callable[[Block], Row]) -> Reading:
        said = [(label, told(block)) for label, block in of]
        if len(said) > 1 and len({row for _, row in said}) == 1:
            said = [("All of them", said[0][1])]
        return Reading(title, tuple((label, *row) for label, row in said))

    return (
        reading("Sight", lambda block: _sight(answer, block, reader)),
        reading("Ride", _ride),
        reading(
            "What sinks it",
            lambda block: (
                readings.force(case, block.handling.sink_force_g).words,
                (readings.shows(case, block),),
            ),
        ),
        reading(
            "Shot",
            lambda block: (readings.takes(block), (readings.hangs(block), doing.shot(block))),
        ),
    )


@dataclass(frozen=True)
class Ladder:
    """Grades over distance, of the tip in hand and of the advised one, by water."""

    columns: tuple[tuple[str, str, str], ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def ladder(answer: Answer, reader: Reader) -> Ladder:
    """Return how each tip is seen nearer and farther."""
    waters = tuple(answer.by_distance[0].in_hand) if answer.by_distance else ()
    columns = tuple(
        (label, which, water)
        for label, which in (("as it is", "in_hand"), ("advised", "advised"))
        for water in waters
    )
    rows = tuple(
        (
            reader.far(rung.range_m),
            tuple(
                sections.short_grade(getattr(rung, which)[water]) for _, which, water in columns
            ),
        )
        for rung in answer.by_distance
    )
    return Ladder(columns, rows)


def changed(
    asked: Asked, before: Answer, after: Answer, reader: Reader
) -> tuple[tuple[str, str, str], ...]:
    """Return what the change in the address did to the tip in hand: label, before, after."""

    def told(answer: Answer) -> dict[str, str]:
        block = answer.tip_in_hand
        seen, handled = block.visibility, block.handling
        return {
            "Seen": f"{seen.grade} (level {measures.level(seen.level)})",
            "Rides": measures.rides(handled.ride_margin, handled.upright),
            "Sinks at": measures.grams(handled.sink_force_g),
            "Shot": measures.grams(block.load.shot_g),
            "Now, at the bank": sentence(doing.change(answer.at_the_bank, reader)),
        }

    old, new = told(before), told(after)
    items = tuple(
        (
            key.replace("_", " "),
            "; ".join(texts) or "not told",
            "; ".join(asked.typed.get(key, ())) or "not told",
        )
        for key, texts in asked.was.items()
        if not key.startswith(("weighed_", "takes_"))
    )
    return (*items, *((label, old[label], new[label]) for label in old))
