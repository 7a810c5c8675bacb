"""Webhooks: where one stands, how its messages are signed, and when one that was not taken is sent again.

After the Standard Webhooks specification, version 1.
"""

from __future__ import annotations

import base64
import hmac
import secrets as chance
from collections.abc import Sequence
from enum import StrEnum
from urllib.parse import urlsplit

from cases.domain.errors import NotUsable

MOST_ADDRESS = 1000
MOST_WEBHOOKS = 20
"""Of one programme."""

SECRET_START = "whsec_"  # noqa: S105 - what every secret begins with
SECRET_BYTES = 32
MOST_SECRET = len(SECRET_START) + 4 * -(-SECRET_BYTES // 3)
BOTH_SIGN_HOURS = 24
"""For so long the secret before signs beside a new one."""

FIRST_WAITS_S = (5, 30, 120, 600, 1800)
LATER_WAIT_S = 3600
MOST_RETRY_AFTER_S = 6 * 3600
"""A receiver that asks for a longer pause is asked again after this one."""
TRIED_FOR_S = 48 * 3600


class WebhookState(StrEnum):
    ACTIVE = "active"
    PAUSED = "paused"
    """By whoever keeps it; goes on from where it was."""
    GIVEN_UP = "given_up"
    """The receiver took nothing for two days, or said that it is gone (410). Set it active to go on."""


class DeliveryState(StrEnum):
    WAITING = "waiting"
    DELIVERED = "delivered"
    FAILED = "failed"
    """A test message that was not taken: it is sent once."""
    REPLACED = "replaced"
    """It waited when the webhook was told to go on from elsewhere."""


class NoAnswer(StrEnum):
    """Why a receiver gave no answer at all."""

    INSIDE = "inside"
    """The address is of a network that webhooks do not go to: private, of this machine, of one line."""
    NOT_REACHED = "not_reached"
    NOT_TRUSTED = "not_trusted"
    """Its certificate is not of the name, has ended, or nobody known vouches for it."""
    TOO_SLOW = "too_slow"


def wait_s(tries: int) -> int:
    """How long after so many tries the next one comes."""
    return FIRST_WAITS_S[tries - 1] if tries <= len(FIRST_WAITS_S) else LATER_WAIT_S


def new_secret() -> str:
    return SECRET_START + base64.b64encode(chance.token_bytes(SECRET_BYTES)).decode()


def signature(secrets: Sequence[str], *, id: str, at_s: int, body: str) -> str:
    """The header `webhook-signature`: one signature for each secret."""
    signed = f"{id}.{at_s}.{body}".encode()
    keys = (base64.b64decode(secret.removeprefix(SECRET_START)) for secret in secrets)
    return " ".join(f"v1,{base64.b64encode(hmac.digest(key, signed, 'sha256')).decode()}" for key in keys)


def refuse_address(address: str, *, inside: bool) -> None:
    """Raises NotUsable for what is no address, and for one without HTTPS unless webhooks may go `inside`.

    Where the name leads is asked when a message is sent: it may lead elsewhere by then.
    """
    url = urlsplit(address) if _is_address(address) else None
    if url is None or url.username is not None or url.fragment:
        raise NotUsable(reason="Send an address with a host, without a user and a fragment.", at=("address",))
    if url.scheme != "https" and not (inside and url.scheme == "http"):
        raise NotUsable(reason="A webhook's address begins with https://.", at=("address",))


def _is_address(text: str) -> bool:
    try:
        url = urlsplit(text)
        return bool(url.hostname) and url.port != 0 and text.isascii() and text.isprintable() and " " not in text
    except ValueError:
        return False
