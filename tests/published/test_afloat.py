"""Fresh water, waves, bodies and heave, held against standards, handbooks and other programs."""

import csv
import dataclasses
from pathlib import Path

import numpy as np
import pytest

from tipsight.afloat import added_mass, body, chop, frequencies, freshwater, heave, motion, rig
from tipsight.afloat.rig import Rig

HERE = Path(__file__).parent


# Water at one atmosphere: density and viscosity by IAPWS-97 / IAPWS R12-08, surface tension by
# IAPWS R1-76, all from the packages iapws 1.5.5 and CoolProp 8.0.0. Tolerances: 0.01 kg/m3 between
# IAPWS-97 and Tanaka's formula; 0.1 % for viscosity, of which ours is the short form; last printed
# figure for tension, which is our own formula.
WATER = [
    (0, 999.84, 0.07565, 1.791), (4, 999.975, 0.07508, 1.567), (5, 999.967, 0.07494, 1.518),
    (8, 999.851, 0.07451, 1.385), (10, 999.702, 0.07422, 1.306), (12, 999.499, 0.07393, 1.234),
    (15, 999.101, 0.07349, 1.138), (18, 998.597, 0.07304, 1.053), (20, 998.206, 0.07274, 1.002),
    (25, 997.048, 0.07197, 0.890),
]  # fmt: skip


@pytest.mark.parametrize(
    ("celsius", "kg_m3", "mpa_s"), [(row[0], row[1], row[3]) for row in WATER]
)
def test_water(celsius, kg_m3, mpa_s):
    density = float(freshwater.density_kg_m3(celsius))
    assert density == pytest.approx(kg_m3, abs=0.01)
    viscosity = 1e3 * density * float(freshwater.kinematic_viscosity_m2_s(celsius))
    assert viscosity == pytest.approx(mpa_s, abs=1.1e-3)


@pytest.mark.parametrize(("celsius", "n_m"), [(row[0], row[2]) for row in WATER])
def test_surface_tension(celsius, n_m):
    assert float(freshwater.surface_tension_n_m(celsius)) == pytest.approx(n_m, abs=1e-5)


# Slowest ripple: c = sqrt(2 sqrt(g sigma / rho)) at k = sqrt(rho g / sigma) (Lamb 1932, art. 267)
# with the tension of IAPWS. Tolerance: last figure.
@pytest.mark.parametrize(
    ("celsius", "m_s", "mm", "hertz"), [(10, 0.2323, 17.29, 13.44), (20, 0.2312, 17.12, 13.50)]
)
def test_slowest_ripple(celsius, m_s, mm, hertz):
    k = np.linspace(200.0, 600.0, 40001)
    speed = chop.angular_rad_s(k, celsius) / k
    least = speed.argmin()
    assert speed[least] == pytest.approx(m_s, abs=6e-5)
    assert 2e3 * np.pi / k[least] == pytest.approx(mm, abs=0.02)
    assert speed[least] * k[least] / (2 * np.pi) == pytest.approx(hertz, abs=0.01)


# Wavelengths of the capillary-gravity relation at 10 deg C (closed form, solved elsewhere).
# Tolerance: 0.1 %. Without tension the first would be 15.61 mm.
@pytest.mark.parametrize(
    ("period_s", "mm"),
    [(0.10, 23.83), (0.15, 41.29), (0.20, 66.65), (0.25, 100.47), (0.30, 142.58), (0.40, 250.99),
     (0.50, 391.09), (0.60, 562.60), (1.0, 1561.5)],
)  # fmt: skip
def test_wavelength(period_s, mm):
    assert float(chop.wavelength_mm(period_s)) == pytest.approx(mm, rel=1e-3)


# JONSWAP fetch law by the package ScientiMate 2.0 (Karimpour). Tolerance: last figure.
@pytest.mark.parametrize(
    ("wind_m_s", "fetch_m", "mm", "period_s"),
    [(2, 20, 4.6, 0.210), (3, 50, 10.8, 0.327), (4, 50, 14.4, 0.360), (5, 20, 11.4, 0.287),
     (5, 50, 18.1, 0.389), (5, 100, 25.5, 0.489), (5, 200, 36.1, 0.614), (6, 100, 30.7, 0.520),
     (8, 50, 28.9, 0.456), (8, 100, 40.9, 0.574), (10, 20, 22.8, 0.364), (10, 200, 72.2, 0.778)],
)  # fmt: skip
def test_fetch_law(wind_m_s, fetch_m, mm, period_s):
    height_m, peak_s = chop.jonswap(wind_m_s, fetch_m)
    assert 1e3 * float(height_m) == pytest.approx(mm, abs=0.06)
    assert float(peak_s) == pytest.approx(period_s, abs=6e-4)


