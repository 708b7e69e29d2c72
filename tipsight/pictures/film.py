"""A short film: both tips drift on the moving water, crests cover them, and one bite comes."""

import io
import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tipsight.advice import swim
from tipsight.advice.answer import Answer, Block
from tipsight.advice.swim import Swim
from tipsight.afloat import boils, frequencies, motion
from tipsight.pictures import patch, screen, truesize
from tipsight.pictures.cast import Frame, Seen
from tipsight.pictures.panels import (
    BELOW_MM,
    LOOK_FROM_M,
    PIXELS_PER_MM,
    ROOM_MM,
    Eyes,
    as_seen,
    view_of,
)
from tipsight.pictures.ripple import LONGEST, SHORTEST_RAD_M, Sheet, Waves
from tipsight.pictures.stage import Scene
from tipsight.pictures.subject import advised, in_common, waters
from tipsight.scene.look import shade

Array = NDArray[np.float64]
Picture = NDArray[np.uint8]

WIDE_PX, TALL_PX, WORDS_PX = 480, 270, 22
NEAR_PX, GAP_PX = 104, 4
"""Height of the magnified pictures at the top, and what parts them."""
SECONDS, FRAMES_A_SECOND = 5, 12
MOST_BYTES = 2_000_000
QUALITIES = (80, 60, 40, 20)
BITE_AT_S, DOWN_S, UNDER_S, UP_S = 2.6, 0.4, 0.9, 0.5
"""When the bite comes, how long it draws the tip down, holds it and lets it up (judgement)."""
DROWNED_MM = 10.0
"""How far under the still water it takes the top of a tip."""
SLOPE_STEPS = 161
"""Slopes along, and as many across, at which the light of a facet is worked out."""
FOOT_SHARE = 0.3
"""How far up the main picture the foot of the tips stands."""


@dataclass(frozen=True, eq=False)
class Drift:
    """One tip in time: where it stands across, and how high it rides; arrays (T,)."""

    block: Block
    at_mm: float
    raised_mm: Array


def bite_mm(times_s: Array, showing_mm: float) -> Array:
    """Return how far the film's bite has taken a tip down at each time [mm].

    Examples
    --------
    >>> bite_mm(np.array([0.0, 2.8, 3.2, 3.9, 5.0]), 30.0).tolist()
    [0.0, 20.0, 40.0, 40.0, 0.0]
    """
    corners = np.cumsum([BITE_AT_S, DOWN_S, UNDER_S, UP_S])
    deep = showing_mm + DROWNED_MM
    return np.round(np.interp(times_s, corners, [0.0, deep, deep, 0.0]), 9)


def _boil_mm(here: Swim, rms_mm: float, times_s: Array, seed: int) -> Array:
    """Return how much boils lift a tip: a random sum with the boils' own shares of variance."""
    omega, edges = frequencies.boil_grid()
    shares = boils.variance_shares(edges, boils.time_scale_s(here.stream))
    phase = np.random.default_rng(seed).uniform(0.0, 2.0 * math.pi, omega.size)
    waves = np.cos(omega * times_s[:, None] + phase)
    return np.asarray(rms_mm * (waves @ np.sqrt(2.0 * shares)))


def drift(here: Swim, sea: Waves, block: Block, at_mm: float, times_s: Array, seed: int) -> Drift:
    """Return how a tip rides on the drawn waves, on boils, and in the bite.

    Parameters
    ----------
    here : Swim
        The swim.
    sea : Waves
        The drawn sea.
    block : Block
        The tip.
    at_mm : float
        Right of the picture's middle [mm].
    times_s : numpy.ndarray
        When, shape (T,) [s].
    seed : int
        Which of all possible boils.
    """
    k = np.geomspace(0.5 * LONGEST * 2e3 * math.pi / 2e4, 1.1 * SHORTEST_RAD_M, 600)
    rigged = here.rigged(block.tip)
    share = motion.follows(rigged, here.sea, here.stream, block.painted_mm, k)
    each = np.hypot(sea.away_rad_m, sea.right_rad_m)
    followed = np.interp(each, k, share.real) + 1j * np.interp(each, k, share.imag)
    ride = here.rides(block.painted_mm)
    return Drift(
        block,
        at_mm,
        sea.along_mm(followed, times_s, at_mm)
        + _boil_mm(here, float(ride.boil_rms_mm[0]), times_s, seed)
        - ride.sink_mm
        - bite_mm(times_s, block.tip.showing_mm),
    )


