"""Balance, load and outline of plain floats, each number reckoned on paper.

All bare of coats unless said: a balsa cylinder (140 kg/m3) of 100 x 10 mm over a cane stem (600) of
50 x 4 mm. Body 7853.98 mm3 and 1.09956 g at -50 mm, stem 628.32 mm3 and .37699 g at -125 mm; the tip
is 4 mm of solid stock (1050): .0131947 g for each of its 60 mm. Water at 10 C: 999.7026 kg/m3.
"""

from dataclasses import replace

import numpy as np
import pytest

from tipsight.afloat.body import volume_mm3
from tipsight.inputs.case import BuiltFloat, Part, Stock, Tip
from tipsight.load import balance, bored, budget, hull, materials, solid, tips

BODY = Part("body", "cylinder", "balsa", 100.0, 10.0, 10.0)
STEM = Part("stem", "cylinder", "cane", 50.0, 4.0, 4.0)
BARE = BuiltFloat("", (BODY, STEM), 0, 0, 0.0)
FLOAT = hull.build(BARE)
TIP = Tip(Stock("solid", 4.0, 0.0, 1050.0), 30.0, 10.0, 20.0, coats=0)
# A shoulder of 3 mm, narrower than the tip, 5 mm long over a body of 20 mm.
SHOULDERED = hull.build(
    BuiltFloat(
        "",
        (
            Part("shoulder", "cylinder", "balsa", 5.0, 3.0, 3.0),
            Part("body", "cylinder", "balsa", 100.0, 20.0, 20.0),
        ),
        0,
        0,
        0.0,
    )
)


def test_hull_of_body_and_stem():
    assert FLOAT.volume_mm3 == pytest.approx(8482.301, abs=1e-3)
    assert FLOAT.centroid_mm == pytest.approx(
        -500.0 / 9.0
    )  # (7853.98 x 50 + 628.32 x 125) / 8482.30
    assert FLOAT.mass_g == pytest.approx(1.476549, abs=1e-6)
    assert FLOAT.centre_of_mass_mm == pytest.approx(-69.1489, abs=1e-4)  # 102.1018 / 1.476549
    assert (FLOAT.body_diameter_mm, FLOAT.body_length_mm) == (10.0, 100.0)
    assert (FLOAT.body_material, FLOAT.materials) == ("balsa", ("balsa", "cane"))


def test_fittings_hang_at_half_the_length():
    made = hull.build(replace(BARE, fittings_g=0.1))
    assert made.mass_g == pytest.approx(1.576549, abs=1e-6)
    assert made.centre_of_mass_mm == pytest.approx(
        -69.5200, abs=1e-4
    )  # (102.1018 + 7.5) / 1.576549


def test_coats_weigh_where_they_are():
    """Ten of varnish make body 10.6 and stem 4.6 mm: 970.75 and 202.63 mm3 of 1100 kg/m3."""
    made = hull.build(replace(BARE, varnish_coats=10))
    assert made.volume_mm3 == pytest.approx(8482.301 + 970.752 + 202.633, abs=2e-3)
    assert made.mass_g == pytest.approx(1.476549 + 1.067827 + 0.222896, abs=2e-6)
    # 102.1018 + 1.067827 x 50 + .222896 x 125 = 183.3551 g mm over 2.767272 g
    assert made.centre_of_mass_mm == pytest.approx(-66.2585, abs=2e-4)


def test_paint_goes_on_the_body_alone():
    """Ten coats of 30 um and 1200 kg/m3 on the body: 970.75 mm3."""
    made = hull.build(replace(BARE, paint_coats=10))
    assert made.volume_mm3 == pytest.approx(8482.301 + 970.752, abs=2e-3)
    assert made.mass_g == pytest.approx(1.476549 + 1.164902, abs=2e-6)


def test_a_told_weight_makes_the_body_heavier():
    """2 g less tip .791681 and stem .376991 leave .831328 g of body, of which a fifth of .16 is bored.

    The tip takes the place of 16/100 of the area over 20/100 of the length: .968 of the body stays.
    """
    made = hull.build(replace(BARE, weighs_g=2.0), TIP)
    assert made.body_density_kg_m3 == pytest.approx(
        140.0 * 0.831328 / (0.968 * 1.099557), rel=1e-5
    )
    assert balance.float_mass_g(made, TIP) == pytest.approx(2.0)
    alone = hull.build(replace(BARE, weighs_g=2.0))
    assert alone.body_density_kg_m3 == pytest.approx(140.0 * 1.623009 / 1.099557, rel=1e-5)


