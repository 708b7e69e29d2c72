"""The water's own colour: light that comes back from inside it."""

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.scene.spectra import WAVELENGTHS_NM


def luminance_factor(name: str) -> float:
    """Return how bright the body of a water of water_colours.csv is, seen straight down [-].

    For D65, just above the surface and without its mirroring.
    """
    return float(tables.row("water_colours", name, "water colour")["factor"])


@tables.derived
def spectrum(name: str) -> NDArray[np.float64]:
    """Return the radiance factor π L / E of the body of the water by wavelength [-], shape (97,).

    The shape is that of the row's class on the Forel-Ule scale, from water_spectra.csv; its level
    is `luminance_factor`, seen straight down from above. Seen aslant, what leaves falls as 1 - R.
    """
    table = tables.columns("water_spectra")
    of_class = table[f"fu{tables.row('water_colours', name, 'water colour')['forel_ule']}"]
    shape = np.interp(WAVELENGTHS_NM, table["wavelength_nm"], of_class)
    result = shape * luminance_factor(name)
    result.setflags(write=False)
    return result
