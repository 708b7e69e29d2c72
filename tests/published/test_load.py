"""Load against the outside: shot tables, exact geometry, reference meshes, enumerated optima."""

import numpy as np
import pytest

from tipsight.afloat import bite, heave
from tipsight.inputs.case import BuiltFloat, Part, Stock, Tip, WeighedFloat
from tipsight.load import balance, budget, exact, hull, law, materials, patterns, plan, shot, tips

NO_COATS = {"varnish_coats": 0, "paint_coats": 0, "fittings_g": 0.0}


# Shot chart of a British tackle shop, grams, as printed there (it calls itself approximate).
@pytest.mark.parametrize(
    ("name", "mass_g"),
    [
        ("SSG", 1.6), ("AAA", 0.8), ("BB", 0.4), ("No 1", 0.3), ("No 4", 0.2), ("No 6", 0.1),
        ("No 8", 0.06), ("No 9", 0.05), ("No 10", 0.04), ("No 11", 0.03), ("No 12", 0.02),
        ("No 13", 0.01),
    ],
)  # fmt: skip
def test_shot_sizes(name, mass_g):
    assert {s.name: s.mass_g for s in shot.sizes()}[name] == mass_g


# The same chart's doubling ladder and its worked sum "6 x No 4 = 1.2 g"; exact.
@pytest.mark.parametrize(
    ("one", "count", "other"),
    [
        ("SSG", 2, "AAA"),
        ("AAA", 2, "BB"),
        ("BB", 2, "No 4"),
        ("No 4", 2, "No 6"),
        ("No 8", 2, "No 11"),
    ],
)
def test_doubling_ladder(one, count, other):
    mass = {s.name: s.mass_g for s in shot.sizes()}
    assert mass[one] == pytest.approx(count * mass[other])


# Archimedes with the water of IAPWS-95 at 10 deg C (999.70 kg/m3): a closed form reckoned by hand
# for 11 BB (4.4 g) of lead 11340 and tin 7290 kg/m3. Tolerance: last figure.
@pytest.mark.parametrize(("metal", "wet_g"), [("lead", 4.0121), ("tin", 3.7966)])
def test_eleven_bb_in_water(metal, wet_g):
    assert 4.4 * float(shot.wet_share(metal, 10.0)) == pytest.approx(wet_g, abs=1e-4)


# Sphere of the mass (closed form, last figure).
@pytest.mark.parametrize(
    ("metal", "mass_g", "diameter_mm"),
    [
        ("lead", 1.6, 6.459), ("lead", 0.4, 4.069), ("lead", 0.06, 2.162),
        ("tin", 1.6, 7.484), ("tin", 0.4, 4.715), ("tin", 0.06, 2.505),
    ],
)  # fmt: skip
def test_shot_diameter(metal, mass_g, diameter_mm):
    assert float(shot.diameter_mm(mass_g, metal)) == pytest.approx(diameter_mm, abs=6e-4)


# Government page of freshwater rod rules for England: lead of 0.06 g or less, or over 28.35 g.
@pytest.mark.parametrize(
    ("mass_g", "allowed"), [(0.06, True), (0.061, False), (28.35, False), (28.36, True)]
)
def test_lead_window(mass_g, allowed):
    assert bool(law.lead_allowed(mass_g)) is allowed


# Waterplane area times the water of IAPWS-95 at 10 deg C (closed form). Tolerance: last figure.
@pytest.mark.parametrize(
    ("diameter_mm", "stiffness"),
    [
        (1.5, 0.001767), (2.0, 0.003141), (2.5, 0.004907), (3.0, 0.007066), (3.5, 0.009618),
        (4.0, 0.012563), (5.0, 0.019629), (8.0, 0.050251),
    ],
)  # fmt: skip
def test_tip_stiffness(diameter_mm, stiffness):
    assert float(heave.stiffness_g_per_mm(diameter_mm)) == pytest.approx(stiffness, abs=6e-7)


