"""Putting images right: to the canal that they are of, or struck."""

from __future__ import annotations

from typing import Literal
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.images import TAGS, ImageShown
from cases.domain.errors import NotAllowed, NotUsable
from cases.domain.struck import StruckWhy
from cases.queries import seen
from cases.services.corrections import put_right
from planning.api.refusals import refuses


class ImageStrikeGiven(Strict):
    why = Value(Literal["wrong_canal", "not_so"], help_text="`not_so`: it does not show what it was taken for.")


class ImageMoveGiven(Strict):
    canal = Text(max_length=12, allow_blank=True, help_text="Where it belongs; empty: the whole tooth.")


class ImageStrikeView(View):
    @extend_schema(
        operation_id="image_strike",
        tags=TAGS,
        summary="Strike an image that was a mistake",
        description="By somebody who may change the case. It stays to be looked at, with who struck it, when and why, "
        "and counts for nothing: lengths and bends taken from it are struck or charted anew, and no hold point counts "
        "it as its image. The first strike stays.",
        request=ImageStrikeGiven,
        extensions=refuses(NotAllowed),
        responses=ImageShown,
        examples=[examples.STRIKE],
    )
    def post(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        why = StruckWhy(given(ImageStrikeGiven, request)["why"])
        return answer(ImageShown, put_right.strike(actor=me(request), image=image, why=why))


class ImageMoveView(View):
    @extend_schema(
        operation_id="image_move",
        tags=TAGS,
        summary="Put an image to the canal it is of",
        description="By somebody who may change the case. Lengths and bends that were taken from it for the canal "
        "where it was count no more; that canal's hold point waits for another image. Where it was stays listed.",
        request=ImageMoveGiven,
        extensions=refuses(NotAllowed, NotUsable),
        responses=ImageShown,
        examples=[examples.IMAGE_MOVE],
    )
    def post(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        return answer(ImageShown, put_right.move(actor=me(request), image=image, **given(ImageMoveGiven, request)))
