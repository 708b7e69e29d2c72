"""Water and tips once more, slowly, under the light of `slow_light`.

Each facet of the water, each side of the stick and each wavelength that a paint takes is one term
of a sum.
"""

import numpy as np
from slow_light import NM, Sky, column, eyes, light, row

CHUNK = 4000


# --- surfaces ------------------------------------------------------------------------------------


def smooth(of):
    edge = of["step"] / (1.0 + np.exp(-(NM - of["edge_nm"]) / of["width_nm"]))
    hump = of["bump"] * np.exp(-(((NM - of["centre_nm"]) / of["spread_nm"]) ** 2) / 2.0)
    return of["low"] + edge + hump


def leaving(paint, falling, seasons=0.0):
    """Return what a paint sends on of light that falls on it, wavelength by wavelength [lx]."""
    of = row("paints", "name", paint)
    if of["fluorescent"] == "no":
        return smooth(of) * falling
    gap = of["gap"] * np.exp(-(((NM - of["gap_nm"]) / of["gap_width_nm"]) ** 2) / 2.0)
    taken = of["takes"] / (1.0 + np.exp((NM - of["takes_edge_nm"]) / of["takes_width_nm"]))
    taken = taken * (1.0 - gap)
    wide = np.where(of["glow_nm"] > NM, of["glow_short_nm"], of["glow_long_nm"])
    glow = np.exp(-(((NM - of["glow_nm"]) / wide) ** 2) / 2.0)
    glow = glow / (5.0 * glow.sum())
    out = smooth(of) * (1.0 - taken) * falling
    for i, nm in enumerate(NM):
        useful = 0.6 + 0.4 / (1.0 + np.exp(-(nm - 400.0) / 8.0))
        quanta = of["quantum_yield"] * falling[i] * 5.0 * taken[i] * useful * nm
        for j in range(i + 1, NM.size):
            out[j] += 0.5 ** (seasons / 2.0) * quanta * glow[j] / NM[j]
    return out


def body(water_colour):
    """Return the radiance factor of the water's body by wavelength."""
    of = row("water_colours", "name", water_colour)
    nm, shape = (
        column("water_spectra", "wavelength_nm"),
        column("water_spectra", f"fu{of['forel_ule']:.0f}"),
    )
    return of["factor"] * np.interp(NM, nm, shape)


def mirrored(incidence):
    """Fresnel's two shares, across and along the plane, by the sines and tangents of the angles."""
    angle = np.clip(incidence, 1e-6, np.pi / 2 - 1e-9)
    inside = np.arcsin(np.sin(angle) / 1.333)
    across = np.sin(angle - inside) ** 2 / np.sin(angle + inside) ** 2
    along = np.tan(angle - inside) ** 2 / np.tan(angle + inside) ** 2
    return across, along


def of_level_water(height):
    return sum(mirrored(np.radians(90.0 - height))) / 2.0


# --- the swim ------------------------------------------------------------------------------------


