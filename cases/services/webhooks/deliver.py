"""The worker: looks what is due, and sends it, each receiver's in a thread of its own."""

from __future__ import annotations

import json
import logging
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from functools import partial
from itertools import count
from threading import Event, Lock
from typing import Any, Protocol
from uuid import UUID

from django.db import DatabaseError, connection
from django.utils import timezone
from requests_hardened import HTTPSession

from cases.domain.webhooks import signature
from cases.models import Change, Delivery, Webhook
from cases.services.webhooks import line, outbox
from cases.services.webhooks.outbox import Batch

logger = logging.getLogger(__name__)

Write = Callable[[Change], Mapping[str, Any]]
"""What a change is told as: the body of its message."""

AT_ONCE = 32
"""Receivers that one process is at. A slow receiver holds up its own thread and no other's."""
PAUSE_S = 1.0
BESIDE_EVERY = 10
"""Turns. What is sent beside webhooks has no feed that says at once whether something is new."""


class Send(Protocol):
    """Sends what is due to one receiver, unless it is stopped."""

    def __call__(self, to: UUID, *, stopped: Event) -> None: ...


@dataclass(frozen=True, slots=True)
class Sending:
    """What is sent beside webhooks: to whom something is due, and what sends it."""

    due: Callable[[], Iterable[UUID]]
    send: Send


@dataclass(slots=True)
class Worker:
    """Sends until it is stopped; then it ends what is on its way and gives back what it holds."""

    write: Write
    beside: Sequence[Sending] = ()
    stopped: Event = field(default_factory=Event)
    _at: set[UUID] = field(default_factory=set)
    _lock: Lock = field(default_factory=Lock)

    def run(self) -> None:
        with ThreadPoolExecutor(AT_ONCE, thread_name_prefix="webhook") as threads:
            for turn in count():
                if self.stopped.is_set():
                    break
                try:
                    for to, work in self._due(beside=turn % BESIDE_EVERY == 0):
                        self._begin(threads, to, work)
                except DatabaseError as away:
                    # It is looked for again with the next turn.
                    logger.warning("The database is away: %s", type(away).__name__)
                    connection.close()
                self.stopped.wait(PAUSE_S)
        connection.close()

    def run_once(self) -> None:
        """Sends what is due now, one receiver after another."""
        for to, work in self._due(beside=True):
            work(to)

    def _due(self, *, beside: bool) -> Iterator[tuple[UUID, Callable[[UUID], None]]]:
        outbox.number_feeds()
        for webhook_id in outbox.due():
            yield webhook_id, self._work
        for sending in self.beside if beside else ():
            for to in sending.due():
                yield to, partial(sending.send, stopped=self.stopped)

    def _begin(self, threads: ThreadPoolExecutor, to: UUID, work: Callable[[UUID], None]) -> None:
        with self._lock:
            if to in self._at or len(self._at) >= AT_ONCE:
                return
            self._at.add(to)
        threads.submit(self._work_apart, to, work)

    def _work_apart(self, to: UUID, work: Callable[[UUID], None]) -> None:
        try:
            work(to)
        except Exception:
            # What is held is free once the lease ends.
            logger.exception("%s: its messages wait.", to)
        finally:
            connection.close()
            with self._lock:
                self._at.discard(to)

    def _work(self, webhook_id: UUID) -> None:
        with line.session() as lines:
            while not self.stopped.is_set() and (batch := outbox.take_up(webhook_id=webhook_id)):
                self._send_all(lines, batch)
                outbox.give_back(batch=batch)

    def _send_all(self, lines: HTTPSession, batch: Batch) -> None:
        put_off = set()
        for delivery in batch.deliveries:
            if delivery.change_id and delivery.case_id in put_off:
                continue
            reply = self._send(lines, batch.webhook, delivery)
            if not reply.taken:
                put_off.add(delivery.case_id)
            if not outbox.note(batch=batch, delivery=delivery, reply=reply) or self.stopped.is_set():
                return

    def _send(self, lines: HTTPSession, webhook: Webhook, delivery: Delivery) -> line.Reply:
        message = self.write(delivery.change) if delivery.change else _test(webhook)
        body = json.dumps(message, ensure_ascii=False, separators=(",", ":"))
        return line.post(lines, webhook.address, headers=_headers(webhook, delivery, body), body=body)


def _headers(webhook: Webhook, delivery: Delivery, body: str) -> dict[str, str]:
    now = timezone.now()
    secrets = [webhook.secret]
    if webhook.secret_before_until and now < webhook.secret_before_until:
        secrets.append(webhook.secret_before)
    id_, at_s = message_id(webhook, delivery), int(now.timestamp())
    return {
        "Content-Type": "application/json",
        "webhook-id": id_,
        "webhook-timestamp": str(at_s),
        "webhook-signature": signature(secrets, id=id_, at_s=at_s, body=body),
    }


def message_id(webhook: Webhook, delivery: Delivery) -> str:
    """The same whenever the same change is sent to the webhook, after a replay too."""
    return f"{webhook.pk.hex}-{delivery.change.bookmark if delivery.change else delivery.pk.hex}"


def _test(webhook: Webhook) -> Mapping[str, Any]:
    return {"type": "test", "timestamp": timezone.now().isoformat(), "data": {"webhook_id": str(webhook.pk)}}
