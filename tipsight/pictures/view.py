"""The view from the bank: the water patch and the tip, now and as advised, as a PNG."""

import io
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache, partial
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Answer, Block
from tipsight.advice.facts import Care
from tipsight.inputs.case import Case, Tip
from tipsight.output import measures, names, telling
from tipsight.output.measures import ANGLER, Reader
from tipsight.pictures import far_bank, letters, truesize
from tipsight.pictures.panels import (
    FAR_PX,
    INSET_PX,
    LOOK_FROM_M,
    PIXELS_PER_MM,
    TALL_PX,
    WIDE_PX,
    Eyes,
    Held,
    frames,
    good_eyes,
    pictures,
    veil_share,
)
from tipsight.pictures.stage import scene
from tipsight.pictures.subject import advised, waters

if TYPE_CHECKING:
    from PIL import ImageDraw, ImageFont

Array = NDArray[np.float64]

MARGIN_PX = 16
GREY_FROM = 0.15
"""Share of a veil in the light from which black looks grey (judgement)."""
TRUE_PX = 34
"""What a line of words over the pictures of true size takes up."""
BEYOND = (
    f"The strip on top is squeezed: sky and far bank to {far_bank.ABOVE_PX * far_bank.ROW_DEG:.0f} "
    "degrees up, and under them the water that mirrors them, from there to the panel, its ripple "
    "evened out."
)
"""What the strip of the far bank is."""
SIZE_PX, LEAD_PX = 13, 18
"""Of the words under the panels, and from line to line."""


@dataclass(frozen=True)
class Panel:
    """One tip before one water."""

    title: str
    tip: Tip
    seen: str
    """How well it is seen, in words."""


def _panels(answer: Answer, water: str) -> tuple[Panel, ...]:
    def panel(title: str, block: Block) -> Panel:
        sight = next(s for s in block.visibility.by_background if s.name == water)
        seen = f"{sight.grade} (level {measures.levels(sight.low, sight.high)})"
        return Panel(title, block.tip, seen)

    place, block = advised(answer)
    if block.tip == answer.tip_in_hand.tip:
        return (panel("Now, and as advised", block),)
    return panel("Now", answer.tip_in_hand), panel(f"Advised, at the {place}", block)


def veiled(answer: Answer, eyes: Eyes = "told") -> tuple[str, ...]:
    """Return a sentence for each water on which glare turns a black tip grey."""
    case = good_eyes(answer.case) if eyes == "good" else answer.case
    tips = [block.tip for block in (answer.tip_in_hand, advised(answer)[1])]
    if not any(band.paint == "black" for tip in tips for band in tip.bands):
        return ()
    return tuple(
        f"On {water.name} water black looks grey: the glare lays a veil over it."
        for water in waters(answer)
        if veil_share(scene(case, water, tips)) >= GREY_FROM
    )


def _said(panel: Panel) -> tuple[str, str]:
    """Return a panel's two lines of words."""
    tip = panel.tip
    return (
        f"{panel.title}: {names.stock(tip)}, {tip.showing_mm:.3g} mm showing: {panel.seen}",
        names.paint(tip.bands, tip.showing_mm),
    )


def captions(answer: Answer) -> dict[str, tuple[tuple[str, str, str], ...]]:
    """Return by water the title and the two lines of words of each tip, in the order of `drawn`."""
    return {
        water.name: tuple((panel.title, *_said(panel)) for panel in _panels(answer, water.name))
        for water in waters(answer)
    }


def film_words(answer: Answer) -> tuple[str, str]:
    """Return what stands under each tip of the film, on the water where the one in hand is worst."""
    worst = answer.tip_in_hand.visibility.worst
    now, better = (
        next(s for s in block.visibility.by_background if s.name == worst.name).grade
        for block in (answer.tip_in_hand, advised(answer)[1])
    )
    return f"Now: {now}", f"Advised: {better}"


def biting(words: str) -> str:
    """Return a tip's words while the bite holds it down."""
    return f"{words} - a bite"


def film_scale(main: float, near: float) -> tuple[str, str]:
    """Return what stands in the film: how many times too large the main and the upper pictures are."""
    wide, close = map(truesize.about, (main, near))
    far = f"{100 * truesize.READ_FROM_M:.0f} cm"
    return f"about {wide} times too large, read from {far}", f"about {close} times"


