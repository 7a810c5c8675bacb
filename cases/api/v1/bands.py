"""What is expected of the work that remains, while it goes on."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request

from cases.api.base import View, answer, me, unchanged
from cases.api.fields import Value
from cases.api.v1.treatment import TAGS
from cases.queries import bands, course, seen
from cases.services.treatment import running_work
from planning.work.bands import CanalBands


class BandsShown(serializers.Serializer[Any]):
    """The bands as they are kept, in JSON already; what lists learn from them is not shown."""

    plan_hash = serializers.CharField(allow_null=True, help_text="Of the plan that is worked; null before one was.")
    position = serializers.IntegerField(help_text="Of the last event that they know.")
    canals = Value(tuple[CanalBands, ...], help_text="Canals that are worked; without those whose widths nobody knows.")


class BandsView(View):
    @extend_schema(
        operation_id="bands_retrieve",
        tags=TAGS,
        summary="What is expected of the work that remains",
        description="By the contact-depth estimate, an estimate for teaching, brought up to date with every depth that "
        "was recorded. No part of what was approved: stops and steps stay as they are. ETag: changes with every event.",
        responses=BandsShown,
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        case = seen.case(me(request), case_id)
        tag = course.tag_of(case.pk)
        return unchanged(request, tag) or answer(BandsShown, _shown(case.pk), etag=tag)


def _shown(case_id: UUID) -> bands.BandsShown:
    """The bands. What they say is kept for the supervisors' list, which judges by it too."""
    shown = bands.bands_of(case_id)
    if shown.learned is not None and shown.plan_hash is not None:
        learned = running_work.Learned(plan=shown.plan_hash, position=shown.position, canals=dict(shown.learned))
        running_work.learn(case_id=case_id, learned=learned)
    return shown
