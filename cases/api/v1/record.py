"""The record of a case."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, me
from cases.api.fields import Value
from cases.domain.record.value import Record
from cases.queries import record as found
from cases.queries import seen

TAGS = ["record"]


class RecordAnswered(serializers.Serializer[Any]):
    hash = serializers.CharField(help_text="SHA-256 of the record's canonical text; a printed record carries it.")
    record = Value(Record)


class RecordView(View):
    @extend_schema(
        operation_id="record_retrieve",
        tags=TAGS,
        summary="The record of a case",
        description="The whole course as a timeline, and what it comes to: lengths and what they rest on, work done "
        "against work planned, irrigants, instruments, words at hold points, halts, visits. A training record. ETag: "
        "the hash.",
        responses=RecordAnswered,
    )
    def get(self, request: Request, case_id: UUID) -> Response:
        shown = found.record_of(seen.case(me(request), case_id).pk)
        return answer(RecordAnswered, shown, etag=shown.hash)
