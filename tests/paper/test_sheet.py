"""The bench sheet: true to size on both papers, and saying what the answer says."""

import re
from dataclasses import replace

import numpy as np
import pytest

from tipsight.advice.advise import advise
from tipsight.advice.facts import Care, Caution, Failure, Limit
from tipsight.errors import Mistakes
from tipsight.inputs.case import Band, Stock
from tipsight.inputs.question import Question
from tipsight.load.tips import showing_diameter_mm
from tipsight.output.json_form import json_form
from tipsight.paper import seat, sheet, sheet_words
from tipsight.pictures import letters
from tipsight.pictures.subject import made

PIXEL_MM = 0.05
SIZES = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}


def corner(paper):
    wide, tall = SIZES[paper]
    return (wide - 190.0) / 2, (tall - 255.0) / 2


def runs(marked):
    """Return the middle of each run of marked pixels along a line [mm]."""
    edges = np.flatnonzero(np.diff(np.concatenate([[0], marked.astype(int), [0]])))
    return (edges[::2] + edges[1::2]) / 2.0 * PIXEL_MM


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_check_lines_are_true(poppler, answers, paper):
    """Within 0.2 mm over 100 mm, between the middles of the end strokes."""
    left, foot = corner(paper)
    page = poppler.raster(sheet.pdf(answers["demo"], paper))
    strokes = poppler.ink(page, left - 2, foot + 3.8, 192, 0.8).all(axis=0)
    at = runs(strokes)
    assert len(at) == 4
    assert at[1] - at[0] == pytest.approx(100.0, abs=0.1)
    assert at[3] - at[2] == pytest.approx(76.2, abs=0.1)
    along = poppler.ink(page, left - 2, foot + 5.5, 192, 1.0).any(axis=0)
    assert runs(along) == pytest.approx([(at[0] + at[1]) / 2, (at[2] + at[3]) / 2], abs=0.15)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_one_page_inside_what_both_printers_reach(poppler, answers, paper, name):
    data = sheet.pdf(answers[name], paper)
    told = poppler.info(data)
    assert told["Pages"] == "1"
    wide, tall = SIZES[paper]
    size = [float(x) * 25.4 / 72 for x in re.findall(r"[\d.]+", told["Page size"])[:2]]
    assert size == pytest.approx([wide, tall], abs=0.1)
    dark = np.argwhere(poppler.raster(data, 100.0) < 200) * 0.254
    left, foot = corner(paper)
    assert dark[:, 1].min() >= left - 0.5
    assert dark[:, 1].max() <= wide - left + 0.5
    assert dark[:, 0].min() >= foot - 0.5
    assert dark[:, 0].max() <= tall - foot + 0.6


def test_nothing_is_left_out_of_the_file(poppler, answers):
    """Every typeface is in it, so that every glyph is drawn anywhere."""
    fonts = poppler.fonts(sheet.pdf(answers["dusk"]))
    assert fonts
    for line in fonts:
        assert line.split()[-5] == "yes", line


def test_every_glyph_is_drawn(poppler, answers):
    for answer in answers.values():
        words = poppler.words(sheet.pdf(answer))
        assert all(letter == " " or ord(letter) in letters.glyphs() for letter in words)
        assert "?" not in words


def outlined(poppler, answer, paper="a4"):
    """Return width [mm] and length [mm] of the piece to cut, as printed."""
    left, _ = corner(paper)
    tip = made(answer)[1].tip
    page = poppler.raster(sheet.pdf(answer, paper))
    top = corner(paper)[1] + 255.0 - 20.0 - 6.0
    middle, bare = left + 20.0, tip.stock.diameter_mm
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    window = poppler.ink(page, middle - 7.0, top - whole - 3, 14.0, whole + 5, limit=200)
    narrow = window[:, round((7 - bare / 2) / PIXEL_MM) : round((7 + bare / 2) / PIXEL_MM)]
    rows = np.flatnonzero(narrow.mean(axis=1) > 0.9)
    quiet = window[rows[-1] - round(2.0 / PIXEL_MM)]
    columns = np.flatnonzero(quiet)
    return mm_between(columns), mm_between(rows)


def mm_between(marked):
    return (marked[-1] - marked[0] + 1) * PIXEL_MM


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_the_piece_to_cut_is_true(poppler, answers, name):
    """Within 0.1 mm, to the outer side of its line, and a pixel of 0.05 mm at either end."""
    tip = made(answers[name])[1].tip
    wide, long = outlined(poppler, answers[name])
    assert wide == pytest.approx(tip.stock.diameter_mm, abs=0.11)
    assert long == pytest.approx(tip.showing_mm + tip.wet_mm + tip.glued_mm, abs=0.11)


