"""Sight against the outside: laboratory thresholds, standards and other people's formulas.

Thresholds were measured on discs; `disc_threshold` gives the detector a disc instead of a tip by
the disc's own energy, pi r^2 (1 - exp(-z) (I0(z) + I1(z))), z = r^2/2s^2 (plain calculus).
"""

import numpy as np
import pytest
import scipy
from sight_level import visibility_level

from tipsight.sight import channels, clutter, contrast, dip, energy, eye

YOUNG = eye.Eye(25.0)
MM = 10.0 * energy.MM_PER_ARCMIN_M  # millimetres in an arc minute at 10 m


def bare(light, k=0):
    """Return a channel of an observer of 25, whose age counts for nothing."""
    return channels.channels(light, YOUNG)[k]


def threshold(energy_arcmin2, channel, area_arcmin2=1e9):
    """Return the contrast at level 1 of a pattern of unit contrast, given its blurred energy."""
    level = np.sqrt(channels.capped(channel.gain * energy_arcmin2, channel.floor**-2.0))
    return float(1.0 / (level * channel.kept(area_arcmin2)))


def disc_threshold(radius_arcmin, light, k=0):
    channel = bare(light, k)
    z = radius_arcmin**2 / (2.0 * channel.blur_arcmin**2)
    area = np.pi * radius_arcmin**2
    share = 1.0 - (scipy.special.ive(0, z) + scipy.special.ive(1, z))
    return threshold(area * share, channel, area)


# Blackwell (1946, J. Opt. Soc. Am. 36, 624), Table VIII, as smoothed by Clark (1990, Visual
# Astronomy of the Deep Sky, appendix): log10 of the contrast of a disc that is seen half the time.
# The achromatic channel was fitted to this table (ten figures to 91), so this shows a good fit,
# not a prediction; the last row lies below the fit: there the formulas may run on.
DISCS_ARCMIN = (0.595, 3.60, 9.68, 18.2, 55.2, 121.0, 360.0)
BLACKWELL = {
    2713.0: (-0.3769, -1.8064, -2.3368, -2.4601, -2.5469, -2.5610, -2.5660),
    1080.0: (-0.3315, -1.7747, -2.3337, -2.4608, -2.5465, -2.5607, -2.5658),
    430.0: (-0.2682, -1.7345, -2.3310, -2.4605, -2.5467, -2.5608, -2.5658),
    171.0: (-0.1982, -1.6851, -2.3140, -2.4572, -2.5481, -2.5615, -2.5665),
    68.1: (-0.1238, -1.6252, -2.2791, -2.4462, -2.5463, -2.5597, -2.5646),
    27.1: (-0.0424, -1.5529, -2.2297, -2.4214, -2.5343, -2.5501, -2.5552),
    10.8: (0.0498, -1.4655, -2.1659, -2.3763, -2.5047, -2.5269, -2.5333),
    4.30: (0.1596, -1.3581, -2.0810, -2.3036, -2.4499, -2.4823, -2.4937),
    1.71: (0.2934, -1.2256, -1.9674, -2.1965, -2.3631, -2.4092, -2.4318),
    0.681: (0.4557, -1.0673, -1.8186, -2.0531, -2.2445, -2.3083, -2.3491),
    0.271: (0.6500, -0.8841, -1.6292, -1.8741, -2.0989, -2.1848, -2.2505),
    0.108: (0.8808, -0.6687, -1.3967, -1.6611, -1.9284, -2.0411, -2.1375),
    0.0430: (1.1558, -0.3952, -1.1264, -1.4176, -1.7300, -1.8727, -2.0034),
    0.0171: (1.4822, -0.0419, -0.8243, -1.1475, -1.5021, -1.6768, -1.8420),
}
TABLE = [
    (light, disc, log)
    for light, row in BLACKWELL.items()
    for disc, log in zip(DISCS_ARCMIN, row, strict=True)
]


