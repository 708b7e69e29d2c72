"""Colours of the screen: what stays true, and what other eyes lose."""

import numpy as np
import pytest

from tipsight.inputs.case import Angler, Finish, Light, Stream, Stretch, Wind
from tipsight.pictures import screen
from tipsight.scene import observer, spectra
from tipsight.scene.look import look
from tipsight.scene.setting import setting

WHITE = screen.cones_of(np.array([1.0, 0.0, 0.0, 0.0]))


def seen(*paints, vision="normal"):
    parts = Light(), Stretch(), Wind(), Stream(), Angler(colour_vision=vision)
    tips = look(*parts, [Finish(p) for p in paints], [30.0], 1.5).tips[:, 0]
    white = screen.white_cones(setting(*parts))
    return screen.rgb(tips, white, float(screen.linear(tips, white).max()))


def test_daylight_is_neutral():
    """Within 4 of 255: the opponent weights are printed to five figures and give D65 a hue of .01."""
    channels = spectra.daylight(6504.0) @ observer.channels()
    red, green, blue = screen.rgb(channels, WHITE, 2.0).astype(int)
    assert max(red, green, blue) - min(red, green, blue) <= 4


@pytest.mark.parametrize(
    ("paint", "strongest"), [("red", 0), ("green", 1), ("blue", 2), ("fluorescent orange", 0)]
)
def test_a_paint_has_its_colour(paint, strongest):
    assert seen(paint)[0].argmax() == strongest


def test_yellow_is_red_and_green():
    red, green, blue = seen("yellow")[0].astype(int)
    assert min(red, green) > 2 * blue


def test_luminance_stays_true_where_a_colour_does_not_fit():
    """Relative luminance of a screen: 0.2126 R + 0.7152 G + 0.0722 B, linear (IEC 61966-2-1)."""
    channels = np.array([0.6, 0.9, -0.4, 1.0])
    value = screen.rgb(channels, WHITE, 1.0) / 255.0
    flat = np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)
    assert flat @ [0.2126, 0.7152, 0.0722] == pytest.approx(0.6, abs=0.02)


def spread(vision):
    red, green = seen("red", "green", vision=vision).astype(float)
    return np.linalg.norm(red / red.sum() - green / green.sum())


def test_red_and_green_grow_alike_for_eyes_that_are_weak_in_them():
    normal = spread("normal")
    assert spread("red-weak") < 0.8 * normal
    assert spread("red-blind") < 0.45 * normal
    assert spread("green-blind") < 0.45 * normal


def test_dulling_keeps_the_mean_and_lowers_the_contrast():
    rng = np.random.default_rng(0)
    water = np.array([2.0, 0.1, 0.0, 4.0])
    picture = water + rng.normal(size=(60, 60, 4))
    dull = screen.dulled(picture, water, 0.5, 1.0)
    assert dull.mean() == pytest.approx(picture.mean() / 2 + water.mean() / 2, abs=0.05)
    assert dull[..., 0].std() < 0.5 * picture[..., 0].std()
    assert np.array_equal(screen.dulled(picture, water, 1.0, 0.0), picture)


def test_dark_water_is_shown_dark():
    parts = Light(), Stretch(bank_height_deg=25.0), Wind(), Stream(), Angler()
    dark = look(*parts, [Finish("black")], [30.0], 1.5)
    here = setting(*parts)
    white = screen.white_cones(here)
    full = screen.exposure_cd_m2(here, white, dark.water, dark.tips[:, 0])
    assert dark.water[0, 0] < 0.4 * full


def test_the_brightest_that_is_shown(monkeypatch):
    """Water to its hundredth, every primary of a paint, or a third of white paint's 0.85 / pi."""
    monkeypatch.setattr(screen, "tip_lx", lambda here: np.array([3000.0 * np.pi]))
    water = np.zeros((10, 20, 4))
    none = np.zeros((0, 4))
    assert screen.exposure_cd_m2(None, WHITE, water, none) == pytest.approx(850.0)
    water[:, 0, 0] = 2000.0  # a twentieth of it
    assert screen.exposure_cd_m2(None, WHITE, water, none) == pytest.approx(2000.0)
    water[1:, 0, 0] = 0.0  # a two-hundredth
    assert screen.exposure_cd_m2(None, WHITE, water, none) == pytest.approx(850.0)
    orange = np.array([[1500.0, 900.0, 0.0, 1500.0]])
    assert screen.exposure_cd_m2(None, WHITE, water, orange) == pytest.approx(
        screen.linear(orange, WHITE).max()
    )


@pytest.mark.parametrize("lms", [(0.6, 0.3, 0.02), (0.4, 0.4, 0.1), (0.9, 0.2, 0.001)])
def test_cones_come_back_from_what_the_observer_makes_of_them(lms):
    """Luminance L + M; red-green and yellow-violet such that D65 has neither, to the 1 % by which
    the printed weights miss that."""
    long, medium, short = lms
    bright = long + medium
    red = long - observer.D65_CONES[0] / observer.D65_CONES[1] * medium
    violet = short / observer.D65_CONES[2] - bright
    found = screen.cones_of(np.array([bright, red, violet, 1.0]))
    assert found == pytest.approx(lms, rel=0.01)
