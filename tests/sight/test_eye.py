"""The eye: age, acuity, twilight, veil; and contrast, which uses them."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import OutOfRange
from tipsight.sight import contrast, eye, twilight

often = settings(deadline=None, derandomize=True, max_examples=60)
lights = st.floats(1e-3, 1e4)


@pytest.mark.parametrize("light", [1e-3, 1.0, 1000.0])
def test_age_factor_never_falls_and_does_not_jump(light):
    factor = eye.age_factor(np.linspace(5.0, 85.0, 8001), light)
    assert np.all(np.diff(factor) >= 0.0)
    assert np.diff(np.log(factor)).max() < 0.01
    assert eye.age_factor([5.0, 25.0], light).tolist() == [1.0, 1.0]


# By another program of the same formula, to half a unit of the last figure; the last two by hand:
# 10^0.24 x (1 + 0.26 x 40/35 x 1000^-0.38) = 1.737801 x (1 + 0.297143 x 0.072444) and
# 10^0.36 x (1 + 0.26 x 60/35 x 100^-0.38) = 2.290868 x (1 + 0.445714 x 0.173780).
@pytest.mark.parametrize(
    ("age", "light", "factor", "half"),
    [(40, 1000, 1.24, 5e-3), (50, 1000, 1.43, 5e-3), (60, 1000, 1.65, 5e-3), (70, 1000, 1.91, 5e-3),
     (75, 1000, 2.05, 5e-3), (60, 10, 1.80, 5e-3), (60, 1, 2.04, 5e-3), (65, 1000, 1.77521, 1e-5),
     (85, 100, 2.46831, 1e-5)],
)  # fmt: skip
def test_age_factor(age, light, factor, half):
    assert float(eye.age_factor(age, light)) == pytest.approx(factor, abs=half)


@pytest.mark.parametrize("function", [eye.flux_threshold, eye.weber_floor, eye.blur_arcmin])
def test_more_light_never_hurts(function):
    values = function(np.geomspace(1e-3, 1e5, 400))
    assert np.all(np.diff(values) <= 0.0)


# Worked out once by another program of the same equations; half a unit of the last figure.
@pytest.mark.parametrize(
    ("light", "flux", "floor", "blur"),
    [
        (0.1, 2.3333, 0.00770, 2.3),
        (1.0, 0.7080, 0.00423, 2.3),
        (10.0, 0.3026, 0.00313, 2.044),
        (100.0, 0.1808, 0.00278, 1.7),
        (1000.0, 0.1405, 0.00267, 1.414),
        (3000.0, 0.1319, 0.00265, 1.3),
    ],
)
def test_regression(light, flux, floor, blur):
    assert float(eye.flux_threshold(light)) == pytest.approx(flux, abs=6e-5)
    assert float(eye.weber_floor(light)) == pytest.approx(floor, abs=6e-6)
    assert float(eye.blur_arcmin(light)) == pytest.approx(blur, abs=6e-4)


def test_in_the_dark_the_threshold_flux_levels_off():
    dark, darker = (float(eye.flux_threshold(x)) * x for x in (1e-4, 1e-5))
    assert darker == pytest.approx(dark, rel=0.1)


def test_eyes_better_than_one_minute_add_no_blur():
    assert float(eye.defocus_arcmin(0.5)) == float(eye.defocus_arcmin(1.0)) == 0.0
    assert float(eye.defocus_arcmin(3.0)) == pytest.approx(np.sqrt(2.0))


@often
@given(lights, st.floats(0.2, 3.0))
def test_mesopic_lies_between_the_two(photopic, ratio):
    mesopic = float(contrast.adaptation([photopic, 0.0, 0.0, ratio * photopic]))
    low, high = sorted((photopic, ratio * photopic))
    assert low * (1 - 1e-6) <= mesopic <= high * (1 + 1e-6)
    if photopic >= 5.0:
        assert mesopic == pytest.approx(photopic, rel=1e-4)


def test_mesopic_share_of_light_that_cones_and_rods_find_as_bright():
    """L_mes is then that luminance whatever m is: m = 0.7670 + 0.3334 log10 L, by hand."""
    light = np.array([0.1, 1.0, 3.0, 4.9, 5.0, 9.9, 10.0])
    hand = [0.4336, 0.7670, 0.9261, 0.9971, 1.0, 1.0, 1.0]
    for one, share in zip(light, hand, strict=True):  # each by itself: bright ones are not summed
        assert float(twilight.mesopic_share(one, one)) == pytest.approx(share, abs=1e-4)
    assert twilight.mesopic_share(light, light) == pytest.approx(hand, abs=1e-4)


def test_mesopic_ends():
    assert twilight.mesopic_share([10.0, 1e-4], [23.0, 2.3e-4]).tolist() == [1.0, 0.0]
    assert float(contrast.adaptation([1e-4, 0.0, 0.0, 2.3e-4])) == pytest.approx(2.3e-4)


@often
@given(st.floats(0.1, 90.0), st.floats(1.0, 1.1), st.floats(10.0, 90.0), st.floats(0.0, 10.0))
def test_veil_falls_with_angle_and_grows_with_age(angle, wider, age, older):
    near = float(eye.veil(100.0, angle, age))
    assert float(eye.veil(100.0, angle * wider, age)) <= near
    assert float(eye.veil(100.0, angle, age + older)) >= near
    assert float(eye.veil(200.0, angle, age)) == pytest.approx(2.0 * near)


def test_light_from_behind_throws_no_veil():
    assert eye.veil(1000.0, [99.0, 101.0, 180.0], 60.0)[1:].tolist() == [0.0, 0.0]
    assert float(eye.veil(1000.0, 99.0, 60.0)) > 0.0


def test_pale_eyes_scatter_more():
    assert float(eye.veil(1.0, 20.0, 40.0, pigment=1.2)) > float(eye.veil(1.0, 20.0, 40.0, 0.0))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: eye.Eye(86.0), "age must be 5 to 85 years, got 86 years"),
        (lambda: eye.Eye(4.0), "age must be 5 to 85 years, got 4 years"),
        (lambda: eye.Eye(40.0, 11.0), "smallest detail must be 0.3 to 10 arcmin, got 11 arcmin"),
        (lambda: eye.Eye(40.0, 1.0, 0.05), "own-eye factor must be 0.1 to 10, got 0.05"),
        (lambda: eye.blur_arcmin(0.0), "luminance must be 1e-06 to 1e+10 cd/m2, got 0 cd/m2"),
        (lambda: eye.veil(-1.0, 3.0, 40.0), "illuminance must be 0 to 200000 lx, got -1 lx"),
        (lambda: eye.veil(1.0, 0.0, 40.0), "angle must be 0.1 to 180 deg, got 0 deg"),
        (lambda: eye.veil(1.0, 3.0, 140.0), "age must be 5 to 100 years, got 140 years"),
        (lambda: eye.veil(1.0, 3.0, 40.0, 2.0), "pigment must be 0 to 1.2, got 2"),
        (
            lambda: twilight.mesopic_share(0.0, 1.0),
            "photopic luminance must be 1e-09 to 1e+10 cd/m2, got 0 cd/m2",
        ),
        (
            lambda: twilight.mesopic_share(1.0, -1.0),
            "scotopic luminance must be 1e-09 to 1e+10 cd/m2, got -1 cd/m2",
        ),
    ],
)
def test_what_is_out_of_range_is_said(call, words):
    with pytest.raises(OutOfRange) as told:
        call()
    assert str(told.value) == words


WATER = np.array([200.0, -3.0, 5.0, 460.0])


@often
@given(st.floats(0.1, 5.0), st.floats(0.0, 500.0))
def test_a_veil_only_weakens(factor, veil):
    tip = WATER * [factor, 0.2, -1.0, factor]
    clear, veiled = (contrast.contrast(tip, WATER, v) for v in (0.0, veil))
    np.testing.assert_allclose(veiled, clear * 200.0 / (200.0 + veil), rtol=1e-9)


def test_contrast_of_a_thing_with_itself_is_nothing():
    assert contrast.contrast(WATER, WATER, 10.0).tolist() == [0.0, 0.0, 0.0]


def test_contrast_broadcasts():
    tips, water = np.ones((5, 1, 4)) * 50.0, np.tile(WATER, (3, 1))
    found = contrast.contrast(tips, water, np.array([0.0, 1.0, 2.0]))
    assert found.shape == (5, 3, 3)
    assert found[0, 0, 0] == pytest.approx(-0.75)
    assert contrast.adaptation(water, np.array([0.0, 1.0, 2.0])).tolist() == [200.0, 201.0, 202.0]


def test_at_dusk_blue_gains_on_red():
    # field of 0.1 cd/m2; a red and a blue thing of equal photopic luminance
    water = np.array([0.1, 0.0, 0.0, 0.15])
    red, blue = (np.array([0.2, 0.0, 0.0, s]) for s in (0.1, 0.6))
    by_dusk = [float(contrast.contrast(tip, water)[0]) for tip in (red, blue)]
    by_day = [float(contrast.contrast(1000 * tip, 1000 * water)[0]) for tip in (red, blue)]
    assert by_day == pytest.approx([1.0, 1.0])
    assert by_dusk[0] < 0.5 < 1.5 < by_dusk[1]


def test_a_veil_of_the_dusk_has_light_for_rods_too():
    # as much for rods as for cones, so that field and veil of 0.01 cd/m2 each make 0.02
    assert float(contrast.adaptation([0.01, 0.0, 0.0, 0.01], 0.01)) == pytest.approx(0.02)


def test_each_contrast_is_over_its_own_field():
    """By day: (300 - 200)/(200 + 50) in brightness, 20/250 red-green, -45/250 yellow-violet."""
    found = contrast.contrast([300.0, 20.0, -40.0, 600.0], [200.0, 0.0, 5.0, 460.0], 50.0)
    assert found == pytest.approx([0.4, 0.08, -0.18])


def test_no_light_no_contrast():
    with pytest.raises(OutOfRange, match="photopic luminance must be"):
        contrast.contrast(WATER, np.zeros(4))
    with pytest.raises(OutOfRange, match="photopic luminance must be"):
        contrast.adaptation(np.zeros(4))
