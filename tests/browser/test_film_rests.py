"""The film on the page: still until it is tapped, and never there for those who want no motion."""

import pytest

from tipsight.pictures import film

pytestmark = pytest.mark.browser


@pytest.fixture
def asked(monkeypatch):
    drawn = []
    monkeypatch.setattr(film, "webp", lambda answer: drawn.append(answer) or b"film")
    return drawn


@pytest.mark.parametrize("motion", ["no-preference", "reduce"])
def test_nothing_moves_before_a_tap(visit, asked, motion):
    page = visit("/view?distance=43+yd&behind=dark", size=(390, 844))
    page.emulate_media(reduced_motion=motion)
    page.reload()
    page.wait_for_load_state("networkidle")
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_load_state("networkidle")
    assert not asked
    tap = page.locator(".moving summary")
    if motion == "reduce":
        assert not tap.is_visible()
        return
    with page.expect_response("**/view.webp*"):
        tap.click()
    assert len(asked) == 1
