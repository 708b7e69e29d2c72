"""Small loads and changes of load, said in shot by name."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from tipsight.checks import within
from tipsight.inputs.case import Shot
from tipsight.load.shot import is_olivette

PIECE_MG, KIND_MG = 3.0, 3.0
"""How far off the mark a shot less, and a size less, may put what is said; judgement."""
MANY = 9
"""More pieces than this nobody counts on to a line (judgement)."""
_NUMBERS = ["no", "a", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"]
Counted = tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Change:
    """Shot to put on and take off."""

    on: Counted
    off: Counted
    change_g: float
    """What it comes to, in air; negative when shot comes off."""
    left_g: float
    """What was asked for and no shot makes up, in air."""
    words: str


def counted_words(counted: Counted) -> str:
    """Return shot by name, as one says it.

    Parameters
    ----------
    counted : tuple of (str, int)
        Names and how many of each.

    Returns
    -------
    str
        For example 'a BB and two No 8'.

    Examples
    --------
    >>> counted_words((("AAA", 2), ("BB", 1), ("No 8", 1)))
    'two AAA, a BB and a No 8'
    """
    said = []
    for name, count in counted:
        number = _NUMBERS[count] if count < len(_NUMBERS) else str(count)
        if count == 1 and name in ("SSG", "AB"):
            number = "an"
        said.append(f"{number} {name}")
    if len(said) < 2:
        return "".join(said) or "nothing"
    return f"{', '.join(said[:-1])} and {said[-1]}"


def nearest(mass_g: float, shots: Sequence[Shot]) -> Counted:
    """Return the few shot that come nearest to a mass: one size, or two; the heaviest beside them.

    Parameters
    ----------
    mass_g : float
        In air [g]; 0 to 200.
    shots : sequence of Shot
        Sizes to be had; olivettes are left aside.

    Returns
    -------
    tuple of (str, int)
        Heaviest first; empty when half the lightest is already too much.

    Raises
    ------
    OutOfRange
        If the mass is negative or above 200 g.

    Notes
    -----
    Least of error [mg] + 3 a piece + 3 a size, over up to three of a second, lighter size. Where
    that makes more than nine, all but one or two of the heaviest are put on first.

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> nearest(0.59, sizes())
    (('AB', 1),)
    >>> nearest(7.76, sizes())
    (('SSG', 3), ('BB', 7), ('No 5', 1))
    """
    mass = float(within("mass", mass_g, 0.0, 200.0, "g"))
    useful = [s for s in shots if s.count != 0 and not is_olivette(s.name)]
    useful.sort(key=lambda shot: -shot.mass_g)
    if not useful or mass < 0.5 * useful[-1].mass_g:
        return ()
    each = np.array([shot.mass_g for shot in useful])
    limit = np.array([10**6 if shot.count is None else shot.count for shot in useful])
    about = np.maximum(np.floor(mass / each), 1.0)
    first = about[:, np.newaxis] + np.arange(-3.0, 2.0)
    second = np.arange(4.0)
    total = (each[:, np.newaxis] * first)[:, :, np.newaxis, np.newaxis] + each[
        :, np.newaxis
    ] * second
    pieces = first[:, :, np.newaxis, np.newaxis] + second
    cost = np.abs(total - mass) * 1e3 + PIECE_MG * pieces + KIND_MG * (second > 0.0)
    lighter = each[np.newaxis, :] < each[:, np.newaxis]
    bad = (first < 1.0) | (first > limit[:, np.newaxis])
    cost = cost + np.where(bad, np.inf, 0.0)[:, :, np.newaxis, np.newaxis]
    ruled_out = (second > 0.0) & (
        ~lighter[:, np.newaxis, :, np.newaxis] | (second > limit[:, np.newaxis])
    )
    cost = np.where(ruled_out, np.inf, cost)
    i, a, j, b = np.unravel_index(int(np.argmin(cost)), cost.shape)
    if not np.isfinite(cost[i, a, j, b]):
        return ()
    found = [(useful[i].name, int(first[i, a]))]
    if b:
        found.append((useful[j].name, int(b)))
    return _fewer(mass, useful, tuple(found))


def _fewer(mass_g: float, useful: Sequence[Shot], found: Counted) -> Counted:
    """Return fewer pieces with the heaviest put on first, where one size makes too many."""
    top, pieces = useful[0], sum(count for _, count in found)
    spare = int(mass_g / top.mass_g) - 1
    if pieces <= MANY or spare < 1 or (top.count is not None and top.count <= spare):
        return found
    both = {top.name: spare}
    for name, number in nearest(mass_g - spare * top.mass_g, useful):
        both[name] = both.get(name, 0) + number
    return tuple(both.items()) if sum(both.values()) < pieces else found


def in_words(mass_g: float, shots: Sequence[Shot]) -> str:
    """Return a small mass said in shot.

    Parameters
    ----------
    mass_g : float
        In air [g]; a force in water is divided by the metal's `wet_share` first.
    shots : sequence of Shot
        Sizes to say it in.

    Returns
    -------
    str
        For example 'a BB and a No 8'.

    Raises
    ------
    OutOfRange
        If the mass is negative or above 200 g.

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> in_words(0.46, sizes()), in_words(0.003, sizes())
    ('a BB and a No 8', 'less than a No 13')
    """
    counted = nearest(mass_g, shots)
    if counted:
        return counted_words(counted)
    useful = [shot for shot in shots if shot.count != 0 and not is_olivette(shot.name)]
    if not useful or mass_g == 0.0:
        return "nothing" if mass_g == 0.0 else f"{mass_g:.2f} g"
    return f"less than a {min(useful, key=lambda shot: shot.mass_g).name}"


def change(
    from_g: float,
    to_g: float,
    shots: Sequence[Shot],
    on_line: Mapping[str, int] | None = None,
) -> Change:
    """Return the least shot on or off that gets from one load to another.

    Parameters
    ----------
    from_g, to_g : float
        Loads in air [g]; 0 to 200.
    shots : sequence of Shot
        Sizes in the box.
    on_line : mapping of str to int or None
        What is on the line now; then only that comes off, and one may be swapped for another.

    Returns
    -------
    Change
        What to put on and take off, and the words for it.

    Raises
    ------
    OutOfRange
        If a load is negative or above 200 g.

    Examples
    --------
    >>> from tipsight.load.shot import sizes
    >>> change(2.4, 2.34, sizes()).words
    'take off a No 8'
    >>> change(2.4, 2.4, sizes()).words
    'leave the shot as it is'
    """
    start, end = (float(within("load", load, 0.0, 200.0, "g")) for load in (from_g, to_g))
    masses = {shot.name: shot.mass_g for shot in shots}
    wanted = end - start
    sources = shots
    if wanted < 0.0 and on_line is not None:
        sources = [
            Shot(shot.name, shot.mass_g, shot.metal, on_line.get(shot.name, 0)) for shot in shots
        ]
    counted = nearest(abs(wanted), sources)
    on, off = (counted, ()) if wanted > 0.0 else ((), counted)
    best = _cost(on, off, wanted, masses)
    if on_line is not None:
        for out, number in on_line.items():
            if out not in masses or number < 1:
                continue
            for shot in shots:
                swap = ((shot.name, 1),), ((out, 1),)
                if shot.count != 0 and shot.name != out and _cost(*swap, wanted, masses) < best:
                    (on, off), best = swap, _cost(*swap, wanted, masses)
    change_g = _mass(on, masses) - _mass(off, masses)
    words = " and ".join(
        f"{verb} {counted_words(what)}"
        for verb, what in (("take off", off), ("put on", on))
        if what
    )
    return Change(on, off, change_g, wanted - change_g, words or "leave the shot as it is")


def _mass(counted: Counted, masses: Mapping[str, float]) -> float:
    return sum(masses[name] * count for name, count in counted)


def _cost(on: Counted, off: Counted, wanted_g: float, masses: Mapping[str, float]) -> float:
    error_mg = abs(wanted_g - _mass(on, masses) + _mass(off, masses)) * 1e3
    pieces = sum(count for _, count in (*on, *off))
    return error_mg + PIECE_MG * pieces + KIND_MG * max(len(on) + len(off) - 1, 0)