def test_balance_of_the_finished_float():
    """Bored out .0351858 g at -10 mm; tip .791681 g with its middle 10 mm above the body."""
    assert balance.float_mass_g(FLOAT, TIP) == pytest.approx(2.233044, abs=2e-6)
    # -102.1018 + .791681 x 10 + .0351858 x 10 = -93.8331 g mm
    assert balance.centre_of_mass_mm(FLOAT, TIP) == pytest.approx(-42.0202, abs=2e-4)


def test_balance_with_a_sleeve_at_the_top():
    """A sleeve of 2 mg a mm weighs .06 g, at the top of 40 mm: 2.4 g mm more."""
    sleeved = replace(TIP, sleeve=True)
    assert balance.float_mass_g(FLOAT, sleeved) == pytest.approx(2.293044, abs=2e-6)
    assert balance.centre_of_mass_mm(FLOAT, sleeved) == pytest.approx(-39.8741, abs=2e-4)


def test_uprighting_of_the_finished_float():
    """About the foot, 150 mm down: the wet tip, 125.66 mm3, lifts 155 mm above it, the hull 94.44.

    Lift .9997026 mg/mm3 x (801106.2 + 19477.9) = 820.3401, weight 2.233044 x 107.9798 = 241.1237.
    """
    assert balance.displaced_mm3(FLOAT, TIP) == pytest.approx(8607.964, abs=1e-3)
    assert balance.uprighting_g_mm(FLOAT, TIP) == pytest.approx(579.216, abs=2e-3)


def test_pull_of_the_finished_float():
    """8607.964 mm3 of water weigh 8.605404 g; less 2.233044 g and .03 g of hook and bait."""
    assert budget.pull_g(FLOAT, TIP) == pytest.approx(6.342361, abs=2e-6)
    # at 20 C water weighs 998.2067 kg/m3: 8.592528 g
    assert budget.pull_g(FLOAT, TIP, 20.0) == pytest.approx(6.329484, abs=2e-5)


def test_pull_with_paint_on_the_tip():
    """Three coats of 30 um make 4.18 mm: 1.156420 mm2 of 1200 kg/m3 on 40 mm, .055508 g.

    They shift 11.56420 mm3 on the 10 mm that are wet, .011561 g.
    """
    painted = replace(TIP, coats=3)
    assert tips.tip_mass_g(painted) == pytest.approx(0.791681 + 0.055508, abs=2e-6)
    assert budget.pull_g(FLOAT, painted) == pytest.approx(6.342361 - 0.055508 + 0.011561, abs=4e-6)


def test_a_tip_thicker_than_its_shoulder():
    """Glued 8 mm: 5 mm in a shoulder of 3 mm, where 5 x (12.56637 - 7.06858) mm3 stand out.

    Bored out are all 35.3429 mm3 of the shoulder and 3 x 12.56637 of the body, of 140 kg/m3.
    """
    gone_g, proud_mm3 = bored.replaced(SHOULDERED.slices, 4.0, 8.0)
    assert float(proud_mm3) == pytest.approx(27.48894, abs=1e-4)
    assert float(gone_g) == pytest.approx(140e-6 * (35.34292 + 37.69911), rel=1e-6)
    tip = replace(TIP, glued_mm=8.0)
    shifted = balance.displaced_mm3(SHOULDERED, tip) - SHOULDERED.volume_mm3
    assert shifted == pytest.approx(27.48894 + 125.6637, abs=1e-3)
    wider = balance.outline(SHOULDERED, tip)
    assert volume_mm3(wider) - SHOULDERED.volume_mm3 == pytest.approx(27.48894, abs=1e-4)
    assert wider.r_mm[:3].tolist() == [2.0, 2.0, 10.0]
    thin = replace(tip, stock=Stock("solid", 3.0))
    assert balance.outline(SHOULDERED, thin) is SHOULDERED.profile


def test_a_tip_that_ends_in_a_cone():
    """6 mm glued 40 mm into a cone from a point to 20 mm over 100 mm; 20 mm into it.

    To 30 mm down the cone is thinner: 9 pi x 30 less a third of that stand out, 565.487 mm3. Glued 20
    mm they are 9 pi x 20 less pi / 3 x 4 x 20, with a step from 3 to 2 mm where it ends.
    """
    cone = hull.build(
        BuiltFloat("", (Part("body", "cone", "balsa", 100.0, 0.0, 20.0),), 0, 0, 0.0)
    )
    stick = replace(TIP, stock=Stock("solid", 6.0), glued_mm=40.0)
    deep, short = (balance.outline(cone, replace(stick, glued_mm=g)) for g in (40.0, 20.0))
    assert volume_mm3(deep) - cone.volume_mm3 == pytest.approx(565.487, abs=1e-3)
    assert volume_mm3(short) - cone.volume_mm3 == pytest.approx(481.711, abs=1e-3)
    assert short.r_mm.tolist() == pytest.approx([3.0, 3.0, 2.0, 3.0, 3.0, 10.0])
    assert short.z_mm.tolist() == pytest.approx([0.0, -20.0, -20.0, -30.0, -30.0, -100.0])


