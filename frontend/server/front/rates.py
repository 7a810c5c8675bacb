"""How often somebody may ask for what is heavy: throttles of the REST framework, asked by the door.

A lane's rate is its row in DEFAULT_THROTTLE_RATES, and `keys` is the one of all that is asked with a key. The door
asks before the body comes in: a view would be asked when a worker is taken. Counted in this process alone and only in
memory: with several workers each counts for itself.
"""

from __future__ import annotations

import math
import time
from collections import OrderedDict
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.core.cache.backends.locmem import LocMemCache
from rest_framework.throttling import SimpleRateThrottle

# Of people and addresses that are remembered; whoever was not seen for longest is forgotten, and may ask as if new.
MOST_REMEMBERED = 10_000


KEYS = "keys"


@dataclass(frozen=True, slots=True)
class Quota:
    """What somebody has left of a rate."""

    rate: str
    most: int
    window_s: int
    left: int
    whole_in_s: int
    """Until nothing of it is spent any more, if nothing more is asked for."""


class TooOften(Exception):
    """Asked for too often."""

    def __init__(self, wait_s: int, quota: Quota) -> None:
        super().__init__(wait_s, quota)
        self.wait_s, self.quota = wait_s, quota


class Rates:
    """Of all lanes that have one, and of keys."""

    def __init__(self, lanes: Iterable[str]) -> None:
        self._by_lane = {lane: LaneThrottle(lane) for lane in lanes if lane in LaneThrottle.THROTTLE_RATES}
        self._keys = LaneThrottle(KEYS)

    def spend(self, lane: str, who: str, *, with_key: bool) -> list[Quota]:
        """What is left of each rate that counts for this request. Raises TooOften."""
        rates = [self._keys] if with_key else []
        if lane in self._by_lane:
            rates.append(self._by_lane[lane])
        return [rate.spend(who) for rate in rates]


def fields(quotas: list[Quota]) -> tuple[tuple[bytes, bytes], ...]:
    """The two header fields that tell of quotas (draft-ietf-httpapi-ratelimit-headers-10, from memory): lists of
    structured fields (RFC 9651)."""
    if not quotas:
        return ()
    policies = ", ".join(f'"{quota.rate}";q={quota.most};w={quota.window_s}' for quota in quotas)
    left = ", ".join(f'"{quota.rate}";r={quota.left};t={quota.whole_in_s}' for quota in quotas)
    return (b"ratelimit-policy", policies.encode()), (b"ratelimit", left.encode())


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

    def spend(self, who: Any) -> Quota:
        """What is left after this one. Raises TooOften, with the whole seconds until there is one again."""
        if not self.allow_request(who, who):
            raise TooOften(math.ceil(self.wait() or 0), self._quota())
        return self._quota()

    def _quota(self) -> Quota:
        left = self.num_requests - len(self.history)
        whole_in_s = math.ceil(self.history[0] + self.duration - self.now)
        return Quota(str(self.scope), self.num_requests, self.duration, left, whole_in_s)

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
