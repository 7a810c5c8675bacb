"""Where webhooks may go: to no address inside, in whatever notation, after a redirect or by a name that changes."""

from __future__ import annotations

import datetime as dt
import ipaddress
import socket
import ssl
from collections.abc import Iterator
from pathlib import Path
from threading import Event
from typing import Any

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from pytest_django import Settings
from urllib3.util import connection as urllib3_connection

from cases.domain.webhooks import NoAnswer
from cases.services.webhooks import line
from cases.services.webhooks.line import Reply
from tests.webhook_receiver import Receiver, receiver

INSIDE = [
    "127.0.0.1",
    "127.1",
    "2130706433",
    "0x7f000001",
    "0x7f.1",
    "0177.0.0.1",
    "localhost",
    "0.0.0.0",  # noqa: S104
    "[::1]",
    "[::]",
    "[::ffff:127.0.0.1]",
    "[::ffff:7f00:1]",
    "[64:ff9b::7f00:1]",
    "[2002:7f00:1::]",
    "10.0.0.1",
    "172.16.0.1",
    "192.168.1.1",
    "100.64.0.1",
    "169.254.169.254",
    "[fe80::1]",
    "[fd00::1]",
    "224.0.0.1",
    "255.255.255.255",
    "user@127.0.0.1",
]


@pytest.fixture
def here() -> Iterator[Receiver]:
    with receiver() as receives:
        yield receives


def posted(address: str) -> Reply:
    with line.session() as lines:
        return line.post(lines, address, headers={"webhook-id": "1"}, body="{}")


@pytest.mark.parametrize("host", INSIDE)
def test_no_message_goes_inside_in_whatever_notation(host: str, here: Receiver) -> None:
    address = here.at.replace("127.0.0.1", host)
    assert posted(address) == Reply(no_answer=NoAnswer.INSIDE)
    assert posted(address.replace("http", "https")) == Reply(no_answer=NoAnswer.INSIDE)
    assert here.got == []


def test_a_setting_lets_them_in(here: Receiver, settings: Settings) -> None:
    settings.WEBHOOKS_INSIDE = True
    assert posted(here.at).status == 204
    assert len(here.got) == 1


def test_a_redirect_is_an_answer_and_not_a_way(here: Receiver, settings: Settings) -> None:
    settings.WEBHOOKS_INSIDE = True
    with receiver() as elsewhere:
        here.answer = lambda _: (307, {"Location": elsewhere.at})
        assert posted(here.at).status == 307
        assert elsewhere.got == []


def test_a_name_is_asked_for_once_and_that_very_address_connected_to(monkeypatch: pytest.MonkeyPatch) -> None:
    """One that leads outside when it is looked at and inside when it is connected to."""
    asked: list[str] = []
    connected: list[str] = []
    resolve = socket.getaddrinfo

    def changing(host: str, port: int, *args: Any, **kwargs: Any) -> Any:
        if host != "changing.example":
            return resolve(host, port, *args, **kwargs)
        asked.append(host)
        return resolve("8.8.8.8" if len(asked) == 1 else "127.0.0.1", port, *args, **kwargs)

    def connect(address: tuple[str, int], *_: Any, **__: Any) -> Any:
        connected.append(address[0])
        raise OSError

    monkeypatch.setattr(socket, "getaddrinfo", changing)
    monkeypatch.setattr(urllib3_connection, "create_connection", connect)
    with line.session() as lines:
        replies = [line.post(lines, "https://changing.example/", headers={}, body="{}") for _ in range(2)]
    assert [reply.no_answer for reply in replies] == [NoAnswer.NOT_REACHED, NoAnswer.INSIDE]
    assert (asked, connected) == (["changing.example"] * 2, ["8.8.8.8"])


def test_a_name_that_is_none_is_not_reached() -> None:
    for host in ("no-such-name.invalid", "a" * 64 + ".example", "..", "x." * 200):
        assert posted(f"https://{host}/") == Reply(no_answer=NoAnswer.NOT_REACHED)


def test_who_does_not_answer_in_time_is_too_slow(
    here: Receiver, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings.WEBHOOKS_INSIDE = True
    monkeypatch.setattr(line, "TIMEOUTS_S", (5, 0.2))
    enough = Event()
    here.answer = lambda _: (204 if enough.wait(60) else 500, {})
    assert posted(here.at) == Reply(no_answer=NoAnswer.TOO_SLOW)
    enough.set()


def test_a_certificate_that_nobody_vouches_for_is_not_trusted(settings: Settings, tmp_path: Path) -> None:
    settings.WEBHOOKS_INSIDE = True
    file = certificate(tmp_path)
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(file)
    with receiver(context) as secure:
        assert posted(secure.at) == Reply(no_answer=NoAnswer.NOT_TRUSTED)
        assert secure.got == []
        settings.WEBHOOKS_CA_FILE = file
        assert posted(secure.at).status == 204


def certificate(folder: Path) -> str:
    """A file with a key and a certificate of this machine's address that vouches for itself."""
    key, now = ec.generate_private_key(ec.SECP256R1()), dt.datetime.now(dt.UTC)
    name = x509.Name([])
    here = x509.SubjectAlternativeName([x509.IPAddress(ipaddress.ip_address("127.0.0.1"))])
    built = x509.CertificateBuilder(name, name, key.public_key(), 1, now, now + dt.timedelta(days=1))
    signed = built.add_extension(here, critical=True).sign(key, hashes.SHA256())
    form = (serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption())
    file = folder / "receiver.pem"
    file.write_bytes(key.private_bytes(*form) + signed.public_bytes(serialization.Encoding.PEM))
    return str(file)
