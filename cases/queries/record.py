"""The record of a case, read from everything that is kept of it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from uuid import UUID

from django.db.models import Prefetch, Q

from cases import models
from cases.domain.access.roles import Role
from cases.domain.images import ImageState, RemovalReason
from cases.domain.plans.acknowledged import Named, to_acknowledge
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.own_lengths import OwnLength
from cases.domain.plans.telling import whole
from cases.domain.record import cautions, shapes, steps, sums, timeline, words
from cases.domain.record.case_history import CaseHistory, RecordedEvent, Version
from cases.domain.record.deviations import deviations
from cases.domain.record.values.evidence import Entered, ImagePutRight, ImageRemoval, StruckReading
from cases.domain.record.values.plans import AcknowledgedRecord, DecisionRecord, OverrideRecord, VersionRecord
from cases.domain.record.values.record import Record
from cases.domain.record.values.timeline import RecordPerson
from cases.domain.record.values.work import CanalRecord
from cases.domain.struck import StruckWhy
from cases.mapping import folds
from cases.mapping.courses import course_event
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, ChangeLog, FormerMembership, Membership, Person, Review, ToothPlanVersion, TreatmentEvent
from cases.queries import charts
from planning.foundation.encoding import canonical_text, digest
from planning.whole_tooth.plan import NOTICE


@dataclass(frozen=True, slots=True)
class RecordShown:
    """A record with the hash of its canonical text, by which a printed one is compared."""

    record: Record
    hash: str
    """SHA-256 of the record's canonical text; a printed record carries it."""


def record_of(case_id: UUID) -> RecordShown:
    """The record of the case as it stands. The same content has the same hash."""
    made = _Made(case_id).record()
    return RecordShown(made, digest(canonical_text(made)))


class _Made:
    """Everything that is kept of one case, and the record of it."""

    def __init__(self, case_id: UUID) -> None:
        self.chart = charts.shown(case_id)
        self.case: Case = self.chart.row
        self.rows = list(TreatmentEvent.objects.filter(case=self.case).select_related("actor").order_by("position"))
        self.versions = _versions(self.case)
        self.roles = _roles(self.case)
        self.history = self._history()

    def record(self) -> Record:
        history = self.history
        last = self.rows[-1] if self.rows else None
        made = Record(
            notice=NOTICE,
            programme=self.case.programme.name,
            invented=self.case.programme.invented,
            case_id=str(self.case.pk),
            patient_alias=self.case.patient.alias,
            tooth=self.chart.names,
            setting=self.case.setting,
            student=self._person(self.case.student),
            supervisor=self._person(self.case.supervisor) if self.case.supervisor else None,
            opened_at=self.case.created_at,
            position=last.position if last else 0,
            last_at=last.server_time if last else self.case.created_at,
            entered=self._entered(),
            versions=tuple(self._version(row) for row in self.versions if row.hash in history.versions),
            canals=tuple(self._canal(each) for each in self.chart.canals),
            struck=self._struck(),
            images_put_right=self._images_put_right(),
            cautions=cautions.cautions(sorted(history.versions.values(), key=lambda each: each.number)),
            overrides=self._overrides(),
            asked=sums.asked(
                history, sum(len(row.reviews.all()) for row in self.versions if row.hash in history.versions)
            ),
            sign_offs=sums.sign_offs(history),
            halts=sums.halts(history),
            visits=sums.visits(history),
            irrigants=sums.irrigants(history),
            instruments=sums.instruments(history),
            discarded=sums.discarded(history),
            images=sums.images(history),
            timeline=timeline(history),
        )
        return replace(made, deviations=deviations(made))

    def _history(self) -> CaseHistory:
        people = {str(person.pk): self._person(person) for person in self._members()}
        # Also of those who have left the programme: what they did stays theirs.
        people |= {str(row.actor_id): self._person(row.actor) for row in self.rows}
        return CaseHistory(
            facts=tuple(self._fact(row) for row in self.rows),
            versions={row.hash: _version(row) for row in self.versions if self._matters(row)},
            course=folds.course_of(self.case.pk, self.rows),
            people=people,
            removed=self._removed(),
        )

    def _removed(self) -> dict[str, ImageRemoval]:
        rows = self.case.images.filter(state=ImageState.REMOVED).select_related("removed_by")
        return {
            str(row.pk): ImageRemoval(
                who=self._person(row.removed_by), at=row.removed_at, reason=RemovalReason(row.removed_for)
            )
            for row in rows
            if row.removed_by and row.removed_at
        }

    def _matters(self, row: ToothPlanVersion) -> bool:
        """A version that was decided on, worked from, or stands."""
        worked = any(event.version_id == row.pk for event in self.rows)
        return worked or row.state != PlanState.SUPERSEDED or bool(row.reviews.all())

    def _fact(self, row: TreatmentEvent) -> RecordedEvent:
        return RecordedEvent(
            event=course_event(row),
            position=row.position,
            at=row.server_time,
            device_time=row.device_time,
            who=self._person(row.actor),
        )

    def _members(self) -> Iterable[Person]:
        programme_id = self.case.programme_id
        return Person.objects.filter(
            Q(memberships__programme=programme_id) | Q(former_memberships__programme=programme_id)
        )

    def _person(self, person: Person) -> RecordPerson:
        return RecordPerson(id=str(person.pk), name=str(person), role=self.roles.get(person.pk))

    def _version(self, row: ToothPlanVersion) -> VersionRecord:
        reviews: Sequence[Review] = list(row.reviews.all())
        return VersionRecord(
            number=row.number,
            hash=row.hash,
            technique=row.technique_key,
            kit=self.history.versions[row.hash].kit.name,
            author=self._person(row.author),
            at=row.created_at,
            state=PlanState(row.state),
            decisions=tuple(
                DecisionRecord(
                    decision=Decision(each.decision),
                    who=self._person(each.supervisor),
                    at=each.at,
                    note=_note(each),
                    acknowledged=_acknowledged(each, self.history.versions[row.hash]),
                    own_lengths=tuple(OwnLength(**own) for own in each.own_lengths),
                )
                for each in reviews
            ),
        )

    def _canal(self, shown: charts.CanalShown) -> CanalRecord:
        name, course = shown.row.name, self.history.course
        latest = max(self.history.versions.values(), key=lambda each: each.number, default=None)
        # Before the work may begin there is no plan in force: the newest version tells what is planned.
        version = self.history.versions.get(course.plan) if course else latest
        planned = version.canal(name) if version else None
        walked = course.canals.get(name) if course else None
        state = walked.state if walked else None
        plan, done = shapes.planned(planned), shapes.done(self.history, name, planned)
        return CanalRecord(
            canal=name,
            root=shown.row.root.name,
            reference_point=shown.row.reference_point,
            state=state,
            length=shown.length,
            length_problem=shown.problem,
            planned_size=planned.final_name if planned else None,
            largest_at_length=shapes.largest_at_length(plan, done),
            charted=whole(shown.facts),
            end_mm=shapes.end_mm(plan, done, state),
            joins=planned.joins if planned and planned.junction_mm is not None else None,
            planned=plan,
            done=done,
            differs=shapes.differs(plan, done, state),
            steps=steps.steps(self.history, name),
        )

    def _entered(self) -> tuple[Entered, ...]:
        """What services entered, and clients for people, in the order of time."""
        by_program = Q(key__service__isnull=False) | Q(client__isnull=False)
        rows = ChangeLog.objects.filter(by_program, case=self.case).order_by("pk")
        names = {str(canal.row.pk): canal.row.name for canal in self.chart.canals}
        return tuple(
            Entered(
                service=program.name,
                person=self._person(row.actor),
                says=words.entered(row.subject, row.verb, names.get(row.subject_id) or _canal_named(row)),
                at=row.at,
            )
            for row in rows.select_related("key", "client", "actor")
            if (program := row.client or row.key)
        )

    def _struck(self) -> tuple[StruckReading, ...]:
        """Readings that were mistakes, canal by canal."""
        rows = [(shown.row.name, row) for shown in self.chart.canals for row in (*shown.readings, *shown.junctions)]
        return tuple(
            StruckReading(
                canal=canal,
                says=", ".join(each for each in words.read(row.payload) if each),
                taken_by=self._person(row.actor),
                taken_at=row.at,
                why=StruckWhy(row.struck_why),
                who=self._person(row.struck_by),
                at=row.struck_at,
            )
            for canal, row in rows
            if row.struck_by and row.struck_at
        )

    def _images_put_right(self) -> tuple[ImagePutRight, ...]:
        """Every correction of an image in the order of time, also of images that no event names."""
        rows = models.ImagePutRight.objects.filter(image__case=self.case).select_related("image__taken_by", "by")
        return tuple(
            ImagePutRight(
                image_id=str(row.image_id),
                purpose=row.image.purpose,
                canal=row.canal,
                moved_to=None if row.struck else row.moved_to,
                taken_by=self._person(row.image.taken_by),
                taken_at=row.image.server_time,
                why=StruckWhy(row.why),
                who=self._person(row.by),
                at=row.at,
            )
            for row in rows.order_by("at", "pk")
        )

    def _overrides(self) -> tuple[OverrideRecord, ...]:
        return tuple(
            OverrideRecord(
                code=row.code,
                canal=row.canal.name if row.canal else None,
                reason=row.reason,
                final_size=row.final_size,
                who=self._person(row.supervisor),
                at=row.at,
                withdrawn_by=self._person(row.withdrawn_by) if row.withdrawn_by else None,
                withdrawn_at=row.withdrawn_at,
            )
            for row in self.chart.overrides
        )


