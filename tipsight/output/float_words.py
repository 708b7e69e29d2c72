"""Floats of a box in words, in lines and as JSON."""

import textwrap
import unicodedata
from collections.abc import Collection, Sequence
from datetime import date
from typing import Any

from tipsight.box.floats import Kept
from tipsight.box.taking import Taken, Twin
from tipsight.errors import Mistake
from tipsight.inputs.entry import Entry
from tipsight.inputs.items import ITEMS
from tipsight.output.layout import WIDTH
from tipsight.output.measures import listed, number

_ACTS = {"put": "put in", "change": "changed", "drop": "dropped", "back": "brought back"}
MOST_NOTED = 60
"""Letters of a note in a list; ``show`` tells all of it."""
_TURNS = frozenset(
    ("R", "AL", "AN", "RLE", "RLO", "RLI", "LRE", "LRO", "LRI", "FSI", "PDF", "PDI")
)
"""Letters that are read from the right, and marks that turn others (Unicode Standard Annex 9)."""
_BLANKS = {ord("_"): " "}
_BESIDE = {
    "alike": "how many",
    "lies": "lies in",
    "made": "made",
    "fished": "last fished",
    "note": "note",
}


def float_line(entry: Entry) -> str:
    """Return what floats are called: pattern, load, tip and paint as they were told.

    >>> float_line(Entry({"pattern": "quill avon", "takes": "6BB", "diameter": "3 mm", "stock": "quill",
    ...     "showing": "20 mm"}, alike=12))
    'quill avon, 6BB, 3 mm quill, 20 mm showing; 12 of them'
    """
    told = entry.told
    tip = " ".join(told[key] for key in ("diameter", "stock") if key in told)
    shows = f"{told['showing']} showing" if told.get("showing") else ""
    load = told.get("takes") or told.get("size") or ("of parts" if told.get("parts") else "")
    size = " body" if load and load == told.get("size") else ""
    parts = (told.get("pattern", ""), f"{load}{size}", tip, shows, told.get("paint", ""))
    many = f"; {number(entry.alike)} of them" if entry.alike > 1 else ""
    return ", ".join(part for part in parts if part) + many


def called(kept: Kept) -> str:
    """Return a float's line in a list, with where it lies and its note's beginning."""
    entry = kept.entry
    note = textwrap.shorten(entry.note, MOST_NOTED, placeholder=" ...")
    gone = "dropped" if kept.dropped else ""
    return "; ".join(one for one in (float_line(entry), _own(entry.lies), _own(note), gone) if one)


def _own(text: str) -> str:
    """Return somebody's own words so that they cannot turn what stands beside them (Unicode, UAX 9)."""
    turns = any(unicodedata.bidirectional(letter) in _TURNS for letter in text)
    return f"\u2068{text}\u2069" if turns else text


def table(found: Sequence[Kept], *, searched: bool = False) -> str:
    """Return floats, a line for each, and how many there are."""
    if not found:
        return "No float has all of these words.\n" if searched else "There is no float in it.\n"
    width = max(len(f"{kept.number}") for kept in found)
    lines = [_hung(f"{kept.number:>{width}}  ", called(kept)) for kept in found]
    return "\n".join((*lines, f"{how_many(found)} in all.")) + "\n"


def how_many(found: Sequence[Kept]) -> str:
    """Return how many kinds and how many floats there are, those left out that were dropped."""
    here = [kept.entry.alike for kept in found if not kept.dropped]
    all_of = f"{sum(here)} floats" if sum(here) != 1 else "one float"
    return f"{len(here)} kinds, {all_of}" if len(here) > 1 else all_of


def put(kept: Kept, twins: Sequence[Kept] = ()) -> str:
    """Return what was put in, and which that are in the box already are told just so."""
    said = f"{_told(kept)}{_beside(kept.entry)}"
    if twins:
        which = listed([f"{one.number}" for one in twins])
        more = twins[0].entry.alike + kept.entry.alike
        same = (
            f"told just so before: float {which}. If they are the same, drop this one; "
            f"'tipsight box change {twins[0].number} --alike {more}' says that there are more now."
        )
        said += _hung("  ", same) + "\n"
    return said


def _told(kept: Kept, act: str = "") -> str:
    return _hung("", f"Float {kept.number}{act}: {float_line(kept.entry)}.") + "\n"


def _beside(entry: Entry) -> str:
    told = {key: _own(getattr(entry, key)) for key in ("lies", "made", "fished", "note")}
    lines = (_hung(f"  {_BESIDE[key]}: ", text) for key, text in told.items() if text)
    return "".join(f"{line}\n" for line in lines)


