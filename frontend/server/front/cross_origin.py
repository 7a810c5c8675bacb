"""What pages of other origins may read of an answer, beside its body (CORS, as the Fetch standard has it)."""

from __future__ import annotations

EXPOSED = (
    "Deprecation",
    "ETag",
    "Link",
    "Location",
    "RateLimit",
    "RateLimit-Policy",
    "Retry-After",
    "Sunset",
    "WWW-Authenticate",
    "X-Request-Id",
)
# The door's own refusals say nothing of anybody, so that any page may read them: it learns when to come back.
OF_A_REFUSAL = (
    (b"access-control-allow-origin", b"*"),
    (b"access-control-expose-headers", ", ".join(EXPOSED).encode()),
)