def _versions(case: Case) -> list[ToothPlanVersion]:
    reviews = (
        Review.objects.select_related("supervisor").prefetch_related("remarks__canal_plan").order_by("at", "asked")
    )
    rows = case.versions.select_related("author").prefetch_related(Prefetch("reviews", queryset=reviews))
    return list(rows.order_by("number"))


def _version(row: ToothPlanVersion) -> Version:
    return Version(number=row.number, hash=row.hash, plan=plan_of(row), kit=plan_input_of(row).kit)


def _canal_named(row: ChangeLog) -> str:
    """The canal that a line of the log names; empty for none."""
    return str(json.loads(row.after or row.before or "{}").get("canal") or "")


def _note(review: Review) -> str:
    """The note on the whole plan, then the remarks canal by canal."""
    remarks = sorted(review.remarks.all(), key=lambda each: each.canal_plan.place)
    said = [review.note, *(f"{each.canal_plan.canal}: {each.text}" for each in remarks)]
    return "\n".join(each for each in said if each)


def _acknowledged(review: Review, version: Version) -> tuple[AcknowledgedRecord, ...]:
    """The acknowledged cautions, in the words of the plan that was approved."""
    said = to_acknowledge(version.plan.cautions)
    named = [Named(**name) for name in review.acknowledged]
    return tuple(
        AcknowledgedRecord(code=name.code, canal=name.canal, says=said[name].says) for name in named if name in said
    )


def _roles(case: Case) -> dict[UUID, Role]:
    """Of who left, what they were until then."""
    former = FormerMembership.objects.filter(programme_id=case.programme_id).order_by("pk")
    present = Membership.objects.filter(programme_id=case.programme_id)
    rows = (*former.values_list("person_id", "role"), *present.values_list("person_id", "role"))
    return {person: Role(role) for person, role in rows}
