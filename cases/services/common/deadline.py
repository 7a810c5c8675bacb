"""A deadline for a whole request: connecting, waiting and reading together.

The library's own bounds are for each wait, so that who sends a byte now and then never comes to one. Here the line is
cut from beside, wherever the request is with it, in the middle of a handshake too.
"""

from __future__ import annotations

import os
import socket
from contextlib import suppress
from threading import Lock, Timer, local
from types import TracebackType
from typing import Any, Self

import requests
from urllib3.connection import HTTPConnection, HTTPSConnection
from urllib3.connectionpool import HTTPConnectionPool, HTTPSConnectionPool

_of_thread = local()


class Deadline:
    """Of the requests that this thread makes within it, by sessions that `keep_deadlines` has seen."""

    def __init__(self, *, after_s: float) -> None:
        self.passed = False
        self._line: socket.socket | None = None
        self._lock = Lock()
        self._timer = Timer(after_s, self._cut)
        self._timer.daemon = True

    def __enter__(self) -> Self:
        _of_thread.deadline = self
        self._timer.start()
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._timer.cancel()
        _of_thread.deadline = None
        with self._lock:
            self._let_go()

    def hold(self, line: socket.socket) -> None:
        """This is the line from now on. A name of its own for it: encryption takes the first one away."""
        with self._lock:
            self._let_go()
            self._line = socket.socket(fileno=os.dup(line.fileno()))
            if self.passed:
                self._shut()

    def _cut(self) -> None:
        with self._lock:
            self.passed = True
            self._shut()

    def _shut(self) -> None:
        if self._line is not None:
            with suppress(OSError):
                self._line.shutdown(socket.SHUT_RDWR)

    def _let_go(self) -> None:
        if self._line is not None:
            self._line.close()
            self._line = None


class _Held:
    """A connection whose line the thread's deadline holds, new or used once more."""

    sock: socket.socket | None

    def _new_conn(self) -> socket.socket:
        line: socket.socket = super()._new_conn()  # type: ignore[misc]
        _hold(line)
        return line

    def request(self, *args: Any, **kwargs: Any) -> None:
        if self.sock is not None:
            _hold(self.sock)
        super().request(*args, **kwargs)  # type: ignore[misc]


def _hold(line: socket.socket) -> None:
    deadline: Deadline | None = getattr(_of_thread, "deadline", None)
    if deadline is not None:
        deadline.hold(line)


class _Connection(_Held, HTTPConnection):
    pass


class _TlsConnection(_Held, HTTPSConnection):
    pass


class _Pool(HTTPConnectionPool):
    ConnectionCls = _Connection


class _TlsPool(HTTPSConnectionPool):
    ConnectionCls = _TlsConnection


def keep_deadlines(session: requests.Session) -> None:
    """What the session asks for ends at the deadline within which it is asked."""
    for adapter in session.adapters.values():
        adapter.poolmanager.pool_classes_by_scheme = {"http": _Pool, "https": _TlsPool}  # type: ignore[attr-defined]