# 25 %: the scatter between Blackwell's observers is 0.1 to 0.2 in the logarithm
@pytest.mark.parametrize(("light", "disc", "log"), TABLE)
def test_blackwell_disc(light, disc, log):
    assert disc_threshold(disc / 2.0, light) == pytest.approx(10.0**log, rel=0.25)


def test_blackwell_as_a_whole():
    off = [
        np.log10(disc_threshold(d / 2.0, light)) - log for light, d, log in TABLE if light > 0.04
    ]
    assert len(off) == 91
    assert np.sqrt(np.mean(np.square(off))) < 0.06
    assert abs(np.mean(off)) < 0.01


# The same table through the tip's own sum, a square of equal area standing for the disc (3 %).
@pytest.mark.parametrize(("light", "disc", "log"), TABLE[::5])
def test_blackwell_disc_as_a_square_tip(light, disc, log):
    side = disc * np.sqrt(np.pi) / 2.0 * MM
    level = visibility_level(
        side, [0.0, side], [[10.0**log, 0.0, 0.0]], range_m=10.0, adaptation_cd_m2=light, eye=YOUNG
    )
    assert float(level) == pytest.approx(1.0, rel=0.27)


# Crumey (2014, Mon. Not. R. Astron. Soc. 442, 2600), his Ricco product R(B), per steradian, which
# he fitted to Blackwell's and others' data of point sources; 20 %: his own fit's scatter and ours.
@pytest.mark.parametrize("light", [2713.0, 430.0, 68.0, 10.8, 1.71, 0.271, 0.043])
def test_crumey_point_source(light):
    root = 5.949e-8 * light**-0.5 - 2.389e-7 * light**-0.25 + 2.459e-7
    crumey = (np.sqrt(root) + 4.120e-4 * light**-0.25 - 4.225e-4) ** 2
    per_arcmin2 = (180.0 * 60.0 / np.pi) ** 2
    assert float(eye.flux_threshold(light)) == pytest.approx(crumey * per_arcmin2, rel=0.20)


# Adrian (1989, Lighting Res. Technol. 21, 181), his formula with k = 1 for the 50 % threshold,
# long time, no age or polarity factor, at discs of 4 arc minutes, the least that it is made for.
# 30 %: he departs from Blackwell's table by that much himself.
@pytest.mark.parametrize("light", [0.1, 0.3, 1.0, 3.0, 10.0, 30.0, 100.0, 300.0])
def test_adrian_disc(light):
    log = np.log10(light)
    if light >= 0.6:
        flux = np.log10(4.1925 * light**0.1556) + 0.1684 * light**0.5867
        floor = 0.05946 * light**0.466
    else:
        flux = 10.0 ** (-0.072 + 0.3372 * log + 0.0866 * log**2)
        floor = 10.0 ** (-1.256 + 0.319 * log)
    adrian = (flux / 4.0 + floor) ** 2 / light
    assert disc_threshold(2.0, light) == pytest.approx(adrian, rel=0.30)


# ModelFest (Carney et al. 1999, Proc. SPIE 3644, 542; Watson and Ahumada 2005, J. Vision 5(9):6),
# mean threshold contrast of 16 observers at 30 cd/m2: glances of 0.25 s, 84 % right, so only
# ratios compare (35 %: the spread between observers is 0.11 to 0.32 in the logarithm) and the
# level itself must be 3 to 6. Line 0.5 arc minutes wide; dipole three such pixels, bright, blank,
# dark.
MODELFEST = {"blob 2.1'": 0.06188, "blob 1.05'": 0.14778, "line": 0.11647, "dipole": 0.23680}


def modelfest_threshold(name):
    channel = bare(30.0)
    s = channel.blur_arcmin

    def bell(sigma):
        """Return the blurred energy of a Gaussian along one axis."""
        return np.sqrt(np.pi) * sigma**2 / np.hypot(sigma, s)

    if name.startswith("blob"):
        sigma = {"blob 2.1'": 2.106, "blob 1.05'": 1.05}[name]
        return threshold(bell(sigma) ** 2, channel)
    if name == "line":
        return threshold(energy.across(0.5, s) * bell(30.0), channel)
    pair = energy.upright([0.0, 0.5, 1.0, 1.5], [1.0, 0.0, -1.0], s)
    return threshold(pair * bell(30.0), channel)


