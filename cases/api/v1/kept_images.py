"""What is done with an image that is here: somebody says that nobody is named in it, or removes it."""

from __future__ import annotations

from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Strict, Value
from cases.api.v1 import examples
from cases.api.v1.images import TAGS, ImageShown
from cases.domain.errors import NotAllowed, NotUsable
from cases.domain.image_errors import ImageRemoved
from cases.domain.images import RemovalReason
from cases.queries import seen
from cases.services.images import removal
from planning.api.refusals import refuses


class RemovalGiven(Strict):
    reason = Value(RemovalReason, help_text="Of a closed set: a free text could hold the very name that has to go.")


class NameCheckView(View):
    @extend_schema(
        operation_id="image_name_check",
        tags=TAGS,
        summary="Say that nobody is named in an image",
        description="By somebody who may change the case and has looked: no name and no number of a person is written "
        "in the picture. Who said so first is kept. Where somebody is named, remove the image instead.",
        request=None,
        extensions=refuses(NotAllowed, ImageRemoved, NotUsable),
        responses=ImageShown,
    )
    def post(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        return answer(ImageShown, removal.nobody_named(actor=me(request), image=image))


class RemoveView(View):
    @extend_schema(
        operation_id="image_remove",
        tags=TAGS,
        summary="Remove an image",
        description="By somebody who may change the case, also while its upload is under way. The picture is deleted "
        "and counts no more against the quota; the image stays listed as removed, by whom and why, with what was "
        "marked on it. Its files and its bytes sent again are answered with 410. The first removal stays; a refused "
        "image stays refused. Backups of the store and of the database are not reached from here: they hold it until "
        "they are thrown away.",
        request=RemovalGiven,
        extensions=refuses(NotAllowed),
        responses=ImageShown,
        examples=[examples.REMOVAL],
    )
    def post(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        row = removal.remove(actor=me(request), image=image, **given(RemovalGiven, request))
        return answer(ImageShown, row)
