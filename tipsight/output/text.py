"""The answer as text: 80 columns, forty lines, the first six of which say what to do."""

from collections.abc import Mapping

from tipsight.advice.answer import Answer
from tipsight.output import full as fuller
from tipsight.output import notes, sections
from tipsight.output.head import head
from tipsight.output.layout import Section, fitted
from tipsight.sight import grades

MOST = 40
TIGHTEN = (
    *(
        "space",
        *["not told"] * 3,
        "warnings",
        "cautions",
        "not told",
        "bites",
        "sight",
        "not told",
    ),
    *("warnings", "not told", "why", "warnings", "not told", "not told", "warnings", "next"),
    *("doubt", "why", "ladder", *["not told"] * 40, "why", "sight"),
)
"""Which section gives up its fullest form first when the lines do not suffice (judgement)."""


def text(
    answer: Answer,
    full: bool = False,
    start: str = "tipsight advise",
    given: Mapping[str, object] | None = None,
) -> str:
    """Return the answer as a person reads it.

    Parameters
    ----------
    answer : Answer
        The whole answer.
    full : bool
        Whether to say everything that was worked out, however many lines it takes.
    start : str
        How the command was begun; the options that make a change are set behind it.
    given : mapping, optional
        Options that were given already; those that make a change go before them.

    Returns
    -------
    str
        Lines of 80 columns at the most, forty of them unless ``full``.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> said = text(advise(Question(distance="12 yd", behind=["dark"], paint="white")))
    >>> said[:17], len(said.splitlines()) <= 40
    ('NOW, AT THE BANK:', True)
    """
    wanted = grades.grade(answer.case.wanted.level)
    first = head(answer, wanted)
    if full:
        return "\n".join((*first, *fuller.everything(answer, start, dict(given or {})))) + "\n"
    parts = (
        Section("space", (("",), ())),
        sections.sight(answer),
        *sections.handling(answer),
        sections.next_step(answer),
        sections.ladder(answer),
        sections.why(answer),
        notes.doubt(answer),
        notes.not_told(answer),
        notes.warnings(answer),
        notes.cautions(answer),
    )
    return "\n".join((*first, *fitted(parts, MOST - len(first), TIGHTEN))) + "\n"
