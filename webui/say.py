"""What the page says of an answer in sentences: what to do, and what stands in the way."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from tipsight.advice.answer import Answer, Block, Change
from tipsight.inputs.case import Tip
from tipsight.load.tips import painted_diameter_mm
from tipsight.output import head, sections, words
from tipsight.sight import grades
from webui.units import Units

UNCHANGED = "as it is"
NOTHING, OUT_OF_REACH = "nothing passes", "is out of reach"
"""How the advice begins, or turns, a warning that something stands in the way."""
LABELS = {
    sections.AS_IS: "Tip in hand",
    sections.BANK: "Now, at the bank",
    sections.BENCH: "At the bench",
}


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
    before = answer.tip_in_hand
    short = head.shortcomings(block, wanted)
    said = f"It is {before.visibility.grade}" if same else head.turns(before, block)
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
        f"level {words.level(seen.level)}, likely {words.levels(seen.low, seen.high)}",
    )


def now(answer: Answer) -> Doing:
    """Return what to do now, at the bank."""
    change = answer.at_the_bank
    same = change.kind == UNCHANGED
    said = head.left_alone(change.block) if same else words.with_inches(change.words)
    found = _doing(answer, change, said)
    return replace(found, outcome=found.outcome + head.nearer(answer))


def bench(answer: Answer) -> Doing | None:
    """Return what to fit at the bench, None when nothing passes."""
    change = answer.at_the_bench
    return None if change is None else _doing(answer, change, head.fitting(change))


def title(answer: Answer, u: Callable[[str], str]) -> str:
    """Return the answer in a few words, for the page's title."""
    return u(
        f"{answer.at_the_bank.block.visibility.grade} at {words.yards(answer.case.place.range_m)}"
    ).capitalize()


def brief(answer: Answer, u: Callable[[str], str]) -> str:
    """Return the answer in one line."""
    return u(
        f"{sentence(answer.at_the_bank.words)} Then {answer.at_the_bank.block.visibility.grade}."
    )


def swim(answer: Answer, units: Units) -> str:
    """Return what was asked, in one line."""
    case = answer.case
    waters = " and ".join(one.name for one in case.stretches)
    wanted = grades.grade(case.wanted.level)
    return units.say(
        f"{words.yards(case.place.range_m)}, {waters} water behind the tip, wanted {wanted}."
    )


def bars(grade: str) -> str:
    """Return a grade as a row of bars, filled as far as it reaches."""
    names = [word for word, _ in grades.limits()]
    filled = names.index(grade)
    return "▮" * filled + "▯" * (len(names) - 1 - filled)


def in_the_way(answer: Answer) -> tuple[str, ...]:
    """Return which limits stand in the way, by how much, and what would cure it."""
    fails = answer.at_the_bench.block.fails if answer.at_the_bench else ()
    short = tuple(
        sentence(one.removeprefix(NOTHING).lstrip(":; ")) for one in answer.warnings if _short(one)
    )
    bank = () if answer.at_the_bench else answer.at_the_bank.block.fails
    return (*map(sentence, fails), *short, *(f"At the bank: {one}." for one in bank))


def to_mind(answer: Answer) -> tuple[str, ...]:
    """Return what else the answer has to warn of."""
    return tuple(sentence(one) for one in answer.warnings if not _short(one))


def _short(warning: str) -> bool:
    return warning.startswith(NOTHING) or OUT_OF_REACH in warning


def painted_mm(tip: Tip) -> float:
    """Return the diameter of a tip with its paint [mm]."""
    return float(painted_diameter_mm(tip.stock.diameter_mm, tip.coats))


def tips(answer: Answer) -> tuple[tuple[str, Block], ...]:
    """Return the tips to be drawn, each with its label."""
    return tuple((LABELS[label], block) for label, block in sections.subjects(answer))
