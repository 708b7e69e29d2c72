"""A fence card told on a phone, where a tip went by one tap and undone; axe has nothing to say."""

import pytest

from tipsight.inputs.question import Question
from webui import create_app

pytestmark = pytest.mark.browser
PACES = (17, 24, 11, 16, 22, 28)


@pytest.mark.parametrize("script", [True, False])
def test_a_card_then_it_went_here_then_undone(visit, serve, tmp_path, script):
    from axe_playwright_python.sync_playwright import Axe
    from playwright.sync_api import expect

    def holds():
        if script:
            rules = {"color-contrast-enhanced": {"enabled": True}}
            options = {"rules": rules, "resultTypes": ["violations"]}
            assert Axe().run(page, options=options).response["violations"] == []
            assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")

    swim = Question(distance="34 yd", behind="bright", looks="fur")
    at = serve(create_app(swim, box=tmp_path / "my.box"))
    page = visit("/", at=at, size=(320, 720), java_script_enabled=script, unfolded=False)
    page.get_by_text("floats, eyes, day").click()
    page.get_by_role("link", name="Your eyes").click()
    page.get_by_role("textbox", name="How long is one of your paces").fill("frog")
    out = page.get_by_role("group", name="Where each bar went")
    for n, paces in enumerate(PACES, 1):
        out.get_by_role("textbox", name=f"Bar {n}").fill(f"{paces}")
    page.get_by_role("button", name="Keep the card").click()
    pace = page.get_by_role("textbox", name="How long is one of your paces")
    expect(pace).to_have_attribute("aria-invalid", "true")
    expect(out.get_by_role("textbox", name="Bar 3")).to_have_value("11")
    holds()
    pace.fill("0.85 m")
    page.get_by_role("button", name="Keep the card").click()
    expect(page.get_by_role("status")).to_contain_text("enough to say of your eyes: 0.")
    expect(page.locator("main")).to_contain_text("Bar 3 lies far from the rest")
    expect(page.locator(".bars svg")).to_be_visible()
    holds()
    page.get_by_role("link", name="To the answer").click()
    expect(page.locator("#more")).to_contain_text("your eyes 0.")
    page.get_by_text("floats, eyes, day").click()
    page.get_by_role("button", name="It went here").click()
    expect(page.get_by_role("status")).to_contain_text("went at 34 yd. Your eyes")
    expect(page.locator(".known")).to_contain_text("from 6 bars and 1 note")
    holds()
    page.get_by_role("button", name="Undo it").click()
    expect(page.get_by_role("status")).to_contain_text("Left out")
    expect(page.locator(".known")).to_contain_text("from 6 bars;")
    page.get_by_role("button", name="Bring it back").first.click()
    expect(page.locator(".known")).to_contain_text("from 6 bars and 1 note")


def test_the_day_is_drawn_from_the_question_of_the_page(visit, serve):
    from axe_playwright_python.sync_playwright import Axe
    from playwright.sync_api import expect

    at = serve(create_app(Question(distance="34 yd", behind="bright", sky="clear")))
    page = visit("/", at=at, size=(320, 720), unfolded=False)
    page.get_by_role("link", name="The day").click()
    told = {"Which day": "2026-10-15 UTC", "Where on earth": "52.1 N 1.5 W", "Which way": "up",
            "From when": "12:00", "Until when": "12:30"}  # fmt: skip
    for name, typed in told.items():
        page.get_by_role("textbox", name=name).fill(typed)
    page.get_by_role("button", name="Show the day").click()
    expect(page.get_by_role("textbox", name="Which way")).to_have_attribute("aria-invalid", "true")
    page.get_by_role("textbox", name="Which way").fill("SW")
    page.get_by_role("button", name="Show the day").click()
    expect(page.get_by_role("region", name="The day by the hour").locator("svg")).to_be_visible()
    expect(page.locator("main")).to_contain_text("looking SW; the sun is up all the while")
    options = {"rules": {"color-contrast-enhanced": {"enabled": True}}, "resultTypes": ["violations"]}
    assert Axe().run(page, options=options).response["violations"] == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
