"""The panels of the view from the bank: each tip before one water, in screen colours."""

import math
from collections.abc import Callable
from dataclasses import replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Answer
from tipsight.inputs.case import Case, Stretch, Tip
from tipsight.pictures import far_bank, patch, screen
from tipsight.pictures.cast import Frame, Seen
from tipsight.pictures.ripple import Sheet
from tipsight.pictures.stage import Scene, scene
from tipsight.pictures.subject import View, advised, deciding
from tipsight.scene import glitter, mist
from tipsight.sight import eye
from tipsight.sight.energy import MM_PER_ARCMIN_M
from tipsight.units import INCH_MM

Array = NDArray[np.float64]
Eyes = Literal["good", "told"]
Held = dict[Frame, tuple[Sheet, Seen]]

PIXELS_PER_MM = 96.0 / INCH_MM
"""Of a screen or a print, by the common reckoning of 96 to the inch."""
LOOK_FROM_M = 5.0
"""From so far away the picture takes up the angle of the real thing."""
WIDE_PX, TALL_PX, INSET_PX = 430, 190, 130
GAP_PX = 2
"""White between a wide panel and the strip of the far bank over it."""
FAR_PX = far_bank.ABOVE_PX + far_bank.WATER_PX + GAP_PX
"""What the strip adds to a wide panel's height."""
FOOT_SHARE = 0.38
"""How far up the panel the foot of the tip stands."""
ROOM_MM, BELOW_MM = 26.0, 14.0
"""Left free about the longest tip in the magnified panel, and how much of it below the foot."""
YOUNG_YEARS = 25.0


def good_eyes(case: Case) -> Case:
    """Return the question of one who is young and sees all colours."""
    angler = replace(
        case.angler,
        age_years=YOUNG_YEARS,
        mar_arcmin=1.0,
        colour_vision="normal",
        own_eye_factor=1.0,
    )
    return replace(case, angler=angler)


def veil_cd_m2(of: Scene, age_years: float) -> float:
    """Return the veil over the water in eyes of an age: of sun, sky and the sun's own lane."""
    down = float(of.look.look_down_deg[0])
    lane = of.here.once(("lane", down), lambda: np.stack(glitter.beside(of.here, down)))
    sources = (of.look.sky_glare, (lane[0], lane[1]))
    return sum(float(eye.veil(lux, angle, age_years).sum()) for lux, angle in sources)


def weakened(of: Scene, picture: Array, pixel_mm: float) -> Array:
    """Return the picture as the told eyes have it, for one whose eyes are good."""
    angler = of.case.angler
    veil, young = veil_cd_m2(of, angler.age_years), veil_cd_m2(of, YOUNG_YEARS)
    bright = float(of.water[0])
    share = (bright + young) / (bright + veil) * angler.own_eye_factor
    share *= float(eye.age_factor(YOUNG_YEARS, bright) / eye.age_factor(angler.age_years, bright))
    blur_mm = (
        float(eye.defocus_arcmin(angler.mar_arcmin)) * of.case.place.range_m * MM_PER_ARCMIN_M
    )
    return screen.dulled(picture, of.water, min(share, 1.0), blur_mm / pixel_mm)


def veil_share(of: Scene) -> float:
    """Return how much of the light in the eye is the glare's veil, between the sparkles [0 to 1]."""
    sparkles, *_ = glitter.glitter(of.here, of.look.look_down_deg)
    place, light = of.case.place, of.case.light
    far_m = math.hypot(place.range_m, place.eye_height_m)
    clear = float(mist.transmittance(far_m, light.visibility_m))
    veil = veil_cd_m2(of, of.case.angler.age_years)
    return veil / (float(of.water[0]) - clear * float(sparkles[0, 0]) + veil)


def _veiled(of: Scene, picture: Array) -> Array:
    """Return the picture under the veil that young eyes have by the water and not at a screen."""
    young = veil_cd_m2(of, YOUNG_YEARS)
    return screen.dulled(picture, of.water, float(of.water[0]) / (float(of.water[0]) + young), 0.0)


def as_seen(of: Scene, picture: Array, frame: Frame, eyes: Eyes) -> Array:
    """Return a picture with all that is lost of it in the eyes asked about, but not at a screen."""
    picture = _veiled(of, picture)
    return weakened(of, picture, frame.pixel_mm) if eyes == "told" else picture


