"""Shot: what one weighs in air, and what it pulls in water."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.afloat import freshwater
from tipsight.checks import within
from tipsight.inputs.case import Shot
from tipsight.load.materials import unknown


@tables.derived
def _metals() -> dict[str, float]:
    """Return the density of each metal that shot is made of [kg/m3]."""
    return {row["name"]: row["density_kg_m3"] for row in tables.rows("shot_metals")}


def density_kg_m3(metal: str) -> float:
    """Return the density of a metal of shot_metals.csv [kg/m3], or raise Mistakes.

    >>> density_kg_m3("lead")
    11340.0
    """
    if metal not in _metals():
        raise unknown("shot metal", metal, list(_metals()))
    return _metals()[metal]


@tables.derived
def is_lead(metal: str) -> bool:
    """Tell whether the rules on lead weights touch a metal.

    >>> is_lead("tin"), is_lead("lead")
    (False, True)
    """
    return any(row["lead_law"] for row in tables.rows("shot_metals") if row["name"] == metal)


def sizes(metal: str = "tin", *, olivettes: bool = False) -> tuple[Shot, ...]:
    """Return the sizes of shot.csv, as many of each as are wanted, heaviest first; masses in air.

    Raises Mistakes if the metal is in no table.

    >>> [size.name for size in sizes()][:4]
    ['SSG', 'AAA', 'AB', 'BB']
    """
    density_kg_m3(metal)
    found = [
        Shot(row["name"], row["mass_g"], metal)
        for row in tables.rows("shot")
        if olivettes or row["group"] == "shot"
    ]
    return tuple(sorted(found, key=lambda size: -size.mass_g))


@tables.derived
def is_olivette(name: str) -> bool:
    """Tell whether a name of shot.csv is an olivette.

    >>> is_olivette("4 g olivette"), is_olivette("BB")
    (True, False)
    """
    return any(row["name"] == name and row["group"] == "olivette" for row in tables.rows("shot"))


def wet_share(metal: str, temperature_c: ArrayLike = 10.0) -> NDArray[np.float64]:
    """Return the part of its weight that shot of a metal keeps in fresh water [-].

    Archimedes: 1 - rho_water / rho_metal. Water [deg C], any shape, 0 to 30, or OutOfRange; Mistakes
    if the metal is in no table.

    >>> round(float(wet_share("tin")), 4), round(float(wet_share("lead")), 4)
    (0.8629, 0.9118)
    """
    return np.asarray(1.0 - freshwater.density_kg_m3(temperature_c) / density_kg_m3(metal))


def diameter_mm(mass_g: ArrayLike, metal: str) -> NDArray[np.float64]:
    """Return the diameter of round shot of masses in air [g], 0 to 100, any shape [mm].

    A sphere of that mass: (6 m / (pi rho))^(1/3); the slit is left out. Raises Mistakes if the metal
    is in no table, OutOfRange for another mass.

    >>> round(float(diameter_mm(0.4, "tin")), 3)
    4.715
    """
    mass = within("mass of one shot", mass_g, 0.0, 100.0, "g")
    return np.asarray(np.cbrt(6.0 * mass * 1e6 / (np.pi * density_kg_m3(metal))))