def test_boring_between_two_cells():
    """10.1 mm into balsa: 10.1 x 12.56637 mm3, though cells are a quarter of a millimetre."""
    gone_g, _ = bored.replaced(FLOAT.slices, 4.0, 10.1)
    assert float(gone_g) == pytest.approx(140e-6 * 126.9203, rel=1e-6)


def test_boring_out_a_cone():
    """6 mm bored 20 mm into a cone from a point to 20 mm over 100 mm.

    To 30 mm down it is thinner than 6 mm, so all of it goes: pi / 3 x 4 x 20 = 83.7758 mm3, and
    pi x 9 x 20 less that, 481.711 mm3, stand out. Midpoint cells of .25 mm miss 3e-5.
    """
    cone = solid.solid((Part("body", "cone", "balsa", 100.0, 0.0, 20.0),))
    gone_g, proud_mm3 = bored.replaced(cone, 6.0, 20.0)
    assert float(gone_g) == pytest.approx(140e-6 * 83.7758, rel=1e-4)
    assert float(proud_mm3) == pytest.approx(481.711, rel=1e-4)


def test_slices_weigh_at_their_own_height():
    """A cone from 0 to 10 mm over 30 mm is heaviest three quarters down; a core is not of it."""
    cone = solid.solid((Part("body", "cone", "balsa", 30.0, 0.0, 10.0),))
    mass_g, z_mm = bored.masses_g(cone)
    assert mass_g[:, 0] == pytest.approx([140e-6 * 785.398, 0.0], rel=1e-5)
    assert z_mm[0, 0] == pytest.approx(-22.5)
    # 10 mm of body from 4 to 8 mm with a tube 4/3 mm through it: frustum 293.215, core 125.664 mm3.
    # Frustum's moment about its top 10 x 293.215 x (4 + 16 + 48) / (4 x 28) = 1780.235, core's
    # 628.319; the ring's centre 1151.917 / 167.551 = 6.875 mm down.
    tube = solid.solid(
        (
            Part("body", "cone", "balsa", 10.0, 4.0, 8.0),
            Part("stem", "cylinder", "acrylic", 20.0, 4.0, 4.0, 3.0, 10.0),
        )
    )
    mass_g, z_mm = bored.masses_g(tube)
    assert mass_g[:, 0] == pytest.approx([140e-6 * 167.5516, 1180e-6 * 10 * 5.497787], rel=1e-6)
    assert z_mm[:, 0] == pytest.approx([-6.875, -5.0])
    assert mass_g[:, 1] == pytest.approx([1180e-6 * 20 * 5.497787, 0.0], rel=1e-6)


def test_many_tips_at_once():
    """The same 6.342361 g, and with a tip of 2 mm (.00329867 g/mm, 31.4159 mm3 wet, .00879646 g bored).

    8513.717 mm3 weigh 8.511185 g; less 1.476549 + .197920 - .008796 + .03 g.
    """
    thin = Stock("solid", 2.0, 0.0, 1050.0)
    grid = budget.pull_grid(FLOAT, [TIP.stock, thin], [30.0, 40.0], 10.0, 20.0, coats=0)
    assert grid[:, 0] == pytest.approx([6.342361, 6.815512], abs=3e-6)
    # ten millimetres more above the water weigh .131947 and .0329867 g
    assert grid[:, 0] - grid[:, 1] == pytest.approx(np.array([0.131947, 0.0329867]), abs=1e-6)
    lit = budget.pull_grid(FLOAT, [thin], [30.0], 10.0, 20.0, coats=0, aloft_g=0.26)
    assert lit[0, 0] == pytest.approx(6.815512 - 0.26, abs=3e-6)


def test_a_centimetre_of_glass_of_carbon_and_of_hollow_glass():
    """Of pi/4 x 9, x 2.25 and x (9 - 2.2^2) mm2: 70.686, 17.671 and 32.673 mm3."""
    pieces = [
        materials.stock(*one) for one in (("glass", 3.0), ("carbon", 1.5), ("hollow glass", 3.0))
    ]
    assert pieces[2].bore_mm == pytest.approx(2.2)
    found_g = 10 * tips.stock_mass_g_per_mm(pieces)
    assert found_g == pytest.approx([0.137837, 0.027391, 0.063712], abs=1e-6)
