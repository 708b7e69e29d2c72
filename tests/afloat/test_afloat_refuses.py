"""What afloat refuses, and in which words."""

import numpy as np
import pytest

from tipsight.afloat import (
    added_mass,
    bite,
    body,
    boils,
    chop,
    freshwater,
    heave,
    hidden,
    lean,
    motion,
    ride,
    rig,
    stance,
    wind,
)
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs.case import Stream, Wind

HULL = body.Profile(np.array([0.0, -30.0, -60.0]), np.array([1.5, 6.0, 1.5]))
RIG = rig.rig(HULL, 10.0, 1.0, -30.0, 1.2)
SEA = chop.sea(Wind(speed_m_s=4.0))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: freshwater.density_kg_m3(31.0), "water temperature must be 0 to 30 deg C"),
        (lambda: freshwater.surface_tension_n_m(-1.0), "water temperature must be 0 to 30"),
        (lambda: freshwater.kinematic_viscosity_m2_s(np.nan), "water temperature must be"),
        (lambda: body.section_integral(HULL, -1.0), "wavenumber must be 0 to 1000 rad/m, got -1"),
        (lambda: chop.jonswap(0.2, 50.0), "wind must be 0.5 to 60 m/s, got 0.2"),
        (lambda: chop.jonswap(5.0, 0.5), "fetch must be 1 to 5000 m, got 0.5"),
        (lambda: chop.wavenumber_rad_m(1001.0), "angular frequency must be 0 to 1000"),
        (lambda: chop.angular_rad_s(-1.0), "wavenumber must be 0 to 10000"),
        (lambda: chop.wavelength_mm(0.001), "wave period must be 0.01 to 60 s"),
        (lambda: chop.sea(Wind(speed_m_s=31.0)), "wind must be 0 to 30 m/s"),
        (lambda: chop.sea(Wind(speed_m_s=5.0, fetch_m=6000.0)), "fetch must be 1 to 5000 m"),
        (lambda: chop.sea(Wind(ripple_height_m=0.6)), "ripple height must be 0 to 0.5 m"),
        (lambda: boils.shear_velocity_m_s(Stream(depth_m=0.0)), "depth of water must be 0.1"),
        (lambda: boils.shear_velocity_m_s(Stream(pace_m_s=6.0)), "pace of the stream must be 0"),
        (lambda: boils.shear_velocity_m_s(Stream(manning_n=0.5)), "Manning's n must be 0.01"),
        (
            lambda: boils.vertical_rms_m_s(Stream(), 1.6),
            "depth below the surface must be 0 to 1.5",
        ),
        (lambda: boils.vertical_rms_m_s(Stream(boil_factor=11.0), 1.0), "boil factor must be 0"),
        (
            lambda: boils.variance_shares([0.0, 1.0], 0.0),
            "time scale of boils must be 0.001 to 10000 s",
        ),
        (lambda: added_mass.spheroid(0.9), "length over diameter must be 1 to 200"),
        (lambda: added_mass.heave_added_mass_kg(HULL, 6.0, 1000.0), "added-mass factor must be"),
        (lambda: rig.shot_area_m2(-0.1, 7290.0), "shot must be 0 to 100 g"),
        (lambda: rig.shot_area_m2(0.4, 900.0), "density of shot must be 1500 to 25000 kg/m3"),
        (lambda: rig.rig(HULL, -1.0, 1.0, -30.0, 1.2), "wet part of the tip must be 0 to 200 mm"),
        (lambda: rig.rig(HULL, 9.0, 0.0, -30.0, 1.2), "weight of the float must be 0.01 to 100 g"),
        (lambda: rig.rig(HULL, 9.0, 1.0, -30.0, 101.0), "shot must be 0 to 100 g, got 101"),
        (
            lambda: rig.rig(HULL, 9.0, 1.0, -30.0, 1.2, shot_depth_m=0.0),
            "depth of the shot must be 0.01 to 20 m",
        ),
        (
            lambda: rig.rig(HULL, 9.0, 1.0, -30.0, 1.2, shot_slip_m_s=4.0),
            "flow past the shot must be 0 to 3 m/s",
        ),
        (
            lambda: rig.rig(HULL, 9.0, 1.0, -30.0, 1.2, each_g=0.0),
            "mass of one shot must be 0.001 to 100 g",
        ),
        (lambda: rig.displaced_m3(RIG, 0.0), "tip diameter must be 0.5 to 30 mm, got 0"),
        (lambda: heave.stiffness_n_m(31.0), "tip diameter must be 0.5 to 30 mm, got 31"),
        (
            lambda: motion.motion(RIG, SEA, Stream(depth_m=0.8), 3.0),
            "depth of the shot must be 0 to 0.8 m, got 1",
        ),
        (lambda: ride.ride(RIG, SEA, Stream(hold_m_s=4.0), 3.0), "how much slower it is held"),
        (lambda: ride.ride_margin(-1.0, None), "showing must be 0 to 500 mm, got -1"),
        (
            lambda: ride.boil_factor_from_dips(0.0, 30.0, 3.0, RIG, SEA, Stream()),
            "times a minute that it goes under must be 0.01 to 60",
        ),
        (lambda: hidden.hidden_mm(SEA, 0.0, 1.5), "distance must be 0.5 to 500 m"),
        (lambda: hidden.hidden_mm(SEA, 30.0, 0.0), "eye height must be 0.1 to 30 m"),
        (lambda: hidden.outside_domain(SEA, 0.0, 1.5), "distance must be 0.5 to 500 m"),
        (lambda: hidden.outside_domain(SEA, 30.0, 0.0), "eye height must be 0.1 to 30 m"),
        (lambda: bite.meniscus_g(0.0), "tip diameter must be 0.5 to 30 mm"),
        (lambda: bite.meniscus_g(3.0, 181.0), "contact angle must be 0 to 180 deg"),
        (lambda: bite.sink_force_g(3.0, 501.0), "showing must be 0 to 500 mm"),
        (lambda: bite.slow_bite_g(3.0, -1.0), "smallest dip seen must be 0 to 500 mm"),
        (lambda: bite.pluck_g(RIG, 3.0, dip_mm=0.0), "dip of a pluck must be 0.1 to 100 mm"),
        (lambda: bite.pluck_g(RIG, 3.0, within_s=0.0), "time of a pluck must be 0.02 to 5 s"),
        (lambda: stance.cylinder_drag(0.5), "length over diameter must be 1 to 1000"),
        (lambda: stance.stance(RIG, 40.0), "tip diameter must be 0.5 to 30 mm"),
        (lambda: lean.held_back(RIG, 1.5, 3.0), "how much slower it is held must be 0 to 1 m/s"),
        (
            lambda: lean.leaning(stance.stance(RIG, 3.0), 0.1, 0.1, line_deg=61.0),
            "rise of the line must be 0 to 60",
        ),
        (lambda: wind.wind_at_m_s(61.0, 1.0), "wind must be 0 to 60 m/s"),
        (lambda: wind.wind_at_m_s(5.0, 0.0), "height above the water must be 0.001 to 10 m"),
        (lambda: wind.wind_on_tip_g(5.0, 3.0, 1.0), "showing must be 2 to 500 mm"),
        (lambda: wind.wind_on_tip_g(5.0, 0.1, 30.0), "tip diameter must be 0.5 to 30 mm"),
    ],
)
def test_out_of_range(call, words):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert words in str(caught.value)


