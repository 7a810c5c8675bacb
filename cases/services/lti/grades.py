"""Grades go back to the courses' platforms: 1 while the plan that stands is approved, none before and after.

What is to be told is read from the case, each time anew: nothing is lost with a message, and reviews know nothing of
it. A worker moves the time at which a grade is due past its lease, on the condition that nobody else did.
"""

from __future__ import annotations

import logging
from dataclasses import dataclass
from datetime import datetime, timedelta
from threading import Event
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.lti import Progress
from cases.domain.webhooks import MOST_RETRY_AFTER_S, TRIED_FOR_S, wait_s
from cases.models import LtiPlatform, LtiWork
from cases.models.lti import LtiWorkSet
from cases.services.lti.line import PlatformSession
from cases.services.lti.scores import Refusal, ScoreLine

logger = logging.getLogger(__name__)

LEASE = timedelta(seconds=120)
"""Longer than two tokens and two scores take at the most."""
AT_A_TIME = 50
STEP = timedelta(milliseconds=1)
"""Between two timestamps of the same student and line item: the standard has each later than the one before."""


@dataclass(frozen=True, slots=True)
class Held:
    """A grade under lease, as it is told."""

    work: LtiWork
    progress: Progress


def due() -> list[UUID]:
    """Active platforms that are to be told a grade."""
    return list(_due(timezone.now()).order_by().values_list("person__platform", flat=True).distinct())


def _due(now: datetime) -> LtiWorkSet:
    return LtiWork.objects.untold().filter(due_at__lte=now, person__platform__active=True)


def send(to: UUID, *, stopped: Event) -> None:
    """Tells the platform what is due, one grade after another, unless it is away."""
    works = _due(timezone.now()).filter(person__platform=to).order_by("due_at").values_list("pk", flat=True)
    with PlatformSession() as session:
        line = ScoreLine(LtiPlatform.objects.get(pk=to), session)
        for work_id in works[:AT_A_TIME]:
            if stopped.is_set():
                return
            held = take_up(work_id=work_id)
            if held is None:
                continue
            refusal = line.put(held.work, held.progress)
            note(held=held, refusal=refusal)
            if refusal and refusal.away:
                return


@transaction.atomic
def take_up(*, work_id: UUID) -> Held | None:
    """The grade as it is now, under a lease; None where it is due no more, or somebody else has it."""
    now = timezone.now()
    work = _due(now).with_progress().select_related("person").filter(pk=work_id).first()
    if work is None:
        return None
    sent_at = now.replace(microsecond=now.microsecond // 1000 * 1000)
    if work.sent_at is not None:
        sent_at = max(sent_at, work.sent_at + STEP)
    free = LtiWork.objects.filter(pk=work.pk, due_at=work.due_at)
    work.due_at, work.sent_at = now + LEASE, sent_at
    taken = free.update(due_at=work.due_at, sent_at=sent_at)
    progress = Progress(work.progress)  # type: ignore[attr-defined]
    return Held(work, progress) if taken else None


@transaction.atomic
def note(*, held: Held, refusal: Refusal | None) -> None:
    """Writes down what came of it; nothing where the lease was lost."""
    work, now = held.work, timezone.now()
    row = LtiWork.objects.filter(pk=work.pk, due_at=work.due_at)
    if refusal is None:
        row.update(progress_told=held.progress, tries=0, first_tried_at=None, due_at=now, refusal="")
        return
    tries, first_tried_at = work.tries + 1, work.first_tried_at or now
    again_at: datetime | None = now + timedelta(
        seconds=max(wait_s(tries), min(refusal.retry_after_s, MOST_RETRY_AFTER_S))
    )
    if again_at is not None and again_at > first_tried_at + timedelta(seconds=TRIED_FOR_S):
        again_at = None
        logger.warning("The grade of %s was given up: %s", work.pk, refusal.says)
    row.update(tries=tries, first_tried_at=first_tried_at, due_at=again_at, refusal=refusal.says)
