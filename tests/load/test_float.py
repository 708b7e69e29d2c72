"""The float: parts to hull, hull and tip to pull, and what is refused."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tipsight import tables
from tipsight.afloat import heave
from tipsight.errors import Mistakes, OutOfRange
from tipsight.inputs.case import Band, BuiltFloat, Part, Stock, Tip, WeighedFloat
from tipsight.load import (
    balance,
    bored,
    budget,
    hull,
    materials,
    patterns,
    shot,
    solid,
    staircase,
    tips,
)

CALM = settings(deadline=None, derandomize=True, max_examples=40)
WATER = 999.7026e-6
AVON = hull.build(patterns.built("quill avon", "12 mm"))
AVON_TIP = patterns.pattern("quill avon").tip
NAMES = [row["name"] for row in tables.rows("patterns")]
EVERY_SIZE = [(name, size) for name in NAMES for size in patterns.sizes(name)]


@pytest.mark.parametrize(("name", "size"), EVERY_SIZE)
def test_every_pattern_carries_its_usual_tip(name, size):
    usual = patterns.pattern(name)
    made = hull.build(patterns.built(name, size))
    tip = usual.tip
    assert budget.pull_g(made, tip) > 0.0
    assert made.body_diameter_mm == pytest.approx(float(size.removesuffix(" mm")))
    assert tip.showing_mm <= min(
        usual.max_showing_mm, usual.max_showing_diameters * tip.stock.diameter_mm
    )
    assert tip.glued_mm >= max(5.0, 0.12 * (tip.showing_mm + tip.wet_mm))
    assert tip.stock.diameter_mm <= usual.max_body_share * made.body_diameter_mm
    assert usual.default_size in usual.sizes


@pytest.mark.parametrize("name", NAMES)
def test_the_tip_it_carries_is_one_that_people_make(name):
    usual = patterns.pattern(name)
    assert usual.usual_from_mm <= usual.tip.stock.diameter_mm <= usual.usual_to_mm
    assert usual.usual_showing_from_mm <= usual.tip.showing_mm <= usual.usual_showing_to_mm


def test_profile_runs_down_and_holds_the_volume():
    assert AVON.profile.z_mm[0] == 0.0
    assert np.all(np.diff(AVON.profile.z_mm) <= 0.0)
    assert np.all(AVON.profile.r_mm >= 0.0)
    assert -AVON.profile.z_mm[-1] == pytest.approx(126.0)


@pytest.mark.parametrize("name", NAMES)
def test_a_wider_body_moves_the_load_by_its_volume(name):
    """A body 0.1 mm wider lifts by its extra volume less the weight of that volume."""
    usual = patterns.pattern(name)
    bare = replace(patterns.built(name), varnish_coats=0, paint_coats=0)
    wider = tuple(
        replace(
            part,
            top_mm=part.top_mm + 0.1 * (part.role in solid.BODY_ROLES),
            foot_mm=part.foot_mm + 0.1 * (part.role in solid.BODY_ROLES),
        )
        for part in bare.parts
    )
    tip = usual.tip
    before, after = hull.build(bare), hull.build(replace(bare, parts=wider))
    gained = balance.displaced_mm3(after, tip) - balance.displaced_mm3(before, tip)
    density = materials.material(usual.body).density_kg_m3 * 1e-6
    change = budget.pull_g(after, tip) - budget.pull_g(before, tip)
    assert gained > 0.0
    # the rim where the tip stands out of a pointed top is water for tip, not for body: 2 %
    assert change == pytest.approx((WATER - density) * gained, rel=0.02)


@CALM
@given(showing=st.floats(2.0, 30.0), more=st.floats(0.1, 8.0), name=st.sampled_from(NAMES))
def test_showing_more_of_the_same_tip_costs_the_stiffness(showing, more, name):
    made = hull.build(patterns.built(name))
    tip = replace(patterns.pattern(name).tip, showing_mm=showing, wet_mm=12.0)
    up = replace(tip, showing_mm=showing + more, wet_mm=12.0 - more)
    painted = tips.painted_diameter_mm(tip.stock.diameter_mm, tip.coats)
    stiffness = float(heave.stiffness_g_per_mm(painted))
    assert budget.pull_g(made, tip) - budget.pull_g(made, up) == pytest.approx(more * stiffness)


@CALM
@given(
    name=st.sampled_from(NAMES),
    shot_g=st.floats(2.5, 8.0),
    metal=st.sampled_from(["tin", "lead", "tungsten"]),
    piece=st.sampled_from([piece for piece in materials.shelf() if piece.diameter_mm <= 3.5]),
    showing=st.floats(5.0, 30.0),
    weighs_g=st.one_of(st.none(), st.floats(4.0, 5.0)),
)
def test_a_weighed_float_takes_just_its_shot(name, shot_g, metal, piece, showing, weighs_g):
    tip = Tip(piece, showing, 10.0, 6.0)
    said = WeighedFloat(name, shot_g, metal, weighs_g)
    made = hull.weighed(said, tip, 12.0)
    pull = budget.pull_g(made, tip, 12.0)
    assert pull == pytest.approx(shot_g * float(shot.wet_share(metal, 12.0)), abs=1e-9)
    if weighs_g is not None:
        assert balance.float_mass_g(made, tip) == pytest.approx(weighs_g)


@pytest.mark.parametrize(
    ("name", "share"), [("quill avon", 0.47), ("bolo type", 0.38), ("wire avon", 0.55)]
)
def test_a_weighed_float_of_unknown_weight_weighs_its_share(name, share):
    tip = patterns.pattern(name).tip
    made = hull.weighed(WeighedFloat(name, 7.0), tip)
    assert balance.float_mass_g(made, tip) == pytest.approx(
        share * 7.0 * float(shot.wet_share("tin"))
    )


def test_a_light_load_is_not_lighter_than_its_parts():
    tip = patterns.pattern("alloy stick 1.6").tip
    made = hull.weighed(WeighedFloat("alloy stick 1.6", 1.2), tip)
    assert balance.float_mass_g(made, tip) > 0.55 * 1.2 * float(shot.wet_share("tin"))
    assert made.body_density_kg_m3 == pytest.approx(materials.material("balsa").low_kg_m3)


def test_a_built_float_that_was_weighed():
    told = replace(patterns.built("quill avon", "12 mm"), weighs_g=1.6)
    made = hull.build(told, AVON_TIP)
    assert balance.float_mass_g(made, AVON_TIP) == pytest.approx(1.6)
    assert budget.pull_g(made, AVON_TIP) == pytest.approx(
        budget.pull_g(AVON, AVON_TIP) - (1.6 - balance.float_mass_g(AVON, AVON_TIP)), abs=1e-9
    )
    assert hull.build(told).mass_g == pytest.approx(1.6)
    assert hull.hull_of(told, AVON_TIP).mass_g == pytest.approx(made.mass_g)


def test_one_smaller_than_the_smallest_is_as_much_shorter_in_the_body():
    """Straight balsa is drawn from 5 mm, 130 mm long; the stem of a stick goes less far in."""
    made = hull.weighed(
        WeighedFloat("straight balsa", 1.6), patterns.pattern("straight balsa").tip
    )
    share = made.body_diameter_mm / 5.0
    assert 0.7 < share < 1.0
    assert made.body_length_mm == pytest.approx(130.0 * share)
    stick = hull.weighed(WeighedFloat("cane stick", 0.6), patterns.pattern("cane stick").tip)
    less = stick.body_diameter_mm / 5.5
    assert -stick.profile.z_mm[-1] == pytest.approx(66.0 * less + 80.0)
    bigger = hull.weighed(
        WeighedFloat("straight balsa", 20.0), patterns.pattern("straight balsa").tip
    )
    assert bigger.body_length_mm == pytest.approx(130.0)


@pytest.mark.parametrize("shot_g", [0.2, 0.5, 1.0, 2.0])
def test_a_stem_that_ends_where_the_body_begins_leaves_no_slice_between(shot_g):
    """Sums of scaled lengths differ in the last place; the shoulder is no thicker for it."""
    made = hull.weighed(WeighedFloat("chunky trotter", shot_g), AVON_TIP)
    assert made.slices.top_z_mm.size == 3
    assert made.body_diameter_mm == pytest.approx(2.0 * made.slices.foot_r_mm[0])


def test_a_weighed_float_is_drawn_from_the_size_nearest_in_load():
    """9 g is the load of the 9.5 mm size, whose top is 4 mm; a small one blown up would have 6."""
    made = hull.weighed(
        WeighedFloat("long cane balsa", 9.0), patterns.pattern("long cane balsa").tip
    )
    coats_mm = 2.0 * (3 * 0.03 + 2 * 0.03)
    assert 2.0 * made.profile.r_mm[0] == pytest.approx(4.0 + coats_mm, abs=0.1)


def test_the_tip_may_be_longer_inside_and_thicker_than_the_body_but_no_longer_than_the_float():
    made = hull.build(BuiltFloat("", (LONG, LONG_STEM), 0, 0, 0.0))
    tip = Tip(Stock("balsa", 8.0, 0.0, 100.0), 10.0, 10.0, 60.0, coats=0)
    inside = budget.pull_g(made, tip)
    whole_mm = LONG.length_mm + LONG_STEM.length_mm
    assert budget.pull_g(made, replace(tip, glued_mm=whole_mm)) > 0.0
    with pytest.raises(
        Mistakes, match=rf"glued: '{whole_mm + 0.1:g} mm' will not do; the whole float below"
    ):
        budget.pull_g(made, replace(tip, glued_mm=whole_mm + 0.1))
    # a rod of 9 mm stands out of the 8 mm body by a ring of pi/4 (81 - 64) mm2 over its 60 mm
    ring_mm2 = np.pi / 4.0 * 17.0
    thick = replace(tip, stock=Stock("balsa", 9.0, 0.0, 100.0))
    gained = (
        (WATER - 100e-6) * ring_mm2 * 60.0 + WATER * ring_mm2 * 10.0 - 100e-6 * ring_mm2 * 20.0
    )
    assert budget.pull_g(made, thick) - inside == pytest.approx(gained, abs=1e-6)


def test_hull_of_a_weighed_float():
    said = WeighedFloat("quill avon", 2.4)
    assert hull.hull_of(said, AVON_TIP).mass_g == hull.weighed(said, AVON_TIP).mass_g


@CALM
@given(
    name=st.sampled_from(NAMES),
    kinds=st.lists(st.sampled_from(materials.shelf()), min_size=1, max_size=5),
    showing=st.lists(st.floats(5.0, 40.0), min_size=1, max_size=4),
    wet=st.floats(8.0, 15.0),
    coats=st.integers(0, 6),
)
def test_the_grid_is_the_single_sum_over_and_over(name, kinds, showing, wet, coats):
    made = hull.build(patterns.built(name))
    kinds = [piece for piece in kinds if piece.diameter_mm <= made.body_diameter_mm]
    if not kinds:
        return
    grid = budget.pull_grid(made, kinds, showing, wet, 7.0, coats=coats)
    assert grid.shape == (len(kinds), len(showing))
    for row, piece in zip(grid, kinds, strict=True):
        for pull, length in zip(row, showing, strict=True):
            tip = Tip(piece, length, wet, 7.0, coats=coats)
            parts = (
                WATER * balance.displaced_mm3(made, tip)
                - balance.float_mass_g(made, tip)
                - hull.HOOK_AND_BAIT_G
            )
            assert pull == pytest.approx(parts, abs=1e-6)


def test_grid_takes_a_length_for_each_stock():
    kinds = materials.shelf()[:3]
    glued = np.array([[5.0, 6.0], [7.0, 8.0], [9.0, 10.0]])
    grid = budget.pull_grid(AVON, kinds, [20.0, 30.0], np.array([[8.0], [9.0], [10.0]]), glued)
    assert grid[2, 1] == pytest.approx(budget.pull_grid(AVON, kinds[2:], [30.0], 10.0, 10.0)[0, 0])


def test_what_a_tip_takes_the_place_of():
    """A 4 mm tip in 10 mm of balsa over a tube 4/3 mm: ring of balsa, tube, and air."""
    parts = (
        Part("body", "cylinder", "balsa", 20.0, 10.0, 10.0),
        Part("stem", "cylinder", "acrylic", 50.0, 4.0, 4.0, 3.0, 12.0),
    )
    slices = solid.solid(parts)
    gone, proud = bored.replaced(slices, [4.0, 6.0], 16.0)
    balsa, tube = 140e-6, 1180e-6
    disc = np.pi / 4.0 * np.array([16.0, 36.0])
    wall = np.pi / 4.0 * (16.0 - 9.0)
    ring = np.pi / 4.0 * np.array([0.0, 20.0])
    assert gone == pytest.approx(8 * balsa * disc + 8 * (tube * wall + balsa * ring))
    assert np.all(proud == 0.0)


def test_a_pointed_top_lets_the_tip_stand_proud():
    slices = solid.solid((Part("body", "cone", "balsa", 20.0, 0.0, 20.0),))
    _, proud = bored.replaced(slices, 4.0, 10.0)
    # to where the cone is as thick as the tip: cylinder less cone = 2/3 of the cylinder
    assert float(proud) == pytest.approx(2.0 / 3.0 * np.pi * 4.0 * 4.0, rel=0.01)


def test_domes_are_half_ellipsoids():
    for top, foot in ((0.0, 10.0), (10.0, 0.0)):
        parts = (Part("body", "dome", "balsa", 8.0, top, foot),)
        made = hull.build(BuiltFloat("", parts, 0, 0, 0.0))
        assert made.volume_mm3 == pytest.approx(2.0 / 3.0 * np.pi * 25.0 * 8.0, rel=2e-3)
        assert made.profile.r_mm[0] == pytest.approx(top / 2, abs=1e-6)


def test_a_stem_inside_takes_the_place_of_body():
    body = Part("body", "cylinder", "balsa", 50.0, 10.0, 10.0)
    stem = Part("stem", "cylinder", "wire", 40.0, 1.0, 1.0, inside_mm=20.0)
    made = hull.build(BuiltFloat("", (body, stem), 0, 0, 0.0))
    disc = np.pi / 4.0
    assert made.mass_g == pytest.approx(1e-6 * (140 * (50 * 100 - 20) * disc + 7930 * 60 * disc))
    assert made.volume_mm3 == pytest.approx((50 * 100 + 40) * disc)


def test_coats_weigh_and_lift():
    bare = BuiltFloat("", (Part("body", "cylinder", "balsa", 100.0, 10.0, 10.0),), 0, 0, 0.0)
    coated = hull.build(replace(bare, varnish_coats=3, paint_coats=2))
    plain = hull.build(bare)
    film = coated.volume_mm3 - plain.volume_mm3
    assert film == pytest.approx(np.pi / 4 * 100 * (10.3**2 - 100))
    varnish = np.pi / 4 * 100 * (10.18**2 - 100)
    assert coated.mass_g - plain.mass_g == pytest.approx(
        1e-6 * (1100 * varnish + 1200 * (film - varnish))
    )


def test_a_sleeve_and_a_light_stick_weigh_aloft():
    base = budget.pull_g(AVON, AVON_TIP)
    sleeved = replace(AVON_TIP, sleeve=True)
    lit = replace(AVON_TIP, light_stick="3 x 23 mm")
    assert base - budget.pull_g(AVON, sleeved) == pytest.approx(0.002 * AVON_TIP.showing_mm)
    assert base - budget.pull_g(AVON, lit) == pytest.approx(0.26)
    assert balance.uprighting_g_mm(AVON, lit) < balance.uprighting_g_mm(AVON, AVON_TIP)


def test_uprighting_of_a_uniform_rod():
    """A balsa rod, about its foot: half its length times lift less weight."""
    rod = hull.build(
        BuiltFloat("", (Part("body", "cylinder", "balsa", 100.0, 10.0, 10.0),), 0, 0, 0.0)
    )
    tip = Tip(Stock("balsa", 10.0, 0.0, 140.0), 1e-9, 1e-9, 0.0, coats=0)
    area = np.pi * 25.0
    assert balance.uprighting_g_mm(rod, tip) == pytest.approx(
        50.0 * 100.0 * area * (WATER - 140e-6), rel=1e-6
    )


LAWFUL_LEAD = {"No 8", "No 9", "No 10", "No 11", "No 12", "No 13"}


def test_staircase_rises_by_the_stiffness():
    bands = (Band("black", 0, 12.0), Band("fluorescent orange", 12.0, 25.0))
    tip = replace(AVON_TIP, bands=bands)
    steps = staircase.staircase(AVON, tip)
    assert [(step.mark, step.paint, step.showing_mm) for step in steps] == [
        ("shoulder", "", 35.0),
        ("as told", "", 25.0),
        ("band", "black", 12.0),
        ("top", "", 0.0),
    ]
    painted = tips.painted_diameter_mm(2.5, 3)
    stiffness = float(heave.stiffness_g_per_mm(painted))
    pulls = [step.pull_g for step in steps]
    assert np.diff(pulls) == pytest.approx(stiffness * np.array([10.0, 13.0, 12.0]))
    assert pulls[1] == pytest.approx(budget.pull_g(AVON, tip))
    for step in steps:
        assert step.shot_g == pytest.approx(step.pull_g / float(shot.wet_share("tin")))
        said_g = sum(shot_mass(name) * count for name, count in step.shot)
        assert said_g == pytest.approx(step.shot_g, abs=0.035)
    sleeved = staircase.staircase(AVON, replace(tip, sleeve=True), "lead", shot.sizes("lead"))
    wide = float(heave.stiffness_g_per_mm(painted + 1.0))
    assert sleeved[-1].pull_g - sleeved[1].pull_g == pytest.approx(25.0 * wide)
    assert sleeved[1].pull_g - sleeved[0].pull_g == pytest.approx(
        10.0 * stiffness
    )  # no sleeve there
    assert {name for step in sleeved for name, _ in step.shot} <= LAWFUL_LEAD


def test_staircase_has_a_step_for_each_band_of_one_paint():
    bands = (Band("black", 0, 5), Band("white", 5, 10), Band("black", 10, 15), Band("red", 15, 25))
    steps = staircase.staircase(AVON, replace(AVON_TIP, bands=bands))
    feet = [(step.paint, step.showing_mm) for step in steps if step.mark == "band"]
    assert feet == [("black", 15), ("white", 10), ("black", 5)]


def shot_mass(name):
    return next(size.mass_g for size in shot.sizes() if size.name == name)


def test_staircase_leaves_out_what_floats_too_deep():
    heavy = replace(patterns.built("alloy stick 1.6", "6.5 mm"), weighs_g=1.55)
    tip = patterns.pattern("alloy stick 1.6").tip
    marks = [step.mark for step in staircase.staircase(hull.build(heavy, tip), tip)]
    assert marks == ["as told", "top"]


@pytest.mark.parametrize(
    ("material", "finish", "harm"),
    [
        ("foam", "spirit", ("spirit", "foam", "melts")),
        ("bead foam", "cellulose", ("cellulose", "foam", "melts")),
        ("abs", "cellulose", ("cellulose", "styrene", "crazes")),
        ("foam", "water-based", None),
        ("balsa", "spirit", None),
        ("balsa", "water-based", ("water-based", "wood", "raises grain")),
    ],
)
def test_which_finish_harms_what(material, finish, harm):
    found = materials.harms(material, finish)
    assert found == (harm and materials.Harm(*harm))


def test_shelf_is_what_the_table_says():
    shelf = materials.shelf()
    assert {piece.kind for piece in shelf} == {
        "solid", "thin tube", "thick tube", "cane", "quill", "balsa"
    }  # fmt: skip
    solid_mm = [piece.diameter_mm for piece in shelf if piece.kind == "solid"]
    assert solid_mm == [1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0]
    assert all(piece.bore_mm < piece.diameter_mm for piece in shelf)


TABLES = ["shot", "shot_metals", "materials", "coats", "stock", "patterns", "pattern_parts"]


@pytest.mark.parametrize("table", [*TABLES, "finishes"])
def test_every_row_names_its_source(table):
    kinds = ("published: ", "common practice", "from memory", "judgement", "computed")
    assert all(row["source"].startswith(kinds) for row in tables.rows(table))


def test_a_maker_may_change_a_size(tmp_path):
    packaged = (tables.PACKAGED / "shot.csv").read_text(encoding="utf-8")
    (tmp_path / "shot.csv").write_text(packaged.replace("BB,shot,0.4,", "BB,shot,0.42,"), "utf-8")
    with tables.using(tmp_path):
        assert shot_mass("BB") == 0.42
    assert shot_mass("BB") == 0.4


SINKS = Tip(Stock("solid", 9.0, 0.0, 1050.0), 60.0, 10.0, 10.0)
LONG = Part("body", "cylinder", "balsa", 60.0, 8.0, 8.0)
LONG_STEM = Part("stem", "cylinder", "wire", 60.0, 1.0, 1.0)


@pytest.mark.parametrize(
    ("call", "text"),
    [
        (lambda: materials.material("basla"), "material: 'basla' will not do; it is one of"),
        (lambda: materials.stock("reed", 3.0), "stock: 'reed' will not do; it is one of solid"),
        (lambda: materials.stock("thin tube", 1.0, 1.0),
         "bore: '1 mm in 1 mm' will not do; the bore is less than the outside"),
        (lambda: materials.harms("balsa", "tar"), "finish: 'tar' will not do; it is one"),
        (lambda: patterns.pattern("quil avon"), "(for example quill avon)"),
        (lambda: patterns.built("bolo type", "1 mm"), "size of bolo type: '1 mm' will not do"),
        (lambda: shot.wet_share("gold"), "shot metal: 'gold' will not do; it is one of tin"),
        (lambda: shot.sizes("gold"), "shot metal: 'gold' will not do; it is one of tin"),
        (lambda: solid.solid([Part("stem", "cylinder", "cane", 50, 3, 3)]),
         "parts: a float needs a body"),
        (lambda: solid.solid([replace(LONG, length_mm=0.0)]),
         "a part is up to 1000 mm long and 100 mm thick, and not nothing"),
        (lambda: solid.solid([replace(LONG, bore_mm=8.0)]),
         "no diameter is below nothing and the bore leaves a wall"),
        (lambda: solid.solid([LONG, Part("stem", "cylinder", "cane", 50, 3, 3, 0, 61)]),
         "there are only 60 mm above it to run on inside"),
        (lambda: budget.pull_g(AVON, SINKS), "the float sinks by itself"),
        (lambda: budget.pull_g(AVON, replace(AVON_TIP, glued_mm=130.0)),
         "glued: '130 mm' will not do; the whole float below the tip is only 126 mm long: glue in less"),
        (lambda: hull.weighed(WeighedFloat("quill avon", 0.0), AVON_TIP),
         "takes: '0 g' will not do; a float takes some shot, up to 100 g"),
        (lambda: hull.weighed(WeighedFloat("long cane balsa", 0.1), AVON_TIP),
         "no body of this pattern takes just that with this tip"),
        (lambda: hull.weighed(WeighedFloat("quill avon", 2.4, "tin", 0.3), AVON_TIP),
         "all but the body already weighs"),
        (lambda: hull.build(replace(patterns.built("wire avon"), weighs_g=0.2)),
         "weighs: '0.20 g' will not do; all but the body already weighs"),
    ],
)  # fmt: skip
def test_mistakes(call, text):
    with pytest.raises(Mistakes) as caught:
        call()
    assert text in str(caught.value)


def test_a_float_that_falls_over():
    """A short light body with all its weight in a tall tip."""
    made = hull.build(
        BuiltFloat("", (Part("body", "cylinder", "foam", 25.0, 11.0, 11.0),), 0, 0, 0.0)
    )
    tip = Tip(Stock("solid", 3.0, 0.0, 1050.0), 150.0, 2.0, 10.0)
    assert budget.pull_g(made, tip) > 0.0
    assert balance.uprighting_g_mm(made, tip) < 0.0


@pytest.mark.parametrize(
    ("call", "text"),
    [
        (lambda: tips.painted_diameter_mm(31.0, 2),
         "tip diameter must be 0.3 to 30 mm, got 31 mm"),
        (lambda: tips.painted_diameter_mm(3.0, 21), "coats on the tip must be 0 to 20, got 21"),
        (lambda: hull.build(replace(patterns.built("bolo type"), varnish_coats=21)),
         "coats of varnish must be 0 to 20, got 21"),
        (lambda: hull.build(replace(patterns.built("bolo type"), paint_coats=-1)),
         "coats of paint must be 0 to 20, got -1"),
    ],
)  # fmt: skip
def test_out_of_range(call, text):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert str(caught.value) == text