# The same for a tip of an inch and a quarter, and the meniscus by pi d sigma / g with the surface
# tension of IAPWS R1-76(2014) at 10 deg C, 0.07422 N/m. Tolerance: last figure.
@pytest.mark.parametrize(
    ("diameter_mm", "sink_g", "meniscus_g"),
    [(2.0, 0.0997, 0.0475), (3.0, 0.2244, 0.0713), (4.0, 0.3989, 0.0951), (8.0, 1.5955, 0.1902)],
)
def test_sink_force_and_meniscus(diameter_mm, sink_g, meniscus_g):
    assert float(budget.sink_force_g(diameter_mm, 31.75)) == pytest.approx(sink_g, abs=6e-5)
    assert float(bite.meniscus_g(diameter_mm, 0.0)) == pytest.approx(meniscus_g, abs=6e-5)


# Metre weights: brazing rod 5356 at 0.096 lb/in3 and wire of 7930 kg/m3 (closed form), and a glass
# rod maker's printed "2 mm: 6 g/m" (one figure). Tolerances: 2 % for the table's rounded alloy
# density, last figure otherwise.
@pytest.mark.parametrize(
    ("material", "diameter_mm", "g_per_m", "tolerance"),
    [("alloy", 1.6, 5.34, 0.02), ("alloy", 2.0, 8.35, 0.02), ("wire", 1.0, 6.23, 1e-3),
     ("wire", 1.2, 8.97, 1e-3), ("carbon", 1.5, 2.74, 2e-3), ("glass", 2.0, 6.0, 0.08)],
)  # fmt: skip
def test_metre_weights(material, diameter_mm, g_per_m, tolerance):
    float_ = BuiltFloat(
        "",
        (
            Part("body", "cylinder", "bead foam", 1.0, 10.0, 10.0),
            Part("stem", "cylinder", material, 1000.0, diameter_mm, diameter_mm),
        ),
        **NO_COATS,
    )
    foam_g = 1e-6 * 20.0 * np.pi * 25.0
    assert hull.build(float_).mass_g - foam_g == pytest.approx(g_per_m, rel=tolerance)


# Volume and centre of volume of three bodies by trimesh (surface of revolution, 128 sectors of
# equal volume). C and D are straight cones: 2e-5 for the sectors; B has an ellipsoid sampled there
# at 41 points and here at 81: 1e-3.
SHAPES = {
    "B": ([("shoulder", "cylinder", 10, 3, 3), ("body", "ellipsoid", 60, 16, 16),
           ("stem", "cylinder", 80, 2, 2)], 8354.498, -41.804, 1e-3),
    "C": ([("shoulder", "cylinder", 5, 3.5, 3.5), ("shoulder", "cone", 10, 3.5, 18),
           ("body", "cylinder", 40, 18, 18), ("body", "cone", 60, 18, 3),
           ("stem", "cylinder", 60, 3, 3)], 17775.197, -49.105, 2e-5),
    "D": ([("shoulder", "cylinder", 8, 2.5, 2.5), ("shoulder", "cone", 10, 2.5, 10),
           ("body", "cylinder", 100, 10, 10), ("body", "cone", 20, 10, 1.6),
           ("stem", "cylinder", 40, 1.6, 1.6)], 8938.067, -70.365, 2e-5),
}  # fmt: skip


@pytest.mark.parametrize("shape", SHAPES)
def test_volume_and_centre_against_a_mesh(shape):
    rows, volume_mm3, centre_mm, tolerance = SHAPES[shape]
    parts = tuple(Part(role, form, "balsa", *sizes) for role, form, *sizes in rows)
    made = hull.build(BuiltFloat("", parts, **NO_COATS))
    assert made.volume_mm3 == pytest.approx(volume_mm3, rel=tolerance)
    assert made.centroid_mm == pytest.approx(centre_mm, rel=tolerance)
    # all one stuff: weight over volume is its density and the centres agree
    assert made.mass_g == pytest.approx(140e-6 * made.volume_mm3, rel=1e-9)
    assert made.centre_of_mass_mm == pytest.approx(made.centroid_mm, rel=1e-9)


# Ellipsoid 16 x 60 mm, pi/6 d^2 l exactly: 8042.477 mm3. 81 points miss 0.05 %.
def test_ellipsoid_volume():
    made = hull.build(
        BuiltFloat("", (Part("body", "ellipsoid", "balsa", 60, 16, 16),), **NO_COATS)
    )
    assert made.volume_mm3 == pytest.approx(8042.477, rel=5e-4)


