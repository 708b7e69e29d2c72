"""What must hold afloat whatever the numbers, and our own figures to notice a change."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight.afloat import (
    added_mass,
    bite,
    body,
    boils,
    chop,
    frequencies,
    hidden,
    lean,
    motion,
    ride,
    rig,
    stance,
    wind,
)
from tipsight.inputs.case import Stream, Wind

quick = settings(deadline=None, derandomize=True, max_examples=40)
HULL = body.Profile(np.array([0.0, -20.0, -60.0, -120.0]), np.array([1.5, 6.0, 1.5, 1.5]))
RIG = rig.rig(HULL, 10.0, 1.3, -45.0, 2.2)
SEA = chop.sea(Wind(speed_m_s=4.0))
DIAMETERS = np.array([1.5, 2.0, 3.0, 4.0, 6.0, 8.0])


def outlines():
    points = st.lists(
        st.tuples(st.floats(0.5, 40.0), st.floats(0.1, 12.0)), min_size=2, max_size=8
    )
    return points.map(
        lambda rows: body.Profile(
            -np.cumsum([0.0, *(row[0] for row in rows)])[: len(rows)],
            np.array([row[1] for row in rows]),
        )
    )


@quick
@given(outlines(), st.floats(1.2, 3.0))
def test_bodies_scale(outline, factor):
    large = body.Profile(factor * outline.z_mm, factor * outline.r_mm)
    assert body.volume_mm3(large) == pytest.approx(factor**3 * body.volume_mm3(outline))
    assert body.centroid_mm(large) == pytest.approx(factor * body.centroid_mm(outline))
    assert body.wetted_area_mm2(large) == pytest.approx(factor**2 * body.wetted_area_mm2(outline))
    assert added_mass.kappa(large) == pytest.approx(added_mass.kappa(outline), abs=1e-9)


@quick
@given(outlines())
def test_sections_add_up(outline):
    z, volume = body.sections(outline)
    assert volume.sum() == pytest.approx(body.volume_mm3(outline))
    assert (z * volume).sum() == pytest.approx(
        body.volume_mm3(outline) * body.centroid_mm(outline)
    )
    felt = body.section_integral(outline, np.array([0.0, 5.0, 50.0, 500.0]))
    assert felt[0] == pytest.approx(body.volume_mm3(outline))
    assert (np.diff(felt) < 0.0).all()


@quick
@given(outlines(), st.floats(0.1, 0.9))
def test_a_cut_outline_is_the_same_body(outline, share):
    z = outline.z_mm[0] + share * (outline.z_mm[1] - outline.z_mm[0])
    r = outline.r_mm[0] + share * (outline.r_mm[1] - outline.r_mm[0])
    cut = body.Profile(np.insert(outline.z_mm, 1, z), np.insert(outline.r_mm, 1, r))
    assert body.volume_mm3(cut) == pytest.approx(body.volume_mm3(outline))
    assert body.centroid_mm(cut) == pytest.approx(body.centroid_mm(outline))
    assert body.wetted_area_mm2(cut) == pytest.approx(body.wetted_area_mm2(outline))


@quick
@given(st.floats(0.5, 1000.0), st.floats(0.0, 30.0))
def test_dispersion_there_and_back(omega, celsius):
    k = chop.wavenumber_rad_m(omega, celsius)
    assert float(chop.angular_rad_s(k, celsius)) == pytest.approx(omega, rel=1e-9)


@quick
@given(st.floats(0.0, 25.0), st.floats(1.0, 5000.0))
def test_seas_keep_their_limits(speed, fetch):
    sea = chop.sea(Wind(speed_m_s=speed, fetch_m=fetch))
    assert sea.height_m >= 0.002
    assert sea.peak_period_s >= 0.2
    assert sea.height_m <= 1e-4 * sea.peak_wavelength_mm * (1 + 1e-9)
    assert sea.clutter_wavelength_mm == (sea.peak_wavelength_mm if speed >= 1.0 else 300.0)


@quick
@given(st.floats(0.0, 24.0), st.floats(0.1, 1.0))
def test_more_wind_is_never_a_lower_sea(speed, more):
    low, high = chop.sea(Wind(speed_m_s=speed)), chop.sea(Wind(speed_m_s=speed + more))
    assert high.height_m >= low.height_m
    assert high.peak_period_s >= low.peak_period_s


def test_chop_fades_in():
    full = float(chop.jonswap(1.5, 500.0)[0])
    assert chop.sea(Wind(speed_m_s=1.5, fetch_m=500.0)).height_m == pytest.approx(0.5 * full)
    assert chop.sea(Wind(speed_m_s=0.99)).height_m == 0.002
    above = chop.sea(Wind(speed_m_s=2.0, fetch_m=500.0)).height_m
    assert above == pytest.approx(float(chop.jonswap(2.0, 500.0)[0]))


@pytest.mark.parametrize("wind_m_s", [2.5, 4.0, 4.15])
def test_a_seen_ripple_is_the_winds(wind_m_s):
    blown = chop.sea(Wind(speed_m_s=wind_m_s))
    seen = chop.sea(Wind(speed_m_s=9.0, ripple_height_m=blown.height_m))
    assert seen.height_m == pytest.approx(blown.height_m)
    assert seen.peak_period_s == pytest.approx(blown.peak_period_s)


@pytest.mark.parametrize("height_m", [0.002, 0.005, 0.015, 0.04, 0.2])
def test_a_seen_ripple_keeps_its_height(height_m):
    sea = chop.sea(Wind(ripple_height_m=height_m))
    assert sea.height_m == height_m
    assert sea.height_m <= 0.72e-4 * sea.peak_wavelength_mm  # 15 / 209.5
    assert sea.clutter_wavelength_mm == sea.peak_wavelength_mm


def test_glass_is_still():
    assert chop.sea(Wind(speed_m_s=5.0, ripple_height_m=0.0)).clutter_wavelength_mm == 300.0


# The whole variance on the very grid of the sums, however slow or fast the boils; and what a
# first-order lag of a second leaves of it, T / (T + 1 s) of an exponential correlation. 0.3 %:
# cells of a twenty-fifth of an octave and more.
@pytest.mark.parametrize("scale_s", [0.05, 0.5, 2.44, 15.0, 37.0, 400.0, 1e4])
def test_boils_keep_their_variance(scale_s):
    omega, edges = frequencies.boil_grid()
    shares = boils.variance_shares(edges, scale_s)
    assert shares.shape == omega.shape
    assert shares.sum() == pytest.approx(1.0, abs=1e-12)
    assert (shares > 0.0).all()
    lagged = (shares / (1.0 + omega**2)).sum()
    assert lagged == pytest.approx(scale_s / (scale_s + 1.0), rel=3e-3)


def test_no_boils_where_nothing_flows():
    assert (boils.variance_shares([0.0, 1.0, np.inf], np.inf) == 0.0).all()


def test_thicker_tips_ride_better_in_boils():
    rides = ride.ride(RIG, SEA, Stream(), DIAMETERS)
    assert (np.diff(rides.boil_rms_mm) < 0.0).all()
    assert rides.tail_rms_mm**2 == pytest.approx(
        rides.wave_rms_mm**2 + (1.12 * rides.boil_rms_mm) ** 2
    )


@quick
@given(st.integers(0, 5))
def test_one_by_one_is_all_at_once(i):
    whole = ride.ride(RIG, SEA, Stream(), DIAMETERS)
    one = ride.ride(RIG, SEA, Stream(), float(DIAMETERS[i]))
    assert one.tail_rms_mm.shape == (1,)
    assert one.tail_rms_mm[0] == pytest.approx(whole.tail_rms_mm[i], rel=2e-4)
    assert one.rate_hz[0] == pytest.approx(whole.rate_hz[i], rel=2e-4)
    assert one.slow_s[0] == pytest.approx(whole.slow_s[i], rel=2e-3)


@quick
@given(st.floats(0.2, 2.5), st.floats(0.2, 0.5))
def test_more_boils_never_ride_better(factor, more):
    rides = [
        ride.ride(RIG, SEA, Stream(boil_factor=f), DIAMETERS).boil_rms_mm
        for f in (factor, factor + more)
    ]
    assert (rides[1] > rides[0]).all()


def test_still_water_only_ripples():
    rides = ride.ride(RIG, SEA, Stream(pace_m_s=0.0), DIAMETERS)
    assert (rides.boil_rms_mm == 0.0).all()
    assert (rides.slow_s == 0.0).all()
    # thick tips bob against the wave a little: over the surface's own rms, but only just
    assert (rides.wave_rms_mm < 1.03e3 * SEA.height_m / 4.0).all()


def test_holding_back_piles_water_up():
    rides = ride.ride(RIG, SEA, Stream(hold_m_s=0.3), 3.0)
    assert rides.sink_mm == pytest.approx(4.59, abs=0.01)
    free = ride.ride(RIG, SEA, Stream(), 3.0)
    both = ride.ride_margin([20.0, 30.0], rides)
    assert both == pytest.approx((np.array([20.0, 30.0]) - 4.587) / free.tail_rms_mm, rel=1e-3)


def rides_of(wave_mm, boil_mm, *, rate_hz=0.5, slow_s=0.0, sink_mm=0.0):
    """Return a ride by hand: one diameter."""
    rms, tail = np.hypot(wave_mm, boil_mm), np.hypot(wave_mm, 1.12 * boil_mm)
    arrays = (np.array([x]) for x in (wave_mm, boil_mm, rms, tail, rate_hz, slow_s))
    return ride.Ride(*arrays, sink_mm)


@quick
@given(st.floats(0.3, 6.0), st.floats(0.1, 2.0), st.floats(0.05, 1.0))
def test_margins_and_dips(margin, rate_hz, more):
    rides, slow = (rides_of(3.0, 4.0, rate_hz=rate_hz, slow_s=s) for s in (0.0, 1.0))
    showing_mm = 5.0 * margin
    assert ride.time_under(margin + more) < ride.time_under(margin)
    each = ride.dips_per_min(showing_mm, rides)
    assert ride.dips_per_min(showing_mm + 5.0 * more, rides) < each
    assert np.isnan(ride.ordinary_dip_s(showing_mm, rides)) == (each < 1e-3)
    if each >= 1e-3:
        chop_only = ride.ordinary_dip_s(showing_mm, rides)
        assert ride.ordinary_dip_s(showing_mm, slow) == pytest.approx(chop_only + 1.0 / margin)


def test_a_tip_always_under_has_no_ordinary_dip():
    assert np.isnan(ride.ordinary_dip_s([0.0, 2.0, 3.0], rides_of(3.0, 4.0, sink_mm=3.0))).all()


# By hand: waves of 3 and boils of 4 mm are 5 mm rms, and 5.3917 mm with the boils widened to
# 4.48. Of 20 mm that show 5 are under the piled-up water: 15 / 5.3917 = 2.7821, 1 - Phi = .002701.
# Dips: 60 x 0.5 / s x exp(-3^2 / 2) = 0.33327 a minute; 60 x .0013499 / .33327 = 0.24303 s in the
# mean, x 1.95333 = 0.47471 s, and 1.2 s / 3 for slow boils.
def test_margin_time_and_dips_by_hand():
    rides = rides_of(3.0, 4.0, slow_s=1.2, sink_mm=5.0)
    margin = ride.ride_margin(20.0, rides)
    assert margin == pytest.approx(2.7821, abs=1e-4)
    assert ride.time_under(margin) == pytest.approx(0.002701, abs=1e-6)
    assert ride.dips_per_min(20.0, rides) == pytest.approx(0.33327, abs=1e-5)
    assert ride.ordinary_dip_s(20.0, rides) == pytest.approx(0.8747, abs=1e-4)


@pytest.mark.parametrize(("factor", "showing_mm"), [(1.0, 20.0), (1.7, 25.0), (2.6, 40.0)])
def test_boils_are_worked_back(factor, showing_mm):
    stream = Stream(boil_factor=factor)
    rides = ride.ride(RIG, SEA, stream, 3.0)
    each = float(ride.dips_per_min(showing_mm, rides)[0])
    back = ride.boil_factor_from_dips(each, showing_mm, 3.0, RIG, SEA, Stream(boil_factor=9.0))
    assert back == pytest.approx(factor, rel=1e-3)


@quick
@given(st.floats(2.0, 200.0), st.floats(0.5, 4.0), st.floats(1.05, 2.0))
def test_farther_and_lower_hides_more(range_m, eye_m, more):
    mean, high = hidden.hidden_mm(SEA, range_m, eye_m)
    far_mean, far_high = hidden.hidden_mm(SEA, range_m * more, eye_m)
    assert far_mean >= mean
    assert far_high >= high >= mean
    assert hidden.hidden_mm(SEA, range_m * more, eye_m * more)[0] == pytest.approx(float(mean))


@quick
@given(st.floats(1.0, 8.0), st.floats(0.0, 40.0))
def test_bites(diameter_mm, dip_mm):
    low, high = bite.sink_force_g(diameter_mm, dip_mm)
    slow = bite.slow_bite_g(diameter_mm, dip_mm)
    assert low <= slow <= high
    assert bite.meniscus_g(diameter_mm, 90.0) == pytest.approx(0.0, abs=1e-12)
    assert bite.meniscus_g(diameter_mm, 110.0) < 0.0


def test_a_tip_not_seen_shows_no_slow_bite():
    slow = bite.slow_bite_g(3.0, [np.nan, 2.0])
    assert np.isnan(slow[0])
    assert slow[1] > 0.0


def test_a_heavier_rig_deadens_plucks():
    heavy = replace(RIG, shot_mass_kg=2 * RIG.shot_mass_kg)
    assert bite.pluck_g(heavy, 3.0) > bite.pluck_g(RIG, 3.0)


@quick
@given(st.floats(0.01, 0.2), st.floats(0.005, 0.05))
def test_holding_harder_leans_and_lifts_more(hold, more):
    one, two = (lean.held_back(RIG, h, 3.0) for h in (hold, hold + more))
    assert two[0] > one[0] > 0.0
    assert two[1] > one[1] > 0.0


def test_lean_has_its_sides():
    assert [float(x) for x in lean.held_back(RIG, 0.0, 3.0)] == pytest.approx([0.0, 0.0], abs=1e-6)
    from_foot = replace(RIG, line_mm=float(HULL.z_mm[-1]))
    assert lean.held_back(from_foot, 0.05, 3.0)[0] < 0.0
    top_heavy = replace(RIG, mass_kg=0.1, centre_of_mass_mm=0.0)
    assert np.isnan(lean.held_back(top_heavy, 0.05, 3.0)).all()
    assert np.isnan(lean.wind_lean_deg(top_heavy, 5.0, 3.0, 30.0))
    assert not lean.upright(top_heavy, 3.0)[1]
    assert lean.held_back(RIG, [[0.05], [0.1]], [2.0, 3.0, 4.0])[0].shape == (2, 3)


def test_upright_wants_three_times_what_tips_it():
    upright = stance.stance(RIG, 3.0)
    for times, stands in ((2.9, False), (3.1, True)):
        moment = float(upright.shot_pull_n * upright.lift_at_m) / times
        height_m = float(upright.lift_at_m) + moment / upright.weight_n
        foot_mm = float(HULL.z_mm[-1])
        heavy = replace(RIG, centre_of_mass_mm=1e3 * height_m + foot_mm)
        stiffness, ok = lean.upright(heavy, 3.0)
        assert stiffness > 0.0
        assert bool(ok) is stands


@quick
@given(st.floats(0.5, 20.0), st.floats(1.05, 2.0))
def test_wind_pushes_by_its_square(speed, more):
    push = wind.wind_on_tip_g([speed, speed * more], 3.0, 30.0)
    assert push[1] == pytest.approx(more**2 * push[0])


# Ours, to notice a change: this rig in 4 m/s over 50 m, 1.5 m at 0.6 m/s.
def test_ride_stays_as_it_is():
    moved = motion.motion(RIG, SEA, Stream(), [3.0])
    assert 1e3 * np.sqrt(moved.wave_m2[0]) == pytest.approx(SILVER[0], rel=1e-3)
    assert 1e3 * np.sqrt(moved.boil_m2[0]) == pytest.approx(SILVER[1], rel=1e-3)


SILVER = (2.90453, 4.61159)
