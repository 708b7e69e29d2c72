"""``tipsight box take-in`` and ``write-out``: the box as a table that any spreadsheet opens."""

import os
import sys
from pathlib import Path

import click

from tipsight.box import keeping, taking
from tipsight.box.taking import Twice, Twin
from tipsight.commands.box_shared import box_option, floats_in, into_place
from tipsight.commands.kept import today
from tipsight.commands.parsing import Alone, Line, one_of
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import entry_table

WAYS: dict[str, Twice] = {"skip": "skip", "more": "more", "change": "change", "own": "own"}
EXAMPLE = "tipsight box take-in floats.csv"


def _bytes(name: str) -> bytes:
    try:
        return Path(name).read_bytes()
    except (OSError, ValueError) as error:
        reasons: dict[type[Exception], str] = {
            FileNotFoundError: "there is no such file",
            IsADirectoryError: "this is a folder, not a file",
        }
        why = reasons.get(type(error), "this file cannot be read")
        raise Mistakes([Mistake("file", name, why, EXAMPLE)]) from None


def _take_in(file: str, good_rows: bool, twice: str | None, box: str | None) -> str:
    """Take a table in, all of it or nothing, and return what became of its rows."""
    from tipsight.output import float_words

    read = entry_table.read(_bytes(file))
    if read.mistakes and not good_rows:
        raise Mistakes(read.mistakes)
    found = floats_in(box) if keeping.place(box).exists() else ()
    again = [one for one in taking.twins(found, read.rows) if not one.same]
    way = WAYS[twice] if twice else _asked(again) if again else "skip"
    with keeping.opened(keeping.place(box), "write") as one:
        taken = taking.take_in(one, read.rows, today(), way)
    return float_words.taken(taken, read.mistakes)


def _asked(again: list[Twin]) -> Twice:
    """Ask what is to be done with rows that are there already; Mistakes where nobody can answer."""
    from tipsight.output import float_words

    if sys.stdin.isatty():
        click.echo(float_words.again(again), err=True)
        said = ""
        try:
            while said not in WAYS:
                said = click.prompt(" or ".join(WAYS), err=True).strip().casefold()
        except click.Abort:
            raise Mistakes(
                [Mistake("take-in", "", "it was broken off; nothing was taken in", "")]
            ) from None
        return WAYS[said]
    rows = [Mistake(f"row {one.row.at}", "", float_words.of_twin(one), "") for one in again]
    why = "nothing was taken in; say what is done with these rows, skip, more, change or own"
    raise Mistakes([*rows, Mistake("--twice", "", why, f"{EXAMPLE} --twice skip")])


def _write_out(file: str, over: bool, box: str | None) -> str:
    """Write the box as a table."""
    from tipsight.output import float_words

    none_yet = box is None and not keeping.place(box).exists()
    found = () if none_yet else floats_in(box)
    path = Path(file)
    place = keeping.place(box)
    if path.exists() and place.exists() and path.samefile(place):
        why = "this is the box itself; name another file"
        raise Mistakes([Mistake("file", file, why, "tipsight box write-out floats.csv")])
    if os.path.lexists(path) and not over:
        why = "this file is there already; name another, or say --over"
        raise Mistakes([Mistake("file", file, why, "tipsight box write-out floats.csv")])
    text = entry_table.write((kept.number, kept.entry) for kept in found)
    into_place(path, lambda part: part.write_text(text, encoding="utf-8-sig", newline=""))
    return f"{file}: {float_words.how_many(found)}\n"


run = click.command("take-in", Line, help="Take in a table typed in any spreadsheet.")(_take_in)
run.params += [
    Alone(
        ["file"],
        "a table (CSV), a row for each kind of float; 'write-out' makes one, also of an empty box, "
        "with the names of its columns",
        metavar="FILE.csv",
    ),
    click.Option(
        ["--good-rows"], is_flag=True, help="take in the rows that are right, and tell the others"
    ),
    click.Option(
        ["--twice"],
        type=one_of(tuple(WAYS)),
        metavar="WAY",
        help="of rows that tell of a float that is there already: skip them; count them as more of "
        "it; change it to what the row tells; or take them for floats of their own",
    ),
    box_option(),
]
write_out = click.command("write-out", Line, help="Write the box out as a table.")(_write_out)
write_out.params += [
    Alone(["file"], "the table to write (CSV)", metavar="FILE.csv"),
    click.Option(["--over"], is_flag=True, help="write over a file that is there already"),
    box_option(),
]
