"""Plain words for how well a tip is seen."""

from tipsight import tables
from tipsight.checks import within


@tables.derived
def limits() -> tuple[tuple[str, float], ...]:
    """Return each word and the level from which it holds, rising.

    Returns
    -------
    tuple of (str, float)
        Word and least visibility level [-].

    Examples
    --------
    >>> [word for word, level in limits() if level == 5]
    ['kept in view']
    """
    return tuple(
        sorted(
            ((row["word"], float(row["from_level"])) for row in tables.rows("grades")),
            key=lambda pair: pair[1],
        )
    )


def grade(level: float) -> str:
    """Return the word for a visibility level.

    Parameters
    ----------
    level : float
        Visibility level [-], 0 or more.

    Returns
    -------
    str
        The word of `limits` that holds from the highest level reached.

    Raises
    ------
    OutOfRange
        If the level is negative or not a number.

    Examples
    --------
    >>> grade(0.4), grade(5.0), grade(33.0)
    ('not seen', 'kept in view', 'stands out')
    """
    value = float(within("visibility level", level, 0.0, float("inf")))
    return [word for word, least in limits() if value >= least][-1]
