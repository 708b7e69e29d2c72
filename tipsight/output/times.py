"""How times and frequencies are said: what is the water's doing, and what to strike at."""

from tipsight.output.words import QUARTERS

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def seconds(duration_s: float) -> str:
    """Return a short time as one can feel it.

    Parameters
    ----------
    duration_s : float
        Time [s].

    Returns
    -------
    str
        To the half second, and to the quarter below one.

    Examples
    --------
    >>> seconds(0.1), seconds(0.55), seconds(1.1), seconds(2.4)
    ('about ¼ s', 'about ½ s', 'about 1 s', 'about 2½ s')
    """
    quarters = max(1, round(4 * duration_s)) if duration_s < 1 else 2 * round(2 * duration_s)
    whole, quarter = divmod(quarters, 4)
    return f"about {whole or ''}{QUARTERS[quarter]} s"


def rate(per_min: float) -> str:
    """Return how often something happens.

    Parameters
    ----------
    per_min : float
        Times a minute [1/min].

    Returns
    -------
    str
        In words up to ten.

    Examples
    --------
    >>> rate(4.2), rate(0.66), rate(31.0), rate(0.001)
    ('four a minute', 'one in about 2 minutes', '31 a minute', 'hardly ever')
    """
    if per_min < 1 / 60:
        return "hardly ever"
    if per_min < 0.67:
        return f"one in about {1 / per_min:.0f} minutes"
    count = max(1, round(per_min))
    return f"{_NUMBERS[count] if count < len(_NUMBERS) else count} a minute"


def dips(ordinary_dip_s: float | None, dips_per_min: float, rides: bool = True) -> str:
    """Return what to take for the water's own doing, and what to strike at.

    Parameters
    ----------
    ordinary_dip_s : float or None
        Length that nearly all dips stay below [s]; None where the tip never goes under.
    dips_per_min : float
        How often it goes under [1/min].
    rides : bool
        Whether it rides at all; one that does not shows no bite that could be told.

    Returns
    -------
    str
        A piece of a sentence.

    Examples
    --------
    >>> dips(1.1, 4.2)
    'up to about 1 s, four a minute: strike at longer'
    >>> dips(6.0, 17.0, rides=False)
    'up to about 6 s, 17 a minute: too many to tell a bite by'
    >>> dips(None, 0.0)
    'hardly ever: strike at any'
    """
    often = rate(dips_per_min)
    if ordinary_dip_s is None or often == "hardly ever":
        return "hardly ever: strike at any"
    told = "strike at longer" if rides else "too many to tell a bite by"
    return f"up to {seconds(ordinary_dip_s)}, {often}: {told}"
