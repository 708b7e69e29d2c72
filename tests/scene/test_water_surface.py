"""Slopes, facets, mirroring, glitter: properties, a literal Monte Carlo, what is refused."""

import math

import literal_water as reference
import numpy as np
import pytest
import scipy
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.errors import OutOfRange
from tipsight.inputs.case import Wind
from tipsight.scene import cylinder, facets, fresnel, glint, observer, slopes
from tipsight.scene.slopes import SlopeVariance

down_deg = st.floats(0.3, 60.0)
variances = st.builds(SlopeVariance, st.floats(2e-5, 0.03), st.floats(2e-5, 0.03))
quick = settings(deadline=None, derandomize=True, max_examples=40)


def cox_munk(wind_m_s):
    return SlopeVariance(3.16e-3 * wind_m_s, 0.003 + 1.92e-3 * wind_m_s)


def in_plane(down_deg, crowd):
    """Reflectance of light polarised in each facet's own plane of incidence, half way to its ray."""
    down, high, turn = (
        np.radians(a) for a in (down_deg, crowd.ray_height_deg, crowd.ray_azimuth_deg)
    )
    twice = math.sin(down) * np.sin(high) - math.cos(down) * np.cos(high) * np.cos(turn)
    return fresnel.fresnel(np.sqrt((1.0 + twice) / 2.0)).parallel


# Monte Carlo of four million facets by a program of its own (computed), sampling error under
# 5e-4 on the shares and 0.02 deg on the mean height.
@pytest.mark.parametrize(
    ("down", "wind_m_s", "skyline", "mirrored", "on_bank", "sky_part", "height", "upright"),
    [
        (2, 1, 5, 0.6034, 0.2927, 0.3754, 7.950, 0.8627),
        (2, 4, 10, 0.4318, 0.2874, 0.2419, 15.622, 0.7768),
        (4, 4, 15, 0.3933, 0.5010, 0.1266, 15.693, 0.7508),
        (6, 3, 8, 0.3818, 0.2616, 0.2238, 14.080, 0.7394),
        (10, 5, 10, 0.2659, 0.2421, 0.1488, 18.720, 0.6398),
    ],
)
def test_facets_against_monte_carlo(
    down, wind_m_s, skyline, mirrored, on_bank, sky_part, height, upright
):
    crowd = facets.visible(float(down), cox_munk(wind_m_s), float(skyline))
    ray, part = crowd.ray_height_deg, crowd.reflectance
    assert float(crowd.mean(part)) == pytest.approx(mirrored, abs=5e-4)
    assert float(crowd.mean((ray < skyline) * 1.0)) == pytest.approx(on_bank, abs=8e-4)
    assert float(crowd.mean(part * (np.abs(ray) >= skyline))) == pytest.approx(sky_part, abs=5e-4)
    assert float(crowd.mean(ray)) == pytest.approx(height, abs=0.025)
    assert float(crowd.mean(in_plane(down, crowd)) / crowd.mean(part)) == pytest.approx(
        upright, abs=5e-4
    )


# A random JONSWAP sea, each sight line cast on it (computed, by a program of its own): rms over
# mean of the picture, under the sky (1 + 2 sin h) / 3, bank 0.06, water body 0.01. It repeats
# within about 10 %; the facet sum knows no place, only slopes.
@pytest.mark.parametrize(
    ("slope_rms", "down", "skyline", "contrast"),
    [
        (0.056, 1.5, 0.5, 0.162), (0.056, 9, 0.5, 0.177), (0.064, 2.5, 0.5, 0.172),
        (0.064, 9, 0.5, 0.200), (0.077, 1.5, 0.5, 0.175), (0.077, 4.5, 0.5, 0.205),
        (0.089, 2.5, 0.5, 0.200), (0.089, 9, 0.5, 0.252), (0.107, 1.5, 0.5, 0.214),
        (0.107, 9, 0.5, 0.284), (0.056, 1.5, 10, 0.849), (0.056, 9, 10, 0.585),
        (0.064, 4.5, 10, 0.689), (0.077, 2.5, 10, 0.649), (0.089, 1.5, 10, 0.607),
        (0.089, 9, 10, 0.496), (0.107, 4.5, 10, 0.495),
    ],
)  # fmt: skip
def test_facet_contrast_against_a_cast_sea(slope_rms, down, skyline, contrast):
    crowd = facets.visible(float(down), SlopeVariance(slope_rms**2, slope_rms**2 / 3.0), skyline)
    height = np.abs(crowd.ray_height_deg)
    light = np.where(height < skyline, 0.06, (1.0 + 2.0 * np.sin(np.radians(height))) / 3.0)
    seen = crowd.reflectance * light + (1.0 - crowd.reflectance) * 0.01
    mean = crowd.mean(seen)
    found = math.sqrt(crowd.mean((seen - mean) ** 2)) / mean
    assert found == pytest.approx(contrast, rel=0.05)


