"""The four readings of an answer, what one change did, and two answers side by side."""

from collections.abc import Callable
from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block
from tipsight.advice.limits import RIDES_WELL
from tipsight.output import briefly, doing, measures, names, readings, sections
from tipsight.output.measures import Reader, sentence
from tipsight.pictures import subject
from tipsight.sight import grades
from webui import say
from webui.asking import Asked


@dataclass(frozen=True)
class Reading:
    """One of the four readings, of each tip that the answer is about."""

    title: str
    heading: str
    """Its result."""
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
    margin = f"margin {measures.margins(handled)}, where {RIDES_WELL:g} is well"
    return rides, tuple(filter(None, (margin, f"dips of its own {dips}", hides)))


def four(answer: Answer, reader: Reader) -> tuple[Reading, ...]:
    """Return sight, ride, bite and shot of the tip in hand and of those advised."""
    case = answer.case
    of = [(say.LABELS[label], block) for label, block in sections.subjects(answer)]

    first = subject.advised(answer)[1]

    def reading(title: str, heading: str, told: Callable[[Block], Row]) -> Reading:
        said = [(label, told(block)) for label, block in of]
        if len(said) > 1 and len({row for _, row in said}) == 1:
            said = [("All of them", said[0][1])]
        return Reading(title, heading, tuple((label, *row) for label, row in said))

    return (
        reading(
            "Sight",
            briefly.seen(answer, first, reader),
            lambda block: _sight(answer, block, reader),
        ),
        reading("Ride", briefly.ride(first), _ride),
        reading(
            "What sinks it",
            briefly.sinks(answer, first),
            lambda block: (
                readings.force(case, block.handling.sink_force_g).words,
                (readings.shows(case, block),),
            ),
        ),
        reading(
            "Shot",
            briefly.takes(first),
            lambda block: (readings.takes(block), (readings.hangs(block), doing.shot(block))),
        ),
    )


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


def beside(kept: Answer, this: Answer, reader: Reader) -> tuple[tuple[str, str, str], ...]:
    """Return a kept answer and this one side by side: label, kept, this."""

    def told(answer: Answer) -> dict[str, str]:
        block, case = answer.tip_in_hand, answer.case
        seen = block.visibility
        return {
            "Swim": briefly.swim(answer, reader),
            "Tip in hand": ", ".join(briefly.tip(block)),
            "Seen": f"{seen.grade} (level {measures.level(seen.level)})",
            "Goes": reader.goes(seen.goes_at_m, seen.level, case.wanted.level),
            "Rides": briefly.ride(block),
            "Sinks": briefly.sinks(answer, block),
            "Shot": briefly.takes(block),
            "Advised": briefly.advised(answer, reader),
        }

    old, new = told(kept), told(this)
    return tuple((label, old[label], new[label]) for label in old)


@dataclass(frozen=True)
class TrotFound:
    """The whole trot on the page: in lines, and drawn."""

    heading: str
    lines: tuple[tuple[str, str], ...]
    drawn: str


def trot(asked: Asked, answer: Answer) -> TrotFound:
    """Return the whole trot of an answer whose question tells of its stretches."""
    from tipsight.output import trot_words
    from tipsight.pictures import trot_strip
    from tipsight.trot.along import along

    told = along(asked.question())
    lines = [("As it is", sentence(trot_words.seen(told.in_hand, told)))]
    if told.change.actions:
        order = doing.change(told.change, asked.units.reader)
        lines.append(("For all of it", sentence(f"{order}: {trot_words.seen(told.chosen, told)}")))
    lines += [("", trot_words.whole(told)), ("Strike", sentence(trot_words.strikes(told.chosen)))]
    worst = trot_words.leg_name(told.legs[told.chosen.worst])
    drawn = trot_strip.drawing(told, asked.units.reader, alone=False).__html__()
    return TrotFound(f"Along the trot: worst on {worst}", tuple(lines), drawn)
