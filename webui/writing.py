"""Who may write into the box from the page, and how a form proves that it is the page's own."""

import hmac
import secrets
from dataclasses import dataclass, field
from ipaddress import ip_address
from pathlib import Path
from typing import NoReturn
from urllib.parse import urlsplit

from flask import abort, make_response, render_template, request

from webui.safety import OWN_HOSTS

TOKEN = "token"  # noqa: S105 - the name of a field
LOOK_ONLY = (
    "Only looking",
    "From the house network this page may be looked at; to write, start it with --let-write.",
)
NO_BOX = ("No box", "This page was started without a box, so nothing can be kept.")


@dataclass(frozen=True)
class Writing:
    """The box of a page, and who may write into it."""

    box: Path | None
    """Its file; None for a page that keeps nothing."""
    let_write: bool = False
    """Whether those on the house network may, too."""
    token: str = field(default_factory=lambda: secrets.token_urlsafe(18), repr=False)
    """Goes with every form of this page; a page that was started anew has another."""

    @property
    def allowed(self) -> bool:
        """Whether the one who asks may write."""
        return self.box is not None and (self.let_write or _from_here())

    @property
    def fresh(self) -> bool:
        """Whether a form is of this page as it runs now.

        Where it is not, nothing is written: the form is shown again with all that was typed.
        """
        return hmac.compare_digest(request.form.get(TOKEN, "").encode(), self.token.encode())

    def checked(self) -> Path:
        """Return the box that is to be written, or end the request with a page that says why not."""
        if self.box is None:
            refuse(NO_BOX)
        if not self.allowed:
            refuse(LOOK_ONLY)
        return self.box


def refuse(says: tuple[str, str]) -> NoReturn:
    """End a request with a page of two sentences."""
    abort(make_response(render_template("other.html", code=403, says=says), 403))


def _from_here() -> bool:
    """Return whether this machine itself asks, under one of its own names."""
    name = urlsplit(request.host_url).hostname
    try:
        return name in OWN_HOSTS and ip_address(request.remote_addr or "").is_loopback
    except ValueError:
        return False
