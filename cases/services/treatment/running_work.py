"""Keeps where the work on a case stands, so that a list of a thousand running cases folds none of them."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.progress import summary
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.summary import CaseSummary, StepInHand
from cases.domain.progress.visit import Prerequisite
from cases.domain.push import news
from cases.mapping import courses, folds
from cases.mapping.folds import CaseFolded
from cases.models import Case, RunningWork, TreatmentEvent
from cases.models.prepared import Prepared
from cases.models.whole_rows import WholeRows
from cases.services.common.locking import locked
from cases.services.people import push
from planning.depth.last_depth import Ahead
from planning.foundation.encoding import canonical_text, decode, encode

_ROW = Prepared(lambda case: RunningWork.objects.filter(case=case))
_LINES = WholeRows(RunningWork)

WAITS = frozenset({CanalState.HOLD_POINT, CanalState.PAUSED, CanalState.PAST_STOP, CanalState.TO_CHECK})
"""States that a supervisor ends, or that end by an answer which a supervisor will want to see."""


def keep(case: Case, work: CaseFolded) -> None:
    """Stores the case's line and notifies supervisors of what waits for them. The caller holds the case's lock."""
    before = _ROW.first(case.pk)
    if before is None and not courses.work_has_begun(work.new):
        return
    row = before or RunningWork(case=case)
    course = work.folded.course
    at = work.new[-1].server_time if work.new else row.changed_at
    # What the row has seen was notified then.
    fresh = {str(event.pk) for event in work.new if before is None or event.position > before.position}
    case_summary = _summary_of(case, work, before.learned if before else "")
    halted = course.halted_by is not None
    visit = course.visit
    over = visit.closed or all(canal.state is CanalState.FINISHED for canal in case_summary.canals)
    # While a visit is closed its canals wait for nothing but its check.
    waiting = not visit.closed and any(canal.asked or canal.state in WAITS for canal in case_summary.canals)
    waits = (
        halted
        or waiting
        or visit.check_due
        or bool({Prerequisite.APPROVAL_LAPSED, Prerequisite.REVOKED} & set(case_summary.missing))
    )
    shown: dict[str, Any] = json.loads(before.text) if before else {"canals": (), "now": None}
    # The hold point at which each canal waited already.
    waited = {canal["canal"]: canal["hold_point"] for canal in shown["canals"]}
    row.programme_id = case.programme_id
    row.position = work.position
    row.halted = halted
    # An emergency stays on the list until a supervisor resumes, whatever else was recorded.
    row.finished = over and not halted and not visit.check_due
    row.waiting_since = (row.waiting_since or at) if waits else None
    row.step_since = _since(row.step_since, shown["now"], case_summary.now, at)
    row.changed_at = at
    row.on_site_id = visit.on_site or None
    row.taken_over_id = course.taken_over.by or None
    row.text = canonical_text(case_summary)
    _LINES.put(row)
    push.tell(case, news(course, case_summary.canals, waited, fresh))


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """What is expected of a plan's canals after all that was recorded up to the event at `position`."""

    plan: str
    position: int
    canals: dict[str, Ahead]


@transaction.atomic
def learn(*, case_id: UUID, learned: Learned) -> None:
    """Stores what was worked out for the chair, for lists to judge by too. What is no newer than theirs is dropped."""
    if not _newer(RunningWork.objects.filter(case_id=case_id).first(), learned):
        return
    case = locked(case_id)
    # Once more, now that nobody else can write: another request may have stored something newer meanwhile.
    row = RunningWork.objects.get(case=case)
    if not _newer(row, learned):
        return
    row.learned = canonical_text(learned)
    row.save(update_fields=["learned"])
    if (work := folds.folded(case_id)) is not None:
        keep(case, work)


def _newer(row: RunningWork | None, learned: Learned) -> bool:
    if row is None or not row.learned:
        return row is not None
    known = decode(Learned, json.loads(row.learned))
    return (known.plan, known.position) != (learned.plan, learned.position) and known.position <= learned.position


def _told(course: CaseState) -> dict[str, tuple[str, datetime]]:
    """For each event about an emergency that halts the tooth: the name of who told it, and when the server had it."""
    ids = {
        id_
        for emergency in course.emergencies.open
        for id_ in (emergency.id, emergency.corrected_by, emergency.coming_by)
        if id_
    }
    rows = TreatmentEvent.objects.filter(pk__in=ids).select_related("actor") if ids else ()
    return {str(row.pk): (str(row.actor), row.server_time) for row in rows}


def _summary_of(case: Case, work: CaseFolded, learned: str) -> CaseSummary:
    course, events, version = work.folded.course, work.folded.events, work.facts
    known = decode(Learned, json.loads(learned)) if learned else None
    ahead = known.canals if known and known.plan == course.plan else version.ahead
    return CaseSummary(
        plan_hash=course.plan,
        emergencies=summary.emergencies(course, _told(course)),
        check_due=course.visit.check_due,
        missing=course.missing,
        canals=summary.canals(course, events, ahead),
        now=summary.in_hand(course, events, course.taken_over.by or str(case.student_id), version.names),
    )


def _since(since: datetime | None, before: Any, now: StepInHand | None, at: datetime) -> datetime | None:
    """Since when the step is in hand, by the server's clock: a device's may be wrong. `before` is the one until then,
    as JSON data, and `since` its time.
    """
    if now is None:
        return None
    return since if before == encode(now) else at
