"""Items as a person types them: as text, and as the options of a command."""

import shlex
from collections.abc import Mapping

from tipsight.inputs.items import ITEMS, Item
from tipsight.inputs.question import Value, check_items
from tipsight.inputs.values import typed


def as_arguments(options: Mapping[str, Value | None]) -> list[str]:
    """Return options as the arguments of a command, for one that is run without a shell.

    A value of None takes an item back; ``Mistakes`` tells of keys that are no items.

    >>> as_arguments({"showing": 30.0, "behind": ("dark", "bright"), "pen": False, "wind": None})
    ['--showing=30 mm', '--behind=dark', '--behind=bright', '--pen=no', '--wind=not told']
    """
    check_items(dict(options))
    return [
        f"{ITEMS[key].option}={text}"
        for key, value in options.items()
        for text in as_said(ITEMS[key], value)
    ]


def as_line(options: Mapping[str, Value | None]) -> str:
    """Return options as a person types them into a shell.

    >>> as_line({"showing": "30 mm", "stock": "cane"})
    "--showing='30 mm' --stock=cane"
    """
    quoted = []
    for argument in as_arguments(options):
        option, _, text = argument.partition("=")
        quoted.append(f"{option}={shlex.quote(text)}")
    return " ".join(quoted)


def as_said(item: Item, value: Value | None) -> tuple[str, ...]:
    """Return a value as texts, one for each piece of a list.

    >>> as_said(ITEMS["behind"], ("dark", "bright")), as_said(ITEMS["pen"], True)
    (('dark', 'bright'), ('yes',))
    """
    return value if isinstance(value, tuple) else (as_text(item, value),)


def as_text(item: Item, value: Value | None) -> str:
    """Return a value as a person would type it, to read back as the same value.

    >>> as_text(ITEMS["showing"], 20), as_text(ITEMS["age"], 60), as_text(ITEMS["pen"], None)
    ('20 mm', '60', 'not told')
    """
    if value is None:
        return "not told"
    bare = isinstance(value, float | int) and not isinstance(value, bool)
    unit = f" {item.unit}" if bare and item.kind in ("mm", "temperature") else ""
    return f"{typed(value)}{unit}"
