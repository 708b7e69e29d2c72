"""The pocket file: every cell is what `advise` says, and it reads without a script."""

import re
import xml.etree.ElementTree as ET

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.learnt import Learnt, Lesson
from tipsight.inputs.question import Question
from tipsight.paper import pocket
from tipsight.paper.cells import RIPPLES, SKIES, WATERS, YARDS, Cell, cell, told
from tipsight.sight import grades

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


def test_a_cell_takes_ones_own_eyes():
    """As if the factor had been told; for half as good eyes another tip."""
    learnt = Learnt((Lesson("own_eye", "0.5", bars=6),), own_eye_doubt=1.14)
    where = 30, WATERS[0], RIPPLES[1], SKIES[0]
    plain, told_so, learned = (
        cell(one, *where) for one in (Question(), Question(own_eye="0.5"), Question(learnt=learnt))
    )
    assert learned == told_so != plain


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
    words = {"yards": YARDS, "water": WATERS, "looks": RIPPLES, "sky": SKIES, "saw": ("went",)}
    assert {k: words[k][int(v)] for k, v in chosen.items()} == {
        "yards": 40, "water": "bright", "looks": "fur", "sky": "bright overcast",
        "saw": "went",
    }  # fmt: skip


def test_it_says_whose_float_and_eyes_and_that_it_is_computed(made_up):
    html = pocket.page(demo.question(), made_up)
    for words in ("quill avon", "3 mm quill", "fluorescent orange", "50 years", "Computed"):
        assert words in html


def test_html_is_all_of_the_cells(monkeypatch, made_up):
    monkeypatch.setattr(
        pocket, "column", lambda q, ys, w, r, s: {y: made_up[s, r, y, w] for y in ys}
    )
    counted = []
    html = pocket.html(demo.question(), lambda *done: counted.append(done))
    assert html == pocket.page(demo.question(), made_up)
    assert counted[0] == (11, 880)
    assert counted[-1] == (880, 880)


def test_markup_in_a_word_stays_a_word(made_up):
    key = ALL[0]
    html = pocket.page(Question(), {key: Cell(1.0, "<b>grade & more")})
    assert "&lt;b&gt;grade &amp; more" in html


def test_what_is_wrong_in_the_question_is_told():
    with pytest.raises(Mistakes, match="paint"):
        pocket.html(Question(paint="mauve with spots"))


def test_where_it_is_not_seen_it_says_how_far_to_come_in(made_up):
    """By hand: kept in view at 15, seen only if looked for at 20, not seen at 25 and 30 yards."""
    low, mid = (word for word, _ in grades.limits()[:2])
    column = {10: "easy", 15: "kept in view", 20: mid, 25: low, 30: low}
    cells = {yard: Cell(20.0, grade) for yard, grade in column.items()}
    told_ = {yard: pocket.come_in_to(yard, cells) for yard in cells}
    assert told_ == {10: None, 15: None, 20: None, 25: 15, 30: 15}
    assert pocket.come_in_to(10, {10: Cell(20.0, low)}) is None
    html = pocket.page(
        Question(), {("clear", "fur", y, "dark"): one for y, one in cells.items()}
    )
    assert html.count("not seen; come in to 15 yd") == 2
    assert html.count("come in to") == 2
