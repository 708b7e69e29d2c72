"""Cards for the lid and the wall: true to size, and saying what the sums say."""

import base64
import contextlib
import re
import zlib
from dataclasses import replace

import numpy as np
import pytest
from sight_level import visibility_level

from tipsight.advice.advise import advise
from tipsight.errors import Mistakes
from tipsight.inputs import demo
from tipsight.inputs.question import Question
from tipsight.learning import bars
from tipsight.load import budget, hull, plan, shot
from tipsight.output.measures import ANGLER
from tipsight.paper import cards, wall
from tipsight.paper.cells import Cell, asked, told
from tipsight.paper.leaf import POINT_MM, TALL_MM, WIDE_MM, Page, width_mm
from tipsight.pictures.subject import advised
from tipsight.sight.eye import Eye

PIXEL_MM = 0.05


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_the_shotting_card_is_90_by_120(poppler, answers, name):
    page = poppler.raster(cards.shotting(answers[name]))
    left, foot = 10.0 + 2.0, 21.0 + 255.0 - 120.0 - 12.0
    frame = poppler.ink(page, left - 1, foot - 1, 92, 122)
    columns = np.flatnonzero(frame.mean(axis=0) > 0.9)
    rows = np.flatnonzero(frame.mean(axis=1) > 0.9)
    assert (columns[-1] - columns[0] + 1) * PIXEL_MM == pytest.approx(90.0, abs=0.25)
    assert (rows[-1] - rows[0] + 1) * PIXEL_MM == pytest.approx(120.0, abs=0.25)


def test_four_cards_on_a_page_with_their_cut_marks(poppler, answers):
    """Marks run 1.8 mm out from each corner, so that a ruler laid along them cuts the edge."""
    many = [answers[name] for name in ("demo", "dusk", "match", "demo", "dusk")]
    data = cards.shottings(many)
    assert poppler.info(data)["Pages"] == "2"
    page = poppler.raster(data)
    for x, y in cards.PLACES:
        assert x - cards.MARK_MM >= 0.0
        assert x + cards.WIDE_CARD_MM + cards.MARK_MM <= 190.0
        assert y - cards.MARK_MM >= -1.0
        for right, out in ((10 + x, -1), (10 + x + 90.0, 1)):
            for up in (21 + y, 21 + y + 120.0):
                start = right + min(out, 0) * cards.MARK_MM
                mark = poppler.ink(page, start + 0.2, up - 0.3, cards.MARK_MM - 0.4, 0.6)
                assert mark.any(axis=0).all()
    for one, other in ((0, 1), (0, 2)):
        (x1, y1), (x2, y2) = cards.PLACES[one], cards.PLACES[other]
        assert abs(x2 - x1) >= 90.0 + 2 * cards.MARK_MM or abs(y2 - y1) >= 120.0


@pytest.mark.parametrize("which", ["shotting", "bank", "wall"])
def test_no_type_is_smaller_than_a_man_can_read(answers, monkeypatch, which):
    """8 points and more on every card, as the file itself sets its type."""
    monkeypatch.setattr(cards, "CELL_YARDS", (30,))
    lead = advise(demo.question("match").with_options(shot_metal="lead"))
    made = {
        "shotting": lambda: cards.shottings([answers["demo"], lead]),
        "bank": lambda: cards.bank(answers["demo"]),
        "wall": lambda: wall.pdf(answers["demo"]),
    }[which]()
    assert min(type_sizes(made)) >= 8.0


def type_sizes(data: bytes) -> list[float]:
    """Return every size at which a PDF sets type [points]."""
    found = []
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", data, re.DOTALL):
        with contextlib.suppress(ValueError, zlib.error):
            whole = b"<~" + stream.strip()
            text = zlib.decompress(base64.a85decode(whole, adobe=True))
            found += [float(one) for one in re.findall(rb"/F\d+\+\d+ ([\d.]+) Tf", text)]
    assert found
    return found


