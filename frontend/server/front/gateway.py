"""Between the two interfaces of servers: a request with its whole body in, a whole answer out (PEP 3333)."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, cast
from wsgiref.types import StartResponse, WSGIApplication

Scope = Mapping[str, Any]
Environ = dict[str, str]


@dataclass(frozen=True, slots=True)
class Answer:
    """A whole answer."""

    status: int
    headers: tuple[tuple[bytes, bytes], ...]
    body: bytes


def environ_of(scope: Scope, body_bytes: int) -> Environ:
    """What an application is told of a request. The body's length is as counted, whatever the sender said of it."""
    host, port = scope.get("server") or ("localhost", 80)
    environ = {
        "REQUEST_METHOD": scope["method"],
        "SCRIPT_NAME": "",
        # PEP 3333: the bytes of the path, each as one character.
        "PATH_INFO": scope["path"].encode().decode("latin-1"),
        "QUERY_STRING": scope["query_string"].decode("latin-1"),
        "SERVER_NAME": str(host),
        "SERVER_PORT": str(port or ""),
        "SERVER_PROTOCOL": f"HTTP/{scope.get('http_version', '1.1')}",
        "REMOTE_ADDR": address_of(scope),
        "wsgi.url_scheme": scope.get("scheme", "http"),
    }
    for name, value in scope["headers"]:
        # A name with an underscore would be read as the one with a hyphen that a proxy has cleaned.
        if b"_" not in name:
            _add(environ, name.decode("latin-1").upper().replace("-", "_"), value.decode("latin-1"))
    # The body was read whole and is no longer sent in pieces.
    environ.pop("HTTP_TRANSFER_ENCODING", None)
    environ["CONTENT_LENGTH"] = str(body_bytes)
    return environ


def own_question(path: str) -> Environ:
    """What an application is told where this process itself asks for a page."""
    return {
        "REQUEST_METHOD": "GET",
        "SCRIPT_NAME": "",
        "PATH_INFO": path,
        "QUERY_STRING": "",
        "SERVER_NAME": "localhost",
        "SERVER_PORT": "80",
        "SERVER_PROTOCOL": "HTTP/1.1",
        "REMOTE_ADDR": "127.0.0.1",
        "wsgi.url_scheme": "http",
        "CONTENT_LENGTH": "0",
    }


def _add(environ: Environ, name: str, value: str) -> None:
    key = name if name in ("CONTENT_TYPE", "CONTENT_LENGTH") else f"HTTP_{name}"
    if key in environ:
        # Lines of one name are joined by a comma (RFC 9110, 5.2), cookies by the semicolon that parts them.
        value = f"{environ[key]}{'; ' if name == 'COOKIE' else ','}{value}"
    environ[key] = value


def address_of(scope: Scope) -> str:
    """Who connects; empty where nobody can tell, over a socket of the file system for one."""
    client = scope.get("client")
    return str(client[0]) if client else ""


def answered(application: WSGIApplication, environ: Environ, body: bytes) -> Answer:
    """The application's whole answer; it has let go of everything it held."""
    started: list[tuple[str, list[tuple[str, str]]]] = []

    def start(status: str, headers: list[tuple[str, str]], failure: Any = None, /) -> Callable[[bytes], object]:
        started.append((status, headers))
        return lambda written: None

    more = {
        "wsgi.version": (1, 0),
        "wsgi.input": io.BytesIO(body),
        "wsgi.errors": sys.stderr,
        "wsgi.multithread": True,
        "wsgi.multiprocess": True,
        "wsgi.run_once": False,
    }
    parts: Iterable[bytes] = application({**environ, **more}, cast("StartResponse", start))
    try:
        whole = b"".join(parts)
    finally:
        # PEP 3333 asks for it, also after a failure. Django ends its request only then.
        close = getattr(parts, "close", None)
        if close is not None:
            close()
    # PEP 3333: after a failure it may have started a second time, and that counts.
    status, headers = started[-1]
    named = tuple((name.lower().encode("latin-1"), value.encode("latin-1")) for name, value in headers)
    return Answer(int(status.split(" ", 1)[0]), named, whole)
