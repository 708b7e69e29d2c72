"""The eye: age, acuity, twilight, veil; and contrast, which uses them."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import OutOfRange
from tipsight.sight import contrast, eye, twilight

often = settings(deadline=None, derandomize=True, max_examples=60)
lights = st.floats(1e-3, 1e4)


def test_age_factor_never_falls_and_does_not_jump():
    factor = eye.age_factor(np.linspace(5.0, 75.0, 7001))
    assert np.all(np.diff(factor) >= 0.0)
    assert np.diff(factor).max() < 0.01
    assert float(eye.age_factor(5.0)) == float(eye.age_factor(23.0))


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
        (lambda: eye.Eye(76.0), "age must be 5 to 75 years, got 76 years"),
        (lambda: eye.Eye(4.0), "age must be 5 to 75 years, got 4 years"),
        (lambda: eye.Eye(40.0, 11.0), "smallest detail must be 0.3 to 10 arcmin, got 11 arcmin"),
        (lambda: eye.Eye(40.0, 1.0, 0.1), "own-eye factor must be 0.2 to 5, got 0.1"),
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


def test_no_light_no_contrast():
    with pytest.raises(OutOfRange, match="photopic luminance must be"):
        contrast.contrast(WATER, np.zeros(4))
    with pytest.raises(OutOfRange, match="photopic luminance must be"):
        contrast.adaptation(np.zeros(4))
