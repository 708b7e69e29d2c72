"""Light against the outside: CIE skies, twilight, colour of daylight, eye, mist and sun.

Each row names what is checked, the value from outside, the relative tolerance, and the source
with the reason for the tolerance.
"""

import math
from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone

import numpy as np
import pytest
from colours import colour

from tipsight import tables
from tipsight.inputs import sun
from tipsight.inputs.case import Light
from tipsight.scene import daylight, general_sky, mist, observer, sky, sky_scale, spectra

DEVELOP = (
    "colour-science, docstrings of its CIE general sky (development branch); printed digits; "
    "own formula"
)
GENSKY = "Radiance gensky (G. Ward), as published; "
RTRACE = (
    "Radiance gensky +s, oconv, rtrace run at a sun of 30 deg; four printed digits; own formula: "
    "its clear sky is type 12"
)
RTRACE_LOW = RTRACE + "; it mixes 2.6e-4 of the ground in at 30 deg"
CIRCULAR = "Janiczek and DeYoung 1987, USNO Circular 171; printed digits; own formula"
NOTE_INTEGRAL = "computed independently, 64 x 128 Gauss nodes; printed digits"
CHAIN = "Chain, Dumortier and Fontoynont 1999; printed to 1 K; own formula"


def clear(height: float, sky_type: int = 12, turbidity: float = 3.5) -> sky.SkyState:
    return sky.sky_state(
        Light(sky_type=sky_type, turbidity=turbidity, beam=True, sun_height_deg=height)
    )


def zenith(light: Light) -> float:
    return sky.luminance(sky.sky_state(light), 90.0, 0.0).item()


def relative(sky_type: int, height: float, from_sun: float, sun_height: float) -> np.ndarray:
    return general_sky.relative(sky_type, height, from_sun, sun_height)


def kelvin(weights: np.ndarray) -> float:
    return float(1e6 / (weights @ daylight.basis().mired))


def chromaticity(temperature_k: float) -> np.ndarray:
    """CIE 1931 x and y of the daylight spectrum itself."""
    matching = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    at = np.isin(matching.wavelengths, spectra.WAVELENGTHS_NM)
    seen = spectra.daylight(temperature_k)[spectra.WAVELENGTHS_NM >= 360]
    tristimulus = seen @ matching.values[at]
    return tristimulus[:2] / tristimulus.sum()


def radiance_clear_sr(height: float) -> float:
    """Dv / Lz of the CIE clear sky by the polynomial in gensky.c."""
    h = math.radians(height)
    x = (h - math.pi / 4) / (math.pi / 4)
    norm = np.polynomial.polynomial.polyval(x, [2.766521, 0.547665, -0.369832, 0.009237, 0.059229])
    zenith = 0.274 * (0.91 + 10 * math.exp(-3 * (math.pi / 2 - h)) + 0.45 * math.sin(h) ** 2)
    return float(norm / zenith)


def upright(sky_type: int, facing: float) -> float:
    state = sky.sky_state(Light(sky_type=sky_type, sun_height_deg=30.0))
    return float(sky.vertical_lx(state, facing) / state.diffuse_lx)


