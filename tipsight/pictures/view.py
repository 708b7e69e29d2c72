"""The view from the bank: the water patch and the tip, now and as advised, as a PNG."""

import io
from collections.abc import Callable, Sequence
from functools import cache, partial
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from tipsight.advice.answer import Answer
from tipsight.pictures import legend, letters, truesize
from tipsight.pictures.panels import (
    FAR_PX,
    INSET_PX,
    PIXELS_PER_MM,
    TALL_PX,
    WIDE_PX,
    Eyes,
    Held,
    pictures,
)
from tipsight.pictures.subject import waters

if TYPE_CHECKING:
    from PIL import ImageDraw, ImageFont

Array = NDArray[np.float64]

MARGIN_PX = 16
TRUE_PX = 34
"""What a line of words over the pictures of true size takes up."""
SIZE_PX, LEAD_PX = 13, 18
"""Of the words under the panels, and from line to line."""


def drawn(
    answer: Answer,
    eyes: Eyes = "told",
    seed: int = 0,
    pixels_per_mm: float | None = None,
    only: int | None = None,
) -> tuple[bytes, ...]:
    """Return the panels of `png` one by one, each with its inset behind it, as PNG.

    All waters, or ``only`` one, counted from 0; none if there is none of that number.
    Where the pixels of the screen are told, a third picture of true size follows each pair.
    """
    held: Held = {}
    shrink = _shrink(truesize.times_too_large(pixels_per_mm)) if pixels_per_mm else None
    return tuple(
        _encoded(picture)
        for water in waters(answer)[slice(None) if only is None else slice(only, only + 1)]
        for picture in pictures(answer, water, eyes, seed, held, shrink)
    )


def _shrink(times: float) -> Callable[[Array], Array]:
    return partial(truesize.shrunk, times=times)


def _encoded(picture: NDArray[np.uint8]) -> bytes:
    from PIL import Image

    out = io.BytesIO()
    Image.fromarray(picture).save(out, "PNG")
    return out.getvalue()


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
    large = legend.too_large(answer, pixels_per_mm or PIXELS_PER_MM, read_from_m)
    rows = [
        [
            [
                line
                for said in (*legend.said_of(p), legend.drawn_at(large, read_from_m))
                for line in letters.broken(said, SIZE_PX, pair)
            ]
            for p in legend.panels_of(answer, water.name)
        ]
        for water in each
    ]
    said = " ".join((*legend.sun_care(answer), legend.foot(answer, eyes)))
    under = letters.broken(said, SIZE_PX, wide - 2 * MARGIN_PX)
    times = large[0] if pixels_per_mm else None
    true_tall = TRUE_PX + round(TALL_PX / times) if times else 0
    tall = (
        62
        + sum(30 + true_tall + FAR_PX + TALL_PX + 10 + LEAD_PX * max(map(len, row)) for row in rows)
        + 40
        + LEAD_PX * len(under)
    )
    sheet = Image.new("RGB", (wide, tall), "white")
    pen = ImageDraw.Draw(sheet)
    title = f"View from the bank: {legend.heading(answer)}"
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
                write(pen, x, y + 24, [legend.sized(read_from_m)])
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
    write(pen, MARGIN_PX, y + 28, under)
    info = PngImagePlugin.PngInfo()
    info.add_itxt("Description", legend.describe(answer))
    out = io.BytesIO()
    sheet.save(out, "PNG", pnginfo=info, dpi=(96, 96), optimize=False)
    return out.getvalue()
