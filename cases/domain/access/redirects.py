"""Where a client may have a person sent back to, with a code that is worth the person's word (RFC 6749, 3.1.2)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from urllib.parse import urlsplit

from cases.domain.errors import NotUsable

MOST_ADDRESSES = 10
MOST_CHARACTERS = 500
# RFC 3986: what an address is written in, but for the "#" and the "@" that have no place in one of these.
_WRITTEN_IN = re.compile(r"[A-Za-z0-9\-._~:/?\[\]!$&'()*+,;=%]+")
_NAME = re.compile(r"[a-z0-9](?:[a-z0-9.-]*[a-z0-9])?")
# RFC 8252, 7.3: an app on somebody's own machine takes the code there. 8.3: by number, as a name can be led elsewhere.
LOOPBACK = ("127.0.0.1", "::1")


def refuse_unless_safe(addresses: Sequence[str]) -> None:
    """Raises NotUsable for the first address that a code must not be sent to."""
    for place, address in enumerate(addresses):
        if not _is_safe(address):
            reason = (
                "Must be https:// with a name and without '#', '@' or '*', or http:// to 127.0.0.1 or [::1] "
                "for an app on the person's own machine."
            )
            raise NotUsable(reason=reason, at=("redirect_uris", place))


def _is_safe(address: str) -> bool:
    if len(address) > MOST_CHARACTERS or not _WRITTEN_IN.fullmatch(address):
        return False
    try:
        parts = urlsplit(address)
        host, _ = parts.hostname or "", parts.port
    except ValueError:
        return False
    if parts.scheme == "http":
        return host in LOOPBACK
    return parts.scheme == "https" and _NAME.fullmatch(host) is not None
