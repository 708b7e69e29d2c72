"""colour-science for the tests, imported once: ``from colours import colour``.

Where matplotlib is missing, ``import colour`` warns, leaves mocks in ``sys.modules`` under
matplotlib's names, so that a later ``import matplotlib`` would succeed with a fake, and sets
numpy's print style for everybody. All of it is undone here.
"""

import sys
import warnings
from unittest.mock import MagicMock

import numpy as np

__all__ = ["colour"]

_before = set(sys.modules)
with warnings.catch_warnings(), np.printoptions():
    warnings.simplefilter("ignore")
    import colour
for _name in set(sys.modules) - _before:
    if isinstance(sys.modules[_name], MagicMock):
        del sys.modules[_name]
