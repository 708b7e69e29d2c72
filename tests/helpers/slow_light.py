"""Eye, sun and sky once more, slowly: whole spectra, even grids, no quadrature, no closed form.

Nothing is shared with `tipsight.scene` but the rows of the tables, read here by hand, and what the
settled model says. A spectrum is carried at every 5 nm as power whose photopic measure is lx or
cd/m2; each direction of the sky is one term of a sum.
"""

import csv
from functools import cache
from pathlib import Path

import numpy as np
from colours import colour

DATA = Path(__file__).parents[2] / "tipsight" / "data"
NM = np.arange(300.0, 781.0, 5.0)


@cache
def table(name):
    """Return the rows of a table as dictionaries of text."""
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def row(name, key, value):
    """Return a row's numbers; words stay words."""

    def number(text):
        try:
            return float(text)
        except ValueError:
            return text

    found = next(r for r in table(name) if r[key] == str(value))
    return {k: number(v) for k, v in found.items()}


def column(name, key):
    return np.array([float(r[key]) for r in table(name)])


# --- the eye -------------------------------------------------------------------------------------


def on_our_nm(distribution, index=None):
    """Values of a colour-science distribution at our wavelengths, 0 where it has none."""
    values = distribution.values if index is None else distribution.values[:, index]
    held = dict(zip(distribution.wavelengths.round(), np.nan_to_num(values), strict=True))
    return np.array([float(held.get(nm, 0.0)) if nm >= 360.0 else 0.0 for nm in NM])


PHOTOPIC = on_our_nm(colour.SDS_LEFS["CIE 1924 Photopic Standard Observer"])
SCOTOPIC = on_our_nm(colour.SDS_LEFS["CIE 1951 Scotopic Standard Observer"])
LMS = [
    on_our_nm(colour.MSDS_CMFS["Stockman & Sharpe 2 Degree Cone Fundamentals"], i)
    for i in range(3)
]
D65 = np.interp(
    NM, colour.SDS_ILLUMINANTS["D65"].wavelengths, colour.SDS_ILLUMINANTS["D65"].values
)


def lux(spectrum):
    return 683.0 * 5.0 * (spectrum * PHOTOPIC).sum(axis=-1)


def eyes(vision, tint):
    """Return the weights by wavelength of luminance, red-green, yellow-violet and rods."""
    of_d65 = [(D65 * cone).sum() / lux(D65) for cone in LMS]
    long, medium, short = (
        cone / one * share
        for cone, one, share in zip(LMS, of_d65, (0.6991, 0.3009, 0.0198), strict=True)
    )
    grey, red = long + medium, long - 2.3112 * medium
    if vision.startswith("red"):
        part = 0.6 if vision == "red-weak" else 1.0
        grey = (1.0 - part) * grey + part * medium / 0.3009
        red = (1.0 - part) * red
    glass = row("tints", "name", tint)
    shade = glass["low"] + (1.0 - glass["low"]) / (
        1.0 + np.exp(-(NM - glass["edge_nm"]) / glass["width_nm"])
    )
    shade = shade * glass["transmittance"] * lux(D65) / lux(D65 * shade)
    rods = 1700.0 * 5.0 * SCOTOPIC
    return np.stack([grey, red, 50.9875 * short - grey, rods]) * shade


# --- light ---------------------------------------------------------------------------------------


@cache
def series():
    basis = colour.colorimetry.datasets.SDS_BASIS_FUNCTIONS_CIE_ILLUMINANT_D_SERIES
    return [np.interp(NM, basis[f"S{i}"].wavelengths, basis[f"S{i}"].values) for i in range(3)]


def light(mired):
    """Return the spectrum of one lux of light of each colour: CIE daylight, under 4000 K Planck's."""
    kelvin = 1e6 / np.maximum(np.atleast_1d(np.asarray(mired, dtype=float)), 40.0)
    x, y = np.moveaxis(colour.temperature.CCT_to_xy_CIE_D(np.maximum(kelvin, 4000.0)), -1, 0)
    below = 0.0241 + 0.2562 * x - 0.7341 * y
    m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / below
    m2 = (0.0300 - 31.4424 * x + 30.0717 * y) / below
    s0, s1, s2 = series()
    day = s0 + m1[:, None] * s1 + m2[:, None] * s2
    glowing = NM**-5.0 / (np.exp(1.438777e7 / (NM * kelvin[:, None])) - 1.0)
    spectrum = np.where(kelvin[:, None] >= 4000.0, day, glowing)
    return spectrum / lux(spectrum)[:, None]


def step(x):
    x = np.clip(x, 0.0, 1.0)
    return 3.0 * x**2 - 2.0 * x**3


def twilight_lx(sun_deg):
    piece = [one for one in table("usno") if float(one["from_deg"]) <= sun_deg][-1]
    return 10.0 ** sum(float(piece[f"l{i}"]) * (sun_deg / 90.0) ** i for i in range(4))


