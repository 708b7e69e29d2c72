"""What the commands of a season share: which swims, whose tables, how many cores."""

import os
from collections.abc import Iterator
from concurrent.futures import Executor, ProcessPoolExecutor
from contextlib import contextmanager
from pathlib import Path

import click

from tipsight.commands.asking import read_file
from tipsight.commands.parsing import whole
from tipsight.season import swims
from tipsight.season.swims import Fished

NAMED = {"season": swims.invented, "ladder": swims.ladder}
"""Seasons that come with the program."""
MOST_CORES = 1024


def season_of(name: str) -> tuple[Fished, ...]:
    """Return the swims of a file, of the invented season or of the ladder."""
    if name in NAMED and not Path(name).exists():
        return NAMED[name]()
    return swims.read(read_file(Path(name)))


def tables_option() -> click.Option:
    """Return the option that names own tables."""
    return click.Option(
        ["--tables"],
        metavar="FOLDER",
        help="a folder of your own tables, instead of the packaged ones",
    )


def cores_option() -> click.Option:
    """Return the option that says on how many cores to work."""
    return click.Option(
        ["--cores"],
        type=whole(1, MOST_CORES, 4),
        metavar="N",
        help="on how many cores to work; all of them if not told",
    )


@contextmanager
def workers(cores: int | None) -> Iterator[Executor | None]:
    """Give processes to work with, or none where one core is all there is."""
    count = cores or os.cpu_count() or 1
    if count == 1:
        yield None
        return
    with ProcessPoolExecutor(count) as pool:
        try:
            yield pool
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise
