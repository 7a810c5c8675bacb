"""Many cases as copies of one, made in bulk: what a school has after years."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from django.utils import timezone

from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import ReplanPayload
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.uuid7 import uuid7
from cases.models import (
    CanalPlan,
    Case,
    DemoPatient,
    PlanTexts,
    Review,
    RunningWork,
    Tooth,
    ToothPlanVersion,
    TreatmentEvent,
)
from cases.services.treatment.server_events import HERE
from planning.foundation.encoding import canonical_text

IN_BULK = 2_000


def copies(like: ToothPlanVersion, count: int, *, state: PlanState = PlanState.APPROVED) -> Iterator[ToothPlanVersion]:
    """Cases with one plan each, all with the content of `like`, approved unless another state is asked for."""
    for start in range(0, count, IN_BULK):
        yield from _copies(like, min(IN_BULK, count - start), state)


def at_work(cases: Iterable[Case], *, waits: bool) -> None:
    """Four canals of each case are at work and wait for a sign-off, or go on."""
    canal = {"canal": "P", "state": "hold_point", "hold_point": "length", "out_of_band": None}
    none = {"plan_hash": "", "emergencies": [], "check_due": False, "missing": [], "now": None}
    text = canonical_text({**none, "canals": [canal] * 4})
    now = timezone.now()
    shared = {"position": 1, "halted": False, "finished": False, "changed_at": now, "text": text}
    since = now if waits else None
    RunningWork.objects.bulk_create(
        (RunningWork(case=case, programme_id=case.programme_id, waiting_since=since, **shared) for case in cases),
        batch_size=IN_BULK,
    )


def _copies(like: ToothPlanVersion, count: int, state: PlanState) -> list[ToothPlanVersion]:
    now = timezone.now()
    patients = [DemoPatient(programme_id=like.case.programme_id, alias=f"Copy {uuid7()}"[:40]) for _ in range(count)]
    cases = [
        Case(
            sent_hash="",
            programme_id=like.case.programme_id,
            patient=patient,
            student_id=like.case.student_id,
            setting=like.case.setting,
        )
        for patient in patients
    ]
    versions = [_version(like, case, state, now) for case in cases]
    canals = list(like.canal_plans.all())
    DemoPatient.objects.bulk_create(patients)
    Case.objects.bulk_create(cases)
    Tooth.objects.bulk_create(Tooth(case=case, iso="26", notation="iso_3950", designation="26") for case in cases)
    ToothPlanVersion.objects.bulk_create(versions)
    PlanTexts.objects.bulk_create(_texts(like.texts, version) for version in versions)
    CanalPlan.objects.bulk_create(_canal(canal, version) for version in versions for canal in canals)
    if state is PlanState.APPROVED:
        decision = like.reviews.get(decision=Decision.APPROVED)
        Review.objects.bulk_create(
            Review(sent_hash="", version=version, asked=1, supervisor_id=decision.supervisor_id, decision="approved")
            for version in versions
        )
        TreatmentEvent.objects.bulk_create(_in_force(version, decision.supervisor_id, now) for version in versions)
    return versions


def _in_force(version: ToothPlanVersion, by: Any, now: Any) -> TreatmentEvent:
    """What is recorded when a first plan is approved."""
    return TreatmentEvent(
        sent_hash="",
        case_id=version.case_id,
        version=version,
        position=1,
        actor_id=by,
        device=HERE,
        device_seq=1,
        device_time=now,
        seen_position=0,
        plan_hash=version.hash,
        kind=EventKind.REPLAN,
        text=canonical_text(ReplanPayload(replaces=version.hash)),
    )


def _version(like: ToothPlanVersion, case: Case, state: PlanState, now: Any) -> ToothPlanVersion:
    kept = ("number", "author_id", "kit_id", "technique_key", "hash", "intent_hash")
    also = ("programme_id", "planner_version", "stops", "cautions", "difficulty")
    same = {name: getattr(like, name) for name in (*kept, *also)}
    times = {"submitted_at": now, "decided_at": now}
    return ToothPlanVersion(sent_hash="", case=case, case_revision=1, asked=1, state=state, **same, **times)


def _texts(like: PlanTexts, version: ToothPlanVersion) -> PlanTexts:
    return PlanTexts(version=version, packed=like.packed, given_length=like.given_length)


def _canal(like: CanalPlan, version: ToothPlanVersion) -> CanalPlan:
    kept = ("place", "canal", "length_state", "stop_um", "end_um", "final_size", "final_taper")
    return CanalPlan(version=version, **{name: getattr(like, name) for name in kept})
