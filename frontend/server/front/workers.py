"""The workers of one lane: threads of this process, or processes of their own."""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from threading import Barrier
from wsgiref.types import WSGIApplication
from zlib import crc32

from frontend.server.front.gateway import Answer, Environ, answered, own_question
from frontend.server.front.lanes import Lane, case_of
from frontend.server.front.rooms import Room
from frontend.server.front.turns import Turns
from frontend.server.health import READY


class Workers:
    """At most so many requests of a lane at once, each with a whole body."""

    def __init__(self, lane: Lane, application: WSGIApplication) -> None:
        self.lane = lane
        self.turns = Turns(at_once=lane.at_once, most_waiting=lane.most_waiting, wait_s=lane.wait_s)
        self.rooms = [Room(f"{lane.name} {number + 1}") for number in range(lane.at_once)] if lane.apart else []
        self._free = list(self.rooms)
        self._application = application
        # With rooms too: a thread waits at each.
        self._threads = ThreadPoolExecutor(lane.at_once, thread_name_prefix=lane.name)

    async def answer(self, environ: Environ, body: bytes, who: str) -> Answer:
        """The answer to one request, once it has had its turn. Raises Busy and RoomClosed."""
        # What a worker has begun it ends, also when nobody waits for it any more; only then is it free.
        return await asyncio.shield(asyncio.ensure_future(self._in_turn(environ, body, who)))

    async def _in_turn(self, environ: Environ, body: bytes, who: str) -> Answer:
        loop = asyncio.get_running_loop()
        async with self.turns.turn(who):
            if not self.rooms:
                return await loop.run_in_executor(self._threads, answered, self._application, environ, body)
            room = self._room(case_of(environ["PATH_INFO"]))
            try:
                ask = partial(room.ask, environ, body, answer_s=self.lane.answer_s)
                return await loop.run_in_executor(self._threads, ask)
            finally:
                self._free.append(room)

    def _room(self, case: str) -> Room:
        """A room that is free: the case's own where that is one, as it remembers the case's last plans."""
        own = self.rooms[crc32(case.encode()) % len(self.rooms)]
        room = own if case and own in self._free else self._free[-1]
        self._free.remove(room)
        return room

    def connect(self) -> None:
        """Has each thread open its connection to the database. Before anybody asks: no thread may be busy."""
        if not self.rooms:
            together = Barrier(self.lane.at_once)
            list(self._threads.map(self._connect, [together] * self.lane.at_once))

    def _connect(self, together: Barrier) -> None:
        # Each waits for the others, or one thread would do it all.
        together.wait()
        answered(self._application, own_question(READY), b"")

    def start(self) -> None:
        """Has the processes ready before they are needed. Takes as long as loading the program once."""
        for room in self.rooms:
            room.start()

    def stop(self) -> None:
        for room in self.rooms:
            room.leave()
        self._threads.shutdown(wait=False, cancel_futures=True)