# Not from print: a build reckoned by hand part by part (body, stem, tip, coats, ring): 11 BB
# of tin with
# 31.75 mm of a hollow 3.0/2.2 mm tip showing. 1 %: areas there by rule of thumb for the ellipsoid.
BUILD_TIP = Tip(Stock("thin tube", 3.0, 2.2, 1050.0), 31.75, 8.25, 15.0, coats=5)


@pytest.mark.parametrize(
    ("body", "diameter_mm", "stem", "stem_mm", "mass_g", "pull_g"),
    [("balsa", 12.18, "cane", 3.0, 1.770, 3.797), ("foam", 12.29, "alloy", 1.6, 1.447, 3.797)],
)
def test_worked_builds(body, diameter_mm, stem, stem_mm, mass_g, pull_g):
    parts = (
        Part("body", "ellipsoid", body, 60, diameter_mm, diameter_mm),
        Part("stem", "cylinder", stem, 75, stem_mm, stem_mm, inside_mm=45),
    )
    made = hull.build(BuiltFloat("", parts))
    assert balance.float_mass_g(made, BUILD_TIP) == pytest.approx(mass_g, rel=0.01)
    assert budget.pull_g(made, BUILD_TIP) == pytest.approx(pull_g, rel=0.01)


# Two coats on a 3.00 mm tip: 3.12 mm (30 um each; a spar varnish maker's sheet gives 25 to 37.5).
def test_paint_thickens_a_tip():
    assert float(tips.painted_diameter_mm(3.0, 2)) == pytest.approx(3.12)


# Dry weight of 10 mm of tip, hand arithmetic from the densities named (solid 1.05, tube of 0.5 mm
# wall, cane 0.7). Tolerance: last figure, 2 % for what the handbook range leaves open.
@pytest.mark.parametrize(
    ("kind", "diameter_mm", "g"),
    [("solid", 3, 0.074), ("solid", 4, 0.132), ("solid", 5, 0.206), ("solid", 6, 0.297),
     ("thin tube", 3, 0.041), ("thin tube", 4, 0.058), ("thin tube", 5, 0.074),
     ("thin tube", 6, 0.091), ("cane", 3, 0.049), ("cane", 4, 0.088), ("cane", 5, 0.137),
     ("cane", 6, 0.198)],
)  # fmt: skip
def test_tip_weight_of_a_centimetre(kind, diameter_mm, g):
    piece = materials.stock(kind, diameter_mm)
    assert 10 * float(tips.stock_mass_g_per_mm([piece])[0]) == pytest.approx(g, rel=0.02)


# Pultruded glass rod in the list of a supplier, read: 2 mm 6 g/m, 3 mm 14 g/m. Tolerance: half of
# the last figure.
@pytest.mark.parametrize(("diameter_mm", "g_per_m"), [(2.0, 6.0), (3.0, 14.0)])
def test_glass_rod_weighs_what_its_supplier_says(diameter_mm, g_per_m):
    piece = materials.stock("glass", diameter_mm)
    found = 1000.0 * float(tips.stock_mass_g_per_mm([piece])[0])
    assert found == pytest.approx(g_per_m, abs=0.5)


# A 3 mm quill (20 showing, 10 wet, 5 glued) changed for 5 mm stock, 30 showing: loss of pull by
# the load equation on paper. That sum
# takes cane at 0.7 g/cc, as stock.csv does (at 0.6 the cane row would miss by 0.07 g); balsa at
# 0.16 where stock.csv has 0.20 (at 0.16: +0.05). A hand sum, not a measurement.
# Tolerance 0.05 g: paint and quill density are open there.
@pytest.mark.parametrize(
    ("kind", "change_g"),
    [("thin tube", -0.12), ("solid", -0.72), ("cane", -0.41), ("balsa", 0.02)],
)
def test_retip_costs_upthrust(kind, change_g):
    old = Tip(materials.stock("quill", 3.0), 20.0, 10.0, 5.0)
    made = hull.weighed(WeighedFloat("quill avon", 2.4), old)
    new = Tip(materials.stock(kind, 5.0), 30.0, 10.0, 5.0)
    assert budget.pull_g(made, new) - budget.pull_g(made, old) == pytest.approx(change_g, abs=0.05)


