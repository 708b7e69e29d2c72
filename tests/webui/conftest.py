"""A client that holds every page that any test fetches to the rules of the house."""

from html.parser import HTMLParser

import pytest

from webui import create_app

HEADERS = {
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}
VOID = {"meta", "link", "input", "br", "img"}


class Seen(HTMLParser):
    """What a page holds, as far as the rules ask."""

    def __init__(self, html):
        super().__init__()
        self.tags, self.texts, self.stack, self.wrapped = [], {}, [], set()
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        self.tags.append((tag, given))
        if tag in ("input", "select", "textarea") and "label" in self.stack:
            self.wrapped.add(len(self.tags) - 1)
        if tag not in VOID:
            self.stack.append(tag)

    def handle_endtag(self, tag):
        assert self.stack, f"</{tag}> closes nothing"
        assert self.stack.pop() == tag, f"</{tag}> closes another"

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        for tag in self.stack:
            self.texts[tag] = self.texts.get(tag, "") + data

    def of(self, *names):
        return [given for tag, given in self.tags if tag in names]


def check_house_rules(html, whole=True):
    """Hold one page, or a piece of one, to the rules."""
    seen = Seen(html)
    assert not seen.stack
    every = [given for _, given in seen.tags]
    ids = [given["id"] for given in every if "id" in given]
    assert len(ids) == len(set(ids)), "an id stands twice"
    assert not [given for given in every if any(k == "style" or k.startswith("on") for k in given)]
    outside = [
        given
        for given in every
        if any(str(given.get(k, "")).startswith(("http", "//")) for k in ("src", "href", "action"))
    ]
    assert not outside, "asks another host"
    assert "<style" not in html
    assert all(given.get("src") for given in seen.of("script")), "script stands in the page"
    labels = {given.get("for") for given in seen.of("label")}
    for n, (tag, given) in enumerate(seen.tags):
        if tag in ("input", "select", "textarea") and given.get("type") != "hidden":
            assert given.get("id") in labels or n in seen.wrapped, f"no label: {given}"
            assert "placeholder" not in given
            assert given.get("type") != "number"
        if tag == "svg":
            assert given.get("aria-hidden") == "true" or given.get("aria-label")
    if not whole:
        return
    assert len(seen.of("h1")) == 1
    assert seen.texts["title"].strip()
    assert seen.of("html")[0]["lang"] == "en"
    for given in every:
        for key in ("aria-describedby", "aria-labelledby", "for"):
            assert set((given.get(key) or "").split()) <= set(ids), (
                f"{key} points nowhere: {given}"
            )
        if (given.get("href") or "").startswith("#"):
            assert given["href"][1:] in ids, f"a link leads nowhere: {given['href']}"
        if "form" in given:
            assert given["form"] in ids


class HouseClient:
    """The app's test client, with the rules checked on every reply."""

    def __init__(self, app):
        self.client = app.test_client()

    def get(self, path, **options):
        reply = self.client.get(path, **options)
        assert reply.headers["Content-Security-Policy"].startswith("default-src 'none'")
        assert "unsafe" not in reply.headers["Content-Security-Policy"]
        assert {key: reply.headers[key] for key in HEADERS} == HEADERS
        assert "Set-Cookie" not in reply.headers
        if reply.mimetype == "text/html" and reply.status_code != 303:
            check_house_rules(reply.text, whole="X-Fragment" not in options.get("headers", {}))
        return reply


@pytest.fixture(scope="session")
def house():
    return HouseClient(create_app())


@pytest.fixture(scope="session")
def client_of():
    """A client of an app that is made another way."""
    return lambda **options: HouseClient(create_app(**options))


@pytest.fixture(scope="session")
def rules():
    return check_house_rules