@pytest.mark.parametrize(
    ("one", "other"),
    [("blob 2.1'", "blob 1.05'"), ("line", "blob 1.05'"), ("dipole", "blob 1.05'"),
     ("dipole", "line")],
)  # fmt: skip
def test_modelfest_ratio(one, other):
    ratio = modelfest_threshold(one) / modelfest_threshold(other)
    assert ratio == pytest.approx(MODELFEST[one] / MODELFEST[other], rel=0.35)


@pytest.mark.parametrize("name", list(MODELFEST))
def test_modelfest_glance(name):
    assert 3.0 < MODELFEST[name] / modelfest_threshold(name) < 6.0


# castleCSF data set "hdr_csf_disc" (Ashraf et al. 2024, J. Vision 24(4):5): contrast at threshold
# of discs of 5 and 60 arc minutes radius, over 2.35 for the criterion of that laboratory, which is
# the mean of its grey discs over Blackwell. 30 % grey and red-green; a factor of two for
# yellow-violet, where the model is rough.
@pytest.mark.parametrize(
    ("k", "light", "radius", "contrast", "factor"),
    [
        (0, 0.2, 5.0, 0.0638, 1.3), (0, 2.0, 5.0, 0.02393, 1.3), (0, 20.0, 5.0, 0.01533, 1.3),
        (0, 200.0, 5.0, 0.01142, 1.3),
        (1, 0.2, 5.0, 0.0575, 1.3), (1, 2.0, 5.0, 0.0185, 1.3), (1, 200.0, 5.0, 0.00499, 1.3),
        (1, 200.0, 60.0, 0.00182, 1.3),
        (2, 2.0, 5.0, 0.229, 2.0), (2, 200.0, 5.0, 0.0482, 2.0),
    ],
)  # fmt: skip
def test_coloured_disc(k, light, radius, contrast, factor):
    ratio = disc_threshold(radius, light, k) * 2.35 / contrast
    assert 1.0 / factor < ratio < factor


# Hecht and Mintz (1939, J. Gen. Physiol. 22, 593): a wire against the brightest field (30 mL, some
# 3183 cd/m2 after a later source) is seen down to 0.5 seconds of arc. A factor of two: the length
# of the wire is not in the abstract; 1 degree taken.
def test_hecht_and_mintz_wire():
    width, long = 0.5 / 60.0 * MM, 60.0 * MM
    level = visibility_level(
        width, [0.0, long], [[-1.0, 0.0, 0.0]], range_m=10.0, adaptation_cd_m2=3183.0, eye=YOUNG
    )
    assert 0.5 < float(level) < 2.0


# Line threshold 1 to 2 % arc minutes (Klein and Levi 1985, J. Opt. Soc. Am. A 2, 1170; from
# memory). From 0.8 %: theirs are glances, ours is unhurried.
@pytest.mark.parametrize("light", [30.0, 100.0])
def test_thin_line(light):
    channel = bare(light)
    line = energy.across(0.1, channel.blur_arcmin) * energy.upright(
        [0.0, 60.0], [1.0], channel.blur_arcmin
    )
    assert 0.008 < threshold(line, channel) * 0.1 < 0.02


# A black square on a bright field is seen from 14 to 18 seconds of arc (Hecht, Ross and Mueller
# 1947, from memory). Known miss: the model wants 21 to 23, up to 1.6 times as much.
@pytest.mark.parametrize("light", [1000.0, 3183.0])
def test_black_square_known_miss(light):
    def level(seconds):
        side = seconds / 60.0 * MM
        return float(visibility_level(
            side, [0.0, side], [[-1.0, 0.0, 0.0]], range_m=10.0, adaptation_cd_m2=light, eye=YOUNG
        ))  # fmt: skip

    side = scipy.optimize.brentq(lambda seconds: level(seconds) - 1.0, 5.0, 60.0)
    assert 21.0 < side < 23.0
    assert 1.15 < side / 18.0 < side / 14.0 < 1.65