class Swim:
    """One water and the tips before it, at one distance; channels as the eye has them [cd/m2]."""

    def __init__(self, case_light, stretch, wind, stream, angler, range_m, eye_height_m):
        self.sky, self.stretch = Sky(case_light), stretch
        self.eye = eyes(angler.colour_vision, angler.tint)
        self.across_too = 0.01 if angler.tint == "polarised" else 1.0
        self.down_deg = np.degrees(np.arctan(eye_height_m / range_m))
        grown = 0.5 * 5.12e-3 * wind.speed_m_s * np.clip(wind.speed_m_s - 1.0, 0.0, 1.0)
        turn = np.radians(wind.bearing_deg)
        along = 0.75 * np.cos(turn) ** 2 + 0.25 * np.sin(turn) ** 2
        base = wind.base_slope_variance
        self.slope_rms = np.sqrt(base + grown * along)
        self.side_rms = np.sqrt(base + grown * (1.0 - along))
        self.below = body(stream.water_colour) * self.sky.level
        self.clear = 0.05 ** (np.hypot(range_m, eye_height_m) / case_light.visibility_m)
        self.air = (1.0 - self.clear) * (
            self.sky.spectrum(np.zeros(1), np.zeros(1))[0] @ self.eye.T
        )
        mean, self.facet_contrast, self.sky_correlation = self._water()
        self.facet_contrast *= self.clear * mean[0] / (self.clear * mean + self.air)[0]
        self.water = self.clear * mean + self.air
        self.falling = self._falling()

    def bank(self, azimuth):
        """Spectral luminance of the bank that stands in a direction."""
        of = row("banks", "name", self.stretch.bank)
        share = 1.0 - of["self_shade"] if self.stretch.bank_sunlit else 0.0
        return smooth(of) * self.sky.wall(azimuth + 180.0, share) / np.pi

    def _around(self, height, azimuth):
        height = np.abs(height)
        found = self.sky.spectrum(height, azimuth)
        low = height < self.stretch.bank_height_deg
        ways = np.arange(-180.0, 181.0, 5.0)
        walls = np.array([self.bank(way) for way in ways])
        nearest = np.rint((azimuth[low] + 180.0) / 5.0).astype(int)
        found[low] = walls[nearest]
        return found

    def _water(self):
        """Mean channels over an even grid of slopes, the luminance's spread, and how it goes with them."""
        down = np.radians(self.down_deg)
        ways = np.linspace(-6.0, 6.0, 801), np.linspace(-5.0, 5.0, 31)
        zx, zy = (g.ravel() for g in np.meshgrid(*ways))
        weight = np.exp(-(zx**2 + zy**2) / 2.0)
        zx, zy = zx * self.slope_rms, zy * self.side_rms
        normal = np.stack([-zx, -zy, np.ones_like(zx)]) / np.sqrt(1.0 + zx**2 + zy**2)
        view = np.array([np.cos(down), 0.0, np.sin(down)])
        facing = view @ normal
        seen = facing > 0.0
        weight = (weight * facing / normal[2])[seen]
        normal, facing, zx = normal[:, seen], facing[seen], zx[seen]
        ray = 2.0 * facing * normal - view[:, None]
        height = np.degrees(np.arcsin(np.clip(ray[2], -1.0, 1.0)))
        azimuth = np.degrees(np.arctan2(ray[1], -ray[0]))
        across, along = mirrored(np.arccos(np.clip(facing, 0.0, 1.0)))
        # the plane of incidence against the upright plane through the sight
        plane = np.cross(view, normal.T)
        turn = plane[:, 1] ** 2 / np.maximum((plane**2).sum(axis=1), 1e-30)
        upright = turn * along + (1.0 - turn) * across
        level = turn * across + (1.0 - turn) * along
        leak = self.across_too
        kept = (upright + leak * level) / (1.0 + leak)
        through = 1.0 - kept
        under = self.below / np.pi / (1.0 - (0.333 / 2.333) ** 2)
        channels = np.empty((weight.size, 4))
        for start in range(0, weight.size, CHUNK):
            one = slice(start, start + CHUNK)
            comes = self._around(height[one], azimuth[one])
            light_ = kept[one, None] * comes + through[one, None] * under
            channels[one] = light_ @ self.eye.T
        weight = weight / weight.sum()
        mean = weight @ channels
        spread = np.cov(channels[:, 0], zx, aweights=weight, ddof=0)
        correlation = abs(spread[0, 1]) / np.sqrt(spread[0, 0] * spread[1, 1])
        return mean, np.sqrt(spread[0, 0]) / mean[0], correlation

    def _falling(self):
        """Light on the seen side of the stick by wavelength, a side and a direction at a time."""
        sky, sides = self.sky, np.arange(-89.0, 90.0, 2.0)
        seen = np.cos(np.radians(sides)) / np.cos(np.radians(sides)).sum()

        def share(azimuth):
            toward = np.cos(np.radians(np.asarray(azimuth)[..., None] - 180.0 - sides))
            return np.maximum(toward, 0.0) @ seen

        flat = np.cos(np.radians(sky.height)) * (1.0 + of_level_water(sky.height)) * sky.solid
        part = flat * share(sky.azimuth)
        low = (sky.height < self.stretch.bank_height_deg) & (np.abs(sky.azimuth) <= 90.0)
        total = (sky.patches[~low] * part[~low, None]).sum(axis=0)
        for azimuth in np.unique(sky.azimuth[low]):
            total += self.bank(azimuth) * part[low & (sky.azimuth == azimuth)].sum()
        ahead = np.abs((sky.bearing_deg + 180.0) % 360.0 - 180.0) <= 90.0
        if not (ahead and sky.sun_deg < self.stretch.bank_height_deg):
            sun = sky.beam_lx * np.cos(np.radians(sky.sun_deg)) * share(sky.bearing_deg)
            total += sun * (1.0 + of_level_water(sky.sun_deg)) * light(sky.sun_mired)[0]
        return total + self.below / 2.0

    def tip(self, paint, seasons=0.0):
        """Channels of a matt paint over white, through the mist."""
        sent = leaving(paint, self.falling, seasons) / np.pi
        return self.clear * (self.eye @ sent) + self.air

    def veil(self, age_years, pigment=0.5):
        """Glare's veil (CIE 146:2002) of the sun and of what is brighter than the water ahead."""
        sky = self.sky
        bright = sky.patches @ self.eye[0] - self.water[0]
        shed = np.maximum(bright, 0.0) * sky.solid * (sky.height > self.stretch.bank_height_deg)
        ahead = (np.abs((sky.bearing_deg + 180.0) % 360.0 - 180.0) <= 90.0) & (
            sky.sun_deg < self.stretch.bank_height_deg
        )
        sun = 0.0 if ahead else sky.beam_lx * (light(sky.sun_mired)[0] @ self.eye[0])
        total = 0.0
        for lux_, height, azimuth in (
            (shed, sky.height, sky.azimuth), (sun, sky.sun_deg, sky.bearing_deg),
        ):  # fmt: skip
            low, high, turn = np.radians(self.down_deg), np.radians(height), np.radians(azimuth)
            cosine = np.cos(low) * np.cos(high) * np.cos(turn) - np.sin(low) * np.sin(high)
            off = np.degrees(np.arccos(cosine))
            older = 1.0 + (age_years / 62.5) ** 4
            spread = 10.0 / off**3 + (5.0 / off**2 + 0.1 * pigment / off) * older
            spread = spread + 0.0025 * pigment
            total += np.sum(lux_ * np.maximum(cosine, 0.0) * spread)
        return total

    def contrast(self, tip, veil):
        """Luminance, red-green and yellow-violet contrast, and what the eye has adapted to."""
        bright, rods = self.water[0] + veil, self.water[3] + veil
        cones = 1.0
        for _ in range(300):  # CIE 191:2010, by its own iteration
            mixed = (cones * bright + (1.0 - cones) * 683.0 / 1699.0 * rods) / (
                cones + (1.0 - cones) * 683.0 / 1699.0
            )
            cones = np.clip(0.7670 + 0.3334 * np.log10(mixed), 0.0, 1.0)
        dim = (1.0 - cones) * 683.0 / 1699.0
        more = tip - self.water
        grey = (cones * more[0] + dim * more[3]) / (cones * bright + dim * rods)
        return np.array([grey, more[1] / bright, more[2] / bright]), mixed
