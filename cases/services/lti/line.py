"""The line out to platforms: bounded, by HTTPS, and to public names alone."""

from __future__ import annotations

from http import HTTPStatus
from typing import Any

import requests
from django.conf import settings
from requests_hardened.ip_filter_adapter import IPFilterAdapter
from urllib3.exceptions import HTTPError

from cases.domain.push import refuse_inward
from cases.services.common.deadline import Deadline, keep_deadlines

TIMEOUTS_S = (5, 10)  # to connect, and of each wait for an answer
MOST_S = 15  # in all
MOST_BYTES = 200_000  # a key set, a token, the answer to a score


class PlatformSession(requests.Session):
    """Follows no redirect, reads no endless answer, and goes inside no more than webhooks do."""

    def __init__(self) -> None:
        super().__init__()
        # Otherwise a password for the host in the server's own files would take the token's place.
        self.trust_env = False
        self.headers["User-Agent"] = "fourth-canal"
        self.verify = settings.WEBHOOKS_CA_FILE or True
        if not settings.WEBHOOKS_INSIDE:
            self.mount("https://", IPFilterAdapter(is_https_proto=True))
        keep_deadlines(self)

    def send(self, request: requests.PreparedRequest, **how: Any) -> requests.Response:
        """Raises NotUsable for an address that leads inwards, as a token names the one that a score goes to,
        TooManyRedirects for a redirect, which the library would take for an answer, and Timeout at the deadline."""
        refuse_address(str(request.url), at="address")
        with Deadline(after_s=MOST_S) as deadline:
            try:
                answer = self._whole(request, how)
            except requests.RequestException as failure:
                raise (requests.Timeout() if deadline.passed else failure) from None
        # What was cut off may look whole.
        if deadline.passed:
            raise requests.Timeout
        return answer

    def _whole(self, request: requests.PreparedRequest, how: dict[str, Any]) -> requests.Response:
        answer = super().send(request, **{**how, "timeout": TIMEOUTS_S, "allow_redirects": False, "stream": True})
        if HTTPStatus.MULTIPLE_CHOICES <= answer.status_code < HTTPStatus.BAD_REQUEST:
            answer.close()
            raise requests.TooManyRedirects
        try:
            content = answer.raw.read(MOST_BYTES + 1, decode_content=True)
        except (HTTPError, OSError):
            raise requests.ConnectionError("The answer broke off.") from None
        finally:
            answer.close()
        if len(content) > MOST_BYTES:
            raise requests.exceptions.ContentDecodingError("The answer is too long.")
        answer._content = content
        return answer


def refuse_address(address: str, *, at: str) -> None:
    """Raises NotUsable unless it is HTTPS at a public name, by the rule of push services."""
    reason = "A platform has a public name and answers by HTTPS."
    refuse_inward(address, http_here=settings.LTI_HTTP_HERE, at=at, reason=reason)