GOLD: list[tuple[str, Callable[[], float], float, float, str]] = [
    # CIE standard general sky
    ("type 1 at 45", lambda: relative(1, 45, 0, 30).item(), 0.8325846, 1e-7, DEVELOP),
    ("type 12 off", lambda: relative(12, 45, 180, 60).item(), 0.4544524, 2e-7, DEVELOP),
    ("type 12 60,45", lambda: relative(12, 60, 45, 30).item(), 1.7414, 5e-5, RTRACE),
    ("type 12 60,90", lambda: relative(12, 60, 90, 30).item(), 1.0381, 5e-5, RTRACE),
    ("type 12 60,180", lambda: relative(12, 60, 180, 30).item(), 0.7754, 7e-5, RTRACE),
    ("type 12 30,45", lambda: relative(12, 30, 45, 30).item(), 2.9683, 5e-5, RTRACE),
    ("type 12 30,90", lambda: relative(12, 30, 90, 30).item(), 1.3410, 3e-4, RTRACE_LOW),
    ("type 12 30,180", lambda: relative(12, 30, 180, 30).item(), 1.2358, 3e-4, RTRACE_LOW),
    ("uniform sky", lambda: general_sky.horizontal_sr(5, 40), math.pi, 1e-9, "analytic"),
    (
        "overcast against (1 + 2 sin h) / 3",
        lambda: general_sky.horizontal_sr(1, 40),
        7 * math.pi / 9,
        0.003,
        "Moon and Spencer 1942, analytic; type 1 is the standard's refit of it",
    ),
    *(
        (
            f"type 12 horizontal, sun {height}",
            lambda height=height: general_sky.horizontal_sr(12, height),
            radiance_clear_sr(height),
            0.003,
            GENSKY + "a polynomial fit to the integral of our type 12, own formula",
        )
        for height in (5, 15, 30, 45, 60)
    ),
    *(
        (
            f"type {sky_type} horizontal, sun 30",
            lambda sky_type=sky_type: general_sky.horizontal_sr(sky_type, 30),
            want,
            2e-4,
            NOTE_INTEGRAL,
        )
        for sky_type, want in ((1, 2.4495), (3, 2.7700), (8, 4.123), (13, 6.995), (15, 8.116))
    ),
    *(
        (
            f"type {sky_type} upright, facing {facing}",
            lambda sky_type=sky_type, facing=facing: upright(sky_type, facing),
            want,
            0.003,
            NOTE_INTEGRAL,
        )
        for sky_type, facing, want in (
            (1, 0, 0.379),
            (5, 70, 0.500),
            (8, 0, 0.908),
            (8, 90, 0.406),
            (8, 180, 0.276),
            (12, 0, 1.235),
            (12, 90, 0.559),
            (12, 180, 0.397),
        )
    ),
    (
        "overcast on a wall",
        lambda: upright(1, 0),
        0.396,
        0.05,
        "Moon and Spencer overcast, analytic; type 1 is darker near the horizon",
    ),
    # how bright
    (
        "overcast zenith, sun 5",
        lambda: zenith(Light(sky_type=1, sun_height_deg=5)),
        872.6,
        2e-4,
        GENSKY + "-c: 123 + 8600 sin h; printed digits; own formula",
    ),
    *(
        (
            f"overcast horizontal, sun {height}",
            lambda height=height: (
                sky.sky_state(Light(sky_type=1, sun_height_deg=height)).diffuse_lx
            ),
            300 + 21000 * math.sin(math.radians(height)),
            0.005,
            "IES and CIE overcast formula, 300 + 21000 sin h lx, own formula: 0.25 % for the older "
            "shape of the sky, 0.2 % for 300.5 printed as 300",
        )
        for height in (0, 10, 30, 60)
    ),
    (
        "clear sky, sun -18",
        lambda: sky_scale.usno_lx(-18).item(),
        6.4e-4,
        0.008,
        CIRCULAR + ", two of them",
    ),
    *(
        (
            f"clear sky, sun {height}",
            lambda height=height: sky_scale.usno_lx(height).item(),
            want,
            0.006,
            CIRCULAR,
        )
        for height, want in (
            (-12, 0.00806),
            (-10, 0.0421),
            (-9, 0.116),
            (-8, 0.348),
            (-7, 1.086),
            (-6, 3.41),
            (-5, 10.4),
            (-4, 29.9),
            (-3, 79.1),
            (-2, 189),
            (-1, 405),
            (0, 759),
            (1, 1268),
            (3, 2689),
            (5, 4538),
            (10, 11121),
            (20, 27376),
            (30, 46297),
            (60, 103118),
        )
    ),
    (
        "clear sky, sun overhead",
        lambda: sky_scale.usno_lx(90).item(),
        123786,
        0.047,
        "certification value of the Circular (1986-12-18 21:00 UT, 135.8 W 23.4 S) as quoted by "
        "the R package skylight; four coefficients printed to 0.005 leave 4.7 %; own formula",
    ),
    ("dusk at -12", lambda: sky_scale.usno_lx(-12).item(), 0.008, 0.02, "AMS Glossary, twilight"),
    ("dusk at -18", lambda: sky_scale.usno_lx(-18).item(), 6e-4, 0.08, "AMS Glossary; one digit"),
    ("dusk at -6", lambda: sky_scale.usno_lx(-6).item(), 2.75, 0.27, "AMS Glossary: 2 to 3.5 lx"),
    *(
        (
            f"clear day, sky and sun at {height}",
            lambda height=height: sky.global_lx(clear(height)),
            10 ** np.polynomial.polynomial.polyval(height / 90, coefficients),
            0.13,
            "Janiczek and DeYoung 1987 against Kittler's zenith and beam at turbidity 3.5: "
            "another atmosphere; 12 % when the two were set side by side",
        )
        for height, coefficients in (
            (5, (2.88, 22.26, -207.64, 1034.30)),
            (10, (3.05, 13.28, -45.98, 64.33)),
            (20, (3.74, 3.97, -4.07, 1.47)),
            (40, (3.74, 3.97, -4.07, 1.47)),
            (60, (3.74, 3.97, -4.07, 1.47)),
        )
    ),
    *(
        (
            f"beam of a clean day, sun {height}",
            lambda height=height: sky_scale.beam_normal_lx(height, 2.7).item(),
            want,
            0.10,
            "Bird and Riordan 1986 (spectrl2), computed for aerosol 0.15, that is a turbidity "
            "of 2.7, fitted to them: one number for all heights",
        )
        for height, want in (
            (5, 9923),
            (7, 18323),
            (10, 30982),
            (15, 48343),
            (20, 60937),
            (30, 76945),
            (45, 89418),
            (60, 95617),
        )
    ),
    (
        "air mass at 0",
        lambda: sky_scale.air_mass(0).item(),
        37.92,
        2e-3,
        "Kasten and Young 1989, table II (from memory); own formula",
    ),
    *(
        (
            f"air mass at {height}",
            lambda height=height: sky_scale.air_mass(height).item(),
            want,
            0.008,
            "Bemporad 1904 in the Smithsonian Meteorological Tables; an older atmosphere",
        )
        for height, want in ((10, 5.60), (15, 3.816), (20, 2.904), (30, 1.995))
    ),
    # colour of light
    *(
        (
            f"clear sky of {lum} cd/m2",
            lambda lum=lum: 1e6 / daylight.blue_mired(lum).item(),
            want,
            5e-5,
            CHAIN,
        )
        for lum, want in (
            (1000, 21182),
            (2000, 15337),
            (3000, 13205),
            (5000, 11238),
            (8000, 9883),
            (10000, 9348),
            (20000, 8002),
        )
    ),
    (
        "overcast",
        lambda: kelvin(daylight.ground_weights(sky.sky_state(Light(sky_type=3)))),
        6514,
        2e-4,
        "Chain, Dumortier and Fontoynont 1999, fitted to: kept as 153.5 mired",
    ),
    *(
        (
            f"clear sky's light on the level, sun {height}",
            lambda height=height: kelvin(daylight.diffuse_weights(clear(height))),
            want,
            0.05,
            "Bird and Riordan 1986 (spectrl2), computed; lower suns are no check, "
            "as our colour there was fitted to it",
        )
        for height, want in ((45, 9872), (60, 10108))
    ),
    (
        "daylight on the level",
        lambda: kelvin(daylight.ground_weights(clear(40))),
        5700,
        0.05,
        "Hernandez-Andres and others 2001, J. Opt. Soc. Am. A 18, 1325: typical of 2600 spectra",
    ),
    *(
        (
            f"{name} {'xy'[axis]}",
            lambda temperature=temperature, axis=axis: chromaticity(temperature)[axis].item(),
            want[axis],
            2e-4,
            "CIE 15:2004 table T.3, own formula; the CIE's own table "
            "summed every 5 nm misses these by up to 3e-5, our spectra by 2e-5 more",
        )
        for name, temperature, want in (
            ("D50", 5003, (0.34567, 0.35851)),
            ("D55", 5503, (0.33243, 0.34744)),
            ("D65", 6504, (0.31272, 0.32903)),
            ("D75", 7504, (0.29903, 0.31488)),
        )
        for axis in (0, 1)
    ),
    # the eye
    (
        "scotopic over photopic, D65",
        lambda: (spectra.daylight(6504) @ observer.channels())[3].item(),
        2.47,
        0.005,
        "CIE 191:2010 and IES TM-12 (from memory); three digits",
    ),
    (
        "scotopic over photopic, A",
        lambda: (spectra.planck(2856) @ observer.channels())[3].item(),
        1.41,
        0.005,
        "CIE 191:2010 and IES TM-12 (from memory); three digits",
    ),
    (
        "D65, L",
        lambda: (spectra.daylight(6504) @ observer.cones())[0].item(),
        0.6991,
        1e-9,
        "Ashraf and others 2024, castleCSF; fitted to: we scale by it",
    ),
    (
        "D65, M",
        lambda: (spectra.daylight(6504) @ observer.cones())[1].item(),
        0.3009,
        1e-9,
        "Ashraf and others 2024, castleCSF; fitted to: we scale by it",
    ),
    # mist
    (
        "mist 1 km, 60 m",
        lambda: mist.transmittance(60, 1000).item(),
        0.8355,
        1e-4,
        "WMO-No. 8, 5 % at the meteorological optical range, own formula: exp(-2.996 x 0.06)",
    ),
    (
        "mist at its range",
        lambda: mist.transmittance(500, 500).item(),
        0.05,
        1e-12,
        "WMO-No. 8, own formula",
    ),
]


