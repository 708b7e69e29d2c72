"""What may be left out of HTML is left out, and nothing else is touched."""

import html
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from webui.lean import lean


class Told(HTMLParser):
    """Start tags with their attributes, and the text apart from what lies between blocks."""

    def __init__(self, page):
        super().__init__()
        self.tags, self.text = [], ""
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, attrs))

    def handle_data(self, data):
        self.text += data


def test_a_page_says_the_same_lean(house):
    page = house.get("/").text
    assert lean(page) == page
    full = '<ul class="taps">\n<li><a href="?a=1&amp;b=2" id="x">one</a> <b>two</b></li>\n</ul>'
    assert Told(lean(full)).tags == Told(full).tags
    assert Told(lean(full)).text.split() == Told(full).text.split()


@settings(deadline=None, derandomize=True, max_examples=200)
@given(st.text(max_size=40) | st.text(st.sampled_from("<>\"'=/&; \nablid"), max_size=40))
def test_what_was_typed_is_left_as_it_is(typed):
    said = html.escape(typed)
    page = f'<textarea name="parts">\n{said}</textarea><p title="{said}">{said}</p>'
    seen = Told(lean(page))
    assert [tag for tag, _ in seen.tags] == ["textarea", "p"]
    assert dict(seen.tags[0][1]) == {"name": "parts"}
    assert dict(seen.tags[1][1])["title"] == dict(Told(page).tags[1][1])["title"]
    assert f">\n{said}</textarea>" in lean(page)


@pytest.mark.parametrize(
    ("full", "less"),
    [
        ('<rect x="4" y="5"/>', '<rect x=4 y="5"/>'),
        ('<a href="/a/">b</a>', '<a href="/a/">b</a>'),
        ('<option value="">all</option>', '<option value="">all'),
        ("<p>a</p>\n<p>b</p>", "<p>a</p><p>b</p>"),
        ("<b>a</b>\n<b>b</b>", "<b>a</b>\n<b>b</b>"),
        ('<b title="a b">a="b" c</b>', '<b title="a b">a=b c</b>'),
    ],
)
def test_only_what_may_go_goes(full, less):
    """The last line is text that no page of ours holds: quotes in texts are escaped."""
    assert lean(full) == less