def test_the_float_is_as_thick_as_its_outline(poppler, answers):
    from tipsight.load import hull

    answer = answers["dusk"]
    case, tip = answer.case, made(answer)[1].tip
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    left, foot = corner("a4")
    top = foot + 255.0 - 26.0 - tip.showing_mm - tip.wet_mm
    page = poppler.raster(sheet.pdf(answer))
    z = -18.0
    window = poppler.ink(page, left + 54 - 12, top + z, 24.0, 0.1).any(axis=0)
    at = runs(window)
    r = float(sheet._radius_at(body, z))
    assert at[-1] - at[0] == pytest.approx(2 * r, abs=0.2)


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_it_says_what_the_answer_says(poppler, answers, name):
    answer = answers[name]
    told = json_form(answer)
    block = told["at_the_bench"] or told["at_the_bank"]
    words = poppler.words(sheet.pdf(answer))
    tip = made(answer)[1].tip
    assert f"{block['tip']['diameter_mm']:g} mm {block['tip']['stock']}" in words
    assert f"{block['tip']['showing_mm']:.3g} showing" in words
    for band in block["paint"]:
        assert band["paint"] in words
    assert block["visibility"]["grade"] in words
    for line in block["load"]["shot"]:
        assert f"{line['count']} {line['name']} {line['where']}" in words
    assert f"{block['load']['shot_g']:.2f} g" in words
    assert f"{tip.glued_mm:.3g} glued in" in words
    whole = tip.showing_mm + tip.wet_mm + tip.glued_mm
    assert f"{whole:.3g} mm (" in words
    assert f"{showing_diameter_mm(tip):.2f} mm" in words


def test_it_tells_which_paint_melts_foam_and_the_cautions(poppler, answers):
    words = poppler.words(sheet.pdf(answers["dusk"]))
    assert "spirit paint melts foam" in words
    assert "cellulose melts foam at once" in words
    assert "Dust: wear a mask" in words
    assert "open the window" in words
    other = poppler.words(sheet.pdf(answers["demo"]))
    assert "melts foam" not in other


def test_lead_and_light_sticks_are_warned_of_where_the_answer_does(poppler, answers):
    """Of what the answer warns of, the river is no concern of the bench."""
    told = Caution(Care.LEAD), Caution(Care.LIGHT_STICK), Caution(Care.WADING)
    words = poppler.words(sheet.pdf(replace(answers["demo"], cautions=told)))
    assert "Lead: most sizes are banned" in words
    assert "never cut one open" in words
    assert "wade" not in words
    words = poppler.words(sheet.pdf(replace(answers["demo"], cautions=())))
    assert "Lead" not in words
    assert "Light stick" not in words


def with_tip(answer, **changes):
    bench = answer.at_the_bench
    tip = replace(bench.block.tip, **changes)
    return replace(answer, at_the_bench=replace(bench, block=replace(bench.block, tip=tip)))


def test_a_quill_brings_the_caution_on_feathers(poppler, answers):
    words = poppler.words(sheet.pdf(with_tip(answers["demo"], stock=Stock("quill", 3.0))))
    assert "domestic birds" in words
    assert "scrape the quill" in words
    cane = with_tip(answers["demo"], stock=Stock("cane", 3.0))
    assert "domestic birds" not in poppler.words(sheet.pdf(cane))


def test_what_is_only_repainted_needs_no_feather(poppler, answers):
    quill = with_tip(answers["match"], stock=Stock("quill", 3.0))
    assert "domestic birds" not in poppler.words(sheet.pdf(quill))


def test_the_water_is_drawn_where_it_comes_up_to(poppler, answers):
    """A broken line beside the tip, 50 mm below its top, and none 10 mm below it, its wet length."""
    left, foot = corner("a4")
    page = poppler.raster(sheet.pdf(with_tip(answers["demo"], showing_mm=50.0, wet_mm=10.0)))
    water = foot + 255.0 - 26.0 - 50.0
    window = poppler.ink(page, left + 54.0 - 9.0, water - 2.0, 6.0, 4.0)
    assert runs(window.any(axis=1)) == pytest.approx([2.0], abs=0.1)
    assert not poppler.ink(page, left + 54.0 - 9.0, water + 38.0, 6.0, 4.0).any()