class Lamp:
    """The light of a facet by its two slopes, from one table of `shade`."""

    def __init__(self, of: Scene, water: Sheet) -> None:
        down = math.degrees(math.atan(of.slope_of_sight))
        self.ends = [1.3 * float(np.abs(s).max()) for s in (water.rise_away, water.rise_right)]
        away, right = (np.linspace(-end, end, SLOPE_STEPS) for end in self.ends)
        self.table = shade(of.here, down, *np.broadcast_arrays(-away[:, None], right[None, :]))

    def lit(self, seen: Seen, rows: int) -> Array:
        """Return the light of each row of a picture on each column of the sheet."""
        last = SLOPE_STEPS - 1
        away, right = (
            np.clip(np.rint((s / end + 1.0) / 2.0 * last), 0, last).astype(np.intp)
            for s, end in zip((seen.rise_away, seen.rise_right), self.ends, strict=True)
        )
        facets = self.table[away, right]
        finer = len(facets) // rows
        return np.asarray(facets.reshape(rows, finer, *facets.shape[1:]).mean(axis=1))


def frames(range_m: float, longest_mm: float) -> tuple[Frame, Frame]:
    """Return the main picture, as large as the panels of the still view, and a magnified one.

    Examples
    --------
    >>> main, near = frames(36.576, 34.0)
    >>> main.columns, main.rows, near.rows
    (480, 144, 104)
    """
    pixel = range_m / LOOK_FROM_M / PIXELS_PER_MM
    tall = TALL_PX - NEAR_PX - WORDS_PX
    near = min((longest_mm + ROOM_MM) / NEAR_PX, pixel)
    return (
        Frame(pixel, WIDE_PX, tall, FOOT_SHARE * tall * pixel),
        Frame(near, (WIDE_PX - GAP_PX) // 2, NEAR_PX, BELOW_MM),
    )


def stills(
    answer: Answer,
    eyes: Eyes = "told",
    seed: int = 0,
    count: int = SECONDS * FRAMES_A_SECOND,
    tell: Callable[[int, int], None] | None = None,
) -> list[Picture]:
    """Return the film's pictures, without words, each of shape (270, 480, 3).

    Parameters
    ----------
    answer : Answer
        The answer; its worst water for the tip in hand is drawn.
    eyes : str
        ``good`` for young eyes of full colour, ``told`` for those of the question.
    seed : int
        Which of all possible ripples.
    count : int
        How many pictures, spread over the film's five seconds.
    tell : callable, optional
        Told how many are done, of how many.

    Notes
    -----
    The sea is that of `view`, its waves run by the dispersion of gravity and surface tension
    (`afloat.chop`), seen by one who follows the tip: the stream does not move it. The tip follows
    each wave as in the answer's ride.
    """
    blocks = answer.tip_in_hand, advised(answer)[1]
    worst = answer.tip_in_hand.visibility.worst.name
    water = next(one for one in waters(answer) if one.name == worst)
    of = view_of(answer, in_common(answer, water, [block.tip for block in blocks]), eyes)
    case = of.case
    main, near = frames(case.place.range_m, max(block.tip.showing_mm for block in blocks))
    sea = patch.moving_water(of, main, seed)
    times = np.arange(count) * SECONDS / count
    here = swim.swim(case)
    side = main.wide_mm / 4.0
    drifts = [
        drift(here, sea, block, at, times, seed)
        for block, at in zip(blocks, (-side, side), strict=True)
    ]
    first = sea.at()
    lamp, white = Lamp(of, first), screen.white_cones(of.here)
    bright, found = 0.0, []
    for number, time_s in enumerate(times):
        drawn = sea.at(float(time_s)) if number else first
        moment = seed + 1000 * number
        picture, _ = _water(of, lamp, drawn, main, moment)
        bright = bright or screen.exposure_cd_m2(of.here, white, picture, of.look.tips[:, 0])
        whole = np.full((TALL_PX, WIDE_PX, 3), 255, np.uint8)
        for which, one in enumerate(drifts):
            close, crest = _water(of, lamp, _moved(drawn, one.at_mm), near, moment)
            tip, raised = one.block.tip, float(one.raised_mm[number])
            picture = patch.with_tip(picture, of, main, tip, crest, one.at_mm, raised)
            close = patch.with_tip(close, of, near, tip, crest, raised_mm=raised)
            left = which * (near.columns + GAP_PX)
            whole[:NEAR_PX, left : left + near.columns] = _shown(
                of, near, close, eyes, white, bright
            )
        whole[NEAR_PX + WORDS_PX :] = _shown(of, main, picture, eyes, white, bright)
        found.append(whole)
        if tell:
            tell(number + 1, count)
    return found


def _water(of: Scene, lamp: Lamp, water: Sheet, frame: Frame, moment: int) -> tuple[Array, float]:
    """Return one picture of the water, and the height to which it covers a tip in its middle."""
    seen = patch.seen_on(of, water, frame)
    lit = lamp.lit(seen, frame.rows)
    return patch.laid_out(of, water, frame, lit, seen, moment), seen.crest_mm


def _shown(
    of: Scene, frame: Frame, picture: Array, eyes: Eyes, white: Array, bright: float
) -> Picture:
    return screen.rgb(as_seen(of, picture, frame, eyes)[::-1], white, bright)


def _moved(water: Sheet, at_mm: float) -> Sheet:
    """Return the water with what stands so far right of the middle [mm] in the middle."""
    by = -round(at_mm / water.step_mm)
    return Sheet(
        np.roll(water.height_mm, by, 1),
        np.roll(water.rise_away, by, 1),
        np.roll(water.rise_right, by, 1),
        water.step_mm,
        water.tip_row,
    )


def webp(
    answer: Answer,
    eyes: Eyes = "told",
    seed: int = 0,
    count: int = SECONDS * FRAMES_A_SECOND,
    tell: Callable[[int, int], None] | None = None,
) -> bytes:
    """Return the film of `stills` with its words as an animated WebP of at most 2 MB, which repeats.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> webp(advise(Question(behind=["dark"])), count=2)[8:12]
    b'WEBP'
    """
    from PIL import Image, ImageDraw

    from tipsight.pictures import legend, view

    pictures = []
    said = legend.film_words(answer)
    tips = [block.tip for block in (answer.tip_in_hand, advised(answer)[1])]
    main, near = frames(answer.case.place.range_m, max(tip.showing_mm for tip in tips))
    times = truesize.times_too_large()
    large, larger = legend.film_scale(times, times * main.pixel_mm / near.pixel_mm)
    for number, still in enumerate(stills(answer, eyes, seed, count, tell)):
        time_s = number * SECONDS / count
        picture = Image.fromarray(still)
        pen = ImageDraw.Draw(picture)
        view.label(pen, 4, TALL_PX - 4, large)
        view.label(pen, 4, NEAR_PX - 4, larger)
        bites = BITE_AT_S <= time_s < BITE_AT_S + DOWN_S + UNDER_S
        for left, words in zip((4, WIDE_PX // 2 + 4), said, strict=True):
            view.write(pen, left, NEAR_PX + 3, [legend.biting(words) if bites else words])
        pictures.append(picture)
    for quality in QUALITIES:
        out = io.BytesIO()
        pictures[0].save(
            out,
            "WEBP",
            save_all=True,
            append_images=pictures[1:],
            duration=round(1000 * SECONDS / count),
            loop=0,
            quality=quality,
            method=2,
        )
        if out.tell() <= MOST_BYTES:
            break
    return out.getvalue()
