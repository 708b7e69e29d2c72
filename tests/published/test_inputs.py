"""Units and scales of the question against their published definitions."""

import pytest

from tipsight.inputs import quantities
from tipsight.inputs.clock import compass_deg
from tipsight.inputs.items import ITEMS
from tipsight.inputs.values import read
from tipsight.nature import ripple_height_m, ripple_wind_m_s

# Exact by definition, so to rounding of a float only.
# International yard and pound agreement of 1959 (NIST SP 811, Appendix B.8): yard, foot, inch,
# mile, ounce; international nautical mile of 1929 (SI Brochure, 9th edition): knot;
# degree Fahrenheit (NIST SP 811, B.8).
DEFINED = [
    ("yard", quantities.length_m("1 yd"), 0.9144),
    ("foot", quantities.length_m("1 ft"), 0.3048),
    ("inch", quantities.length_mm("1 in"), 25.4),
    ("mile", quantities.length_m("1 mile"), 1609.344),
    ("mile an hour", quantities.speed_m_s("1 mph"), 0.44704),
    ("knot", quantities.speed_m_s("1 kn"), 1852 / 3600),
    ("kilometre an hour", quantities.speed_m_s("3.6 km/h"), 1.0),
    ("ounce", quantities.mass_g("1 oz"), 28.349523125),
    ("kilogram", quantities.mass_g("1 kg"), 1000.0),
    ("milligram", quantities.mass_g("1 mg"), 0.001),
    ("kilometre", quantities.length_m("1 km"), 1000.0),
    ("centimetre", quantities.length_mm("1 cm"), 10.0),
    ("foot a second", quantities.speed_m_s("1 ft/s"), 0.3048),
    ("freezing point in Fahrenheit", quantities.temperature_c("32 F"), 0.0),
    ("boiling point in Fahrenheit", quantities.temperature_c("212 F"), 100.0),
]


@pytest.mark.parametrize(("name", "ours", "theirs"), DEFINED, ids=[row[0] for row in DEFINED])
def test_units(name, ours, theirs):
    assert ours == pytest.approx(theirs, rel=1e-12, abs=1e-12)


# Beaufort scale in m/s: WMO-No. 306, Manual on Codes, code table 1100 (from memory).
BEAUFORT = {
    1: (0.3, 1.5),
    2: (1.6, 3.3),
    3: (3.4, 5.4),
    4: (5.5, 7.9),
    5: (8.0, 10.7),
    6: (10.8, 13.8),
    7: (13.9, 17.1),
    8: (17.2, 20.7),
    9: (20.8, 24.4),
}


@pytest.mark.parametrize("force", BEAUFORT)
def test_a_wind_force_lies_in_its_class(force):
    low, high = BEAUFORT[force]
    assert (
        low - 0.05 <= quantities.speed_m_s(f"force {force}") <= high + 0.05
    )  # classes to 0.1 m/s


@pytest.mark.parametrize(("word", "force"), [("light", 2), ("breeze", 3), ("strong", 5)])
def test_a_wind_word_lies_in_its_class(word, force):
    low, high = BEAUFORT[force]
    assert low <= read(ITEMS["wind"], word) <= high


# Equivalent notations of acuity: ICO Visual Acuity Measurement Standard 1984, table of
# equivalents; BS 4274-1. Rounded there to two figures, so 2 %.
ACUITY = [
    ("6/6", 1.0),
    ("6/12", 2.0),
    ("20/40", 2.0),
    ("0.5", 2.0),
    ("0.3 logMAR", 2.0),
    ("6/60", 10.0),
    ("20/200", 10.0),
    ("0.1", 10.0),
    ("1.0 logMAR", 10.0),
    ("6/7.5", 1.25),
    ("20/25", 1.25),
    ("0.8", 1.25),
    ("0.1 logMAR", 1.25),
]


@pytest.mark.parametrize(("text", "mar_arcmin"), ACUITY)
def test_acuity(text, mar_arcmin):
    assert read(ITEMS["sight"], text) == pytest.approx(mar_arcmin, rel=0.02)


# The 32-point compass card, points of 11 1/4 degrees (Bowditch, American Practical Navigator).
@pytest.mark.parametrize(
    ("point", "deg"),
    [("N", 0), ("NNE", 22.5), ("ENE", 67.5), ("SE", 135), ("SSW", 202.5), ("NW", 315)],
)
def test_compass(point, deg):
    assert compass_deg(point) == deg


# Hasselmann and others 1973 (JONSWAP), fetch-limited growth Hs = 0.0016 U (F/g)^0.5 as in the
# Shore Protection Manual 1984, equation 3-33a (from memory): 10 m/s over 1 km gives 0.16 m.
def test_the_wind_of_a_ripple_is_the_growth_law_turned_round():
    per_metre = 0.0016 * (50 / 9.81) ** 0.5
    assert ripple_wind_m_s(4 * per_metre) == pytest.approx(4.0)
    assert float(ripple_height_m(10.0, 1000.0)) == pytest.approx(0.16, abs=0.005)


# As long as its own height: 45 degrees; twice: 26.6, by plane geometry. Words to whole degrees.
@pytest.mark.parametrize(("word", "ratio"), [("as long as you", 1.0), ("twice", 2.0)])
def test_a_shadow_gives_the_suns_height(word, ratio):
    import math

    assert read(ITEMS["shadow"], word).number == pytest.approx(
        math.degrees(math.atan(1 / ratio)), abs=0.5
    )
