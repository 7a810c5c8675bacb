"""The long texts of a version, at an address whose content never changes."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request

from cases.api.base import View, as_it_lies, me, unchanged
from cases.api.etags import tag
from cases.api.fields import Value
from cases.domain.errors import NotHere
from cases.queries import seen
from cases.queries.plans import packed_texts
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan

A_YEAR_S = 365 * 24 * 60 * 60


class TextsShown(serializers.Serializer[Any]):
    """Two stored texts, sent as they are kept: this class describes them and encodes nothing."""

    given = Value(PlanInput, help_text="All the plan rests on, as it was then.")
    plan = Value(Plan)


class TextsView(View):
    @extend_schema(
        operation_id="plan_version_texts",
        tags=["plan"],
        summary="What a version was made from and what it says",
        description="By the version's hash: what lies there never changes, and a browser may keep it for a year, for "
        "who is signed in. Sent compressed as it is stored to whoever takes gzip.",
        responses=TextsShown,
    )
    def get(self, request: Request, version_id: UUID, hash_: str) -> HttpResponse:
        version = seen.version(me(request), version_id)
        if hash_ != version.hash:
            raise NotHere(what="text of a plan version")
        response = unchanged(request, hash_) or as_it_lies(request, packed_texts(version.pk))
        response["ETag"] = tag(hash_)
        # Another person at the same browser has other cookies, and gets nothing from its store.
        response["Vary"] = "Accept-Encoding, Cookie"
        response["Cache-Control"] = f"private, max-age={A_YEAR_S}, immutable"
        return response