def shown(states: Sequence[Kept]) -> str:
    """Return one float, item by item, and what it was, the newest first."""
    now, entry = states[-1], states[-1].entry
    many = f", {number(entry.alike)} alike" if entry.alike > 1 else ""
    gone = f"; dropped on {_day(now.on)}" if now.dropped else ""
    lines = [f"Float {now.number}{many}{gone}", ""]
    told = {_name(key): text for key, text in _all(entry).items() if key != "alike"}
    width = max(map(len, told))
    lines += [_hung(f"  {key:<{width}}  ", text) for key, text in told.items()]
    lines.append("")
    for before, after in reversed(list(zip([None, *states], states, strict=False))):
        what = _news(before.entry, after.entry) if before and after.act == "change" else []
        lines.append(_hung(f"  {_day(after.on)}  ", "; ".join([_ACTS[after.act], *what])))
    return "\n".join(lines) + "\n"


def changed(before: Kept, after: Kept, also: Collection[str] = ()) -> str:
    """Return what is new about a float, and of ``also``, which nobody told, that it follows."""
    news = "".join(f"{_hung('  ', one)}\n" for one in _news(before.entry, after.entry))
    if also:
        which = listed([_name(key) for key in also])
        news += (
            _hung(
                "  ",
                f"What is new of {which} follows from it; to mend what was told wrongly, "
                "and nothing else, say --told-wrong.",
            )
            + "\n"
        )
    return f"{_told(after)}{news}"


def acted(found: Sequence[Kept]) -> str:
    """Return which floats were dropped or brought back."""
    lines = [_told(kept, f" {_ACTS[kept.act]}") for kept in found]
    if found[0].dropped:
        numbers = " ".join(f"{kept.number}" for kept in found)
        lines.append(f"'tipsight box back {numbers}' brings in again what was dropped.\n")
    return "".join(lines)


def of_twin(twin: Twin) -> str:
    """Return of what a row tells already."""
    return (
        f"it tells of float {twin.kept.number}" if twin.kept else "it tells what a row before does"
    )


def again(twins: Sequence[Twin]) -> str:
    """Return which rows tell of what is there already, and what may be done with them."""
    rows = _all_of("Row", [one.row.at for one in twins])
    return _hung(
        "",
        f"{rows}: told just so already, in the box or in a row before, or with the number of a float "
        "in it. skip: leave them out; more: count them as more of it; change: tell it anew as the "
        "row does; own: take them for floats of their own.",
    )


def _all_of(what: str, numbers: Sequence[int]) -> str:
    return f"{what}{'s' if len(numbers) > 1 else ''} {listed([f'{n}' for n in numbers])}"


def taken(found: Taken, mistakes: Sequence[Mistake] = ()) -> str:
    """Return what became of the rows of a table."""
    said = [f"Taken in: {how_many(found.put)}."]
    for kept, what in ((found.more, "counted as more of it"), (found.changed, "told anew")):
        if kept:
            said.append(f"{_all_of('Float', [one.number for one in kept])}: {what}.")
    if found.same:
        said.append(f"{number(found.same)} as they were.".capitalize())
    if found.skipped:
        said.append(f"Left out: {_all_of('row', [row.at for row in found.skipped])}.")
    if mistakes:
        said.append("Not taken in:")
    return (
        "\n".join([_hung("", one) for one in said] + [_hung("  ", f"{m}") for m in mistakes])
        + "\n"
    )


def _news(before: Entry, after: Entry) -> list[str]:
    was, now = _all(before), _all(after)
    keys = [key for key in (*ITEMS, *_BESIDE) if was.get(key) != now.get(key)]
    none = "not told"
    return [f"{_name(key)}: {now.get(key, none)}, was {was.get(key, none)}" for key in keys]


def _all(entry: Entry) -> dict[str, str]:
    """Return all that is told of floats, by item."""
    beside = {key: _own(f"{getattr(entry, key)}") for key in _BESIDE}
    return {key: text for key, text in {**entry.told, **beside}.items() if text}


def _name(key: str) -> str:
    return _BESIDE.get(key) or key.translate(_BLANKS)


def _hung(first: str, words: str) -> str:
    """Return a line whose next ones stand under the first of its words."""
    room = max(WIDTH - len(first), 20)
    return textwrap.fill(
        words, room + len(first), initial_indent=first, subsequent_indent=" " * len(first)
    )


def _day(day: date) -> str:
    return f"{day:%d.%m.%Y}"


def form(kept: Kept) -> dict[str, Any]:
    """Return a float for programs."""
    entry = kept.entry
    return {
        "number": kept.number,
        "mark": kept.mark,
        "act": kept.act,
        "on": kept.on.isoformat(),
        "told": dict(entry.told),
        **{key: getattr(entry, key) for key in _BESIDE},
    }
