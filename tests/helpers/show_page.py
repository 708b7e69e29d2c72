"""Write the first screen of the page, light and dark side by side, as README shows it.

Run as a script: ``python tests/helpers/show_page.py tests/shown/page.png``.
"""

import io
import shutil
import sys
import threading
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright
from werkzeug.serving import make_server

from webui import create_app

WIDE, HIGH, BETWEEN = 390, 844, 12


def main(out: Path) -> None:
    """Write the picture."""
    server = make_server("127.0.0.1", 0, create_app(), threaded=True)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    both = Image.new("RGB", (2 * WIDE + BETWEEN, HIGH), "#808080")
    with sync_playwright() as playing:
        browser = playing.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
        )
        for n, scheme in enumerate(("light", "dark")):
            page = browser.new_page(viewport={"width": WIDE, "height": HIGH}, color_scheme=scheme)
            page.goto(f"http://127.0.0.1:{server.server_port}/")
            shown = Image.open(io.BytesIO(page.screenshot()))
            both.paste(shown, (n * (WIDE + BETWEEN), 0))
        browser.close()
    server.shutdown()
    both.save(out, optimize=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
