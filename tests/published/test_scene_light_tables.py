"""Every cell of the eye's and daylight's tables against colour-science."""

import build_tables
import numpy as np
import pytest
from colours import colour

from tipsight import tables
from tipsight.scene import observer, spectra


@pytest.mark.parametrize("name", ["cones", "d_series"])
def test_every_cell_is_colour_science_s(name: str) -> None:
    want = getattr(build_tables, name)()
    table = tables.columns(name)
    assert set(table) == set(want)
    for column, values in want.items():
        assert table[column].tolist() == pytest.approx(values, rel=1e-9, abs=0), column


def of_colour(name: str) -> np.ndarray:
    illuminant = colour.SDS_ILLUMINANTS[name]
    values = np.interp(spectra.WAVELENGTHS_NM, illuminant.wavelengths, illuminant.values)
    return spectra.normalised(values)


ILLUMINANTS = [
    # CIE 15:2004 tables; 0.3 %: M1 and M2 are rounded to three decimals there
    *(("D50", 5003), ("D55", 5503), ("D65", 6504), ("D75", 7504)),
]


@pytest.mark.parametrize(("name", "temperature_k"), ILLUMINANTS)
def test_daylight_is_the_cie_illuminant(name: str, temperature_k: float) -> None:
    assert spectra.daylight(temperature_k) == pytest.approx(of_colour(name), rel=3e-3, abs=1e-6)


def test_planck_is_illuminant_a() -> None:
    # illuminant A is defined at 2848 K with a c2 of 1.435e-2, that is 2855.5 K: 1.4e-3 at 300 nm
    assert spectra.planck(2856.0) == pytest.approx(of_colour("A"), rel=1.5e-3)
    defined = 2848.0 * 1.438777 / 1.435
    assert spectra.planck(defined) == pytest.approx(of_colour("A"), rel=2e-5)


@pytest.mark.parametrize("temperature_k", [4000, 5000, 6500, 7000, 10000, 15000, 20000, 25000])
def test_daylight_locus_is_colour_science_s(temperature_k: float) -> None:
    want = colour.temperature.CCT_to_xy_CIE_D(temperature_k)
    assert spectra.daylight_xy(temperature_k) == pytest.approx(want, abs=1e-9)


@pytest.mark.parametrize("name", ["A", "D50", "D65", "E"])
def test_luminance_of_cones_follows_the_physiological_efficiency(name: str) -> None:
    """CIE 170-2: V_F is 1.89 L + M, ours is fixed to Y at D65; 3 % over common lights."""
    assert (of_colour(name) @ observer.channels())[0] == pytest.approx(1.0, rel=0.03)