def test_a_float_too_long_for_the_page_says_how_much_is_missing(poppler):
    """262 mm below the tip, which takes up the rest of the 209 mm down to the check lines."""
    answer = advise(Question(pattern="long cane balsa", behind=["dark"]))
    tip = made(answer)[1].tip
    missing = 262.0 - (209.0 - tip.showing_mm - tip.wet_mm)
    assert f"goes on {missing:.0f} mm" in poppler.words(sheet.pdf(answer))


def test_the_longest_words_still_fit(poppler, answers):
    """Three bands on a tube, fluorescent, on foam: nothing reaches into the check lines."""
    bands = (Band("white", 0, 12), Band("black", 12, 25), Band("fluorescent orange", 25, 40))
    busy = with_tip(answers["dusk"], stock=Stock("thin tube", 4.0, 3.0), bands=bands)
    page = poppler.raster(sheet.pdf(busy))
    left, foot = corner("a4")
    assert not poppler.ink(page, left + 70, foot + 10.5, 119, 4.0).any()
    words = poppler.words(sheet.pdf(busy))
    assert "plug both ends" in words
    assert "the foot of the black" in words


def test_marks_at_one_place_are_told_together():
    assert sheet._edges(replace(make_tip(), wet_mm=0.0, glued_mm=6.0)) == [
        (0.0, "top"),
        (20.0, "waterline, body"),
        (26.0, "end, glued in"),
    ]


@pytest.mark.parametrize(
    ("changes", "steps"),
    [
        ({}, ["cut", "key", "glue", "white", "colour", "clear", "jar"]),
        ({"undercoat": False}, ["cut", "key", "glue", "colour", "clear", "jar"]),
        (
            {"stock": Stock("quill", 3.0)},
            ["cut", "quill", "key", "glue", "white", "colour", "clear", "jar"],
        ),
        (
            {"stock": Stock("thin tube", 4.0, 3.0)},
            ["cut", "tube", "key", "glue", "white", "colour", "clear", "jar"],
        ),
        (
            {"bands": (Band("fluorescent red", 0, 20),)},
            ["cut", "key", "glue", "white", "colour", "clear", "jar"],
        ),
    ],
    ids=str,
)
def test_the_work_is_what_the_tip_needs(changes, steps):
    assert [row["step"] for row in sheet_words.steps(replace(make_tip(), **changes))] == steps


def hull_with_top(answer, top_mm, at_mm, wide_mm):
    """A body as thick as told at its top, and then at one depth, straight between."""
    from tipsight.load import hull

    case = answer.case
    body = hull.hull_of(case.float_, case.weighed_tip, case.stream.temperature_c)
    z, r = np.array([0.0, -at_mm, -40.0]), np.array([top_mm, wide_mm, wide_mm]) / 2
    return replace(body, profile=replace(body.profile, z_mm=z, r_mm=r))


@pytest.mark.parametrize(
    ("top_mm", "at_mm", "wide_mm", "bare_mm", "expected"),
    [
        (4.0, 6.0, 10.0, 4.0, None),  # goes in as it is
        (3.0, 6.0, 9.0, 4.0, (2.0, None)),  # 5 mm thick, 4 and a wall, 2 mm down
        (3.0, 20.0, 5.0, 4.0, (None, 2.0)),  # too slim: the foot to 3 mm less a wall each side
        (1.8, 20.0, 3.0, 4.0, (None, None)),  # no peg of 1 mm goes into it
    ],
)
def test_a_tip_thicker_than_the_top_is_let_in(answers, top_mm, at_mm, wide_mm, bare_mm, expected):
    """By hand, a wall of 0.5 mm and 6 mm glued in."""
    body = hull_with_top(answers["demo"], top_mm, at_mm, wide_mm)
    how = seat.seat(body, replace(make_tip(), stock=Stock("cane", bare_mm), glued_mm=6.0))
    if expected is None:
        assert how is None
        return
    assert how.top_mm == top_mm
    assert (how.back_mm, how.peg_mm) == (
        pytest.approx(expected[0], abs=0.02) if expected[0] else None,
        expected[1],
    )
    assert seat.seat(body, replace(make_tip(), stock=Stock("cane", bare_mm), glued_mm=0.0)) is None


def test_the_sheet_opens_the_top_before_it_glues(poppler, answers):
    thick = with_tip(answers["demo"], stock=Stock("cane", 4.0))
    words = poppler.words(sheet.pdf(thick))
    assert "thinner than the tip's 4 mm" in words
    assert words.index("thinner than the tip's") < words.index("glue it in up to")
    assert "cut back" in words
    assert "thinner than the tip's" not in poppler.words(sheet.pdf(answers["demo"]))


