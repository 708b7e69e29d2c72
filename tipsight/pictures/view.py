"""The view from the bank: the water patch and the tip, now and as advised, as a PNG."""

import io
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Answer, Block
from tipsight.inputs.case import Case, Stretch, Tip
from tipsight.output import things, words
from tipsight.pictures import patch, screen
from tipsight.pictures.cast import Frame, Seen, cast
from tipsight.pictures.ripple import Sheet
from tipsight.pictures.stage import Scene, scene
from tipsight.pictures.subject import advised, waters
from tipsight.sight import eye
from tipsight.sight.energy import MM_PER_ARCMIN_M
from tipsight.units import INCH_MM

if TYPE_CHECKING:
    from PIL import ImageDraw, ImageFont

Array = NDArray[np.float64]
Eyes = Literal["good", "told"]
Held = dict[Frame, tuple[Sheet, Seen]]

PIXELS_PER_MM = 96.0 / INCH_MM
"""Of a screen or a print, by the common reckoning of 96 to the inch."""
LOOK_FROM_M = 5.0
"""From so far away the picture takes up the angle of the real thing."""
WIDE_PX, TALL_PX, INSET_PX, MARGIN_PX = 430, 190, 130, 16
FOOT_SHARE = 0.38
"""How far up the panel the foot of the tip stands."""
YOUNG_YEARS = 25.0


@dataclass(frozen=True)
class Panel:
    """One tip before one water."""

    title: str
    tip: Tip
    seen: str
    """How well it is seen, in words."""


def _panels(answer: Answer, water: str) -> tuple[Panel, Panel]:
    def panel(title: str, block: Block) -> Panel:
        sight = next(s for s in block.visibility.by_background if s.name == water)
        seen = f"{sight.grade} (level {words.levels(sight.low, sight.high)})"
        return Panel(title, block.tip, seen)

    return panel("Now", answer.tip_in_hand), panel(*advised(answer))


def _said(panel: Panel) -> tuple[str, str]:
    """Return a panel's two lines of words."""
    tip = panel.tip
    return (
        f"{panel.title}: {things.stock(tip)}, {tip.showing_mm:.3g} mm showing: {panel.seen}",
        things.paint(tip.bands, tip.showing_mm),
    )


def describe(answer: Answer) -> str:
    """Return in words what the picture shows.

    Parameters
    ----------
    answer : Answer
        The answer that is drawn.

    Returns
    -------
    str
        For those who do not see the picture.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> describe(advise(Question(behind=["dark"])))[:47]
    'Computed view of the tip at 40 yd (37 m), as se'
    """
    place = answer.case.place
    rows = [
        f"Water behind the tip {water.name}: "
        + "; ".join(", ".join(_said(panel)) for panel in _panels(answer, water.name))
        for water in waters(answer)
    ]
    return (
        f"Computed view of the tip at {words.yards(place.range_m)}, as seen from "
        f"{place.eye_height_m:.2g} m above the water. {'. '.join(rows)}."
    )


def _good(case: Case) -> Case:
    angler = replace(
        case.angler,
        age_years=YOUNG_YEARS,
        mar_arcmin=1.0,
        colour_vision="normal",
        own_eye_factor=1.0,
    )
    return replace(case, angler=angler)


def _weakened(of: Scene, picture: Array, pixel_mm: float) -> Array:
    """Return the picture as the told eyes have it, for one whose eyes are good."""
    angler, seen = of.case.angler, of.look
    glare_lx, angle_deg = seen.sky_glare
    veil = float(eye.veil(glare_lx, angle_deg, angler.age_years).sum())
    young = float(eye.veil(glare_lx, angle_deg, YOUNG_YEARS).sum())
    bright = float(of.water[0])
    share = (bright + young) / (bright + veil) * angler.own_eye_factor
    share *= float(
        eye.age_factor(YOUNG_YEARS) / eye.age_factor(min(angler.age_years, eye.OLDEST_YEARS))
    )
    blur_mm = (
        float(eye.defocus_arcmin(angler.mar_arcmin)) * of.case.place.range_m * MM_PER_ARCMIN_M
    )
    return screen.dulled(picture, of.water, min(share, 1.0), blur_mm / pixel_mm)


