"""Waiting for something new, without holding a worker: the same is asked again at a pace."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import Awaitable, Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from http import HTTPStatus
from urllib.parse import parse_qs

from cases.api.reading import NOTHING_NEW
from frontend.server.front.bodies import Gone, Receive
from frontend.server.front.gateway import Answer, Scope
from frontend.server.front.turns import Busy

Ask = Callable[[], Awaitable[Answer]]

MOST_WAIT_S = 30
MOST_WAITING = 64
MOST_OF_ONE = 16
LEAST_PAUSE_S = 1.0
# Of all that wait together, in one process.
MOST_ASKED_A_SECOND = 16
_HEADER = NOTHING_NEW.lower().encode()


class Waiting:
    """Everybody who waits for something new. Lives in one event loop."""

    def __init__(self) -> None:
        self.waiting: Counter[str] = Counter()
        self._ending = asyncio.Event()

    @property
    def pause_s(self) -> float:
        """How long each waits before it is asked again: the more wait, the longer."""
        return max(LEAST_PAUSE_S, self.waiting.total() / MOST_ASKED_A_SECOND)

    async def answer(self, ask: Ask, *, wait_s: int, who: str, receive: Receive) -> Answer:
        """The first answer with something new, or the last one of that time or before the server ends. Raises Busy
        where too many wait, Gone, and what asking does."""
        answer = await ask()
        if wait_s and _nothing_new(answer):
            with self._place(who):
                answer = await self._asked_again(ask, wait_s, receive)
        return replace(answer, headers=tuple(header for header in answer.headers if header[0] != _HEADER))

    def end(self) -> None:
        """Has everybody answered as it stands now: the server would wait for them."""
        self._ending.set()

    @contextmanager
    def _place(self, who: str) -> Iterator[None]:
        if self.waiting.total() >= MOST_WAITING or self.waiting[who] >= MOST_OF_ONE:
            raise Busy
        self.waiting[who] += 1
        try:
            yield
        finally:
            self.waiting[who] -= 1
            if not self.waiting[who]:
                # Otherwise everybody who ever asked would be kept.
                del self.waiting[who]

    async def _asked_again(self, ask: Ask, wait_s: int, receive: Receive) -> Answer:
        now = asyncio.get_running_loop().time
        until = now() + wait_s
        left, ending = asyncio.ensure_future(_left(receive)), asyncio.ensure_future(self._ending.wait())
        try:
            while True:
                pause_s = max(0, min(self.pause_s, until - now()))
                await asyncio.wait((left, ending), timeout=pause_s, return_when=asyncio.FIRST_COMPLETED)
                if left.done():
                    raise Gone
                answer = await ask()
                if not _nothing_new(answer) or now() >= until or ending.done():
                    return answer
        finally:
            left.cancel()
            ending.cancel()


def asked_wait_s(scope: Scope) -> int:
    """For how many seconds the query asks to wait; 0 for what the application will refuse."""
    values = parse_qs(scope["query_string"].decode("latin-1")).get("wait_s", [""])
    text = values[0]
    return int(text) if text in map(str, range(MOST_WAIT_S + 1)) else 0


def _nothing_new(answer: Answer) -> bool:
    # What the asker has holds still: they named its tag.
    return answer.status == HTTPStatus.NOT_MODIFIED or any(name == _HEADER for name, _ in answer.headers)


async def _left(receive: Receive) -> None:
    """Comes back once whoever asked has gone away."""
    while (await receive())["type"] != "http.disconnect":
        pass
