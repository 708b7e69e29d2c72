"""Items as a person types them: as text, and as the options of a command."""

import shlex
from collections.abc import Mapping

from tipsight.inputs.items import ITEMS, Item
from tipsight.inputs.kinds import Value
from tipsight.inputs.question import check_items
from tipsight.inputs.reading import written


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