# Slope rms of the same sea for its wind, base slope variance 2e-4 (glide).
@pytest.mark.parametrize(
    ("wind_m_s", "slope_rms"), [(2, 0.064), (3, 0.077), (4, 0.089), (6, 0.107)]
)
def test_slope_rms_of_a_light_wind(wind_m_s, slope_rms):
    found = math.sqrt(slopes.slope_variance(Wind(speed_m_s=wind_m_s)).along)
    assert found == pytest.approx(slope_rms, abs=0.002)


@pytest.mark.parametrize(
    ("down", "along", "across"), [(2.0, 0.08, 0.05), (6.0, 0.1, 0.1), (35.0, 0.15, 0.08)]
)
def test_facets_against_the_literal_way(down, along, across):
    found = reference.crowd(down, along, across, 20000, seed=5)
    crowd = facets.visible(down, SlopeVariance(along**2, across**2), 8.0)
    pairs = [
        (crowd.upright, lambda h, az, u, lev: u),
        (crowd.level, lambda h, az, u, lev: lev),
        (crowd.ray_height_deg / 30.0, lambda h, az, u, lev: h / 30.0),
        (
            np.cos(np.radians(crowd.ray_azimuth_deg)),
            lambda h, az, u, lev: math.cos(math.radians(az)),
        ),
        ((crowd.ray_height_deg < 8.0) * 1.0, lambda h, az, u, lev: float(h < 8.0)),
    ]
    for ours, value in pairs:
        assert float(crowd.mean(ours)) == pytest.approx(reference.mean(found, value), abs=0.015)


@given(down=st.floats(0.5, 85.0), along=st.floats(-0.4, 0.4), across=st.floats(-0.4, 0.4))
@quick
def test_each_facet_is_the_literal_one(down, along, across):
    literal = reference.facet(down, along, across)
    ours = facets.mirrors(down, along, across)
    if literal is None:
        assert float(ours.reflectance) == pytest.approx(1.0)
        return
    _, height, azimuth, upright, level = literal
    assert float(ours.ray_height_deg) == pytest.approx(height, abs=1e-6)
    apart = math.radians(float(ours.ray_azimuth_deg) - azimuth)
    assert math.cos(math.radians(height)) * math.sin(apart) == pytest.approx(0.0, abs=1e-7)
    assert float(ours.upright) == pytest.approx(upright, abs=1e-6)
    assert float(ours.level) == pytest.approx(level, abs=1e-6)


@given(down=down_deg, variance=variances, skyline=st.floats(0.0, 60.0))
@quick
def test_weights_and_reflectances_keep_their_bounds(down, variance, skyline):
    crowd = facets.visible(down, variance, skyline)
    assert crowd.weight.min() >= 0.0
    assert crowd.weight.sum() == pytest.approx(1.0)
    for part in (crowd.upright, crowd.level):
        assert part.min() >= 0.0
        assert part.max() <= 1.0


@given(down=st.floats(0.5, 40.0), variance=variances, skyline=st.floats(0.2, 30.0))
@quick
def test_the_bank_edge_is_met_whatever_the_nodes(down, variance, skyline):
    """A finer sum must not move the share of bank: the pieces end on its very edge."""
    coarse = facets.visible(down, variance, skyline)
    fine = facets.visible(down, variance, skyline, nodes=(20, 16))
    share = [float(c.mean((np.abs(c.ray_height_deg) < skyline) * 1.0)) for c in (coarse, fine)]
    assert share[0] == pytest.approx(share[1], abs=0.005)


def test_still_water_is_a_mirror():
    still = SlopeVariance(1e-6, 1e-6)
    crowd = facets.visible([5.0, 20.0], still)
    flat = fresnel.level_reflectance([5.0, 20.0]).mean
    np.testing.assert_allclose(crowd.mean(crowd.reflectance), flat, rtol=1e-3)
    np.testing.assert_allclose(crowd.mean(crowd.ray_height_deg), [5.0, 20.0], rtol=1e-2)


def test_wind_turns_with_its_bearing():
    along = slopes.slope_variance(Wind(speed_m_s=4.0, bearing_deg=0.0))
    across = slopes.slope_variance(Wind(speed_m_s=4.0, bearing_deg=90.0))
    both = slopes.slope_variance(Wind(speed_m_s=4.0, bearing_deg=45.0))
    assert along == pytest.approx((across.across, across.along))
    assert both.along == pytest.approx(both.across)
    assert sum(both) == pytest.approx(sum(along))


