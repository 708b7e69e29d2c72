"""Command lines on click: all that is wrong told at once in our words, options listed in groups."""

import importlib
from collections import deque
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import click

from tipsight.errors import Mistake, Mistakes, nearest

HELP = ("-h", "--help")
OWN = "This command"
MOST_ANSWERED = "What most people tell, each with an example"


class Said(click.ParamType):  # type: ignore[type-arg]  # no generic before click 8.5
    """What a reader makes of the text, None if it will not do; and what may be said instead."""

    name = "said"

    def __init__(self, read: Callable[[str], Any], allowed: str, example: str) -> None:
        self.read, self.allowed, self.example = read, allowed, example

    def convert(self, value: Any, param: click.Parameter | None, _: click.Context | None) -> Any:
        """Return what was read."""
        if (found := self.read(f"{value}")) is not None:
            return found
        name = param.opts[-1] if param else ""
        raise Mistakes([Mistake(name, f"{value}", self.allowed, self.example)])


def one_of(words: Sequence[str]) -> Said:
    """Return the reader of one word out of a few."""
    return Said(
        lambda text: text if text in words else None, f"say {' or '.join(words)}", words[0]
    )


def whole(low: int, high: int, example: int) -> Said:
    """Return the reader of a whole number within limits."""
    return Said(
        lambda text: (
            int(text) if text.isdecimal() and len(text) < 10 and low <= int(text) <= high else None
        ),
        f"say a whole number, {low} to {high}",
        f"{example}",
    )


class Alone(click.Argument):
    """What stands on the line without an option before it, with what it is."""

    def __init__(self, declared: Sequence[str], says: str, **attrs: Any) -> None:
        super().__init__(declared, **attrs)
        self.says = says

    def get_help_record(self, _: click.Context) -> tuple[str, str]:
        """Return its line of the help."""
        return f"{self.metavar}", self.says


class Line(click.Command):
    """A command's line: ``-5`` may be a value, the next option never is."""

    def __init__(self, name: str, **attrs: Any) -> None:
        super().__init__(name, **{**attrs, "add_help_option": False})
        says = "these lines; --help all tells every question and its words"
        told = click.Option(HELP, is_flag=True, expose_value=False, help=says)
        self.params.insert(0, told)

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Read the arguments, and refuse those of no use."""
        ctx.allow_extra_args = True
        super().parse_args(ctx, self._looked_over(args))
        if ctx.args:
            why = (
                "this stands alone, with no option before it; "
                "text with a blank in it stands in quotes"
            )
            said = " ".join(ctx.args)
            raise Mistakes([Mistake("command line", said, why, "--distance '40 yd'")])
        return []

    def _looked_over(self, arguments: Sequence[str]) -> list[str]:
        """Return the arguments, with every option known and every value there.

        click takes what stands behind an option for its value, whatever it is: so ``-5`` is read,
        but ``--distance --sun-height 3`` has to be found here. It also stops at the first mistake.
        """
        known = {
            name: param
            for param in self.params
            if isinstance(param, click.Option)
            for name in param.opts
        }
        looked: list[str] = []
        mistakes: list[Mistake] = []
        waiting = deque(arguments)
        while waiting:
            argument = waiting.popleft()
            name, equals, value = argument.partition("=")
            looked += [name, value] if equals and name in known and len(name) == 2 else [argument]
            if argument == "--":
                break
            if not argument.startswith("-") or argument == "-":
                continue
            if name not in known:
                begun = [one for one in known if one.startswith(name)]
                near = nearest(name, begun or known)
                mistakes.append(Mistake(name, "", f"there is no such option{near}", ""))
            elif known[name].is_flag and equals:
                mistakes.append(Mistake(name, "", "it takes no value", name))
            elif not (equals or known[name].is_flag or isinstance(known[name].flag_value, str)):
                if not waiting or waiting[0].startswith("--"):
                    wanted = getattr(known[name].type, "example", known[name].metavar)
                    example = f"{name} {wanted}"
                    mistakes.append(Mistake(name, "", "say a value after it", example))
                else:
                    looked.append(waiting.popleft())
        if mistakes:
            raise Mistakes(mistakes)
        return [*looked, *waiting]

    def format_arguments(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Leave what stands alone to the list of options."""

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List what may be said: the command's own, then the question's section by section.

        For ``ctx.obj`` of "short" it is the questions that most people answer, a line for each.
        """
        groups: dict[str, list[tuple[str, str]]] = {}
        for param in self.params:
            group, record = getattr(param, "group", OWN), param.get_help_record(ctx)
            if group != OWN and ctx.obj == "short":
                group, record = MOST_ANSWERED, getattr(param, "get_short_help", lambda: None)()
            if record is not None:
                groups.setdefault(group, []).append(record)
        for title, records in groups.items():
            with formatter.section(title):
                formatter.write_dl(records)


@dataclass(frozen=True)
class Part:
    """One of several things that a command does, each with a line of its own."""

    where: str
    """Its module in ``commands``, and behind a colon its line there, ``run`` if there is none."""
    says: str


def listed_parts(path: str, parts: Mapping[str, Part]) -> str:
    """Return the help of a command that does several things."""
    width = max(map(len, parts))
    lines = "\n".join(f"  {name:<{width}}  {part.says}" for name, part in parts.items())
    return (
        f"Usage: {path} WHAT [options]\n\n{lines}\n\n'{path} WHAT --help' tells what each takes.\n"
    )


def said(name: str, arguments: Sequence[str]) -> str:
    """Return what a command prints, or its help where that is asked for.

    Parameters
    ----------
    name : str
        The command.
    arguments : sequence of str
        What stands behind it.

    Returns
    -------
    str
        To be printed.

    Raises
    ------
    Mistakes
        With everything that is to be mended on the line, or in the question that it puts.
    """
    module = importlib.import_module(f"tipsight.commands.{name}")
    path = f"tipsight {name}"
    if parts := getattr(module, "PARTS", None):
        if not arguments or arguments[0] in (*HELP, "help"):
            return listed_parts(path, parts)
        part, *arguments = arguments
        if part not in parts:
            allowed = f"say {', '.join(parts)}{nearest(part, parts)}"
            raise Mistakes([Mistake(path, part, allowed, f"{path} {next(iter(parts))}")])
        where, _, called = parts[part].where.partition(":")
        module = importlib.import_module(f"tipsight.commands.{where}")
        name, path = called or "run", f"{path} {part}"
    else:
        name = "run"
    line: Line = getattr(module, name)
    if asked := [n for n, argument in enumerate(arguments) if argument in HELP]:
        form = "all" if "all" in arguments[asked[0] + 1 :][:1] else "short"
        return line.get_help(click.Context(line, info_name=path, obj=form)) + "\n"
    try:
        with line.make_context(path, list(arguments)) as context:
            return str(line.invoke(context))
    except click.MissingParameter as lacking:
        kind = lacking.param.type if lacking.param else None
        if lacking.param is None or not isinstance(kind, Said):
            raise
        example = f"{path} {kind.example}"
        raise Mistakes([Mistake(f"{lacking.param.name}", "", kind.allowed, example)]) from None
    except click.UsageError as wrong:
        raise Mistakes([Mistake("command line", "", wrong.format_message(), "")]) from None
