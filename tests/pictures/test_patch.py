"""The drawn water against the answer's: mean, spread and streaks over many random sheets."""

import numpy as np
import pytest

from tipsight.inputs.case import Light
from tipsight.pictures import patch
from tipsight.pictures.cast import Frame, cast
from tipsight.scene.look import shade
from tipsight.sight.clutter import KAPPA2, Clutter, spectra

FRAME = Frame(1.25, 400, 200, 100.0)
CLEAR = Light(12, 3.5, True, 35.0, 120.0)
SCENES = [  # wind, skyline, look-down
    (2.0, 0.5, 2.5),
    (2.0, 10.0, 4.5),
    (3.0, 0.5, 1.5),
    (3.0, 0.5, 9.0),
    (3.0, 10.0, 2.5),
    (3.0, 25.0, 2.5),
    (4.0, 0.5, 4.5),
    (4.0, 10.0, 2.5),
    (4.0, 20.0, 4.5),
    (6.0, 0.5, 2.5),
    (0.0, 0.5, 2.5),
    (0.0, 10.0, 4.5),
]


def pictures(of, count=4, frame=FRAME):
    """Return so many pictures of one water."""
    return np.array([
        patch.rippled(of, patch.water_sheet(of, frame, seed), frame, seed)[0] for seed in range(count)
    ])  # fmt: skip


@pytest.mark.parametrize(("wind", "skyline", "down"), SCENES)
def test_the_mean_is_that_of_the_facets(make, wind, skyline, down):
    """Within 5 %: the answer's water is the mean of what is drawn, in every channel of light."""
    of = make(wind, skyline, down)
    found = pictures(of, 16).mean(axis=(0, 1, 2))
    assert found[0] == pytest.approx(of.water[0], rel=0.05)
    assert found[3] == pytest.approx(of.water[3], rel=0.05)


@pytest.mark.parametrize(("wind", "skyline", "down"), SCENES[:-1])
def test_the_spread_is_that_of_the_facets(make, wind, skyline, down):
    """Within 30 %: rms over mean of the facets that sight lines meet, before pixels mix them.

    Found to be within a tenth but for one. The last scene is left out: without wind hardly one
    facet in ten thousand clears the skyline, and a few sheets do not hold enough of them.
    """
    of = make(wind, skyline, down)
    values = []
    for seed in range(4):
        seen = cast(patch.water_sheet(of, FRAME, seed), of.slope_of_sight, FRAME, finer=1)
        values.append(shade(of.here, down, -seen.rise_away, seen.rise_right)[..., 0])
    spread = np.std(values) / np.mean(values)
    assert spread == pytest.approx(float(of.look.facet_contrast[0]), rel=0.30)


def streaks(of, count=6):
    """Return frequencies across [1/mm], and noise by frequency as drawn and as the answer has it."""
    frame = Frame(1.25, 1200, 240, 100.0)
    window = np.hanning(frame.rows)[:, None] * np.hanning(frame.columns)[None, :]
    up = np.abs(np.fft.fftfreq(frame.rows, frame.pixel_mm))
    power = np.zeros(frame.columns)
    for picture in pictures(of, count, frame):
        contrast = picture[..., 0] / of.water[0] - 1.0
        spectrum = np.abs(np.fft.fft2((contrast - contrast.mean()) * window)) ** 2
        power += spectrum[(up > 0.006) & (up < 0.06)].mean(axis=0)
    power *= frame.pixel_mm**2 / (window**2).sum() / count
    across = np.abs(np.fft.fftfreq(frame.columns, frame.pixel_mm))
    look = of.look
    clutter = Clutter(float(look.facet_contrast[0]), of.sea.clutter_wavelength_mm, look.slope_rms,
                      look.bank_height_deg, float(look.look_down_deg[0]))  # fmt: skip
    return across, power, spectra([clutter], across[None, :])[0]


STREAKS = [(2.0, 0.5, 2.5), (3.0, 0.5, 2.5), (3.0, 10.0, 2.5), (2.0, 10.0, 4.5), (4.0, 10.0, 2.5)]


