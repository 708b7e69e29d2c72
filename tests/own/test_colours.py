"""Colours as people tell them against published values, and reflectances that have them."""

import numpy as np
import pytest
from colours import colour

from tipsight.errors import Mistakes
from tipsight.own import colours


# sRGB: the red, green and blue columns of IEC 61966-2-1 (as printed there, to four figures).
@pytest.mark.parametrize(
    ("said", "xyz"),
    [
        ("#ff0000", (0.4124, 0.2126, 0.0193)), ("#00FF00", (0.3576, 0.7152, 0.1192)),
        ("0 0 255", (0.1805, 0.0722, 0.9505)), ("rgb(255, 255, 255)", (0.9505, 1.0, 1.0890)),
        ("#888", (0.2343, 0.2462, 0.2681)),
    ],
)  # fmt: skip
def test_a_colour_of_a_screen(said, xyz):
    assert colours.read(said) == pytest.approx(xyz, abs=3e-4)


def test_lab_by_hand():
    """L* of 50 is Y of ((50 + 16)/116)^3 = .1842, L* of 8 one of 8/903.3 = .00886 (CIE 15)."""
    assert colours.read("lab 50 0 0")[1] == pytest.approx(0.1842, abs=1e-4)
    assert colours.read("Lab(8, 0, 0)")[1] == pytest.approx(0.00886, abs=1e-5)


# Munsell: Y of value 5 is .1977 and of value 8 .5910 relative to magnesium oxide (Newhall, Nickerson
# and Judd 1943, Table I), times .975 in ASTM D1535: .1927 and .5762.
@pytest.mark.parametrize(("said", "y"), [("5R 5/8", 0.1927), ("10 YR 8/6", 0.5762), ("N 5/", 0.1927)])
def test_munsells_value(said, y):
    assert colours.read(said)[1] == pytest.approx(y, rel=0.015)


# Munsell's renotation (Newhall, Nickerson and Judd 1943, Tables I and II, as in colour-science): the
# chromaticity under illuminant C of every 90th of the 2734 real colours, to its four figures. What is
# tried is how a notation is read and led to D65; the table is looked up by colour-science itself.
def test_the_renotations_own_colours():
    rows = colour.MUNSELL_COLOURS["real"][::90]
    assert len(rows) == 31
    observer = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]
    d65, c = (colour.xy_to_XYZ(observer[name]) for name in ("D65", "C"))
    cat02 = colour.adaptation.matrix_chromatic_adaptation_VonKries(d65, c, transform="CAT02")
    for (hue, value, chroma), xyy in rows:
        back = cat02 @ colours.read(f"{hue} {value:g}/{chroma:g}")
        assert back[:2] / back.sum() == pytest.approx(xyy[:2], abs=5e-5)
        assert back[1] == pytest.approx(0.00975 * xyy[2], rel=0.01)


@pytest.mark.parametrize(
    "said",
    ["#ff6a00", "#d10047", "#1f6f3a", "#2a2a2a", "#f0f0e8", "5YR 6/12", "5BG 4/6", "lab 70 -20 60"],
)
def test_the_reflectance_has_the_colour(said):
    xyz = colours.read(said)
    nm, share = colours.recovered(xyz, said)
    assert share.min() >= 0.0
    assert share.max() <= 1.0
    assert colours.apart(colours.colour_of(share, nm), xyz) < 0.5


# The 24 patches of a colour chart, measured (BabelColor's average of 30 charts, 2012, as in
# colour-science): a spectrum from the colour alone is .054 off, root mean square, .15 at worst (found).
def test_against_the_measured_patches_of_a_chart():
    charts = colour.SDS_COLOURCHECKERS["BabelColor Average"]
    off = []
    for name, measured in charts.items():
        nm = np.asarray(measured.wavelengths)
        xyz = colours.colour_of(np.asarray(measured.values), nm)
        if xyz[1] > colours.PALEST:
            continue
        at, share = colours.recovered(xyz, name)
        inside = (at >= 420.0) & (at <= 700.0)
        true = np.interp(at[inside], nm, measured.values)
        off.append(float(np.sqrt(np.mean((share[inside] - true) ** 2))))
    assert len(off) == 24
    assert np.mean(off) == pytest.approx(0.054, abs=0.002)
    assert max(off) == pytest.approx(0.149, abs=0.004)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("wibble", "say a colour of a screen, 'lab 60 50 40', or Munsell's such as '5YR 6/12'"),
        ("300 0 0", "say a colour of a screen"),
        ("lab 120 0 0", "say a colour of a screen"),
        ("5YR 99/99", "Munsell's renotation has no such colour"),
    ],
)
def test_what_is_no_colour(said, why):
    with pytest.raises(Mistakes, match=why):
        colours.read(said)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("#000000", "no paint is so dark: they give back 1 to 95 % of the light"),
        ("#ffffff", "no paint is so pale: they give back 1 to 95 % of the light"),
        ("lab 80 60 100", "no plain paint is so bright and so pure; if it glows, say so with --glows"),
    ],
)
def test_what_no_paint_can_be(said, why):
    with pytest.raises(Mistakes, match=why):
        colours.recovered(colours.read(said), said)


def test_without_the_library_one_line_says_what_to_install(monkeypatch):
    import builtins

    real = builtins.__import__

    def without(name, *rest, **named):
        if name == "colour":
            raise ImportError(name)
        return real(name, *rest, **named)

    monkeypatch.setattr(builtins, "__import__", without)
    colours.library.cache_clear()
    try:
        with pytest.raises(Mistakes, match=r"this needs colour-science, which is not here: pip install"):
            colours.library()
    finally:
        colours.library.cache_clear()
