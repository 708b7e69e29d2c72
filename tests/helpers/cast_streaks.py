"""Streaks of a drawn water as they are cast, measured, beside those that the answer reckons with.

Run as a script it prints the table of many waters, cast against fit: python cast_streaks.py 6.
"""

import math
import sys
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from scipy.optimize import least_squares

from tipsight.inputs import demo
from tipsight.inputs.case import Light, Stretch, Wind
from tipsight.inputs.settle import settle
from tipsight.pictures import patch, stage
from tipsight.pictures.cast import Frame
from tipsight.scene.look import shade
from tipsight.sight.clutter import KAPPA2, Clutter, shape, spectra

FRAME = Frame(1.25, 1200, 240, 100.0)
"""Some of the longest streaks side by side, and a tip of 30 mm several times over."""
PASSED_PER_MM = 0.002, 0.03
"""Frequencies up the picture that a tip of 30 mm passes."""
OPEN_RMS, BANK_RMS = (0.41, 0.11, 0.29), (0.36, 0.14, 0.26)
"""How far the fit is off the casts that it was made from: rms of the logarithms of B0, f0, B1."""
SKIES = {1: Light(1), 3: Light(3), 12: Light(12, 3.5, False, 30.0)}
"""By number of the standard general sky; the clear one without its sun."""
CASE = settle(demo.question())


def water(wind_m_s, fetch_m, down_deg, sky, bank_deg, bearing_deg=0.0, base=2e-4):
    """Return a scene 30 m off."""
    range_m = 30.0
    high_m = range_m * math.tan(math.radians(down_deg))
    place = replace(CASE.place, range_m=range_m, eye_height_m=high_m)
    wind = Wind(wind_m_s, bearing_deg, fetch_m=fetch_m, base_slope_variance=base)
    case = replace(CASE, place=place, wind=wind, light=SKIES[sky])
    return stage.scene(case, Stretch("w", 1.0, bank_deg), [CASE.tip])


def form(across_per_mm, b0, f0, b1):
    """Return the density over the frequencies across the picture [mm2]."""
    return b0 / (1.0 + (across_per_mm / f0) ** 2) ** 2 + b1


def told(of):
    """Return the streaks of a water that the answer reckons with, without the sun's sparkles."""
    return Clutter(
        float(of.look.facet_contrast[0]),
        of.sea.clutter_wavelength_mm,
        of.look.slope_rms,
        of.look.bank_height_deg,
        float(of.look.look_down_deg[0]),
        float(of.look.sky_correlation[0]),
        across=math.sin(math.radians(of.case.wind.bearing_deg)) ** 2,
    )


def fitted(of, r):
    """Return B0 [mm2], f0 [1/mm] and B1 [mm2] that the answer's fit has for a water and an r."""
    return np.array(shape(replace(told(of), sky_correlation=r)))


@dataclass
class Streaks:
    """What some casts of one water show."""

    mean: np.ndarray
    """Mean channels of the facets [cd/m2]."""
    f: float
    """rms over mean of the facets' luminance."""
    r: float
    """Correlation of that luminance with the slope along the sight, its sign left out."""
    across_per_mm: np.ndarray
    power: np.ndarray
    """Density over those frequencies, over f² [mm2]."""

    @property
    def shape(self):
        """B0 [mm2], f0 [1/mm] and B1 [mm2], fitted to the logarithm in bands of a fifth octave."""
        edges = np.geomspace(0.0012, 0.12, 19)
        inside = [
            (self.across_per_mm >= low) & (self.across_per_mm < high)
            for low, high in pairwise(edges)
        ]
        bands = [
            (self.across_per_mm[one].mean(), self.power[one].mean()) for one in inside if one.any()
        ]
        x, y = np.array(bands).T
        found = least_squares(
            lambda q: np.log(form(x, *np.exp(q)) / y), np.log([y[0], 0.008, y[-1]])
        )
        return np.exp(found.x)


def spectrum(picture, up_mm, across_mm):
    """Return a contrast's density by frequency up and across [mm2], its smooth trend up removed."""
    up = np.linspace(-1.0, 1.0, len(picture))
    trend = np.polyval(np.polyfit(up, picture.mean(axis=1), 3), up)
    window = np.hanning(picture.shape[0])[:, None] * np.hanning(picture.shape[1])[None, :]
    left = picture - trend[:, None]
    power = np.abs(np.fft.fft2((left - left.mean()) * window)) ** 2
    return power * up_mm * across_mm / (window**2).sum()


