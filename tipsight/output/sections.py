"""What follows the first lines, section by section, each in a fuller and a shorter form."""

from collections.abc import Callable, Sequence

from tipsight.advice.answer import Answer, Block
from tipsight.advice.facts import Repaint
from tipsight.output import measures, names, readings, telling, warned
from tipsight.output.layout import WIDTH, Section, entry, hanging, table
from tipsight.output.measures import ANGLER, Reader, sentence
from tipsight.sight import grades
from tipsight.units import YARD_M

AS_IS, BANK, BENCH = "as it is", "at the bank", "at the bench"
SHORT = {"kept in view": "kept", "in and out": "in-out", "stands out": "stands"}
"""Grades that are too long for a column."""
Subjects = tuple[tuple[str, Block], ...]


def short_grade(level: float) -> str:
    """Return the grade of a level, short enough for a column."""
    word = grades.grade(level)
    return SHORT.get(word, word)


def subjects(answer: Answer) -> Subjects:
    """Return the tips that the answer is about, each with its label.

    The tip in hand; what it becomes at the bank; what is fitted at the bench.
    """
    found = [(AS_IS, answer.tip_in_hand)]
    if answer.at_the_bank.actions:
        found.append((BANK, answer.at_the_bank.block))
    if answer.at_the_bench is not None and answer.at_the_bench.actions:
        found.append((BENCH, answer.at_the_bench.block))
    return tuple(found)


def _advised(answer: Answer) -> Subjects:
    return subjects(answer)[-2:]


def sight_rows(
    answer: Answer, of: Subjects, reader: Reader = ANGLER, waters: Sequence[str] | None = None
) -> tuple[str, ...]:
    """Return how each tip is seen on each water, or on those named, as a table."""
    wanted = answer.case.wanted.level
    told = [
        one.name
        for one in of[0][1].visibility.by_background
        if waters is None or one.name in waters
    ]
    rows, of_row = [], []
    for name in told:
        for label, block in of:
            one = next(s for s in block.visibility.by_background if s.name == name)
            likely = measures.levels(one.low, one.high)
            seen = f"{measures.level(one.level)} ({likely})"
            rows.append((label, one.grade, seen, reader.goes(one.goes_at_m, one.level, wanted)))
            of_row.append(names.stretch(answer.case, name))
    room = WIDTH - 2 - max(map(len, table(rows)))
    named = []
    for stretch, row in zip(of_row, rows, strict=True):
        whole = names.whole_water(stretch)
        fits = whole if len(whole) <= room else names.short_water(stretch)[:room].rstrip()
        named.append((fits, *row))
    asked = reader.distance(answer.case.place.range_m)
    title = f"SIGHT at {asked}, by the water behind the tip: level (likely)"
    return (title, *table(named))


