"""Everything that was worked out, in words: all sights, all blocks, all changes, all doubts."""

from typing import cast

from tipsight.advice.answer import Answer, Block, TradePoint
from tipsight.inputs.options import as_line
from tipsight.inputs.question import Value
from tipsight.output import block_words, notes, sections, things, words
from tipsight.output.layout import WIDTH, Section, entry, hanging, table


def command(start: str, given: dict[str, object], options: dict[str, str]) -> tuple[str, ...]:
    """Return the command that makes a change, broken as a shell allows.

    Parameters
    ----------
    start : str
        How the command was begun.
    given : dict
        Options that were given already.
    options : dict
        Those that make the change.

    Returns
    -------
    tuple of str
        Lines to be typed or pasted.

    Examples
    --------
    >>> command("tipsight advise mine.toml", {"age": "60"}, {"showing": "30 mm"})
    ("  tipsight advise mine.toml --age=60 --showing='30 mm'",)
    """
    merged = cast(dict[str, Value | None], {**given, **options})
    words_ = [start, *(as_line({key: value}) for key, value in merged.items())]
    lines, line = [], "  "
    for word in words_:
        if len(line) + len(word) > WIDTH - 3 and line.strip():
            lines.append(line.rstrip() + " \\")
            line = "    "
        line += word + " "
    return (*lines, line.rstrip())


def _block(answer: Answer, label: str, block: Block) -> tuple[str, ...]:
    tip, handled, loaded, case = block.tip, block.handling, block.load, answer.case
    under = handled.time_under
    rows = [
        (
            "tip",
            f"{things.stock(tip)}, {words.length(tip.showing_mm)} showing, {tip.wet_mm:g} mm wet, "
            f"{tip.glued_mm:g} mm glued in, {tip.coats} coats",
        ),
        ("paint", things.paint(block.bands, tip.showing_mm)),
        ("rides", block_words.ride_words(block)),
        ("under", f"{under:.1%} of the time" if under >= 5e-4 else "hardly any of the time"),
        (
            "hidden",
            f"{handled.hidden_mm:.0f} mm by the nearer ripples, "
            f"{handled.hidden_high_mm:.0f} mm by the highest",
        ),
        (
            "sinks",
            f"{block_words.force_words(case, handled.sink_force_g)}; dragged right under with its "
            f"top dry, {words.grams(handled.sink_force_high_g)}; "
            f"{handled.stiffness_g_per_mm:.2g} g for each mm",
        ),
        ("bites", block_words.bite_words(case, block)),
        ("stands", block_words.stand_words(block)),
        (
            "shot",
            f"{block_words.load_words(block)}; {loaded.change_words or 'no change'} "
            f"({loaded.change_g:+.2f} g)",
        ),
        ("limits", "; ".join(block.fails) or "all kept"),
    ]
    return (label.upper(), *(line for name, said in rows for line in entry(f"  {name}", said)))


def _trade(answer: Answer) -> tuple[str, ...]:
    def row(point: TradePoint) -> tuple[str, ...]:
        mark = "advised" if point.chosen else "passes" if point.passes else ""
        return (
            f"{point.diameter_mm:g} mm",
            words.length(point.showing_mm),
            words.level(point.level),
            words.grams(point.sink_force_g),
            words.margin(point.ride_margin),
            mark,
        )

    if not answer.trade_off:
        return ()
    top = ("thick", "showing", "level", "sinks at", "rides", "")
    rows = [row(point) for point in answer.trade_off if point.of == "longer"]
    thick = [row(point) for point in answer.trade_off if point.of == "thicker"]
    return (
        "WHAT EACH QUARTER INCH, AND EACH HALF MILLIMETRE, GAINS AND COSTS",
        *table([top, *rows]),
        *((table([top, *thick])) if thick else ()),
    )


def _changes(answer: Answer, start: str, given: dict[str, object]) -> tuple[str, ...]:
    lines = ["WHAT CAN BE DONE, LEAST TROUBLE FIRST, AND THE COMMAND THAT SHOWS IT"]
    for change in answer.changes:
        enough = "enough" if change.block.passes else "not enough"
        seen = change.block.visibility
        lines += hanging(
            f"- {words.with_inches(change.words)}: {seen.grade} ({words.level(seen.level)}), "
            f"{enough}; {change.undo}"
        )
        if change.options:
            lines += command(start, given, change.options)
    return tuple(lines)


def _steps(answer: Answer, start: str, given: dict[str, object]) -> tuple[str, ...]:
    lines = ["NEXT STEP UP: THE LEAST TIP FOR EACH GRADE"]
    for step in answer.next_step:
        lines += hanging(f"- {step.grade}: {step.words}")
        if step.block is not None and step.options:
            lines += command(start, given, step.options)
    return tuple(lines)


def _why(answer: Answer, start: str, given: dict[str, object]) -> tuple[str, ...]:
    lines = ["WHY"]
    for reason in answer.reasons:
        lines += hanging(f"- {reason.words}")
        if reason.options:
            lines += command(start, given, reason.options)
    return tuple(lines)


def _doubts(answer: Answer) -> tuple[str, ...]:
    lines = [
        line
        for one in answer.doubts
        for line in entry(f"  x {one.spread:.2f}", f"{one.name}: {one.words}")
    ]
    return (
        ("DOUBTS, AND HOW MANY TIMES WIDER EACH MAKES THE RANGE OF THE LEVEL", *lines)
        if lines
        else ()
    )


def everything(answer: Answer, start: str, given: dict[str, object]) -> tuple[str, ...]:
    """Return all that stands behind the first six lines.

    Parameters
    ----------
    answer : Answer
        The whole answer.
    start : str
        How the command was begun.
    given : dict
        Options that were given already.

    Returns
    -------
    tuple of str
        As many lines as it takes.
    """

    def fullest(section: Section) -> tuple[str, ...]:
        return section.forms[0]

    of = sections.subjects(answer)
    assumed = notes.assumed_list(answer)
    cure = tuple(line for one in answer.warnings for line in entry("NOTE", f"{one}."))
    parts = (
        sections.sight_rows(answer, of),
        *(_block(answer, label, block) for label, block in of),
        fullest(sections.ladder(answer)),
        _trade(answer),
        _changes(answer, start, given),
        _steps(answer, start, given),
        _why(answer, start, given),
        _doubts(answer),
        ("NOT TOLD, SO TAKEN AS", *assumed) if assumed else (),
        cure,
        fullest(notes.cautions(answer)),
    )
    return tuple(line for part in parts if part for line in ("", *part))
