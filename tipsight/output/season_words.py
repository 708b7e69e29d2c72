"""A season in words: what a box lacks, what to make, what to carry, what may stay at home."""

from collections.abc import Sequence

from tipsight.advice.facts import Cure
from tipsight.inputs.options import as_line
from tipsight.inputs.question import Question
from tipsight.output import names, telling
from tipsight.output.layout import hanging
from tipsight.output.measures import ANGLER, Reader, figures, grams, listed, number
from tipsight.season.covering import Chosen
from tipsight.season.jobs import Carry, Gap, Heavy, Idle
from tipsight.season.making import Candidate, Makings
from tipsight.season.swims import Fished
from tipsight.sight import grades

MOST_NAMED = 6
"""So many swims are named in one sentence; the rest are counted."""
MOST_GAPS = 40


def _text(lines: Sequence[str]) -> str:
    return "\n".join(lines) + "\n"


def swims_named(which: Sequence[int], swims: Sequence[Fished]) -> str:
    """Return swims by name, the most fished first, a long list cut."""
    order = sorted(which, key=lambda s: -swims[s].often)
    said = [swims[s].name for s in order[:MOST_NAMED]]
    if len(order) > MOST_NAMED:
        return f"{'; '.join(said)}; and {len(order) - MOST_NAMED} more"
    return "; ".join(said)


def _swims(count: int) -> str:
    return "one swim" if count == 1 else f"{number(count)} swims"


def _floats(count: int) -> str:
    return "one float" if count == 1 else f"{number(count)} floats"


def made(one: Candidate, reader: Reader = ANGLER) -> str:
    """Return a float to make in one line: body, tip and paint."""
    return (
        f"{one.pattern} {one.size}: {names.stick_with_bore(one.stock)}, "
        f"{reader.showing(one.showing_mm)} showing, {names.paint(one.bands, one.showing_mm)}; "
        f"{grams(one.sink_force_g)} sinks it"
    )


def bench_sheet(question: Question) -> str:
    """Return the command that opens a float to make on its bench sheet.

    Examples
    --------
    >>> bench_sheet(Question(pattern="quill avon", diameter=3.0))
    "tipsight sheet --pattern='quill avon' --diameter='3 mm'"
    """
    return f"tipsight sheet {as_line(question.told())}"


def gaps_text(
    gaps: Sequence[Gap],
    swims: Sequence[Fished],
    called: Sequence[str],
    heavy: Sequence[Heavy] = (),
    reader: Reader = ANGLER,
) -> str:
    """Return which swims no float serves, what is nearest and what would cure it; and heavy floats."""
    return _text([*_open(gaps, swims, called, reader), *_heavy(heavy, swims, called)])


def _heavy(heavy: Sequence[Heavy], swims: Sequence[Fished], called: Sequence[str]) -> list[str]:
    """Return the swims that only floats serve which take more shot than is usual there."""
    if not heavy:
        return []
    head = (
        f"{_swims(len(heavy))} served only by floats that take more shot than such depth and pace "
        "usually want; the lightest of them:"
    )
    lines = ["", *hanging(f"{head[0].upper()}{head[1:]}")]
    by_float: dict[int, list[Heavy]] = {}
    for one in heavy:
        by_float.setdefault(one.lightest, []).append(one)
    for lightest, each in by_float.items():
        lines += hanging(f"{called[lightest]}:", "  ")
        lines += [
            line
            for one in each
            for line in hanging(f"{swims[one.swim].name}: {_times(one.shot_share)}", "    ")
        ]
    return lines


def _times(share: float) -> str:
    """Return how many times as much something is, as far as that matters."""
    return f"{share:.1f} times as much" if share >= 1.05 else "barely more"


def _open(
    gaps: Sequence[Gap], swims: Sequence[Fished], called: Sequence[str], reader: Reader
) -> list[str]:
    if not gaps:
        return list(hanging(f"Every one of the {_swims(len(swims))} is served by some float."))
    times = sum(swims[gap.swim].often for gap in gaps)
    head = f"{_swims(len(gaps))} of {len(swims)} that no float passes, {times:g} times a season together."
    lines = [*hanging(f"{head[0].upper()}{head[1:]}"), ""]
    alike: dict[tuple[int | None, str, tuple[Cure, ...]], list[Gap]] = {}
    for gap in gaps[:MOST_GAPS]:
        broken = gap.block.broken if gap.block else ()
        short = [telling.shortcoming(fail.limit, _wanted(fail.allowed)) for fail in broken]
        alike.setdefault((gap.nearest, listed(short), gap.cures), []).append(gap)
    for (nearest, short_of, cures), each in alike.items():
        if nearest is None:
            lines += hanging("Nothing in the box can be fished in:")
        else:
            said = telling.cures([c for c in cures if c is not Cure.COME_CLOSER], None, reader)
            what = f"{said[:1].upper()}{said[1:]}" + (":" if said else "")
            nearer = Cure.COME_CLOSER in cures
            if nearer:
                what = f"{what[:-1]}, or come in to the yards told:" if said else "Come in to:"
            lines += hanging(f"{called[nearest][0].upper()}{called[nearest][1:]}, is nearest: {short_of}.")
            lines += hanging(what, "  ")
        lines += [line for gap in each for line in hanging(_gap_line(gap, swims, reader), "    ")]
    if len(gaps) > MOST_GAPS:
        lines += ["", f"and {len(gaps) - MOST_GAPS} more"]
    return lines


