"""The pocket file in Chromium: from a disc, without a network, on the narrowest phone."""

import shlex

import pytest

from tipsight.box import keeping, recorded
from tipsight.cli import main
from tipsight.inputs import demo
from tipsight.inputs.items import ITEMS
from tipsight.inputs.options import as_said
from tipsight.paper import pocket
from tipsight.paper.cells import RIPPLES, SKIES, WATERS, YARDS, Cell

pytestmark = pytest.mark.browser
CELLS = {
    (s, r, y, w): Cell(float(n), "kept in view", pen=True, off=((f"No {n % 13}", 1),))
    for n, (s, r, y, w) in enumerate(
        (s, r, y, w) for s in SKIES for r in RIPPLES for y in YARDS for w in WATERS
    )
}


@pytest.fixture
def opened(chromium, tmp_path):
    """Open the file in flight mode; no request may be made and no error may be told."""
    file = tmp_path / "float.html"
    file.write_text(pocket.page(demo.question(), CELLS), encoding="utf-8")
    contexts, asked, problems = [], [], []

    def open_file(**options):
        context = chromium.new_context(
            viewport={"width": 320, "height": 640}, offline=True, **options
        )
        contexts.append(context)
        page = context.new_page()
        page.on("request", lambda request: asked.append(request.url))
        page.on("pageerror", lambda error: problems.append(str(error)))
        page.on(
            "console", lambda said: problems.append(said.text) if said.type == "error" else None
        )
        page.goto(file.as_uri())
        return page

    yield open_file
    for context in contexts:
        context.close()
    assert {url for url in asked if not url.startswith(("file:", "data:"))} == set()
    assert problems == []


def axe(page):
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page).response["violations"]
    return [(one["id"], [node["html"] for node in one["nodes"]][:2]) for one in found]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_four_taps_give_the_cell(opened, scheme):
    page = opened(color_scheme=scheme)
    for words in ("25", "broken", "glass", "hazy"):
        page.get_by_text(words, exact=True).first.click()
    one = CELLS["hazy", "glass", 25, "broken"]
    now = page.get_by_role("status").inner_text()
    assert one.show in now
    assert one.shot in now
    assert one.grade in now
    assert axe(page) == []


def test_the_line_to_type_in_later_keeps_the_note_of_the_shown_swim(opened, tmp_path, monkeypatch):
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "my.box"))
    page = opened()
    for words in ("25", "broken", "glass", "hazy"):
        page.get_by_text(words, exact=True).first.click()
    page.get_by_text("Where did it go?").click()
    page.get_by_text("not seen", exact=True).first.click()
    line = page.locator("#line").input_value()
    assert axe(page) == []
    page.get_by_role("button", name="Copy").click()
    page.get_by_role("button", name="Copied").wait_for()
    program, *rest = shlex.split(line)
    assert (program, main(rest)) == ("tipsight", 0)
    with keeping.opened(tmp_path / "my.box") as box:
        (note,) = recorded.listed(box)
    assert (note.kind, note.told["saw"], note.told["range_m"]) == ("note", "not seen", 25 * 0.9144)
    want = {**demo.question().told(), "distance": "25 yd", "looks": "glass", "sky": "hazy"}
    kept = {key: value for key, value in note.told["question"].items() if key != "behind"}
    assert kept == {key: value for key, value in typed_of(want).items() if key != "behind"}
    assert list(note.told["question"]["behind"]) == ["broken"]


def typed_of(told):
    """Return a question as the command would have it typed."""
    return {
        key: said[0] if len(said) == 1 and not ITEMS[key].repeats else list(said)
        for key, value in told.items()
        for said in [as_said(ITEMS[key], value)]
    }


def test_every_cell_can_be_tapped_to(opened):
    page = opened()
    found = page.evaluate(
        """() => {
          const form = document.querySelector('form'), now = document.querySelector('#now');
          const all = [];
          for (let s = 0; s < 5; s++) for (let r = 0; r < 4; r++)
            for (let y = 0; y < 11; y++) for (let w = 0; w < 4; w++) {
              for (const [name, i] of [['sky', s], ['looks', r], ['yards', y], ['water', w]])
                form.elements[name][i].checked = true;
              form.dispatchEvent(new Event('change'));
              all.push(now.querySelector('b').textContent);
            }
          return all;
        }"""
    )
    assert found == [one.show for one in CELLS.values()]


def test_the_narrowest_phone_need_not_scroll_sideways(opened):
    page = opened()
    page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true })")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert axe(page) == []


def test_taps_are_large_enough(opened):
    page = opened()
    page.get_by_text("Where did it go?").click()
    for box in (one.bounding_box() for one in page.locator(".row span").all()):
        assert box["height"] >= 44
        assert box["width"] >= 44


def test_the_keyboard_alone_will_do(opened):
    page = opened()
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowRight")
    assert (
        CELLS["bright overcast", "fur", 45, "bright"].show
        in page.get_by_role("status").inner_text()
    )


def test_without_script_it_is_tables(opened):
    page = opened(java_script_enabled=False)
    assert page.locator("table:visible").count() == len(SKIES) * len(RIPPLES)
    assert not page.locator("form").is_visible()
    one = CELLS["clear", "fur", 60, "dark"]
    assert page.get_by_text(one.show, exact=True).count() == 1


def test_it_remembers_its_taps_in_its_own_address(opened):
    """Opened again at the address that the last tap left, the same four taps are chosen."""
    read = "[...document.querySelectorAll('input:checked+span')].map(e=>e.textContent)"
    page = opened()
    first = page.url
    assert page.evaluate(read) == ["40", "bright", "fur", "bright overcast", "went"]
    for said in ("25", "sun lane", "hazy"):
        page.get_by_text(said, exact=True).first.click()
    said = page.inner_text("#now")
    again = opened()
    again.goto(page.url)
    again.reload()
    assert again.evaluate(read) == ["25", "sun lane", "fur", "hazy", "went"]
    assert again.inner_text("#now") == said
    again.goto(f"{first}#yards=17&sky=%3Cb%3E")
    again.reload()
    assert again.evaluate(read) == ["40", "bright", "fur", "bright overcast", "went"]
