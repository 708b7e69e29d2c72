"""Where lead could be lawful at all; never the law itself."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight.checks import within
from tipsight.inputs.case import Shot
from tipsight.load.shot import is_lead

SMALL_LEAD_G = 0.06
"""Lead weights up to this (No 8 and smaller) are outside the British ban."""
LARGE_LEAD_G = 28.35
"""And those above this (one ounce), which no float carries as shot."""


def lead_allowed(mass_g: ArrayLike) -> NDArray[np.bool_]:
    """Tell whether a local code could allow lead weights of these masses in air [g], any shape.

    True up to 0.06 g and above 28.35 g; OutOfRange outside 0 to 1000 g. England: rod fishing byelaws
    as told on the government's page of freshwater rod rules (0.06 g or less, or more than 28.35 g);
    supply: Control of Pollution (Anglers' Lead Weights) Regulations 1986, SI 1986/1992, regulation
    4. The Welsh body words the upper end as "28.35 g or more"; for Scotland nothing was found.
    Fisheries and other countries may ban all lead.

    >>> lead_allowed([0.06, 0.4]).tolist()
    [True, False]
    """
    mass = within("mass of one shot", mass_g, 0.0, 1000.0, "g")
    # The nominal 0.06 g of a No 8 is allowed however it was reckoned.
    return np.asarray((mass <= SMALL_LEAD_G + 1e-9) | (mass > LARGE_LEAD_G))


def usable(shots: Sequence[Shot]) -> tuple[Shot, ...]:
    """Return the shot that may be counted on: any but lead, and lead where it could be allowed.

    >>> [shot.name for shot in usable([Shot("BB", 0.4, "lead"), Shot("No 8", 0.06, "lead")])]
    ['No 8']
    """
    return tuple(s for s in shots if not is_lead(s.metal) or bool(lead_allowed(s.mass_g)))
