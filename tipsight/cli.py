"""The command ``tipsight``: finds the command that was named, and says plainly what is wrong."""

import os
import sys
from collections.abc import Sequence
from typing import TextIO

from tipsight.commands import COMMANDS
from tipsight.errors import Mistake, Mistakes, OutOfRange, nearest

_ABOUT = """Which float tip, in which paint, can be kept in view at the end of the trot, and what
it costs in shot."""
_WRONG, _STOPPED = 2, 130


def _commands() -> str:
    width = max(map(len, COMMANDS))
    listed = "\n".join(f"  {name:<{width}}  {says}" for name, says in COMMANDS.items())
    return (
        f"Usage: tipsight COMMAND [QUESTION.toml] [options]\n\n{_ABOUT}\n\nCommands:\n{listed}\n\n"
        "'tipsight COMMAND --help' tells what each takes; with no question behind it a command\n"
        "answers for an invented swim.\n"
    )


def _run(arguments: Sequence[str]) -> str:
    if not arguments or arguments[0] in ("-h", "--help", "help"):
        return _commands()
    name, *rest = arguments
    if name not in COMMANDS:
        allowed = f"the commands are {', '.join(COMMANDS)}{nearest(name, COMMANDS)}"
        raise Mistakes([Mistake("command", name, allowed, "tipsight advise")])
    from tipsight.commands import parsing  # brings click, which the help above does without

    return parsing.said(name, rest)


def _say(text: str, stream: TextIO) -> None:
    """Write ``text``, in plain letters where the terminal has no others."""
    try:
        text.encode(stream.encoding or "utf-8")
    except (UnicodeEncodeError, LookupError):
        from tipsight.output.plain import plain

        text = plain(text)
    stream.write(text)
    stream.flush()


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line.

    Parameters
    ----------
    argv : sequence of str, optional
        What stands behind ``tipsight``; taken from the command line if not given.

    Returns
    -------
    int
        0, or 2 where something is to be mended, which stderr then tells.

    Examples
    --------
    >>> main(["--help"])  # doctest: +ELLIPSIS
    Usage: tipsight COMMAND ...
    """
    arguments = sys.argv[1:] if argv is None else list(argv)
    try:
        _say(_run(arguments), sys.stdout)
    except BrokenPipeError:
        _hush()
    except KeyboardInterrupt:
        return _STOPPED
    except (Mistakes, OutOfRange) as wrong:
        return _complain(str(wrong))
    return 0


def _complain(text: str) -> int:
    try:
        _say(text.rstrip("\n") + "\n", sys.stderr)
    except BrokenPipeError:
        _hush()
    return _WRONG


def _hush() -> None:
    """Let the interpreter close a pipe that no one reads without a word."""
    quiet = os.open(os.devnull, os.O_WRONLY)
    for stream in (sys.stdout, sys.stderr):
        try:
            os.dup2(quiet, stream.fileno())
        except (OSError, ValueError):
            continue