def sight(answer: Answer, reader: Reader = ANGLER) -> Section:
    """Return how the tips are seen, all three of them or the two that are advised."""
    worst = answer.tip_in_hand.visibility.worst.name
    return Section(
        "sight",
        (
            sight_rows(answer, subjects(answer), reader),
            sight_rows(answer, _advised(answer), reader),
            sight_rows(answer, _advised(answer), reader, (worst,)),
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


def handling(answer: Answer, reader: Reader = ANGLER) -> tuple[Section, ...]:
    """Return riding, bites, shot and what to cut, for the tips that are advised."""
    of, case = _advised(answer), answer.case

    return (
        Section("rides", (_each("RIDES", of, readings.ride),)),
        Section("bites", (_each("BITES", of, lambda block: readings.bites(case, block)),)),
        Section("shot", (_each("SHOT", of, readings.load),)),
        Section("cut", (_cut(answer, reader),)),
    )


def _cut(answer: Answer, reader: Reader) -> tuple[str, ...]:
    bench = answer.at_the_bench
    if bench is None or not bench.actions or bench.does(Repaint):
        return ()
    tip = bench.block.tip
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    return entry(
        "CUT",
        f"{reader.length(whole)}: {tip.showing_mm:g} mm shows, {tip.wet_mm:g} wet, "
        f"{tip.glued_mm:g} glued in; {tip.coats} coats in all",
    )


def next_step(answer: Answer) -> Section:
    """Return the least tip for each grade, grades with the same tip together."""
    said: dict[str, list[str]] = {}
    for step in answer.next_step:
        said.setdefault(readings.step(answer.case, step), []).append(step.grade)

    lines = tuple(
        line
        for n, (what, steps) in enumerate(said.items())
        for line in entry("NEXT STEP" if n == 0 else "", f"{', '.join(steps)}: {what}")
    )
    return Section("next", (lines,))


def ladder(answer: Answer, reader: Reader = ANGLER) -> Section:
    """Return the grade of both tips at each distance on dark and on bright water."""

    def row(label: str, which: str, water: str) -> tuple[str, ...]:
        found = [getattr(rung, which)[water] for rung in answer.by_distance]
        return (label, *map(short_grade, found))

    if not answer.by_distance:
        return Section("ladder", ((),))
    yards = reader.distances == "yd"
    far = [rung.range_m / (YARD_M if yards else 1.0) for rung in answer.by_distance]
    top = ("YARDS" if yards else "METRES", *(f"{one:.0f}" for one in far))
    waters = tuple(answer.by_distance[0].in_hand)
    advised = BANK if answer.at_the_bench is None else BENCH
    old = [row(f"{AS_IS}, {water}", "in_hand", water) for water in waters]
    new = [row(f"{advised}, {water}", "advised", water) for water in waters]

    def lines(rows: list[tuple[str, ...]]) -> tuple[str, ...]:
        return table([top, *rows], 0, 1)

    if all(rung.in_hand == rung.advised for rung in answer.by_distance):
        return Section("ladder", (lines(old),))
    return Section("ladder", (lines([*old, *new]), lines(new)))


def why(answer: Answer, reader: Reader = ANGLER) -> Section:
    """Return the reasons."""
    said = [telling.reason(one, answer.case, reader) for one in answer.reasons]

    def lines(count: int) -> tuple[str, ...]:
        kept = said if len(said) <= count else [*said[: count - 1], said[-1]]
        return tuple(
            line for n, text in enumerate(kept) for line in entry("" if n else "WHY", text)
        )

    return Section("why", tuple(lines(count) for count in (5, 4, 3, 2, 1)))


def doubt(answer: Answer) -> Section:
    """Return the biggest doubt."""
    if not answer.doubts:
        return Section("doubt", ((),))
    said = telling.doubt(answer.doubts[0])
    return Section("doubt", (entry("MOST UNSURE", said),))


def not_told(answer: Answer) -> Section:
    """Return what was not told, and what was taken for it."""
    said = [f"{_asked_of(one.item)} {one.taken}" for one in answer.assumed]
    if not said:
        return Section("not told", ((),))

    def lines(count: int) -> tuple[str, ...]:
        more = f"; and {len(said) - count} more: see --full" if count < len(said) else ""
        return entry("NOT TOLD", f"so taken as: {'; '.join(said[:count])}{more}")

    forms = [lines(count) for count in range(len(said), 0, -1)]
    shorter = [form for n, form in enumerate(forms) if n == 0 or len(form) < len(forms[n - 1])]
    return Section("not told", tuple(shorter))


def warnings(answer: Answer, reader: Reader = ANGLER) -> Section:
    """Return what the answer has to warn of."""
    said = [sentence(one) for one in warned.warnings(answer, reader)]
    if not said:
        return Section("warnings", ((),))
    each = tuple(line for one in said for line in entry("NOTE", one))

    def some(count: int) -> tuple[str, ...]:
        more = len(said) - count
        return hanging(
            f"NOTES  {' '.join(said[:count])}" + (f" {more} more: see --full." if more else "")
        )

    return Section("warnings", (each, *(some(count) for count in range(len(said), 0, -1))))


def cautions(answer: Answer) -> Section:
    """Return the cautions, each with what brings it up."""
    said = [f"{telling.caution(one)} [{telling.trigger(one)}]" for one in answer.cautions]
    long = tuple(line for one in said for line in entry("CARE", one))
    if not said:
        return Section("cautions", ((),))
    brief = " ".join(telling.caution(one) for one in answer.cautions)
    return Section(
        "cautions", (long, hanging(f"CARE  {' '.join(said)}"), hanging(f"CARE  {brief}"))
    )


def assumed_list(answer: Answer) -> tuple[str, ...]:
    """Return everything that was not told, one a line."""
    return tuple(
        line
        for one in answer.assumed
        for line in hanging(f"{_asked_of(one.item)}: {one.taken}", "  ")
    )


def _asked_of(item: str) -> str:
    return "your eyes" if item == "own_eye" else item.replace("_", " ")
