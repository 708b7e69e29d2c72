"""What the page says of an answer: sentences, readings, what-ifs, and what changed."""

from collections.abc import Callable
from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block, Change
from tipsight.advice.options import paint_words, tip_options
from tipsight.inputs.case import Band, Tip
from tipsight.load import budget
from tipsight.output import block_words, head, sections, times, words
from tipsight.sight import grades
from webui.asking import Asked
from webui.units import Units

UNCHANGED = "as it is"
LABELS = {sections.AS_IS: "Tip in hand", sections.BANK: "Now, at the bank", sections.BENCH: "At the bench"}


def sentence(words_: str) -> str:
    """Return words begun with a capital and ended with a stop."""
    plain = words_.strip().rstrip(".")
    return f"{plain[:1].upper()}{plain[1:]}."


@dataclass(frozen=True)
class Doing:
    """One thing to do, in a sentence, and what comes of it."""

    words: str
    outcome: str
    undo: str
    grade: str
    level: str


def _outcome(answer: Answer, block: Block, same: bool) -> str:
    wanted = grades.grade(answer.case.wanted.level)
    now, then = answer.tip_in_hand.visibility.grade, block.visibility.grade
    short = head.shortcomings(block, wanted)
    said = f"It is {now}" if same else f"Now {now}, then {then}"
    if not short:
        return f"{said}{', and that is enough' if same or block.passes else ''}."
    return f"{said}: {short}." if same else f"{said}: the best to be had, yet {short}."


def _doing(answer: Answer, change: Change, words_: str) -> Doing:
    seen, same = change.block.visibility, change.kind == UNCHANGED
    return Doing(
        sentence(words_),
        _outcome(answer, change.block, same),
        "" if same else sentence(change.undo),
        seen.grade,
        f"level {seen.level:.1f}, likely {words.levels(seen.low, seen.high)}",
    )


def now(answer: Answer) -> Doing:
    """Return what to do now, at the bank."""
    change = answer.at_the_bank
    if change.kind != UNCHANGED:
        return _doing(answer, change, words.with_inches(change.words))
    load = change.block.load
    showing = words.length(answer.tip_in_hand.tip.showing_mm)
    said = f"leave it as it is, {showing} showing, {words.grams(load.shot_g)} of {load.shot_metal} shot"
    return _doing(answer, change, said)


def bench(answer: Answer) -> Doing | None:
    """Return what to fit at the bench, None when nothing passes."""
    change = answer.at_the_bench
    return None if change is None else _doing(answer, change, head.fitting(change))


@dataclass(frozen=True)
class Reading:
    """One of the four readings, of each tip that the answer is about."""

    title: str
    rows: tuple[tuple[str, str, tuple[str, ...]], ...]
    """Label of the tip, the word for it, and the numbers in sentences."""


def _range(block: Block) -> str:
    seen = block.visibility
    low, high = grades.grade(seen.low), grades.grade(seen.high)
    said = f"level {seen.level:.1f}, likely {words.levels(seen.low, seen.high)}"
    return f"{said}: {low}" if low == high else f"{said}: {low} to {high}"


