"""What stays in its place: the bar at the foot of the screen, and the control under the finger."""

import re
from itertools import product

import pytest
from browser_pages import UNFOLD

pytestmark = pytest.mark.browser
SCREENS = [(320, 568), (390, 844), (844, 390), (1280, 800)]
LARGER = [1.0, 1.25, 1.5, 1.75, 2.0, 2.25]
BAR = """() => {
    const bar = document.querySelector('.bar'), box = bar.getBoundingClientRect();
    const parts = [...bar.children].filter(e => e.checkVisibility()).map(e => e.getBoundingClientRect());
    const middles = parts.map(r => (r.top + r.bottom) / 2);
    const told = bar.querySelector('p'), line = parseFloat(getComputedStyle(told).lineHeight);
    return {
        stuck: getComputedStyle(bar).position === 'sticky', bottom: box.bottom, high: box.height,
        seen: innerHeight, parts: parts.length, lines: Math.round(told.clientHeight / line),
        apart: Math.max(...middles) - Math.min(...middles),
        within: parts.every(r => r.left >= box.left - .5 && r.right <= box.right + .5),
        cut: [...bar.querySelectorAll('button, a')].filter(e => e.scrollWidth > e.clientWidth).length,
        sideways: document.documentElement.scrollWidth > innerWidth,
    } }"""


def enlarged(page, size, how, times):
    """Show a page with all, or its text alone, so many times larger."""
    wide, high = size
    zoomed = times if how == "zoom" else 1.0  # as a browser does it: the same screen has fewer CSS pixels
    page.set_viewport_size({"width": round(wide / zoomed), "height": round(high / zoomed)})
    page.evaluate(f"document.documentElement.style.fontSize = '{112.5 * times / zoomed}%'")
    page.evaluate("document.querySelector('[name=sky]').scrollIntoView({ block: 'center' })")


@pytest.mark.parametrize("script", ["live", "plain"])
@pytest.mark.parametrize("size", SCREENS)
def test_the_bar_is_one_line_and_no_more_than_a_quarter_of_the_screen(visit, size, script):
    page = visit("/nowhere", size=size)
    if script == "plain":
        page.route("**/page.js*", lambda r: r.fulfill(body="", content_type="text/javascript"))
    page.goto(page.url.replace("/nowhere", "/?distance=40+yd&behind=bright&showing=20+mm"))
    page.evaluate(UNFOLD)
    for how, times in product(("zoom", "root"), LARGER):
        enlarged(page, size, how, times)
        bar = page.evaluate(BAR)
        # without script the button alone stays where both are too much
        assert bar["parts"] == 2 or (script == "plain" and bar["parts"] == 1), (how, times, bar)
        assert bar["apart"] <= 1, (how, times, bar)
        assert bar["lines"] == (script == "live"), (how, times, bar)
        assert bar["within"], (how, times, bar)
        assert not bar["cut"], (how, times, bar)
        assert not bar["sideways"], (how, times, bar)
        if bar["stuck"]:
            assert bar["high"] <= bar["seen"] / 4, (how, times, bar)
            assert bar["bottom"] == pytest.approx(bar["seen"], abs=1), (how, times, bar)
        # only where less than fourteen lines of text are to be seen it lets go
        assert bar["stuck"] or bar["seen"] < 250, (how, times, bar)


def test_what_the_bar_says_of_half_typed_words_is_one_line_too(visit):
    from playwright.sync_api import expect

    page = visit("/?distance=40+yd", size=(320, 568))
    page.get_by_role("textbox", name="How far is").fill("2 furlongs")
    expect(page.locator("#brief")).to_contain_text("'2 furlongs' will not do")
    bar = page.evaluate(BAR)
    assert (bar["lines"], bar["high"] <= 568 / 8) == (1, True)


LENGTHS = [0, 14, 3, 40, 1]
"""Paragraphs put before the answer, one after the other: it grows and shrinks."""


@pytest.fixture
def growing(visit):
    """Open a page whose answer has another length each time; with Chromium's scroll anchoring or none."""

    def open_page(path, anchoring, **options):
        page = visit(path, **options)
        lengths = iter(LENGTHS * 3)
        if anchoring == "no":
            page.add_style_tag(content="* { overflow-anchor: none !important }")

        def lengthen(route):
            if "x-fragment" not in route.request.headers:
                route.continue_()
                return
            reply = route.fetch()
            more = "<p>One line more.</p>" * next(lengths)
            body = reply.text().replace(
                '<div class="pictures">', more + '<div class="pictures">', 1
            )
            route.fulfill(response=reply, body=body)

        page.route("**/?*", lengthen)
        return page

    return open_page


def top_of(control):
    return control.evaluate("e => e.getBoundingClientRect().top")


@pytest.mark.parametrize(
    ("size", "anchoring"),
    [((390, 844), "as it is"), ((1280, 800), "as it is"), ((1280, 800), "no")],  # a narrow page has none
)
def test_a_tapped_control_stays_where_it_was(growing, size, anchoring):
    from playwright.sync_api import expect

    page = growing("/?distance=40+yd", anchoring, size=size, bypass_csp=True)
    highs = []
    for role, name, told in (
        ("button", "25 yd", "distance=25"),
        ("button", "60 yd", "distance=60"),
        ("radio", "dull overcast", "sky=dull"),
        ("button", "bright", "behind=bright"),
        ("button", "dark", "behind=dark"),
        ("button", "ripple", "looks=ripple"),
        ("radio", "shy", "bites=shy"),
    ):
        control = page.get_by_role(role, name=name, exact=True).first
        control.scroll_into_view_if_needed()
        page.mouse.wheel(0, 37)  # not where it was put
        page.wait_for_timeout(100)
        control.scroll_into_view_if_needed()
        before = top_of(control)
        control.click()
        expect(page).to_have_url(re.compile(told))
        assert top_of(control) == pytest.approx(before, abs=0.5), name
        page.wait_for_timeout(100)
        assert top_of(control) == pytest.approx(before, abs=0.5), name
        highs.append(page.locator("#answer").evaluate("e => e.offsetHeight"))
    assert max(highs) - min(highs) > 600


@pytest.mark.parametrize("anchoring", ["no", "as it is"])
def test_a_field_stays_where_it_was_while_its_mistake_goes(growing, anchoring):
    from playwright.sync_api import expect

    page = growing("/?distance=40+yd&temperature=900&depth=frog", anchoring, bypass_csp=True)
    page.get_by_role("textbox", name="How deep").fill("7 ft")
    expect(page.locator(".wrong")).to_have_count(1)  # its own mistake has gone, and the page is still
    page.wait_for_timeout(300)
    field = page.get_by_role("textbox", name="How warm is the water")
    field.scroll_into_view_if_needed()
    before = top_of(field)
    field.fill("12 C")
    expect(page).to_have_url(re.compile("temperature=12"))
    assert page.locator("#mend, .wrong").count() == 0
    assert top_of(field) == pytest.approx(before, abs=0.5)


def test_pressing_moves_no_control_of_its_row(visit):
    page = visit("/?distance=40+yd", size=(390, 844))
    boxes = "els => els.map(e => e.getBoundingClientRect().toJSON())"
    rows = page.locator("form .taps button, .taps label, .seg button")
    page.evaluate("scrollTo(0, document.querySelector('form').offsetTop)")
    before = rows.evaluate_all(boxes)
    page.evaluate("""() => { for (const one of document.querySelectorAll('.taps button, .seg button'))
        one.ariaPressed = 'true' }""")
    assert rows.evaluate_all(boxes) == before