def film_described(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return in words what the film shows."""
    now, better = film_words(answer)
    worst = answer.tip_in_hand.visibility.worst
    return (
        f"Computed film of both tips at {reader.distance(answer.case.place.range_m)} on {worst.name} "
        f"water. {now}; {better[0].lower()}{better[1:]}. One bite takes both down; above, each magnified. "
        f"{' '.join(sun_care(answer))}"
    ).rstrip()


def drawn(
    answer: Answer,
    eyes: Eyes = "told",
    seed: int = 0,
    pixels_per_mm: float | None = None,
) -> tuple[bytes, ...]:
    """Return the panels of `png` one by one, each with its inset behind it, as PNG.

    Where the pixels of the screen are told, a third picture of true size follows each pair.
    """
    held: Held = {}
    shrink = _shrink(truesize.times_too_large(pixels_per_mm)) if pixels_per_mm else None
    return tuple(
        _encoded(picture)
        for water in waters(answer)
        for picture in pictures(answer, water, eyes, seed, held, shrink)
    )


def _shrink(times: float) -> Callable[[Array], Array]:
    return partial(truesize.shrunk, times=times)


def too_large(
    answer: Answer,
    pixels_per_mm: float = PIXELS_PER_MM,
    read_from_m: float = truesize.READ_FROM_M,
) -> tuple[float, float]:
    """Return how many times too large the wide and the magnified panels are, for one who reads them.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> wide, near = too_large(advise(Question(behind=["dark"], showing="45 mm")))
    >>> wide, 50.0 < near < 100.0
    (12.5, True)
    """
    longest = max(b.tip.showing_mm for b in (answer.tip_in_hand, advised(answer)[1]))
    panel, inset = frames(answer.case.place.range_m, longest)
    times = truesize.times_too_large(pixels_per_mm, read_from_m)
    return times, times * panel.pixel_mm / inset.pixel_mm


def _encoded(picture: NDArray[np.uint8]) -> bytes:
    from PIL import Image

    out = io.BytesIO()
    Image.fromarray(picture).save(out, "PNG")
    return out.getvalue()


def heading(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return what is looked at, from how high, under which sky."""
    place, sky = answer.case.place, answer.question.get("sky")
    said = f"{reader.distance(place.range_m)}, eye {place.eye_height_m:.2g} m above the water"
    return f"{said}, {sky}" if sky else said


def sun_care(answer: Answer) -> tuple[str, ...]:
    """Return the answer's own caution where the sun or its lane is looked at, else nothing."""
    return tuple(telling.caution(one) for one in answer.cautions if one.kind is Care.SUN)


def foot(answer: Answer, eyes: Eyes = "told") -> str:
    """Return the `caveat` of an answer's panels, with what else is to be said of them."""
    wide, near = too_large(answer)
    said = caveat(answer.case, near / wide, eyes)
    return " ".join((*sun_care(answer), *veiled(answer, eyes), said, BEYOND))


def describe(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return in words what the picture shows, for those who do not see it.

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
        f"Computed view of the tip at {reader.distance(place.range_m)}, as seen from "
        f"{place.eye_height_m:.2g} m above the water. {'. '.join(rows)}. {' '.join(sun_care(answer))}"
    ).rstrip()


@cache
def _font(size: int, bold: bool = False) -> "ImageFont.FreeTypeFont":
    from PIL import ImageFont

    return ImageFont.truetype(letters.file(letters.BOLD if bold else letters.PLAIN), size)


def write(pen: "ImageDraw.ImageDraw", x: int, y: int, lines: Sequence[str]) -> None:
    """Write lines of words on a picture, from their upper left corner down."""
    for line in lines:
        pen.text((x, y), line, font=_font(SIZE_PX), fill="black")
        y += LEAD_PX


def label(pen: "ImageDraw.ImageDraw", x: int, foot_y: int, words: str) -> None:
    """Write a few words over a picture, on a ground of their own."""
    left, top, right, bottom = pen.textbbox((x, foot_y), words, font=_font(SIZE_PX), anchor="ld")
    pen.rectangle((left - 3, top - 2, right + 3, bottom + 2), fill="white")
    pen.text((x, foot_y), words, font=_font(SIZE_PX), fill="black", anchor="ld")


def sized(read_from_m: float = truesize.READ_FROM_M) -> str:
    """Return what stands over a picture of true size."""
    return f"True size, read from {100 * read_from_m:.0f} cm"


def _drawn_at(large: tuple[float, float], read_from_m: float) -> str:
    """Return what stands under a panel: how many times too large it is, and its inset."""
    wide, near = map(truesize.about, large)
    return (
        f"Read from {100 * read_from_m:.0f} cm, drawn about {wide} times too large; "
        f"magnified, about {near} times"
    )


def caveat(case: Case, times: float, eyes: str = "good") -> str:
    """Return what stands under the picture: whose eyes, how to look, and what a screen cannot show.

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
        else f"the eyes told ({told.age_years:.0f} years, colour vision "
        f"{told.colour_vision}), and so much paler as they lose of contrast"
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
        f"are {large}. This is one of many ripples that such water makes; it moves, and crests "
        "cover the foot by turns. "
        f"A screen does not glow as fluorescent paint does, and {bright}."
    )


def png(
    answer: Answer,
    eyes: Eyes = "told",
    seed: int = 0,
    pixels_per_mm: float | None = None,
    read_from_m: float = truesize.READ_FROM_M,
) -> bytes:
    r"""Return the view from the bank.

    Parameters
    ----------
    answer : Answer
        The answer to be drawn: its waters, the tip in hand and the advised one.
    eyes : str
        ``good`` for young eyes of full colour, ``told`` for those of the question.
    seed : int
        Which of all the ripples that this wind could make.
    pixels_per_mm : float, optional
        Of the screen that shows it; told, each tip is first drawn at its true angular size.
    read_from_m : float
        From the eyes to that screen [m].

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

    pair = WIDE_PX + 6 + INSET_PX
    wide = 2 * pair + 3 * MARGIN_PX
    each = waters(answer)
    large = too_large(answer, pixels_per_mm or PIXELS_PER_MM, read_from_m)
    rows = [
        [
            [
                line
                for said in (*_said(p), _drawn_at(large, read_from_m))
                for line in letters.broken(said, SIZE_PX, pair)
            ]
            for p in _panels(answer, water.name)
        ]
        for water in each
    ]
    said = letters.broken(foot(answer, eyes), SIZE_PX, wide - 2 * MARGIN_PX)
    times = large[0] if pixels_per_mm else None
    true_tall = TRUE_PX + round(TALL_PX / times) if times else 0
    tall = (
        62
        + sum(30 + true_tall + FAR_PX + TALL_PX + 10 + LEAD_PX * max(map(len, row)) for row in rows)
        + 40
        + LEAD_PX * len(said)
    )
    sheet = Image.new("RGB", (wide, tall), "white")
    pen = ImageDraw.Draw(sheet)
    title = f"View from the bank: {heading(answer)}"
    pen.text((MARGIN_PX, 14), title, font=_font(18, True), fill="black")
    held: Held = {}
    y = 48
    for water, row in zip(each, rows, strict=True):
        head = f"Water behind the tip: {water.name}"
        pen.text((MARGIN_PX, y), head, font=_font(15, True), fill="black")
        shrink = _shrink(times) if times else None
        each_tip = 3 if times else 2
        drawn = pictures(answer, water, eyes, seed, held, shrink)
        for side, words in enumerate(row):
            x, top = MARGIN_PX + side * (pair + MARGIN_PX), y + 24 + true_tall
            panel, inset, *true = map(
                Image.fromarray, drawn[each_tip * side : each_tip * (side + 1)]
            )
            if times:
                write(pen, x, y + 24, [sized(read_from_m)])
                sheet.paste(true[0], (x + (WIDE_PX - true[0].width) // 2, y + 46))
            sheet.paste(panel, (x, top))
            sheet.paste(inset, (x + WIDE_PX + 6, top + FAR_PX))
            write(pen, x, top + 4 + FAR_PX + TALL_PX, words)
        y += 30 + true_tall + FAR_PX + TALL_PX + 10 + LEAD_PX * max(map(len, row))
    bar = round(100.0 * PIXELS_PER_MM)
    pen.line([(MARGIN_PX, y + 10), (MARGIN_PX + bar, y + 10)], fill="black", width=2)
    for end in (0, bar):
        pen.line([(MARGIN_PX + end, y + 3), (MARGIN_PX + end, y + 17)], fill="black", width=2)
    pen.text((MARGIN_PX + bar + 10, y + 2), "100 mm", font=_font(SIZE_PX), fill="black")
    write(pen, MARGIN_PX, y + 28, said)
    info = PngImagePlugin.PngInfo()
    info.add_itxt("Description", describe(answer))
    out = io.BytesIO()
    sheet.save(out, "PNG", pnginfo=info, dpi=(96, 96), optimize=False)
    return out.getvalue()
