"""The detector once more, by brute force: the picture drawn, transformed and filtered.

Nothing is shared with the closed forms but the eye's and the water's own figures.
"""

import numpy as np

from tipsight.sight.channels import channels
from tipsight.sight.clutter import KAPPA2, spectra

PIXELS_PER_BLUR = 16
ACROSS, UP = 2048, 1024
"""Pixels; the field must be some lengths of the longest streak wide, and taller than the tip."""


def covered(low, high, pixels, pixel_mm):
    """Return how much of each pixel of a line an interval covers."""
    edge = np.arange(pixels + 1) * pixel_mm
    return np.diff(np.clip(edge, low, high)) / pixel_mm


def draw(diameter_mm, edges_mm, contrast, pixel_mm):
    """Return the picture of a banded tip, one channel."""
    start = 4.3 * pixel_mm
    across = covered(start, start + diameter_mm, ACROSS, pixel_mm)
    foot = edges_mm[0]
    up = sum(
        c * covered(start + a - foot, start + b - foot, UP, pixel_mm)
        for c, a, b in zip(contrast, edges_mm[:-1], edges_mm[1:], strict=True)
    )
    return np.outer(up, across)


def brute_level(diameter_mm, edges_mm, contrast, *, range_m, adaptation_cd_m2, eye, clutter=None):
    """Return the visibility level of one banded tip, contrast of shape (bands, 3)."""
    edges_mm, contrast = np.asarray(edges_mm, float), np.asarray(contrast, float)
    mm = range_m * 1000.0 * np.tan(np.deg2rad(1.0 / 60.0))
    height = np.diff(edges_mm)
    area = diameter_mm * height.sum() / mm**2
    level2 = 0.0
    for k, channel in enumerate(channels(adaptation_cd_m2, eye)):
        own, seen = float(channel.blur_arcmin) * mm, float(channel.seen_blur_arcmin) * mm
        pixel = own / PIXELS_PER_BLUR
        picture = np.fft.rfft2(draw(diameter_mm, edges_mm, contrast[:, k], pixel))
        fu = np.fft.fftfreq(UP, pixel)[:, None]
        fx = np.fft.rfftfreq(ACROSS, pixel)[None, :]
        # a pixel averages over its square, which is undone
        picture = picture / (np.sinc(fu * pixel) * np.sinc(fx * pixel)) * pixel**2
        passed = np.exp(-((2.0 * np.pi * seen) ** 2) * (fx**2 + fu**2))
        noise = np.full_like(passed, (float(channel.flux_arcmin2) * mm) ** 2 * mm**2)
        noise /= 4.0 * np.pi * own**2
        if k == 0 and clutter is not None:
            noise += passed * clutter.factor * KAPPA2 * spectra(clutter, fx)
        twice = np.where(fx > 0.0, 2.0, 1.0)
        cell = 1.0 / (UP * pixel) / (ACROSS * pixel)
        signal2 = float((twice * np.abs(picture) ** 2 * passed / noise).sum() * cell)
        rms2 = float((contrast[:, k] ** 2 * height).sum() / height.sum())
        if signal2 > 0.0 and rms2 > 0.0:
            fade = area / (area + channel.fade_arcmin2)
            level2 += fade**2 / (1.0 / signal2 + float(channel.floor) ** 2 / rms2)
    return np.sqrt(level2)
