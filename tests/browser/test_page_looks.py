"""Every state of the page at every size and scheme: access, targets, contrast, and no sideways scroll.

Contrast of 7:1 is level AAA of WCAG 2.2 (criterion 1.4.6), targets of 44 px that of 2.5.5; the rest
is level AA as axe-core checks it. Set SHOTS to a folder to look at the pictures.
"""

import os
import re
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest

from tipsight.box import keeping, recorded
from tipsight.box.recorded import Reading
from webui import create_app

pytestmark = pytest.mark.browser
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RULES = {
    "resultTypes": ["violations"],  # the rest of what it finds is large, and nobody reads it
    "runOnly": {"type": "tag", "values": TAGS},
    "rules": {
        "color-contrast-enhanced": {"enabled": True},  # asks for all that the other does, and more
        "color-contrast": {"enabled": False},
    },
}
SIZES = {"small": (320, 568), "phone": (390, 844), "desk": (1280, 800)}
STATES = {
    "answer": "/",
    "mistake": "/?distance=frog&sky=cleer&temperature=900&showing=20&distnace=1",
    "nothing": "/?distance=60+yd&bites=shy",
    "changed": "/?distance=40+yd&showing=30+mm&diameter=3+mm&was_showing=20+mm&far=m",
    "asked": "/?distance=40+yd",
    "beside": "/?distance=40+yd&behind=dark&beside=distance%3D20%2Byd%26behind%3Ddark",
    "other": "/nowhere",
    "view": "/view?distance=40+yd&behind=dark;+bright&showing=20+mm&diameter=3+mm",
}
TARGETS = """els => els.map(e => [e.outerHTML.slice(0, 80), e.getBoundingClientRect()])
    .filter(([, r]) => r.width && (r.width < 44 || r.height < 43.5)).map(([html]) => html)"""
FLAT = (
    "els => els.filter(e => e.parentElement.offsetHeight && !e.offsetHeight).map(e => e.innerText)"
)
SMALL_TEXT = """() => [...document.querySelectorAll('body *')]
    .filter(e => e.childNodes.length && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
    .filter(e => e.checkVisibility() && parseFloat(getComputedStyle(e).fontSize) < 18)
    .map(e => e.outerHTML.slice(0, 80))"""


CONTRAST = "color-contrast-enhanced"
"""A slow rule; colours hang on the scheme and not on the size, so one size is enough for it, and
one scheme for all others."""
FOLDED_OUT = ("target-size", CONTRAST)
"""Rules that are slow on a long page; our own check of targets stands for the first."""


def shoot(page, name):
    if folder := os.environ.get("SHOTS"):
        page.screenshot(path=Path(folder) / f"{name}.png", full_page=True)