def readings(answer: Answer) -> tuple[Reading, ...]:
    """Return sight, ride, bite and shot of the tip in hand and of those advised."""
    case, of = answer.case, [(LABELS[label], block) for label, block in sections.subjects(answer)]
    wanted = case.wanted.level

    def sight(block: Block) -> tuple[str, tuple[str, ...]]:
        seen = block.visibility
        each = tuple(
            f"on {one.name}: {one.grade} ({one.level:.1f}), {words.goes(one.goes_at_m, one.level, wanted)}"
            for one in seen.by_background
        )
        return seen.grade, (_range(block), *each)

    def ride(block: Block) -> tuple[str, tuple[str, ...]]:
        handled = block.handling
        rides = words.rides(handled.ride_margin, handled.upright)
        dips = f"dips of its own {times.dips(handled.ordinary_dip_s, handled.dips_per_min)}"
        hides = f"ripples hide {handled.hidden_mm:.0f} mm" if handled.hidden_mm >= 1 else ""
        return rides, tuple(filter(None, (f"margin {words.margin(handled.ride_margin)}, where 3 is well", dips, hides)))

    def bite(block: Block) -> tuple[str, tuple[str, ...]]:
        sinks, _, rest = block_words.bite_words(case, block).partition("; ")
        return sinks.removeprefix("it takes ").removesuffix(" to sink it"), (rest,)

    def shot(block: Block) -> tuple[str, tuple[str, ...]]:
        amount, _, where = block_words.load_words(block).partition(": ")
        return amount, (where, head.shot_words(block))

    def reading(title: str, say: Callable[[Block], tuple[str, tuple[str, ...]]]) -> Reading:
        said = [(label, say(block)) for label, block in of]
        if len(said) > 1 and len({told for _, told in said}) == 1:
            said = [("All of them", said[0][1])]
        return Reading(title, tuple((label, *told) for label, told in said))

    return (reading("Sight", sight), reading("Ride", ride), reading("What sinks it", bite), reading("Shot", shot))


@dataclass(frozen=True)
class WhatIf:
    """A what-if: its words, and the address that tells."""

    words: str
    query: str


def _scaled(tip: Tip, showing_mm: float) -> str:
    scale = showing_mm / tip.showing_mm
    return paint_words(tuple(Band(b.paint, b.from_top_mm * scale, b.to_top_mm * scale) for b in tip.bands), showing_mm)


def _showing(answer: Answer, step_mm: float) -> dict[str, str] | None:
    tip = answer.tip_in_hand.tip
    then = tip.showing_mm + step_mm
    wet = tip.wet_mm - step_mm if tip.wet_mm >= step_mm else tip.wet_mm
    if not 1 <= then <= 80:
        return None
    options = {"showing": f"{then:.12g} mm", "wet": f"{wet:.12g} mm", **_kept(answer)}
    return {**options, "paint": _scaled(tip, then)} if len(tip.bands) > 1 else options


def _thicker(answer: Answer, step_mm: float) -> dict[str, str] | None:
    tip = answer.tip_in_hand.tip
    then = tip.stock.diameter_mm + step_mm
    if not 1 <= then <= 10:
        return None
    options = {"diameter": f"{then:.12g} mm", **_kept(answer)}
    if tip.stock.bore_mm:
        bore = tip.stock.bore_mm + step_mm
        if bore <= 0:
            return None
        options["bore"] = f"{bore:.12g} mm"
    return options


def _kept(answer: Answer) -> dict[str, str]:
    """Return what keeps a weighed float the same float when its tip is told otherwise."""
    case = answer.case
    other = Tip(case.tip.stock, case.tip.showing_mm + 1, case.tip.wet_mm, case.tip.glued_mm, case.tip.bands)
    return {k: v for k, v in tip_options(case, other).items() if k == "takes_showing" or k.startswith("weighed_")}


def what_ifs(answer: Answer, asked: Asked) -> tuple[WhatIf, ...]:
    """Return one step each way from the question, each with its address."""
    paints = list(dict.fromkeys(p for p in ("black", "white", "fluorescent orange", "fluorescent yellow")
                                if (p,) != tuple(b.paint for b in answer.tip_in_hand.bands)))
    sun = answer.case.light.beam
    sky = {"sky": "dull overcast", "sun_out": ""} if sun else {"sky": "clear", "sun_out": "yes"}
    offered: list[tuple[str, dict[str, str] | None]] = [
        ("Show 10 mm more", _showing(answer, 10)),
        ("Show 10 mm less", _showing(answer, -10)),
        ("1 mm thicker", _thicker(answer, 1)),
        ("1 mm thinner", _thicker(answer, -1)),
        *((f"Paint it {paint}", {"paint": paint, "seasons": ""}) for paint in paints[:2]),
        ("The sun goes in" if sun else "The sun comes out", sky),
        ("A dull sky", {"sky": "dull overcast", "sun_out": ""}),
    ]
    return tuple(
        WhatIf(said, asked.with_told(changes).query())
        for said, changes in offered
        if changes is not None and any(asked.typed.get(k, ("",)) != (v,) for k, v in changes.items())
    )[:8]


