"""Bodies as they come in: without holding a worker, within bounds of size, time, number and memory."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import Awaitable, Callable, MutableMapping
from typing import Any

from frontend.server.front.lanes import Lane

Receive = Callable[[], Awaitable[MutableMapping[str, Any]]]

# Longer than any gap of a line that still is one.
LONGEST_PAUSE_S = 20.0
# Of all bodies together, in one process.
MOST_HELD_BYTES = 200_000_000
MOST_COMING = 512
# A whole school may sit behind one address.
MOST_COMING_FROM_ONE = 256


class TooLong(Exception):
    """The body has more bytes than its lane takes."""


class TooSlow(Exception):
    """The body did not arrive in time."""


class NoRoom(Exception):
    """Too many bodies are coming in."""


class Gone(Exception):
    """The sender went away."""


class Bodies:
    """Every body that is coming in or waits for a worker."""

    def __init__(self) -> None:
        self.held_bytes = 0
        self.coming: Counter[str] = Counter()

    async def read(self, receive: Receive, *, lane: Lane, announced_bytes: int | None, address: str) -> bytes:
        """The whole body; `free` it once it is worked on. Raises TooLong, TooSlow, NoRoom and Gone."""
        if announced_bytes is not None and announced_bytes > lane.most_body_bytes:
            raise TooLong
        if self.coming.total() >= MOST_COMING or self.coming[address] >= MOST_COMING_FROM_ONE:
            raise NoRoom
        self.coming[address] += 1
        try:
            return await self._gathered(receive, lane)
        finally:
            self.coming[address] -= 1
            if not self.coming[address]:
                # Otherwise every address ever seen would be kept.
                del self.coming[address]

    def free(self, body: bytes) -> None:
        self.held_bytes -= len(body)

    async def _gathered(self, receive: Receive, lane: Lane) -> bytes:
        body = bytearray()
        try:
            async with asyncio.timeout(lane.body_s):
                while True:
                    async with asyncio.timeout(LONGEST_PAUSE_S):
                        message = await receive()
                    if message["type"] == "http.disconnect":
                        raise Gone
                    self._take(message.get("body", b""), body, lane)
                    if not message.get("more_body", False):
                        return bytes(body)
        # Whatever ended it, the task's cancelling too: nobody will free these bytes.
        except BaseException as cut_short:
            self.held_bytes -= len(body)
            if isinstance(cut_short, TimeoutError):
                raise TooSlow from None
            raise

    def _take(self, part: bytes, body: bytearray, lane: Lane) -> None:
        if len(body) + len(part) > lane.most_body_bytes:
            raise TooLong
        if self.held_bytes + len(part) > MOST_HELD_BYTES:
            raise NoRoom
        body += part
        self.held_bytes += len(part)
