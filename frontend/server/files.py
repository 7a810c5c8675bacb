"""How built files travel: which may be kept for ever, which must be asked for again."""

from __future__ import annotations

from wsgiref.headers import Headers

WORKER = "/sw.js"


def is_immutable(path: str, url: str) -> bool:
    """True for the front end's assets: their names carry a digest of their content."""
    return url.startswith("/assets/")


def add_headers(headers: Headers, path: str, url: str) -> None:
    """The worker may take the whole site and is asked for anew each time, or an old one would stay in charge."""
    if url == WORKER:
        headers["Service-Worker-Allowed"] = "/"
    if not is_immutable(path, url) and not url.startswith("/static/"):
        headers["Cache-Control"] = "no-cache"