def changed(asked: Asked, before: Answer, after: Answer) -> tuple[tuple[str, str, str], ...]:
    """Return what the change in the address did to the tip in hand: label, before, after."""
    def told(answer: Answer) -> dict[str, str]:
        block = answer.tip_in_hand
        return {
            "Seen": f"{block.visibility.grade} (level {block.visibility.level:.1f})",
            "Rides": words.rides(block.handling.ride_margin, block.handling.upright),
            "Sinks at": words.grams(block.handling.sink_force_g),
            "Shot": words.grams(block.load.shot_g),
            "Now, at the bank": sentence(answer.at_the_bank.words),
        }

    old, new = told(before), told(after)
    items = tuple(
        (key.replace("_", " "), "; ".join(texts) or "not told", "; ".join(asked.typed.get(key, ())) or "not told")
        for key, texts in asked.was.items() if not key.startswith(("weighed_", "takes_"))
    )
    return (*items, *((label, old[label], new[label]) for label in old))


def title(answer: Answer, u: Callable[[str], str]) -> str:
    """Return the answer in a few words, for the page's title."""
    return u(f"{answer.at_the_bank.block.visibility.grade} at {words.yards(answer.case.place.range_m)}").capitalize()


def brief(answer: Answer, u: Callable[[str], str]) -> str:
    """Return the answer in one line."""
    return u(f"{sentence(answer.at_the_bank.words)} Then {answer.at_the_bank.block.visibility.grade}.")


def swim(answer: Answer, units: Units) -> str:
    """Return what was asked, in one line."""
    case = answer.case
    waters = ", ".join(one.name for one in case.stretches)
    wanted = grades.grade(case.wanted.level)
    return units.say(f"{words.yards(case.place.range_m)}, {waters} water behind the tip, wanted {wanted}.")


def bars(grade: str) -> str:
    """Return a grade as a row of bars, filled as far as it reaches."""
    names = [word for word, _ in grades.limits()]
    filled = names.index(grade)
    return "▮" * filled + "▯" * (len(names) - 1 - filled)


def in_the_way(answer: Answer) -> tuple[str, ...]:
    """Return which limits stand in the way, by how much, and what would cure it."""
    bench_ = answer.at_the_bench
    if bench_ is not None:
        return tuple(sentence(one) for one in (*bench_.block.fails, *answer.warnings))
    best = answer.at_the_bank.block.fails
    said = [sentence(one.removeprefix("nothing passes; ")) for one in answer.warnings]
    return (*said, *(f"At the bank: {one}." for one in best))


def painted_mm(tip: Tip) -> float:
    """Return the diameter of a tip with its paint [mm]."""
    return float(budget.painted_diameter_mm(tip.stock.diameter_mm, tip.coats))


def tips(answer: Answer) -> tuple[tuple[str, Block], ...]:
    """Return the tips to be drawn, each with its label."""
    return tuple((LABELS[label], block) for label, block in sections.subjects(answer))


@dataclass(frozen=True)
class Ladder:
    """Grades over distance, of the tip in hand and of the advised one, by water."""

    columns: tuple[tuple[str, str, str], ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def ladder(answer: Answer) -> Ladder:
    """Return how each tip is seen nearer and farther."""
    waters = tuple(answer.by_distance[0].in_hand) if answer.by_distance else ()
    columns = tuple((label, which, water) for label, which in (("as it is", "in_hand"), ("advised", "advised"))
                    for water in waters)
    rows = tuple(
        (f"{rung.range_m / words.YARD_M:.0f} yd", tuple(
            sections.SHORT.get(word := grades.grade(getattr(rung, which)[water]), word) for _, which, water in columns
        ))
        for rung in answer.by_distance
    )
    return Ladder(columns, rows)
