"""Headless Chromium on the page itself, served from a thread of this process."""

import os
import shutil
import threading

import pytest
from browser_pages import UNFOLD
from werkzeug.serving import WSGIRequestHandler, make_server

from tipsight.inputs import demo
from tipsight.inputs.question import Question
from webui import create_app

CHROMIUM = (
    shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
)
FLAGS = (
    "--no-sandbox",  # a checking machine runs as root
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",  # asks no host of its own
    "--disable-component-update",
    "--disable-sync",
)


class Quiet(WSGIRequestHandler):
    """Writes down nothing."""

    def log(self, *_):
        pass


@pytest.fixture(scope="session")
def serve():
    """Serve an app on a free port of this machine; return its address."""
    running = []

    def start(app):
        server = make_server("127.0.0.1", 0, app, threaded=True, request_handler=Quiet)
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        running.append((server, thread))
        return f"http://127.0.0.1:{server.server_port}"

    yield start
    for server, thread in running:
        server.shutdown()
        thread.join()
        server.server_close()


@pytest.fixture(scope="session")
def address(serve):
    """The page with the invented swim."""
    return serve(create_app())


@pytest.fixture(scope="session")
def own_address(serve):
    """The page of one who keeps his own float and eyes in a file."""
    return serve(create_app(Question(**demo.question("match").told())))


@pytest.fixture(scope="session")
def chromium():
    """Headless Chromium; a person without one skips these tests, a checking machine must not."""
    if not CHROMIUM:
        missing = "no Chromium here: 'apt-get install chromium' gets it"
        (pytest.fail if os.environ.get("CI") else pytest.skip)(missing)
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playing:
        browser = playing.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def visit(chromium, address):
    """Open pages of ours; none may have had a script error or asked another host."""
    contexts, pages, outside, problems = [], [], [], []

    def heard(message):
        of_the_page = message.text.startswith("Failed to load resource") and any(
            message.location["url"] in (page.url, asked) for page, asked in pages
        )
        if message.type == "error" and not of_the_page and "422" not in message.text:
            problems.append(message.text)

    def open_page(path="/", size=(390, 844), at=address, unfolded=True, **options):
        viewport = {"width": size[0], "height": size[1]}
        context = chromium.new_context(viewport=viewport, **options)
        contexts.append(context)
        context.on("request", lambda r: None if r.url.startswith(at) else outside.append(r.url))
        page = context.new_page()
        pages.append((page, at + path))
        page.set_default_timeout(15_000)
        page.on("pageerror", lambda error: problems.append(str(error)))
        page.on("console", heard)
        page.goto(at + path)
        if unfolded and page.locator("form").count():
            page.evaluate(UNFOLD)
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert outside == []
    assert problems == []


@pytest.fixture(scope="session")
def expect():
    """What waits for a page to be as it should."""
    from playwright.sync_api import expect

    return expect