@pytest.mark.parametrize(
    ("got", "want", "tolerance", "source"), [row[1:] for row in GOLD], ids=[row[0] for row in GOLD]
)
def test_light_agrees_with_outside(
    got: Callable[[], float], want: float, tolerance: float, source: str
) -> None:
    assert got() == pytest.approx(want, rel=tolerance), source


# B, C, D, E of Kittler, Perez and Darula 1998 (from memory)
KITTLER = {
    1: (54.63, 1.00, 0, 0), 2: (12.35, 3.68, 0.59, 50.47), 3: (48.30, 1.00, 0, 0),
    4: (12.23, 3.57, 0.57, 44.27), 5: (42.59, 1.00, 0, 0), 6: (11.84, 3.53, 0.55, 38.78),
    7: (21.72, 4.52, 0.64, 34.56), 8: (29.35, 4.94, 0.70, 30.41), 9: (10.34, 3.45, 0.50, 27.47),
    10: (18.41, 4.27, 0.63, 24.04), 11: (24.41, 4.60, 0.72, 20.76),
    12: (23.00, 4.43, 0.74, 18.52), 13: (27.45, 4.61, 0.76, 16.59),
    14: (25.54, 4.40, 0.79, 14.56), 15: (28.08, 4.13, 0.79, 13.00),
}  # fmt: skip


