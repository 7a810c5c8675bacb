"""What was done: the treatment of the tooth as a whole, and each step of it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from cases.domain.events.kinds import EventKind
from cases.domain.progress.canal_progress import CanalState
from cases.domain.record.values.record import Record
from cases.domain.record.values.timeline import TimelineEntry
from cases.domain.record.values.work import StepRecord
from cases.domain.record.words import plain
from cases.exports.fhir.codes import ROOT_CANAL_THERAPY, Codes
from cases.exports.fhir.elements import (
    Annotation,
    CodeableConcept,
    Element,
    Extension,
    Identifier,
    Period,
    Reference,
    Resource,
    meta,
    urn,
)
from cases.exports.fhir.tooth import TARGET, person_reference, site, subject
from cases.models import Case

Group = Callable[[StepRecord, str], str | None]
"""The id of the group of steps that a step of a canal was planned in; None where no plan has it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Performer(Element):
    actor: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class Procedure(Resource):
    resource_type: ClassVar[str] = "Procedure"
    extension: tuple[Extension, ...]
    identifier: tuple[Identifier, ...]
    based_on: tuple[Reference, ...] = ()
    part_of: tuple[Reference, ...] = ()
    status: str
    code: CodeableConcept
    subject: Reference
    performed_date_time: datetime | None = None
    performed_period: Period | None = None
    performer: tuple[Performer, ...]
    body_site: tuple[CodeableConcept, ...]
    outcome: CodeableConcept | None = None
    note: tuple[Annotation, ...] = ()
    used_code: tuple[CodeableConcept, ...] = ()


def treatment(record: Record, case: Case, codes: Codes, plans: Mapping[int, object]) -> Iterator[Procedure]:
    """The whole of the work, by the id of its case; nothing before any was done. `plans` are ids by their number."""
    done = [entry for entry in record.timeline if entry.kind is EventKind.STEP and not entry.undone]
    if not done:
        return
    finished = all(canal.state is CanalState.FINISHED for canal in record.canals)
    numbers = dict.fromkeys(entry.version for entry in done)
    # In the order of the record; by the clocks of several devices a later step may be the earlier one.
    times = sorted(entry.at for entry in done)
    yield Procedure(
        id=str(case.pk),
        meta=meta(record.last_at),
        extension=site(TARGET, case.pk),
        identifier=(urn(case.pk),),
        based_on=tuple(Reference(reference=f"CarePlan/{plans[number]}") for number in numbers if number in plans),
        status="completed" if finished else "in-progress",
        code=CodeableConcept(coding=(ROOT_CANAL_THERAPY,), text="Root canal treatment, for training"),
        subject=subject(case),
        performed_period=Period(start=times[0], end=times[-1] if finished else None),
        performer=(_performer(record.student.id, record.student.name),),
        body_site=(codes.tooth(case.tooth.iso),),
        note=(Annotation(text=record.notice),),
    )


def steps(
    record: Record,
    case: Case,
    codes: Codes,
    canals: Mapping[str, object],
    group: Group,
    taken_back: Mapping[str, datetime],
) -> Iterator[Procedure]:
    """Each step that was done, by the id of its event; `canals` by their names with their ids. One that was taken back
    is entered in error since then.
    """
    planned = {
        (canal.canal, step.position): step
        for canal in record.canals
        for step in canal.steps
        if step.position is not None
    }
    for entry in record.timeline:
        if entry.kind is not EventKind.STEP:
            continue
        step = planned.get((entry.canal, entry.position))
        request = group(step, entry.canal) if step else None
        yield Procedure(
            id=entry.event_id,
            meta=meta(taken_back.get(entry.event_id, entry.at)),
            extension=site(TARGET, canals.get(entry.canal, case.pk)),
            identifier=(urn(entry.event_id),),
            based_on=(Reference(reference=f"ServiceRequest/{request}"),) if request else (),
            part_of=() if entry.undone else (Reference(reference=f"Procedure/{case.pk}"),),
            status="entered-in-error" if entry.undone else "completed",
            code=CodeableConcept(text=f"{entry.canal}: {plain(step.action)}" if step else entry.says),
            subject=subject(case),
            performed_date_time=entry.at,
            performer=(_performer(entry.who.id, entry.who.name),),
            body_site=(codes.tooth(case.tooth.iso),),
            outcome=CodeableConcept(text=plain(step.how)) if step and step.how else None,
            note=tuple(Annotation(text=text) for text in _notes(entry)),
            used_code=(CodeableConcept(text=_instrument(step)),) if step and step.instrument else (),
        )


def _notes(entry: TimelineEntry) -> Iterator[str]:
    yield entry.says
    if entry.out_of_course:
        yield f"Out of course: {entry.out_of_course_says}"
    if entry.not_checked_says:
        yield f"Not checked: {entry.not_checked_says}"


def _instrument(step: StepRecord) -> str:
    """The instrument by size and taper, since no free code has it, with its stop and how deep it went."""
    stop = "" if step.stop_mm is None else f", stop {step.stop_mm:g} mm"
    depth = "" if step.depth_mm is None else f", tip at {step.depth_mm:g} mm"
    return f"{step.instrument}{stop}{depth}"


def _performer(id_: str, name: str) -> Performer:
    return Performer(actor=person_reference(id_, name))
