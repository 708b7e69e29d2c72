"""The command ``tipsight``: finds the command that was named, and says plainly what is wrong."""

import argparse
import difflib
import importlib
import os
import re
import sys
from collections.abc import Callable, Sequence
from typing import NoReturn, TextIO

from tipsight.errors import Mistake, Mistakes, OutOfRange

COMMANDS = {
    "advise": "what to do now at the bank, what to fit at the bench, and why",
    "shot": "the bench's load job alone: shot to each band, shot left, shot list",
    "page": "the same answer by tapping, in a browser on this machine",
    "sheet": "the bench sheet: tip and float at true size, coats, shot to each band (PDF)",
    "card": "cards for the lid of the box, shotting or bank, and one for the wall (PDF)",
    "view": "the view from the bank, now and as advised (PNG), or a drawing (SVG)",
    "pocket": "all the answers of one float in one file for the phone (HTML)",
}
"""Each command with what it does; its module in ``tipsight.commands`` has the same name."""
_ABOUT = """Which float tip, in which paint, can be kept in view at the end of the trot, and what
it costs in shot."""
_WRONG, _STOPPED = 2, 130


class Parser(argparse.ArgumentParser):
    """A parser that raises what is wrong, in words, instead of leaving."""

    def error(self, message: str) -> NoReturn:
        """Raise the parser's complaint as a mistake that reads well.

        Parameters
        ----------
        message : str
            As argparse puts it.

        Raises
        ------
        Mistakes
            Always.
        """
        raise Mistakes([_reworded(message)])


def _reworded(message: str) -> Mistake:
    said = re.fullmatch(r"argument ([^:]+): (.*)", message, re.DOTALL)
    if not said:
        return Mistake("command line", "", message, "")
    option, what = said[1].split("/")[-1], said[2]
    if what.startswith("expected"):
        return Mistake(option, "", "say a value after it", f"{option} ...; see --help")
    if what.startswith("ignored explicit argument"):
        return Mistake(option, "", "it takes no value", option)
    if what.startswith("not allowed with"):
        other = what.split()[-1]
        return Mistake(
            option, "", f"it does not go together with {other}; leave one of them out", option
        )
    return Mistake(option, "", what, "")


def _near(said: str, words: Sequence[str]) -> str:
    near = difflib.get_close_matches(said, words, n=1, cutoff=0.6)
    return f"; did you mean {near[0]}?" if near else ""


def _commands() -> str:
    width = max(map(len, COMMANDS))
    listed = "\n".join(f"  {name:<{width}}  {says}" for name, says in COMMANDS.items())
    return (
        f"usage: tipsight COMMAND [QUESTION.toml] [options]\n\n{_ABOUT}\n\ncommands:\n{listed}\n\n"
        "'tipsight COMMAND --help' tells what each takes; with nothing behind it a command\n"
        "answers for an invented swim.\n"
    )


def _options(parser: argparse.ArgumentParser) -> dict[str, bool]:
    """Return every option of a parser, and whether it takes a value."""
    return {
        name: action.nargs != 0
        for action in parser._actions  # argparse tells its options nowhere else
        for name in action.option_strings
    }


def _joined(arguments: Sequence[str], takes_value: dict[str, bool]) -> list[str]:
    """Return arguments with each value set to its option, so that ``--sun-height -5`` is read."""
    joined: list[str] = []
    waiting = iter(arguments)
    for argument in waiting:
        if takes_value.get(argument):
            value = next(waiting, None)
            if value is None:
                joined.append(argument)
            elif value.startswith("--"):
                joined += [argument, *_joined([value, *waiting], takes_value)]
            else:
                joined.append(f"{argument}={value}")
        else:
            joined.append(argument)
    return joined


def _parsed(
    command: str, add_options: Callable[[argparse.ArgumentParser], None], arguments: Sequence[str]
) -> argparse.Namespace:
    parser = Parser(
        prog=f"tipsight {command}",
        usage=f"tipsight {command} [QUESTION.toml] [options]",
        description=f"{COMMANDS[command][0].upper()}{COMMANDS[command][1:]}.",
        allow_abbrev=False,
    )
    add_options(parser)
    known = _options(parser)
    arguments = _joined(arguments, known)
    strange = [
        a for a in arguments if a.startswith("-") and a != "-" and a.partition("=")[0] not in known
    ]
    if strange:
        raise Mistakes(
            [
                Mistake(name, "", f"there is no such option{_near(name, list(known))}", "")
                for name in (argument.partition("=")[0] for argument in strange)
            ]
        )
    given, beyond = parser.parse_known_args(arguments)
    if beyond:
        said = " ".join(beyond)
        raise Mistakes(
            [
                Mistake(
                    "command line",
                    said,
                    "this stands alone, with no option before it; "
                    "text with a blank in it stands in quotes",
                    "--distance '40 yd'",
                )
            ]
        )
    return given


def _run(arguments: Sequence[str]) -> str:
    if not arguments or arguments[0] in ("-h", "--help", "help"):
        return _commands()
    command, *rest = arguments
    if command not in COMMANDS:
        allowed = f"the commands are {', '.join(COMMANDS)}{_near(command, list(COMMANDS))}"
        raise Mistakes([Mistake("command", command, allowed, "tipsight advise")])
    module = importlib.import_module(f"tipsight.commands.{command}")
    said: str = module.run(_parsed(command, module.add_options, rest))
    return said


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
    usage: tipsight COMMAND ...
    """
    arguments = sys.argv[1:] if argv is None else list(argv)
    try:
        _say(_run(arguments), sys.stdout)
    except SystemExit as leaving:  # argparse leaves after printing its help
        return int(leaving.code or 0)
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
