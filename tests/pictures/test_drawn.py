"""Drawings as SVG: to scale, in words, for the command."""

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest

from tipsight.advice.advise import advise
from tipsight.advice.answer import TradePoint
from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.case import Band, Stock, Tip
from tipsight.load import hull, staircase
from tipsight.output import shot_words
from tipsight.pictures import drawn, svg
from tipsight.pictures.subject import made
from tipsight.pictures.svg_parts import Drawing
from tipsight.pictures.trade import marked

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module", params=demo.names())
def answer(request):
    return advise(demo.question(request.param))


@pytest.mark.parametrize("name", drawn.NAMES)
def test_each_is_svg_that_says_what_it_shows(answer, name):
    picture = drawn.drawing(answer, name)
    root = ET.fromstring(picture.alone())  # noqa: S314 - our own drawing
    assert root.tag == f"{SVG}svg"
    assert root.find(f"{SVG}title").text == picture.title
    assert root.find(f"{SVG}desc").text == picture.desc
    assert "style=" not in picture.alone()
    assert picture.words == f"{picture.title}: {picture.desc}"


def test_what_stands_alone_needs_no_page(answer):
    root = ET.fromstring(drawn.drawing(answer, "sunk").alone())  # noqa: S314 - our own drawing
    assert (root.get("width"), root.get("height"), root.get("font-size")) == ("354", "396", "18")
    points = root.findall(f".//{SVG}a")
    assert len(points) == len(marked(answer.trade_off, answer.tip_in_hand))
    assert {(one.get("href"), one.get("tabindex")) for one in points} == {(None, "0")}
    shown = root.find(f"{SVG}style").text
    assert "a text{fill:none}" in shown
    assert "a:hover text,a:focus text{fill:currentColor}" in shown
    assert root.find(f"{SVG}desc").text.startswith("Each point is one length or thickness")


def test_markup_in_words_stays_words():
    odd = Drawing((9, 8), "<b>", 'a & "b"', [], [])
    for said in (odd.alone(), odd.__html__()):
        assert ET.fromstring(said).get("aria-label") == '<b>. a & "b"'  # noqa: S314
    assert ET.fromstring(odd.alone()).find(f"{SVG}desc").text == 'a & "b"'  # noqa: S314


def test_the_float_is_to_scale(answer):
    tip = made(answer)[1].tip
    case = answer.case
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    said = drawn.drawing(answer, "float").alone()
    outline = re.search(r'<path d="M([^"]*)z"', said)[1]
    points = [tuple(map(float, p.split())) for p in outline.split("L")]
    across, down = zip(*points, strict=True)
    k = svg.FLOAT_PX_PER_MM
    assert (max(down) - min(down)) / k == pytest.approx(-body.profile.z_mm[-1], abs=0.1)
    assert (max(across) - min(across)) / k == pytest.approx(2 * body.profile.r_mm.max(), abs=0.1)
    bands = [r for r in ET.fromstring(said).findall(f"{SVG}rect")]  # noqa: S314
    tall = sum(float(r.get("height")) for r in bands) / k
    assert tall == pytest.approx(tip.showing_mm + tip.wet_mm, abs=0.2)


def test_the_stairs_say_each_step(answer):
    case, tip = answer.case, made(answer)[1].tip
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    said = drawn.drawing(answer, "shot").desc
    for step in staircase.staircase(
        body, tip, case.box.shot_metal, case.box.shot, case.stream.temperature_c
    ):
        assert f"{shot_words.mark(step)}, {step.showing_mm:.3g} mm showing" in said
        assert shot_words.counted(step.shot) in said


def test_another_name_is_refused(answer):
    with pytest.raises(Mistakes, match="svg: 'boat' will not do; say tip, float, shot, sunk"):
        drawn.drawing(answer, "boat")


def test_a_sleeve_is_drawn_as_thick_as_it_is_and_ends_at_the_water(answer):
    """3 mm under three coats of 0.03 mm is 3.18 mm; a sleeve makes what shows 1 mm thicker."""
    bands = (Band("black", 0.0, 20.0),)
    tip = Tip(Stock("solid", 3.0), 20.0, wet_mm=10.0, coats=3, bands=bands, sleeve=True)
    for picture, k in ((svg.float_(answer.case, tip), 3.0), (svg.stairs(answer.case, tip), 4.0)):
        above, wet = ET.fromstring(picture.alone()).findall(f"{SVG}rect")  # noqa: S314
        assert float(above.get("width")) / k == pytest.approx(4.18, abs=0.02)
        assert float(wet.get("width")) / k == pytest.approx(3.18, abs=0.02)


def test_the_words_of_the_stairs_never_lie_on_each_other(answer):
    """Letters of 18 px; each mark has two lines of them, 21 px apart."""
    said = ET.fromstring(drawn.drawing(answer, "shot").alone())  # noqa: S314
    down = [float(one.get("y")) for one in said.iter(f"{SVG}text")]
    assert len(down) >= 6
    assert all(lower - upper >= 20.0 for upper, lower in pairwise(down))


def points(*chosen):
    return tuple(
        TradePoint(3.0, 20.0 + 5 * n, 2.8 + n, 0.1 + 0.1 * n, 4.0, True, n in chosen, "longer")
        for n in range(3)
    )


def test_only_the_advised_point_has_a_ring():
    said = svg.seen_against_sunk(points(1), 4.0).alone()
    rings = [one for one in ET.fromstring(said).iter(f"{SVG}circle") if one.get("r") == "13"]  # noqa: S314
    assert len(rings) == 1
    assert "25 mm, advised" in said


def test_only_the_wanted_grade_has_an_unbroken_line():
    """Grades begin at 1, 2.4, 5, 10 and 20; levels of 2.8 to 4.8 have two of them in the picture."""
    for wanted, other in ((5.0, 2.4), (2.4, 5.0)):
        said = ET.fromstring(svg.seen_against_sunk(points(), wanted).alone())  # noqa: S314
        level = [one for one in said.findall(f"{SVG}path") if one.get("d").startswith("M35 ")]
        solid = [one for one in level if not one.get("stroke-dasharray")]
        higher = [float(one.get("d").split()[-1]) for one in solid]
        broken = [float(one.get("d").split()[-1]) for one in level if one not in solid]
        drawn_at = min(higher)
        assert broken
        assert (drawn_at < min(broken)) == (wanted > other)


def test_what_can_be_reached_is_a_group_and_what_cannot_a_picture(answer):
    roles = {
        name: ET.fromstring(drawn.drawing(answer, name).alone()).get("role")  # noqa: S314
        for name in drawn.NAMES
    }
    assert roles == {**dict.fromkeys(drawn.NAMES, "img"), "sunk": "group"}
