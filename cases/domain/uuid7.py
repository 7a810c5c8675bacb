"""Identifiers after RFC 9562, version 7: time first, so that an index stays compact. Never used as an order."""

from __future__ import annotations

import secrets
import time
from uuid import UUID

_RANDOM_BITS = 74
_VERSION = 0x7
_VARIANT = 0b10


def uuid7_of(unix_ms: int, random: int) -> UUID:
    """The identifier of a time [ms since 1970] and 74 random bits (RFC 9562, 5.7)."""
    rand_a, rand_b = random >> 62, random & ((1 << 62) - 1)
    return UUID(int=unix_ms << 80 | _VERSION << 76 | rand_a << 64 | _VARIANT << 62 | rand_b)


def uuid7() -> UUID:
    """A new identifier."""
    return uuid7_of(time.time_ns() // 1_000_000, secrets.randbits(_RANDOM_BITS))
