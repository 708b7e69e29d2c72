"""The answer as text: 80 columns, forty lines, the first six of which say what to do; or all of it."""

from collections.abc import Mapping
from typing import cast

from tipsight.advice.answer import Answer, Block, TradePoint, Turns
from tipsight.inputs.options import as_line
from tipsight.inputs.question import Value
from tipsight.output import (
    cause_words,
    doing,
    measures,
    names,
    readings,
    sections,
    telling,
    warned,
)
from tipsight.output.head import head
from tipsight.output.layout import WIDTH, Section, entry, fitted, hanging, table
from tipsight.output.measures import ANGLER, Reader, grams, level

MOST = 40
TIGHTEN = (
    *("space", *["not told"] * 3, "warnings", "cautions", "not told", "sight", "not told"),
    *("warnings", "not told", "why", "warnings", "not told", "not told", "warnings", "why"),
    *("ladder", *["not told"] * 40, *["warnings"] * 20, "cautions", "why", "why", "sight"),
)
"""Which section gives up its fullest form first when the lines do not suffice (judgement)."""


def text(
    answer: Answer,
    full: bool = False,
    start: str = "tipsight advise",
    given: Mapping[str, object] | None = None,
    reader: Reader = ANGLER,
) -> str:
    """Return the answer as a person reads it.

    Parameters
    ----------
    answer : Answer
        Facts.
    full : bool
        Whether to say everything that was worked out, however many lines it takes.
    start : str
        How the command was begun; the options that make a change are set behind it.
    given : mapping, optional
        Options that were given already; those that make a change go before them.
    reader : Reader
        Yards or metres, inches or not.

    Returns
    -------
    str
        Lines of 80 columns at the most, forty of them unless ``full``.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> said = text(advise(Question(distance="12 yd", behind=["dark"], paint="white")))
    >>> said[:3], len(said.splitlines()) <= 40
    ('NOW', True)
    """
    first = head(answer, reader)
    if full:
        everything = _Full(answer, start, dict(given or {}), reader).lines()
        return "\n".join((*first, *everything)) + "\n"
    parts = (
        Section("space", (("",), ())),
        sections.sight(answer, reader),
        *sections.handling(answer, reader),
        sections.next_step(answer),
        sections.ladder(answer, reader),
        sections.why(answer, reader),
        sections.doubt(answer),
        sections.not_told(answer),
        sections.warnings(answer, reader),
        sections.cautions(answer),
    )
    return "\n".join((*first, *fitted(parts, MOST - len(first), TIGHTEN))) + "\n"


def command(start: str, given: dict[str, object], options: dict[str, str]) -> tuple[str, ...]:
    """Return the command that makes a change, in lines broken as a shell allows.

    Examples
    --------
    >>> command("tipsight advise mine.toml", {"age": "60"}, {"showing": "30 mm"})
    ("  tipsight advise mine.toml --age=60 --showing='30 mm'",)
    """
    merged = cast(dict[str, Value | None], {**given, **options})
    words = [start, *(as_line({key: value}) for key, value in merged.items())]
    lines, line = [], "  "
    for word in words:
        if len(line) + len(word) > WIDTH - 3 and line.strip():
            lines.append(line.rstrip() + " \\")
            line = "    "
        line += word + " "
    return (*lines, line.rstrip())