@pytest.mark.parametrize("height", [10.0, 30.0, 60.0])
@pytest.mark.parametrize("sky_type", [key for key in KITTLER if key != 15])
def test_zenith_over_horizontal_agrees_with_kittler(sky_type: int, height: float) -> None:
    # 2.5 %: theirs is a fit to the integral that is done here
    b, c, d, e = KITTLER[sky_type]
    sine, cosine = math.sin(math.radians(height)), math.cos(math.radians(height))
    want = (b * sine**c / cosine**d + e * sine) / (133.8 * sine)
    assert 1 / general_sky.horizontal_sr(sky_type, height) == pytest.approx(want, rel=0.025)


def test_known_miss_the_haziest_sky_at_low_sun() -> None:
    """Kittler's own fit to type 15 leaves the integral of its a to e by 4 % about 10 deg."""
    sine, cosine = math.sin(math.radians(10)), math.cos(math.radians(10))
    b, c, d, e = KITTLER[15]
    fit = (b * sine**c / cosine**d + e * sine) / (133.8 * sine)
    assert fit * general_sky.horizontal_sr(15, 10) == pytest.approx(1.042, abs=0.002)


@pytest.mark.parametrize(
    ("turbidity", "misses"),
    [(2.45, (1.184, 1.441, 1.580, 1.635)), (3.5, (1.072, 1.168, 1.206, 1.195)),
     (5.0, (0.998, 1.016, 1.015, 0.983))],
)  # fmt: skip
def test_known_miss_clear_zenith_against_karayel(
    turbidity: float, misses: tuple[float, ...]
) -> None:
    """Karayel and others 1984, as in gensky.c: (1.376 T - 1.81) tan h + 0.38 kcd/m2.

    Kittler's zenith (A1 and A2 from memory) is up to a fifth brighter at our clear sky's 3.5 and
    half as bright again in cleaner air; in haze the two agree. The light on the level does not
    say which is right: both come within 10 % of the Circular at 3.5.
    """
    for height, miss in zip((15, 30, 45, 60), misses, strict=True):
        theirs = (1.376 * turbidity - 1.81) * math.tan(math.radians(height)) + 0.38
        ours = zenith(clear(height, turbidity=turbidity).light) / 1000
        assert ours / theirs == pytest.approx(miss, abs=0.002)


def test_known_miss_air_mass_at_five_degrees() -> None:
    """Bemporad 1904 has 10.39; the atmosphere of Kasten and Young 1989 is 0.8 % thinner there."""
    assert sky_scale.air_mass(5).item() / 10.39 == pytest.approx(0.9919, abs=0.0005)


def test_known_miss_sunset_is_brighter_than_the_glossary_says() -> None:
    """AMS Glossary, civil twilight: 410 to 585 lx at a height of 0; the Circular is above it."""
    sunset = sky_scale.usno_lx(0.0).item()
    assert sunset / 585 == pytest.approx(1.30, abs=0.01)
    assert sunset / 410 == pytest.approx(1.85, abs=0.01)


