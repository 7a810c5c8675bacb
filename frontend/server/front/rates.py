"""How often somebody may ask for what is heavy: throttles of the REST framework, asked by the door.

A lane's rate is its row in DEFAULT_THROTTLE_RATES. The door asks before the body comes in: a view would be asked when a
worker is taken. Counted in this process alone and only in memory: with several workers each counts for itself.
"""

from __future__ import annotations

import math
import time
from collections import OrderedDict
from typing import Any

from django.core.cache.backends.locmem import LocMemCache
from rest_framework.throttling import SimpleRateThrottle

# Of people and addresses that are remembered; whoever was not seen for longest is forgotten, and may ask as if new.
MOST_REMEMBERED = 10_000


class TooOften(Exception):
    """Asked for too often."""

    def __init__(self, wait_s: int) -> None:
        super().__init__(wait_s)
        self.wait_s = wait_s


class LaneThrottle(SimpleRateThrottle):
    """The rate of one lane. A minute's worth may be spent at once; from then on one request after the other is made
    good, evenly. The framework's own throttle would give nothing back for a whole minute then."""

    timer = time.monotonic
    num_requests: int
    duration: int

    def __init__(self, lane: str) -> None:
        self.scope = lane
        super().__init__()
        self.cache = LocMemCache(f"rate of {lane}", {"max_entries": MOST_REMEMBERED})
        self.cache.clear()  # of a door that went before

    def spend(self, who: Any) -> None:
        """Raises TooOften, with the whole seconds until there is one again."""
        if not self.allow_request(who, who):
            raise TooOften(math.ceil(self.wait() or 0))

    def get_cache_key(self, request: Any, view: Any) -> str:
        """Who asks: the door knows no more of a request."""
        return str(request)

    def throttle_success(self) -> bool:
        """Notes when this request has been made good, one after the other; what the framework notes is when it came."""
        each_s = self.duration / self.num_requests
        before = self.history[0] + self.duration if self.history else self.now
        self.history.insert(0, before + each_s - self.duration)
        self.cache.set(self.key, self.history, self.duration)
        return True


class Known:
    """Sessions and keys that were answered as signed in. Anybody can make one up; who is known has a rate of their own,
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