# Two other fetch laws by the same package, SPM (1984) and Kahma and Calkoen (1992): the spread
# between such laws is 1.55 in height and 1.35 in period, no more.
@pytest.mark.parametrize(
    ("wind_m_s", "fetch_m", "mm", "period_s"),
    [(5, 50, 18.6, 0.396), (5, 50, 28.1, 0.522), (8, 100, 46.8, 0.606), (10, 200, 112.2, 1.044)],
)
def test_fetch_laws_agree_so_far(wind_m_s, fetch_m, mm, period_s):
    height_m, peak_s = chop.jonswap(wind_m_s, fetch_m)
    assert 1 / 1.1 < mm / (1e3 * float(height_m)) < 1.56
    assert 1 / 1.1 < period_s / float(peak_s) < 1.36


# Mean periods over the peak's, JONSWAP 3.3, by the package wavespectra 4.9: 0.835 and 0.781.
# Tolerance: 1 % for where the spectra are cut.
def test_mean_periods():
    ratio, share = frequencies.wave_grid()
    assert 1 / (share @ ratio) == pytest.approx(0.835, rel=0.01)
    assert 1 / np.sqrt(share @ ratio**2) == pytest.approx(0.781, rel=0.01)


# Lamb (1932), art. 115, table of k1 (closed form to four figures; Lamb prints three).
@pytest.mark.parametrize(
    ("aspect", "along"),
    [(1.5, 0.3037), (2, 0.2100), (3, 0.1220), (4, 0.0816), (5, 0.0591), (6, 0.0452), (8, 0.0293),
     (10, 0.0207)],
)  # fmt: skip
def test_lamb(aspect, along):
    assert float(added_mass.spheroid(aspect)) == pytest.approx(along, abs=6e-5)


# Four floats, top at the waterline, for the outside numbers below.
ROUND = np.cos(np.linspace(0.0, np.pi, 41))


def _b_outline():
    z, r = -40.0 + 30.0 * ROUND, 8.0 * np.sqrt(np.maximum(1.0 - ROUND**2, 0.0))
    upper = np.interp(1.5, r[:21], z[:21])
    lower = np.interp(1.0, r[20:][::-1], z[20:][::-1])
    inside = (z < upper) & (z > lower)
    return (
        np.concatenate([[0.0, upper], z[inside], [lower, -150.0]]),
        np.concatenate([[1.5, 1.5], r[inside], [1.0, 1.0]]),
    )


SHAPES = {
    "A": (np.array([0.0, -200.0]), np.array([10.0, 10.0])),
    "B": _b_outline(),
    "C": (np.array([0.0, -5, -15, -55, -115, -175]), np.array([1.75, 1.75, 9, 9, 1.5, 1.5])),
    "D": (np.array([0.0, -8, -18, -118, -138, -178]), np.array([1.25, 1.25, 5, 5, 0.8, 0.8])),
}


def float_(shape, shot_g=0.0, shot_kg_m3=7290.0, depth_m=1.0):
    profile = body.Profile(*SHAPES[shape])
    return Rig(profile, 0.0, 5e-3, -60.0, 1e-3 * shot_g, shot_kg_m3, depth_m, 1e-4,
               kappa(shape))  # fmt: skip


def kappa(shape):
    """Return the rule's factor; A comes through the surface and has but its lower end."""
    ends = added_mass.kappa(body.Profile(*SHAPES[shape]))
    return ends / 2 if shape == "A" else ends


def relative(made, diameter_mm, period_s):
    """Return how far the water runs up a tip in a regular wave, over the wave, without drag."""
    p = dataclasses.replace(heave.parts(made, diameter_mm), skin=0.0)
    omega = 2.0 * np.pi / np.atleast_1d(period_s)
    felt, shot = heave.felt_share(made, diameter_mm, chop.wavenumber_rad_m(omega))
    along2 = [
        motion.Waves(p, omega, on, felt, shot).water(0.0, 0.0)[0][0] for on in np.eye(omega.size)
    ]
    return np.sqrt(along2)


def tip_mm(shape):
    return 2.0 * SHAPES[shape][1][0]


# Volume and its centre by trimesh (surfaces of revolution, 128 sectors of equal volume), wetted
# area with the cut at the waterline counted in. Tolerances: 1e-4 and, for flat facets, 0.5 %;
# B: 1e-3, for its ends are trimmed to the tip's and stem's radius along chords here.
MESH = [
    ("A", 62831.85, -100.0, None, 1e-4), ("B", 8354.498, -41.804, 3038.1, 1e-3),
    ("C", 17775.197, -49.105, 5311.4, 1e-4), ("D", 8938.067, -70.365, 3994.9, 1e-4),
]  # fmt: skip


@pytest.mark.parametrize(("shape", "mm3", "centre_mm", "mm2", "tolerance"), MESH)
def test_bodies_against_a_mesh(shape, mm3, centre_mm, mm2, tolerance):
    profile = body.Profile(*SHAPES[shape])
    assert body.volume_mm3(profile) == pytest.approx(mm3, rel=tolerance)
    assert body.centroid_mm(profile) == pytest.approx(centre_mm, rel=tolerance)
    if mm2 is not None:
        cut = np.pi * profile.r_mm[0] ** 2
        assert body.wetted_area_mm2(profile) + cut == pytest.approx(mm2, rel=5e-3)