# Weber fraction of a very large target, 0.26 to 0.28 % (Blackwell 1946, discs of 360 arc minutes).
@pytest.mark.parametrize("light", [430.0, 1080.0, 2713.0])
def test_weber_floor(light):
    assert 0.0026 < float(eye.weber_floor(light)) < 0.0028


# CIE 19/2 (1981) contrast multiplier of age: 1 + 0.00795 (a - 20) to 42, 1.175 + 0.0289 (a - 42)
# to 64, 1.811 + 0.1873 (a - 64) to 80 (from memory). 12 % by 300 cd/m2: another committee's smoothing.
def cie_19(age):
    return float(np.interp(age, [20, 42, 64, 80], [1.0, 1.175, 1.811, 4.808]))


@pytest.mark.parametrize("age", [20, 30, 40, 45, 50, 55, 60, 64])
def test_cie_19_age_multiplier(age):
    assert float(eye.age_factor(age, 300.0)) == pytest.approx(cie_19(age), rel=0.12)


# Known miss: from 64 years on it climbs as no data of thresholds by daylight do; ours is 1.91 of
# its 2.94 at 70 in 1000 cd/m2.
def test_cie_19_known_miss_at_seventy():
    assert cie_19(70.0) == pytest.approx(2.94, abs=0.01)
    assert float(eye.age_factor(70.0, 1000.0)) == pytest.approx(1.91, abs=0.01)


# People of 60 to 70 need 2.51 times the contrast of people of 20 to 30 for a disc of 4 arc minutes
# (Blackwell for NIOSH 1975, NIOSHTIC 00168706, 156 people, abstract). Known miss: with 25 % for the
# spread of eyes it should be 1.88 at least, and is 1.74 by day; later laboratories found less.
def test_niosh_age_ratio_known_miss():
    old, young = (eye.age_factor(np.linspace(a, a + 10, 101), 1000.0).mean() for a in (60, 20))
    assert old / young == pytest.approx(1.74, abs=0.01)
    assert old / young < 0.75 * 2.51


# CIE 191:2010, table of mesopic over photopic luminance less one, per cent, by ratio of scotopic
# to photopic and by photopic luminance (from memory); 1 %: it is printed in whole per cent.
CIE_191_LUMINANCE = (0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 4.5)
CIE_191 = {
    0.25: (-75, -52, -29, -18, -9, -2, 0),
    0.65: (-31, -20, -13, -8, -4, -1, 0),
    1.05: (4, 3, 2, 1, 1, 0, 0),
    1.45: (32, 22, 15, 9, 5, 1, 0),
    1.85: (57, 40, 27, 17, 9, 3, 0),
    2.25: (80, 57, 38, 24, 12, 4, 0),
    2.65: (101, 73, 49, 31, 16, 5, 1),
}


@pytest.mark.parametrize(
    ("ratio", "light", "percent"),
    [(r, light, p) for r, row in CIE_191.items()
     for light, p in zip(CIE_191_LUMINANCE, row, strict=True)],
)  # fmt: skip
def test_cie_191_mesopic_luminance(ratio, light, percent):
    mesopic = float(contrast.adaptation([light, 0.0, 0.0, ratio * light]))
    assert 100.0 * (mesopic / light - 1.0) == pytest.approx(percent, abs=1.0)


