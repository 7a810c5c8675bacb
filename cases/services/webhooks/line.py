"""The line out to receivers: one signed POST, to no address inside, and what came of it."""

from __future__ import annotations

import socket
from contextlib import suppress
from dataclasses import dataclass
from http import HTTPStatus
from urllib.parse import urlsplit

import requests
from django.conf import settings
from requests_hardened import Config, HTTPSession, Manager
from requests_hardened.ip_filter import InvalidIPAddress, filter_host
from urllib3.exceptions import HTTPError

from cases.domain.errors import NotUsable
from cases.domain.webhooks import NoAnswer
from cases.services.common.deadline import Deadline, keep_deadlines

TIMEOUTS_S = (5, 15)  # to connect, and of each wait for an answer
MOST_S = 20
"""For one message in all, however busy its receiver looks. Less than a lease."""
MOST_READ_BYTES = 4096


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """What a receiver answered, or why there was no answer."""

    status: int | None = None
    no_answer: NoAnswer | None = None
    retry_after_s: int = 0
    """How long it asks to be left alone."""

    @property
    def taken(self) -> bool:
        return self.status is not None and HTTPStatus.OK <= self.status < HTTPStatus.MULTIPLE_CHOICES


def session() -> HTTPSession:
    """Resolves a name once for each message, connects to that very address, and only if it is none inside."""
    own = Manager(
        Config(
            ip_filter_enable=not settings.WEBHOOKS_INSIDE,
            ip_filter_allow_loopback_ips=False,
            never_redirect=True,
            default_timeout=TIMEOUTS_S,
            user_agent_override="fourth-canal",
        )
    ).get_session()
    # Otherwise a password for the host in the server's own files would be sent along, and a proxy asked for the name.
    own.trust_env = False
    own.verify = settings.WEBHOOKS_CA_FILE or True
    keep_deadlines(own)
    return own


def post(lines: HTTPSession, address: str, *, headers: dict[str, str], body: str) -> Reply:
    """The answer; raises nothing that has to do with the receiver."""
    with Deadline(after_s=MOST_S) as deadline:
        try:
            with lines.post(address, data=body.encode(), headers=headers, stream=True) as answer:
                # A head that was cut off may look whole.
                if deadline.passed:
                    return Reply(no_answer=NoAnswer.TOO_SLOW)
                # The status says all. A short answer is read off, so that the line can be used again.
                with suppress(HTTPError, OSError):
                    answer.raw.read(MOST_READ_BYTES, decode_content=False)
                pause_s = retry_after_s(answer.headers.get("Retry-After", ""))
                return Reply(status=answer.status_code, retry_after_s=pause_s)
        # A name that cannot be asked for is a ValueError.
        except (requests.RequestException, ValueError) as failure:
            return Reply(no_answer=NoAnswer.TOO_SLOW if deadline.passed else no_answer_of(failure))


def no_answer_of(failure: Exception) -> NoAnswer:
    """What the failure of a request says of its receiver."""
    match failure:
        case InvalidIPAddress():
            return NoAnswer.INSIDE
        case requests.exceptions.SSLError():
            return NoAnswer.NOT_TRUSTED
        case requests.Timeout():
            return NoAnswer.TOO_SLOW
        case _:
            return NoAnswer.NOT_REACHED


def retry_after_s(text: str) -> int:
    """RFC 9110, 10.2.3; a date is left aside."""
    return int(text) if text.isascii() and text.isdecimal() and len(text) < 10 else 0


def refuse_inside(address: str) -> None:
    """Raises NotUsable for an address in numbers, in whatever notation, that is inside. No name is asked for."""
    if settings.WEBHOOKS_INSIDE:
        return
    url = urlsplit(address)
    host, port = str(url.hostname), url.port or 443
    try:
        socket.getaddrinfo(host, port, flags=socket.AI_NUMERICHOST)
        filter_host(host, port, allow_loopback=False)
    except InvalidIPAddress:
        reason = "This address is inside a network that webhooks do not go to."
        raise NotUsable(reason=reason, at=("address",)) from None
    except (OSError, UnicodeError):
        return  # a name
