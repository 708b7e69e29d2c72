"""The page's own files, held in memory: none is open while a browser that goes away is served."""

import hashlib
from mimetypes import guess_type
from pathlib import Path

from flask import Flask, Response, abort, request


def add(app: Flask) -> str:
    """Serve the page's own files; return a mark of them, so that they are kept only while they hold."""
    folder = Path(__file__).parent / "static"
    held = {one.name: one.read_bytes() for one in sorted(folder.iterdir()) if one.is_file()}

    def file(name: str) -> Response:
        if name not in held:
            abort(404)
        response = Response(held[name], mimetype=guess_type(name)[0])
        response.add_etag()
        response.make_conditional(request)
        return response

    app.add_url_rule("/static/<name>", "static", file)
    return hashlib.sha256(b"".join(held.values())).hexdigest()[:8]
