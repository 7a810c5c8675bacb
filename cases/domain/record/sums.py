"""What the events of a case come to: irrigants, instruments, images, sign-offs, halts, visits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from math import fsum
from typing import Any, TypeVar

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.events.visit_payloads import ClosePayload, OnSitePayload, ReopenPayload
from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.undone import past_stop, undone
from cases.domain.progress.uses import Use, uses
from cases.domain.record import words
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.sentences import sentence_of
from cases.domain.record.values.evidence import ImageListed
from cases.domain.record.values.materials import CanalVolume, Discarded, InstrumentUsed, IrrigantUsed
from cases.domain.record.values.sign_offs import AskCounts, SignOffRecord
from cases.domain.record.values.times import HaltEnd, HaltKind, HaltRecord, VisitRecord
from planning.foundation.tables import published
from planning.techniques.technique import Setting

P = TypeVar("P", bound=p.EventPayload)

ON_NO_SENSOR = ("film", "image_elsewhere")
"""Why an image step names no image although one was taken."""
REVIEW = timedelta(hours=published()["emergency.review_h"].value)
"""After an emergency the patient is seen again within this time."""


def irrigants(history: CaseHistory) -> tuple[IrrigantUsed, ...]:
    """The total of each irrigant over all steps and extra irrigations, to hundredths of a millilitre."""
    by_irrigant: dict[str, dict[str, list[float]]] = {}
    for fact in history.counting:
        payload = fact.payload
        if (
            isinstance(payload, p.StepPayload | p.IrrigatedPayload)
            and payload.irrigant
            and payload.volume_ml is not None
        ):
            by_irrigant.setdefault(payload.irrigant, {}).setdefault(fact.canal, []).append(payload.volume_ml)
    return tuple(
        IrrigantUsed(
            irrigant=name,
            volume_ml=round(fsum(each for volumes in canals.values() for each in volumes), 2),
            canals=tuple(CanalVolume(canal=canal, volume_ml=round(fsum(each), 2)) for canal, each in canals.items()),
        )
        for name, canals in sorted(by_irrigant.items())
    )


def instruments(history: CaseHistory) -> tuple[InstrumentUsed, ...]:
    """Every instrument that entered a canal or was discarded, in the order of first use."""
    by_event = {fact.event.id: fact for fact in history.facts}

    def named(event: CourseEvent) -> str | None:
        return instrument_of(history, by_event[event.id])

    by_instrument: dict[str, list[Use]] = {}
    events = [fact.event for fact in history.facts]
    for use in uses(events, undone(events), named):
        by_instrument.setdefault(use.instrument, []).append(use)
    return tuple(_instrument(history, by_event[each[0].event], each) for each in by_instrument.values())


def instrument_of(history: CaseHistory, fact: RecordedEvent) -> str | None:
    """Key of the instrument that a step or an inspection is about."""
    if isinstance(fact.payload, p.InspectedPayload):
        return history.version(fact).key(fact.payload.instrument)
    step = history.step(fact) if isinstance(fact.payload, p.StepPayload) else None
    return step.instrument if step else None


def _instrument(history: CaseHistory, first: RecordedEvent, uses: list[Use]) -> InstrumentUsed:
    key = uses[0].instrument
    version = history.version(first)
    kept = next((each for each in version.kit.instruments if each.key == key), None)
    last = max((number for number, use in enumerate(uses) if use.discarded), default=-1)
    # What the instrument had been used for elsewhere ends with a discard: after it a new one is at hand.
    before = kept.uses if kept and last < 0 else 0
    return InstrumentUsed(
        key=key,
        instrument=version.instrument(key) or key,
        canals=tuple(use.canal for use in uses if not use.discarded),
        discarded=sum(use.discarded for use in uses),
        uses=before + len(uses[last + 1 :]),
        most_uses=kept.most_uses if kept else None,
    )


def discarded(history: CaseHistory) -> tuple[Discarded, ...]:
    return tuple(
        Discarded(
            position=fact.position,
            instrument=history.version(fact).instrument(instrument_of(history, fact)) or "",
            canal=fact.canal,
            why=inspected.why,
            who=fact.who,
            at=fact.at,
        )
        for fact, inspected in _of(history, p.InspectedPayload)
        if inspected.found == "discarded"
    )


def images(history: CaseHistory) -> tuple[ImageListed, ...]:
    return tuple(
        ImageListed(
            position=fact.position,
            image_id=image.image_id,
            purpose=image.purpose,
            canal=fact.canal,
            who=fact.who,
            at=fact.at,
            counts=history.put_right.counts(image.image_id, fact.canal),
            removed=history.removed.get(image.image_id),
        )
        for fact, image in _of(history, p.ImagePayload)
    )


def sign_offs(history: CaseHistory) -> tuple[SignOffRecord, ...]:
    """Every sign-off of a supervisor at a hold point."""
    return tuple(
        SignOffRecord(
            position=fact.position,
            canal=fact.canal,
            hold_point=(step.hold_point or "") if (step := history.step(fact)) else "",
            said=Decision(sign_off.exit),
            despite_missing=sign_off.despite_missing,
            on_site=sign_off.on_site,
            reason=sign_off.reason,
            who=fact.who,
            at=fact.at,
            in_course=history.in_course(fact),
            image_gone=any(not history.put_right.counts(image, fact.canal) for image in _images_for(history, fact)),
        )
        for fact, sign_off in _of(history, p.SignOffPayload)
    )


def _images_for(history: CaseHistory, sign_off: RecordedEvent) -> set[str]:
    """Images that were recorded in the canal since the sign-off before it."""
    images: set[str] = set()
    for fact in history.counting:
        if fact.canal != sign_off.canal or fact.position >= sign_off.position:
            continue
        match fact.payload:
            case p.SignOffPayload():
                images.clear()
            case p.StepPayload(image_id=str(image)) | p.ImagePayload(image_id=image):
                images.add(image)
    return images


def asked(history: CaseHistory, decisions: int) -> AskCounts:
    """How many sign-offs and exposures there were, and how many were planned. `decisions` were taken on plans."""
    sign_offs, exposures = set[str](), set[str]()
    for fact in history.counting:
        match fact.payload:
            case p.SignOffPayload(together=together) if history.in_course(fact):
                # What was given for several canals at once is one sign-off.
                sign_offs.add(together or fact.event.id)
            # By the image's id, as one exposure may be recorded for several canals.
            case p.ImagePayload(image_id=image):
                exposures.add(image)
            case p.StepPayload(together=together, no_image=no_image) if no_image in ON_NO_SENSOR:
                exposures.add(together or fact.event.id)
    version = history.versions.get(history.course.plan) if history.course else None
    asks = version.plan.asks if version else None
    return AskCounts(
        sign_offs=decisions + len(sign_offs),
        exposures=len(exposures),
        planned_sign_offs=asks.sign_offs if asks else None,
        planned_exposures=asks.exposures if asks else None,
    )


def halts(history: CaseHistory) -> tuple[HaltRecord, ...]:
    """Pauses, instruments past their stop, emergencies; each with what let the work go on."""
    records: list[HaltRecord] = []
    # By canal ('' for the tooth): places in `records` of what still halts. By place: the events that make it halt.
    open_: dict[str, list[int]] = {}
    by: dict[int, set[str]] = {}
    for fact in history.counting:
        if isinstance(fact.payload, ReopenPayload) and history.in_course(fact):
            records = [_seen_again(halt, fact) for halt in records]
        if (halt := _halt(history, fact)) is not None:
            open_.setdefault(halt.canal, []).append(len(records))
            by[len(records)] = {fact.event.id}
            records.append(halt)
            continue
        if not history.in_course(fact):
            continue
        match fact.payload:
            case p.CorrectedPayload() as correction:
                _correct(history, records, open_, by, fact, correction)
            case p.AnswerPayload() as answer if (asked := _number_of(history, records, answer.asks)) is not None:
                records[asked] = replace(records[asked], cause=words.cause(answer.cause))
                if answer.cause == "stop_moved":
                    open_[fact.canal].remove(asked)
                    records[asked] = replace(records[asked], ended=_end(fact, words.cause(answer.cause)))
            case p.ResumePayload() as resume:
                seen = set(resume.ends)
                still = []
                for number in open_.pop(fact.canal, ()):
                    by[number] -= seen or by[number]  # a resume that names no event ends all
                    if by[number]:
                        still.append(number)
                    else:
                        records[number] = replace(records[number], ended=_end(fact, resume.reason))
                open_[fact.canal] = still
    return tuple(records)


def _seen_again(halt: HaltRecord, fact: RecordedEvent) -> HaltRecord:
    return replace(halt, seen_again=fact.at) if halt.review_by and not halt.seen_again else halt


def _correct(
    history: CaseHistory,
    records: list[HaltRecord],
    open_: dict[str, list[int]],
    by: dict[int, set[str]],
    fact: RecordedEvent,
    correction: p.CorrectedPayload,
) -> None:
    """Adds a correction to what its emergency's record says. If it was something else, that halts the tooth anew."""
    number = _number_of(history, records, correction.corrects)
    if number is None:
        return
    records[number] = replace(
        records[number], says=f"{records[number].says}. {sentence_of(fact, history)} ({fact.who.name})"
    )
    if correction.what is None:
        # It was not so: nobody has to be seen again for it.
        records[number] = replace(records[number], review_by=None)
    else:
        by[number].add(fact.event.id)
        if number not in open_.setdefault("", []):
            open_[""].append(number)
            records[number] = replace(records[number], ended=None)


