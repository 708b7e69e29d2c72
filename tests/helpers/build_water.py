"""Build water_spectra.csv from colour-science: ``python tests/helpers/build_water.py``."""

import numpy as np
import scipy.optimize
from colours import colour

from tipsight import tables

FOREL_ULE = {
    9: (0.336658, 0.461684), 10: (0.363277, 0.476353), 11: (0.386188, 0.486566),
    12: (0.402416, 0.481100), 14: (0.431336, 0.465513), 17: (0.475326, 0.440985),
    19: (0.503316, 0.424618),
}  # fmt: skip
HEAD = """\
# title: Spectra of waters by their class on the Forel-Ule scale
# units: wavelength_nm in nm; the rest radiance factor relative to that for D65 and V(lambda)
# source: computed: the smoothest spectrum in its logarithm (Burns 2020, least slope squared) with
# source: the chromaticity of the class under equal-energy light (Wernand and van der Woerd 2010,
# source: Novoa, Wernand and van der Woerd 2013, table 5; six digits from memory), made by
# source: tests/helpers/build_water.py
"""


def smoothest(xy, matching):
    """Spectrum of least squared slope of its logarithm that has a chromaticity and Y of one."""
    x, y = xy
    wanted = np.array([x / y, 1.0, (1.0 - x - y) / y])
    size = len(matching)
    slope = np.diff(np.eye(size), axis=0)
    hessian = 2.0 * slope.T @ slope

    def gap(unknown):
        log, pull = unknown[:size], unknown[size:]
        spectrum = np.exp(log)
        return np.concatenate(
            [hessian @ log + spectrum * (matching @ pull), spectrum @ matching - wanted]
        )

    def jacobian(unknown):
        spectrum, pull = np.exp(unknown[:size]), unknown[size:]
        top = hessian + np.diag(spectrum * (matching @ pull))
        side = spectrum[:, None] * matching
        return np.block([[top, side], [side.T, np.zeros((3, 3))]])

    found = scipy.optimize.root(gap, np.zeros(size + 3), jac=jacobian, method="hybr", tol=1e-12)
    if not found.success:
        raise RuntimeError(found.message)
    return np.exp(found.x[:size])


def main() -> None:
    """Write the table."""
    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    nm = np.arange(380, 781, 5)
    matching = np.array([observer[float(one)] for one in nm])
    matching = matching / matching[:, 1].sum()
    day = np.array([colour.SDS_ILLUMINANTS["D65"][float(one)] for one in nm]) * matching[:, 1]
    found = {name: smoothest(xy, matching) for name, xy in FOREL_ULE.items()}
    lines = [f"wavelength_nm,{','.join(f'fu{name}' for name in found)}"]
    for i, one in enumerate(nm):
        level = (spectrum[i] * day.sum() / (spectrum @ day) for spectrum in found.values())
        lines.append(f"{one},{','.join(f'{v:.5g}' for v in level)}")
    text = HEAD + "\n".join(lines) + "\n"
    (tables.PACKAGED / "water_spectra.csv").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