@pytest.mark.parametrize(("speed", "grown"), [(0.0, 0.0), (1.0, 0.0), (1.5, 0.5), (2.0, 1.0)])
def test_wind_fades_in(speed, grown):
    found = sum(slopes.slope_variance(Wind(speed_m_s=speed))) - 4e-4
    assert found == pytest.approx(0.5 * 5.12e-3 * speed * grown, abs=1e-12)


def test_a_seen_ripple_stands_for_the_wind():
    seen = slopes.slope_variance(Wind(speed_m_s=0.5, ripple_height_m=0.005))
    # 4 sqrt(1.6e-7 x 50 / 9.81) = 3.61217e-3 m for each m/s; 5 mm are those of 1.38421 m/s
    assert sum(seen) - 4e-4 == pytest.approx(0.5 * 5.12e-3 * 1.38421, rel=1e-5)
    glass = slopes.slope_variance(Wind(speed_m_s=9.0, ripple_height_m=0.0))
    assert glass == pytest.approx((2e-4, 2e-4))


# 15 mm are those of 4.15263 m/s: .5 x 5.12e-3 x 4.15263 = .0106307, three quarters of it along the
# sight, and 2e-4. Higher waves are as steep, and there is no step where they begin.
@pytest.mark.parametrize("height_mm", [15.0, 15.001, 40.0, 200.0])
def test_waves_that_are_told_are_no_steeper_than_a_ripple(height_mm):
    found = slopes.slope_variance(Wind(ripple_height_m=1e-3 * height_mm))
    assert found == pytest.approx((0.0081730, 0.0028577), rel=1e-4)
    below = slopes.slope_variance(Wind(ripple_height_m=0.014999))
    assert below == pytest.approx(found, rel=1e-4)


# Glitter on a sea of Cox and Munk's slopes, a point sun (computed by hand, two figures).
@pytest.mark.parametrize(
    ("sun", "wind_m_s", "coverage"), [(5.0, 2.0, 0.0042), (20.0, 4.0, 0.0012)]
)
def test_glitter_coverage(sun, wind_m_s, coverage):
    each_axis = (0.003 + 5.12e-3 * wind_m_s) / 2.0
    found = glint.glint(5.0, sun, 0.0, SlopeVariance(each_axis, each_axis), sun_radius_deg=0.0)
    assert float(found.coverage) == pytest.approx(coverage, abs=1.0e-4)


@pytest.mark.parametrize(
    ("down", "sun", "azimuth", "side"),
    [(8.0, 15.0, 0.0, 1.0), (20.0, 25.0, 15.0, 1.0), (12.0, 4.0, 2.4, 0.75)],
)
def test_glitter_is_the_facets_that_mirror_the_sun(down, sun, azimuth, side):
    """A soft false sun, summed over a fine grid of slopes (no shadow between eye and sun)."""
    rms, size = 0.2, math.radians(0.7)
    low, high = math.radians(down), math.radians(sun)
    along = np.linspace(-0.5, math.tan(low), 700)[:, None]
    across = np.linspace(-0.5, 0.5, 601)
    seen = np.exp(-(along**2 + (across / side) ** 2) / (2.0 * rms**2)) * (
        math.sin(low) - along * math.cos(low)
    )
    cell = (along[1, 0] - along[0, 0]) * (across[1] - across[0]) / (2.0 * math.pi * rms**2 * side)
    facet = facets.mirrors(down, along, across)
    ray, turn = np.radians(facet.ray_height_deg), np.radians(facet.ray_azimuth_deg - azimuth)
    cosine = np.sin(ray) * math.sin(high) + np.cos(ray) * math.cos(high) * np.cos(turn)
    lit = np.exp(-((np.arccos(np.clip(cosine, -1.0, 1.0)) / size) ** 2) / 2.0)
    eye = float(slopes.shadowing(math.tan(low), rms))
    share = float((seen * lit).sum() * cell) / (math.sin(low) * (1.0 + eye))
    turn = math.radians(azimuth)
    to_sun = rms * math.hypot(math.cos(turn), side * math.sin(turn))
    both = eye + float(slopes.shadowing(math.tan(high), to_sun))
    sea = SlopeVariance(rms**2, (side * rms) ** 2)
    found = float(glint.glint(down, sun, azimuth, sea).coverage)
    found *= 2.0 * math.pi * size**2 / glint.SUN_SR
    assert share == pytest.approx(found * (1.0 + both) / (1.0 + eye), rel=0.015)