def _halt(history: CaseHistory, fact: RecordedEvent) -> HaltRecord | None:
    common: dict[str, Any] = {"position": fact.position, "who": fact.who, "at": fact.at, "cause": "", "ended": None}
    says = sentence_of(fact, history)
    match fact.payload:
        case p.EmergencyPayload():
            # Also where a canal was named: it halts the whole tooth.
            review_by = fact.at + REVIEW if history.version(fact).plan.setting == Setting.CLINIC else None
            return HaltRecord(kind=HaltKind.EMERGENCY, canal="", says=says, review_by=review_by, **common)
        case p.PausePayload() if history.in_course(fact):
            return HaltRecord(kind=HaltKind.PAUSE, canal=fact.canal, says=says, **common)
        case p.StepPayload() if past_stop(fact.event) and history.in_course(fact):
            return HaltRecord(kind=HaltKind.PAST_STOP, canal=fact.canal, says=says, **common)
    return None


def _number_of(history: CaseHistory, records: list[HaltRecord], event: str) -> int | None:
    position = next((fact.position for fact in history.facts if fact.event.id == event), None)
    return next((number for number, halt in enumerate(records) if halt.position == position), None)


def _end(fact: RecordedEvent, reason: str) -> HaltEnd:
    return HaltEnd(position=fact.position, who=fact.who, at=fact.at, reason=reason)


