"""The swims of the project's own invention, which stand in where no question is put."""

from importlib import resources

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.question import Question
from tipsight.inputs.toml_text import read

SEASON = "season"
"""The file of invented swims of one season, which is no question."""


def names() -> tuple[str, ...]:
    """Return the names of the invented swims.

    Returns
    -------
    tuple of str
        The one that is asked when none is named comes first.

    Examples
    --------
    >>> names()
    ('demo', 'dusk', 'match')
    """
    files = resources.files("tipsight").joinpath("demo").iterdir()
    found = {file.name.removesuffix(".toml") for file in files if file.name.endswith(".toml")}
    return tuple(sorted(found - {SEASON}))


def text(name: str = "demo") -> str:
    """Return the TOML of an invented swim.

    Parameters
    ----------
    name : str
        One of ``names()``.

    Returns
    -------
    str
        As the file stands.

    Raises
    ------
    Mistakes
        If there is none of that name.

    Examples
    --------
    >>> text("demo").startswith("# An invented swim")
    True
    """
    if name not in names():
        allowed = f"the invented swims are {', '.join(names())}{nearest(name, names())}"
        raise Mistakes([Mistake("demo", name, allowed, "demo")])
    return _file(f"{name}.toml")


def season() -> str:
    """Return the TOML of the invented season.

    Returns
    -------
    str
        As the file stands; `tipsight.season.swims.read` makes swims of it.

    Examples
    --------
    >>> season().startswith("# An invented season")
    True
    """
    return _file(f"{SEASON}.toml")


def box() -> str:
    """Return the table (CSV) of the invented box.

    Returns
    -------
    str
        As the file stands; `tipsight.inputs.entry_table.read` makes floats of it.

    Examples
    --------
    >>> box().partition(",")[0]
    'number'
    """
    return _file("box.csv")


def _file(name: str) -> str:
    folder = resources.files("tipsight").joinpath("demo")
    return folder.joinpath(name).read_text(encoding="utf-8")


def question(name: str = "demo") -> Question:
    """Return the question of an invented swim.

    Parameters
    ----------
    name : str
        One of ``names()``.

    Returns
    -------
    Question
        As a person put it.

    Raises
    ------
    Mistakes
        If there is none of that name.

    Examples
    --------
    >>> question().distance
    '40 yd'
    """
    return read(text(name))
