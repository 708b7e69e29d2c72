"""The one door to colour-science, which is slow to import and noisy about it."""

import sys
import warnings
from functools import cache
from types import ModuleType
from unittest.mock import MagicMock

import numpy as np


@cache
def colour_science() -> ModuleType:
    """Return the ``colour`` package, imported at the first call (about a second).

    Returns
    -------
    module
        The package.

    Notes
    -----
    Where matplotlib is missing, ``import colour`` warns and leaves mocks in ``sys.modules``
    under matplotlib's names, so that a later ``import matplotlib`` would succeed with a fake. It
    also sets numpy's print style for everybody. All of it is undone here.

    Examples
    --------
    >>> colour_science().__name__
    'colour'
    """
    before = set(sys.modules)
    with warnings.catch_warnings(), np.printoptions():
        warnings.simplefilter("ignore")
        import colour
    for name in set(sys.modules) - before:
        if isinstance(sys.modules[name], MagicMock):
            del sys.modules[name]
    return colour
