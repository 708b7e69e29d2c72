"""The drawn water against the answer's: mean, spread and streaks over many random sheets."""

import numpy as np
import pytest

from tipsight.inputs.case import Light
from tipsight.pictures import patch
from tipsight.pictures.cast import Frame, cast
from tipsight.scene.look import shade
from tipsight.sight.clutter import KAPPA2, Clutter, spectra

FRAME = Frame(1.25, 400, 200, 100.0)
WIDE = Frame(1.25, 1200, 240, 100.0)
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


def drawn(of, frame=FRAME, count=4):
    """Return so many drawn waters: the facets met, how much the streaks change them, the picture."""
    for seed in range(count):
        sheet = patch.water_sheet(of, frame, seed)
        seen = cast(sheet, of.slope_of_sight, frame)
        streaks = patch.streaks_of(of, sheet, frame, seen)
        picture, _ = patch.rippled(of, sheet, frame, seed, seen, streaks)
        yield seen, streaks.at(frame.heights_mm(2), seen.across_mm), picture


@pytest.mark.parametrize(("wind", "skyline", "down"), SCENES)
def test_the_mean_is_that_of_the_facets(make, wind, skyline, down):
    """Within 5 %: the answer's water is the mean of what is drawn, in every channel of light."""
    of = make(wind, skyline, down)
    found = np.mean([picture.mean(axis=(0, 1)) for _, _, picture in drawn(of, count=16)], axis=0)
    assert found[0] == pytest.approx(of.water[0], rel=0.05)
    assert found[3] == pytest.approx(of.water[3], rel=0.05)


@pytest.mark.parametrize(("wind", "skyline", "down"), SCENES)
def test_the_spread_is_that_of_the_facets(make, wind, skyline, down):
    """Within 30 %: rms over mean, before pixels mix the facets, as cast and with their streaks.

    Found: as cast within a tenth; streaks brought to the answer's strength add up to 17 %. Without
    wind hardly one facet in ten thousand clears a skyline, so that sheets must be many and wide.
    """
    of = make(wind, skyline, down)
    as_cast, as_drawn = [], []
    for seen, factor, _ in drawn(of, *((FRAME, 4) if wind else (WIDE, 16))):
        facets = shade(of.here, down, -seen.rise_away, seen.rise_right)[..., 0]
        as_cast.append(facets)
        as_drawn.append(facets * factor)
    told = pytest.approx(float(of.look.facet_contrast[0]), rel=0.30)
    assert np.std(as_cast) / np.mean(as_cast) == told
    assert np.std(as_drawn) / np.mean(as_drawn) == told


def noise(of, pictures):
    """Return frequencies across [1/mm], and noise by frequency as drawn and as the answer has it.

    Of the frequencies up the picture those are taken that a tip of 30 mm passes. Estimated under
    a window, by another transform than the one that the drawing uses.
    """
    power, count = 0.0, 0
    frame = WIDE
    window = np.hanning(frame.rows)[:, None] * np.hanning(frame.columns)[None, :]
    up = np.abs(np.fft.fftfreq(frame.rows, frame.pixel_mm))
    for picture in pictures:
        contrast = picture[..., 0] / of.water[0] - 1.0
        spectrum = np.abs(np.fft.fft2((contrast - contrast.mean()) * window)) ** 2
        power += spectrum[(up > 0.002) & (up < 0.03)].mean(axis=0)
        count += 1
    power *= frame.pixel_mm**2 / (window**2).sum() / count
    across = np.abs(np.fft.fftfreq(frame.columns, frame.pixel_mm))
    look = of.look
    clutter = Clutter(float(look.facet_contrast[0]), of.sea.clutter_wavelength_mm, look.slope_rms,
                      look.bank_height_deg, float(look.look_down_deg[0]))  # fmt: skip
    return across, power, spectra([clutter], across[None, :])[0]


MANY_GLEAMS = [(*scene, 2e-4) for scene in SCENES[:-1]] + [(0.0, 10.0, 4.5, 3e-3)]
"""The last scene's rare gleams would need hundreds of sheets: for it, a boily run without wind."""
BANDS = [(0.0004, 0.003), (0.003, 0.006), (0.006, 0.012), (0.012, 0.024), (0.024, 0.048)]


