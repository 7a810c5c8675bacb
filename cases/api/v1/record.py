"""The record of a case."""

from __future__ import annotations

from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request

from cases.api.base import View, answer, me, unchanged
from cases.api.etags import tag
from cases.exports.record_pdf import record_pdf
from cases.queries import seen
from cases.queries.record import RecordShown, record_of
from planning.api.values import serializer_of

TAGS = ["record"]


class RecordView(View):
    @extend_schema(
        operation_id="record_retrieve",
        tags=TAGS,
        summary="The record of a case",
        description="The whole course as a timeline, and what it comes to: lengths and what they rest on, work done "
        "against work planned, irrigants, instruments, sign-offs at hold points, halts, visits. A training record. "
        "ETag: the hash.",
        responses=serializer_of(RecordShown),
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        shown = record_of(seen.case(me(request), case_id).pk)
        return unchanged(request, shown.hash) or answer(serializer_of(RecordShown), shown, etag=shown.hash)


class RecordPdfView(View):
    @extend_schema(
        operation_id="record_pdf",
        tags=TAGS,
        summary="The record of a case on paper",
        description="A4, in black and white. It carries the record's hash; the same record is the same bytes.",
        responses={(200, "application/pdf"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        shown = record_of(seen.case(me(request), case_id).pk)
        known = unchanged(request, shown.hash)
        if known:
            return known
        name = f"record-{shown.record.tooth.iso}-{shown.record.case_id}.pdf"
        return HttpResponse(
            record_pdf(shown.record, shown.hash),
            content_type="application/pdf",
            headers={"ETag": tag(shown.hash), "Content-Disposition": f'inline; filename="{name}"'},
        )
