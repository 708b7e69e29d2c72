"""The picture as a whole: its scale, its words, and whose eyes it is for."""

import io
import math
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image

from tipsight import Question, advise
from tipsight.inputs import demo
from tipsight.output import measures
from tipsight.pictures import legend, panels, truesize, view
from tipsight.pictures.stage import scene
from tipsight.pictures.subject import advised, deciding, made, waters


@pytest.fixture(scope="module")
def dusk():
    return advise(demo.question("dusk"))


@pytest.fixture(scope="module")
def bright():
    told = {"paint": "black", "diameter": "4 mm", "stock": "solid", "showing": "30 mm"}
    return advise(Question(**told, behind=["bright"], distance="30 yd", looks="glass"))


def opened(data):
    return Image.open(io.BytesIO(data))


def test_it_is_a_png_of_96_to_the_inch_that_says_what_it_shows(dusk):
    picture = opened(view.png(dusk))
    assert picture.format == "PNG"
    assert picture.info["dpi"] == pytest.approx((96, 96), abs=0.1)
    assert picture.text["Description"] == legend.describe(dusk)


def test_its_words_name_every_water_both_tips_and_their_grades(dusk):
    said = legend.describe(dusk)
    for block in (dusk.tip_in_hand, advised(dusk)[1]):
        for sight in block.visibility.by_background:
            assert sight.name in said
            assert f"{sight.grade} (level {measures.levels(sight.low, sight.high)})" in said
    assert "22 yd (20 m)" in said


@pytest.mark.parametrize(
    ("told", "said"),
    [("blue sky", ", clear sky"), ("not sure", " the water"), (None, " the water")],
)
def test_the_heading_names_the_sky_as_the_tool_has_it(told, said):
    answer = advise(Question(behind=["dark"], **({"sky": told} if told else {})))
    assert legend.heading(answer).endswith(said)


def test_the_same_twice_and_another_ripple_another(dusk):
    assert view.png(dusk) == view.png(dusk)
    assert view.png(dusk) != view.png(dusk, seed=1)


def test_each_pixel_has_its_true_angle_from_five_metres():
    """At 96 to the inch a pixel is 25.4 / 96 mm: from 5 m the angle of 1.94 mm at 40 yd."""
    panel, _ = panels.frames(36.576, 30.0)
    assert panel.pixel_mm / 36.576 == pytest.approx(25.4 / 96 / 5.0, rel=1e-9)


def test_the_foot_stands_well_up_the_panel_and_low_in_the_magnified_one():
    """38 parts of 100; 14 mm, of the 26 mm left free about the longest tip."""
    panel, inset = panels.frames(36.576, 30.0)
    assert panel.below_mm / panel.tall_mm == pytest.approx(0.38)
    assert (inset.below_mm, inset.tall_mm) == (14.0, pytest.approx(56.0))


def measured(picture, frame):
    """Return width and height of what is dark [mm], by area so that mixed pixels count."""
    light = picture[..., 1].astype(float) / 255.0
    flat = np.where(light <= 0.04045, light / 12.92, ((light + 0.055) / 1.055) ** 2.4)
    paper = np.median(flat)
    cover = np.clip((paper - flat) / (paper - flat.min()), 0.0, 1.0)
    cover[cover < 0.1] = 0.0
    return cover.sum(axis=1).max() * frame.pixel_mm, cover.sum(axis=0).max() * frame.pixel_mm


def test_the_tip_is_drawn_to_scale(bright):
    """A black tip of 4 mm with three coats, 30 mm showing, on glass, magnified."""
    now = panels.pictures(bright, waters(bright)[0])[1]
    _, inset = panels.frames(27.432, max(30.0, advised(bright)[1].tip.showing_mm))
    wide, tall = measured(now, inset)
    assert wide == pytest.approx(4.18, abs=0.35)
    assert tall == pytest.approx(30.0, abs=1.5)


def test_the_eyes_told_see_less(bright):
    water = waters(bright)[0]
    good, told = panels.pictures(bright, water)[1], panels.pictures(bright, water, "told")[1]
    assert np.ptp(told[..., 1]) < 0.9 * np.ptp(good[..., 1])


def test_weaker_own_eyes_see_so_much_less_contrast(bright):
    """Age, sight and veil as for good eyes; a factor of a half leaves half the contrast."""
    case = panels.good_eyes(bright.case)
    case = replace(case, angler=replace(case.angler, own_eye_factor=0.5))
    of = scene(case, waters(bright)[0], [case.tip])
    picture = of.water * np.linspace(0.5, 1.5, 40)[:, None, None] * np.ones((40, 40, 1))
    found = panels.weakened(of, picture, 100.0)
    assert found - of.water == pytest.approx(0.5 * (picture - of.water), abs=1e-3 * of.water.max())


