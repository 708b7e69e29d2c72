"""The page in use: taps, typing, keyboard, mistakes, no script, and the way back."""

import re
import time

import pytest
from flask import Flask, request

from webui import create_app

pytestmark = pytest.mark.browser


def test_four_taps_change_yards_sky_water_and_pace(visit, own_address, expect):
    page = visit(at=own_address)
    expect(page.locator(".swim")).to_contain_text("18 yd")
    taps = 0
    for role, name in (
        ("button", "25 yd"),
        ("button", "dull overcast"),
        ("button", "bright"),
        ("button", "brisk"),
    ):
        page.get_by_role(role, name=name, exact=True).first.click()
        taps += 1
    start = time.monotonic()
    expect(page.locator("#said")).to_have_attribute("data-title", re.compile("25 yd"))
    for told in ("distance=25", "sky=dull", "behind=bright", "pace=brisk"):
        expect(page).to_have_url(re.compile(told))
    expect(page.locator(".swim")).to_contain_text("25 yd (23 m), bright water behind the tip")
    assert taps == 4
    print(f"the answer stood {time.monotonic() - start:.2f} s after the fourth tap")  # noqa: T201


def test_the_answer_and_the_address_follow_the_typing(visit, expect):
    page = visit()
    field = page.get_by_role("textbox", name="How far is the end of the trot?")
    field.fill("22 yd")
    expect(page.locator(".swim")).to_contain_text("22 yd (20 m)")
    expect(field).to_be_focused()
    page.wait_for_url(re.compile("distance=22"))
    brief = page.locator("#brief").inner_text()
    assert brief == page.locator("#said").get_attribute("data-brief")
    assert page.title() == page.locator("#said").get_attribute("data-title")
    page.reload()
    expect(page.locator(".swim")).to_contain_text("22 yd (20 m)")
    expect(field).to_have_value("22 yd")


def test_what_was_unfolded_stays_so(visit, expect):
    page = visit()
    page.locator("summary", has_text="By distance").click()
    page.get_by_role("button", name="25 yd", exact=True).click()
    expect(page.locator(".swim")).to_contain_text("25 yd")
    expect(page.get_by_text("Tip in hand, bright water: ")).to_be_visible()
    assert page.locator("#rest details[open]").count() == 1


def test_the_way_back_leads_to_the_answer_before(visit, expect):
    page = visit("/?distance=40+yd")
    page.get_by_role("button", name="25 yd", exact=True).click()
    expect(page.locator(".swim")).to_contain_text("25 yd")
    page.go_back()
    expect(page.locator(".swim")).to_contain_text("40 yd")
    expect(page.get_by_role("textbox", name="How far is")).to_have_value("40 yd")


def test_half_typed_words_keep_the_last_answer(visit, expect):
    page = visit()
    field = page.get_by_role("textbox", name="How far is the end of the trot?")
    field.fill("2 furlongs")
    help = page.locator(".quick .wrong")
    expect(help).to_contain_text("'2 furlongs' will not do")
    expect(page.locator("#brief")).to_contain_text("'2 furlongs' will not do")
    assert field.get_attribute("aria-invalid") == "true"
    assert help.get_attribute("id") in field.get_attribute("aria-describedby").split()
    expect(page.locator(".swim")).to_contain_text("40 yd")
    assert page.locator("#answer.old").count() == 1
    assert "furlongs" not in page.url
    assert page.get_by_role("alert").count() == 0
    field.fill("20 yd")
    expect(page.locator(".swim")).to_contain_text("20 yd")
    assert page.locator("#answer.old, .wrong, [aria-invalid]").count() == 0
    assert field.get_attribute("aria-describedby") == "distance"


