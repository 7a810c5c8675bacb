"""Bodies on their way in: bounds of size, time, number and memory. The bounds are this program's own."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, MutableMapping
from dataclasses import replace
from typing import Any

import pytest

from frontend.server.front import bodies
from frontend.server.front.bodies import Bodies, Gone, NoRoom, TooLong, TooSlow
from frontend.server.front.lanes import READS, Lane

Receive = Callable[[], Awaitable[MutableMapping[str, Any]]]
LANE = replace(READS, most_body_bytes=100)
BRIEF = replace(LANE, body_s=0.2)


def sent(*parts: bytes, pause_s: float = 0.0, ends: bool = True) -> Receive:
    """A sender of these parts, whose pauses are the line's own; one that does not end stays and says nothing more."""
    left = list(parts)

    async def receive() -> MutableMapping[str, Any]:
        await asyncio.sleep(pause_s)
        if not left:
            await asyncio.Event().wait()
        part = left.pop(0)
        return {"type": "http.request", "body": part, "more_body": bool(left) or not ends}

    return receive


def read(of: Bodies, receive: Receive, lane: Lane = LANE, announced_bytes: int | None = None) -> bytes:
    reading = of.read(receive, lane=lane, announced_bytes=announced_bytes, address="192.0.2.1")
    return asyncio.run(asyncio.wait_for(reading, 20))


def test_a_body_in_parts_comes_whole_and_its_memory_is_given_back() -> None:
    of = Bodies()
    body = read(of, sent(b"one ", b"", b"two"))
    assert body == b"one two"
    assert of.held_bytes == 7
    of.free(body)
    assert (of.held_bytes, of.coming.total()) == (0, 0)


@pytest.mark.parametrize(
    ("receive", "lane", "announced_bytes", "refusal"),
    [
        (sent(b"x" * 60, b"x" * 41), LANE, None, TooLong),
        (sent(b""), LANE, 101, TooLong),
        (sent(*[b"x"] * 50, pause_s=0.02), BRIEF, None, TooSlow),
        (sent(b"x", ends=False), BRIEF, None, TooSlow),
    ],
    ids=["more than its lane takes", "more announced", "a trickle", "half of it"],
)
def test_what_is_too_long_or_too_slow_is_given_up(
    receive: Receive, lane: Lane, announced_bytes: int | None, refusal: type[Exception]
) -> None:
    of = Bodies()
    with pytest.raises(refusal):
        read(of, receive, lane, announced_bytes=announced_bytes)
    assert (of.held_bytes, of.coming.total()) == (0, 0)


def test_exactly_as_much_as_a_lane_takes_is_taken() -> None:
    assert len(read(Bodies(), sent(b"x" * 60, b"x" * 40), announced_bytes=100)) == 100


def test_a_pause_longer_than_a_line_makes_ends_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bodies, "LONGEST_PAUSE_S", 0.05)
    with pytest.raises(TooSlow):
        read(Bodies(), sent(b"x", b"x", pause_s=0.1))


def test_a_sender_who_goes_away_leaves_nothing() -> None:
    async def receive() -> MutableMapping[str, Any]:
        return {"type": "http.disconnect"}

    of = Bodies()
    with pytest.raises(Gone):
        read(of, receive)
    assert (of.held_bytes, of.coming.total()) == (0, 0)


def test_all_bodies_together_have_one_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bodies, "MOST_HELD_BYTES", 100)
    of = Bodies()
    first = read(of, sent(b"x" * 60))
    with pytest.raises(NoRoom):
        read(of, sent(b"x" * 41))
    of.free(first)
    assert len(read(of, sent(b"x" * 41))) == 41


@pytest.mark.parametrize("bound", ["MOST_COMING", "MOST_COMING_FROM_ONE"])
def test_so_many_come_in_at_once_and_no_more(bound: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bodies, bound, 2)

    async def course() -> None:
        of = Bodies()
        half = [
            asyncio.create_task(of.read(sent(b"x", ends=False), lane=LANE, announced_bytes=None, address="192.0.2.1"))
            for _ in range(2)
        ]
        while of.coming.total() < len(half):
            await asyncio.sleep(0)
        with pytest.raises(NoRoom):
            await of.read(sent(b"x"), lane=LANE, announced_bytes=None, address="192.0.2.1")
        for task in half:
            task.cancel()
        await asyncio.gather(*half, return_exceptions=True)
        assert await of.read(sent(b"x"), lane=LANE, announced_bytes=None, address="192.0.2.1") == b"x"

    asyncio.run(asyncio.wait_for(course(), 20))