# Added mass over displaced mass at 2 s, boundary elements extrapolated to fine facets.
# Tolerance: 20 %, it nearly drops out of the motion.
@pytest.mark.parametrize(
    ("shape", "share"), [("A", 0.0329), ("B", 0.0846), ("C", 0.0731), ("D", 0.0228)]
)
def test_added_mass(shape, share):
    profile = body.Profile(*SHAPES[shape])
    added = added_mass.heave_added_mass_kg(profile, kappa(shape), 1000.0)
    assert added / (1e-6 * body.volume_mm3(profile)) == pytest.approx(share, rel=0.2)


# A flat-ended spar's added mass is 0.987 of (2/3) pi rho R^3 (the same). Tolerance: 5 %.
def test_flat_end():
    assert kappa("A") == pytest.approx(0.987, rel=0.05)


def bem():
    with (HERE / "heave_reference.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    return [(row["shape"], *(float(row[k]) for k in ("period_s", "relative", "froude_krylov_n_m")))
            for row in rows]  # fmt: skip


# How far the water runs up the tip in a regular wave, by boundary elements. Tolerance 0.02 of the
# wave, from the slender-body formula itself; 0.2 to 1 s, away from resonance.
@pytest.mark.parametrize(
    ("shape", "period_s", "far"),
    [row[:3] for row in bem() if row[0] in "BCD" and row[1] <= 1.0],
)
def test_heave_against_boundary_elements(shape, period_s, far):
    ours = relative(float_(shape), tip_mm(shape), period_s)[0]
    assert ours == pytest.approx(far, abs=0.02)


# The same with shot hung a metre (lead: 0.8 m) below, on a taut line. Tolerance: 0.02.
HUNG = {
    ("B", 4.4, 7290.0, 1.0): (0.9129, 0.8353, 0.6730, 0.5420, 0.3806, 0.2762),
    ("C", 8.0, 7290.0, 1.0): (0.9001, 0.8271, 0.6770, 0.5509, 0.3844, 0.2646),
    ("D", 4.4, 11340.0, 0.8): (0.9493, 0.9047, 0.7901, 0.6698, 0.4802, 0.3225),
}


@pytest.mark.parametrize("hung", HUNG)
def test_heave_with_hung_shot(hung):
    shape, *shot = hung
    periods = (0.25, 0.3, 0.4, 0.5, 0.7, 1.0)
    ours = relative(float_(shape, *shot), tip_mm(shape), periods)
    assert ours == pytest.approx(HUNG[hung], abs=0.02)


# Periods of bobbing by boundary elements, moving mass equal to the displaced. Tolerance: 1 %.
@pytest.mark.parametrize(
    ("shape", "shot_g", "seconds"),
    [
        ("A", 0.0, 0.912),
        ("B", 0.0, 2.273),
        ("C", 0.0, 2.827),
        ("D", 0.0, 2.738),
        ("B", 4.4, 2.384),
    ],
)
def test_natural_period(shape, shot_g, seconds):
    made, tip = float_(shape, shot_g), tip_mm(shape)
    moving = rig.moving_mass_kg(made, tip, float(freshwater.density_kg_m3()))
    ours = 2.0 * np.pi * np.sqrt(moving / heave.stiffness_n_m(tip))
    assert float(ours) == pytest.approx(seconds, rel=0.01)


# Pressure of the undisturbed wave on the body for each metre of it: boundary elements, by facets
# (0.5 %, and 8e-4 N/m of A, where it is a small difference; shorter waves vary across a body, by
# (k R)^2 / 8 or 2 % of the widest at 0.3 s), and at 0.5 s also by 20-point quadrature (1e-4).
@pytest.mark.parametrize(
    ("shape", "period_s", "newtons"),
    [(row[0], row[1], row[3]) for row in bem() if 0.5 <= row[1] <= 1.0],
)
def test_wave_pressure(shape, period_s, newtons):
    assert wave_pressure_n_m(shape, period_s) == pytest.approx(newtons, rel=5e-3, abs=8e-4)


@pytest.mark.parametrize(
    ("shape", "newtons"), [("A", 0.12321), ("C", -1.29108), ("D", -0.47622), ("B", -0.63018)]
)
def test_wave_pressure_by_quadrature(shape, newtons):
    tolerance = 1e-3 if shape == "B" else 1e-4
    assert wave_pressure_n_m(shape, 0.5) == pytest.approx(newtons, rel=tolerance)


def wave_pressure_n_m(shape, period_s):
    omega2 = (2 * np.pi / period_s) ** 2
    felt = 1e-9 * body.section_integral(body.Profile(*SHAPES[shape]), omega2 / 9.81)
    return 1000.0 * (9.81 * np.pi / 4e6 * tip_mm(shape) ** 2 - omega2 * float(felt))
