"""How much light there is: from the sun, from each kind of sky, and in twilight."""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tipsight import tables
from tipsight.checks import within
from tipsight.inputs.case import Light
from tipsight.scene.general_sky import horizontal_sr, row_of
from tipsight.tables import Row

SOLAR_CONSTANT_LX = 133_800.0  # lx outside the air (Darula, Kittler and Gueymard 2005)
JOINT_DEG = 0.3  # half the width over which pieces of the twilight formula are joined
# the standard's skies need a sun above the horizon: a lower one shapes the sky as this one
LOWEST_SUN_DEG = 0.01
# the zenith formulas hold above this height, the twilight formula from 0 down (judgement)
BLEND_TO_DEG = 3.0
ZENITH_FORMULA_TO_DEG = 70.0  # with a higher sun the zenith formula runs to infinity (judgement)


def usno_lx(sun_height_deg: ArrayLike) -> NDArray[np.float64]:
    """Return the horizontal illuminance of sun and clear sky [lx], for a height of -18 to 90 deg.

    log10 E = l0 + l1 x + l2 x² + l3 x³, x = true height / 90, in six pieces (Janiczek and DeYoung
    1987, U.S. Naval Observatory Circular 171). Neighbouring pieces miss each other by up to 1 %
    and are joined over 0.3 deg to either side. Against the AMS Glossary sunset is 30 to 85 % high.

    >>> usno_lx([-6.0, 10.0]).round(2).tolist()
    [3.41, 11121.04]
    """
    sun = within("height of the sun", sun_height_deg, -18.0, 90.0, "deg")
    table = tables.columns("usno")
    x = sun[..., None] / 90.0
    l0, l1, l2, l3 = (table[key] for key in ("l0", "l1", "l2", "l3"))
    pieces = l0 + x * (l1 + x * (l2 + x * l3))
    begun = np.clip((sun[..., None] - table["from_deg"][1:]) / (2.0 * JOINT_DEG) + 0.5, 0.0, 1.0)
    share = -np.diff(begun, axis=-1, prepend=1.0, append=0.0)
    return np.asarray(10.0 ** np.sum(share * pieces, axis=-1))


def air_mass(sun_height_deg: ArrayLike) -> NDArray[np.float64]:
    """Return how much more air sunlight crosses than from overhead, for a sun at 0 to 90 deg [-].

    m = 1 / (sin h + 0.50572 (h + 6.07995)^-1.6364), h in degrees (Kasten and Young 1989).

    >>> float(air_mass(30.0).round(3))
    1.994
    """
    sun = within("height of the sun", sun_height_deg, 0.0, 90.0, "deg")
    return 1.0 / (np.sin(np.radians(sun)) + 0.50572 * (sun + 6.07995) ** -1.6364)


def beam_normal_lx(sun_height_deg: ArrayLike, turbidity: ArrayLike) -> NDArray[np.float64]:
    """Return the illuminance from the unclouded sun on a plane that faces it [lx].

    E = 133.8 klx exp(-a m T), a = 1 / (9.9 + 0.043 m), m the air mass and T the luminous turbidity
    after Linke, 1.5 to 8 (Navvab and others 1984, as used by Kittler, Perez and Darula 1998; from
    memory).

    >>> float(beam_normal_lx(30.0, 3.5).round(-2))
    66500.0
    """
    m = air_mass(sun_height_deg)
    tv = within("turbidity", turbidity, 1.5, 8.0)
    return SOLAR_CONSTANT_LX * np.exp(-m * tv / (9.9 + 0.043 * m))


def diffuse_lx(light: Light) -> float:
    """Return the horizontal illuminance from the sky without the sun [lx].

    By day: types 1, 3, 5 by the zenith luminance of an overcast sky, 123 + 8600 sin h cd/m2
    (Krochmann 1963); types 2, 4, 6 by their typical share of the light outside the air, and types
    7 to 15 by a zenith luminance that grows with turbidity (Kittler, Perez and Darula 1998), held
    in proportion to sin h above 70 deg, where that runs to infinity. At and below the horizon, to
    -12 deg, clear skies follow `usno_lx`, joined over 0 to 3 deg in the logarithm, and overcast
    ones keep the ratio to it that they have at sunset (judgement; a dark cloud can take three to
    ten times more).

    >>> round(diffuse_lx(Light(sky_type=1, sun_height_deg=30.0)), -2)
    10800.0
    """
    sun = within("height of the sun", light.sun_height_deg, -12.0, 90.0, "deg").item()
    turbidity = within("turbidity", light.turbidity, 1.5, 8.0).item()
    sky_type = light.sky_type
    row = row_of("kittler", sky_type)
    if sky_type <= 6:
        day = _overcast_lx(sky_type, max(sun, 0.0), row)
        return day if sun >= 0.0 else day * float(usno_lx(sun) / usno_lx(0.0))
    if sun <= 0.0:
        return usno_lx(sun).item()
    day = _clear_lx(sky_type, turbidity, sun, row)
    if sun >= BLEND_TO_DEG:
        return day
    share = smoothstep(sun / BLEND_TO_DEG)
    return math.exp(share * math.log(day) + (1.0 - share) * math.log(usno_lx(sun)))


def _overcast_lx(sky_type: int, sun: float, row: Row) -> float:
    sine = math.sin(math.radians(sun))
    if sky_type % 2:
        return (123.0 + 8600.0 * sine) * horizontal_sr(sky_type, max(sun, LOWEST_SUN_DEG))
    return 300.0 + float(row["diffuse_share"]) * SOLAR_CONSTANT_LX * sine


def _clear_lx(sky_type: int, turbidity: float, sun: float, row: Row) -> float:
    held = min(sun, ZENITH_FORMULA_TO_DEG)
    sine, cosine = math.sin(math.radians(held)), math.cos(math.radians(held))
    a1, a2, c, d = (float(row[key]) for key in ("a1", "a2", "c", "d"))
    glow = 0.7 * (turbidity + 1.0) * sine**c / cosine**d
    zenith_kcd_m2 = (a1 * turbidity + a2) * sine + glow + 0.04 * turbidity
    day = 1000.0 * zenith_kcd_m2 * horizontal_sr(sky_type, held)
    return float(day if sun == held else day * math.sin(math.radians(sun)) / sine)


def smoothstep(x: float) -> float:
    """Return 3 x² - 2 x³ between 0 and 1, held outside.

    >>> smoothstep(0.5), smoothstep(2.0)
    (0.5, 1.0)
    """
    x = min(max(x, 0.0), 1.0)
    return x * x * (3.0 - 2.0 * x)
