"""The light of a patch of water with a tip in it, in the channels of the answer."""

import math

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.swim import finish_of
from tipsight.inputs.case import Tip
from tipsight.load.tips import showing_diameter_mm
from tipsight.pictures.cast import Frame, Seen, cast
from tipsight.pictures.ripple import STEP_MM, WIDEST_STEP_MM, Sheet, Waves, waves
from tipsight.pictures.stage import Scene
from tipsight.scene import daylight, observer
from tipsight.scene.glint import SPARKLE_MM2, SUN_SR, glint
from tipsight.scene.glitter import GLINT_FROM_DEG
from tipsight.scene.look import shade

Array = NDArray[np.float64]

MOST_AWAY_MM = 12000.0
"""Water farther than this from the tip repeats."""
CASTS_PER_MM = 8.0
"""Fewer sight lines in a row of the picture make fine grain that no water has."""

AT_ONCE = 20
"""Rows of the picture that are lit together; all of a far one would take a gigabyte."""


def blank(of: Scene, frame: Frame) -> Array:
    """Return a picture filled with the mean water [cd/m2], shape (rows, columns, 4), lowest row first."""
    return np.broadcast_to(of.water, (frame.rows, frame.columns, 4)).copy()


def water_sheet(of: Scene, frame: Frame, seed: int = 0) -> Sheet:
    """Return a sheet of water for the largest picture of it; waters under one sky and wind share it."""
    return moving_water(of, frame, seed).at()


def moving_water(of: Scene, frame: Frame, seed: int = 0) -> Waves:
    """Return the sea of the largest picture of it."""
    swell = 1e3 * of.sea.height_m
    near = (frame.below_mm + swell) / of.slope_of_sight + 30.0
    far = (frame.tall_mm - frame.below_mm + swell) / of.slope_of_sight + 30.0
    wide = max(frame.wide_mm + 30.0, 4.0 * of.sea.clutter_wavelength_mm)
    return waves(
        of.sea,
        of.case.wind,
        of.here.slopes,
        near_mm=min(near, MOST_AWAY_MM),
        far_mm=min(far, MOST_AWAY_MM),
        wide_mm=wide,
        seed=seed,
        step_mm=min(max(STEP_MM, frame.pixel_mm), WIDEST_STEP_MM),
    )


def seen_on(of: Scene, drawn: Sheet, frame: Frame) -> Seen:
    """Return the facets that a picture shows, cast finely enough for its rows: see `CASTS_PER_MM`."""
    return cast(drawn, of.slope_of_sight, frame, math.ceil(CASTS_PER_MM * frame.pixel_mm))


def rippled(
    of: Scene, drawn: Sheet, frame: Frame, seed: int = 0, seen: Seen | None = None
) -> tuple[Array, float]:
    """Return a picture of the rippled water, and how much of a tip's foot it covers.

    Parameters
    ----------
    of : Scene
        The water.
    drawn : Sheet
        From `water_sheet`.
    frame : Frame
        The picture.
    seed : int
        Where the sun's sparkles fall.
    seen : Seen, optional
        From `seen_on` of the same sheet and frame, which waters under one wind share.

    Returns
    -------
    picture : numpy.ndarray
        Channels, rows from the lowest up, shape (rows, columns, 4) [cd/m2].
    covered_mm : float
        Height above the still waterline to which water covers the tip.

    Notes
    -----
    Each facet that a sight line meets is lit by `look.shade`, the sum whose mean is the answer's
    water; then the sun's sparkles fall at random with the answer's coverage and luminance; then
    the mist.
    """
    seen = seen or seen_on(of, drawn, frame)
    return laid_out(of, drawn, frame, _lit(of, seen, frame), seen, seed), seen.crest_mm


