"""The four readings of an answer, its grades over distance, and what one change did."""

from collections.abc import Callable
from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block
from tipsight.output import block_words, head, sections, times, words
from tipsight.sight import grades
from webui import say
from webui.asking import Asked


@dataclass(frozen=True)
class Reading:
    """One of the four readings, of each tip that the answer is about."""

    title: str
    rows: tuple[tuple[str, str, tuple[str, ...]], ...]
    """Label of the tip, the word for it, and the numbers in sentences."""


def _range(block: Block) -> str:
    seen = block.visibility
    low, high = grades.grade(seen.low), grades.grade(seen.high)
    said = f"level {words.level(seen.level)}, likely {words.levels(seen.low, seen.high)}"
    return f"{said}: {low}" if low == high else f"{said}: {low} to {high}"


def readings(answer: Answer) -> tuple[Reading, ...]:
    """Return sight, ride, bite and shot of the tip in hand and of those advised."""
    case, of = (
        answer.case,
        [(say.LABELS[label], block) for label, block in sections.subjects(answer)],
    )
    wanted = case.wanted.level

    def sight(block: Block) -> tuple[str, tuple[str, ...]]:
        seen = block.visibility
        each = tuple(
            f"on {one.name}: {one.grade} ({words.level(one.level)}), "
            f"{words.goes(one.goes_at_m, one.level, wanted)}"
            for one in seen.by_background
        )
        return seen.grade, (_range(block), *each)

    def ride(block: Block) -> tuple[str, tuple[str, ...]]:
        handled = block.handling
        rides = words.rides(handled.ride_margin, handled.upright)
        dips = f"dips of its own {times.dips(handled.ordinary_dip_s, handled.dips_per_min)}"
        hides = f"ripples hide {handled.hidden_mm:.0f} mm" if handled.hidden_mm >= 1 else ""
        return rides, tuple(
            filter(
                None, (f"margin {words.margin(handled.ride_margin)}, where 3 is well", dips, hides)
            )
        )

    def bite(block: Block) -> tuple[str, tuple[str, ...]]:
        _, _, rest = block_words.bite_words(case, block).partition("; ")
        return block_words.force_words(case, block.handling.sink_force_g), (rest,)

    def shot(block: Block) -> tuple[str, tuple[str, ...]]:
        amount, _, where = block_words.load_words(block).partition(": ")
        return amount, (where, head.shot_words(block))

    def reading(title: str, say: Callable[[Block], tuple[str, tuple[str, ...]]]) -> Reading:
        said = [(label, say(block)) for label, block in of]
        if len(said) > 1 and len({told for _, told in said}) == 1:
            said = [("All of them", said[0][1])]
        return Reading(title, tuple((label, *told) for label, told in said))

    return (
        reading("Sight", sight),
        reading("Ride", ride),
        reading("What sinks it", bite),
        reading("Shot", shot),
    )


@dataclass(frozen=True)
class Ladder:
    """Grades over distance, of the tip in hand and of the advised one, by water."""

    columns: tuple[tuple[str, str, str], ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def ladder(answer: Answer) -> Ladder:
    """Return how each tip is seen nearer and farther."""
    waters = tuple(answer.by_distance[0].in_hand) if answer.by_distance else ()
    columns = tuple(
        (label, which, water)
        for label, which in (("as it is", "in_hand"), ("advised", "advised"))
        for water in waters
    )
    rows = tuple(
        (
            f"{rung.range_m / words.YARD_M:.0f} yd",
            tuple(
                sections.SHORT.get(word := grades.grade(getattr(rung, which)[water]), word)
                for _, which, water in columns
            ),
        )
        for rung in answer.by_distance
    )
    return Ladder(columns, rows)


def changed(asked: Asked, before: Answer, after: Answer) -> tuple[tuple[str, str, str], ...]:
    """Return what the change in the address did to the tip in hand: label, before, after."""

    def told(answer: Answer) -> dict[str, str]:
        block = answer.tip_in_hand
        return {
            "Seen": f"{block.visibility.grade} (level {words.level(block.visibility.level)})",
            "Rides": words.rides(block.handling.ride_margin, block.handling.upright),
            "Sinks at": words.grams(block.handling.sink_force_g),
            "Shot": words.grams(block.load.shot_g),
            "Now, at the bank": say.sentence(answer.at_the_bank.words),
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
