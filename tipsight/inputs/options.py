"""The question as options of a command: one for each item, in the words of the items."""

import argparse
import shlex
from collections.abc import Mapping

from tipsight.inputs.items import ITEMS, SECTIONS, Item, items_of
from tipsight.inputs.kinds import Value, is_told
from tipsight.inputs.question import Question, check_items
from tipsight.inputs.reading import written


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add one option for each item of the question, grouped by section.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.

    Examples
    --------
    >>> parser = argparse.ArgumentParser()
    >>> add_options(parser)
    >>> parser.parse_args(["--wind-blows", "across"]).wind_blows
    'across'
    """
    for section, title in SECTIONS.items():
        group = parser.add_argument_group(title)
        for item in items_of(section):
            group.add_argument(
                item.option,
                dest=item.key,
                action="append" if item.repeats else "store",
                metavar="..." if item.repeats else item.example.split()[0].rstrip(",;"),
                help=_help(item),
            )


def question_from(namespace: argparse.Namespace, base: Question) -> Question:
    """Return ``base`` with the options that were given on top.

    Parameters
    ----------
    namespace : argparse.Namespace
        What the parser of ``add_options`` read.
    base : Question
        The question underneath.

    Returns
    -------
    Question
        An option with the value ``not told`` takes an item back.

    Examples
    --------
    >>> parser = argparse.ArgumentParser()
    >>> add_options(parser)
    >>> given = parser.parse_args(["--distance=30 yd", "--behind=dark", "--behind=bright"])
    >>> question_from(given, Question(depth="7 ft")).told()
    {'distance': '30 yd', 'depth': '7 ft', 'behind': ('dark', 'bright')}
    """
    changes: dict[str, Value | None] = {}
    for key in ITEMS:
        given = getattr(namespace, key, None)
        if given is not None:
            value = tuple(given) if isinstance(given, list) else given
            alone = value[0] if isinstance(value, tuple) and len(value) == 1 else value
            changes[key] = value if is_told(alone) else None
    return base.with_options(**changes)


def as_arguments(options: Mapping[str, Value | None]) -> list[str]:
    """Return options as the arguments of a command.

    Parameters
    ----------
    options : mapping
        Values by the item's key; None takes an item back.

    Returns
    -------
    list of str
        For a command that is run without a shell.

    Raises
    ------
    Mistakes
        If a key is no item.

    Examples
    --------
    >>> as_arguments({"showing": 30.0, "behind": ("dark", "bright"), "pen": False, "wind": None})
    ['--showing=30 mm', '--behind=dark', '--behind=bright', '--pen=no', '--wind=not told']
    """
    check_items(dict(options))
    return [
        f"{ITEMS[key].option}={text}"
        for key, value in options.items()
        for text in (
            as_said(ITEMS[key], value)
            if isinstance(value, tuple)
            else [as_text(ITEMS[key], value)]
        )
    ]


def as_line(options: Mapping[str, Value | None]) -> str:
    """Return options as a person types them into a shell.

    Parameters
    ----------
    options : mapping
        Values by the item's key.

    Returns
    -------
    str
        Quoted for the shell.

    Examples
    --------
    >>> as_line({"showing": "30 mm", "stock": "cane"})
    "--showing='30 mm' --stock=cane"
    """
    quoted = []
    for argument in as_arguments(options):
        option, _, text = argument.partition("=")
        quoted.append(f"{option}={shlex.quote(text)}")
    return " ".join(quoted)


def as_said(item: Item, value: Value | None) -> tuple[str, ...]:
    """Return a list's value as texts.

    Parameters
    ----------
    item : Item
        The item.
    value : Value or None
        Its value.

    Returns
    -------
    tuple of str
        One text for each piece.

    Examples
    --------
    >>> as_said(ITEMS["behind"], ("dark", "bright"))
    ('dark', 'bright')
    """
    return value if isinstance(value, tuple) else (as_text(item, value),)


def as_text(item: Item, value: Value | None) -> str:
    """Return a value as a person would say it, a bare number with the item's unit.

    Parameters
    ----------
    item : Item
        The item.
    value : Value or None
        Its value.

    Returns
    -------
    str
        What reads back as the same value.

    Examples
    --------
    >>> as_text(ITEMS["distance"], 36.5), as_text(ITEMS["pen"], True), as_text(ITEMS["pen"], None)
    ('36.5 m', 'yes', 'not told')
    """
    if value is None:
        return "not told"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return "; ".join(value)
    if isinstance(value, str):
        return value
    plain = written(value)
    if item.kind in ("acuity", "length", "mm", "speed", "pace", "temperature", "mass", "load"):
        return f"{plain} {item.unit}"
    return plain


def _help(item: Item) -> str:
    sentences = [item.question, item.hint, f"{item.allowed[0].upper()}{item.allowed[1:]}"]
    if item.default:
        sentences.append(f"Not told, {item.default} is taken")
    ended = [text if text.endswith("?") else f"{text}." for text in sentences if text]
    return " ".join(ended).replace("%", "%%")
