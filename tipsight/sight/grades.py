"""The grades of how well a tip is seen, each a name and the level from which it holds."""

from tipsight import tables
from tipsight.checks import within


@tables.derived
def limits() -> tuple[tuple[str, float], ...]:
    """Return each grade of the table and its least visibility level [-], rising.

    Examples
    --------
    >>> [word for word, level in limits() if level == 5]
    ['kept in view']
    """
    grades = [(row["word"], float(row["from_level"])) for row in tables.rows("grades")]
    return tuple(sorted(grades, key=lambda pair: pair[1]))


def grade(level: float) -> str:
    """Return the highest grade that a level reaches; `OutOfRange` for one that is no level.

    Examples
    --------
    >>> grade(0.4), grade(5.0), grade(33.0)
    ('not seen', 'kept in view', 'stands out')
    """
    value = float(within("visibility level", level, 0.0, float("inf")))
    return [word for word, least in limits() if value >= least][-1]


def wanted() -> tuple[float, ...]:
    """Return the levels from which a tip is of use, the least first: what can be asked of it.

    Examples
    --------
    >>> [grade(level) for level in wanted()][1:]
    ['kept in view', 'easy']
    """
    return tuple(level for _, level in limits())[2:5]


def followed() -> float:
    """Return the level from which a person says that he sees a tip [-].

    Examples
    --------
    >>> followed()
    2.4
    """
    return dict(limits())["followed"]
