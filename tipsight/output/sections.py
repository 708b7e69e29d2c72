"""What follows the first six lines, section by section, each in a fuller and a shorter form."""

from collections.abc import Callable, Sequence

from tipsight.advice.answer import Answer, Block
from tipsight.inputs.case import Case
from tipsight.load import plan, shot
from tipsight.output import things, times, words
from tipsight.output.layout import WIDTH, Section, entry, hanging, table
from tipsight.sight import grades

AS_IS, BANK, BENCH = "as is", "now", "bench"
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
    if answer.at_the_bench is not None:
        found.append((BENCH, answer.at_the_bench.block))
    return tuple(found)


def _advised(answer: Answer) -> Subjects:
    return subjects(answer)[-2:]


def sight_rows(
    answer: Answer, of: Subjects, waters: Sequence[str] | None = None
) -> tuple[str, ...]:
    """Return how each tip is seen on each water, as a table."""
    wanted = answer.case.wanted.level
    rows = [
        (
            label,
            one.grade,
            f"{one.level:.1f} ({words.levels(one.low, one.high)})",
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
    named = [(name[:room].rstrip(" ,"), *row) for name, row in zip(names, rows, strict=True)]
    asked = words.yards(answer.case.place.range_m)
    title = f"SIGHT at {asked}, by the water behind the tip: level (likely)"
    return (title, *table(named))


def sight(answer: Answer) -> Section:
    """Return how the tips are seen, all three of them or the two that are advised."""
    worst = min(answer.tip_in_hand.visibility.by_background, key=lambda one: one.level).name
    return Section(
        "sight",
        (
            sight_rows(answer, subjects(answer)),
            sight_rows(answer, _advised(answer)),
            sight_rows(answer, _advised(answer), (worst,)),
        ),
    )


def ride_words(block: Block) -> str:
    """Return how a tip rides, and which dips are the water's own."""
    handled = block.handling
    said = (
        f"{words.rides(handled.ride_margin, handled.upright)} "
        f"(margin {words.margin(handled.ride_margin)}), "
        f"dips {times.dips(handled.ordinary_dip_s, handled.dips_per_min)}"
    )
    if handled.hidden_mm >= 1:
        said += f"; ripples hide {handled.hidden_mm:.0f} mm"
    return said


def force_words(case: Case, force_g: float) -> str:
    """Return a force in water, said in shot by name and in grams."""
    metal, water_c = case.box.shot_metal, case.stream.temperature_c
    in_air_g = force_g / float(shot.wet_share(metal, water_c))
    return (
        f"{plan.in_words(in_air_g, case.box.shot or shot.sizes(metal))} ({words.grams(force_g)})"
    )


def bite_words(case: Case, block: Block) -> str:
    """Return what sinks a tip, the least dip that is seen, and the lightest bite that makes it."""
    handled = block.handling
    said = f"it takes {force_words(case, handled.sink_force_g)} to sink it; "
    if handled.visible_dip_mm is None:
        return said + "no dip can be told at this distance"
    said += f"least dip seen {handled.visible_dip_mm:.0f} mm: "
    slow = handled.slow_bite_g
    return (
        said
        + (f"a slow draw of {words.grams(slow)}, " if slow is not None else "")
        + f"a pluck of {words.grams(handled.pluck_g)}"
    )


def load_words(block: Block) -> str:
    """Return the shot for a tip, and where it goes."""
    loaded = block.load
    said = f"{words.grams(loaded.shot_g)} of {loaded.shot_metal}: {things.shot_list(loaded.shot)}"
    return said + (
        f"; short by {words.grams(loaded.short_by_g)}" if loaded.short_by_g >= 0.005 else ""
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
    """Return riding, bites and shot for the tips that are advised."""
    of, case = _advised(answer), answer.case
    return (
        Section("rides", (_each("RIDES", of, ride_words),)),
        Section("bites", (_each("BITES", of, lambda block: bite_words(case, block)),)),
        Section("shot", (_each("SHOT", of, load_words),)),
        Section("cut", (_cut(answer),)),
    )


def _cut(answer: Answer) -> tuple[str, ...]:
    if answer.at_the_bench is None or answer.at_the_bench.kind == "repaint":
        return ()
    tip = answer.at_the_bench.block.tip
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    return entry(
        "CUT",
        f"{words.length(whole)}: {tip.showing_mm:g} mm shows, {tip.wet_mm:g} wet, "
        f"{tip.glued_mm:g} glued in; {tip.coats} coats in all",
    )


def next_step(answer: Answer) -> Section:
    """Return the least tip for each grade."""

    def lines(most: int | None) -> tuple[str, ...]:
        return tuple(
            line
            for n, step in enumerate(answer.next_step)
            for line in entry("NEXT STEP" if n == 0 else "", f"{step.grade}: {step.words}", most)
        )

    return Section("next", (lines(None), lines(1)))


def ladder(answer: Answer) -> Section:
    """Return the grade of both tips at each distance on dark and on bright water."""

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

    full = lines([*old, *new]) if new != old else lines(old)
    return Section("ladder", (full, lines(new)))


def why(answer: Answer) -> Section:
    """Return the reasons, and the biggest doubt."""
    said = [reason.words for reason in answer.reasons]

    def lines(count: int, most: int | None) -> tuple[str, ...]:
        kept = said if len(said) <= count else [*said[: count - 1], said[-1]]
        return tuple(
            line for n, text in enumerate(kept) for line in entry("" if n else "WHY", text, most)
        )

    return Section("why", (lines(5, None), lines(5, 1), lines(3, 1)))


def doubt(answer: Answer) -> Section:
    """Return the biggest doubt."""
    if not answer.doubts:
        return Section("doubt", ((),))
    said = answer.doubts[0].words
    return Section("doubt", (entry("MOST UNSURE", said), entry("MOST UNSURE", said, 1)))


def not_told(answer: Answer) -> Section:
    """Return what was not told, and what was taken for it."""
    said = [f"{one.item.replace('_', ' ')} {one.taken}" for one in answer.assumed]
    if not said:
        return Section("not told", ((),))

    def lines(count: int) -> tuple[str, ...]:
        more = f"; and {len(said) - count} more: see --full" if count < len(said) else ""
        return entry("NOT TOLD", f"so taken as: {'; '.join(said[:count])}{more}")

    forms = [lines(count) for count in range(len(said), 0, -1)]
    shorter = [form for n, form in enumerate(forms) if n == 0 or len(form) < len(forms[n - 1])]
    return Section("not told", tuple(shorter))


def warnings(answer: Answer) -> Section:
    """Return what the answer has to warn of."""
    said = answer.warnings if answer.at_the_bench is not None else answer.warnings[1:]

    def lines(most: int | None) -> tuple[str, ...]:
        return tuple(line for one in said for line in entry("NOTE", f"{one}.", most))

    few = lines(1)
    if len(said) > 2:
        few = (*few[:2], *entry("NOTE", f"{len(said) - 2} more under --full"))
    return Section("warnings", (lines(None), lines(2), lines(1), few))


def cautions(answer: Answer) -> Section:
    """Return the cautions, each with what brings it up."""
    long = tuple(
        line for one in answer.cautions for line in entry("CARE", f"{one.words} [{one.trigger}]")
    )
    run_on = " ".join(f"{one.words} [{one.trigger}]" for one in answer.cautions)
    return Section("cautions", (long, entry("CARE", run_on) if run_on else ()))


def assumed_list(answer: Answer) -> tuple[str, ...]:
    """Return everything that was not told, one a line."""
    return tuple(
        line
        for one in answer.assumed
        for line in hanging(f"{one.item.replace('_', ' ')}: {one.taken}", "  ")
    )
