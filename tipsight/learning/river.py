"""What a note from the river says: the own level there, for each own-eye factor and strength of streaks."""

from dataclasses import replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.sighting import FLOOR, WATER_CONTRAST_DOUBT, blocks_of, counted
from tipsight.advice.swim import Swim, swim
from tipsight.advice.waters import Water
from tipsight.inputs.case import Case
from tipsight.learning.bars import BAR_SD
from tipsight.learning.belief import G, Q, followed, not_seen, went
from tipsight.load.tips import showing_diameter_mm
from tipsight.sight import detect, grades, kernel

Array = NDArray[np.float64]
Saw = Literal["went", "followed", "not seen"]

TELLING_SD = 0.25
"""When a tip on moving water has gone (judgement)."""
WATER_SD = float(np.log(WATER_CONTRAST_DOUBT))
"""The day's own water, drawn anew for each note: it is not learned."""
_NODES_G, _NODES_Q = np.linspace(G[0], G[-1], 13), np.linspace(Q[0], Q[-1], 9)
"""Where the level is worked out; between them its logarithm is straight to .004."""
FARTHER = 1.05
"""Farther off by so much the level is worked out too, for how steep it is."""
SHAPE = (2, _NODES_G.size, _NODES_Q.size)
"""Of what `nodes` returns."""
_LIKELIHOOD = {"went": went, "followed": followed, "not seen": not_seen}


def _levels(here: Swim, water: Water) -> Array:
    """Return ln of the level that counts of the tip in hand on the nodes, shape (G nodes, Q nodes)."""
    eyes, power = np.meshgrid(np.exp(_NODES_G), np.exp(_NODES_Q), indexing="ij")
    tip = here.case.tip
    edges, finishes = blocks_of(here, tip)
    hidden = np.array([here.hidden_mm[here.here], here.hidden_high_mm[here.here]])
    parts = kernel.level_parts(
        water.at(here.here, tuple(power.ravel().tolist()), tuple(eyes.ravel().tolist())),
        diameter_mm=showing_diameter_mm(tip),
        edges_mm=detect.cut(edges, hidden[:, None, None]),
        contrast=water.contrast[finishes, here.here],
    )
    plain, crests = np.hypot(*parts)
    level = np.maximum(counted(plain, crests), FLOOR)
    return np.asarray(np.log(level).reshape(eyes.shape))


def nodes(case: Case, range_m: float) -> Array:
    """Return ln of the level of the tip in hand at a distance and a twentieth beyond, shape `SHAPE`.

    The question's own-eye factor does not count; the worst of the waters behind the tip decides.
    """
    plain = replace(case.angler, own_eye_factor=1.0)
    found = []
    for far in (range_m, FARTHER * range_m):
        there = replace(case, angler=plain, place=replace(case.place, range_m=far))
        here = swim(there)
        found.append(np.min([_levels(here, here.waters[key]) for key in here.judged], axis=0))
    return np.array(found)


def _between(fine: Array, at: Array) -> Array:
    """Return the weights of evenly spread nodes for each point between them, shape (points, nodes)."""
    off = np.abs(fine[:, None] - at) / (at[1] - at[0])
    return np.asarray(np.maximum(1.0 - off, 0.0))


def over(found: Array) -> tuple[Array, float]:
    """Return ln of the own level of the tip in hand over the one at which it goes, and how steep it is.

    Parameters
    ----------
    found : numpy.ndarray
        What `nodes` returned for the whole question of the note.

    Returns
    -------
    numpy.ndarray
        On the grid of ln G and ln k, shape (G, Q). G stands beside age: where the streaks hold a part
        of the noise, it moves the level by less.
    float
        -d ln level / d ln distance there [-].
    """
    fine = _between(G, _NODES_G) @ found[0] @ _between(Q, _NODES_Q).T
    middle = _NODES_G.size // 2, _NODES_Q.size // 2
    steep = float((found[0] - found[1])[middle] / np.log(FARTHER))
    return np.asarray(fine - np.log(grades.followed())), steep


def note_sd(steep: float, range_doubt: float) -> float:
    """Return how well one note is known, as a doubt of ln level.

    .25 telling when it went, .20 this tip and the model, ln 1.2 the day's water, and the distance.

    Examples
    --------
    >>> round(note_sd(1.8, 0.10), 2)
    0.41
    """
    return float(np.sqrt(TELLING_SD**2 + BAR_SD**2 + WATER_SD**2 + (steep * range_doubt) ** 2))


def likelihood(saw: Saw, over: Array, sd: float) -> Array:
    """Return how likely a note is for each pair of the grid."""
    return np.asarray(_LIKELIHOOD[saw](over, sd))
