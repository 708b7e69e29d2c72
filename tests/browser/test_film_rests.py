"""The film on the page: a still until it is tapped and drawn, never there for those who want no motion."""

import threading

import pytest

from tipsight.pictures import film
from webui import drawer

pytestmark = pytest.mark.browser
PATH = "/view?distance=43+yd&behind=dark"


@pytest.fixture
def asked(monkeypatch):
    drawn = []
    monkeypatch.setattr(film, "webp", lambda answer: drawn.append(answer) or b"film")
    return drawn


def test_nothing_is_drawn_before_a_tap(visit, asked):
    page = visit(PATH)
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_load_state("networkidle")
    assert not asked
    page.locator(".moving summary").click()
    page.wait_for_selector(".moving img[src^='/view.webp']")
    assert len(asked) == 1


@pytest.mark.parametrize("opened", [False, True])
def test_nothing_moves_for_those_who_want_no_motion(visit, asked, opened):
    page = visit(PATH.replace("43", "42"))
    if opened:
        page.locator(".moving summary").click()
        page.wait_for_selector(".moving img[src^='/view.webp']")
    page.emulate_media(reduced_motion="reduce")
    assert not page.locator(".moving").is_visible()
    assert not page.locator("img[src^='/view.webp']").is_visible()
    assert len(asked) == opened


def test_the_still_stands_and_says_being_drawn_until_the_film_is_there(visit, expect, monkeypatch):
    go = threading.Event()
    monkeypatch.setattr(drawer, "AT_ONCE_S", 0.0)
    monkeypatch.setattr(film, "webp", lambda answer: go.wait(30.0) and b"film")
    page = visit("/view?distance=44+yd&behind=dark")
    page.locator(".moving summary").click()
    said, shown = page.locator(".moving [role=status]"), page.locator(".moving img")
    expect(said).to_have_text("The film is being drawn.")
    assert shown.get_attribute("src").startswith("/view-0.png?")
    go.set()
    expect(said).to_have_text("")
    assert shown.get_attribute("src").startswith("/view.webp?")
    assert shown.get_attribute("alt").startswith("Computed film of both tips at 44 yd")
