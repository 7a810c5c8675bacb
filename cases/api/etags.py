"""Which state the sender saw: strong entity tags (RFC 9110).

What is read on condition is answered by Django: by `base.unchanged` where the tag is known before all is read, else by
`reading`. What is changed is not: the tag is compared in the transaction that changes, behind its lock, where Django's
decorator compares before the view; a change without one is refused (428), and a weak tag counts, since compression on
the way weakens it.
"""

from __future__ import annotations

from hashlib import sha256

from rest_framework.request import Request

from cases.domain.errors import HashMissing

STATE_END = "-"  # in no revision and in no hash
SHOWN_DIGITS = 16
NO_REVISION = -1  # no case has it


def tag(value: object) -> str:
    return f'"{value}"'


def tag_of_state(state: object, content: bytes) -> str:
    """The tag of an answer that shows more than the state a change rests on: it changes with all that is shown."""
    return tag(f"{state}{STATE_END}{sha256(content).hexdigest()[:SHOWN_DIGITS]}")


def seen_tag(request: Request) -> str:
    """The state that the tag of If-Match names, without quotes and without what else was shown. Raises HashMissing
    where there is none.
    """
    header = request.headers.get("If-Match", "").strip()
    if not header:
        raise HashMissing
    # Compression on the way makes the tag a weak one. Both kinds name the stored content here, not its bytes on the
    # wire, so the mark is left aside; 'whatever is there' never matches.
    header = header.removeprefix("W/")
    seen = header[1:-1] if len(header) > 1 and header[0] == header[-1] == '"' else ""
    return seen.partition(STATE_END)[0]


def maybe_seen_tag(request: Request) -> str | None:
    """The same where If-Match may be left out."""
    return seen_tag(request) if request.headers.get("If-Match") else None


def seen_revision(request: Request) -> int:
    """The case's revision in If-Match; one that no case has where it is none. Raises HashMissing."""
    value = seen_tag(request)
    return int(value) if value.isascii() and value.isdecimal() else NO_REVISION


def maybe_seen_revision(request: Request) -> int | None:
    """The same where If-Match may be left out."""
    return seen_revision(request) if request.headers.get("If-Match") else None