def passes(page, options):
    """Hold a page to rules of axe-core."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page, options=options).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]][:3]) for one in found] == []


def look(page, name, without=()):
    """Hold a page to what every page of ours must hold, whatever it shows."""
    shoot(page, name)
    rules = RULES["rules"] | {rule: {"enabled": False} for rule in without}
    passes(page, {**RULES, "rules": rules})
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "scrolls sideways"
    page.evaluate(
        "() => { for (const one of document.querySelectorAll('#rest details')) one.open = true }"
    )
    tapped = (
        "button, [type=range], select, summary, textarea, input:not([type]), "
        "a.tap, .taps a, .taps label, .name"
    )
    assert page.eval_on_selector_all(tapped, TARGETS) == []
    assert page.eval_on_selector_all(".taps > label", FLAT) == []
    assert page.evaluate(SMALL_TEXT) == []


@pytest.mark.parametrize("state", STATES)
def test_every_state_at_every_size(visit, state):
    page = visit(STATES[state], color_scheme="light")
    for name, (wide, high) in SIZES.items():
        page.set_viewport_size({"width": wide, "height": high})
        look(page, f"{state}-{name}-light", () if name == "phone" else (CONTRAST,))


@pytest.mark.parametrize("state", STATES)
def test_every_state_in_the_dark(visit, state):
    page = visit(STATES[state], color_scheme="dark")
    passes(page, {**RULES, "runOnly": {"type": "rule", "values": [CONTRAST]}})
    for name, (wide, high) in SIZES.items():
        page.set_viewport_size({"width": wide, "height": high})
        shoot(page, f"{state}-{name}-dark")
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), name


@pytest.mark.parametrize("state", ["answer", "mistake"])
def test_what_is_folded_holds_the_same(visit, state):
    page = visit(STATES[state], size=SIZES["small"])
    page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
    look(page, f"{state}-unfolded", FOLDED_OUT)


@pytest.mark.parametrize("state", ["answer", "mistake"])
def test_the_page_as_it_stands_without_its_script(visit, state):
    """Without script nothing can look at the page from inside; so its file is emptied instead."""
    page = visit("/nowhere")
    page.route("**/page.js*", lambda route: route.fulfill(body="", content_type="text/javascript"))
    page.goto(page.url.replace("/nowhere", STATES[state]))
    assert not page.evaluate("document.documentElement.classList.contains('live')")
    look(page, f"{state}-plain")


@pytest.mark.parametrize("state", ["answer", "mistake"])
def test_text_twice_as_large(visit, state):
    page = visit(STATES[state])
    page.evaluate("document.documentElement.style.fontSize = '225%'")
    look(page, f"{state}-twice")


def test_text_spaced_wide_loses_nothing(visit):
    """WCAG 2.2, criterion 1.4.12: line 1.5, paragraph 2, letter 0.12, word 0.16 em."""
    page = visit("/", size=(320, 568))
    page.evaluate("""document.querySelectorAll('body *').forEach(e => {
        e.style.lineHeight = '1.5'; e.style.letterSpacing = '.12em'; e.style.wordSpacing = '.16em' })""")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


BOXES = "els => els.map(e => e.getBoundingClientRect().toJSON())"


@pytest.mark.parametrize("size", SIZES)
def test_the_view_shows_all_of_every_panel(visit, size):
    """One under the other on a phone, the two tips of a water side by side at a desk; to one scale."""
    wide, high = SIZES[size]
    page = visit(STATES["view"], size=(wide, high))
    page.wait_for_load_state("networkidle")
    images = page.locator("main figure img")
    natural = images.evaluate_all("els => els.map(e => [e.naturalWidth, e.naturalHeight])")
    assert natural == [[430, 224], [130, 190]] * 4  # two tips, two waters
    boxes = images.evaluate_all(BOXES)
    assert all(box["left"] >= 0 and box["right"] <= wide for box in boxes)
    scale = boxes[0]["width"] / 430
    for (across, tall), box in zip(natural, boxes, strict=True):
        assert box["width"] == pytest.approx(across * scale, rel=0.005)
        assert box["height"] == pytest.approx(tall * scale, rel=0.005)
    assert scale == pytest.approx(min(1, (wide - 36) / 430), rel=0.005)  # margins of 1 rem
    figures = page.locator("figure.view").evaluate_all(BOXES)
    assert all(box["right"] <= wide for box in figures)
    beside = [a["top"] == b["top"] and a["right"] < b["left"] for a, b in pairwise(figures)]
    under = [a["bottom"] <= b["top"] and a["left"] == b["left"] for a, b in pairwise(figures)]
    if size == "desk":
        assert beside == [True, False, True]
    else:
        assert under == [True, True, True]
    ruler = page.locator(".ruler").bounding_box()
    assert ruler["width"] == pytest.approx(100 / 25.4 * 96 * scale, rel=0.005)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("state", ["view", "other"])
def test_pages_without_questions_have_one_column(visit, state, size):
    page = visit(STATES[state], size=SIZES[size])
    parts = page.locator("main > *").evaluate_all(BOXES)
    assert len(parts) >= 3
    assert {round(box["left"]) for box in parts} == {18}
    assert all(upper["bottom"] <= lower["top"] + 0.5 for upper, lower in pairwise(parts))
    assert parts[0]["top"] < 100


@pytest.mark.parametrize("path", ["/", "/?distance=40+yd"])
def test_the_first_screen_of_a_phone_has_the_answer_its_pictures_and_the_taps(visit, path):
    """390 by 844, the water told or not; what is folded is folded, and the page is short."""
    page = visit(path, unfolded=False)
    order = ["section.lead", ".pair svg", ".strips", ".quick"]
    boxes = [page.locator(one).first.bounding_box() for one in order]
    edges = [(box["y"], box["y"] + box["height"]) for box in boxes]
    assert all(upper[1] <= lower[0] + 1 for upper, lower in pairwise(edges))
    assert edges[0][0] >= 0
    assert edges[-1][1] <= 844
    rows = page.locator(".quick .seg").evaluate_all(BOXES)
    assert len(rows) == 4
    assert all(44 <= row["height"] < 60 for row in rows)  # each in one row
    assert page.evaluate("document.documentElement.scrollHeight") < 3500
    assert page.locator("details[open]").count() == 0
    heads = page.locator("#more summary").all_inner_texts()
    assert any(
        re.fullmatch(r"Rides well|Just rides|Does not ride this water", one) for one in heads
    )
    assert any(re.fullmatch(r".* sinks? it", one) for one in heads)
    assert any(re.fullmatch(r"\d\.\d\d g: .*", one) for one in heads)


def test_a_page_with_a_box_and_two_people_in_it_is_short_too(visit, serve, tmp_path):
    """The page as the command shows it; the longest sentences of a dozen questions come last."""
    with keeping.opened(tmp_path / "my.box", "write") as box:
        counts = {f"{n}": [far] for n, far in enumerate((17, 24, 32, 16, 22, 28), 1)}
        card = {"counts": counts, "pace_m": 0.85, "step": "measured", "ruler_mm": 100.0, "age": "60"}
        for whose in ("me", "Ada"):
            recorded.add(box, Reading("card", whose, date(2026, 10, 1), "1", card))
        dips = {"dips": 6.0, "minutes": 2.0, "question": {"behind": ["dark"]}}
        recorded.add(box, Reading("dips", "Mill run", date(2026, 10, 1), "1", dips))
    at = serve(create_app(box=tmp_path / "my.box"))
    for path in ("/", "/?distance=40+yd", "/?distance=60+yd&looks=glass&paint=black"):
        page = visit(path, at=at, unfolded=False)
        assert page.locator("form select[name=who], form select[name=water]").count() == 2
        assert page.locator("details[open]").count() == 0
        assert page.evaluate("document.documentElement.scrollHeight") < 3500


def test_on_a_wide_screen_answer_and_questions_stand_beside_each_other_and_scroll_alone(visit):
    page = visit("/", size=(1280, 800))
    left, right = page.locator(".side").evaluate_all(BOXES)
    assert left["right"] <= right["left"]
    assert left["bottom"] == right["bottom"] <= 800
    assert page.evaluate("document.documentElement.scrollHeight") == 800
    answer, quick = (page.locator(one).bounding_box() for one in ("#answer", ".quick"))
    assert answer["y"] > 0
    assert quick["y"] + quick["height"] < 800
    page.locator("form .bar").scroll_into_view_if_needed()
    page.locator(".side").nth(1).evaluate("e => e.scrollTo(0, 2000)")
    assert page.locator(".side").nth(1).evaluate("e => e.scrollTop") > 1000
    assert page.locator("#answer").bounding_box() == answer
    assert page.evaluate("scrollY") == 0


def test_paper_has_the_question_and_no_form(visit):
    page = visit("/?distance=30+yd&behind=dark", color_scheme="dark")
    page.emulate_media(media="print", color_scheme="light")
    assert not page.locator("form").is_visible()
    assert not page.locator(".quick").is_visible()
    assert page.get_by_text("This answer again").is_visible()
    assert "/?distance=30+yd&behind=dark" in page.locator(".link").inner_text()
    colours = page.evaluate(
        "['color', 'backgroundColor'].map(k => getComputedStyle(document.documentElement)[k])"
    )
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]


@pytest.mark.parametrize("path", ["/", "/?distance=60+yd&bites=shy"])
def test_the_answer_is_printed_on_one_page(visit, path):
    page = visit(path)
    pdf = page.pdf(format="A4")
    assert len(re.findall(rb"/Type\s*/Page\b", pdf)) == 1


@pytest.mark.parametrize("width", [320, 390])
def test_no_tap_breaks_its_word(visit, width):
    page = visit("/", size=(width, 700))
    lines = page.locator(".seg button").evaluate_all(
        "all => all.map(one => { const text = document.createRange(); text.selectNodeContents(one);"
        " return [one.textContent, text.getClientRects().length]; })"
    )
    assert lines == [[word, 1] for word, _ in lines]