SUMMER = timezone(timedelta(hours=1))
SUN = [  # algorithm of Reda and Andreas 2004 (NREL SPA), true height; astral's own is within 0.02
    (datetime(2026, 6, 21, 12, tzinfo=UTC), 51.5, 0.0, 61.9346, 179.1140),
    (datetime(2026, 12, 21, 12, tzinfo=UTC), 51.5, 0.0, 15.0595, 180.4598),
    (datetime(2026, 3, 20, 18, tzinfo=UTC), 53.0, -1.5, 2.0500, 267.3631),
    (datetime(2026, 9, 1, 5, tzinfo=UTC), 52.0, -2.0, -3.7298, 71.4838),
    (datetime(2026, 10, 15, 17, tzinfo=UTC), 51.0, -1.5, 1.2381, 254.5002),
    (datetime(2026, 10, 15, 18, tzinfo=SUMMER), 51.0, -1.5, 1.2381, 254.5002),
]


@pytest.mark.parametrize(("when", "latitude", "longitude", "height", "azimuth"), SUN)
def test_sun_stands_where_the_reference_algorithm_says(
    when: datetime, latitude: float, longitude: float, height: float, azimuth: float
) -> None:
    assert sun.position(when, latitude, longitude) == pytest.approx((height, azimuth), abs=0.02)


def test_sun_of_the_reference_algorithm_s_own_example() -> None:
    """Reda and Andreas 2004, table A5.1: zenith 50.11162 (refracted), azimuth 194.34024."""
    when = datetime(2003, 10, 17, 12, 30, 30, tzinfo=timezone(timedelta(hours=-7)))
    height, azimuth = sun.position(when, 39.742476, -105.1786)
    # Saemundsson's refraction (Meeus 1998, equation 16.4) in their air, 820 hPa and 11 deg C.
    lifted = 1.02 / 60 / np.tan(np.radians(height + 10.3 / (height + 5.11)))
    lifted *= 820 / 1010 * 283 / (273 + 11)
    assert 90 - height - lifted == pytest.approx(50.11162, abs=0.02)
    assert azimuth == pytest.approx(194.34024, abs=0.02)


SHADES: dict[observer.Tint, tuple[float, float]] = {
    "grey": (0.08, 0.18),
    "brown": (0.08, 0.18),
    "polarised": (0.08, 0.18),
    "amber": (0.18, 0.43),
}


@pytest.mark.parametrize("tint", SHADES)
def test_tints_lie_in_their_shade_class(tint: observer.Tint) -> None:
    """EN ISO 12312-1: categories 2, 3; for the road a fifth of it everywhere, 475 to 650 nm."""
    low, high = SHADES[tint]
    spectrum = observer.transmittance(tint)
    luminous = spectra.luminous(spectra.daylight(6504) * spectrum)
    assert low < luminous <= high
    road = (spectra.WAVELENGTHS_NM >= 475) & (spectra.WAVELENGTHS_NM <= 650)
    assert spectrum[road].min() >= 0.2 * luminous


def test_polarised_glasses_are_no_worse_than_their_standard_allows() -> None:
    """EN ISO 12312-1 (from memory): 8 to 1 at least in categories 2 to 4."""
    upright, level = (observer.passed(*half, "polarised") for half in ((1.0, 0.0), (0.0, 1.0)))
    assert upright / level >= 8.0


@pytest.mark.parametrize(
    ("vision", "peak"), [("normal", 555), ("red-blind", 540), ("green-blind", 560)]
)
def test_brightest_wavelength_of_colour_blind_eyes(
    vision: observer.ColourVision, peak: int
) -> None:
    """Pitt 1935, in Wyszecki and Stiles 1982 (from memory); ±10 nm, as observers differ."""
    bright = observer.channels(vision)[:, 0]
    assert spectra.WAVELENGTHS_NM[bright.argmax()] == pytest.approx(peak, abs=10)


def test_sky_words_stand_for_types_of_the_standard() -> None:
    """CIE S 011 table 1: overcast 1 and 3, partly cloudy 7 to 11, clear 12, polluted 13."""
    types = {row["name"]: int(row["type"]) for row in tables.rows("skies")}
    assert types == {
        "dull overcast": 1, "bright overcast": 3, "broken cloud": 8, "hazy": 13, "clear": 12,
    }  # fmt: skip