class Sky:
    """One sky; azimuths are from the line of sight, heights above the horizon [deg]."""

    def __init__(self, case_light):
        self.sun_deg, self.bearing_deg = case_light.sun_height_deg, case_light.sun_bearing_deg
        self.shape = row("general_sky", "type", case_light.sky_type)
        bright = row("kittler", "type", case_light.sky_type)
        self.blue = bright["blue_share"]
        edges_h, edges_a = np.arange(0.0, 91.0), np.arange(-180.0, 181.0, 2.0)
        self.height, self.azimuth = (
            g.ravel()
            for g in np.meshgrid(
                (edges_h[1:] + edges_h[:-1]) / 2.0, (edges_a[1:] + edges_a[:-1]) / 2.0
            )
        )
        tall = np.diff(np.sin(np.radians(edges_h)))
        self.solid = np.tile(tall * np.radians(2.0), edges_a.size - 1)
        self.scale, self.even = 1.0, None
        shed = (self.bare(self.height, self.azimuth) * self.solid) @ np.sin(
            np.radians(self.height)
        )
        turbidity, sine = case_light.turbidity, np.sin(np.radians(self.sun_deg))
        if case_light.sky_type in (1, 3, 5):
            self.scale = 123.0 + 8600.0 * max(sine, 0.0)
            if self.sun_deg < 0.0:
                self.scale *= twilight_lx(self.sun_deg) / twilight_lx(0.0)
        elif self.sun_deg <= 0.0:
            self.scale = twilight_lx(self.sun_deg) / shed
        else:
            cosine = np.cos(np.radians(self.sun_deg))
            self.scale = 1000.0 * (
                (bright["a1"] * turbidity + bright["a2"]) * sine
                + 0.7 * (turbidity + 1.0) * sine ** bright["c"] / cosine ** bright["d"]
                + 0.04 * turbidity
            )
        self.diffuse_lx = shed * self.scale
        self.beam_lx = 0.0
        if case_light.beam and self.sun_deg > 0.0:
            mass = 1.0 / (sine + 0.50572 * (self.sun_deg + 6.07995) ** -1.6364)
            self.beam_lx = 133800.0 * np.exp(-mass * turbidity / (9.9 + 0.043 * mass))
        kelvin, at = column("sun_colour", "temperature_k"), column("sun_colour", "sun_height_deg")
        self.sun_mired = np.interp(
            np.log(max(self.sun_deg, 0.0) + 1.0), np.log(at + 1.0), 1e6 / kelvin
        )
        self.patches = self.spectrum(self.height, self.azimuth)
        self.level = (self.patches * (self.solid * np.sin(np.radians(self.height)))[:, None]).sum(
            axis=0
        ) + self.beam_lx * max(sine, 0.0) * light(self.sun_mired)[0]

    def bare(self, height, azimuth):
        """Luminance over that of the zenith (CIE S 011)."""
        a, b, c, d, e = (self.shape[k] for k in "abcde")
        sun = np.radians(max(self.sun_deg, 0.01))
        zenith = np.radians(90.0 - height)
        apart = np.arccos(
            np.clip(
                np.cos(zenith) * np.sin(sun)
                + np.sin(zenith) * np.cos(sun) * np.cos(np.radians(azimuth - self.bearing_deg)),
                -1.0, 1.0,
            )
        )  # fmt: skip

        def glow(angle):
            return 1.0 + c * (np.exp(d * angle) - np.exp(d * np.pi / 2)) + e * np.cos(angle) ** 2

        def rise(angle):
            return 1.0 + a * np.exp(b / np.maximum(np.cos(angle), 1e-6))

        return glow(apart) * rise(zenith) / (glow(np.pi / 2 - sun) * rise(0.0))

    def luminance(self, height, azimuth):
        return self.scale * self.bare(np.asarray(height, float), np.asarray(azimuth, float))

    def spectrum(self, height, azimuth):
        """Spectral luminance of directions, shape (..., wavelengths)."""
        bright = self.luminance(height, azimuth)
        mean = self.diffuse_lx / np.pi

        def told(key):
            return np.interp(
                self.sun_deg, column("twilight_colour", "sun_height_deg"),
                column("twilight_colour", key),
            )  # fmt: skip

        day = step((self.sun_deg - 10.0) / 35.0)
        middle = day * (-132.1 + 59.77 * np.log10(mean)) + (1.0 - day) * told("sky_mired")
        varied = step(self.sun_deg / 10.0)
        blue = np.maximum(middle + varied * 59.77 * np.log10(bright / mean), 40.0)
        away = (azimuth - self.bearing_deg + 180.0) % 360.0 - 180.0
        share = told("glow_share") * np.exp(-((height / 8.0) ** 2) - (away / 40.0) ** 2)
        blue = blue + share * (told("glow_mired") - blue)
        cloud = told("cloud_mired")
        mired = cloud + self.blue * (blue - cloud)
        return bright[:, None] * light(mired)

    def wall(self, facing, sunlit_share):
        """Light on an upright plane that faces an azimuth, by wavelength [lx]."""
        toward = np.cos(np.radians(self.height)) * np.cos(np.radians(self.azimuth - facing))
        from_sky = (self.patches * (self.solid * np.maximum(toward, 0.0))[:, None]).sum(axis=0)
        to_sun = np.cos(np.radians(self.sun_deg)) * np.cos(np.radians(self.bearing_deg - facing))
        from_sun = self.beam_lx * sunlit_share * max(to_sun, 0.0)
        return from_sky + from_sun * light(self.sun_mired)[0] + 0.1 * self.level / 2.0