# CIE 191:2010 recommended system, solved by its own iteration until it stands still; 1e-4.
@pytest.mark.parametrize(
    ("light", "ratio", "mesopic"),
    [(0.1, 1.0, 0.1000), (0.1, 1.5, 0.1162), (0.1, 2.3, 0.1393), (0.3, 2.3, 0.3757),
     (1.0, 1.5, 1.0524), (1.0, 2.3, 1.1292), (3.0, 2.3, 3.1122)],
)  # fmt: skip
def test_cie_191_by_iteration(light, ratio, mesopic):
    share, rods = 0.5, 683.0 / 1699.0
    for _ in range(100):
        m = share
        level = (m * light + (1 - m) * ratio * light * rods) / (m + (1 - m) * rods)
        share = min(1.0, max(0.0, 0.7670 + 0.3334 * np.log10(level)))
    assert level == pytest.approx(mesopic, abs=6e-5)
    ours = float(contrast.adaptation([light, 0.0, 0.0, ratio * light]))
    assert ours == pytest.approx(level, rel=1e-4)


# CIE 146:2002 general disability glare equation at brown eyes (coefficients from memory, worked by
# hand); half a unit of the last figure.
@pytest.mark.parametrize(
    ("angle", "age", "veil", "half"),
    [(1.0, 25.0, 15.18, 0.005), (1.0, 60.0, 19.34, 0.005), (5.0, 25.0, 0.2966, 5e-5),
     (5.0, 60.0, 0.4696, 5e-5), (10.0, 25.0, 0.0677, 5e-5), (10.0, 60.0, 0.1130, 5e-5),
     (30.0, 25.0, 0.0090, 5e-5), (30.0, 60.0, 0.0150, 5e-5)],
)  # fmt: skip
def test_cie_146_veil(angle, age, veil, half):
    assert float(eye.veil(1.0, angle, age)) == pytest.approx(veil, abs=half)


# The older age-adjusted formula of Stiles and Holladay, 10/a^2 (1 + (age/70)^4), 1 to 30 deg (Vos
# 2003, Clin. Exp. Optom. 86, 363; from memory). A factor of 1.6: the newer equation departs from
# it by that at both ends.
@pytest.mark.parametrize("age", [25.0, 70.0])
@pytest.mark.parametrize("angle", [1.5, 3.0, 5.0, 10.0])
def test_stiles_and_holladay(angle, age):
    old = 10.0 / angle**2 * (1.0 + (age / 70.0) ** 4)
    assert 1.0 / 1.6 < float(eye.veil(1.0, angle, age)) / old < 1.6


# A line of a good eye is displaced by no less than 5 seconds of arc before it shows (order of
# magnitude: Watt and Morgan 1983; Levi and Klein 1990); our floor in arc minutes, 10 %.
def test_vernier_floor():
    assert pytest.approx(5.0 / 60.0, rel=0.1) == dip.VERNIER_ARCMIN


# About 1 1/4 in of a 3 mm quill tip is seen at about 40 yd in reasonable light, half an inch is
# not, two inches well (common practice, no source): black on bright water under a light ripple or
# on a glide, good young eyes, 1.3 m above the water.
@pytest.mark.parametrize(("inches", "low", "high"), [(1.25, 2.4, 5.5), (2.0, 3.5, 7.5)])
def test_quill_at_forty_yards(inches, low, high):
    distance = 40 * 0.9144
    ripple = clutter.Clutter(0.16, 129.0, 0.064, 0.5, np.rad2deg(np.arctan(1.3 / distance)), 0.62)
    for water in (None, ripple):
        level = visibility_level(
            3.0, [0.0, 25.4 * inches], [[-0.95, 0.0, 0.0]], range_m=distance,
            adaptation_cd_m2=733.0, eye=YOUNG, clutter=water,
        )  # fmt: skip
        assert low < float(level) < high


def test_half_an_inch_of_quill_at_forty_yards():
    level = visibility_level(
        3.0, [0.0, 12.7], [[-0.95, 0.0, 0.0]], range_m=40 * 0.9144, adaptation_cd_m2=733.0,
        eye=YOUNG,
    )  # fmt: skip
    assert float(level) < 2.4
