"""Drawings as SVG: to scale, in words, for the command."""

import re
import xml.etree.ElementTree as ET

import pytest

from tipsight.advice.advise import advise
from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.load import hull, staircase
from tipsight.output import shot_words
from tipsight.pictures import drawn, svg

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module", params=demo.names())
def answer(request):
    return advise(demo.question(request.param))


@pytest.mark.parametrize("name", drawn.NAMES)
def test_each_is_svg_that_says_what_it_shows(answer, name):
    said = drawn.drawing(answer, name)
    root = ET.fromstring(said)  # noqa: S314 - our own drawing
    assert root.tag == f"{SVG}svg"
    assert root.find(f"{SVG}title").text
    assert root.find(f"{SVG}desc").text
    assert "style=" not in said
    assert drawn.words_of(said).startswith(root.find(f"{SVG}title").text)


def test_what_stands_alone_needs_no_page(answer):
    root = ET.fromstring(drawn.drawing(answer, "sunk"))  # noqa: S314 - our own drawing
    assert (root.get("width"), root.get("height"), root.get("font-size")) == ("340", "352", "18")
    points = root.findall(f".//{SVG}a")
    assert len(points) == len(answer.trade_off)
    assert {(one.get("href"), one.get("tabindex")) for one in points} == {(None, "0")}
    shown = root.find(f"{SVG}style").text
    assert "a text{fill:none}" in shown
    assert "a:hover text,a:focus text{fill:currentColor}" in shown
    assert root.find(f"{SVG}desc").text.startswith("Each point is one length or thickness")


def test_what_is_no_drawing_is_left_as_it_is():
    assert drawn.alone("<p>none</p>") == "<p>none</p>"


def test_the_float_is_to_scale(answer):
    tip = drawn.made(answer)[1].tip
    case = answer.case
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    said = drawn.drawing(answer, "float")
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
    case, tip = answer.case, drawn.made(answer)[1].tip
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    said = drawn.words_of(drawn.drawing(answer, "shot"))
    for step in staircase.staircase(
        body, tip, case.box.shot_metal, case.box.shot, case.stream.temperature_c
    ):
        assert f"{shot_words.mark(step)}, {step.showing_mm:.3g} mm showing" in said
        assert shot_words.counted(step.shot) in said


def test_another_name_is_refused(answer):
    with pytest.raises(Mistakes, match="svg: 'boat' will not do; say tip, float, shot, sunk"):
        drawn.drawing(answer, "boat")
