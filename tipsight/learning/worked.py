"""What was worked out of a reading, kept by all that it hangs on: it may be thrown away at any time."""

import json
from collections.abc import Callable, MutableMapping
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tipsight import tables

Array = NDArray[np.float64]
Worked = MutableMapping[str, Array]

HERE: Worked = {}
"""Of this process, where nothing else is lent."""
_SUMS = (
    "advice", "afloat", "data", "inputs", "learning", "load", "scene", "sight", "tables", "nature.py",
    "units.py",
)  # fmt: skip
"""What a level and a ride hang on, beside the question."""


@cache
def sums() -> str:
    """Return a mark of the sums of this tipsight: another one as soon as any of them is altered."""
    package, mark = Path(__file__).parents[1], sha256()
    for name in _SUMS:
        place = package / name
        for path in sorted(place.glob("*.*")) if place.is_dir() else [place]:
            mark.update(path.name.encode() + path.read_bytes())
    return mark.hexdigest()[:16]


def once(
    worked: Worked | None, make: Callable[[], Array], shape: tuple[int, ...], *hangs_on: Any
) -> Array:
    """Return what ``make`` gives, from what was worked out before if it is there.

    Parameters
    ----------
    worked : mutable mapping, optional
        What was worked out before, and where this is put; that of the process if None.
    make : callable
        Works it out.
    shape : tuple of int
        Of what it gives; what is kept otherwise is worked out anew.
    *hangs_on
        All that it hangs on, as JSON has it; own tables and the sums themselves are counted in.

    Examples
    --------
    >>> kept = {}
    >>> [once(kept, lambda: np.full(2, n), (2,), "a reading").tolist() for n in (1.0, 3.0)]
    [[1.0, 1.0], [1.0, 1.0]]
    """
    known = HERE if worked is None else worked
    on = json.dumps([sums(), repr(tables.in_use()), *hangs_on], sort_keys=True, ensure_ascii=False)
    key = sha256(on.encode("utf-8", "surrogatepass")).hexdigest()
    found = known.get(key)
    if found is None or found.size != np.prod(shape) or not np.isfinite(found).all():
        found = known[key] = make()
    return found.reshape(shape)
