"""What stands at the foot of an answer: doubt, what was not told, warnings and cautions."""

from tipsight.advice.answer import Answer
from tipsight.output.layout import Section, entry, hanging


def doubt(answer: Answer) -> Section:
    """Return the biggest doubt.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    if not answer.doubts:
        return Section("doubt", ((),))
    said = answer.doubts[0].words
    return Section("doubt", (entry("MOST UNSURE", said), entry("MOST UNSURE", said, 1)))


def not_told(answer: Answer) -> Section:
    """Return what was not told, and what was taken for it.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
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
    """Return what the answer has to warn of.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    said = [one for one in answer.warnings if one != why_nothing(answer)]
    if not said:
        return Section("warnings", ((),))
    said = [f"{one[0].upper()}{one[1:].rstrip('.')}." for one in said]
    each = tuple(line for one in said for line in entry("NOTE", one))
    run_on = f"NOTES  {' '.join(said)}"
    forms = [hanging(run_on, most=most) for most in (None, 4, 3, 2)]
    return Section("warnings", (each, *forms))


def why_nothing(answer: Answer) -> str:
    """Return the warning that says why nothing passes; empty when something does.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    str
        Which limit stands in the way, by how much, and what would cure it.
    """
    if answer.at_the_bench is not None:
        return ""
    found = [one for one in answer.warnings if one.startswith("nothing passes")]
    return (found or list(answer.warnings) or ["nothing that you have passes"])[0]


def cautions(answer: Answer) -> Section:
    """Return the cautions, each with what brings it up.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    Section
        In fuller and shorter form.
    """
    long = tuple(
        line for one in answer.cautions for line in entry("CARE", f"{one.words} [{one.trigger}]")
    )
    run_on = " ".join(f"{one.words} [{one.trigger}]" for one in answer.cautions)
    return Section("cautions", (long, hanging(f"CARE  {run_on}") if run_on else ()))


def assumed_list(answer: Answer) -> tuple[str, ...]:
    """Return everything that was not told, one a line.

    Parameters
    ----------
    answer : Answer
        The whole answer.

    Returns
    -------
    tuple of str
        Lines of 80 columns at the most.
    """
    return tuple(
        line
        for one in answer.assumed
        for line in hanging(f"{one.item.replace('_', ' ')}: {one.taken}", "  ")
    )