def _gap_line(gap: Gap, swims: Sequence[Fished], reader: Reader) -> str:
    fished = swims[gap.swim]
    near = gap.block.visibility.goes_at_m if gap.block and Cure.COME_CLOSER in gap.cures else None
    far = f": {reader.far(near)}" if near else ""
    return f"{fished.name}, {fished.often:g} times{far}"


def _wanted(level: float) -> str:
    """Return the grade that was wanted; for other limits nothing reads it."""
    return grades.grade(level)


def _unproved(chosen: Chosen) -> str:
    """Return how much better a choice might be whose search was broken off."""
    if chosen.could_be <= chosen.worth * (1 + 1e-9):
        return ""
    more = figures(chosen.could_be - chosen.worth)
    return f" (the search was broken off: up to {more} more may be had)"


def makings_text(told: Makings, swims: Sequence[Fished], reader: Reader = ANGLER) -> str:
    """Return what to make, for each number, and where a next one no longer pays."""
    if not told.open:
        return _text(hanging("Nothing needs making: every swim is served by some float."))
    times = sum(swims[s].often for s in told.open)
    lines = list(
        hanging(
            f"{len(told.open)} of {len(swims)} swims are open, {times:g} times a season together; "
            f"{told.tried:,} floats that could be made were weighed against each other, each only "
            "where it takes no more shot than depth and pace usually want."
        )
    )
    lines.append("")
    full = [one for one in told.by_count if len(one.floats) == one.count]
    for worth in full:
        lines += hanging(
            f"{_floats(worth.count)[0].upper()}{_floats(worth.count)[1:]}: "
            f"{worth.chosen.worth:g} of {times:g} times{_unproved(worth.chosen)}"
        )
        for one, closes, adds in zip(worth.floats, worth.closes, worth.chosen.adds, strict=True):
            lines += hanging(made(one, reader), "  ")
            lines += hanging(f"adds {adds:g} times: {swims_named(closes, swims)}", "  ")
    if len(full) < len(told.by_count):
        lines += ["", *hanging(_no_more(len(full)))]
    if told.never:
        lines += ["", *hanging(f"No float of all these serves: {swims_named(told.never, swims)}.")]
    if full:
        lines += ["", *hanging("Each on its bench sheet:")]
        lines += [f"  {bench_sheet(one.question())}" for one in full[-1].floats]
    return _text(lines)


def _no_more(count: int) -> str:
    if not count:
        return "Nothing that could be made from this stock serves any of them."
    return f"More than {_floats(count)} adds nothing."


def carry_text(told: Carry, swims: Sequence[Fished], called: Sequence[str]) -> str:
    """Return what to take along, and what one float less gives up."""
    if not told.fewest.which:
        return _text(hanging("None of these floats serves any of these swims as it is."))
    can = len(swims) - len(told.unserved)
    count = len(told.fewest.which)
    served = "every swim" if not told.unserved else f"the {_swims(can)} that can be served"
    proof = (
        ""
        if told.least >= count
        else f" (the search was broken off: {told.least} might do, no fewer)"
    )
    lines = [*hanging(f"{_floats(count)[0].upper()}{_floats(count)[1:]} for {served}{proof}:")]
    for n, use in zip(told.fewest.which, told.for_, strict=True):
        lines += [*hanging(called[n], "  "), *hanging(f"for: {swims_named(use, swims)}", "    ")]
    if told.one_fewer.which:
        lines += ["", *hanging(f"With one fewer, {_floats(len(told.one_fewer.which))}:")]
        lines += [line for n in told.one_fewer.which for line in hanging(called[n], "  ")]
        lines += hanging(f"gives up: {swims_named(told.given_up, swims)}", "  ")
    if told.unserved:
        lines += ["", *hanging(f"No float serves: {swims_named(told.unserved, swims)}.")]
    return _text(lines)


def idle_text(told: Sequence[Idle], swims: Sequence[Fished], called: Sequence[str]) -> str:
    """Return the floats that no swim needs, said gently."""
    if not told:
        return _text(hanging("Every float serves some swim that no other covers as well."))
    lines = [
        *hanging(
            f"Going by these {_swims(len(swims))} alone, {_floats(len(told))} could rest. A float "
            "is also a pleasure, and another river may want it."
        ),
        "",
    ]
    by_other: dict[int | None, list[str]] = {}
    for one in told:
        by_other.setdefault(one.instead, []).append(called[one.float_])
    none = by_other.pop(None, [])
    for instead, rest in by_other.items():
        stands_in = called[instead or 0]
        lines += hanging(f"{stands_in[0].upper()}{stands_in[1:]}, is as good in all that these serve:")
        lines += [line for each in rest for line in hanging(each, "  ")]
    if none:
        lines += hanging("Pass none of these swims as they are:")
        lines += [line for each in none for line in hanging(each, "  ")]
    return _text(lines)
