"""A receiver that sends a byte now and then never comes to the end of a wait; it comes to the deadline."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from itertools import repeat
from threading import Event, Thread

import pytest
import requests
from pytest_django import Settings

from cases.domain.webhooks import NoAnswer
from cases.services.common import deadline
from cases.services.lti import line as lti_line
from cases.services.lti.line import PlatformSession
from cases.services.webhooks import line
from cases.services.webhooks.line import Reply
from tests.webhook_receiver import receiver

HEAD = b"HTTP/1.1 200 OK\r\n"
ALL_BYTES = 1500  # so that a deadline that is none ends the test, and not the run
DRIPS = {
    "before the first line": ("http", b"", b"\r"),
    "in the head": ("http", HEAD, b"x"),
    "in the handshake": ("https", bytes.fromhex("1603034000"), b"\0"),  # a record of TLS (RFC 8446, 5.1), never whole
}


@contextmanager
def dripping(begin: bytes, byte: bytes) -> Iterator[int]:
    """The port of a receiver that goes on sending a byte every few milliseconds."""
    over = Event()
    with socket.create_server(("127.0.0.1", 0)) as server:

        def drips() -> None:
            with suppress(OSError), server.accept()[0] as held:
                held.sendall(begin)
                for each in repeat(byte, ALL_BYTES):
                    if over.wait(0.02):
                        return
                    held.sendall(each)

        Thread(target=drips, daemon=True).start()
        yield server.getsockname()[1]
        over.set()


@pytest.fixture(autouse=True)
def soon(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    settings.WEBHOOKS_INSIDE = settings.LTI_HTTP_HERE = True
    monkeypatch.setattr(line, "MOST_S", 0.3)
    monkeypatch.setattr(lti_line, "MOST_S", 0.3)


@pytest.mark.parametrize(("scheme", "begin", "byte"), DRIPS.values(), ids=DRIPS)
def test_who_drips_is_too_slow(scheme: str, begin: bytes, byte: bytes) -> None:
    with dripping(begin, byte) as port, line.session() as lines:
        reply = line.post(lines, f"{scheme}://127.0.0.1:{port}/", headers={}, body="{}")
    assert reply == Reply(no_answer=NoAnswer.TOO_SLOW)


@pytest.mark.parametrize("ends", [b"Connection: close\r\n", b""])
def test_who_drips_after_the_status_has_answered(ends: bytes) -> None:
    head = HEAD + ends + b"Content-Length: 4000\r\n\r\n"
    with dripping(head, b"x") as port, line.session() as lines:
        assert line.post(lines, f"http://127.0.0.1:{port}/", headers={}, body="{}") == Reply(status=200)


def test_a_line_that_is_used_again_is_held_too(monkeypatch: pytest.MonkeyPatch) -> None:
    with receiver() as here, line.session() as lines:
        first = line.post(lines, here.at, headers={"webhook-id": "1"}, body="{}")
        enough = Event()
        here.answer = lambda _: (204 if enough.wait(30) else 500, {})
        second = line.post(lines, here.at, headers={"webhook-id": "2"}, body="{}")
        enough.set()
    assert [first.status, second.no_answer] == [204, NoAnswer.TOO_SLOW]
    assert len({message.connection for message in here.got}) == 1


def test_a_platform_that_drips_is_too_slow() -> None:
    with dripping(HEAD, b"x") as port, PlatformSession() as session, pytest.raises(requests.Timeout):
        session.get(f"http://127.0.0.1:{port}/keys")


def test_what_comes_in_time_is_whole_and_nothing_is_held_afterwards() -> None:
    with receiver() as here, line.session() as lines:
        assert line.post(lines, here.at, headers={"webhook-id": "1"}, body="{}").status == 204
    assert deadline._of_thread.deadline is None
