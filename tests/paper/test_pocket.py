"""The pocket file: every cell is what `advise` says, and it reads without a script."""

import re
import xml.etree.ElementTree as ET

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.question import Question
from tipsight.paper import pocket
from tipsight.paper.cells import RIPPLES, SKIES, WATERS, YARDS, Cell, told

ALL = [(s, r, y, w) for s in SKIES for r in RIPPLES for y in YARDS for w in WATERS]


@pytest.fixture(scope="module")
def made_up():
    """A whole file's worth of cells, each with a mark of its own, as long as they get."""
    return {
        key: Cell(
            float(n),
            "kept in view",
            pen=True,
            sleeve=True,
            off=(("BB", 1), (f"No {n % 13}", 2)),
        )
        for n, key in enumerate(ALL)
    }


def test_sampled_cells_are_what_advise_says(worked_out):
    """For the three invented floats; tests/benchmark/pocket_cells.py does as many as one wants."""
    assert len(worked_out) == len(SKIES) * len(WATERS)
    for one in worked_out.values():
        assert one.cell == told(one.answer.at_the_bank)


def tables(html):
    """Return the tables as a browser without a script reads them: title to rows of texts."""
    found = {}
    for one in re.findall(r"<table.*?</table>", html, re.DOTALL):
        root = ET.fromstring(one)  # noqa: S314 - our own page
        rows = [["|".join(c.itertext()) for c in row] for row in root.find("tbody")]
        found[root.find("caption").text] = ([c.text for c in root.find("thead/tr")][1:], rows)
    return found


def test_every_cell_stands_in_its_table(made_up):
    found = tables(pocket.page(Question(), made_up))
    assert len(found) == len(SKIES) * len(RIPPLES)
    for (sky, ripple, yards, water), one in made_up.items():
        head, rows = found[f"{sky}, surface: {ripple}"]
        row = next(row for row in rows if row[0] == f"{yards} yd")
        text = row[1 + head.index(water)]
        assert (one.show in text, one.shot in text, one.grade in text) == (True, True, True)


def test_it_is_small_and_needs_nothing_else(made_up):
    html = pocket.page(demo.question(), made_up)
    assert len(html.encode()) < 300_000
    assert "http" not in html.replace("http-equiv", "")
    assert not re.search(r'(src|href)="(?!data:)', html)
    assert "default-src 'none'" in html


def test_it_opens_on_the_question_that_was_put(made_up):
    html = pocket.page(demo.question(), made_up)
    chosen = dict(re.findall(r'name="(\w+)" value="(\d+)" checked', html))
    words = {"yards": YARDS, "water": WATERS, "looks": RIPPLES, "sky": SKIES}
    assert {k: words[k][int(v)] for k, v in chosen.items()} == {
        "yards": 40, "water": "bright", "looks": "fur", "sky": "bright overcast",
    }  # fmt: skip


def test_it_says_whose_float_and_eyes_and_that_it_is_computed(made_up):
    html = pocket.page(demo.question(), made_up)
    for words in ("quill avon", "3 mm quill", "fluorescent orange", "50 years", "Computed"):
        assert words in html


def test_html_is_all_of_the_cells(monkeypatch, made_up):
    monkeypatch.setattr(pocket, "cell", lambda q, y, w, r, s: made_up[s, r, y, w])
    counted = []
    html = pocket.html(demo.question(), lambda *done: counted.append(done))
    assert html == pocket.page(demo.question(), made_up)
    assert counted[0] == (1, 880)
    assert counted[-1] == (880, 880)


def test_markup_in_a_word_stays_a_word(made_up):
    key = ALL[0]
    html = pocket.page(Question(), {key: Cell(1.0, "<b>grade & more")})
    assert "&lt;b&gt;grade &amp; more" in html


def test_what_is_wrong_in_the_question_is_told():
    with pytest.raises(Mistakes, match="paint"):
        pocket.html(Question(paint="mauve with spots"))
