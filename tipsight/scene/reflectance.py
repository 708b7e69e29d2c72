"""Smooth spectra of surfaces from the few numbers of a table's row."""

from collections.abc import Mapping
from typing import Any

import numpy as np
import scipy
from numpy.typing import NDArray

from tipsight.checks import within
from tipsight.scene.spectra import WAVELENGTHS_NM

COLUMNS = ("low", "step", "edge_nm", "width_nm", "bump", "centre_nm", "spread_nm")


def smooth(row: Mapping[str, Any]) -> NDArray[np.float64]:
    """Return the reflectance that a row of paints.csv or banks.csv describes [-], shape (97,).

    low + step / (1 + exp(-(λ - edge) / width)) + bump exp(-((λ - centre) / spread)² / 2): an edge
    such as pigments have, and a hump such as leaves have. It must stay within 0 to 1.

    >>> row = dict(zip(COLUMNS, ("0.02", "0.62", "612", "11", "0", "500", "30")))
    >>> smooth(row).round(2)[[20, -1]].tolist()
    [0.02, 0.64]
    """
    low, step, edge, width, bump, centre, spread = (float(row[key]) for key in COLUMNS)
    within("width of a spectrum's edge", [width, spread], 0.1, 500.0, "nm")
    rise = scipy.special.expit((WAVELENGTHS_NM - edge) / width)
    hump = np.exp(-0.5 * ((WAVELENGTHS_NM - centre) / spread) ** 2)
    return within(f"reflectance of {row.get('name', 'a surface')}",
                  low + step * rise + bump * hump, 0.0, 1.0)  # fmt: skip