def frames(range_m: float, longest_mm: float) -> tuple[Frame, Frame]:
    """Return the panel of true angular size, and the magnified one, about the foot of the tip.

    A pixel of the panel at 5 m takes up the angle of what it shows at the tip's distance [m]; the
    other holds the longest tip [mm].

    Examples
    --------
    >>> panel, inset = frames(36.576, 45.0)
    >>> round(panel.pixel_mm / 36576 * 5000 * PIXELS_PER_MM, 6)
    1.0
    """
    pixel = range_m / LOOK_FROM_M / PIXELS_PER_MM
    near = min((longest_mm + ROOM_MM) / TALL_PX, pixel)
    below = FOOT_SHARE * TALL_PX * pixel
    return (
        Frame(pixel, WIDE_PX, TALL_PX, below),
        Frame(near, INSET_PX, TALL_PX, BELOW_MM if near < pixel else below),
    )


def _far(of: Scene, frame: Frame, eyes: Eyes) -> Array:
    """Return the strip over a panel as it is seen; squeezed, so that no blur is that of an eye."""
    return as_seen(of, far_bank.strip(of, frame), replace(frame, pixel_mm=math.inf), eyes)


def view_of(answer: Answer, which: View, eyes: Eyes) -> Scene:
    """Return a water of an answer as it is drawn: for which eyes, and in which light, on which patch."""
    light, stretch = which
    case = replace(good_eyes(answer.case) if eyes == "good" else answer.case, light=light)
    return scene(case, stretch, [answer.tip_in_hand.tip, advised(answer)[1].tip])


def pictures(
    answer: Answer,
    water: Stretch,
    eyes: Eyes = "good",
    seed: int = 0,
    held: Held | None = None,
    shrink: Callable[[Array], Array] | None = None,
) -> list[NDArray[np.uint8]]:
    """Return the four panels of one water in screen colours.

    Parameters
    ----------
    answer : Answer
        The answer.
    water : Stretch
        The water behind the tip.
    eyes : str
        ``good`` for young eyes of full colour, ``told`` for those of the question.
    seed : int
        Which of all possible ripples.
    held : dict, optional
        Filled with the surface, which is the same for each water; pass it on to the next.
    shrink : callable, optional
        What makes the light of a panel a smaller picture of it, such as one of true size.

    Returns
    -------
    list of numpy.ndarray
        Panel, the strip of the far bank over it, and inset for the tip in hand, then for the
        advised one, top row first; with ``shrink``, a third behind each pair: the panel shrunk.
    """
    tips = [answer.tip_in_hand.tip, advised(answer)[1].tip]
    views = [deciding(answer, water, tip) for tip in tips]
    scenes = {which: view_of(answer, which, eyes) for which in views}
    first = scenes[views[0]]
    panel, inset = frames(first.case.place.range_m, max(tip.showing_mm for tip in tips))
    if held is None or not held:
        held = {} if held is None else held
        sheet = patch.water_sheet(first, panel, seed)
        for frame in {panel, inset}:
            held[frame] = sheet, patch.seen_on(first, sheet, frame)
    both = panel, inset
    shown = {which: _Shown(of, both, held, seed, eyes) for which, of in scenes.items()}
    alike = tips[0] == tips[1]
    found: list[NDArray[np.uint8]] = []
    for tip, which in list(zip(tips, views, strict=True))[: 1 if alike else 2]:
        found += shown[which].with_tip(tip, shrink)
    return 2 * found if alike else found


class _Shown:
    """One water in one light, ready for any tip: its empty panels and what the screen makes of them."""

    def __init__(
        self, of: Scene, both: tuple[Frame, Frame], held: Held, seed: int, eyes: Eyes
    ) -> None:
        self.of, self.eyes, self.both = of, eyes, both
        self.empty = {
            frame: patch.rippled(of, sheet, frame, seed, seen)
            for frame, (sheet, seen) in held.items()
        }
        panel = both[0]
        self.white = screen.white_cones(of.here)
        self.bright = screen.exposure_cd_m2(
            of.here, self.white, self.empty[panel][0], of.look.tips[:, 0]
        )
        beyond = self.on_screen(_far(of, panel, eyes))
        gap = np.full((GAP_PX, *beyond.shape[1:]), 255, np.uint8)
        self.over = np.concatenate([beyond, gap])

    def on_screen(self, picture: Array) -> NDArray[np.uint8]:
        """Return light in the screen's colours."""
        return screen.rgb(picture, self.white, self.bright)

    def with_tip(
        self, tip: Tip, shrink: Callable[[Array], Array] | None
    ) -> list[NDArray[np.uint8]]:
        """Return the panel of a tip with the strip of the far bank, its inset, and the panel shrunk."""
        wide, near = (
            as_seen(self.of, patch.with_tip(empty, self.of, frame, tip, covered), frame, self.eyes)
            for frame, (empty, covered) in ((one, self.empty[one]) for one in self.both)
        )
        found = [
            np.concatenate([self.over, self.on_screen(wide[::-1])]),
            self.on_screen(near[::-1]),
        ]
        if shrink:
            found.append(self.on_screen(shrink(wide[::-1])))
        return found
