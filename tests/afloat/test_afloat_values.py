"""Afloat worked by hand: a dowel of 10 x 100 mm, a tip of 4 mm with 20 mm in and 30 mm out."""

import dataclasses

import numpy as np
import pytest

from tipsight.afloat import (
    added_mass,
    bite,
    body,
    boils,
    chop,
    heave,
    hidden,
    lean,
    rig,
    stance,
    wind,
)
from tipsight.inputs.case import Stream, Wind

# Float 3 g, its centre 40 mm below the tip's root; 4 g of tin BB a metre down. Water of 10 deg C.
DOWEL = body.Profile(np.array([0.0, -100.0]), np.array([5.0, 5.0]))
MADE = rig.rig(DOWEL, 20.0, 3.0, -40.0, 4.0)


# Under water 7854.0 mm3 of dowel at 50 mm above the foot and 251.3 mm3 of tip at 110 mm: 8105.3 mm3
# at 51.860 mm; 999.70 x 9.81 x that is 79.489 mN, the float's weight 29.430 mN at 60 mm; so 50.059
# mN for the shot, and 79.489 x 51.860 - 29.430 x 60 = 2356.6 mN mm. From the side 1000 mm2 at 50
# and 80 mm2 at 110: at 54.444 mm; slenderness 120^2 / 1080 = 13.33, which has a drag of
# .82 + .16 ln(1.333) / ln(4) = .85320.
def test_stance_by_hand():
    s = stance.stance(MADE, 4.0)
    assert 1e3 * float(s.lift_n) == pytest.approx(79.489, abs=1e-3)
    assert 1e3 * float(s.lift_at_m) == pytest.approx(51.860, abs=1e-3)
    assert 1e3 * s.weight_n == pytest.approx(29.430, abs=1e-3)
    assert 1e3 * s.weight_at_m == pytest.approx(60.0)
    assert 1e3 * float(s.shot_pull_n) == pytest.approx(50.059, abs=1e-3)
    assert 1e6 * float(s.stiffness_n_m_rad) == pytest.approx(2356.6, abs=0.1)
    assert 1e6 * float(s.side_m2) == pytest.approx(1080.0)
    assert 1e3 * float(s.side_at_m) == pytest.approx(54.444, abs=1e-3)
    assert 1e3 * s.waterline_m == pytest.approx(120.0)
    assert 1e3 * s.line_at_m == pytest.approx(100.0)
    assert float(s.side_drag) == pytest.approx(0.85320, abs=1e-5)


# Beyond 40 diameters towards 1.20 by the reciprocal: half way at 80.
def test_long_cylinders_by_hand():
    assert float(stance.cylinder_drag(80.0)) == pytest.approx(1.09)


# Wind of 8 m/s is 8 x .0015^(1/7) = 3.1599 m/s at 15 mm. With its image the tip is 15 diameters
# long: C = .82 + .16 ln(1.5) / ln(4) = .86680. On 4 x 30 mm .6125 C d L u^2 = .63614 mN or .06485
# gf, at 135 mm above the foot; the water holds at 54.444: .63614 x 80.556 / 2356.6 is the tangent
# of 1.2457 deg.
def test_wind_lean_by_hand():
    assert float(wind.wind_at_m_s(8.0, 0.015)) == pytest.approx(3.1599, abs=1e-4)
    assert float(wind.wind_on_tip_g(8.0, 4.0, 30.0)) == pytest.approx(0.06485, abs=1e-5)
    assert float(lean.wind_lean_deg(MADE, 8.0, 4.0, 30.0)) == pytest.approx(1.2457, abs=1e-4)


# On a level line, no drag on the shot: for 10 deg of lean a side drag of 2356.6 sin a /
# (cos^2 a (100 cos^2 a - 54.444 + 51.860 sin^2 a)) = 9.5668 mN, which lifts by its
# cos^2 a sin a = 1.6112 mN or .16424 gf.
def test_lean_by_hand():
    deg, lift_g = lean.leaning(stance.stance(MADE, 4.0), 9.5668e-3, 0.0, line_deg=0.0)
    assert float(deg) == pytest.approx(10.0, abs=1e-3)
    assert float(lift_g) == pytest.approx(0.16424, abs=2e-5)


# The same on a line that rises by 30 deg, with 2 mN on the shot: the line pulls by 2 + D cos a
# along the water, D being the side's drag x cos^2 a, and up by .57735 of that at 100 mm; the lift is that
# and D sin a, off the buoyancy at 51.860. (2356.6 - 51.860 lift + 100 up) sin a = 100 (2 + D cos a)
# cos a - 54.444 D holds at 10 deg with D = 5.6391 mN, a side drag of 5.8144 mN, lift 5.3402 mN or .54436 gf.
def test_lean_on_a_rising_line_by_hand():
    deg, lift_g = lean.leaning(stance.stance(MADE, 4.0), 5.8144e-3, 2e-3, line_deg=30.0)
    assert float(deg) == pytest.approx(10.0, abs=1e-3)
    assert float(lift_g) == pytest.approx(0.54436, abs=2e-5)