def test_replies_that_come_too_late_are_left_alone(visit, expect):
    page = visit()
    held = []
    page.route(
        re.compile("distance=2"),
        lambda r: held.append(r) if "=21" in r.request.url else r.continue_(),
    )
    field = page.get_by_role("textbox", name="How far is the end of the trot?")
    with page.expect_request(re.compile("distance=21")):
        field.fill("21 yd")
    field.fill("22 yd")
    expect(page.locator(".swim")).to_contain_text("22 yd")
    with page.expect_response(re.compile("distance=21")):
        held[0].continue_()
    page.wait_for_timeout(300)
    expect(page.locator(".swim")).to_contain_text("22 yd")
    assert "distance=22" in page.url


def test_without_script_a_tap_and_the_button_do_the_same(visit, expect):
    page = visit(java_script_enabled=False)
    page.get_by_role("button", name="25 yd", exact=True).click()
    expect(page.locator(".swim")).to_contain_text("25 yd (23 m)")
    expect(page.locator("#changed-h")).to_be_visible()
    expect(page.get_by_role("status").first).to_contain_text("level ")
    page.locator("summary", has_text="The light:").click()
    page.get_by_role("radio", name="hazy").check()
    page.get_by_role("textbox", name="How far is").fill("21")
    page.get_by_role("button", name="Work it out").first.click()
    expect(page.locator(".swim")).to_contain_text("21 yd (19 m)")
    expect(page.locator("[name=sky][value=hazy]")).to_be_checked()
    page.get_by_role("textbox", name="How far is").fill("frog")
    page.get_by_role("textbox", name="How far is").press("Enter")
    expect(page.get_by_role("heading", name="One thing to mend")).to_be_visible()
    expect(page.get_by_role("textbox", name="How far is")).to_have_value("frog")


@pytest.mark.parametrize("script", [True, False])
def test_enter_in_a_field_asks_and_takes_no_change(visit, expect, script):
    page = visit("/?distance=40+yd&behind=bright&showing=20+mm", java_script_enabled=script)
    assert not page.locator("button[form][hidden]").is_visible()
    assert page.locator("[aria-label^='Take it']").count() > 0
    field = page.get_by_role("textbox", name="How far is")
    field.fill("33 yd")
    field.press("Enter")
    expect(page).to_have_url(re.compile(r"\?distance=33\+yd&behind=bright&showing=20\+mm$"))
    expect(page.locator(".swim")).to_contain_text("33 yd (30 m)")


def test_what_was_typed_since_goes_with_the_switch_of_units_and_onto_paper(visit, expect):
    page = visit("/?distance=40+yd&behind=dark")
    page.get_by_role("textbox", name="How far is").fill("25")
    expect(page.locator(".swim")).to_contain_text("25 yd")
    page.locator("summary", has_text="Share, copy").click()
    page.get_by_role("button", name="View from the bank").click()
    expect(page.get_by_role("heading", name="View from the bank")).to_be_visible()
    assert "distance=25" in page.url
    page.go_back()
    page.locator("summary", has_text="Units").click()
    page.get_by_role("button", name="Distances in metres").click()
    expect(page).to_have_url(re.compile(r"\?distance=25\+yd&behind=dark&far=m$"))
    expect(page.locator(".swim")).to_contain_text("23 m")


def test_a_mistake_is_met_first_and_leads_to_its_field(visit, expect):
    page = visit("/?distance=frog&age=60&temperature=900")
    summary = page.get_by_role("alert")
    expect(summary).to_be_focused()
    expect(summary).to_contain_text("Two things to mend")
    assert page.title().startswith("Two things to mend")
    to_answer = page.locator(".bar").get_by_text("To the answer")
    assert not to_answer.is_visible()
    summary.get_by_role("link", name=re.compile("How warm is the water")).click()
    expect(page.get_by_role("textbox", name="How warm is the water")).to_be_focused()
    expect(page.get_by_role("textbox", name="How warm is the water")).to_have_value("900")
    summary.get_by_role("link", name=re.compile("How far")).click()
    field = page.get_by_role("textbox", name="How far is")
    expect(field).to_be_focused()
    described = field.get_attribute("aria-describedby").split()
    assert "'frog' will not do" in page.locator(f"#{described[-1]}").inner_text()
    field.fill("30 yd")
    page.get_by_role("textbox", name="How warm is the water").fill("10 C")
    expect(page.locator(".swim")).to_contain_text("30 yd")
    assert page.locator("[aria-invalid], .wrong, #mend").count() == 0
    assert to_answer.is_visible()


