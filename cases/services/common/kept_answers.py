"""The same request sent again gets the answer it had: draft-ietf-httpapi-idempotency-key-header-07.

What a request makes, its key and its answer are of one transaction. One that was cut short has left nothing of them, so
that no key is ever held by a request that is no more.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from datetime import timedelta
from hashlib import sha256
from http import HTTPStatus
from uuid import UUID

from django.db import connection, transaction
from django.utils import timezone

from cases.domain.program_errors import KeyUsedDifferently, StillUnderWay
from cases.models import KeptAnswer

KEPT_FOR = timedelta(days=1)
_LOCK_BYTES = 8  # a lock of PostgreSQL's own is named by one bigint


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    status: int
    headers: Mapping[str, str]
    body: str


@transaction.atomic
def answer_once(*, asker_id: UUID, key: str, sent_hash: str, act: Callable[[], Answer]) -> Answer:
    """What the act answers, or what was answered to the same within a day. A refusal made nothing and is not kept.

    The act answers refusals too, and raises none: what is written beside one, such as a wrong try, stays written.
    Raises StillUnderWay, and KeyUsedDifferently where something else was sent with the key.
    """
    _hold(asker_id, key)
    row = KeptAnswer.objects.filter(asker_id=asker_id, key=key).first()
    if row is not None and timezone.now() - row.at < KEPT_FOR:
        if row.sent_hash != sent_hash:
            raise KeyUsedDifferently
        return Answer(status=row.status, headers=row.headers, body=row.body)
    answer = act()
    if answer.status < HTTPStatus.MULTIPLE_CHOICES:
        if row is not None:
            row.delete()
        KeptAnswer.objects.create(asker_id=asker_id, key=key, sent_hash=sent_hash, **asdict(answer))
    return answer


def _hold(asker_id: UUID, key: str) -> None:
    """Until the transaction ends. SQLite has its lock on everything already, and whoever comes second waited for it.

    Raises StillUnderWay.
    """
    if connection.vendor != "postgresql":
        return
    name = int.from_bytes(sha256(f"{asker_id} {key}".encode()).digest()[:_LOCK_BYTES], signed=True)
    with connection.cursor() as cursor:
        cursor.execute("SELECT pg_try_advisory_xact_lock(%s)", [name])
        if cursor.fetchone() != (True,):
            raise StillUnderWay


def forget_all_with(text: str) -> None:
    """Answers in which the text stands are given to nobody any more."""
    KeptAnswer.objects.filter(body__contains=json.dumps(text, ensure_ascii=False)[1:-1]).delete()


def tidy() -> int:
    """Removes what was kept for long enough; how many answers that were."""
    removed, _ = KeptAnswer.objects.filter(at__lte=timezone.now() - KEPT_FOR).delete()
    return removed