def test_each_panel_is_cast_finely(bright):
    """A pixel of 1.45 mm at 30 yd takes 12 casts, eight a millimetre."""
    held = {}
    panels.pictures(bright, waters(bright)[0], held=held)
    panel, inset = panels.frames(27.432, max(30.0, advised(bright)[1].tip.showing_mm))
    assert panel.pixel_mm == pytest.approx(1.4517, abs=1e-3)
    for frame, casts in ((panel, 12), (inset, math.ceil(8 * inset.pixel_mm))):
        assert len(held[frame][1].rise_away) == 190 * casts


def test_red_weak_eyes_see_a_duller_red(dusk):
    water = waters(dusk)[0]
    good, told = panels.pictures(dusk, water)[1], panels.pictures(dusk, water, "told")[1]

    def red(picture):
        return float((picture[..., 0].astype(int) - picture[..., 1]).max())

    assert red(told) < 0.8 * red(good)


def test_waters_that_are_not_known_are_dark_and_bright():
    assert [w.name for w in waters(advise(Question(behind=["not sure"])))] == ["dark", "bright"]


def test_what_is_made_is_the_tip_for_the_bench(dusk, bright):
    assert made(dusk)[1] is dusk.at_the_bench.block
    title, block = made(
        advise(Question(behind=["dark"], distance="60 yd", tips=["none"], paints=["black"]))
    )
    assert block is not None
    assert title


def test_what_is_enough_at_the_bank_is_advised_there(dusk):
    assert dusk.at_the_bench is not None
    failing = dusk.at_the_bank
    assert not failing.block.passes
    assert advised(dusk)[0] == "bench"
    enough = replace(failing, block=replace(failing.block, fails=()))
    assert advised(replace(dusk, at_the_bank=enough)) == ("bank", enough.block)
    assert advised(replace(dusk, at_the_bench=None))[0] == "bank"


def test_the_words_under_it_tell_dusk_from_day(dusk, bright):
    """A screen is darker than the day and brighter than the dusk."""
    later = replace(dusk.case, light=replace(dusk.case.light, sun_height_deg=-4.0))
    assert "far brighter than the dusk" in legend.caveat(later, 4.5)
    assert "far less bright than the day" in legend.caveat(bright.case, 4.5)
    assert "are magnified 4.5 times" in legend.caveat(bright.case, 4.5)
    assert "are no larger" in legend.caveat(bright.case, 1.0)
    assert "eyes told (55 years" in legend.caveat(bright.case, 1.0, "told")


@pytest.fixture(scope="module")
def glare():
    told = {"sky": "clear", "sun_is": "in my face", "sun_height": "25 deg", "age": "65"}
    return advise(Question(behind=["dark"], paint="black", **told))


def test_glare_turns_black_grey_and_it_is_said(glare, bright):
    assert legend.veiled(bright) == ()
    said = legend.veiled(glare)
    assert said == ("On dark water black looks grey: the glare lays a veil over it.",)
    assert legend.foot(glare).startswith(said[0])
    lost = panels.veil_share(scene(glare.case, waters(glare)[0], [glare.tip_in_hand.tip]))
    old = scene(panels.good_eyes(glare.case), waters(glare)[0], [glare.tip_in_hand.tip])
    assert 1.0 > lost > panels.veil_share(old) > 0.0


def test_two_panels_that_are_alike_are_one(bright, dusk):
    assert advised(bright)[1].tip == bright.tip_in_hand.tip
    assert [title for title, *_ in legend.captions(bright)["bright"]] == ["Now, and as advised"]
    assert {len(pair) for pair in legend.captions(dusk).values()} == {2}


def test_a_tip_is_drawn_at_its_true_size_on_a_screen_that_was_measured(bright):
    """96 to the inch, read from 0.4 m: 5 m / 0.4 m = 12.5 times smaller, 430 x 190 in 34 x 15."""
    shrunk = panels.pictures(bright, waters(bright)[0], shrink=lambda p: truesize.shrunk(p, 12.5))
    assert [one.shape for one in shrunk[2::3]] == [(15, 34, 3)] * 2
    plain = opened(view.png(bright))
    large = opened(view.png(bright, pixels_per_mm=96 / 25.4))
    assert large.height == plain.height + view.TRUE_PX + 15


