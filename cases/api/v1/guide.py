"""What integrators read beside the description: what changed in it, and a tour through it, as text."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from drf_spectacular.utils import OpenApiParameter, OpenApiResponse, extend_schema
from rest_framework.permissions import AllowAny
from rest_framework.renderers import BaseRenderer
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View
from cases.domain.errors import NotHere

PAGES = {"changes": "CHANGES.md", "tour": "TOUR.md"}


class Markdown(BaseRenderer):
    media_type = "text/markdown"
    format = "markdown"

    def render(self, data: Any, *_: Any) -> bytes:
        return str(data).encode()


@cache
def _text(page: str) -> str:
    return (Path(__file__).parent / PAGES[page]).read_text(encoding="utf-8")


class GuideView(View):
    permission_classes = (AllowAny,)
    renderer_classes = (Markdown,)

    @extend_schema(
        operation_id="guide_retrieve",
        tags=["reference"],
        summary="What changed in the API, and a tour through it",
        description="`changes` also says how something ends: what is marked with `Deprecation` answers on for a year "
        "at least. Open to all.",
        parameters=[OpenApiParameter("page", str, OpenApiParameter.PATH, enum=list(PAGES))],
        responses={(200, Markdown.media_type): OpenApiResponse(str, description="Markdown (RFC 7763).")},
    )
    def get(self, request: Request, page: str) -> Response:
        if page not in PAGES:
            raise NotHere(what="page")
        return Response(_text(page))
