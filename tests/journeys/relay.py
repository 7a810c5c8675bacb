"""Stands between a browser and the server, and keeps what went through: each request's path and its answer's bytes."""

from __future__ import annotations

import http.client
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread


@dataclass(frozen=True, slots=True)
class Passed:
    """One answer as it went over the line, head and body."""

    path: str
    status: int
    size_bytes: int


@dataclass(slots=True)
class Relay:
    url: str
    passed: list[Passed] = field(default_factory=list)


@contextmanager
def relay(to_port: int) -> Iterator[Relay]:
    """Passes everything on to a server on this machine, and counts."""

    class Handler(BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"

        def _pass(self) -> None:
            body = self.rfile.read(int(self.headers.get("Content-Length", 0)))
            line = http.client.HTTPConnection("127.0.0.1", to_port, timeout=60)
            line.request(self.command, self.path, body, dict(self.headers))
            answer = line.getresponse()
            content = answer.read()
            head = [f"{name}: {value}" for name, value in answer.getheaders() if name.lower() != "transfer-encoding"]
            if answer.status != http.HTTPStatus.NOT_MODIFIED and not answer.getheader("Content-Length"):
                head.append(f"Content-Length: {len(content)}")
            sent = "\r\n".join([f"HTTP/1.1 {answer.status} {answer.reason}", *head, "", ""]).encode() + content
            counted.passed.append(Passed(self.path, answer.status, len(sent)))
            self.wfile.write(sent)
            line.close()

        do_GET = do_POST = do_PUT = do_PATCH = do_DELETE = do_HEAD = _pass  # noqa: N815  # the library's names

        def log_message(self, format: str, *args: object) -> None:
            return

    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as server:
        counted = Relay(f"http://127.0.0.1:{server.server_address[1]}")
        Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield counted
        finally:
            server.shutdown()
