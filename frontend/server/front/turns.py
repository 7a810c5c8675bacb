"""Turns at a lane's workers: at most so many at once, the others wait a little, fairly."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager


class Busy(Exception):
    """No worker became free in time."""


class Turns:
    """Next is whoever has the fewest requests under way; among equals, who came first.

    So one who sends many at once waits for their own. Lives in one event loop.
    """

    def __init__(self, *, at_once: int, most_waiting: int, wait_s: float) -> None:
        self.at_once, self.most_waiting, self.wait_s = at_once, most_waiting, wait_s
        self._running: Counter[str] = Counter()
        self._waiting: list[tuple[str, asyncio.Future[None]]] = []

    @property
    def running(self) -> int:
        return self._running.total()

    @property
    def waiting(self) -> int:
        return len(self._waiting)

    @asynccontextmanager
    async def turn(self, who: str) -> AsyncIterator[None]:
        """Waits for a turn, and holds it as long as the block runs. Raises Busy."""
        if self.running < self.at_once:
            self._running[who] += 1
        else:
            await self._wait(who)
        try:
            yield
        finally:
            self._done(who)

    async def _wait(self, who: str) -> None:
        self._make_room(who)
        called: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._waiting.append((who, called))
        try:
            # Not wait_for: before Python 3.12 it may lose that it was cancelled.
            async with asyncio.timeout(self.wait_s):
                # Shielded, so that a turn that is given at the last moment is not cancelled but handed on by `_leave`.
                await asyncio.shield(called)
        except BaseException as cut_short:
            self._leave(who, called)
            if isinstance(cut_short, TimeoutError):
                raise Busy from None
            raise

    def _make_room(self, who: str) -> None:
        """In a full queue the last one of whoever has most in it makes room. Raises Busy where that is who comes."""
        if len(self._waiting) < self.most_waiting:
            return
        counts = Counter(waits for waits, _ in self._waiting)
        most, count = counts.most_common(1)[0]
        if counts[who] + 1 >= count:
            raise Busy
        last = next(waiting for waiting in reversed(self._waiting) if waiting[0] == most)
        self._waiting.remove(last)
        last[1].set_exception(Busy())

    def _leave(self, who: str, called: asyncio.Future[None]) -> None:
        if (who, called) in self._waiting:
            self._waiting.remove((who, called))
        elif called.done() and called.exception() is None:
            self._done(who)  # called at the very moment of leaving: the turn goes on to the next

    def _done(self, who: str) -> None:
        self._running[who] -= 1
        if not self._running[who]:
            del self._running[who]
        if self._waiting and self.running < self.at_once:
            # `min` takes the first of equals, and they stand in the order in which they came.
            following = min(self._waiting, key=lambda waiting: self._running[waiting[0]])
            self._waiting.remove(following)
            self._running[following[0]] += 1
            following[1].set_result(None)
