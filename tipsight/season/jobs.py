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
from tipsight.season.swims import Fished

Mask = NDArray[np.bool_]


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


@dataclass(frozen=True)
class Idle:
    """A float that no swim needs."""

    float_: int
    instead: int | None
    """One that serves every swim that it serves and shows bites as light; None where it serves none."""


def gaps(
    floats: Sequence[Question],
    swims: Sequence[Fished],
    serves: Mask,
    short_by: NDArray[np.float64],
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


def carry(swims: Sequence[Fished], serves: Mask, long_s: float = covering.LONG_S) -> Carry:
    """Return the fewest floats that serve every swim that can be served, and the best with one less.

    Parameters
    ----------
    swims : sequence of Fished
        The day or the season.
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).
    long_s : float
        When to break off a search [s].

    Returns
    -------
    Carry
        Both, exact where the searches came to their ends.
    """
    weight = np.array([one.often for one in swims])
    fewest, least = covering.fewest(serves, weight, long_s)
    one_fewer = covering.most(serves, weight, len(fewest.which) - 1, long_s)
    can = serves.any(axis=0) if len(serves) else np.zeros(len(swims), dtype=bool)
    still = serves[list(one_fewer.which)].any(axis=0) if one_fewer.which else np.zeros_like(can)
    return Carry(
        fewest,
        least,
        one_fewer,
        tuple(int(s) for s in np.flatnonzero(~can)),
        tuple(int(s) for s in np.flatnonzero(can & ~still)),
    )


def idle(floats: Sequence[Question], serves: Mask) -> tuple[Idle, ...]:
    """Return the floats that no swim needs: another serves all that they serve, and is sunk as easily.

    Parameters
    ----------
    floats : sequence of Question
        The box.
    serves : numpy.ndarray
        Which float serves which swim, shape (F, S).

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
    """
    force = np.array([_sink_force_g(one) for one in floats])
    return tuple(Idle(n, other) for n, other in covering.spare(serves, force).items())


def _sink_force_g(float_: Question) -> float:
    tip = settle(float_).tip
    return float(budget.sink_force_g(showing_diameter_mm(tip), tip.showing_mm))
