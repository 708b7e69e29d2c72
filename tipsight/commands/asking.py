"""What the commands share: which question is put, from a file, an invented swim, and options."""

import argparse
import shlex
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from tipsight import tables
from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs import demo, options, toml_text
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question


@dataclass(frozen=True)
class Asked:
    """A question, and how to ask it again."""

    question: Question
    start: str
    """How the command was begun."""
    given: dict[str, object]
    """Options that stood behind it."""


def add_question(parser: argparse.ArgumentParser) -> None:
    """Add the question's file, its options, and the folder of own tables.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    parser.add_argument(
        "file",
        nargs="?",
        metavar="QUESTION.toml",
        help="a file that holds the question, or the name of an invented swim "
        f"({', '.join(demo.names())}); options stand on top of it. With neither a file nor "
        "options the invented swim 'demo' is answered",
    )
    parser.add_argument(
        "--tables",
        metavar="FOLDER",
        help="a folder of your own tables, which stand in for the packaged ones",
    )
    options.add_options(parser)


def read_file(path: Path) -> str:
    """Return the text of a file.

    Parameters
    ----------
    path : pathlib.Path
        The file.

    Returns
    -------
    str
        What it holds.

    Raises
    ------
    Mistakes
        If it cannot be read, or is no text.
    """
    try:
        return path.read_text(encoding="utf-8-sig")
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


def asked(given: argparse.Namespace, command: str) -> Asked:
    """Return the question that the command line puts.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.
    command : str
        The command's name.

    Returns
    -------
    Asked
        The invented swim ``demo`` when there is neither a file nor an option.

    Raises
    ------
    Mistakes
        If the file cannot be read or holds no question.
    """
    on_top = options.question_from(given, Question())
    told = _as_given(given)
    start = f"tipsight {command}"
    if given.tables is not None:
        start += f" --tables {shlex.quote(given.tables)}"
    name = given.file if given.file is not None else None if told else "demo"
    if name is None:
        return Asked(on_top, start, told)
    invented = name in demo.names() and not Path(name).exists()
    base = demo.question(name) if invented else toml_text.read(read_file(Path(name)))
    return Asked(options.question_from(given, base), f"{start} {shlex.quote(name)}", told)


def _as_given(given: argparse.Namespace) -> dict[str, object]:
    """Return the items that stand on the command line, as they were typed."""
    typed = {key: getattr(given, key, None) for key in ITEMS}
    return {
        key: tuple(value) if isinstance(value, list) else value
        for key, value in typed.items()
        if value is not None
    }


def with_tables(given: argparse.Namespace, do: Callable[[], str]) -> str:
    """Return what ``do`` returns, worked out with the tables that were named.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.
    do : callable
        What is to be worked out.

    Returns
    -------
    str
        Its text.

    Raises
    ------
    Mistakes
        If there is no such folder, or a table in it cannot be used.
    """
    if given.tables is None:
        return do()
    tables.use_folder(given.tables)
    _check_names(given.tables)
    try:
        return do()
    except Mistakes:
        raise
    except (KeyError, ValueError, TypeError, RuntimeError, StopIteration, OSError) as error:
        why = (
            f"a table in this folder does not serve ({type(error).__name__}: {error}); each needs "
            "the columns and rows of the packaged one that it stands in for"
        )
        raise Mistakes([Mistake("tables", given.tables, why, "a changed copy")]) from error
    finally:
        tables.use_folder(None)


def _check_names(folder: str) -> None:
    """Refuse a folder in which no table, or a table of a strange name, is found."""
    packaged = sorted(path.stem for path in tables.PACKAGED.glob("*.csv"))
    own = sorted(path.stem for path in Path(folder).glob("*.csv"))
    wrong = [
        f"no packaged table is named {name}{nearest(name, packaged)}"
        for name in own
        if name not in packaged
    ]
    if not own:
        wrong = ["there is no table in this folder"]
    if wrong:
        tables.use_folder(None)
        raise Mistakes([Mistake("tables", folder, why, "shot.csv, changed") for why in wrong])
