"""The water's own colour: light that comes back from inside it."""

import numpy as np
from numpy.typing import NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.scene.spectra import WAVELENGTHS_NM


def water_names() -> tuple[str, ...]:
    """Return the words for the water's colour, in the order of the table.

    Returns
    -------
    tuple of str
        The names in water_colours.csv.

    Examples
    --------
    >>> water_names()[0]
    'clear'
    """
    return tuple(row["name"] for row in tables.rows("water_colours"))


def luminance_factor(name: str) -> float:
    """Return how bright the body of the water is, seen straight down.

    Parameters
    ----------
    name : str
        A name of water_colours.csv.

    Returns
    -------
    float
        Luminance factor for D65, just above the surface and without its mirroring [-].

    Raises
    ------
    Mistakes
        If no row has that name.
    OutOfRange
        If the row's factor is not within 0 to 1.

    Examples
    --------
    >>> luminance_factor("tea") < luminance_factor("chocolate")
    True
    """
    return float(
        within(
            "luminance factor of water",
            float(tables.row("water_colours", name, "water colour")["factor"]),
            0.0,
            1.0,
        )
    )


@tables.derived
def spectrum(name: str) -> NDArray[np.float64]:
    """Return the radiance factor of the body of the water by wavelength.

    Parameters
    ----------
    name : str
        A name of water_colours.csv.

    Returns
    -------
    numpy.ndarray
        Radiance factor [-], shape (97,): π L / E, seen straight down from above.

    Raises
    ------
    Mistakes
        If no row has that name.

    Notes
    -----
    The shape is that of the row's class on the Forel-Ule scale, from water_spectra.csv; its
    level is `luminance_factor`. Seen aslant, what leaves the water falls as 1 - R.

    Examples
    --------
    >>> spectrum("clear").shape
    (97,)
    """
    table = tables.columns("water_spectra")
    of_class = table[f"fu{tables.row('water_colours', name, 'water colour')['forel_ule']}"]
    shape = np.interp(WAVELENGTHS_NM, table["wavelength_nm"], of_class)
    result = shape * luminance_factor(name)
    result.setflags(write=False)
    return result
