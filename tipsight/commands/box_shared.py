"""What the lines of ``tipsight box`` share: the file, the floats in it, and what is told of one."""

import contextlib
import errno
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from sqlite3 import Connection
from typing import Any

import click

from tipsight.box import floats, keeping
from tipsight.box.floats import Kept
from tipsight.commands.asking import ItemOption
from tipsight.commands.kept import today
from tipsight.commands.parsing import whole
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs import in_a_line
from tipsight.inputs.entry import MOST_ALIKE, OF_FLOAT
from tipsight.inputs.entry_table import HIGHEST
from tipsight.inputs.items import ITEMS, NOT_TOLD
from tipsight.inputs.question import Value

NUMBER = whole(1, HIGHEST, 12)
ALSO = ("alike", "lies", "made", "fished", "note")
"""What is told of a float beside the question's items."""


def box_option() -> click.Option:
    """Return the option that names the file."""
    says = "the file in which your floats are kept; the usual place if not told"
    return click.Option(["--box"], metavar="FILE", help=says)


def json_option() -> click.Option:
    """Return the option that asks for JSON."""
    return click.Option(["--json"], is_flag=True, help="print one JSON object, for programs")


def told_options() -> list[click.Parameter]:
    """Return the options that tell of a float: beside the question's items, and those."""
    also = (
        click.Option(
            ["--alike"], type=whole(1, MOST_ALIKE, 12), metavar="N", help="how many are alike"
        ),
        click.Option(["--lies"], metavar="WHERE", help="where they lie, such as 'tray 3'"),
        click.Option(["--made"], metavar="WHEN", help="a year, a month or a day, such as 2019-03"),
        click.Option(["--fished"], metavar="WHEN", help="when last, told as --made, or today"),
        click.Option(["--note"], metavar="WORDS", help="what else you want to know of them again"),
    )
    return [*also, *(ItemOption(ITEMS[key]) for key in OF_FLOAT)]


def told_by(
    words: tuple[str, ...], values: dict[str, Any]
) -> tuple[dict[str, Value | None], dict[str, Any]]:
    """Return the items that a line and its options tell, and what they tell beside; options win."""
    said = in_a_line.read(" ".join(words))
    items: dict[str, Value | None] = {**said.told}
    items |= {key: values[key] for key in OF_FLOAT if values[key] not in (None, ())}
    beside = said.also | {key: values[key] for key in ALSO if values[key] is not None}
    return items, {key: _beside(value) for key, value in beside.items()}


def _beside(value: Any) -> Any:
    meant = {NOT_TOLD: "", "today": today().isoformat()}
    return meant.get(value.strip().casefold(), value) if isinstance(value, str) else value


def there(box: str | None) -> Path:
    """Return the file of a box that is to be read; Mistakes if there is none."""
    path = keeping.place(box)
    if not path.exists():
        why = "there is no box yet; put a float in first"
        example = 'tipsight box put "quill avon, 6BB, 3 mm quill 20 mm red"'
        raise Mistakes([Mistake("--box", str(path), why, example)])
    return path


def floats_in(box: str | None, *, dropped: bool = False) -> tuple[Kept, ...]:
    """Return the floats of a box."""
    with keeping.opened(there(box)) as one:
        return floats.listed(one, dropped=dropped)


@contextmanager
def to_write(box: str | None) -> Iterator[Connection]:
    """Open a box that is there for a change."""
    with keeping.opened(there(box), "write") as one:
        yield one


def into_place(path: Path, write: Callable[[Path], object]) -> None:
    """Write a file beside its place and then put it there whole; Mistakes if that cannot be."""
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        write(part)
        with part.open("rb") as written:
            os.fsync(written.fileno())
        part.replace(path)
    except (OSError, ValueError) as error:
        full = getattr(error, "errno", 0) in (errno.ENOSPC, errno.EDQUOT)
        why = "the disk is full; nothing was written" if full else "it cannot be written there"
        raise Mistakes([Mistake("file", str(path), why, "floats.csv")]) from None
    finally:
        with contextlib.suppress(OSError, ValueError):
            part.unlink(missing_ok=True)
