"""The real server under what a stranger may send. Nothing here is timed: an answer comes at all, or it does not."""

from __future__ import annotations

import http.client
import socket
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from pathlib import Path

from frontend.server.serve import Address

# What waits for a worker that is held answers never; this is patience with the machine.
PATIENCE_S = 300
SLOW = 60


def ask(address: Address, path: str, **headers: str) -> tuple[int, dict[str, str], bytes]:
    line = http.client.HTTPConnection(address.host, address.port, timeout=PATIENCE_S)
    try:
        line.request("GET", path, headers={key.replace("_", "-"): value for key, value in headers.items()})
        answer = line.getresponse()
        return answer.status, {name.lower(): value for name, value in answer.getheaders()}, answer.read()
    finally:
        line.close()


def answered(address: Address, path: str) -> tuple[int, dict[str, str], bytes]:
    """The answer of a server that may be busy until then: on a slow machine it takes its time to be ready."""
    while (answer := ask(address, path))[0] == 503:
        time.sleep(int(answer[1]["retry-after"]))
    return answer


def half_sent(address: Address, path: str, length: int = 4_000_000) -> socket.socket:
    """A request whose body is begun and not gone on with."""
    line = socket.create_connection((address.host, address.port), timeout=PATIENCE_S)
    head = f"PATCH {path} HTTP/1.1\r\nHost: {address.host}:{address.port}\r\nContent-Length: {length}\r\n"
    line.sendall(f"{head}Content-Type: application/partial-upload\r\n\r\nbegun".encode())
    return line


def test_sixty_bodies_that_do_not_come_to_an_end_hold_no_worker(served: Address) -> None:
    image = "/api/v1/cases/0190a0a0-0000-7000-8000-000000000000/images/0190a0a0-0000-7000-8000-000000000001"
    with ExitStack() as open_lines:
        for path in (image, "/api/v1/session"):
            for _ in range(SLOW):
                open_lines.enter_context(half_sent(served, path, 4_000_000 if path == image else 400_000))
        for _ in range(5):
            assert ask(served, "/api/v1/teeth")[0] == 200
        assert ask(served, "/api/v1/session")[0] == 204
        # Another image is looked at as well: without a sign-in it is refused, by a worker.
        whole = half_sent(served, image, len("begun"))
        open_lines.enter_context(whole)
        assert b" 401 " in whole.recv(100)


def test_a_body_longer_than_is_taken_is_refused_before_it_comes(served: Address) -> None:
    with half_sent(served, "/api/v1/session", 2_000_000) as line:
        assert b" 413 " in line.recv(100)


def test_sixteen_strangers_at_once_get_the_description_of_a_server_just_started(served: Address) -> None:
    paths = ["/api/v1/schema", "/api/v1/schema?format=json"] * 8
    with ThreadPoolExecutor(len(paths)) as pool:
        answers = list(pool.map(lambda path: answered(served, path), paths))
    assert {status for status, _, _ in answers} == {200}
    assert len({body for _, _, body in answers}) == 2
    tag = answers[0][1]["etag"]
    assert tag.startswith('"')
    assert ask(served, "/api/v1/schema", If_None_Match=tag)[0] == 304


def test_health_is_told_to_whoever_asks_by_any_name(served: Address) -> None:
    assert ask(served, "/livez", Host="10.0.0.9")[0::2] == (200, b"alive")
    assert ask(served, "/readyz", Host="10.0.0.9")[0::2] == (200, b"ready")
    assert ask(served, "/api/v1/teeth", Host="10.0.0.9")[0] == 400


def test_a_connection_to_the_database_stays_open_after_its_request(served: Address, records: Path) -> None:
    """SQLite's log is there as long as somebody has the database open (https://www.sqlite.org/wal.html, 2.2)."""
    assert ask(served, "/readyz")[0] == 200
    assert records.with_name(f"{records.name}-wal").exists()