def test_each_panel_says_how_many_times_too_large_it_is(bright, monkeypatch):
    """96 to the inch, 0.4 m: 12.5 times; the inset (30 + 26) mm / 190 against 1.4517 mm: 4.925
    times more. With a screen of 18 px to the mm from 0.3 m, 3.5 and 17 times."""
    longest = max(30.0, advised(bright)[1].tip.showing_mm)
    assert legend.too_large(bright) == pytest.approx((12.5, 12.5 * 1.4517 * 190 / (longest + 26)), 1e-3)
    written = []
    plain = view.write
    monkeypatch.setattr(view, "write", lambda *p: written.extend(p[3]) or plain(*p))
    view.png(bright)
    near = truesize.about(12.5 * 1.4517 * 190 / (longest + 26))
    assert sum("drawn about 12 times too large" in line for line in written) == 1
    assert near in " ".join(written)
    written.clear()
    view.png(bright, pixels_per_mm=18.0, read_from_m=0.3)
    assert "Read from 30 cm, drawn about 3.5 times too large" in " ".join(written)
    assert "True size, read from 30 cm" in written


def test_the_panels_come_with_their_true_size_where_the_screen_is_told(bright):
    """5 px to the mm, read from 0.4 m: 5 m x 3.78 / (0.4 x 5) = 9.449; 430 x 190 in 46 x 20."""
    with_true = view.drawn(bright, pixels_per_mm=5.0)
    plain = view.drawn(bright)
    assert [one for n, one in enumerate(with_true) if n % 3 < 2] == list(plain)
    assert {opened(one).size for one in with_true[2::3]} == {(46, 20)}


def test_on_water_of_patches_each_tip_is_drawn_before_the_patch_that_is_worst_for_it(bright):
    """Black is lost on the dark patch, a light tip on the bright one; drawn on one, the other would boast."""
    answer = advise(Question(distance="20 yd", behind=["broken"], sky="clear", paint="black"))
    water, tips = waters(answer)[0], [answer.tip_in_hand.tip, advised(answer)[1].tip]
    low, high = (deciding(answer, water, tip)[1].bank_height_deg for tip in tips)
    assert tips[1].bands[0].paint != "black"
    assert low != high
    said = "Broken water is dark and bright by turns: each tip is drawn before the patch"
    assert said in legend.foot(answer)
    now, _, better, _ = (one.mean() for one in panels.pictures(answer, water, "told"))
    assert abs(now - better) > 10  # the water itself is another
    told = advise(Question(distance="40 yd", behind=["dark", "bright"], paint="black"))
    for one in (bright, told, advise(Question(distance="40 yd", paint="black"))):
        assert "by turns: each tip" not in legend.foot(one)


@pytest.fixture(scope="module")
def lane():
    return advise(Question(behind=["sun lane"], sky="clear", sun_height="20", distance="30 yd"))


@pytest.mark.parametrize(("height", "grey"), [("20", True), ("35", False)])
def test_the_lane_itself_turns_black_grey_where_it_glitters_about_the_tip(height, grey):
    """Straylight of the lane beside the tip is a fifth and more of the light between its sparkles;
    at 35 deg the mirrored sun stands nearer than the tip, and the water there is dull."""
    told = {"sky": "clear", "distance": "30 yd", "paint": "black", "age": "25"}
    answer = advise(Question(behind=["sun lane"], sun_height=height, **told))
    said = ("In the sun lane black looks grey: the glare lays a veil over it.",)
    assert legend.veiled(answer) == (said if grey else ())
    which = deciding(answer, waters(answer)[0], answer.tip_in_hand.tip)
    share = panels.veil_share(panels.view_of(answer, which, "told"))
    assert 0.2 < share < 0.25 if grey else 0.02 < share < 0.05


def test_in_the_sun_lane_the_water_is_not_all_white(lane):
    """A few sparkles lift its mean over all other water; they alone are as white as the screen."""
    for eyes in ("good", "told"):
        shown = panels.pictures(lane, waters(lane)[0], eyes)[0][panels.FAR_PX :]
        white = (shown == 255).all(axis=-1).mean()
        assert 0.001 < white < 0.05
        assert shown.mean() < 200


@pytest.mark.parametrize(
    ("told", "is_said"),
    [
        ({"behind": ["sun lane"], "sky": "clear", "sun_height": "20"}, True),
        ({"behind": ["dark"], "sky": "clear", "sun_is": "in my face", "sun_height": "25"}, True),
        ({"behind": ["dark"], "sky": "clear", "sun_is": "behind me", "sun_height": "25"}, False),
        ({"behind": ["dark"]}, False),
    ],
)
def test_never_stare_into_the_sun_is_said_beside_a_view_of_it(told, is_said):
    answer = advise(Question(**told, distance="30 yd"))
    care = " ".join(legend.sun_care(answer))
    for said in (care, legend.describe(answer), legend.film_described(answer)):
        assert ("Never stare into the sun or its lane" in said) is is_said