@pytest.mark.parametrize(("wind", "skyline", "down"), STREAKS)
def test_the_streaks_cost_a_tip_what_the_answer_says(make, wind, skyline, down):
    """Within 30 %: the level of a 4 by 40 mm tip among the streaks as drawn and as the answer has
    them, eyes of 60 years at 30 m (blur 12 mm, flux threshold 0.21 arcmin²). Found: 1.02 to 1.23."""
    of = make(wind, skyline, down)
    fx, drawn, told = streaks(of)
    fu = np.linspace(0.0, 0.06, 200)[:, None]
    mm, blur = 30.0 * 0.290888, 1.35 * 30.0 * 0.290888
    passed = np.exp(-4.0 * np.pi**2 * blur**2 * (fx**2 + fu**2))
    own = (0.21 * mm**2) ** 2 / (4.0 * np.pi * blur**2)
    tip = (np.sinc(4.0 * fx) * np.sinc(40.0 * fu)) ** 2

    def level(noise):
        return np.sqrt((tip * passed / (own + KAPPA2 * noise * passed)).sum())

    assert level(drawn) == pytest.approx(level(told), rel=0.30)


@pytest.mark.parametrize(
    ("skyline", "ratio"), [(0.5, 0.24), (10.0, 0.55)], ids=["open water", "banked water"]
)
def test_known_miss_the_longest_streaks_are_drawn_weaker(make, skyline, ratio):
    """A miss of its size, not a promise: between 0.003 and 0.006 cycles/mm, streaks of 80 to 170 mm
    to the side, the drawn noise is this share of the answer's; from 0.012 on the two agree. The
    answer has the more cautious figure, by up to a quarter of the level (see above)."""
    fx, drawn, told = streaks(make(3.0, skyline, 2.5))
    band = (fx > 0.003) & (fx < 0.006)
    assert drawn[band].mean() / told[band].mean() == pytest.approx(ratio, rel=0.30)


def test_glitter_falls_at_random_with_the_answers_mean(make):
    """Sun lane: sparkles bring the mean up to that of the water with its glint."""
    of = make(3.0, 0.5, 4.5, Light(12, 3.5, True, 25.0, 0.0), sun_ahead=True)
    found = pictures(of, 6).mean(axis=(0, 1, 2))
    calm = make(3.0, 0.5, 4.5, Light(12, 3.5, False, 25.0, 0.0), sun_ahead=True)
    assert of.water[0] > 1.02 * calm.water[0]
    assert found[0] == pytest.approx(of.water[0], rel=0.05)


def test_no_sparkles_where_the_bank_hides_the_sun(make):
    of = make(3.0, 30.0, 4.5, Light(12, 3.5, True, 25.0, 0.0))
    assert not patch._sparkles(of, FRAME, 0).any()


def test_mist_lies_over_tip_and_water(make, case):
    thick = make(3.0, 10.0, 2.5, Light(visibility_m=100.0))
    thin = make(3.0, 10.0, 2.5)
    assert pictures(thick, 1)[..., 0].std() < 0.7 * pictures(thin, 1)[..., 0].std()


def test_bands_stand_where_they_are_and_light_adds_up(make, case):
    of = make()
    frame = Frame(0.5, 41, 80, 5.0)
    picture = patch.with_tip(patch.blank(of, frame), of, frame, case.tip, 4.0)
    extra = (picture - of.water)[..., 0].sum() * frame.pixel_mm**2
    tip = of.look.tips[0, 0, 0] - of.water[0]
    wide = 3.0 + 2 * 3 * 0.03
    assert extra == pytest.approx(tip * wide * (20.0 - 4.0), rel=1e-9)
    rows = np.flatnonzero(np.abs(picture - of.water).sum(axis=(1, 2)) > 0)
    assert frame.heights_mm()[rows[0]] == pytest.approx(4.0, abs=0.5)
    assert frame.heights_mm()[rows[-1]] == pytest.approx(20.0, abs=0.5)
