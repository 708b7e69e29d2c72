"""What the commands that make files share: where to write, and how far the work has come."""

import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from tipsight.commands.parsing import one_of
from tipsight.errors import Mistake, Mistakes

PATIENCE_S = 2.0
"""Work that takes longer says how far it has come."""


F = TypeVar("F", bound=Callable[..., Any])


def output(default: str) -> Callable[[F], F]:
    """Give a command the option that names the file to write."""
    says = f"the file to write; {default} if not told"
    return click.option("-o", "--out", default=default, metavar="FILE", help=says)


paper_size = click.option(
    "--paper", type=one_of(("a4", "letter")), default="a4", metavar="SIZE", help="a4 or letter"
)


def write(name: str, data: bytes, what: str) -> str:
    """Write a file, and return the line that says so; ``what`` tells what it is."""
    try:
        Path(name).write_bytes(data)
    except (OSError, ValueError) as error:
        reasons: dict[type[Exception], str] = {
            FileNotFoundError: "there is no such folder",
            IsADirectoryError: "this is a folder; name a file",
            NotADirectoryError: "there is no such folder",
            PermissionError: "you may not write there",
        }
        why = reasons.get(type(error), "it cannot be written there")
        raise Mistakes([Mistake("--out", name, why, "-o tip.pdf")]) from None
    return f"{name}: {what}\n"


def progress(what: str) -> Callable[[int, int], None]:
    """Return what tells on stderr how much of a long work is done, after two silent seconds."""
    begun, told = time.monotonic(), [0.0]

    def tell(done: int, of: int) -> None:
        now = time.monotonic()
        if now - begun < PATIENCE_S or (now - told[0] < PATIENCE_S and done < of):
            return
        told[0] = now
        end = "\n" if done == of else ""
        if sys.stderr.isatty():
            sys.stderr.write(f"\r{done} of {of} {what}{end}")
        else:
            sys.stderr.write(f"{done} of {of} {what}\n")
        sys.stderr.flush()

    return tell