def seated(poppler, monkeypatch, answers, how):
    """The words of the demo's sheet where its tip goes in as told."""
    for module in (sheet, sheet_words):
        monkeypatch.setattr(module, "seat", lambda *_: how)
    return poppler.words(sheet.pdf(answers["demo"]))


def test_a_tip_that_cannot_be_let_in_is_not_made(poppler, monkeypatch, answers):
    words = seated(poppler, monkeypatch, answers, seat.Seat(1.5, None, None))
    assert "too thin to take a peg; do not glue it: take a thinner tip or a thicker body" in words
    assert "Not to be made" in words
    for work in ("the piece to cut", "cut it", "glue it in up to", "cut to length", "Work and coats"):
        assert work not in words


def test_a_peg_is_written(poppler, monkeypatch, answers):
    words = seated(poppler, monkeypatch, answers, seat.Seat(2.5, None, 1.5))
    assert "taper the glued 6 mm of the tip (broken lines) until it is 1.5 mm thick" in words
    assert words.index("taper the glued") < words.index("glue it in up to")


def test_no_coat_that_melts_the_body_is_asked_for(poppler, answers):
    """The dusk float is of foam: spirit paint is named in the warning and nowhere else."""
    words = poppler.words(sheet.pdf(answers["dusk"]))
    assert "overnight for spirit paint" not in words
    assert "pinhole" not in words
    assert "nothing but water-based undercoat" in words
    assert "overnight for spirit paint" in poppler.words(sheet.pdf(answers["demo"]))


def test_where_nothing_passes_there_is_nothing_to_tick(poppler, answers):
    bench = answers["demo"].at_the_bench
    block = replace(bench.block, fails=(Failure(Limit.RIDE, 1.25, 2.0),))
    words = poppler.words(
        sheet.pdf(replace(answers["demo"], at_the_bench=replace(bench, block=block)))
    )
    assert "Not to be made: no tip passes" in words
    assert "margin 1.2 where 2 is the least" in words
    for gone in ("card in the lid", "cut it", "the piece to cut", "tip to fit at the bench"):
        assert gone not in words


def test_the_best_there_is_says_what_it_lacks_and_the_way_out(poppler, answers):
    """The demo's tip is followed at 40 yd where kept in view is wanted; coming in to 22 yd does."""
    words = poppler.words(sheet.pdf(answers["demo"]))
    assert "Falls short here" in words
    assert "followed (level 2.7) where kept in view (5) is wanted" in words
    assert "come in to 22 yd" in words
    assert "cut to length" in words


@pytest.mark.parametrize("name", ["demo", "dusk", "match"])
def test_one_shot_list_and_one_load(poppler, answers, name):
    load = made(answers[name])[1].load
    listed = ", ".join(f"{one.count} {one.name} {one.where}" for one in load.shot)
    words = poppler.words(sheet.pdf(answers[name]))
    assert f"as it is to show it takes {load.shot_g:.2f} g: {listed}." in words


def make_tip():
    from tipsight.inputs.case import Tip

    return Tip(Stock("solid", 3.0), 20.0, bands=(Band("black", 0, 20),))


def test_another_paper_is_refused(answers):
    with pytest.raises(Mistakes, match="paper: 'a5' will not do; say a4 or letter"):
        sheet.pdf(answers["demo"], "a5")


def test_letters_that_no_typeface_holds_are_told_apart():
    assert letters.printable("12½ mm") == "12½ mm"
    assert letters.printable("鮎") == "?"


def test_nothing_is_cut_for_what_is_done_at_the_bank(poppler, answers):
    bank = replace(answers["demo"], at_the_bench=None)
    words = poppler.words(sheet.pdf(bank))
    assert "What to do, at the bank" in words
    assert "Pen all that shows black and let 30 mm (1¼ in) show" in words
    assert made(bank)[0] == "bank"
    for piece in ("cut to length", "undercoat", "the piece to cut", "Dust: wear", "cut it"):
        assert piece not in words


def test_a_repaint_is_not_cut(poppler, answers):
    assert answers["match"].at_the_bench.kind == "repaint"
    words = poppler.words(sheet.pdf(answers["match"]))
    assert "tip to repaint at the bench" in words
    assert "white undercoat" in words
    for piece in ("cut to length", "glued square", "the piece to cut", "cut it to the whole"):
        assert piece not in words
    fitted = poppler.words(sheet.pdf(answers["demo"]))
    assert "cut to length" in fitted
    assert "the piece to cut" in fitted