def measured(of, casts=6, frame=FRAME):
    """Return the streaks of some casts of a water through its mist, without the sun's sparkles."""
    down = math.degrees(math.atan(of.slope_of_sight))
    mean, sums, power = np.zeros(4), np.zeros(5), 0.0
    for seed in range(casts):
        sheet = patch.water_sheet(of, frame, seed)
        seen = patch.seen_on(of, sheet, frame)
        channels = of.clear * shade(of.here, down, -seen.rise_away, seen.rise_right)
        channels += of.look.air[0]
        mean += channels.mean(axis=(0, 1)) / casts
        light, slope = channels[..., 0], -seen.rise_away
        sums += [m.mean() for m in (light, slope, light**2, slope**2, light * slope)]
        rows = light.reshape(frame.rows, -1, light.shape[1]).mean(axis=1)
        found = spectrum(rows / rows.mean(), frame.pixel_mm, sheet.step_mm)
        up = np.abs(np.fft.fftfreq(frame.rows, frame.pixel_mm))
        passed = (up > PASSED_PER_MM[0]) & (up < PASSED_PER_MM[1])
        power = power + found[passed].mean(axis=0)
    light, slope, light2, slope2, both = sums / casts
    spread = math.sqrt(light2 - light**2)
    r = abs(both - light * slope) / spread / math.sqrt(slope2 - slope**2)
    f = spread / light
    across = np.abs(np.fft.fftfreq(power.size, sheet.step_mm))
    return Streaks(mean, f, r, across, power / casts / f**2)


def level(across_per_mm, power, range_m, wide_mm=4.0, tall_mm=40.0):
    """Return, to a scale, how well a tip is seen among noise by frequency across [mm2].

    A matched filter of eyes of 60 years: blur 1.35 arcmin, flux threshold 0.21 arcmin².
    """
    order = np.argsort(across_per_mm)
    fx, noise = across_per_mm[order], power[order]
    fu = np.linspace(0.0, 0.06, 200)[:, None]
    mm = range_m * 0.290888
    blur = 1.35 * mm
    passed = np.exp(-4.0 * np.pi**2 * blur**2 * (fx**2 + fu**2))
    own = (0.21 * mm**2) ** 2 / (4.0 * np.pi * blur**2)
    tip = (np.sinc(wide_mm * fx) * np.sinc(tall_mm * fu)) ** 2
    return math.sqrt((tip * passed / (own + KAPPA2 * noise * passed)).sum())


ROWS = [
    (wind, 50 if wind < 6 else 60, *row)
    for wind in (2, 3, 4, 6)
    for row in (
        *((2.5, 1, 0.5), (2.5, 12, 0.5), (2.5, 3, 0.5), (9, 3, 0.5), (4.5, 3, 0.5), (1.5, 1, 0.5)),
        *((2.5, 3, 10), (9, 3, 10), (2.5, 3, 20), (4.5, 1, 25), (4.5, 12, 6)),
    )
] + [(4, 200, 2.5, 3, 0.5), (4, 200, 2.5, 3, 10), (4, 200, 9, 3, 10)]
"""Wind [m/s], fetch [m], look-down [deg], sky, skyline [deg]."""


def main(casts):
    """Print each water's f, r, B0, f0 and B1 against the fit, then rms, mean and worst of how far off."""
    off = {False: [], True: []}
    for row in ROWS:
        of = water(*row)
        found, asked = measured(of, casts), told(of)
        cast, fit, x = found.shape, fitted(of, found.r), found.across_per_mm
        off[row[-1] > 1].append(np.log(cast / fit))
        said = ["wind {} fetch {} down {} sky {} bank {}:".format(*row)]
        said.append(f"f {found.f:.3f}/{asked.facet_contrast:.3f}")
        said.append(f"r {found.r:.2f}/{asked.sky_correlation:.2f}")
        for name, one, other, digits in zip(("B0", "f0", "B1"), cast, fit, (0, 4, 3), strict=True):
            said.append(
                f"{name} {one:.{digits}f}/{other:.{digits}f} ({math.log(one / other):+.2f})"
            )
        said.append("level")
        for far_m in (9.0, 18.0, 37.0):
            among = level(x, found.f**2 * found.power, far_m)
            said.append(f"{among / level(x, spectra(asked, x), far_m):.2f}")
        print(*said, flush=True)  # noqa: T201
    for banked, name in ((False, "open"), (True, "bank")):
        all_ = np.array(off[banked])
        rms, mean = np.sqrt((all_**2).mean(axis=0)).round(2), all_.mean(axis=0).round(2)
        worst = np.abs(all_).max(axis=0).round(2)
        print(name, len(all_), *map(list, (rms, mean, worst)))  # noqa: T201


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 6)
