"""What a client of OAuth 2 is."""

from __future__ import annotations

from enum import StrEnum


class ActsFor(StrEnum):
    ITSELF = "itself"
    """As the programme's service, by client credentials (RFC 6749, 4.4)."""
    PEOPLE = "people"
    """For each person who allows it, by an authorisation code with PKCE (4.1, and RFC 7636)."""


class ClientType(StrEnum):
    """RFC 6749, 2.1."""

    CONFIDENTIAL = "confidential"
    """Keeps a secret: it runs on a server."""
    PUBLIC = "public"
    """Cannot keep one: it runs on people's own devices."""
