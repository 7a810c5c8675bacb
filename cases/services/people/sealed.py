"""Messages sealed for one browser (RFC 8291) and the name of who sends them (RFC 8292)."""

from __future__ import annotations

import base64
import json
import os
import time

from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.kdf.hkdf import HKDF
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

PrivateKey = ec.EllipticCurvePrivateKey

SALT_BYTES = 16
RECORD_BYTES = 4096  # RFC 8188: the whole message is one record, which push services take (RFC 8030, 7.2)
LAST_RECORD = b"\x02"  # RFC 8188, section 2
NAMED_FOR_S = 12 * 3600  # RFC 8292, section 2: no longer than 24 hours
HALF_BYTES = 32  # of a signature on P-256


def seal(
    message: bytes, *, p256dh: str, auth: str, sender: PrivateKey | None = None, salt: bytes | None = None
) -> bytes:
    """The message as `aes128gcm` for a browser's keys (base64url). `sender` and `salt`: new each time but in tests."""
    own = sender or ec.generate_private_key(ec.SECP256R1())
    salt = salt or os.urandom(SALT_BYTES)
    browser = unquoted(p256dh)
    shared = own.exchange(ec.ECDH(), ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), browser))
    both = browser + point(own)
    secret = _derived(unquoted(auth), b"WebPush: info\0" + both, 32, shared)
    key = _derived(salt, b"Content-Encoding: aes128gcm\0", 16, secret)
    nonce = _derived(salt, b"Content-Encoding: nonce\0", 12, secret)
    head = salt + RECORD_BYTES.to_bytes(4) + bytes([len(point(own))]) + point(own)
    return head + AESGCM(key).encrypt(nonce, message + LAST_RECORD, None)


def named(key: PrivateKey, *, audience: str, contact: str) -> str:
    """The `Authorization` header that tells a push service who sends: a signed token, and the key that signed it."""
    token = {"aud": audience, "exp": int(time.time()) + NAMED_FOR_S, "sub": contact}
    said = ".".join(quoted(json.dumps(part).encode()) for part in ({"typ": "JWT", "alg": "ES256"}, token))
    halves = decode_dss_signature(key.sign(said.encode(), ec.ECDSA(hashes.SHA256())))
    signature = b"".join(half.to_bytes(HALF_BYTES) for half in halves)
    return f"vapid t={said}.{quoted(signature)}, k={quoted(point(key))}"


def point(key: PrivateKey) -> bytes:
    """The public key as browsers take it: an uncompressed point."""
    return key.public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)


def quoted(raw: bytes) -> str:
    """base64url without padding."""
    return base64.urlsafe_b64encode(raw).rstrip(b"=").decode()


def unquoted(text: str) -> bytes:
    """Raises ValueError for what is no base64url."""
    bare = text.rstrip("=")
    return base64.b64decode(bare + "=" * (-len(bare) % 4), altchars=b"-_", validate=True)


def _derived(salt: bytes, info: bytes, length: int, secret: bytes) -> bytes:
    return HKDF(algorithm=hashes.SHA256(), length=length, salt=salt, info=info).derive(secret)