def frames(range_m: float, longest_mm: float) -> tuple[Frame, Frame]:
    """Return the panel of true angular size, and the magnified one.

    Parameters
    ----------
    range_m : float
        Eye to tip [m].
    longest_mm : float
        Longest tip that is drawn [mm].

    Returns
    -------
    panel, inset : Frame
        Both about the foot of the tip.

    Notes
    -----
    A pixel of the panel at 5 m takes up the angle of what it shows at the tip's distance.

    Examples
    --------
    >>> panel, inset = frames(36.576, 45.0)
    >>> round(panel.pixel_mm / 36576 * 5000 * PIXELS_PER_MM, 6)
    1.0
    """
    pixel = range_m / LOOK_FROM_M / PIXELS_PER_MM
    near = min((longest_mm + 26.0) / TALL_PX, pixel)
    return (
        Frame(pixel, WIDE_PX, TALL_PX, FOOT_SHARE * TALL_PX * pixel),
        Frame(near, INSET_PX, TALL_PX, 14.0 if near < pixel else FOOT_SHARE * TALL_PX * pixel),
    )


def pictures(
    answer: Answer, water: Stretch, eyes: Eyes = "good", seed: int = 0, held: Held | None = None
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

    Returns
    -------
    list of numpy.ndarray
        Panel and inset for the tip in hand, then for the advised one, top row first.
    """
    case = _good(answer.case) if eyes == "good" else answer.case
    tips = [panel.tip for panel in _panels(answer, water.name)]
    of = scene(case, water, tips)
    panel, inset = frames(case.place.range_m, max(tip.showing_mm for tip in tips))
    wide = patch.roomy(panel)
    if held is None or not held:
        held = {} if held is None else held
        sheet = patch.water_sheet(of, wide, seed)
        for frame in {panel, inset, wide}:
            held[frame] = sheet, cast(sheet, of.slope_of_sight, frame)
    sheet, seen = held[wide]
    streaks = patch.streaks_of(of, sheet, wide, seen)
    empty = {
        frame: patch.rippled(of, sheet, frame, seed, held[frame][1], streaks)
        for frame in (panel, inset)
    }
    white = screen.white_cones(of.here)
    bright = screen.exposure_cd_m2(of.here, white, empty[panel][0], of.look.tips[:, 0])
    found = []
    for tip in tips:
        for frame in (panel, inset):
            picture, covered = empty[frame]
            picture = patch.with_tip(picture, of, frame, tip, covered)
            if eyes == "told":
                picture = _weakened(of, picture, frame.pixel_mm)
            found.append(screen.rgb(picture[::-1], white, bright))
    return found


@cache
def _font(size: int, bold: bool = False) -> "ImageFont.FreeTypeFont":
    from PIL import ImageFont

    name = "VeraBd.ttf" if bold else "Vera.ttf"
    file = resources.files("reportlab").joinpath("fonts").joinpath(name)
    return ImageFont.truetype(io.BytesIO(file.read_bytes()), size)


def _wrap(said: str, size: int, wide_px: float) -> list[str]:
    lines = [""]
    for word in said.split():
        longer = f"{lines[-1]} {word}".strip()
        if _font(size).getlength(longer) <= wide_px or not lines[-1]:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _write(
    pen: "ImageDraw.ImageDraw", x: int, y: int, lines: Sequence[str], size: int = 13
) -> int:
    for line in lines:
        pen.text((x, y), line, font=_font(size), fill="black")
        y += size + 5
    return y


def caveat(case: Case, times: float, eyes: str = "good") -> str:
    """Return what stands under the picture: whose eyes, how to look, and what a screen cannot show.

    Parameters
    ----------
    case : Case
        The question.
    times : float
        How many times the narrow panels are magnified [-].
    eyes : str
        ``good`` or ``told``.

    Returns
    -------
    str
        A few sentences.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> "magnified 5.1 times" in caveat(advise(Question(behind=["dark"])).case, 5.12)
    True
    """
    told = case.angler
    whose = (
        "young eyes that see all colours"
        if eyes == "good"
        else f"the eyes told ({told.age_years:.0f} years, colour vision {told.colour_vision})"
    )
    bright = (
        "it is far brighter than the dusk: by the water far less is seen than here"
        if case.light.sun_height_deg < 0
        else "it is far less bright than the day"
    )
    large = f"magnified {times:.2g} times" if times >= 1.05 else "no larger"
    return (
        f"Computed, not a photograph; for {whose}. Zoom until the bar is 100 mm long: from "
        f"{LOOK_FROM_M:g} m away the wide panels then have their true angular size; the narrow ones "
        f"are {large}. This is one of many ripples that such water makes; it moves, and crests cover "
        f"the foot by turns. A screen does not glow as fluorescent paint does, and {bright}."
    )


def png(answer: Answer, eyes: Eyes = "good", seed: int = 0) -> bytes:
    r"""Return the view from the bank.

    Parameters
    ----------
    answer : Answer
        The answer to be drawn: its waters, the tip in hand and the advised one.
    eyes : str
        ``good`` for young eyes of full colour, ``told`` for those of the question.
    seed : int
        Which of all the ripples that this wind could make.

    Returns
    -------
    bytes
        A PNG of 96 pixels to the inch; its words are kept in it as a description.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> png(advise(Question(behind=["dark"])))[:4]
    b'\x89PNG'
    """
    from PIL import Image, ImageDraw, PngImagePlugin

    place = answer.case.place
    pair = WIDE_PX + 6 + INSET_PX
    wide = 2 * pair + 3 * MARGIN_PX
    each = waters(answer)
    panel, inset = frames(
        place.range_m, max(b.tip.showing_mm for b in (answer.tip_in_hand, advised(answer)[1]))
    )
    rows = [
        [
            [line for words_ in _said(p) for line in _wrap(words_, 13, pair)]
            for p in _panels(answer, water.name)
        ]
        for water in each
    ]
    sky = answer.question.get("sky")
    title = f"View from the bank: {words.yards(place.range_m)}, eye {place.eye_height_m:.2g} m"
    title += f" above the water, {sky}" if sky else " above the water"
    said = caveat(answer.case, panel.pixel_mm / inset.pixel_mm, eyes)
    foot = _wrap(said, 13, wide - 2 * MARGIN_PX)
    tall = (
        62 + sum(30 + TALL_PX + 10 + 18 * max(map(len, row)) for row in rows) + 40 + 18 * len(foot)
    )
    sheet = Image.new("RGB", (wide, tall), "white")
    pen = ImageDraw.Draw(sheet)
    pen.text((MARGIN_PX, 14), title, font=_font(18, True), fill="black")
    held: Held = {}
    y = 48
    for water, row in zip(each, rows, strict=True):
        pen.text(
            (MARGIN_PX, y),
            f"Water behind the tip: {water.name}",
            font=_font(15, True),
            fill="black",
        )
        drawn = pictures(answer, water, eyes, seed, held)
        for side in range(2):
            x = MARGIN_PX + side * (pair + MARGIN_PX)
            sheet.paste(Image.fromarray(drawn[2 * side]), (x, y + 24))
            sheet.paste(Image.fromarray(drawn[2 * side + 1]), (x + WIDE_PX + 6, y + 24))
            _write(pen, x, y + 28 + TALL_PX, row[side])
        y += 30 + TALL_PX + 10 + 18 * max(map(len, row))
    bar = round(100.0 * PIXELS_PER_MM)
    pen.line([(MARGIN_PX, y + 10), (MARGIN_PX + bar, y + 10)], fill="black", width=2)
    for end in (0, bar):
        pen.line([(MARGIN_PX + end, y + 3), (MARGIN_PX + end, y + 17)], fill="black", width=2)
    pen.text((MARGIN_PX + bar + 10, y + 2), "100 mm", font=_font(13), fill="black")
    _write(pen, MARGIN_PX, y + 28, foot)
    info = PngImagePlugin.PngInfo()
    info.add_itxt("Description", describe(answer))
    out = io.BytesIO()
    sheet.save(out, "PNG", pnginfo=info, dpi=(96, 96), optimize=False)
    return out.getvalue()
