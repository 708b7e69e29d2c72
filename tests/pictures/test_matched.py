"""The drawn tip through a brute-force matched filter: it must give the level of the answer.

The picture is filtered as an image, pixel by pixel; of the library only the eye's own figures
(threshold, blur, floor) are used, none of its closed forms.
"""

from dataclasses import replace

import numpy as np
import pytest

from tipsight.advice.sighting import _here
from tipsight.advice.swim import swim
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.pictures import patch
from tipsight.pictures.cast import Frame
from tipsight.pictures.stage import scene
from tipsight.sight import eye
from tipsight.sight.channels import channels
from tipsight.sight.contrast import contrast

TWO = "black 0-15 mm, fluorescent orange 15-30 mm"
THREE = "white 0-10 mm, black 10-20 mm, fluorescent red 20-35 mm"
SCENES = [
    dict(distance="10 yd", paint="black", showing="12 mm", behind=["bright"]),
    dict(distance="20 yd", paint="fluorescent orange", showing="20 mm", behind=["dark"]),
    dict(distance="30 yd", paint="white", showing="25 mm", behind=["dark"], sky="dull overcast"),
    dict(distance="40 yd", paint="black", showing="40 mm", behind=["bright"], looks="ripple"),
    dict(distance="40 yd", paint=TWO, showing="30 mm", behind=["dark"]),
    dict(distance="40 yd", paint=TWO, showing="30 mm", behind=["bright"], looks="wavelets"),
    dict(distance="50 yd", paint="fluorescent yellow", showing="50 mm", behind=["broken"]),
    dict(distance="60 yd", paint="black", showing="55 mm", behind=["bright"], age=70),
    dict(distance="15 yd", paint="fluorescent red", showing="15 mm", behind=["dark"],
         colour_vision="red-blind"),
    dict(distance="25 yd", paint=THREE, showing="35 mm", behind=["bright"], sky="clear"),
    dict(distance="35 yd", paint="yellow", showing="30 mm", behind=["dark"], mist="300 m"),
    dict(distance="22 yd", paint="fluorescent red", showing="20 mm", behind=["bright"],
         sky="dull overcast", sun_height="-3"),
    dict(distance="30 yd", paint=TWO, showing="30 mm", behind=["sun lane"], sky="clear",
         sun_height="30"),
    dict(distance="20 yd", paint="white", showing="20 mm", behind=["dark"], sight="6/12"),
]  # fmt: skip


def filtered(picture, of, veil, adaptation, eyes, frame, area_mm2, bands, tip):
    """Return the level of the tip in a picture before even water."""
    seen = contrast(picture, of.water, veil)
    mm = of.case.place.range_m * 0.290888
    cell = frame.pixel_mm**2
    level2 = 0.0
    for k, channel in enumerate(channels(adaptation, eyes)):
        own, blur = float(channel.blur_arcmin) * mm, float(channel.seen_blur_arcmin) * mm
        shape = [2 * n + int(12 * blur / frame.pixel_mm) for n in seen.shape[:2]]
        picture_f = np.fft.rfft2(seen[..., k], shape) * cell
        fu = np.fft.fftfreq(shape[0], frame.pixel_mm)[:, None]
        fx = np.fft.rfftfreq(shape[1], frame.pixel_mm)[None, :]
        whole = np.sinc(fu * frame.pixel_mm) * np.sinc(fx * frame.pixel_mm)
        passed = np.exp(-4.0 * np.pi**2 * blur**2 * (fu**2 + fx**2))
        noise = (float(channel.flux_arcmin2) * mm**2) ** 2 / (4.0 * np.pi * own**2)
        twice = np.where(fx > 0.0, 2.0, 1.0)
        energy = (twice * np.abs(picture_f / whole) ** 2 * passed).sum()
        signal2 = energy / (shape[0] * shape[1] * cell) / noise
        inside = np.abs(seen[..., k]) ** 2
        rms2 = inside.sum() * cell / area_mm2
        if signal2 > 0.0 and rms2 > 0.0:
            level2 += float(channel.kept(area_mm2 / mm**2)) ** 2 / (
                1.0 / signal2 + float(channel.floor) ** 2 / rms2)  # fmt: skip
    return np.sqrt(level2)


@pytest.mark.parametrize(
    "told", SCENES, ids=lambda told: f"{told['distance']} {told['behind'][0]}"
)
def test_the_drawn_tip_has_the_answers_level(told):
    """Within 5 %, streaks left out on both sides."""
    question = Question(**told, diameter="4 mm", stock="solid")
    case = settle(question)
    here = swim(case)
    water = here.waters[case.stretches[0].name]
    light, stretch = here.waters.views[case.stretches[0].name]
    of = scene(replace(case, light=light), stretch, [case.tip])
    wide = 4.0 + 2 * case.tip.coats * 0.03
    # whole pixels across the tip and up each band, so that no mixed pixel spoils the Weber term
    pixel = wide / 8.0
    blur_px = 14.0 * case.place.range_m / 36.6 / pixel
    side = 8 + 2 * int(5 * blur_px)
    frame = Frame(
        pixel, side, int(case.tip.showing_mm / pixel) + 2 + int(8 * blur_px), 4 * blur_px * pixel
    )
    picture = patch.with_tip(patch.blank(of, frame), of, frame, case.tip, of.hidden_mm)
    adaptation = float(water.adaptation_cd_m2[here.here])
    glare_lx, angle = of.look.sky_glare
    veil = float(eye.veil(glare_lx, angle, here.eye.age_years).sum())
    area = wide * (case.tip.showing_mm - of.hidden_mm)
    level = filtered(picture, of, veil, adaptation, here.eye, frame, area, None, case.tip)
    told = float(_here(here, water, case.tip, streaks=(0.0,))[0])
    assert level == pytest.approx(told, rel=0.05)
