"""A push service on this machine, and a browser that reads what comes: neither uses the program's libraries for it."""

from __future__ import annotations

import base64
import json
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from email.message import Message
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Event, Thread
from typing import Any

from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import encode_dss_signature
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.kdf.hkdf import HKDF


def text(raw: bytes) -> str:
    return base64.urlsafe_b64encode(raw).rstrip(b"=").decode()


def raw(text: str) -> bytes:
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


def point(key: ec.EllipticCurvePublicKey) -> bytes:
    return key.public_bytes(serialization.Encoding.X962, serialization.PublicFormat.UncompressedPoint)


def of_point(numbers: bytes) -> ec.EllipticCurvePublicKey:
    return ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), numbers)


@dataclass
class Browser:
    """One subscription: reads by RFC 8291, section 4, and RFC 8188, section 2.1."""

    private: ec.EllipticCurvePrivateKey = field(default_factory=lambda: ec.generate_private_key(ec.SECP256R1()))
    auth: bytes = bytes(range(16))

    @property
    def keys(self) -> dict[str, str]:
        return {"p256dh": text(point(self.private.public_key())), "auth": text(self.auth)}

    def read(self, sealed: bytes) -> bytes:
        salt, sender = sealed[:16], sealed[21 : 21 + sealed[20]]
        shared = self.private.exchange(ec.ECDH(), of_point(sender))
        both = point(self.private.public_key()) + sender
        ikm = _derived(self.auth, b"WebPush: info\0" + both, 32, shared)
        key = _derived(salt, b"Content-Encoding: aes128gcm\0", 16, ikm)
        nonce = _derived(salt, b"Content-Encoding: nonce\0", 12, ikm)
        padded = AESGCM(key).decrypt(nonce, sealed[21 + sealed[20] :], None)
        return padded.rstrip(b"\0").removesuffix(b"\x02")


def _derived(salt: bytes, info: bytes, length: int, key: bytes) -> bytes:
    return HKDF(algorithm=hashes.SHA256(), length=length, salt=salt, info=info).derive(key)


def claims(authorization: str, key: str) -> Any:
    """The claims of RFC 8292, once `key` is found to have signed them (ES256: RFC 7518, section 3.4)."""
    scheme, _, parts = authorization.partition(" ")
    fields = dict(part.strip().split("=", 1) for part in parts.split(","))
    assert (scheme, fields["k"]) == ("vapid", key)
    signed, _, signature = fields["t"].rpartition(".")
    r, s = raw(signature)[:32], raw(signature)[32:]
    in_der = encode_dss_signature(int.from_bytes(r), int.from_bytes(s))
    of_point(raw(key)).verify(in_der, signed.encode(), ec.ECDSA(hashes.SHA256()))
    return json.loads(raw(signed.split(".")[1]))


@dataclass
class PushService:
    """Answers each message with the next of `answers`, the last one for ever, and keeps what came."""

    answers: Sequence[int] = (201,)
    got: list[tuple[str, Message, bytes]] = field(default_factory=list)
    came: Event = field(default_factory=Event)
    at: str = ""

    def messages(self, browser: Browser) -> list[dict[str, Any]]:
        return [json.loads(browser.read(body)) for _, _, body in self.got]


@contextmanager
def push_service(*answers: int) -> Iterator[PushService]:
    service = PushService(answers or (201,))

    class Handler(BaseHTTPRequestHandler):
        def do_POST(self) -> None:
            body = self.rfile.read(int(self.headers["Content-Length"]))
            service.got.append((self.path, self.headers, body))
            self.send_response(service.answers[min(len(service.got), len(service.answers)) - 1])
            self.send_header("Location", f"{service.at}/elsewhere")
            self.send_header("Content-Length", "0")
            self.end_headers()
            service.came.set()

        def log_message(self, *_: Any) -> None:
            """Says nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    service.at = f"http://127.0.0.1:{server.server_port}"
    Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    try:
        yield service
    finally:
        server.shutdown()
        server.server_close()
