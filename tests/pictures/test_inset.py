"""The magnified picture of a tip: its bands are tall enough to tell, and told apart where eyes tell them.

Differences of colour are CIEDE2000 (CIE 142:2001), by colour-science; one of 10 and more is plain to
see at a glance, one of 2.3 just noticeable (Mahy et al. 1994, from memory).
"""

import io
from itertools import combinations, pairwise

import numpy as np
import pytest
from colours import colour
from PIL import Image, ImageDraw

from tipsight import Question, advise
from tipsight.pictures import panels, view
from tipsight.pictures.subject import advised, deciding, waters
from tipsight.sight.contrast import contrast

ORANGE = "black 0-15 mm, fluorescent orange 15-30 mm"
FACING = {"sky": "clear", "sun_is": "in my face", "sun_height": "25"}
BANDED = [
    dict(distance="40 yd", behind=["bright"], paint=ORANGE, showing="30 mm", diameter="2.5 mm"),
    dict(distance="25 yd", behind=["bright"], showing="24 mm", diameter="2 mm",
         paint="white 0-8 mm, black 8-16 mm, fluorescent red 16-24 mm"),
    dict(distance="15 yd", behind=["bright"], showing="10 mm", diameter="1.5 mm",
         paint="white 0-5 mm, black 5-10 mm"),
    dict(distance="30 yd", behind=["dark"], showing="20 mm", diameter="2 mm", age="65", **FACING,
         paint="black 0-10 mm, white 10-20 mm"),
    dict(distance="30 yd", behind=["bright"], showing="20 mm", diameter="2 mm", sky="dull overcast",
         sun_height="-3", paint="black 0-10 mm, fluorescent orange 10-20 mm"),
]  # fmt: skip
LANE = dict(distance="30 yd", behind=["sun lane"], sky="clear", sun_height="20", showing="20 mm",
            diameter="3 mm", paint="white 0-10 mm, black 10-20 mm")  # fmt: skip


def bands(told):
    """Return of each band of a tip its height and width [px], its colour, and its contrast by eye."""
    answer = advise(Question(**told))
    water, tip = waters(answer)[0], answer.tip_in_hand.tip
    of = panels.view_of(answer, deciding(answer, water, tip), "told")
    picture = panels.pictures(answer, water, "told")[1][::-1]
    longest = max(one.tip.showing_mm for one in (answer.tip_in_hand, advised(answer)[1]))
    pixel = panels.frames(answer.case.place.range_m, longest)[1].pixel_mm
    veil = panels.veil_cd_m2(of, answer.case.angler.age_years)
    worn = [finish.paint for finish in of.finishes]
    found, middle = [], panels.INSET_PX // 2
    for band in tip.bands:
        top, low = (
            (panels.BELOW_MM + tip.showing_mm - at) / pixel for at in (band.from_top_mm, band.to_top_mm)
        )
        inside = picture[round(0.7 * low + 0.3 * top) : round(0.3 * low + 0.7 * top), middle - 1 : middle + 1]
        rgb = np.median(inside.reshape(-1, 3), axis=0) / 255.0
        by_eye = contrast(of.look.tips[worn.index(band.paint), 0], of.water, veil)
        wide = tip.stock.diameter_mm / pixel
        found.append((top - low, wide, colour.XYZ_to_Lab(colour.sRGB_to_XYZ(rgb)), by_eye))
    return found


@pytest.mark.parametrize("told", BANDED, ids=lambda told: f"{told['distance']} {told['behind'][0]}")
def test_bands_that_eyes_tell_apart_are_told_apart_and_tall_enough_to_point_at(told):
    each = bands(told)
    for tall, wide, *_ in each:
        assert tall >= 15
        assert wide >= 5
    for (*_, one, seen), (*_, other, looks) in pairwise(each):
        assert np.abs(seen - looks).max() > 0.3
        assert colour.delta_E(one, other, method="CIE 2000") >= 10.0


def test_bands_that_no_eye_tells_apart_in_the_sun_s_lane_are_not_told_apart_in_the_picture():
    (*_, white, seen), (*_, black, looks) = bands(LANE)
    assert np.abs(seen - looks).max() < 0.02
    assert colour.delta_E(white, black, method="CIE 2000") < 2.3


def ratio(box):
    """Return the contrast of the darkest and the lightest of a cut-out, by WCAG 2.1's relative luminance."""
    value = np.asarray(box.convert("RGB"), dtype=float) / 255.0
    flat = np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)
    light = flat @ [0.2126, 0.7152, 0.0722]
    return (light.max() + 0.05) / (light.min() + 0.05)


@pytest.mark.parametrize("fine", [None, 18.0], ids=["screen not told", "with true size"])
def test_words_beside_the_panels_are_large_and_dark_and_nothing_lies_on_anything(monkeypatch, fine):
    """12 px and 7:1 (WCAG 2.1, 1.4.6) in the drawn sheet itself; every line and every panel apart."""
    words, placed = [], []
    text, paste = ImageDraw.ImageDraw.text, Image.Image.paste

    def written(pen, xy, said, *rest, font, **more):
        words.append((font.size, pen.textbbox(xy, said, font=font)))
        return text(pen, xy, said, *rest, font=font, **more)

    def pasted(sheet, picture, at):
        placed.append((*at, at[0] + picture.width, at[1] + picture.height))
        return paste(sheet, picture, at)

    monkeypatch.setattr(ImageDraw.ImageDraw, "text", written)
    monkeypatch.setattr(Image.Image, "paste", pasted)
    answer = advise(Question(distance="25 yd", behind=["dark", "bright"], paint=ORANGE))
    sheet = Image.open(io.BytesIO(view.png(answer, pixels_per_mm=fine)))
    assert len(placed) == (8 if fine is None else 12)
    for size, box in words:
        assert size >= 12
        assert ratio(sheet.crop(tuple(map(round, box)))) >= 7.0
    boxes = [box for _, box in words] + placed
    for left, top, right, bottom in boxes:
        assert left >= 0
        assert top >= 0
        assert right <= sheet.width
        assert bottom <= sheet.height
    for one, other in combinations(boxes, 2):
        apart = (one[2] <= other[0], other[2] <= one[0], one[3] <= other[1], other[3] <= one[1])
        assert any(apart), (one, other)
