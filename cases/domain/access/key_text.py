"""Access keys: their bounds, and their text: a start that tells what it is, the id of its row, a secret.

The start is for programs that look for secrets where they should not be. The secret has 256 random bits, so one round
of SHA-256 keeps it: a slow hash is for what people make up.
"""

from __future__ import annotations

import re
import secrets
from hashlib import sha256
from uuid import UUID

# Nobody remembers a key for longer; a program that is still wanted gets the next one in time.
MOST_DAYS = 366
MOST_NAME = 60
START = "fourthcanal"
SECRET_BYTES = 32
_SHAPE = re.compile(rf"{START}_([0-9a-f]{{32}})_([0-9a-f]{{{2 * SECRET_BYTES}}})")
_OF_NOBODY = "0" * 64


def new_secret() -> str:
    return secrets.token_hex(SECRET_BYTES)


def text_of(id_: UUID, secret: str) -> str:
    return f"{START}_{id_.hex}_{secret}"


def parts_of(text: str) -> tuple[UUID, str] | None:
    """Id and secret; None for what is no key."""
    match = _SHAPE.fullmatch(text)
    return (UUID(match[1]), match[2]) if match else None


def hash_of(secret: str) -> str:
    """SHA-256, hexadecimal."""
    return sha256(secret.encode()).hexdigest()


def matches(secret: str, hash_: str | None) -> bool:
    """Takes as long for a wrong secret as for a right one; `hash_` is None where there is no such key."""
    return secrets.compare_digest(hash_of(secret), hash_ or _OF_NOBODY)