@pytest.mark.parametrize(("wind", "skyline", "down", "base"), MANY_GLEAMS)
def test_the_streaks_are_those_of_the_answer(make, wind, skyline, down, base):
    """Within 30 %: noise of the drawn water, octave by octave across the picture, from streaks of
    20 mm to the longest that it holds, against the spectrum that the answer used."""
    of = make(wind, skyline, down, base=base)
    across, found, told = noise(of, (picture for _, _, picture in drawn(of, WIDE, 10)))
    for low, high in BANDS:
        band = (across >= low) & (across < high)
        assert found[band].mean() == pytest.approx(told[band].mean(), rel=0.30), (low, high)


@pytest.mark.parametrize(("wind", "skyline", "down", "base"), MANY_GLEAMS)
def test_a_bare_cast_costs_a_tip_what_the_answer_says(make, wind, skyline, down, base):
    """Within 30 %, and the answer is the more careful: the level of a 4 by 40 mm tip among
    streaks that nothing has corrected, eyes of 60 years at 30 m (blur 12 mm, flux threshold
    0.21 arcmin²). Found: 0.99 to 1.17. So the answer's fit does not hang on its own picture."""
    of = make(wind, skyline, down, base=base)
    bare = (patch.rippled(of, patch.water_sheet(of, WIDE, s), WIDE, s)[0] for s in range(4))
    fx, found, told = noise(of, bare)
    fu = np.linspace(0.0, 0.06, 200)[:, None]
    mm, blur = 30.0 * 0.290888, 1.35 * 30.0 * 0.290888
    passed = np.exp(-4.0 * np.pi**2 * blur**2 * (fx**2 + fu**2))
    own = (0.21 * mm**2) ** 2 / (4.0 * np.pi * blur**2)
    tip = (np.sinc(4.0 * fx) * np.sinc(40.0 * fu)) ** 2

    def level(power):
        return np.sqrt((tip * passed / (own + KAPPA2 * power * passed)).sum())

    assert level(found) == pytest.approx(level(told), rel=0.30)


def test_every_picture_of_a_water_has_the_same_streaks(make):
    """A small picture, too narrow for the long streaks, takes them from the roomy one."""
    of = make()
    small = Frame(0.5, 400, 200, 14.0)
    roomy = patch.roomy(small)
    assert (roomy.wide_mm, roomy.below_mm) == (600.0, 42.0)
    assert patch.roomy(roomy) == roomy
    sheet = patch.water_sheet(of, roomy)
    streaks = patch.streaks_of(of, sheet, roomy)
    plain, _ = patch.rippled(of, sheet, small)
    ratio = patch.rippled(of, sheet, small, streaks=streaks)[0][..., 0] / plain[..., 0]
    assert ratio == pytest.approx(streaks.at(small.heights_mm(), small.across_mm()), rel=0.05)
    assert ratio.std() > 0.02


def test_glitter_falls_at_random_with_the_answers_mean(make):
    """Sun lane: sparkles bring the mean up to that of the water with its glint."""
    of = make(3.0, 0.5, 4.5, Light(12, 3.5, True, 25.0, 0.0), sun_ahead=True)
    found = np.mean([picture.mean(axis=(0, 1)) for _, _, picture in drawn(of, count=6)], axis=0)
    calm = make(3.0, 0.5, 4.5, Light(12, 3.5, False, 25.0, 0.0), sun_ahead=True)
    assert of.water[0] > 1.02 * calm.water[0]
    assert found[0] == pytest.approx(of.water[0], rel=0.05)


def test_no_sparkles_where_the_bank_hides_the_sun(make):
    of = make(3.0, 30.0, 4.5, Light(12, 3.5, True, 25.0, 0.0))
    assert not patch._sparkles(of, FRAME, 0).any()


def test_mist_lies_over_tip_and_water(make, case):
    thick = make(3.0, 10.0, 2.5, Light(visibility_m=100.0))
    thin = make(3.0, 10.0, 2.5)
    spread = [next(drawn(of, count=1))[2][..., 0].std() for of in (thick, thin)]
    assert spread[0] < 0.7 * spread[1]


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