def test_columns_of_the_bank_card_never_touch(poppler, answers):
    """Words of one column end before the next begins, whatever they say."""
    long = [Cell(45.0, "stands out", pen=True, sleeve=True, insert_mm=4.0,
                 on=(("SSG", 2), ("No 10", 3)), off=(("No 4", 2), ("No 8", 1)))]  # fmt: skip
    page = cards._page("a4", "x")
    feet, widest = [], 0.0
    drawn = []
    page.text = lambda x, y, said, points=8.0, bold=False, align="left": drawn.append(
        (x, width_mm(said, points, bold))
    )
    for at in range(3):
        feet.append(cards._cell(page, 10.0 + 24.0 * at, 100.0, 22.5, long[0]))
    for x, wide in drawn:
        widest = max(widest, wide)
        assert x + wide <= 10.0 + 24.0 * ((x - 10.0) // 24.0 + 1)
    assert 15.0 < widest <= 22.5
    assert len(set(feet)) == 1


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_the_shot_is_named_where_it_goes(poppler, answers, name):
    answer = answers[name]
    case, load = answer.case, advised(answer)[1].load
    text = poppler.words(cards.shotting(answer))
    hung = [(one.name, one.count, one.where) for one in load.shot]
    for one in plan.layout(hung, case.stream.depth_m):
        assert f"{one.count} {one.name}" in text
        if one.where != plan.TRIM:
            assert f"{100 * one.from_hook_m:.0f} cm: " in text
    assert f"{load.shot_g:.2f} g in air, {load.pull_g:.2f} g in water" in text
    assert load.shot_metal in text


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_two_more_and_two_fewer_show_what_the_load_says(answers, name):
    """The same by the float's own budget: the tip is set to show so much, and pulled by so much."""
    answer = answers[name]
    case, block = answer.case, advised(answer)[1]
    warm = case.stream.temperature_c
    body = hull.hull_of(case.float_, case.weighed_tip, warm)
    size, rows = cards.steps(answer.case, advised(answer)[1])
    one = next(s for s in shot.sizes(case.box.shot_metal) if s.name == size)
    share = float(shot.wet_share(case.box.shot_metal, warm))
    outside = block.tip.showing_mm + block.tip.wet_mm
    assert [count for count, _ in rows] == [-2, -1, 0, 1, 2]
    for count, shows in rows:
        if 0.0 < shows < outside:
            moved = replace(block.tip, showing_mm=shows, wet_mm=outside - shows)
            pull = budget.pull_g(body, moved, warm)
            assert pull - block.load.pull_g == pytest.approx(count * one.mass_g * share, abs=2e-3)


@pytest.mark.parametrize(
    ("name", "size"), [("demo", "No 10"), ("dusk", "No 9"), ("match", "No 9")]
)
def test_the_shot_counted_moves_about_four_millimetres(answers, name, size):
    """4 mm of 3.18 mm pull 0.032 g, 0.037 g of tin: No 10 weighs 0.04; of 3.68 mm 0.049 g: No 9."""
    assert cards.steps(answers[name].case, advised(answers[name])[1])[0] == size


def test_the_card_says_when_the_body_comes_out_and_when_all_sinks(poppler, answers):
    """16 mm outside the body, 9 showing, a No 9 for 4.06 mm; then with 3 mm showing."""
    text = poppler.words(cards.shotting(answers["match"]))
    assert "sinks" not in text
    for said in ("body out", "13 mm", "9 mm", "5 mm", "1 mm"):
        assert said in text
    block = answers["match"].at_the_bank.block
    low = replace(block, tip=replace(block.tip, showing_mm=3.0, wet_mm=13.0))
    change = replace(answers["match"].at_the_bank, block=low)
    text = poppler.words(cards.shotting(replace(answers["match"], at_the_bank=change)))
    assert text.count("sinks") == 2
    assert "body out" not in text


def test_each_shot_is_drawn_at_its_height(poppler, answers):
    """The line stands for the depth, its foot 40 mm up the card, 11 mm from its edge."""
    answer = answers["demo"]
    case, load = answer.case, advised(answer)[1].load
    hung = [(one.name, one.count, one.where) for one in load.shot]
    page = poppler.raster(cards.shotting(answer))
    x, foot = 10.0 + 2.0 + 11.0, 21.0 + 255.0 - 120.0 - 12.0 + 40.0
    column = poppler.ink(page, x - 0.1, foot, 0.2, 75.0).any(axis=1)
    tall = PIXEL_MM * np.argmin(column[::-1]) - 0.6  # half of the trim that hangs under the float
    places = {one.from_hook_m for one in plan.layout(hung, case.stream.depth_m)}
    assert len(places) > 2
    for metres in places:
        y = foot + tall * metres / case.stream.depth_m
        assert poppler.ink(page, x - 0.5, y - 0.5, 1.0, 1.0).all()
    between = foot + tall * (min(places) / 2) / case.stream.depth_m
    assert poppler.ink(page, x - 0.5, between - 0.2, 1.0, 0.4).mean() < 0.5


@pytest.mark.parametrize("metal", ["lead", "tin"])
def test_a_card_of_lead_shot_warns_of_it(poppler, metal):
    text = poppler.words(
        cards.shotting(advise(demo.question("match").with_options(shot_metal=metal)))
    )
    assert ("Lead: banned on many waters; wash your hands" in text) == (metal == "lead")


def test_the_bank_card_names_the_insert(poppler, monkeypatch):
    monkeypatch.setattr(cards, "CELL_YARDS", (30,))
    told_ = {"inserts": "solid 2, 3, 4", "pulls_out": "yes", "pattern": "hollow-tip foam taper"}
    short = {"diameter": "2 mm", "stock": "solid", "showing": "8 mm", "wet": "2 mm"}
    question = Question(**told_, **short, takes="6 g", behind=("bright",))
    answer = advise(asked(question, 30, "bright"))
    one = told(answer.at_the_bank)
    assert one.show.endswith(" mm, 4 mm insert, pen")
    text = poppler.words(cards.bank(advise(question)))
    assert one.length in text
    assert "4 mm insert, pen" in text


def test_labels_keep_apart():
    found = cards._apart([30.0, 29.0, 10.0, 9.9], 4.0, 2.0)
    assert found == pytest.approx([33.0, 29.0, 13.9, 9.9])


def test_the_bank_card_has_what_advise_says(poppler, answers, monkeypatch):
    """Every cell of a card with two distances."""
    monkeypatch.setattr(cards, "CELL_YARDS", (20, 40))
    counted = []
    text = poppler.words(cards.bank(answers["match"], progress=lambda *done: counted.append(done)))
    assert counted[-1] == (6, 6)
    question = demo.question("match")
    for yards in (20, 40):
        for water in ("dark", "bright", "broken"):
            answer = advise(asked(question, yards, water))
            cell = told(answer.at_the_bank)
            assert cell.show in text
            assert cell.shot in text
            assert cell.grade in text


def test_an_answer_without_its_question_makes_no_bank_card(answers):
    with pytest.raises(ValueError, match="does not hold the question that it answers"):
        cards.bank(replace(answers["dusk"], question={}))


@pytest.mark.parametrize("hang_m", wall.HANG_M)
def test_marks_take_up_the_tips_own_angle(answers, hang_m):
    answer = answers["demo"]
    far = answer.case.place.range_m
    for mark in wall.marks(answer):
        wide, tall = wall.scaled(mark, far, hang_m)
        assert wide / hang_m == pytest.approx(mark.width_mm / far, rel=1e-12)
        assert tall / hang_m == pytest.approx(mark.height_mm / far, rel=1e-12)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_marks_are_printed_true(poppler, answers, paper):
    """The black one of the advised tip at 8 m, within 0.1 mm."""
    answer = answers["demo"]
    page = poppler.raster(wall.pdf(answer, paper))
    marks, far = wall.marks(answer), answer.case.place.range_m
    foot = 229.0
    for hang in wall.HANG_M:
        tallest = max(wall.scaled(m, far, hang)[1] for m in marks)
        foot -= 24.0 + tallest
        wide, tall = wall.scaled(marks[0], far, hang)
        left = (210.0, 215.9)[paper == "letter"] / 2 - 95.0
        low = ((297.0, 279.4)[paper == "letter"] - 255.0) / 2
        window = poppler.ink(page, left + 23.75 - 10 - 4, low + foot - 2, 8.0, tall + 4)
        assert window.any(axis=1).sum() * PIXEL_MM == pytest.approx(tall, abs=0.1)
        assert window.any(axis=0).sum() * PIXEL_MM == pytest.approx(wide, abs=0.1)
        foot -= 20.0


def test_the_wall_card_is_honest(poppler, answers):
    text = poppler.words(wall.pdf(answers["demo"]))
    assert "ink is not fluorescent" in text
    assert "light in a room or a garden differs" in text
    assert ANGLER.distance(answers["demo"].case.place.range_m) in text
    for mark in wall.marks(answers["demo"]):
        assert mark.title in text


def test_four_tips_two_of_them_others(answers):
    advised_, hand, longer, thicker = wall.marks(answers["demo"])
    assert (hand.width_mm, hand.height_mm) == (pytest.approx(3.18), 20.0)  # 3 mm, three coats
    assert longer.height_mm == pytest.approx(advised_.height_mm + 6.35)
    assert thicker.width_mm == pytest.approx(advised_.width_mm + 0.5)


def test_the_wall_card_ends_in_a_number(poppler, answers):
    """Better eyes see it farther; at the printed distance the mark's level is 2.4, where it goes."""
    answer = answers["demo"]
    far = wall.own_distances_m(answer)
    assert list(far) == sorted(far)
    assert list(far.values()) == sorted(far.values())
    wide, tall = wall.scaled(wall.marks(answer)[0], answer.case.place.range_m, wall.HANG_M[-1])
    for factor in (0.6, 1.0, 1.6):
        level = visibility_level(
            wide, [0.0, tall], [[bars.INK_CONTRAST, 0.0, 0.0]], range_m=far[factor],
            adaptation_cd_m2=bars.PAPER_CD_M2, eye=Eye(answer.case.angler.age_years, own_factor=factor),
        )  # fmt: skip
        assert float(level) == pytest.approx(2.4, rel=2e-3)
    text = poppler.words(wall.pdf(answer))
    assert f"{far[1.0] / 0.9144:.0f} yd, {far[1.0]:.0f} m" in text
    assert "tipsight advise --own-eye NUMBER" in text
    assert "no eye test" in text


@pytest.fixture
def laid_out(monkeypatch):
    """Every word and mark of a page as it is printed: page, left, foot, right, top [mm], and what."""
    found, turned = [], []

    def text(self, x, y, said, points=8.0, bold=False, align="left"):
        wide = width_mm(said, points, bold)
        left = x - wide * {"left": 0.0, "middle": 0.5, "right": 1.0}[align]
        found.append((len(turned), left, y, left + wide, y + 0.7 * points * POINT_MM, said))

    def box(self, x, y, wide_mm, tall_mm, **_):
        found.append((len(turned), x, y, x + wide_mm, y + tall_mm, "mark"))

    monkeypatch.setattr(Page, "text", text)
    monkeypatch.setattr(Page, "box", box)
    monkeypatch.setattr(Page, "turn", lambda self: turned.append(1))
    return found


@pytest.mark.parametrize(
    ("told", "pages", "hung"),
    [
        ({"distance": "60 yd"}, 1, [3.0, 5.0, 8.0]),
        ({"distance": "20 yd"}, 2, [3.0, 5.0, 8.0]),  # the number overleaf
        ({"distance": "8 yd"}, 2, [3.0, 5.0, 8.0]),  # the last row too
        ({"distance": "5 yd", "showing": "80 mm"}, 3, [3.0, 5.0, 8.0]),
        ({"distance": "3 m", "showing": "80 mm"}, 2, [3.0, 5.0]),  # at 8 m 213 mm tall
    ],
    ids=str,
)
def test_nothing_on_the_wall_card_is_printed_over_another(laid_out, told, pages, hung):
    answer = advise(Question(behind=["dark"], **told))
    assert list(wall.rows(answer)) == hung
    wall.pdf(answer)
    assert {one[0] for one in laid_out} == set(range(pages))
    assert sum(one[-1] == "mark" for one in laid_out) == 8 * len(hung)
    for page, left, foot, right, top, what in laid_out:
        assert left >= -0.01, what
        assert right <= WIDE_MM + 0.01, what
        assert foot >= -0.01, what
        assert top <= TALL_MM, what
        over = [
            other[-1]
            for other in laid_out
            if other[0] == page
            and min(right, other[3]) - max(left, other[1]) > 0.01
            and min(top, other[4]) - max(foot, other[2]) > 0.01
        ]
        assert over == [what]
    assert any(f"row for {hung[-1]:g} m" in one[-1] for one in laid_out)


def test_a_card_for_each_float_as_it_is(poppler):
    """Five floats are two pages; what each takes is what it was told to take; none is advised otherwise."""
    many = [Question(distance="40 yd", behind="bright", takes=f"{n}BB", paint="red") for n in range(3, 8)]
    data = cards.of_floats(many)
    assert poppler.info(data)["Pages"] == "2"
    words = poppler.words(data)
    for n in range(3, 8):
        assert f"takes {0.4 * n:.2f} g in air" in words
    with pytest.raises(Mistakes, match="distance"):
        cards.of_floats([Question(distance="frog")])
