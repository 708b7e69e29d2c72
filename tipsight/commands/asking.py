"""What the commands share: which question is put, from a file, an invented swim, and options."""

import functools
import shlex
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import click

from tipsight import tables as own_tables
from tipsight.commands import COMMANDS
from tipsight.commands.parsing import Alone, Line
from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs import demo, toml_text
from tipsight.inputs.items import ITEMS, SECTIONS, Item
from tipsight.inputs.learnt import ME, NOBODY
from tipsight.inputs.question import Question, Value
from tipsight.inputs.spoken import ANGLERS


@dataclass(frozen=True)
class Given:
    """What the line gives of the question."""

    file: str | None
    tables: str | None
    told: dict[str, Value]
    """Items as they were typed."""


@dataclass(frozen=True)
class Asked:
    """A question, and how to ask it again."""

    question: Question
    start: str
    """How the command was begun."""
    given: dict[str, Value]
    """Options that stood behind it."""
    untold: bool = False
    """Whether the line told nothing of a question, so that an invented swim stands for it."""
    box: str | None = None
    """The file of readings that was named."""
    who: str | None = None
    """Whose eyes, where it was told."""
    water: str | None = None
    """Which of the own waters."""

    def keep(self) -> None:
        """Keep the question as the last one asked, where there is a box; none is made for it.

        The invented swim that stands for no question is nobody's.
        """
        from tipsight.box.keeping import place

        if not self.untold and place(self.box).exists():
            from tipsight.commands.kept import keep_asked

            keep_asked(self.question, self.box)


class ItemOption(click.Option):
    """An item of the question as an option, in the words of the items."""

    def __init__(self, item: Item) -> None:
        self.item, self.group = item, SECTIONS[item.section]
        super().__init__(
            [item.option, item.key],
            multiple=item.repeats,
            metavar=shlex.quote(item.example),
            help=_help(item),
        )

    def get_short_help(self) -> tuple[str, str] | None:
        """Return its line of the short help, None for what most people leave alone."""
        if self.item.folded:
            return None
        return self.item.option, f"{self.item.question} {shlex.quote(self.item.example)}"


def _help(item: Item) -> str:
    allowed = ANGLERS.allowed(item)
    sentences = [item.question, item.hint, f"{allowed[0].upper()}{allowed[1:]}"]
    if item.default:
        sentences.append(f"Not told, {ANGLERS.taken(item, item.default)} is taken")
    return " ".join(text if text.endswith("?") else f"{text}." for text in sentences if text)


class Learned(click.Option):
    """What is said of the box in which one's own readings are; only the long help lists it."""

    group = "What you told of your eyes and waters"




def who_option() -> Learned:
    """Return the option that says whose eyes count."""
    return Learned(["--who"], metavar="NAME", help=f"whose eyes, if not {ME!r}; nobody: of no one")


KEPT = (
    Learned(
        ["--box"],
        metavar="FILE",
        help="the file in which your readings are kept; the usual place if not told",
    ),
    who_option(),
)
"""What is said of the box by every command that needs it."""


def command(function: Callable[..., str]) -> Line:
    """Make a command of a function that takes what is ``Asked``, and the values of its options.

    What was learned of the one who asks goes with his question.
    """
    water = Learned(
        ["--water"], metavar="NAME", help="which of your waters it is, so that its boils count"
    )
    return _line(function, (*KEPT, water), learned)


def recording(function: Callable[..., str]) -> Line:
    """Make a command that keeps a reading: its question is as it was told, with nothing learned."""
    return _line(function, (), lambda put, **_: put)


def learned(put: Asked, *, box: str | None, who: str | None, water: str | None) -> Asked:
    """Return a question with what was learned of the one who asks and of his water."""
    from tipsight.box.keeping import place

    if not place(box).exists() and box is None and water is None and who in (None, NOBODY):
        return put
    from tipsight.commands.kept import learnt

    known = learnt(put.question, box, who, water)
    question = replace(put.question, learnt=known)
    return replace(put, box=box, who=who, water=water, question=question)


def _line(
    function: Callable[..., str],
    also: Sequence[click.Parameter],
    learned: Callable[..., Asked],
) -> Line:
    @functools.wraps(function)
    def run(file: str | None, tables: str | None, **values: Any) -> str:
        typed = {key: values.pop(key) for key in ITEMS}
        # An option that may be given several times comes as an empty tuple when it was not.
        told = {key: value for key, value in typed.items() if value not in (None, ())}
        given = Given(file, tables, told)
        start = click.get_current_context().command_path
        own = {str(one.name): values.pop(str(one.name)) for one in also}
        with own_tables.using(tables):
            return function(learned(asked(given, start), **own), **values)

    name = function.__module__.rpartition(".")[2]
    says = COMMANDS.get(name) or f"{function.__doc__}"
    question: list[click.Parameter] = [
        Alone(
            ["file"],
            "a file that holds the question, or the name of an invented swim "
            f"({', '.join(demo.names())}); options stand on top of it; with neither, demo is "
            "answered",
            metavar="[QUESTION.toml]",
            required=False,
        ),
        click.Option(
            ["--tables"],
            metavar="FOLDER",
            help="a folder of your own tables, instead of the packaged ones",
        ),
        *also,
        *map(ItemOption, ITEMS.values()),
    ]
    says = f"{says[0].upper()}{says[1:].rstrip('.')}."
    line = click.command(name, Line, help=says)(run)
    line.params += question  # behind what the command itself takes, of which a card stands first
    return line


def read_file(path: Path) -> str:
    """Return the text of a file, or say why it cannot be read."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise Mistakes(
            [Mistake("file", str(path), "this is not a text file in UTF-8", "mine.toml")]
        ) from None
    except (OSError, ValueError) as error:
        reasons: dict[type[Exception], str] = {
            FileNotFoundError: "there is no such file",
            IsADirectoryError: "this is a folder, not a file",
            PermissionError: "you may not read this file",
        }
        why = reasons.get(type(error), "this file cannot be read")
        hint = nearest(str(path), demo.names()) if isinstance(error, FileNotFoundError) else ""
        raise Mistakes([Mistake("file", str(path), why + hint, "mine.toml")]) from None


def named_question(name: str) -> Question:
    """Return the question of a file, or of an invented swim."""
    if name in demo.names() and not Path(name).exists():
        return demo.question(name)
    return toml_text.read(read_file(Path(name)))


def asked(given: Given, start: str) -> Asked:
    """Return the question that the line puts, its options on top of its file."""
    if given.tables is not None:
        start += f" --tables {shlex.quote(given.tables)}"
    if given.file is None and given.told:
        return Asked(Question().with_options(**given.told), start, given.told)
    name = "demo" if given.file is None else given.file
    question = named_question(name).with_options(**given.told)
    untold = given.file is None
    return Asked(question, f"{start} {shlex.quote(name)}", given.told, untold)
