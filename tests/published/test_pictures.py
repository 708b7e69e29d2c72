"""Pictures against the outside: colour of the screen, waves, and the angle of a pixel.

Gold: each value from a standard or another program, its source beside it.
"""

import numpy as np
import pytest
from colours import colour

from tipsight.afloat import chop
from tipsight.inputs.case import Wind
from tipsight.pictures import ripple, screen


@pytest.mark.parametrize("wavelength_nm", [420.0, 450.0, 500.0, 530.0, 555.0, 580.0, 600.0, 650.0])
def test_cones_to_xyz(wavelength_nm):
    """CIE 170-2:2015 as colour-science has it; 1e-6, as the same nine figures stand behind both."""
    lms = colour.MSDS_CMFS["Stockman & Sharpe 2 Degree Cone Fundamentals"][wavelength_nm]
    wanted = colour.colorimetry.LMS_2_degree_cmfs_to_XYZ_2_degree_cmfs(wavelength_nm)
    assert screen.LMS_TO_XYZ @ lms == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize(
    ("xyz", "rgb"),
    [  # primaries and white of a screen, chromaticities of IEC 61966-2-1 (ITU-R BT.709)
        ((0.4124, 0.2126, 0.0193), (1.0, 0.0, 0.0)),
        ((0.3576, 0.7152, 0.1192), (0.0, 1.0, 0.0)),
        ((0.1805, 0.0722, 0.9505), (0.0, 0.0, 1.0)),
        ((0.9505, 1.0, 1.089), (1.0, 1.0, 1.0)),
    ],
)
def test_xyz_to_the_screen(xyz, rgb):
    """Four decimals in the standard, so 1e-3."""
    assert screen.XYZ_TO_RGB @ xyz == pytest.approx(rgb, abs=1e-3)


@pytest.mark.parametrize(
    ("linear", "value"),
    [(0.0, 0), (0.001, 3), (0.01, 25), (0.1, 89), (0.18, 118), (0.5, 188), (1.0, 255)],
)
def test_the_screens_curve(linear, value):
    """sRGB of IEC 61966-2-1, worked by hand from its formula; half a step of 255."""
    white = screen.cones_of(np.array([1.0, 0.0, 0.0, 0.0]))
    found = screen.rgb(np.array([linear, 0.0, 0.0, 0.0]), white, 1.0)
    assert found.tolist() == pytest.approx([value] * 3, abs=1)


def test_long_waves_peak_where_gravity_has_them():
    """Wavenumber w²/g (Airy): waves of 4 m within 2 % of it, where surface tension does nothing."""
    k = np.geomspace(0.3, 30.0, 4000)
    peak = 2.0 * np.pi / 4.0
    omega = float(chop.angular_rad_s(peak))
    assert omega**2 / 9.80665 == pytest.approx(peak, rel=0.02)
    found = ripple.heights_spectrum(peak, k)
    per_frequency = found / np.gradient(chop.angular_rad_s(k), k)
    assert k[per_frequency.argmax()] == pytest.approx(peak, rel=0.02)


@pytest.mark.parametrize("x", [0.5, 1.5, 2.0, 3.0])
def test_jonswap_shape(x):
    """Hasselmann et al. 1973: at the peak the sea is 3.3 times Pierson and Moskowitz's, and away
    from it the two are one: densities at x peak frequencies over that at the peak, to 1e-3."""
    peak = 2.0 * np.pi / 4.0
    omega = float(chop.angular_rad_s(peak))
    at = chop.wavenumber_rad_m(omega * np.array([1.0, x]))
    step = 1e-4 * at
    slope = (chop.angular_rad_s(at + step) - chop.angular_rad_s(at)) / step
    density = ripple.heights_spectrum(peak, at) / slope
    wanted = (x**-5 * np.exp(-1.25 * x**-4)) / (3.3 * np.exp(-1.25))
    assert density[1] / density[0] == pytest.approx(wanted, rel=1e-3)


def test_a_wind_of_four_metres_has_cox_and_munks_slopes_halved():
    """0.5 x 5.12e-3 x 4 and the base of 2e-4 on each axis; drawn sheets scatter by a tenth."""
    wind = Wind(4.0)
    from tipsight.scene.slopes import slope_variance

    total = [
        s.rise_away.var() + s.rise_right.var()
        for seed in range(4)
        if (s := ripple.waves(chop.sea(wind), wind, slope_variance(wind), near_mm=500.0,
                              far_mm=5500.0, wide_mm=1800.0, seed=seed).at())
    ]  # fmt: skip
    assert np.mean(total) == pytest.approx(0.5 * 5.12e-3 * 4.0 + 4e-4, rel=0.1)
