"""Which float for this swim, in words and for programs."""

from collections.abc import Sequence
from typing import Any

from tipsight.box.floats import Kept
from tipsight.output import doing, float_words, measures, names, readings, telling
from tipsight.output.layout import hanging
from tipsight.output.measures import ANGLER, Reader
from tipsight.season.ranking import Ranked, Ranking
from tipsight.sight import grades


def _floats(count: int) -> str:
    return "one float" if count == 1 else f"{measures.number(count)} floats"


def head(told: Ranking, reader: Reader = ANGLER) -> str:
    """Return for which swim, and how many floats would do."""
    case = told.case
    waters = measures.listed([names.short_water(one) for one in case.stretches])
    swim = f"{reader.far(case.place.range_m)}, {waters}"
    now, more = told.as_they_are, told.with_something_done
    many = f"of {_floats(len(told.floats))}"
    if not now + more:
        return f"{swim}: none {many} would do, whatever is done at the bank."
    done = "with something done at the bank"
    if not now:
        return f"{swim}: {measures.number(more)} {many} would do {done}."
    also = f", {measures.number(more)} more {done}" if more else ""
    return f"{swim}: {measures.number(now)} {many} would do as {'it is' if now == 1 else 'they are'}{also}."


def line(one: Ranked, told: Ranking, reader: Reader = ANGLER) -> str:
    """Return how one float would do, and what is done for it; nothing for one not looked at."""
    if one.change is None:
        return "" if one.level else "cannot be fished here"
    block = one.change.block
    seen = block.visibility
    far = "" if seen.goes_at_m is None else f", goes at about {reader.far(seen.goes_at_m)}"
    rides = measures.rides(block.handling.ride_margin, block.handling.upright)
    done = doing.change(one.change, reader) if one.change.actions else "as it is"
    words = f"{done}: {seen.grade}{far}; {rides}; {readings.sinks(told.case, block)}"
    if one.trouble is None:
        wanted = grades.grade(told.case.wanted.level)
        short = [telling.shortcoming(fail.limit, wanted) for fail in block.broken]
        words += f"; {measures.listed(short)}" if short else ""
    return words


def text(told: Ranking, kept: Sequence[Kept], most: int, reader: Reader = ANGLER) -> str:
    """Return the first floats, each with how it would do."""
    first = head(told, reader)
    lines = [*hanging(f"{first[:1].upper()}{first[1:]}"), ""]
    shown = [one for one in told.floats if one.change is not None][:most]
    for one in shown:
        float_ = kept[one.float_]
        lines += hanging(f"{float_.number}: {float_words.called(float_)}")
        lines += hanging(line(one, told, reader), "  ")
    if rest := len(told.floats) - len(shown):
        lines += ["", *hanging(f"{_floats(rest)[:1].upper()}{_floats(rest)[1:]} more, further down.")]
    return "\n".join(lines) + "\n"


def form(told: Ranking, kept: Sequence[Kept], reader: Reader = ANGLER) -> dict[str, Any]:
    """Return the same for programs: every float, those looked at with what comes of them."""
    return {
        "as_they_are": told.as_they_are,
        "with_something_done": told.with_something_done,
        "floats": [_form(one, told, kept[one.float_], reader) for one in told.floats],
    }


def _form(one: Ranked, told: Ranking, kept: Kept, reader: Reader) -> dict[str, Any]:
    found: dict[str, Any] = {
        "number": kept.number,
        "passes": one.trouble is not None,
        "trouble": one.trouble,
        "level": round(one.level, 3),
        "sink_force_g": round(one.sink_force_g, 4) if one.level else None,
    }
    if one.change is None:
        return found
    block = one.change.block
    return found | {
        "does": [str(action.do) for action in one.change.actions],
        "grade": block.visibility.grade,
        "goes_at_m": block.visibility.goes_at_m,
        "ride_margin": round(block.handling.ride_margin, 3),
        "put_on": [[name, count] for name, count in block.load.step.on],
        "take_off": [[name, count] for name, count in block.load.step.off],
        "options": one.change.options,
        "text": line(one, told, reader),
    }
