"""What a box lacks, what to carry of it, and what of it no swim needs."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Block
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import Cure
from tipsight.advice.limits import BY_LIMIT
from tipsight.advice.swim import swim
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load import budget
from tipsight.load.tips import showing_diameter_mm
from tipsight.season import covering
from tipsight.season.covering import Chosen
from tipsight.season.served import MOST_SHARE, kinds_of
from tipsight.season.swims import Fished
from tipsight.sight import grades

Mask = NDArray[np.bool_]
Array = NDArray[np.float64]


@dataclass(frozen=True)
class Gap:
    """A swim that no float passes, and the float that comes nearest to it."""

    swim: int
    nearest: int | None
    """Which float misses the limits by the least; None where none can be fished there."""
    block: Block | None
    """That float looked at closely, with the limits that it breaks."""
    cures: tuple[Cure, ...]
    """What would mend those, each once."""


@dataclass(frozen=True)
class Heavy:
    """A swim that is served, but only by floats that take more shot than is usual there."""

    swim: int
    lightest: int
    """The one of those that takes the least."""
    shot_share: float
    """That, as a share of the most that is usual."""


@dataclass(frozen=True)
class Carry:
    """The floats to take along."""

    fewest: Chosen
    """The fewest that serve every swim that can be served."""
    least: int
    """No fewer can do; as many as ``fewest`` has where the search came to its end."""
    one_fewer: Chosen
    """What is best with one less."""
    unserved: tuple[int, ...]
    """Swims that no float serves."""
    given_up: tuple[int, ...]
    """Swims that go unserved with one float less."""
    for_: tuple[tuple[int, ...], ...] = ()
    """For each of ``fewest``, the swims that it serves and of those few is sunk most easily in."""


@dataclass(frozen=True)
class Idle:
    """A float that no swim needs."""

    float_: int
    instead: int | None
    """One that serves every swim that it serves, is seen there as well and shows bites as light;
    None where it serves none."""


def gaps(
    floats: Sequence[Question],
    swims: Sequence[Fished],
    serves: Mask,
    short_by: Array,
) -> tuple[Gap, ...]:
    """Return the swims that no float serves, what comes nearest, and what would cure it.

    Parameters
    ----------
    floats, swims : sequences
        Of the box and of the season.
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).
    short_by : numpy.ndarray
        How far each is from it as it is, as `served.Served` has it, shape (F, S).

    Returns
    -------
    tuple of Gap
        The swim that is fished most often first.
    """
    open_ = [s for s in range(len(swims)) if not len(floats) or not serves[:, s].any()]
    found = []
    for s in sorted(open_, key=lambda s: -swims[s].often):
        if not len(floats) or not np.isfinite(short_by[:, s]).any():
            found.append(Gap(s, None, None, ()))
            continue
        n = int(np.argmin(short_by[:, s]))
        here = swim(settle(swims[s].with_float(floats[n])))
        block = close_look(here, here.case.tip)
        cures = dict.fromkeys(c for fail in block.broken for c in BY_LIMIT[fail.limit].cures)
        found.append(Gap(s, n, block, tuple(cures)))
    return tuple(found)


def heavy_only(serves: Mask, shot_share: Array) -> tuple[Heavy, ...]:
    """Return the swims that are served, but by no float that takes as little shot as is usual there.

    Parameters
    ----------
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).
    shot_share : numpy.ndarray
        As `served.Served` has it, shape (F, S).

    Returns
    -------
    tuple of Heavy
        In the order of the season.

    Examples
    --------
    >>> heavy_only(np.array([[True, True], [True, False]]), np.array([[1.8, 1.5], [0.9, 0.8]]))
    (Heavy(swim=1, lightest=0, shot_share=1.5),)
    """
    least = np.where(serves, shot_share, np.inf)
    return tuple(
        Heavy(s, int(np.argmin(least[:, s])), float(least[:, s].min()))
        for s in range(serves.shape[1])
        if serves[:, s].any() and least[:, s].min() > MOST_SHARE
    )


def carry(
    floats: Sequence[Question],
    swims: Sequence[Fished],
    serves: Mask,
    long_s: float = covering.LONG_S,
) -> Carry:
    """Return the fewest floats that serve every swim that can be served, and the best with one less.

    Parameters
    ----------
    floats, swims : sequences
        Of the box, and of the day or the season.
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).
    long_s : float
        When to break off a search [s].

    Returns
    -------
    Carry
        Both, exact where the searches came to their ends; of choices as few the one whose floats
        are sunk most easily.
    """
    weight, force = np.array([one.often for one in swims]), _forces_g(floats)
    fewest, least = covering.fewest(serves, weight, long_s, force)
    one_fewer = covering.most(serves, weight, len(fewest.which) - 1, long_s)
    can = serves.any(axis=0) if len(serves) else np.zeros(len(swims), dtype=bool)
    still = serves[list(one_fewer.which)].any(axis=0) if one_fewer.which else np.zeros_like(can)
    taken = list(fewest.which)
    sinks = np.where(serves[taken], force[taken, None], np.inf) if taken else np.zeros((0, can.size))
    use = [np.flatnonzero(can & (np.argmin(sinks, axis=0) == n)) for n in range(len(taken))]
    return Carry(
        fewest,
        least,
        one_fewer,
        tuple(int(s) for s in np.flatnonzero(~can)),
        tuple(int(s) for s in np.flatnonzero(can & ~still)),
        tuple(tuple(int(s) for s in each) for each in use),
    )


def idle(
    floats: Sequence[Question],
    serves: Mask,
    level: Array | None = None,
    shot_share: Array | None = None,
) -> tuple[Idle, ...]:
    """Return the floats that no swim needs: another is as good in all that they serve.

    As good is: serves it too, is seen there in the same grade or a better one, is not heavy for it
    where the other is not, and is sunk as easily.

    Parameters
    ----------
    floats : sequence of Question
        The box.
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).
    level : numpy.ndarray, optional
        At which each is seen in each swim, shape (F, S); without it sight is not compared.
    shot_share : numpy.ndarray, optional
        As `served.Served` has it, shape (F, S); without it loads are not compared.

    Returns
    -------
    tuple of Idle
        In the order of the box; of floats that are as good the first is no idler.

    Examples
    --------
    >>> short, long = Question(showing="10 mm"), Question(showing="30 mm")
    >>> serves = np.array([[True, False], [True, True]])
    >>> idle([long, short], serves), idle([short, long], serves)
    ((Idle(float_=0, instead=1),), ())
    >>> idle([long, short], serves, np.array([[12.0, 1.0], [6.0, 6.0]]))
    ()
    """
    edges = [least for _, least in grades.limits()]
    even = np.zeros(serves.shape, dtype=np.intp)
    grade = even if level is None else (level[..., None] >= edges).sum(axis=-1)
    light = even if shot_share is None else (shot_share <= MOST_SHARE).astype(np.intp)
    found = covering.spare(serves, _forces_g(floats), np.stack([grade, light], axis=-1))
    return tuple(Idle(n, other) for n, other in found.items())


def _forces_g(floats: Sequence[Question]) -> Array:
    """Return what sinks each float [gf], shape (F,)."""
    different, _, which = kinds_of(floats)
    tips = [settle(one).tip for one in different]
    each = [float(budget.sink_force_g(showing_diameter_mm(tip), tip.showing_mm)) for tip in tips]
    return np.array(each)[which]
