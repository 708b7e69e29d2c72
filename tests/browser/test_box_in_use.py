"""A box of floats on a phone: put in, found, changed, dropped and brought back; axe has nothing to say."""

import pytest

from webui import create_app

pytestmark = pytest.mark.browser
LINES = (
    "quill avon, 6BB, 3 mm quill 20 mm fluorescent orange, twelve of them, in tray 1",
    "bolo type, 4 g, 3 mm solid 30 mm black",
)


@pytest.mark.parametrize("script", [True, False])
def test_a_float_from_put_in_to_brought_back(visit, serve, tmp_path, script):
    from axe_playwright_python.sync_playwright import Axe
    from playwright.sync_api import expect

    at = serve(create_app(box=tmp_path / "my.box"))
    page = visit("/", at=at, java_script_enabled=script, unfolded=False)
    page.get_by_text("floats, eyes, day").click()
    page.get_by_role("link", name="Your floats").click()
    for line in LINES:
        page.get_by_role("textbox", name="Put one in").fill(line)
        page.get_by_role("button", name="Put it in").click()
    expect(page.get_by_role("status")).to_contain_text("Put in: 2, bolo type")
    page.get_by_role("textbox", name="Words").fill("tray avon")
    page.get_by_role("button", name="Look").click()
    expect(page.get_by_role("heading", name="1 found")).to_be_visible()
    page.get_by_text("1: quill avon").click()
    page.get_by_role("textbox", name="What is other than it was").fill("paint blue smoke")
    page.get_by_role("button", name="Change it").click()
    expect(page.locator("p.wrong")).to_contain_text("'blue smoke': say paints")
    changed = page.get_by_role("textbox", name="What is other than it was")
    expect(changed).to_have_value("paint blue smoke")
    changed.fill("paint black, eleven of them")
    page.get_by_role("button", name="Change it").click()
    expect(page.get_by_role("status")).to_contain_text("Changed: 1, quill avon, 6BB, 3 mm quill")
    expect(page.get_by_role("textbox", name="Words")).to_have_value("tray avon")
    page.locator("summary", has_text="1: quill avon").click()
    if script:
        rules = {"color-contrast-enhanced": {"enabled": True}}
        options = {"rules": rules, "resultTypes": ["violations"]}
        assert Axe().run(page, options=options).response["violations"] == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth") if script else True
    page.get_by_role("button", name="Drop it").click()
    expect(page.get_by_role("status")).to_contain_text("Dropped: 1, quill avon")
    page.get_by_role("status").get_by_role("button", name="Bring it back").click()
    expect(page.get_by_role("status")).to_contain_text("Brought back: 1, quill avon")
    page.locator("summary", has_text="1: quill avon").click()
    page.get_by_role("link", name="Ask with this float").click()
    expect(page.locator("#answer")).to_contain_text("black")