def visits(history: CaseHistory) -> tuple[VisitRecord, ...]:
    """The visits, each from the first event or a reopening to the next closing."""
    records: list[VisitRecord] = []
    for fact in history.counting:
        opens = isinstance(fact.payload, ReopenPayload) and history.in_course(fact)
        # Nothing tells of the first visit's beginning but its first event.
        if not records or opens:
            records.append(_visit(len(records) + 1, fact))
        match fact.payload:
            case ClosePayload(access_sealed=sealed, note=note) if history.in_course(fact):
                records[-1] = replace(
                    records[-1], closed_at=fact.at, closed_by=fact.who, access_sealed=sealed, note=note
                )
            case OnSitePayload(supervisor_id=id_) | ReopenPayload(supervisor_id=id_):
                named = history.people.get(id_)
                if named and named not in records[-1].on_site:
                    records[-1] = replace(records[-1], on_site=(*records[-1].on_site, named))
    return tuple(records)


def _visit(number: int, fact: RecordedEvent) -> VisitRecord:
    return VisitRecord(
        number=number,
        opened_at=fact.at,
        opened_by=fact.who,
        on_site=(),
        closed_at=None,
        closed_by=None,
        access_sealed=None,
        note="",
    )


def _of(history: CaseHistory, kind: type[P]) -> Iterator[tuple[RecordedEvent, P]]:
    """The events of one kind that count, each with its payload."""
    return ((fact, fact.payload) for fact in history.counting if isinstance(fact.payload, kind))