@pytest.mark.parametrize("variance", [SlopeVariance(1e-6, 1e-6), SlopeVariance(2e-5, 2e-5)])
def test_glitter_is_never_brighter_than_the_sun(variance):
    found = glint.glint([0.5, 1.0, 2.0, 5.0], 1.0, 0.0, variance)
    assert found.coverage.max() <= 1.0
    sun = 1.0 / glint.SUN_SR
    assert (found.per_lux <= sun * (found.upright + found.level) / 2.0 + 1e-9).all()
    assert found.coverage[1] > (0.9 if variance.along < 1e-5 else 0.4)
    assert found.coverage[3] < 1e-6


@pytest.mark.parametrize(("down", "sun"), [(1.0, 1.0), (3.0, 10.0), (10.0, 4.0)])
def test_the_disc_spreads_the_glitter_and_loses_none(down, sun):
    """Summed round the horizon, a round sun sheds as much as a point in the same place."""
    variance = SlopeVariance(0.004, 0.004)
    azimuth = np.linspace(-40.0, 40.0, 1601)
    wide, point = (
        np.sum([glint.glint(down, sun, a, variance, sun_radius_deg=r).coverage for a in azimuth])
        for r in (glint.SUN_RADIUS_DEG, 0.0)
    )
    assert wide == pytest.approx(point, rel=0.02)


def test_gloss_is_the_mean_mirroring_of_a_stick():
    """Up to 45 deg round the stick the mirrored light comes from the viewer's side."""
    near, whole = (
        scipy.integrate.quad(
            lambda a: math.cos(a) * float(fresnel.fresnel(math.cos(a), 1.5).mean), 0.0, end
        )[0]
        for end in (math.pi / 4.0, math.pi / 2.0)
    )
    assert cylinder.gloss_shares() == pytest.approx((near, whole - near), abs=1e-6)


@pytest.mark.parametrize(
    ("down", "kept"), [(1.5, 0.954), (3, 0.908), (5, 0.845), (10, 0.686), (20, 0.354), (36.9, 0.0)]
)
def test_polarised_glasses_are_weak_at_grazing(down, kept):
    """A perfect polariser, by Fresnel alone (computed); ours leaks a hundredth."""
    flat = facets.mirrors(float(down), 0.0, 0.0)
    assert float(flat.upright / flat.reflectance) == pytest.approx(kept, abs=1e-3)
    leaky = float(observer.passed(flat.upright, flat.level, "polarised") / flat.reflectance)
    assert leaky == pytest.approx(kept + (2.0 - 2.0 * kept) / 101.0, abs=1e-3)


@pytest.mark.parametrize(
    ("call", "text"),
    [
        (lambda: fresnel.fresnel(1.2), "cosine of the angle of incidence must be 0 to 1, got 1.2"),
        (lambda: fresnel.fresnel(0.5, 0.9), "refractive index must be 1 to 3, got 0.9"),
        (lambda: fresnel.level_reflectance(-1.0), "height above the horizon must be 0 to 90 deg"),
        (
            lambda: slopes.slope_variance(Wind(ripple_height_m=0.5)),
            "ripple height must be 0 to 0.2 m, got 0.5 m",
        ),
        (
            lambda: slopes.slope_variance(Wind(speed_m_s=40.0)),
            "wind must be 0 to 25 m/s, got 40 m/s",
        ),
        (
            lambda: slopes.slope_variance(Wind(base_slope_variance=0.0)),
            "base slope variance must be 1e-06 to 0.05, got 0",
        ),
        (lambda: facets.mirrors(95.0, 0.0, 0.0), "look-down must be 0 to 90 deg, got 95 deg"),
        (
            lambda: facets.visible(0.0, SlopeVariance(0.01, 0.01)),
            "look-down must be 0.05 to 89.9 deg, got 0 deg",
        ),
        (
            lambda: facets.visible(2.0, SlopeVariance(0.01, 0.01), 90.0),
            "skyline must be 0 to 89 deg, got 90 deg",
        ),
        (
            lambda: glint.glint(2.0, -1.0, 0.0, SlopeVariance(0.01, 0.01)),
            "sun height must be 0.05 to 90 deg, got -1 deg",
        ),
        (
            lambda: glint.glint(0.0, 10.0, 0.0, SlopeVariance(0.01, 0.01)),
            "look-down must be 0.05 to 89.9 deg, got 0 deg",
        ),
    ],
)
def test_out_of_range(call, text):
    with pytest.raises(OutOfRange) as told:
        call()
    assert text in str(told.value)
