"""Every pattern and every odd tip gets its papers and pictures, nothing cut off and no page too many."""

import re

import pytest

from tipsight import tables
from tipsight.advice.advise import advise
from tipsight.inputs.question import Question
from tipsight.paper import cards, sheet, wall
from tipsight.pictures import drawn, view

ODD = [
    {"distance": "3 m", "eye": "12 m"},
    {"distance": "100 m", "eye": "0.3 m", "looks": "wavelets"},
    {"sky": "clear", "sun_height": "-12"},
    {"sleeve_on": True, "light_stick_on": "4.5 x 39 mm", "pattern": "bolo type"},
    {"shot": ["SSG"]},
    {"shot_metal": "lead", "takes": "3SSG"},
    {"mist": "20 m", "distance": "60 yd"},
    {"tint": "polarised", "behind": ["sun lane"], "sky": "clear", "sun_height": "3"},
    {"colour_vision": "green-blind", "age": 100, "sight": "6/60"},
    {"looks": "glass", "wind": "calm", "boils": "weir"},
    {"temperature": "0 C", "depth": "12 m"},
    {"wind": "25 m/s", "wind_blows": "across", "distance": "20 yd"},
]

FREE_MM = 255.0 - 26.0 - 3 * 44.0 - 71.0
"""Of the wall card's height for the marks of all rows; taller ones send its last table overleaf."""


def put(**told):
    return advise(Question(**told))


def check(answer, viewed=True):
    far_m = answer.case.place.range_m
    tall_mm = sum(
        max(wall.scaled(m, far_m, hang)[1] for m in wall.marks(answer)) for hang in wall.HANG_M
    )
    overleaf = tall_mm > FREE_MM
    wall_card = wall.pdf(answer, "letter")
    papers = ((sheet.pdf(answer), 1), (cards.shotting(answer), 1), (wall_card, 1 + overleaf))
    for data, pages in papers:
        assert len(re.findall(rb"/Type /Page\b", data)) == pages
        assert data.startswith(b"%PDF-")
    for name in drawn.NAMES:
        assert not re.search(r"\bnan\b", drawn.drawing(answer, name).alone())
    if viewed:
        assert view.png(answer, "told").startswith(b"\x89PNG")


@pytest.mark.parametrize("name", [row["name"] for row in tables.rows("patterns")])
def test_every_pattern(name):
    check(put(pattern=name, behind=["not sure"]), viewed=False)  # no pattern alters the water


@pytest.mark.parametrize("told", ODD, ids=str)
def test_every_odd_question(told):
    check(put(**told))