@pytest.mark.parametrize(
    ("z", "r", "words"),
    [
        ([0.0], [1.0], "two or more heights and as many radii"),
        ([0.0, -1.0], [1.0], "two or more heights and as many radii"),
        ([0.0, -1.0], [1.0, np.nan], "every height and radius is a number"),
        ([0.0, 1.0], [1.0, 1.0], "an outline runs downwards"),
        ([0.0, 0.0], [1.0, 2.0], "an outline runs downwards"),
        ([0.0, -1.0], [1.0, -1.0], "no radius is below nothing"),
    ],
)
def test_wrong_outlines(z, r, words):
    with pytest.raises(Mistakes, match=words):
        body.Profile(np.array(z), np.array(r))


def test_waves_alone_put_it_under_more_often():
    rough = chop.sea(Wind(ripple_height_m=0.08))
    with pytest.raises(Mistakes, match=r"goes under: .*the waves alone put this tip under"):
        ride.boil_factor_from_dips(1.0, 10.0, 3.0, RIG, rough, Stream())


def test_no_boils_put_it_under_so_often():
    with pytest.raises(Mistakes, match="no boils put this tip under so often"):
        ride.boil_factor_from_dips(60.0, 40.0, 6.0, RIG, SEA, Stream(pace_m_s=0.2))


def test_a_float_out_of_balance_is_told(monkeypatch):
    monkeypatch.setattr(motion, "_ROUNDS", 1)
    with pytest.raises(ArithmeticError, match="drag and its motion did not come to a balance"):
        ride.ride(RIG, SEA, Stream(), 3.0)
