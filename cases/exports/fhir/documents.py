"""Images of a case, and its record on paper."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from cases.domain.images import DataSetUids, study_uid
from cases.domain.record.values.record import Record
from cases.domain.record.words import plain
from cases.exports.fhir.elements import (
    URI,
    Attachment,
    CodeableConcept,
    Coding,
    Element,
    Identifier,
    Reference,
    Resource,
    meta,
    urn,
)
from cases.exports.fhir.tooth import practitioner, subject
from cases.models import Case, Image

DICOM = "http://dicom.nema.org/resources/ontology/DCM"


@dataclass(frozen=True, slots=True, kw_only=True)
class Content(Element):
    attachment: Attachment


@dataclass(frozen=True, slots=True, kw_only=True)
class Context(Element):
    related: tuple[Reference, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DocumentReference(Resource):
    resource_type: ClassVar[str] = "DocumentReference"
    identifier: tuple[Identifier, ...]
    status: str
    type: CodeableConcept
    subject: Reference
    date: datetime
    author: tuple[Reference, ...]
    description: str
    content: tuple[Content, ...]
    context: Context | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Instance(Element):
    uid: str
    sop_class: Coding
    number: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Series(Element):
    uid: str
    number: int
    modality: Coding
    description: str
    number_of_instances: int
    started: datetime
    instance: tuple[Instance, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ImagingStudy(Resource):
    resource_type: ClassVar[str] = "ImagingStudy"
    identifier: tuple[Identifier, ...]
    status: str = "available"
    subject: Reference
    started: datetime
    modality: tuple[Coding, ...]
    number_of_series: int
    number_of_instances: int
    description: str
    series: tuple[Series, ...]


def record_on_paper(record: Record, hash_: str, case: Case, api: str, at: datetime) -> DocumentReference:
    """The record as A4; it carries the hash that is told here. `api` is where the API lies."""
    return DocumentReference(
        id=str(case.pk),
        meta=meta(at),
        identifier=(urn(case.pk),),
        status="current",
        type=CodeableConcept(text="Training record"),
        subject=subject(case),
        date=record.last_at,
        author=(practitioner(case.student),),
        description=f"The record on paper carries the SHA-256 of what it says: {hash_}",
        content=(
            Content(
                attachment=Attachment(
                    content_type="application/pdf", url=f"{api}cases/{case.pk}/record.pdf", title="Record of the case"
                )
            ),
        ),
    )


def image(row: Image, case: Case, api: str, at: datetime) -> DocumentReference:
    """A stored image as screens show it, and as a DICOM data set where one is kept."""
    address = f"{api}cases/{case.pk}/images/{row.pk}"
    what = _what(row)
    files = [Content(attachment=Attachment(content_type=row.view_type, url=f"{address}/content", title=what))]
    if row.has_data_set:
        data_set = Attachment(content_type="application/dicom", url=f"{address}/data-set", title=f"{what}, data set")
        files.append(Content(attachment=data_set))
    study = Context(related=(Reference(reference=f"ImagingStudy/{case.pk}"),)) if row.has_data_set else None
    return DocumentReference(
        id=str(row.pk),
        meta=meta(at),
        identifier=(urn(row.pk),),
        status="entered-in-error" if row.struck else "current",
        type=CodeableConcept(text="Image"),
        subject=subject(case),
        date=row.server_time,
        author=(practitioner(row.taken_by),),
        description=what,
        content=tuple(files),
        context=study,
    )


def imaging_study(rows: Sequence[Image], case: Case, at: datetime) -> Iterator[ImagingStudy]:
    """The one DICOM study that the data sets of a case are of, each a series; nothing where there are none."""
    kept = [row for row in rows if row.has_data_set]
    if kept:
        yield ImagingStudy(
            id=str(case.pk),
            meta=meta(at),
            identifier=(Identifier(system="urn:dicom:uid", value=f"urn:oid:{study_uid(case.pk)}"),),
            subject=subject(case),
            started=min(row.server_time for row in kept),
            modality=tuple(_modality(code) for code in sorted({row.modality for row in kept})),
            number_of_series=len(kept),
            number_of_instances=len(kept),
            description=f"Images of tooth {case.tooth.iso}",
            series=tuple(_series(row, case, number) for number, row in enumerate(kept, start=1)),
        )


def _series(row: Image, case: Case, number: int) -> Series:
    uids = DataSetUids.of(case_id=case.pk, image_id=row.pk)
    return Series(
        uid=uids.series,
        number=number,
        modality=_modality(row.modality),
        description=_what(row),
        number_of_instances=1,
        started=row.server_time,
        instance=(Instance(uid=uids.instance, sop_class=Coding(system=URI, code=f"urn:oid:{row.sop_class}")),),
    )


def _modality(code: str) -> Coding:
    return Coding(system=DICOM, code=code)


def _what(row: Image) -> str:
    return f"{plain(row.purpose)} image, {row.canal or 'whole tooth'}"
