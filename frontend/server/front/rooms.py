"""Rooms: processes in which the heavy requests are worked on, one at a time each.

A process of its own gives way to the others (its niceness), shares no interpreter lock with them, and can be ended.
"""

from __future__ import annotations

import logging
import multiprocessing
import signal
from contextlib import suppress
from importlib import import_module
from multiprocessing.connection import Connection
from threading import Lock

from frontend.server.front.gateway import Answer, Environ, answered

LOADED = ["frontend.server.front.quiet", "frontend.server.front.computing", "frontend.server.room"]
LONGEST_STOP_S = 1.0
# Made from one that has loaded the program and never served: half the memory, and there at once when one was ended.
_context = multiprocessing.get_context("forkserver")
_log = logging.getLogger(__name__)


class RoomClosed(Exception):
    """The process ended, or was ended, before it answered. Whether it kept what it was sent is not known."""


class Room:
    """One process, started when it is first needed and again whenever it has ended."""

    def __init__(self, name: str) -> None:
        self.name = name
        self._starting = Lock()
        self._process: multiprocessing.process.BaseProcess | None = None
        self._line: Connection | None = None
        self._left = False

    def start(self) -> Connection:
        """The line to the process, which is loading."""
        with self._starting:
            if self._line is None:
                _context.set_forkserver_preload(LOADED)
                self._line, far = _context.Pipe()
                process = _context.Process(target=_work, args=(far,), name=self.name, daemon=True)
                process.start()
                self._process = process
                # The process has its own end. With ours open the line would not break when the process ends.
                far.close()
            return self._line

    def ask(self, environ: Environ, body: bytes, *, answer_s: float) -> Answer:
        """The answer to one request. Raises RoomClosed. Waits: call it from a thread."""
        try:
            line = self.start()
            line.send((environ, body))
            # No answer in time is treated as no answer at all: the process is ended.
            if line.poll(answer_s):
                answer = line.recv()
                if isinstance(answer, Answer):
                    return answer
        except (EOFError, OSError):
            pass
        if not self._left:
            asked = environ["REQUEST_METHOD"], environ["PATH_INFO"]
            _log.error("%s: ended without an answer to %s %s", self.name, *asked)
        self.stop()
        raise RoomClosed

    def stop(self) -> None:
        """Ends the process, whatever it is at."""
        with self._starting:
            if self._line is not None:
                self._line.close()
                self._line = None
            if self._process is not None:
                self._process.kill()
                self._process.join(LONGEST_STOP_S)
                self._process = None

    def leave(self) -> None:
        """For the server's end: waits for nothing. One that is only loading ends when its line does."""
        self._left = True
        if self._process is not None:
            self._process.kill()


def _work(line: Connection) -> None:
    """Answers until the line is closed at the other end: the server has ended."""
    # Ctrl-C is for the server, which closes the line.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    application = [import_module(name) for name in LOADED][-1].application

    with suppress(EOFError, OSError):
        while True:
            environ, body = line.recv()
            line.send(answered(application, environ, body))
