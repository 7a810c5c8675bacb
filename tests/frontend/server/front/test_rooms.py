"""Rooms: each answers, gives way, ends and is there again; a case comes to the one that knows it."""

from __future__ import annotations

import asyncio
import os
import threading
from collections.abc import Awaitable, Iterable
from dataclasses import replace
from typing import Any

import pytest

from frontend.server.front.gateway import Answer, Environ
from frontend.server.front.lanes import COMPUTING, READS
from frontend.server.front.rooms import Room, RoomClosed
from frontend.server.front.workers import Workers
from tests.frontend.server.front.test_door import echo, run


def environ(path: str, method: str = "GET") -> Environ:
    return {
        "REQUEST_METHOD": method,
        "PATH_INFO": path,
        "QUERY_STRING": "",
        "SERVER_NAME": "localhost",
        "SERVER_PORT": "80",
        "SERVER_PROTOCOL": "HTTP/1.1",
        "HTTP_HOST": "localhost",
        "REMOTE_ADDR": "127.0.0.1",
        "wsgi.url_scheme": "http",
        "CONTENT_LENGTH": "0",
        "SCRIPT_NAME": "",
    }


def test_a_case_comes_to_the_room_that_knows_it_and_never_waits_for_that(monkeypatch: pytest.MonkeyPatch) -> None:
    """By the room that was free last, as it is for what is of no case, two cases at once change places."""
    entered: dict[str, list[str]] = {}
    at_work, hang = threading.Event(), threading.Event()

    def ask(room: Room, environ: Environ, body: bytes, *, answer_s: float) -> Answer:
        entered.setdefault(environ["PATH_INFO"].rpartition("/")[0], []).append(room.name)
        if body:
            at_work.set()
            hang.wait(20)
        return Answer(200, (), b"")

    monkeypatch.setattr(Room, "ask", ask)
    workers = Workers(replace(COMPUTING, at_once=2), echo)

    def asks(path: str, body: bytes = b"") -> Awaitable[Answer]:
        return workers.answer({"PATH_INFO": path}, body, "priya")

    async def course() -> None:
        paths = [f"/api/v1/cases/{number}" for number in range(20)]
        for path in paths:
            await asks(f"{path}/preview")
        own = {path: rooms[0] for path, rooms in entered.items()}
        here = paths[0]
        there = next(path for path in paths if own[path] != own[here])
        for pair in ((here, there), (there, here), (here, there)):
            await asyncio.gather(*(asks(f"{path}/plan-versions") for path in pair))
        assert (entered[here], entered[there]) == ([own[here]] * 4, [own[there]] * 4)
        hanging = asyncio.ensure_future(asks(f"{here}/preview", b"hangs"))
        assert await asyncio.to_thread(at_work.wait, 20)
        await asks(f"{here}/preview")
        await asks("/api/v1/compute/plan")
        hang.set()
        await hanging
        assert entered[here][4:] == [own[here], own[there]]
        assert entered["/api/v1/compute"] == [own[there]]

    run(course())


@pytest.fixture
def room() -> Iterable[Room]:
    there = Room("check")
    yield there
    there.stop()


def test_a_room_answers_gives_way_and_is_there_again_after_it_was_ended(room: Room) -> None:
    answer = room.ask(environ("/livez"), b"", answer_s=60)
    assert answer == Answer(200, answer.headers, b"alive")
    process = room._process
    assert process is not None
    assert process.pid is not None
    assert process.pid != os.getpid()
    assert os.getpriority(os.PRIO_PROCESS, process.pid) > os.getpriority(os.PRIO_PROCESS, 0)
    process.kill()
    process.join(10)
    with pytest.raises(RoomClosed):
        room.ask(environ("/livez"), b"", answer_s=60)
    assert room.ask(environ("/livez"), b"", answer_s=60).status == 200


def test_a_room_that_does_not_answer_in_time_is_ended_and_logged(room: Room, caplog: pytest.LogCaptureFixture) -> None:
    room.ask(environ("/livez"), b"", answer_s=60)
    process = room._process
    assert process is not None
    with pytest.raises(RoomClosed):
        room.ask(environ("/livez"), b"", answer_s=0)
    assert not process.is_alive()
    assert "check: ended without an answer to GET /livez" in caplog.text


def test_at_the_servers_end_a_room_is_left_without_a_word(room: Room, caplog: pytest.LogCaptureFixture) -> None:
    room.ask(environ("/livez"), b"", answer_s=60)
    room.leave()
    with pytest.raises(RoomClosed):
        room.ask(environ("/livez"), b"", answer_s=60)
    assert not caplog.records


def test_a_room_ends_with_whoever_started_it(room: Room) -> None:
    room.ask(environ("/livez"), b"", answer_s=60)
    process, line = room._process, room._line
    assert process is not None
    assert line is not None
    line.close()  # as it is when the server is killed
    process.join(10)
    assert process.exitcode == 0
    room._line = None


def test_each_thread_opens_its_connection_before_anybody_asks() -> None:
    asked: list[tuple[str, int]] = []

    def application(environ: dict[str, Any], start: Any) -> list[bytes]:
        asked.append((environ["PATH_INFO"], threading.get_ident()))
        return echo(environ, start)

    workers = Workers(replace(READS, at_once=3), application)
    workers.connect()
    workers.stop()
    assert {path for path, _ in asked} == {"/readyz"}
    assert (len(asked), len({thread for _, thread in asked})) == (3, 3)
