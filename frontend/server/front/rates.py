"""How often somebody may ask for what is heavy: so many at once, and so many a minute from then on.

Counted in this process alone and only in memory: with several workers each counts for itself. Not by the REST
framework's throttles: those count in the view, when the body is in and a worker is taken, and whoever has spent a
minute's worth waits up to a minute, where here one comes back at a time.
"""

from __future__ import annotations

import math
import time
from collections import OrderedDict
from collections.abc import Callable

SECONDS_PER_MINUTE = 60.0
# Of people and addresses that are remembered; whoever was not seen for longest is forgotten, and is full again.
MOST_REMEMBERED = 10_000


class TooOften(Exception):
    """Asked for too often."""

    def __init__(self, wait_s: int) -> None:
        super().__init__(wait_s)
        self.wait_s = wait_s


class Rate:
    """A bucket for each who asks, that fills evenly."""

    def __init__(self, per_minute: int, clock: Callable[[], float] = time.monotonic) -> None:
        self.per_minute = per_minute
        self._clock = clock
        self._left: OrderedDict[str, tuple[float, float]] = OrderedDict()

    def spend(self, who: str) -> None:
        """Raises TooOften, with the whole seconds until there is one again."""
        now = self._clock()
        left, at = self._left.pop(who, (float(self.per_minute), now))
        left = min(float(self.per_minute), left + (now - at) * self.per_minute / SECONDS_PER_MINUTE)
        enough = left >= 1
        self._left[who] = (left - 1 if enough else left), now
        if len(self._left) > MOST_REMEMBERED:
            self._left.popitem(last=False)
        if not enough:
            raise TooOften(math.ceil((1 - left) * SECONDS_PER_MINUTE / self.per_minute))


class Known:
    """Sessions that were answered as signed in. Anybody can make a cookie up; who is known has a rate of their own,
    and the others behind the same address have one together."""

    def __init__(self) -> None:
        self._sessions: OrderedDict[str, None] = OrderedDict()

    def __contains__(self, session: str) -> bool:
        return session in self._sessions

    def answered(self, session: str, *, signed_in: bool) -> None:
        self._sessions.pop(session, None)
        if signed_in:
            self._sessions[session] = None
            if len(self._sessions) > MOST_REMEMBERED:
                self._sessions.popitem(last=False)