class _Full:
    """All sights, blocks, changes, steps, reasons and doubts of an answer, as lines."""

    def __init__(
        self, answer: Answer, start: str, given: dict[str, object], reader: Reader
    ) -> None:
        self.answer, self.start, self.given, self.reader = answer, start, given, reader

    def lines(self) -> tuple[str, ...]:
        """Return all that stands behind the first lines."""
        answer, reader = self.answer, self.reader
        of = sections.subjects(answer)
        assumed = sections.assumed_list(answer)
        parts = (
            sections.sight_rows(answer, of, reader),
            *(self._block(label, block) for label, block in of),
            self._why_the_load(),
            sections.ladder(answer, reader).forms[0],
            self._trade(),
            self._changes(),
            self._steps(),
            self._why(),
            self._doubts(),
            ("NOT TOLD, SO TAKEN AS", *assumed) if assumed else (),
            tuple(
                line
                for one in warned.warnings(answer, reader, full=True)
                for line in entry("NOTE", measures.sentence(one))
            ),
            sections.cautions(answer).forms[0],
        )
        return tuple(line for part in parts if part for line in ("", *part))

    def _why_the_load(self) -> tuple[str, ...]:
        bench = self.answer.at_the_bench
        if bench is None or not cause_words.told(bench.causes):
            return ()
        return entry(
            "WHY THE SHOT", f"against the tip in hand: {cause_words.one_line(bench.causes)}"
        )

    def _block(self, label: str, block: Block) -> tuple[str, ...]:
        tip, handled, loaded, case = block.tip, block.handling, block.load, self.answer.case
        under = handled.time_under
        rows = [
            (
                "tip",
                f"{names.stock(tip)}, {self.reader.length(tip.showing_mm)} showing, {tip.wet_mm:g} "
                f"mm wet, {tip.glued_mm:g} mm glued in, {tip.coats} coats",
            ),
            ("paint", names.paint(tip.bands, tip.showing_mm)),
            ("rides", readings.ride(block)),
            ("under", f"{under:.1%} of the time" if under >= 5e-4 else "hardly any of the time"),
            (
                "hidden",
                f"{handled.hidden_mm:.0f} mm by the nearer ripples, "
                f"{handled.hidden_high_mm:.0f} mm by the highest",
            ),
            (
                "sinks",
                f"{readings.force(case, handled.sink_force_g).words}; dragged right under with its "
                f"top dry, {grams(handled.sink_force_high_g)}; "
                f"{handled.stiffness_g_per_mm:.2g} g for each mm",
            ),
            ("bites", f"{readings.shows(case, block)}; {readings.small_dip(block)}"),
            ("stands", readings.stands(block)),
            ("shot", f"{readings.load(block)}; {doing.shot(block)} ({loaded.change_g:+.2f} g)"),
            ("limits", "; ".join(map(telling.failure, block.fails)) or "all kept"),
        ]
        return (label.upper(), *(line for name, said in rows for line in entry(f"  {name}", said)))

    def _trade(self) -> tuple[str, ...]:
        def row(point: TradePoint) -> tuple[str, ...]:
            mark = "advised" if point.chosen else "passes" if point.passes else ""
            return (
                f"{point.diameter_mm:g} mm",
                self.reader.length(point.showing_mm),
                level(point.level),
                grams(point.sink_force_g),
                measures.margin(point.ride_margin),
                mark,
            )

        points = self.answer.trade_off
        if not points:
            return ()
        top = ("thick", "showing", "level", "sinks at", "rides", "")
        rows = [row(point) for point in points if point.of == "longer"]
        thick = [row(point) for point in points if point.of == "thicker"]
        return (
            "WHAT EACH QUARTER INCH, AND EACH HALF MILLIMETRE, GAINS AND COSTS",
            *table([top, *rows]),
            *((table([top, *thick])) if thick else ()),
        )

    def _command(self, options: dict[str, str]) -> tuple[str, ...]:
        return command(self.start, self.given, options) if options else ()

    def _changes(self) -> tuple[str, ...]:
        lines = ["WHAT CAN BE DONE, LEAST TROUBLE FIRST, AND THE COMMAND THAT SHOWS IT"]
        for change in self.answer.changes:
            enough = "enough" if change.block.passes else "not enough"
            seen = change.block.visibility
            lines += hanging(
                f"- {doing.change(change, self.reader)}: {seen.grade} ({level(seen.level)}), "
                f"{enough}; {doing.undo(change)}"
            )
            lines += self._command(change.options)
        return tuple(lines)

    def _steps(self) -> tuple[str, ...]:
        lines = ["NEXT STEP UP: THE LEAST TIP FOR EACH GRADE"]
        for step in self.answer.next_step:
            lines += hanging(f"- {step.grade}: {readings.step(self.answer.case, step)}")
            lines += self._command(step.options)
        return tuple(lines)

    def _why(self) -> tuple[str, ...]:
        lines = ["WHY"]
        for reason in self.answer.reasons:
            lines += hanging(f"- {telling.reason(reason, self.answer.case, self.reader)}")
            lines += self._command(reason.options if isinstance(reason, Turns) else {})
        return tuple(lines)

    def _doubts(self) -> tuple[str, ...]:
        lines = [
            line
            for one in self.answer.doubts
            for line in entry(f"  x {one.spread:.2f}", f"{one.kind}: {telling.doubt(one)}")
        ]
        title = "DOUBTS, AND HOW MANY TIMES WIDER EACH MAKES THE RANGE OF THE LEVEL"
        return (title, *lines) if lines else ()
