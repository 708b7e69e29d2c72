"""Build cones.csv and d_series.csv from colour-science: ``python tests/helpers/build_tables.py``."""

from collections.abc import Iterable

import numpy as np
from colours import colour

from tipsight import tables

DATA = tables.PACKAGED
CONES = "Stockman & Sharpe 2 Degree Cone Fundamentals"
PHOTOPIC = "CIE 1924 Photopic Standard Observer"
SCOTOPIC = "CIE 1951 Scotopic Standard Observer"

CONES_HEAD = """\
# title: What the eye takes of light, by wavelength
# units: wavelength_nm in nm; the rest relative, 0 where the standard begins later
# source: published: long, medium, short: CIE 170-1:2006 2-degree cone fundamentals
# source: (Stockman and Sharpe 2000), energy; photopic: CIE 1924 V(lambda);
# source: scotopic: CIE 1951 V'(lambda);
# source: every 5 nm, taken from the tables of colour-science 0.4
"""
SERIES_HEAD = """\
# title: Components of daylight spectra (mean and two characteristic vectors)
# units: wavelength_nm in nm; s0, s1, s2 relative spectral power
# source: published: CIE 15:2004 table T.2 (Judd, MacAdam and Wyszecki 1964),
# source: taken from the tables of colour-science 0.4
"""


def column(distribution, wavelengths: Iterable[int]) -> list[float]:
    """Values of a colour-science distribution at whole nanometres, 0 outside it."""
    table = dict(zip(distribution.wavelengths, distribution.values, strict=True))
    return [float(table.get(float(nm), 0.0)) for nm in wavelengths]


def cones() -> dict[str, list[float]]:
    """Columns of cones.csv."""
    fundamentals = colour.MSDS_CMFS[CONES]
    nm = range(360, 781, 5)
    table = zip(fundamentals.wavelengths, fundamentals.values, strict=True)
    values = {round(w): row for w, row in table}
    lms = np.array([values.get(w, np.zeros(3)) for w in nm])
    return {
        "wavelength_nm": [float(w) for w in nm],
        "long": lms[:, 0].tolist(),
        "medium": lms[:, 1].tolist(),
        "short": np.nan_to_num(lms[:, 2]).tolist(),
        "photopic": column(colour.SDS_LEFS[PHOTOPIC], nm),
        "scotopic": column(colour.SDS_LEFS[SCOTOPIC], nm),
    }


def d_series() -> dict[str, list[float]]:
    """Columns of d_series.csv."""
    basis = colour.colorimetry.datasets.SDS_BASIS_FUNCTIONS_CIE_ILLUMINANT_D_SERIES
    nm = range(300, 781, 5)
    return {"wavelength_nm": [float(w) for w in nm]} | {
        f"s{i}": column(basis[f"S{i}"], nm) for i in range(3)
    }


def write(name: str, head: str, source: str, columns: dict[str, list[float]]) -> None:
    """Write one table."""
    lines = [",".join([*columns, "source"])]
    for row in zip(*columns.values(), strict=True):
        lines.append(",".join([*(f"{value:.10g}" for value in row), source]))
    (DATA / f"{name}.csv").write_text(head + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    write("cones", CONES_HEAD, "published: CIE 170-1:2006; CIE 1924; CIE 1951", cones())
    write("d_series", SERIES_HEAD, "published: CIE 15:2004 T.2", d_series())