# Least costs [mg] by brute-force enumeration of all counts, equal to scipy.optimize.milp (HiGHS):
# bulk BB, AAA; droppers No 4, 6, 8; trims No 8 to 11; water 999.70 kg/m3. Ties: cost only.
OPTIMA = [
    ("lead", 4.012, 14.5091), ("lead", 3.797, 8.2330), ("lead", 3.40, 11.9439),
    ("lead", 2.51, 6.4317), ("lead", 5.60, 7.7838), ("tin", 4.012, 13.7974),
    ("tin", 3.797, 3.8855), ("tin", 3.40, 5.3043), ("tin", 2.51, 10.6859), ("tin", 5.60, 17.1222),
]  # fmt: skip


@pytest.mark.parametrize(("metal", "load_g", "cost_mg"), OPTIMA)
def test_shot_optima(metal, load_g, cost_mg):
    share = 1.0 - 999.70 / shot.density_kg_m3(metal)
    sizes = [
        exact.Size(
            s.mass_g, share, None, s.mass_g >= 0.4, 0.06 <= s.mass_g <= 0.2, s.mass_g <= 0.06
        )
        for s in shot.sizes(metal)
        if s.name in ("AAA", "BB", "No 4", "No 6", "No 8", "No 9", "No 10", "No 11")
    ]
    best = exact.best(load_g, sizes, exact.Rule(0.70, 0.92, 2, 4, 3))
    assert best is not None
    assert best.cost_mg == pytest.approx(cost_mg, abs=1e-3)


# Facts of the trade: common practice, no source. Loads in shot that a pattern's grid must span.
# The sizes in pattern_parts.csv were chosen so that they do: this guards the table, and is no
# evidence for the model.
@pytest.mark.parametrize(
    ("pattern", "low_g", "high_g"),
    [
        ("wire avon", 1.2, 2.8),  # to 7 BB
        ("alloy stick 1.6", 0.8, 1.2),  # six No 4
        ("bolo type", 6.0, 8.0),
        ("quill avon", 1.6, 4.8),  # about 3 to 12 BB
        ("foam taper", 3.6, 5.6),  # 9 to 14 BB
        ("balsa taper", 3.6, 5.6),
        ("hollow-tip foam taper", 4.2, 6.0),  # from 4 g
        ("hollow-tip balsa taper", 4.2, 6.0),
        ("canal balsa", 0.4, 0.8),  # two to four No 4
        ("wire stick", 0.6, 1.2),  # three to six No 4
        ("cane stick", 0.8, 1.2),  # four to six No 4
        ("chunky trotter", 3.2, 9.0),  # four AAA to nearly six SSG
        ("bottom-end peacock", 2.4, 4.8),  # three AAA to three SSG
    ],
)
def test_patterns_span_the_trade_loads(pattern, low_g, high_g):
    usual = patterns.pattern(pattern)
    share = float(shot.wet_share("tin"))
    loads = [
        budget.pull_g(hull.build(patterns.built(pattern, size)), usual.tip) / share
        for size in usual.sizes
    ]
    assert loads == sorted(loads)
    assert loads[0] <= low_g
    assert loads[-1] >= high_g


# Common practice, no source: 11 BB is 4.4-4.5 g with a 4 g olivette and droppers, 14 BB has a
# 4.5 g olivette and droppers; a stick of 1.2 g takes six No 4; a quarter-inch balsa dowel.
def test_trade_shotting():
    share = float(shot.wet_share("tin"))
    box = shot.sizes(olivettes=True)
    eleven = plan.plan(4.45 * share, box)
    assert eleven.shot[0] == ("4 g olivette", 1, "bulk")
    assert {where for _, _, where in eleven.shot[1:]} <= {"dropper", "trim under the float"}
    fourteen = plan.plan(5.6 * share, [s for s in box if s.mass_g <= 4.5])
    assert fourteen.shot[0] == ("4.5 g olivette", 1, "bulk")
    assert plan.plan(1.2 * share, shot.sizes(), "spread").shot == (("No 4", 6, "spread"),)
    assert hull.build(patterns.built("straight balsa")).body_diameter_mm == pytest.approx(25.4 / 4)
    assert patterns.pattern("quill avon").tip.stock.diameter_mm == 2.5
    assert patterns.pattern("hollow-tip foam taper").tip.stock.diameter_mm == 3.5
