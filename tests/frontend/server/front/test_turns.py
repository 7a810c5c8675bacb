"""Turns: never more at once than there are workers, nobody waits for ever, and one sender does not crowd out another.

The bounds are the lane's own; that the next is whoever has least under way is a rule of this program.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable

import pytest

from frontend.server.front.turns import Busy, Turns


def turns(at_once: int = 1, most_waiting: int = 10, wait_s: float = 5.0) -> Turns:
    return Turns(at_once=at_once, most_waiting=most_waiting, wait_s=wait_s)


def run(course: Callable[[], Awaitable[None]]) -> None:
    async def bounded() -> None:
        await asyncio.wait_for(course(), 20)

    asyncio.run(bounded())


async def settled() -> None:
    for _ in range(10):
        await asyncio.sleep(0)


class Senders:
    """Requests that hold their worker until they are told to end."""

    def __init__(self, of: Turns) -> None:
        self.of = of
        self.begun: list[str] = []
        self.most = 0
        self.tasks: list[asyncio.Task[None]] = []
        self._ends: dict[str, asyncio.Event] = {}

    def send(self, who: str, name: str) -> asyncio.Task[None]:
        self._ends[name] = asyncio.Event()

        async def request() -> None:
            async with self.of.turn(who):
                self.begun.append(name)
                self.most = max(self.most, self.of.running)
                await self._ends[name].wait()

        self.tasks.append(asyncio.create_task(request()))
        return self.tasks[-1]

    async def end(self, name: str) -> None:
        self._ends[name].set()
        await settled()


def test_never_more_at_once_than_there_are_workers() -> None:
    async def course() -> None:
        senders = Senders(turns(at_once=3, most_waiting=50))
        for number in range(40):
            senders.send(f"who {number % 5}", str(number))
        await settled()
        assert len(senders.begun) == 3
        while len(senders.begun) < 40:
            await senders.end(senders.begun[len(senders.begun) - 3])
        assert senders.most == 3
        for name in senders.begun[-3:]:
            await senders.end(name)
        assert (senders.of.running, senders.of.waiting) == (0, 0)

    run(course)


def test_one_who_sends_many_waits_for_their_own() -> None:
    async def course() -> None:
        senders = Senders(turns(at_once=2))
        for number in range(5):
            senders.send("many", f"many {number}")
        await settled()
        senders.send("one", "one")
        await settled()
        assert senders.begun == ["many 0", "many 1"]
        await senders.end("many 0")
        assert senders.begun[-1] == "one"
        await senders.end("one")
        assert senders.begun[-1] == "many 2"
        for task in senders.tasks:
            task.cancel()

    run(course)


def test_who_waits_too_long_is_told_so_and_leaves_no_trace() -> None:
    async def course() -> None:
        senders = Senders(turns(wait_s=0.05))
        senders.send("first", "first")
        await settled()
        with pytest.raises(Busy):
            await senders.send("second", "second")
        assert senders.of.waiting == 0
        await senders.end("first")
        assert senders.of.running == 0
        assert senders.begun == ["first"]

    run(course)


def test_in_a_full_queue_whoever_has_most_in_it_gives_way() -> None:
    async def course() -> None:
        senders = Senders(turns(most_waiting=3))
        many = [senders.send("many", f"many {number}") for number in range(4)]
        await settled()
        with pytest.raises(Busy):
            await senders.send("many", "many 4")
        single = senders.send("one", "one")
        await settled()
        assert isinstance(many[3].exception(), Busy)
        assert not single.done()
        assert senders.of.waiting == 3
        for task in senders.tasks:
            task.cancel()

    run(course)


def test_a_turn_called_while_its_sender_leaves_goes_on_to_the_next() -> None:
    async def course() -> None:
        senders = Senders(turns())
        senders.send("first", "first")
        leaving = senders.send("second", "second")
        senders.send("third", "third")
        await settled()
        # Both happen before the second one's task is woken.
        senders._ends["first"].set()
        await asyncio.sleep(0)
        leaving.cancel()
        await settled()
        assert senders.begun[-1] == "third"
        await senders.end("third")
        assert senders.of.running == 0

    run(course)
