"""One case as its resources are made of it: what is kept is read when a type asks for it, and once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from uuid import UUID

from cases.domain.record.values.work import StepRecord
from cases.exports.fhir import approvals, documents, observations, plans, tooth, work
from cases.exports.fhir.codes import Codes
from cases.exports.fhir.elements import Identifier, Resource, urn
from cases.queries import charts, resources
from cases.queries.record import RecordShown, record_of
from cases.queries.resources import Images, Versions
from cases.queries.seen import Asker, service_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader:
    """Who reads, and where what they read lies."""

    asker: Asker
    base: str
    """Of the resources, without a slash at its end."""
    api: str
    """Of the API, with one."""
    sees_images: bool


class CaseRead:
    """A method for each type, with all of that type that the case has."""

    def __init__(self, case_id: UUID, reader: Reader) -> None:
        self.reader, self.codes = reader, Codes(reader.base)
        self.chart = charts.shown(case_id, reader.asker)
        self.row = self.chart.row
        self.touched = resources.touched(self.row)

    @cached_property
    def record(self) -> RecordShown:
        return record_of(self.row.pk)

    @cached_property
    def versions(self) -> Versions:
        return resources.versions_of(self.row)

    @cached_property
    def images(self) -> Images:
        return resources.stored_images(self.row) if self.reader.sees_images else []

    @cached_property
    def canals(self) -> dict[str, object]:
        """The canals of the chart by their names, with their ids."""
        return {canal.row.name: canal.row.pk for canal in self.chart.canals}

    def patients(self) -> Iterator[Resource]:
        # A corrected alias is logged with each case that has it.
        yield tooth.patient(self.row, self.touched.at(self.row.pk, self.row.created_at))

    def body_structures(self) -> Iterator[Resource]:
        service, key = service_of(self.reader.asker), self.row.external_id
        known_as = (Identifier(system=urn(service.pk).value, value=key),) if service and key else ()
        yield tooth.tooth(self.row, self.codes, self.touched.at(self.row.pk, self.row.created_at), known_as)
        for canal in self.chart.canals:
            at = self.touched.at(canal.row.pk, self.row.created_at)
            yield tooth.canal(canal.row, self.row, self.codes, at)

    def observations(self) -> Iterator[Resource]:
        images = resources.marked_images(self.row) if self.reader.sees_images else {}
        for canal in self.chart.canals:
            for reading in canal.readings:
                image = images.get(reading.marking_id) if reading.marking_id else None
                yield observations.reading(reading, canal.row, self.row, self.codes, image)
            for junction in canal.junctions:
                yield observations.junction(junction, canal.row, self.row, self.codes)
            if canal.length:
                yield from observations.working_length(canal.length, canal.row, self.row, self.codes)

    def care_plans(self) -> Iterator[Resource]:
        for version in self.versions:
            at = self.touched.version_at(version, self.row)
            yield plans.care_plan(version, self.versions, self.row, at)

    def service_requests(self) -> Iterator[Resource]:
        for version in self.versions:
            at = self.touched.version_at(version, self.row)
            yield from plans.service_requests(version, self.row, self.canals, self.codes, at)

    def tasks(self) -> Iterator[Resource]:
        for version in self.versions:
            yield from approvals.tasks(version, self.row, self.touched.at(version.pk, version.created_at))

    def provenances(self) -> Iterator[Resource]:
        for version in self.versions:
            yield from approvals.provenances(version)

    def procedures(self) -> Iterator[Resource]:
        record, by_number = self.record.record, {version.number: version for version in self.versions}

        def group(step: StepRecord, canal: str) -> str | None:
            return plans.group_id(by_number[step.version], canal, step.phase)

        ids = {number: version.pk for number, version in by_number.items()}
        yield from work.treatment(record, self.row, self.codes, ids)
        undone = resources.taken_back(self.row)
        yield from work.steps(record, self.row, self.codes, self.canals, group, undone)

    def documents(self) -> Iterator[Resource]:
        shown = self.record
        yield documents.record_on_paper(shown.record, shown.hash, self.row, self.reader.api, self.touched.case)
        for image in self.images:
            at = self.touched.at(image.pk, image.server_time)
            yield documents.image(image, self.row, self.reader.api, at)

    def imaging_studies(self) -> Iterator[Resource]:
        if self.images:
            at = max(self.touched.at(image.pk, image.server_time) for image in self.images)
            yield from documents.imaging_study(self.images, self.row, at)
