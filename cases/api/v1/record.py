"""The record of a case, and what is printed before it begins."""

from __future__ import annotations

from collections.abc import Callable
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request

from cases.api.base import View, answer, key_of, me, unchanged
from cases.api.bearer import scopes_of
from cases.api.etags import tag
from cases.domain.access.scopes import Scope
from cases.domain.image_errors import StoreAway
from cases.exports.record_course import course_pdf
from cases.exports.record_pdf import record_pdf
from cases.exports.work_sheet_pdf import work_sheet_pdf
from cases.queries import seen
from cases.queries.record import RecordShown, record_of
from cases.queries.work_sheets import work_sheet
from cases.services.images.files import thumbnails
from planning.api.refusals import refuses
from planning.api.values import serializer_of
from planning.foundation.encoding import canonical_text, digest

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


class PdfView(View):
    """A record on paper: everything that is printed goes by the hash of the record."""

    def pdf(self, request: Request, case_id: UUID, name: str, made: Callable[[RecordShown], bytes]) -> HttpResponse:
        shown = record_of(seen.case(me(request), case_id).pk)
        file = f"{name}-{shown.record.tooth.iso}-{shown.record.case_id}.pdf"
        return unchanged(request, shown.hash) or _paper(made(shown), shown.hash, file)


class RecordPdfView(PdfView):
    @extend_schema(
        operation_id="record_pdf",
        tags=TAGS,
        summary="The record of a case on paper",
        description="A4 that letter paper does not cut, in black and white: planned against done, what was not as "
        "planned, decisions, what was measured and used, and images, for whoever may see them. It carries the "
        "record's hash; the same record is the same bytes.",
        extensions=refuses(StoreAway),
        responses={(200, "application/pdf"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        key = key_of(request)
        sees_images = key is None or Scope.IMAGES_READ in scopes_of(key)

        def made(shown: RecordShown) -> bytes:
            return record_pdf(shown.record, shown.hash, images=thumbnails(case_id) if sees_images else {})

        return self.pdf(request, case_id, "record", made)


class CoursePdfView(PdfView):
    @extend_schema(
        operation_id="course_pdf",
        tags=TAGS,
        summary="The course of a case on paper",
        description="Every step of each canal as planned and as done, and every entry. It carries the record's hash.",
        responses={(200, "application/pdf"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        return self.pdf(request, case_id, "course", lambda shown: course_pdf(shown.record, shown.hash))


class WorkSheetPdfView(View):
    @extend_schema(
        operation_id="work_sheet_pdf",
        tags=TAGS,
        summary="A plan on one sheet, for the tray",
        description="A4 that letter paper does not cut, in black and white: the board, stops by instrument and canal, "
        "what to lay out, irrigation, cautions. It says plainly where the plan is not approved.",
        responses={(200, "application/pdf"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, version_id: UUID) -> HttpResponse:
        sheet = work_sheet(seen.version(me(request), version_id).pk)
        state = digest(canonical_text(sheet))
        file = f"work-sheet-{sheet.plan.tooth.iso}-{sheet.case_id}-{sheet.number}.pdf"
        return unchanged(request, state) or _paper(work_sheet_pdf(sheet), state, file)


def _paper(pdf: bytes, etag: str, file: str) -> HttpResponse:
    headers = {"ETag": tag(etag), "Content-Disposition": f'inline; filename="{file}"'}
    return HttpResponse(pdf, content_type="application/pdf", headers=headers)