def test_the_keyboard_alone_is_enough(visit, expect):
    page = visit("/?distance=40+yd")
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.name") == "distance":
            break
    page.keyboard.press("Control+A")
    page.keyboard.type("23")
    page.keyboard.press("Enter")
    expect(page.locator(".swim")).to_contain_text("23 yd (21 m)")
    for _ in range(120):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.name") == "sky":
            break
        hidden = page.evaluate("""() => { const r = document.activeElement.getBoundingClientRect();
            const bar = document.querySelector('.bar').getBoundingClientRect();
            const inside = document.activeElement.closest('.bar');
            return !inside && r.height && (r.top >= bar.top || r.bottom <= 0) }""")
        assert not hidden, "the focus is hidden"
    page.keyboard.press("ArrowDown")
    expect(page).to_have_url(re.compile("sky="))


def test_each_point_of_the_drawing_is_reached_and_told(visit, expect):
    page = visit()
    page.locator("summary", has_text="Seen against sunk").click()
    points = page.locator("#more svg a")
    assert points.count() > 8
    points.first.focus()
    fill = "one => getComputedStyle(one).fill"
    assert points.first.locator("text").evaluate(fill) != "none"
    assert points.nth(1).locator("text").evaluate(fill) == "none"
    expect(page.get_by_role("link", name=re.compile("advised: .*sinks at")).first).to_be_visible()
    rows = page.get_by_role("region", name="Seen against sunk, in numbers").locator("tbody tr")
    assert rows.count() == points.count()
    told = points.first.locator("text").text_content()
    page.keyboard.press("Enter")
    row = page.locator("tr:target")
    thick, _, length = told.partition(":")[0].partition(" by ")
    expect(row).to_contain_text(thick)
    expect(row).to_contain_text(length.partition(",")[0])


def test_a_what_if_says_what_changed(visit, expect):
    page = visit()
    page.locator("summary", has_text="What if").click()
    page.get_by_role("link", name="Show 10 mm more").click()
    table = page.get_by_role("table", name="Before and after")
    expect(table).to_contain_text("20 mm")
    expect(table).to_contain_text("30 mm")


def test_a_tap_says_what_it_changed_and_is_told_as_pressed(visit, expect):
    page = visit("/?distance=40+yd&behind=bright", unfolded=False)
    dark = page.get_by_role("group", name="What does the water").get_by_role("button", name="dark")
    expect(dark).to_have_attribute("aria-pressed", "false")
    dark.click()
    expect(page.locator("#change")).to_have_text(
        re.compile(r"^level [\d.]+ to [\d.]+; now kept in view$")
    )
    expect(page.get_by_role("button", name="dark", pressed=True)).to_have_count(1)
    dark.click()  # and taken back: both answers are shown again
    expect(page.locator("#now-h")).to_have_text("Is the water behind the tip dark or bright?")
    expect(page).to_have_url(re.compile(r"\?distance=40\+yd$"))


def test_the_distance_is_dragged(visit, expect):
    page = visit("/?distance=40+yd&behind=dark", unfolded=False)
    drag = page.get_by_role("slider", name="Drag to the end of the trot")
    box = drag.bounding_box()
    assert drag.input_value() == "40"
    middle = box["y"] + box["height"] / 2
    page.mouse.move(box["x"] + 0.6 * box["width"], middle)
    page.mouse.down()
    page.mouse.move(box["x"] + 0.3 * box["width"], middle, steps=4)
    page.mouse.up()
    yards = int(drag.input_value())
    assert 23 <= yards <= 27  # three tenths of the way from 10 to 60
    expect(page).to_have_url(re.compile(rf"distance={yards}\+yd"))
    expect(page.get_by_role("textbox", name="How far")).to_have_value(f"{yards} yd")
    expect(page.get_by_role("img", name=f"the trot ends at {yards} yd").first).to_be_visible()
    drag.press("ArrowRight")
    expect(page).to_have_url(re.compile(rf"distance={yards + 1}\+yd"))