# Held back by 0.1 m/s: 999.70 x .01 / 2 = 4.9985 Pa on 1080 mm2 with .85320 are 4.6059 mN, and on
# ten BB (4.7146 mm across, 174.57 mm2 together) with .45 are .39267 mN. The line rises by 3 deg.
def test_held_back_by_hand():
    assert 1e6 * MADE.shot_area_m2 == pytest.approx(174.57, abs=0.01)
    whole = lean.held_back(MADE, 0.1, 4.0)
    parts = lean.leaning(stance.stance(MADE, 4.0), 4.6059e-3, 0.39267e-3, line_deg=3.0)
    assert float(whole[0]) == pytest.approx(float(parts[0]), rel=1e-4)
    assert float(whole[1]) == pytest.approx(float(parts[1]), rel=1e-4)


# Two flat ends, 1.98 x (2/3) pi rho R^3 = .51821 g of water; with the water displaced and one and
# a half times the shot's .54870 cm3 9.4439 g move. 10 mm in 0.2 s is 0.5 m/s2: 4.7220 mN or
# .48134 gf. Twice as far asks for twice as much, half the time for four times.
def test_pluck_by_hand():
    assert 1e3 * float(rig.moving_mass_kg(MADE, 4.0, 999.7027)) == pytest.approx(9.4439, abs=1e-4)
    assert float(bite.pluck_g(MADE, 4.0)) == pytest.approx(0.48134, abs=1e-5)
    assert float(bite.pluck_g(MADE, 4.0, dip_mm=20.0, within_s=0.1)) == pytest.approx(
        8 * 0.48134, abs=1e-4
    )


# What the water drags at when the float heaves: rho C A / 2, 999.70 x .5 x 78.540 mm2 / 2 and
# 999.70 x .45 x 174.57 mm2 / 2 [kg/m]; skin 3220.1 mm2 x 999.70 sqrt(1.3063e-6 / 2).
def test_drag_of_heave_by_hand():
    p = heave.parts(MADE, 4.0)
    wet_mm2 = np.pi * (10.0 * 100.0 + 25.0)
    assert 1e3 * p.body_drag == pytest.approx(19.629, abs=1e-3)
    assert 1e3 * p.shot_drag == pytest.approx(39.267, abs=2e-3)
    assert p.skin == pytest.approx(1e-6 * wet_mm2 * 999.7027 * np.sqrt(1.3063e-6 / 2), rel=1e-3)
    assert p.slip_m_s == 0.15
    assert 1e3 * p.shot_carried_kg == pytest.approx(1.5 * 0.54870 * 0.9997027, abs=1e-5)


# In waves of 10 rad/m the tip counts for 12.566 mm2 x (1 - exp(-.2)) / 10 m = 227.8 mm3 and the
# dowel for 78.540 x (exp(-.2) - exp(-1.2)) / 10 = 4064.7, of 8105.3 mm3; the shot, a metre down,
# feel exp(-10), and exp(-2) of waves of 2 rad/m.
def test_felt_share_by_hand():
    felt, shot = heave.felt_share(MADE, 4.0, np.array([10.0, 2.0]))
    assert felt[0, 0] == pytest.approx(0.52959, abs=1e-5)
    assert shot == pytest.approx([4.54e-5, 0.13534], rel=1e-4)


# 4 mm: .0125626 gf/mm, over 6 mm .07538; half of pi d sigma (cos 40 - cos 80) = .05632 gf.
def test_slow_bite_by_hand():
    assert float(bite.meniscus_band_g(4.0)) == pytest.approx(0.05632, abs=1e-5)
    assert float(bite.slow_bite_g(4.0, 6.0)) == pytest.approx(0.07538 + 0.02816, abs=2e-5)


# x = (1.6 / 40) x 250 / 20 = .5: .55 x 20 mm x exp(-1.37 x .5^.7) = 4.733 mm, and .533 x 20 mm.
# At x = .35355, half way between .25 and .5 on the logarithm: 5.676 mm and (.591 + .533) / 2.
@pytest.mark.parametrize(
    ("eye_m", "mean_mm", "high_mm"), [(1.6, 4.733, 10.66), (1.13137, 5.676, 11.24)]
)
def test_hidden_by_hand(eye_m, mean_mm, high_mm):
    sea = chop.Sea(0.02, 0.4, 250.0, 300.0)
    mean, high = hidden.hidden_mm(sea, 40.0, eye_m)
    assert float(mean) == pytest.approx(mean_mm, abs=1e-3)
    assert float(high) == pytest.approx(high_mm, abs=1e-3)


