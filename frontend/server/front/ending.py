"""Hearing that the server is to end. What it runs on tells the application only once every request is answered."""

from __future__ import annotations

import asyncio
import signal
from collections.abc import Callable
from functools import partial
from threading import current_thread, main_thread
from types import FrameType

SIGNALS = (signal.SIGINT, signal.SIGTERM)


def when_ending(act: Callable[[], None]) -> None:
    """Has `act` called in this loop once the process is told to end, beside what is done then anyway."""
    if current_thread() is not main_thread():
        return  # signals come to the main thread alone
    loop = asyncio.get_running_loop()
    for number in SIGNALS:
        before = signal.getsignal(number)
        # Without a handler the process ends at once, and nobody is left to be answered.
        if callable(before):
            signal.signal(number, partial(_both, partial(loop.call_soon_threadsafe, act), before))


def _both(
    act: Callable[[], object], before: Callable[[int, FrameType | None], object], number: int, frame: FrameType | None
) -> None:
    act()
    before(number, frame)
