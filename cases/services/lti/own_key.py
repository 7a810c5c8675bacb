"""The key by which platforms know this server."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import rsa
from pylti1p3.registration import Registration

from cases.models import LtiKey

BITS = 2048  # RFC 7518, 3.3: at least


@dataclass(frozen=True, slots=True)
class KeyPair:
    private_pem: str
    public_pem: str


def own_key() -> KeyPair:
    """The same for every process on this database; made when it is first asked for."""
    row = LtiKey.objects.first() or LtiKey.objects.get_or_create(pk=1, defaults={"private_pem": _new()})[0]
    private = serialization.load_pem_private_key(row.private_pem.encode(), password=None)
    public = private.public_key().public_bytes(
        serialization.Encoding.PEM, serialization.PublicFormat.SubjectPublicKeyInfo
    )
    return KeyPair(row.private_pem, public.decode())


def key_set() -> Mapping[str, Any]:
    """The public half as a platform reads it (RFC 7517)."""
    return {"keys": [Registration.get_jwk(own_key().public_pem)]}


def _new() -> str:
    made = rsa.generate_private_key(public_exponent=65537, key_size=BITS)
    form = serialization.PrivateFormat.PKCS8
    return made.private_bytes(serialization.Encoding.PEM, form, serialization.NoEncryption()).decode()