# x = (eye / 80) x 12.5, and the draws reach from .03 to 4: eyes of 0.192 to 25.6 m.
def test_the_draws_reach_by_hand():
    sea = chop.Sea(0.02, 0.4, 250.0, 300.0)
    outside = hidden.outside_domain(sea, 80.0, [0.191, 0.193, 25.5, 25.7])
    assert outside.tolist() == [True, False, False, True]


# 6 m/s over 100 m: 24 sqrt(1.6e-7 x 100 / 9.81) = 30.650 mm, 6 / 9.81 / 3.5 x 27.25^.33 =
# .52010 s. 10 m/s over 5 m: 11.42 mm, but in .23024 s waves are 86 mm long (83 by gravity alone)
# and a tenth of that is the most. 1.5 m/s: half of the law's 5.418 mm.
def test_chop_by_hand():
    sea = chop.sea(Wind(speed_m_s=6.0, fetch_m=100.0))
    assert 1e3 * sea.height_m == pytest.approx(30.650, abs=1e-3)
    assert sea.peak_period_s == pytest.approx(0.52010, abs=1e-5)
    steep = chop.sea(Wind(speed_m_s=10.0, fetch_m=5.0))
    assert steep.peak_period_s == pytest.approx(0.23024, abs=1e-5)
    assert 1e3 * steep.height_m == pytest.approx(8.6, abs=0.1)
    assert 1e4 * steep.height_m == pytest.approx(steep.peak_wavelength_mm)
    light = chop.sea(Wind(speed_m_s=1.5, fetch_m=50.0))
    assert 1e3 * light.height_m == pytest.approx(2.709, abs=1e-3)


# Ripples of 15 mm are those of 4.1526 m/s over 50 m: .36509 s, and 208.1 mm long by gravity alone,
# 0.7 % more with the water's tension (1 + 7.4e-5 k^2 / 9.81 of the speed squared, k = 30 rad/m). Of
# 40 and 200 mm: 40/15 and 200/15 of that, with sqrt(2 pi L / 9.81) of gravity alone, .1 % less.
@pytest.mark.parametrize(
    ("height_m", "period_s", "length_mm"),
    [(0.015, 0.36509, 209.53), (0.04, 0.5979, 558.74), (0.2, 1.3376, 2793.7)],
)
def test_told_ripples_by_hand(height_m, period_s, length_mm):
    sea = chop.sea(Wind(speed_m_s=9.0, ripple_height_m=height_m))
    assert sea.peak_period_s == pytest.approx(period_s, abs=1e-4)
    assert sea.peak_wavelength_mm == pytest.approx(length_mm, rel=1e-4)
    assert sea.clutter_wavelength_mm == sea.peak_wavelength_mm
    assert sea.height_m == height_m


def test_no_step_where_waves_are_no_longer_the_winds():
    below, above = (chop.sea(Wind(ripple_height_m=h)) for h in (0.015 - 1e-6, 0.015 + 1e-6))
    assert above.peak_period_s == pytest.approx(below.peak_period_s, rel=1e-4)
    assert above.peak_wavelength_mm == pytest.approx(below.peak_wavelength_mm, rel=2e-4)


# No wind: the least of each, and swirls a foot across.
def test_calm_by_hand():
    calm = chop.sea(Wind(speed_m_s=0.5))
    assert (calm.height_m, calm.peak_period_s, calm.clutter_wavelength_mm) == (0.002, 0.2, 300.0)


# 2 m deep at 0.8 m/s over gravel: .8 x .035 sqrt(9.81) / 2^(1/6) = .078131 m/s of shear; half a
# metre down 1.27 x that x exp(-.75) = .046871 m/s, twice where it boils; .2 / .078131 = 2.5598 s.
def test_boils_by_hand():
    stream = Stream(depth_m=2.0, pace_m_s=0.8, manning_n=0.035)
    assert boils.shear_velocity_m_s(stream) == pytest.approx(0.078131, abs=1e-6)
    assert float(boils.vertical_rms_m_s(stream, 0.5)) == pytest.approx(0.046871, abs=1e-6)
    boily = dataclasses.replace(stream, boil_factor=2.0)
    assert float(boils.vertical_rms_m_s(boily, 0.5)) == pytest.approx(0.093742, abs=2e-6)
    assert boils.time_scale_s(stream) == pytest.approx(2.5598, abs=1e-4)


# A cone of 10 mm on a dowel as thick: a flat end, and one that falls to half its radius in 5 of
# its 10 mm, 5 / 5 / .86603 = 1.1547 radii: 1.1547 k1(1.1547) of a spheroid, k1 = .4201.
def test_added_mass_by_hand():
    cone = body.Profile(np.array([0.0, -50.0, -60.0]), np.array([5.0, 5.0, 0.0]))
    assert added_mass.kappa(cone) == pytest.approx(0.99 + 1.1547 * 0.4201, abs=1e-4)
