"""Tips: what they weigh and how thick they are with their paint."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.inputs.case import Stock, Tip

Array = NDArray[np.float64]
SLEEVE_MM = 1.0
"""How much thicker a slip-on sleeve makes the showing part; judgement."""
SLEEVE_G_PER_MM = 0.002
"""What a sleeve weighs for each millimetre showing; judgement."""
LIGHT_STICK_HOLDER_G = 0.1
"""What holds a light stick on a tip; from memory."""


@tables.derived
def coat(name: str) -> tuple[float, float]:
    """Return thickness [mm] and density [kg/m3] of one dry coat of coats.csv.

    >>> coat("varnish")
    (0.03, 1100.0)
    """
    row = tables.row("coats", name, "coat")
    return row["thickness_um"] * 1e-3, row["density_kg_m3"]


def painted_diameter_mm(diameter_mm: ArrayLike, coats: ArrayLike) -> Array:
    """Return the diameter of tip stock with its paint [mm].

    Stock of 0.3 to 30 mm and 0 to 20 coats, white and clear ones included; they broadcast. Raises
    OutOfRange for others.

    >>> round(float(painted_diameter_mm(3.0, 2)), 3)
    3.12
    """
    bare = within("tip diameter", diameter_mm, 0.3, 30.0, "mm")
    return bare + 2.0 * within("coats on the tip", coats, 0.0, 20.0) * coat("tip coat")[0]


def showing_diameter_mm(tip: Tip) -> float:
    """Return the diameter of a tip's showing part, its paint and any sleeve included [mm].

    Examples
    --------
    >>> round(showing_diameter_mm(Tip(Stock("quill", 3.0), 20.0, coats=3, sleeve=True)), 2)
    4.18
    """
    painted = float(painted_diameter_mm(tip.stock.diameter_mm, tip.coats))
    return painted + (SLEEVE_MM if tip.sleeve else 0.0)


def stock_mass_g_per_mm(stocks: Sequence[Stock]) -> Array:
    """Return what a millimetre of bare stock weighs [g/mm], shape (stocks,).

    >>> from tipsight.load import materials
    >>> float(stock_mass_g_per_mm([materials.stock("thin tube", 5.0)])[0].round(5))
    0.00742
    """
    outside, bore, density = np.array(
        [(s.diameter_mm, s.bore_mm, s.density_kg_m3) for s in stocks]
    ).T
    return np.asarray(np.pi / 4.0 * (outside**2 - bore**2) * density * 1e-6)


def coat_mass_g_per_mm(diameter_mm: ArrayLike, coats: ArrayLike) -> Array:
    """Return what the paint on a millimetre of tip weighs [g/mm]; stock [mm] and coats broadcast.

    >>> round(float(coat_mass_g_per_mm(5.0, 3)), 5)
    0.00173
    """
    painted = painted_diameter_mm(diameter_mm, coats)
    ring_mm2 = np.pi / 4.0 * (painted**2 - np.asarray(diameter_mm, dtype=float) ** 2)
    return np.asarray(ring_mm2 * coat("tip coat")[1] * 1e-6)


@tables.derived
def light_stick_g(size: str) -> float:
    """Return what a light stick of words.csv weighs with its holder; nothing for none [g]."""
    words = tables.rows("words")
    stick_g = next(
        float(word["value"])
        for word in words
        if (word["item"], word["word"]) == ("light_stick_on", size)
    )
    return stick_g + LIGHT_STICK_HOLDER_G if stick_g else 0.0


def aloft_g(tip: Tip) -> float:
    """Return what a tip carries above the water besides itself, a sleeve, a light stick [g]."""
    sleeve_g = SLEEVE_G_PER_MM * tip.showing_mm if tip.sleeve else 0.0
    return sleeve_g + light_stick_g(tip.light_stick)


def tip_mass_g(tip: Tip) -> float:
    """Return what a tip weighs in air: glued part, paint, and what it carries included [g].

    Paint goes on the part outside the body.

    >>> from tipsight.load import materials
    >>> round(tip_mass_g(Tip(materials.stock("solid", 3.0), 20.0, 10.0, 5.0, coats=0)), 4)
    0.2598
    """
    outside_mm = tip.showing_mm + tip.wet_mm
    bare = float(stock_mass_g_per_mm([tip.stock])[0]) * (outside_mm + tip.glued_mm)
    paint = float(coat_mass_g_per_mm(tip.stock.diameter_mm, tip.coats)) * outside_mm
    return bare + paint + aloft_g(tip)
