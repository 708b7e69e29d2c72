"""What follows the first six lines, section by section, each in a fuller and a shorter form."""

from collections.abc import Callable, Sequence

from tipsight.advice.answer import Answer, Block
from tipsight.output import block_words, words
from tipsight.output.layout import WIDTH, Section, entry, table
from tipsight.sight import grades

AS_IS, BANK, BENCH = "as is", "bank", "bench"
SHORT = {"seen when stared at": "stared at", "kept in view": "kept"}
"""Grades that are too long for a column."""
Subjects = tuple[tuple[str, Block], ...]


def subjects(answer: Answer) -> Subjects:
    """Return the tips that the answer is about, each with its label.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    tuple of (str, Block)
        The tip in hand; what it becomes at the bank; what is fitted at the bench.
    """
    found = [(AS_IS, answer.tip_in_hand)]
    if answer.at_the_bank.kind != "as it is":
        found.append((BANK, answer.at_the_bank.block))
    if answer.at_the_bench is not None and answer.at_the_bench.kind != "as it is":
        found.append((BENCH, answer.at_the_bench.block))
    return tuple(found)


def _advised(answer: Answer) -> Subjects:
    return subjects(answer)[-2:]


def sight_rows(
    answer: Answer, of: Subjects, waters: Sequence[str] | None = None
) -> tuple[str, ...]:
    """Return how each tip is seen on each water, as a table.

    Parameters
    ----------
    answer : Answer
        The whole answer.
    of : tuple of (str, Block)
        The tips, each with its label.
    waters : sequence of str or None
        Waters to be told of; None tells of all.

    Returns
    -------
    tuple of str
        Lines of 80 columns at the most.
    """
    wanted = answer.case.wanted.level
    rows = [
        (
            label,
            one.grade,
            f"{words.level(one.level)} ({words.levels(one.low, one.high)})",
            words.goes(one.goes_at_m, one.level, wanted),
        )
        for place, first in enumerate(of[0][1].visibility.by_background)
        for label, block in of
        if waters is None or first.name in waters
        for one in (block.visibility.by_background[place],)
    ]
    names = [
        one.name
        for one in of[0][1].visibility.by_background
        for _ in of
        if waters is None or one.name in waters
    ]
    room = WIDTH - 2 - max(map(len, table(rows)))
    named = [(_fitting(name, room), *row) for name, row in zip(names, rows, strict=True)]
    asked = words.yards(answer.case.place.range_m)
    title = f"SIGHT at {asked}, by the water behind the tip: level (likely)"
    return (title, *table(named))


def _fitting(name: str, room: int) -> str:
    """Return the name of a water, of a bank without its height where there is no room for it."""
    return name if len(name) <= room else name.partition(",")[0][:room].rstrip()


def sight(answer: Answer) -> Section:
    """Return how the tips are seen, all three of them or the two that are advised.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    worst = min(answer.tip_in_hand.visibility.by_background, key=lambda one: one.level).name
    return Section(
        "sight",
        (
            sight_rows(answer, subjects(answer)),
            sight_rows(answer, _advised(answer)),
            sight_rows(answer, _advised(answer), (worst,)),
        ),
    )


def _each(title: str, of: Subjects, say: Callable[[Block], str]) -> tuple[str, ...]:
    said = [(label, say(block)) for label, block in of]
    if len({text for _, text in said}) == 1:
        said = [("", said[0][1])]
    return tuple(
        line
        for n, (label, text) in enumerate(said)
        for line in entry(title if n == 0 else "", f"{label}: {text}" if label else text)
    )


def handling(answer: Answer) -> tuple[Section, ...]:
    """Return riding, bites and shot for the tips that are advised.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    tuple of Section
        One each for riding, bites, shot, and what to cut.
    """
    of, case = _advised(answer), answer.case

    def bites(terse: bool) -> tuple[str, ...]:
        return _each("BITES", of, lambda block: block_words.bite_words(case, block, terse))

    return (
        Section("rides", (_each("RIDES", of, block_words.ride_words),)),
        Section("bites", (bites(False), bites(True))),
        Section("shot", (_each("SHOT", of, block_words.load_words),)),
        Section("cut", (_cut(answer),)),
    )


def _cut(answer: Answer) -> tuple[str, ...]:
    if answer.at_the_bench is None or answer.at_the_bench.kind in ("repaint", "as it is"):
        return ()
    tip = answer.at_the_bench.block.tip
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    return entry(
        "CUT",
        f"{words.length(whole)}: {tip.showing_mm:g} mm shows, {tip.wet_mm:g} wet, "
        f"{tip.glued_mm:g} glued in; {tip.coats} coats in all",
    )


def next_step(answer: Answer) -> Section:
    """Return the least tip for each grade.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    said: dict[str, list[str]] = {}
    for step in answer.next_step:
        said.setdefault(step.words, []).append(step.grade)

    def lines(most: int | None) -> tuple[str, ...]:
        return tuple(
            line
            for n, (what, steps) in enumerate(said.items())
            for line in entry("NEXT STEP" if n == 0 else "", f"{', '.join(steps)}: {what}", most)
        )

    return Section("next", (lines(None), lines(1)))


def ladder(answer: Answer) -> Section:
    """Return the grade of both tips at each distance on dark and on bright water.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """

    def row(label: str, which: str, water: str) -> tuple[str, ...]:
        found = [getattr(rung, which)[water] for rung in answer.by_distance]
        return (label, *(SHORT.get(word := grades.grade(level), word) for level in found))

    if not answer.by_distance:
        return Section("ladder", ((),))
    top = ("YARDS", *(f"{rung.range_m / words.YARD_M:.0f}" for rung in answer.by_distance))
    waters = tuple(answer.by_distance[0].in_hand)
    advised = BANK if answer.at_the_bench is None else BENCH
    old = [row(f"{AS_IS}, {water}", "in_hand", water) for water in waters]
    new = [row(f"{advised}, {water}", "advised", water) for water in waters]

    def lines(rows: list[tuple[str, ...]]) -> tuple[str, ...]:
        return table([top, *rows], 0, 1)

    if all(rung.in_hand == rung.advised for rung in answer.by_distance):
        return Section("ladder", (lines(old),))
    return Section("ladder", (lines([*old, *new]), lines(new)))


def why(answer: Answer) -> Section:
    """Return the reasons.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    said = [reason.words for reason in answer.reasons]

    def lines(count: int) -> tuple[str, ...]:
        kept = said if len(said) <= count else [*said[: count - 1], said[-1]]
        return tuple(
            line for n, text in enumerate(kept) for line in entry("" if n else "WHY", text)
        )

    brief = [text.partition(": ")[0].rstrip(".") + "." for text in said[:3]]
    least = tuple(
        line for n, text in enumerate(brief) for line in entry("" if n else "WHY", text, 1)
    )
    return Section("why", (lines(5), lines(4), lines(3), least))
