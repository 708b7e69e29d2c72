"""True size on the page: a card is laid once, the tips come as large as they are, and it is kept."""

import pytest

pytestmark = pytest.mark.browser
PATH = "/view?distance=40+yd&behind=bright&showing=20+mm&diameter=3+mm"
WIDTHS = "els => els.map(e => [e.naturalWidth, e.clientWidth])"


def laid(page, card):
    page.locator(".card summary").click()
    page.get_by_role("textbox", name="How many pixels long").fill(card)
    page.get_by_role("button", name="Draw at true size").click()
    page.wait_for_load_state("networkidle")


def test_a_card_laid_once_gives_true_size_for_good(visit):
    """A phone of 390 px and three pixels to each, 18 to the mm: 9.1 mm wide is 164 of its pixels, 55
    of the page's; the panel, 353 of those, is 6.5 times as large."""
    page = visit(PATH, size=(390, 844), device_scale_factor=3)
    assert page.locator(".true").count() == 0
    assert "on a desk's screen" in page.locator("figcaption").first.inner_text()
    laid(page, "1542")
    assert "card=1542" in page.url
    assert page.locator(".true img").evaluate_all(WIDTHS) == [[164, 55], [164, 55]]
    assert "drawn about 6.5 times too large" in page.locator("figcaption").first.inner_text()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.goto(page.url.split("/view")[0] + PATH.replace("40", "30"))  # without the card in the link
    page.wait_for_url("**card=1542")
    page.wait_for_load_state("networkidle")
    assert page.locator(".true img").count() == 2
    laid(page, "")
    assert page.evaluate("localStorage.length") == 0
    assert page.locator(".true").count() == 0


def test_the_outline_follows_the_hand_and_tells_the_pixels(visit):
    """Upright on a phone; a card of 500 px of the page is 1500 of the screen's, 315 wide."""
    page = visit(PATH, size=(390, 844), device_scale_factor=3)
    page.locator(".card summary").click()
    outline, grip = page.locator(".outline"), page.locator(".outline span")
    outline.scroll_into_view_if_needed()
    page.evaluate("scrollBy(0, 300)")
    box, end = outline.bounding_box(), grip.bounding_box()
    page.mouse.move(end["x"] + 20, end["y"] + 20)
    page.mouse.down()
    page.mouse.move(end["x"] + 20, box["y"] + 500)
    page.mouse.up()
    assert abs(float(page.locator("#card").input_value()) - 1500) <= 3
    assert outline.bounding_box()["height"] == pytest.approx(500, abs=1)
    assert outline.bounding_box()["width"] == pytest.approx(500 * 53.98 / 85.60, abs=1)
    page.get_by_role("slider", name="The outline's length").focus()
    page.keyboard.press("ArrowRight")
    assert abs(float(page.locator("#card").input_value()) - 1503) <= 3
    page.locator("#card").fill("900")
    assert outline.bounding_box()["height"] == pytest.approx(300, abs=1)


def test_at_a_desk_the_outline_lies_and_a_wrong_number_is_told(visit):
    page = visit(PATH, size=(1280, 800))
    laid(page, "20")
    assert "width of a bank card must be" in page.locator("#card-m").inner_text()
    box = page.locator(".outline").bounding_box()
    assert box["width"] / box["height"] == pytest.approx(85.60 / 53.98, rel=0.01)
    assert page.evaluate("localStorage.length") == 0
