"""Where the work on a case stands: its events folded over the run sheets of its plans."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from uuid import UUID

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.payloads import EventPayload
from cases.domain.events.registry import BY_SERVER
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.course import fold
from cases.mapping.plans import plan_of
from cases.models.events import FoldKept, TreatmentEvent
from cases.models.plans import ToothPlanVersion
from cases.models.prepared import Prepared
from planning.depth.last_depth import Ahead, ahead
from planning.foundation.encoding import Mode, decode
from planning.lengths.readings import LengthState
from planning.techniques.technique import Setting

# Reading a plan takes longer than folding a visit; so many are worked on in one clinic.
PLANS_KEPT = 64


events_of = Prepared(lambda case: TreatmentEvent.objects.filter(case=case).order_by("position"))
"""The events of a case, in order."""


def fold_events(case_id: UUID, events: Sequence[CourseEvent]) -> tuple[CaseState, UUID] | None:
    """The fold of all events of the case, and the version in force; None before one was."""
    in_force = {event.plan for event in events if event.kind is EventKind.REPLAN}
    if not in_force:
        return None
    ids = dict(ToothPlanVersion.objects.filter(case_id=case_id, hash__in=in_force).values_list("hash", "pk"))
    versions = {hash_: plan_facts(id_) for hash_, id_ in ids.items()}
    setting = next(iter(versions.values())).setting  # fixed once a length is recorded: every version has the same
    course = fold({hash_: version.sheets for hash_, version in versions.items()}, events, setting=setting)
    return course, ids[course.plan]


def work_has_begun(events: Iterable[TreatmentEvent]) -> bool:
    """Whether anything was done: what is recorded here is a decision, and comes before any work."""
    return any(event.kind not in BY_SERVER for event in events)


@dataclass(frozen=True, slots=True)
class PlanFacts:
    """What the work at the chair asks of a version."""

    sheets: Sheets
    setting: Setting
    ahead: Mapping[str, Ahead]
    """What is expected of each canal before anything was recorded."""
    lengths: Mapping[str, LengthState]
    """The state of each canal's length: settled, estimated or another."""
    names: Mapping[str, str]
    """Written sizes of the instruments by their keys."""


@lru_cache(PLANS_KEPT)
def plan_facts(version_id: UUID) -> PlanFacts:
    """What the work asks of the version. A version never changes, so it is read once."""
    plan = plan_of(ToothPlanVersion.objects.get(pk=version_id))
    return PlanFacts(
        sheets={canal.canal: canal.run_sheet for canal in plan.canals},
        setting=Setting(plan.setting),
        ahead={canal.canal: ahead(canal.expectation) for canal in plan.canals},
        lengths={canal.canal: canal.length.state for canal in plan.canals},
        names={item.instrument.key: item.instrument.name for item in plan.tray_list},
    )


def read_worked() -> None:
    """Reads the plans that are worked now, those that something was told of last. Their first polls then do not."""
    # An id begins with the time at which it was made (RFC 9562, version 7).
    worked = FoldKept.objects.exclude(case__running_work__finished=True).order_by("-last_id")
    for version_id in worked.values_list("version_id", flat=True)[:PLANS_KEPT]:
        plan_facts(version_id)


def course_event(event: TreatmentEvent) -> CourseEvent:
    return CourseEvent(
        id=str(event.pk),
        actor=str(event.actor_id),
        plan=event.plan_hash,
        canal=event.canal,
        node=event.node,
        payload=payload_of(event),
        not_checked=NotChecked(event.not_checked) if event.not_checked else None,
    )


def payload_of(event: TreatmentEvent) -> EventPayload:
    """What the event carries."""
    # As it was kept: what was told by the bounds of its day is not refused by today's.
    return event.payload or decode(EventPayload, json.loads(event.text), Mode.KEPT)
