"""Cases as FHIR is asked for them: every resource is of one case, which its id leads to; and when each last changed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import reduce
from operator import or_
from uuid import UUID

from django.db.models import Exists, Max, OuterRef, Q, QuerySet

from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import UndoPayload
from cases.domain.images import ImageState, study_uid
from cases.mapping.courses import course_event
from cases.models import Case, ChangeLog, Image, Marking, ToothPlanVersion, TreatmentEvent
from cases.queries import plans, seen
from cases.queries.external_ids import by_external_id
from cases.queries.seen import Asker

Versions = list[ToothPlanVersion]
Images = list[Image]
PATIENT = "Patient"
UUID_CHARACTERS = 36
# By which of its rows a resource is named; what else its id has after the row's own is told within the case.
_LEADS_TO: Mapping[str, tuple[str, ...]] = {
    PATIENT: ("patient",),
    "BodyStructure": ("pk", "tooth__canals"),
    "Observation": ("tooth__canals__readings", "tooth__canals__junctions", "tooth__canals"),
    "CarePlan": ("versions",),
    "ServiceRequest": ("versions",),
    "Task": ("versions",),
    "Provenance": ("versions__reviews", "versions__revocations"),
    "Procedure": ("pk", "events"),
    "DocumentReference": ("pk", "images"),
    "ImagingStudy": ("pk",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Touched:
    """When things of a case last changed."""

    of: Mapping[str, datetime]
    """By the id of what the change log names."""
    case: datetime
    """Anything of the case."""

    def at(self, id_: object, first: datetime) -> datetime:
        """When this last changed; `first` where the log says nothing of it."""
        return max(first, self.of.get(str(id_), first))

    def version_at(self, version: ToothPlanVersion, case: Case) -> datetime:
        """When the version's own state last changed, or the case under it, which may be what its approval rests on."""
        own = self.at(version.pk, version.created_at)
        return max(own, self.case) if version.case_revision != case.revision else own


def cases(asker: Asker, type_: str) -> QuerySet[Case]:
    """The cases that the asker sees, in an order that stays. Of a patient's several cases the first alone has them."""
    rows = seen.cases(asker).order_by("pk")
    if type_ != PATIENT:
        return rows
    return rows.filter(~Exists(seen.cases(asker).filter(patient=OuterRef("patient"), pk__lt=OuterRef("pk"))))


def with_ids(rows: QuerySet[Case], type_: str, ids: Iterable[str]) -> QuerySet[Case]:
    """Those of the cases that ids of resources of the type can lead to; none where the type is not known."""
    row_ids = [row_id for id_ in ids if (row_id := _row_id(id_))]
    ways = (Q(**{f"{way}__in": row_ids}) for way in _LEADS_TO.get(type_, ()))
    return rows.filter(pk__in=Case.objects.filter(reduce(or_, ways, Q(pk__in=[]))).values("pk"))


def _row_id(id_: str) -> UUID | None:
    try:
        return UUID(id_[:UUID_CHARACTERS])
    except ValueError:
        return None


def with_identifier(rows: QuerySet[Case], type_: str, system: str, value: str, asker: Asker) -> QuerySet[Case]:
    """Those of the cases in which something can have the identifier; `system` is empty where none was named."""
    if value.startswith("urn:uuid:"):
        return with_ids(rows, type_, [value.removeprefix("urn:uuid:")])
    if value.startswith("nih:sha-256;"):
        return rows.filter(versions__hash=value.removeprefix("nih:sha-256;"))
    if value.startswith("urn:oid:"):
        kept = rows.filter(Exists(Image.objects.filter(case=OuterRef("pk"), has_data_set=True)))
        return rows.filter(pk__in=[pk for pk in kept.values_list("pk", flat=True) if _is_study(value, pk)])
    if type_ == PATIENT:
        return rows.filter(patient__alias=value)
    if type_ == "BodyStructure":
        return by_external_id(asker, rows, value) if seen.service_of(asker) else rows.none()
    # What is numbered within a version or a canal has that one's URN as its system.
    return with_ids(rows, type_, [system.removeprefix("urn:uuid:")]) if system else rows


def _is_study(urn: str, case_id: UUID) -> bool:
    return urn == f"urn:oid:{study_uid(case_id)}"


def touched(case: Case) -> Touched:
    """When what is in the case last changed, by its change log and its events."""
    logged = ChangeLog.objects.filter(case=case).order_by().values_list("subject_id").annotate(last=Max("at"))
    of = dict(logged)
    last_event = TreatmentEvent.objects.filter(case=case).aggregate(last=Max("server_time"))["last"]
    return Touched(of=of, case=max((*of.values(), *filter(None, (last_event, case.created_at)))))


def versions_of(case: Case) -> Versions:
    """All versions with their decisions, in order."""
    return list(plans.reviewed(case.versions.select_related("texts")).order_by("number"))


def stored_images(case: Case) -> Images:
    return list(case.images.filter(state=ImageState.STORED).select_related("taken_by").order_by("pk"))


def marked_images(case: Case) -> dict[UUID, str]:
    """On which stored image each marking is, by their ids."""
    rows = Marking.objects.filter(image__case=case, image__state=ImageState.STORED).values_list("pk", "image")
    return {marking: str(image) for marking, image in rows}


def taken_back(case: Case) -> dict[str, datetime]:
    """When each event that was taken back was."""
    rows = TreatmentEvent.objects.filter(case=case, kind=EventKind.UNDO).order_by("position")
    undos = ((course_event(row).payload, row.server_time) for row in rows)
    return {payload.undoes: at for payload, at in undos if isinstance(payload, UndoPayload)}
