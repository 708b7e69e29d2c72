"""The swims of the project's own invention, which stand in where no question is put."""

from importlib import resources

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs.question import Question
from tipsight.inputs.toml_text import read


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
    return tuple(
        sorted(file.name.removesuffix(".toml") for file in files if file.name.endswith(".toml"))
    )


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
    return (
        resources.files("tipsight")
        .joinpath("demo")
        .joinpath(f"{name}.toml")
        .read_text(encoding="utf-8")
    )


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