@pytest.mark.parametrize("script", [True, False])
def test_an_answer_is_kept_beside_the_next(visit, expect, script):
    page = visit("/?distance=40+yd&behind=dark", unfolded=False, java_script_enabled=script)
    page.locator("summary", has_text="What if").click()
    page.get_by_role("button", name="Keep this to compare").click()
    page.get_by_role("button", name="25 yd", exact=True).click()
    table = page.get_by_role("region", name="Kept beside this").get_by_role("table")
    expect(table.get_by_role("row", name="Swim 40 yd, dark 25 yd, dark")).to_be_visible()
    page.get_by_role("button", name="Keep it no longer").click()
    expect(page.locator(".beside")).to_have_count(0)
    page.locator("summary", has_text="What if").click()
    page.get_by_role("link", name="This beside white").click()
    row = table.get_by_role("row", name="Tip in hand")
    expect(row).to_contain_text(re.compile("fluorescent orange.*white"))


def test_an_answer_is_shared_and_copied_with_its_link(visit, expect):
    page = visit(unfolded=False)
    page.add_init_script(
        "navigator.share = (told) => { window.told = told; return Promise.resolve() }"
    )
    page.add_init_script("""Object.defineProperty(navigator, 'clipboard',
        { value: { writeText: (text) => { window.copied = text; return Promise.resolve() } } })""")
    page.goto(page.url + "?distance=30+yd&behind=bright")
    page.locator("summary", has_text="Share, copy").click()
    page.get_by_role("button", name="Share").click()
    told = page.evaluate("window.told")
    assert told["url"] == page.url
    assert told["text"].startswith("30 yd (27 m): ")
    page.get_by_role("button", name="Copy").click()
    expect(page.get_by_role("button", name="Copied")).to_be_visible()
    assert page.evaluate("window.copied") == f"{told['text']}\n{page.url}"


def test_other_hosts_and_other_sites_are_refused(chromium, address):
    context = chromium.new_context()
    assert context.request.get(address, headers={"Host": "evil.example"}).status == 400
    assert context.request.post(address, headers={"Sec-Fetch-Site": "cross-site"}).status == 403
    context.close()


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost"])  # the same site, and another one
def test_a_page_elsewhere_can_link_to_an_answer_but_fetch_none(chromium, serve, name):
    ours, other, replies = create_app(), Flask("other"), {}

    @ours.after_request
    def note(reply):
        replies.setdefault(request.full_path.rstrip("?"), set()).add(reply.status_code)
        return reply

    address = serve(ours)
    paths = ("/view.png", "/sheet.pdf", "/advise.json", "/?distance=30+yd")
    shown = "".join(f'<img src="{address}{path}">' for path in paths)
    shown += f'<iframe src="{address}/"></iframe><script src="{address}/static/page.js"></script>'
    shown += f'<a href="{address}/?distance=31+yd">An answer</a>'
    other.add_url_rule("/", "page", lambda: shown)
    context = chromium.new_context()
    page = context.new_page()
    page.goto(serve(other).replace("127.0.0.1", name))
    page.evaluate(
        "at => fetch(at + '/advise.json?eye=sat', { mode: 'no-cors' }).catch(() => 0)", address
    )
    page.wait_for_load_state("networkidle")
    asked = (*paths, "/", "/static/page.js", "/advise.json?eye=sat")
    assert replies == {path: {403} for path in asked}
    page.get_by_role("link", name="An answer").click()
    page.wait_for_url(f"{address}/?distance=31+yd")
    assert "31 yd" in page.locator(".swim").inner_text()
    context.close()
