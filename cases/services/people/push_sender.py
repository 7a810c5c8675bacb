"""The line out to push services: a bounded queue and a few threads of this process, so that no request waits."""

from __future__ import annotations

import json
import logging
from dataclasses import dataclass
from functools import cache
from http import HTTPStatus
from queue import Full, Queue
from threading import Thread
from urllib.parse import urlsplit
from uuid import UUID

import requests
from django.conf import settings
from django.db import DatabaseError, connection
from requests.adapters import HTTPAdapter
from urllib3.util import Retry

from cases.models import Case, PushSubscription
from cases.services.people.sealed import PrivateKey, named, seal

logger = logging.getLogger(__name__)

THREADS = 4
MOST_WAITING = 500  # more are dropped: the worklist shows them anyway
TIMEOUTS_S = (3, 5)  # to connect, to answer
GONE = (HTTPStatus.NOT_FOUND, HTTPStatus.GONE)
# A push service that is busy or failing is asked three times more, within seconds. How long it would have us wait is
# not heeded: the news is old by then.
RETRIES = Retry(
    total=3,
    redirect=0,
    backoff_factor=0.5,
    status_forcelist=(429, 500, 502, 503, 504),
    allowed_methods=None,
    respect_retry_after_header=False,
    raise_on_status=False,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """One message for one browser."""

    subscription_id: UUID
    endpoint: str
    p256dh: str
    auth: str
    message: bytes
    key: PrivateKey
    topic: str
    urgent: bool
    kept_s: int


def put(letter: Letter) -> None:
    """Sends it soon, from a thread; drops it where too many wait."""
    try:
        _line().put_nowait(letter)
    except Full:
        logger.warning("Too many notifications wait; one was dropped.")


@cache
def _line() -> Queue[Letter]:
    """The queue, with threads that end with the process: what was not sent then, the worklist shows."""
    line: Queue[Letter] = Queue(MOST_WAITING)
    for _ in range(THREADS):
        Thread(target=_work, args=(line,), daemon=True, name="push").start()
    return line


def _work(line: Queue[Letter]) -> None:
    while True:
        deliver(line.get())
        # This thread lives as long as the process, and letters are rare: a connection would lie idle between them.
        connection.close()


def deliver(letter: Letter) -> None:
    """Sends it now. A browser that is gone is forgotten; whatever else fails is dropped and logged."""
    try:
        status = _post(letter, _as_called_now(letter.message))
        if status in GONE:
            PushSubscription.objects.filter(pk=letter.subscription_id).delete()
    except Exception as failed:
        # No notification is worth a thread; the endpoint in a library's text is the browser's secret.
        logger.warning("A notification was not sent: %s", type(failed).__name__)
        return
    if not HTTPStatus.OK <= status < HTTPStatus.MULTIPLE_CHOICES:
        logger.warning("A push service answered %s.", status)


def _as_called_now(message: bytes) -> bytes:
    """The message with the patient's alias as it is by now: one that was corrected meanwhile is sent nowhere."""
    news = json.loads(message)
    try:
        alias = Case.objects.values_list("patient__alias", flat=True).get(pk=news["case_id"])
    except (DatabaseError, Case.DoesNotExist):
        alias = ""  # news of an emergency goes out all the same
    return json.dumps({**news, "alias": alias}, ensure_ascii=False).encode()


def _post(letter: Letter, message: bytes) -> int:
    """The status of the answer, whose body is not read. Raises what the line raises."""
    url = urlsplit(letter.endpoint)
    contact = f"https://{settings.ALLOWED_HOSTS[0].lstrip('.')}"
    headers = {
        "Authorization": named(letter.key, audience=f"{url.scheme}://{url.netloc}", contact=contact),
        "Content-Encoding": "aes128gcm",
        "TTL": str(letter.kept_s),
        "Urgency": "high" if letter.urgent else "normal",
        "Topic": letter.topic,
    }
    sealed = seal(message, p256dh=letter.p256dh, auth=letter.auth)
    with requests.Session() as session:
        for scheme in ("https://", "http://"):
            session.mount(scheme, HTTPAdapter(max_retries=RETRIES))
        answer = session.post(
            letter.endpoint, data=sealed, headers=headers, timeout=TIMEOUTS_S, stream=True, allow_redirects=False
        )
        return answer.status_code
