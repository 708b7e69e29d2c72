"""What the commands that make files share: where to write, and how far the work has come."""

import argparse
import sys
import time
from collections.abc import Callable
from pathlib import Path

from tipsight.errors import Mistake, Mistakes

PATIENCE_S = 2.0
"""Work that takes longer says how far it has come."""


def add_output(parser: argparse.ArgumentParser, default: str) -> None:
    """Add the option that names the file to write.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    default : str
        The name that is taken.
    """
    parser.add_argument(
        "-o",
        "--out",
        default=default,
        metavar="FILE",
        help=f"the file to write; {default} if not told",
    )


def write(name: str, data: bytes, what: str) -> str:
    """Write a file, and return what to say of it.

    Parameters
    ----------
    name : str
        Where.
    data : bytes
        All of it.
    what : str
        What it is, for the line that is printed.

    Returns
    -------
    str
        One line.

    Raises
    ------
    Mistakes
        If it cannot be written there.
    """
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
    """Return what tells on stderr how far a long piece of work has come.

    Parameters
    ----------
    what : str
        What is counted.

    Returns
    -------
    callable
        Takes how many are done and of how many; silent for the first two seconds.
    """
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


def one_of(option: str, words: tuple[str, ...]) -> Callable[[str], str]:
    """Return a reader of one word out of a few.

    Parameters
    ----------
    option : str
        What is asked, for nothing but its name.
    words : tuple of str
        What may be said.

    Returns
    -------
    callable
        For argparse.
    """

    def read(text: str) -> str:
        if text in words:
            return text
        raise argparse.ArgumentTypeError(f"{text!r} will not do; say {' or '.join(words)}")

    read.__name__ = option
    return read
