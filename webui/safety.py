"""What keeps the page to its own house: hosts, headers, sizes, and no change by another site."""

import gzip
from collections.abc import Sequence

from flask import Flask, Response, abort, request

OWN_HOSTS = ("127.0.0.1", "localhost")
MOST_BYTES = 64 * 1024
LONG = 1500
"""Texts longer than this are sent small [bytes]."""
MOST_QUERY = 8000
"""Longest question that an address may carry [bytes]."""
POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
}


def guard(app: Flask, hosts: Sequence[str]) -> None:
    """Put the page's rules of safety on an app, asked under ``hosts`` besides this machine's own."""
    app.config["TRUSTED_HOSTS"] = [*OWN_HOSTS, *hosts]
    app.config["MAX_CONTENT_LENGTH"] = MOST_BYTES

    @app.before_request
    def own_house_only() -> None:
        if not _of_this_house():
            abort(403)
        if len(request.query_string) > MOST_QUERY:
            abort(414)

    @app.after_request
    def with_headers(response: Response) -> Response:
        response.headers.update(HEADERS)
        if request.endpoint != "static":
            response.headers["Cache-Control"] = "no-cache"
        _squeeze(response)
        return response


def _of_this_house() -> bool:
    """Return whether this page, a person or a link to a whole page asks, and not another site."""
    # Fetch metadata (W3C): a browser sends them to this machine's own address, but none to a bare one
    # on the house network, where the host that was asked for and the policy of resources must do.
    told = request.headers.get
    if told("Sec-Fetch-Site") in (None, "same-origin", "none"):
        return True
    opened = told("Sec-Fetch-Mode"), told("Sec-Fetch-Dest")
    return request.method in ("GET", "HEAD") and opened == ("navigate", "document")


def _squeeze(response: Response) -> None:
    """Send a long text small where the browser takes it so."""
    response.headers.add("Vary", "Accept-Encoding")
    if (
        request.accept_encodings["gzip"] > 0
        and not response.direct_passthrough
        and response.mimetype != "image/png"
        and len(response.data) > LONG
    ):
        response.data = gzip.compress(response.data, 5, mtime=0)
        response.headers["Content-Encoding"] = "gzip"
