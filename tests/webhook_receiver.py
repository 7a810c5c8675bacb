"""A receiver of webhooks on this machine. The scheme's own library judges each message."""

from __future__ import annotations

import json
import ssl
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from typing import Any

from standardwebhooks import Webhook


@dataclass(frozen=True)
class Message:
    id: str
    headers: dict[str, str]
    body: bytes
    connection: int
    """Its port: messages of one connection have the same."""

    @property
    def content(self) -> Any:
        return json.loads(self.body)

    @property
    def data(self) -> Any:
        return self.content["data"]

    def verify(self, secret: str) -> None:
        """Raises where it was not signed with the secret within five minutes."""
        Webhook(secret).verify(self.body, self.headers)


Answer = tuple[int, dict[str, str]]


def _takes(_: Message) -> Answer:
    return 204, {}


@dataclass
class Receiver:
    """Keeps what came, and answers each as `answer` says."""

    answer: Callable[[Message], Answer] = _takes
    got: list[Message] = field(default_factory=list)
    at: str = ""

    def positions(self) -> list[int]:
        return [message.data["position"] for message in self.got]

    def of_case(self, case_id: Any) -> list[int]:
        return [message.data["position"] for message in self.got if message.data["case_id"] == str(case_id)]


@contextmanager
def receiver(context: ssl.SSLContext | None = None) -> Iterator[Receiver]:
    here = Receiver()

    class Handler(BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"

        def do_POST(self) -> None:
            body = self.rfile.read(int(self.headers["Content-Length"]))
            message = Message(self.headers["webhook-id"], dict(self.headers), body, self.client_address[1])
            here.got.append(message)
            status, headers = here.answer(message)
            self.send_response(status)
            for name, value in headers.items():
                self.send_header(name, value)
            if status != 204:
                self.send_header("Content-Length", "0")
            self.end_headers()

        def log_message(self, *_: Any) -> None:
            """Says nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    server.daemon_threads = True
    if context:
        server.socket = context.wrap_socket(server.socket, server_side=True)
    here.at = f"http{'s' if context else ''}://127.0.0.1:{server.server_port}/"
    Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    try:
        yield here
    finally:
        server.shutdown()
        server.server_close()