def laid_out(of: Scene, drawn: Sheet, frame: Frame, coarse: Array, seen: Seen, seed: int) -> Array:
    """Return the light on the sheet's columns at those of the picture, with sparkles and mist."""
    at = (frame.across_mm() - seen.across_mm[0]) / drawn.step_mm
    left = np.clip(at.astype(int), 0, coarse.shape[1] - 2)
    share = (at - left)[:, None]
    picture = coarse[:, left] * (1.0 - share) + coarse[:, left + 1] * share
    picture += _sparkles(of, frame, seed)
    return np.asarray(of.clear * picture + of.look.air[0])


def _lit(of: Scene, seen: Seen, frame: Frame) -> Array:
    """Return the light of each row of the picture on each column of the sheet, its casts mixed."""
    down = math.degrees(math.atan(of.slope_of_sight))
    finer = len(seen.rise_away) // frame.rows
    rows = []
    for row in range(0, len(seen.rise_away), finer * AT_ONCE):
        part = slice(row, row + finer * AT_ONCE)
        facets = shade(of.here, down, -seen.rise_away[part], seen.rise_right[part])
        rows.append(facets.reshape(-1, finer, *facets.shape[1:]).mean(axis=1))
    return np.concatenate(rows)


def _sparkles(of: Scene, frame: Frame, seed: int) -> Array:
    """Return the sun's sparkles before the mist."""
    here, none = of.here, np.zeros((1, 1, 4))
    sun = here.state.light.sun_height_deg
    covered = sun < here.stretch.bank_height_deg
    if not here.sun_in_view or covered or sun < GLINT_FROM_DEG:
        return none
    down = math.degrees(math.atan(of.slope_of_sight))
    found = glint(down, sun, here.sun_azimuth_deg, here.slopes)
    kept = float(observer.passed(found.upright, found.level, here.tint))
    colour = here.state.beam_normal_lx * (daylight.beam_weights(here.state) @ here.seen)
    mean = float(found.per_lux) * kept * 2.0 / float(found.upright + found.level) * colour
    one = kept * colour / SUN_SR * SPARKLE_MM2 / frame.pixel_mm**2
    if one[0] <= 0.0:
        return none
    count = np.random.default_rng(seed + 1).poisson(mean[0] / one[0], (frame.rows, frame.columns))
    return np.asarray(count[..., None] * one)


def with_tip(
    picture: Array,
    of: Scene,
    frame: Frame,
    tip: Tip,
    covered_mm: float,
    at_mm: float = 0.0,
    raised_mm: float = 0.0,
) -> Array:
    """Return a picture with a tip before it, each band in the light that the answer gives it.

    Parameters
    ----------
    picture : numpy.ndarray
        From `blank` or `rippled`.
    of : Scene
        The water; one of whose finishes each band has.
    frame : Frame
        The picture.
    tip : Tip
        The tip.
    covered_mm : float
        Height above the waterline to which water covers it [mm].
    at_mm : float
        Its middle, right of the picture's [mm].
    raised_mm : float
        How much higher it stands than at rest [mm].

    Returns
    -------
    numpy.ndarray
        A pixel that is covered in part is mixed.
    """
    half = showing_diameter_mm(tip) / 2.0
    edges_x = (np.arange(frame.columns + 1) - frame.columns / 2.0) * frame.pixel_mm
    edges_u = np.arange(frame.rows + 1) * frame.pixel_mm - frame.below_mm
    wide = np.diff(np.clip(edges_x, at_mm - half, at_mm + half)) / frame.pixel_mm
    result, top_mm = picture, tip.showing_mm + raised_mm
    for number, band in enumerate(tip.bands):
        last = number == len(tip.bands) - 1
        foot = covered_mm if last else max(top_mm - band.to_top_mm, covered_mm)
        head = max(top_mm - band.from_top_mm, foot)
        tall = np.diff(np.clip(edges_u, foot, head)) / frame.pixel_mm
        light = of.look.tips[of.finishes.index(finish_of(tip, band.paint)), 0]
        cover = np.outer(tall, wide)[..., None]
        result = result * (1.0 - cover) + cover * light
    return result
