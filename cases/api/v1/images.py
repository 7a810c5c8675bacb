"""Images: announced, sent whole or in parts, listed, and served to those who may see the case."""

from __future__ import annotations

import hashlib
from typing import Any, ClassVar
from uuid import UUID

from django.conf import settings
from django.http import HttpResponse
from django.utils import timezone
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import OpenApiParameter, extend_schema, extend_schema_field
from rest_framework import serializers
from rest_framework.parsers import MultiPartParser
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api import raw_body
from cases.api.base import LOCATION, View, answer, me, unchanged
from cases.api.etags import tag
from cases.api.fields import Moment, Strict, Text, Upload, Value
from cases.api.v1.shapes import PersonRef
from cases.domain.errors import NotAllowed, NotHere, NotUsable, SentDifferently
from cases.domain.events.payloads import ImagePurpose
from cases.domain.image_errors import (
    ImageDamaged,
    ImageRefused,
    ImageRemoved,
    ImagesFull,
    OffsetMismatch,
    ReadingBusy,
    StoreAway,
)
from cases.domain.images import BurntInText, ImageKind, ImageState, NameCheck, RemovalReason, Spacing
from cases.domain.struck import StruckWhy
from cases.domain.uuid7 import uuid7
from cases.queries import seen
from cases.queries.images import ImageQuota, images_of_case, is_stored, spacing_of
from cases.services.images import files, upload
from cases.services.images.upload import Announced
from planning.api.refusals import refuses
from planning.foundation.encoding import digest
from planning.radiograph import MarkFigures

TAGS = ["images"]
CANAL = OpenApiParameter("canal", str, description="The canal it shows; left out where it shows the tooth.")
SHOWS = OpenApiParameter(
    "purpose",
    str,
    enum=["pre_operative", "length", "final_size", "cone", "final", "other"],
    default="other",
    description="What it was taken for.",
)
DEVICE_TIME = OpenApiParameter("device_time", OpenApiTypes.DATETIME, description="When it was taken; left out: now.")
FACTS = (CANAL.name, SHOWS.name, DEVICE_TIME.name)
DIGEST = "SHA-256 of the whole image (RFC 9530): `sha-256=:<base64>:`."
REPR_DIGEST = OpenApiParameter("Repr-Digest", str, OpenApiParameter.HEADER, description=DIGEST)
OFFSET = OpenApiParameter("Upload-Offset", int, OpenApiParameter.HEADER, required=True, description="Where it begins.")
LENGTH = OpenApiParameter(
    "Upload-Length", int, OpenApiParameter.HEADER, required=True, description="Bytes of the whole image."
)
AGAIN = (
    "The same bytes under the same id are answered the same. Others begin anew while nothing of the image is kept, and "
    "are refused once it is (409)."
)
KINDS = "JPEG, PNG, WebP, TIFF, DICOM, or HEIC where the server has the extra that reads it, found out by its content."
KEPT = (
    "What is kept is drawn anew from the pixels: place, device and everything else that came with them is gone. Of "
    "DICOM a de-identified data set is built from pixels and spacing. The received bytes are not kept: parts of an "
    "upload wait in the database and leave it once the image is stored or refused, SQLite's file and log at once, "
    "PostgreSQL's table with the daily tidying and its log when that is used again. A backup made meanwhile, or a log "
    "kept for one, holds what it holds until it is thrown away."
)


class FactsGiven(Strict):
    canal = Text(max_length=12, required=False, allow_blank=True, default="")
    purpose = Value(ImagePurpose, required=False, default="other")
    device_time = Moment(required=False, default=timezone.now)


class ImageSent(FactsGiven):
    file = Upload(help_text=KINDS)


class PutRightShown(serializers.Serializer[Any]):
    """A stored correction of an image: who made it, when and why."""

    at = serializers.DateTimeField()
    by = PersonRef()
    why = Value(StruckWhy)
    canal = serializers.CharField(help_text="Where it was; empty: the whole tooth.")
    struck = serializers.BooleanField(help_text="It counts for nothing since. Else it was moved.")
    moved_to = serializers.CharField(help_text="Empty: to the whole tooth; also where it was struck.")


class ImageShown(serializers.Serializer[Any]):
    """A stored image; what has arrived of it and what its name check says are worked out when asked."""

    id = serializers.UUIDField()
    canal = serializers.CharField(help_text="Where it counts now; empty: the whole tooth.")
    purpose = Value(ImagePurpose)
    taken_by = PersonRef()
    device_time = serializers.DateTimeField()
    server_time = serializers.DateTimeField()
    state = Value(ImageState)
    reason = serializers.CharField(help_text="Why it was refused; else empty.")
    sha256 = serializers.CharField(help_text="Of what was sent, in hexadecimal.")
    sent_bytes = serializers.IntegerField(help_text="Of the whole upload.")
    received_bytes = serializers.SerializerMethodField(help_text="An upload goes on from here.")
    kind = serializers.SerializerMethodField(help_text="What was sent, by its content; null until it was read.")
    width_px = serializers.IntegerField(allow_null=True)
    height_px = serializers.IntegerField(allow_null=True)
    has_data_set = serializers.BooleanField(help_text="A de-identified DICOM data set is there too.")
    spacing = serializers.SerializerMethodField(help_text="What the file said of its scale, as read.")
    burnt_in_text = Value(BurntInText)
    name_check = Value(
        NameCheck, help_text="`open`: somebody has to look whether a name or a number of a person is in the picture."
    )
    checked_by = PersonRef(allow_null=True, help_text="Looked first, and found nobody named.")
    checked_at = serializers.DateTimeField(allow_null=True)
    removed_by = PersonRef(allow_null=True)
    removed_at = serializers.DateTimeField(allow_null=True)
    removed_for = serializers.SerializerMethodField(help_text="Why it was removed; else null.")
    struck = serializers.BooleanField(help_text="It counts for nothing.")
    put_right = PutRightShown(many=True, source="put_right_in_order", help_text="Each time, the first first.")

    @extend_schema_field(OpenApiTypes.INT)
    def get_received_bytes(self, image: Any) -> int:
        return upload.received_bytes(image)

    @extend_schema_field(Value(ImageKind | None))
    def get_kind(self, image: Any) -> str | None:
        return image.kind or None

    @extend_schema_field(Value(RemovalReason | None))
    def get_removed_for(self, image: Any) -> str | None:
        return image.removed_for or None

    @extend_schema_field(Value(Spacing | None))
    def get_spacing(self, image: Any) -> Any:
        return Value(Spacing | None).to_representation(spacing_of(image))


class ImagesShown(serializers.Serializer[Any]):
    """The stored images of a case, with two values that hold for all of them."""

    quota = Value(ImageQuota)
    marking = Value(MarkFigures, help_text="How sure marks are: by these a phone says so with no connection.")
    images = ImageShown(many=True)


OF_AN_UPLOAD = (
    NotAllowed,
    SentDifferently,
    ImageRemoved,
    NotUsable,
    ImageDamaged,
    ImageRefused,
    ImagesFull,
    StoreAway,
    ReadingBusy,
)


class ImagesView(View):
    parser_classes = (MultiPartParser,)

    @extend_schema(
        operation_id="images_list",
        tags=TAGS,
        summary="Every image of the case, and what is left of the quota",
        description="An image that an event names and that is not listed is still where it was taken. ETag: changes "
        "with whatever is answered.",
        responses=ImagesShown,
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        shown = answer(ImagesShown, images_of_case(seen.case(me(request), case_id)))
        etag = digest(repr(shown.data))
        shown["ETag"] = tag(etag)
        return unchanged(request, etag) or shown

    @extend_schema(
        operation_id="images_create",
        tags=TAGS,
        summary="Send an image as a form",
        description=f"One image as multipart/form-data; to send it again harmlessly, make its id and use PUT. {KEPT}",
        parameters=[LOCATION],
        request={"multipart/form-data": ImageSent},
        extensions=refuses(NotAllowed, NotUsable, ImageRefused, ImagesFull, StoreAway, ReadingBusy),
        responses={201: ImageShown},
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        if int(request.headers.get("Content-Length") or 0) > settings.IMAGE_MOST_BYTES:
            raise raw_body.BytesTooMany
        serializer = ImageSent(data=request.data)
        serializer.is_valid(raise_exception=True)
        facts = dict(serializer.validated_data)
        data = facts.pop("file").read()
        announced = Announced(id=uuid7(), sha256=hashlib.sha256(data).hexdigest(), sent_bytes=len(data), **facts)
        image = upload.receive(actor=me(request), case=case, announced=announced, data=data)
        return answer(ImageShown, image, created=True, at=f"cases/{case_id}/images/{image.pk}")


class ImageView(View):
    query = {"PUT": FACTS, "PATCH": FACTS}
    parser_classes = (raw_body.BytesParser,)

    @extend_schema(
        operation_id="image_retrieve",
        tags=TAGS,
        summary="What is known of an image",
        description="`Upload-Offset` says from which byte its upload goes on.",
        responses=ImageShown,
    )
    def get(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        return _progress(seen.image(me(request), case_id, image_id))

    @extend_schema(
        operation_id="image_update",
        tags=TAGS,
        summary="Send an image whole",
        description=f"{KINDS} {AGAIN} {KEPT}",
        parameters=[CANAL, SHOWS, DEVICE_TIME, REPR_DIGEST, LOCATION],
        request={"application/octet-stream": OpenApiTypes.BINARY, "image/*": OpenApiTypes.BINARY},
        extensions=refuses(*OF_AN_UPLOAD),
        responses={200: ImageShown, 201: ImageShown},
    )
    def put(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        data = raw_body.body(request)
        digest = raw_body.digest(request) or hashlib.sha256(data).hexdigest()
        announced = Announced(id=image_id, sha256=digest, sent_bytes=len(data), **_facts(request))
        created = not is_stored(case, image_id)
        image = upload.receive(actor=me(request), case=case, announced=announced, data=data)
        return answer(ImageShown, image, created=created, at=f"cases/{case_id}/images/{image_id}")

    @extend_schema(
        operation_id="image_partial_update",
        tags=TAGS,
        summary="Send the next part of an image",
        description=(
            "After the draft for resumable uploads (draft-ietf-httpbis-resumable-upload): `Upload-Offset`, "
            "`Upload-Length`, media type `application/partial-upload`; GET or HEAD of the image says from which byte "
            "to go on. It differs in one thing: the sender makes the id, so the part at byte 0 begins the upload. "
            "Where another byte is next, the answer names it as `expected` (409). A part that came before counts once. "
            f"The last part is answered with the stored image. {KEPT}"
        ),
        parameters=[
            CANAL,
            SHOWS,
            DEVICE_TIME,
            OpenApiParameter(**REPR_DIGEST.__dict__ | {"required": True}),
            OFFSET,
            LENGTH,
        ],
        request={"application/partial-upload": OpenApiTypes.BINARY},
        extensions=refuses(OffsetMismatch, *OF_AN_UPLOAD),
        responses=ImageShown,
    )
    def patch(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        data = raw_body.body(request)
        if len(data) > settings.IMAGE_MOST_PART_BYTES:
            raise raw_body.BytesTooMany
        length = raw_body.count(request, "Upload-Length")
        offset = raw_body.count(request, "Upload-Offset")
        announced = Announced(id=image_id, sha256=_required_digest(request), sent_bytes=length, **_facts(request))
        image = upload.receive_part(actor=me(request), case=case, announced=announced, offset=offset, data=data)
        return _progress(image)


class ImageFileView(View):
    """A file of a stored image. It is asked for again each time: another person may sit at the same browser."""

    part: ClassVar[str] = "view"

    def file(self, request: Request, case_id: UUID, image_id: UUID) -> HttpResponse:
        image = seen.image(me(request), case_id, image_id)
        upload.refuse_removed(image)
        if image.state != ImageState.STORED or (self.part == "data_set" and not image.has_data_set):
            raise NotHere(what="file of an image")
        etag = f"{image.pk}-{self.part}"
        known = unchanged(request, etag)
        if known:
            return known
        media_type, ending = _form(self.part, image.view_type)
        shown = "attachment" if self.part == "data_set" else "inline"
        headers = {
            "ETag": tag(etag),
            # What may name somebody stays in no browser until somebody has looked.
            "Cache-Control": "private, no-store" if image.name_check == NameCheck.OPEN else "private, no-cache",
            "X-Content-Type-Options": "nosniff",
            "Content-Disposition": f'{shown}; filename="{image.pk}.{ending}"',
        }
        return HttpResponse(files.opened(image, self.part), content_type=media_type, headers=headers)


class ContentView(ImageFileView):
    @extend_schema(
        operation_id="image_content_retrieve",
        tags=TAGS,
        summary="The image for screens",
        extensions=refuses(ImageRemoved, StoreAway),
        responses={(200, "image/jpeg"): OpenApiTypes.BINARY, (200, "image/png"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID, image_id: UUID) -> HttpResponse:
        return self.file(request, case_id, image_id)


class ThumbnailView(ImageFileView):
    part = "thumbnail"

    @extend_schema(
        operation_id="image_thumbnail_retrieve",
        tags=TAGS,
        summary="The image, small",
        extensions=refuses(ImageRemoved, StoreAway),
        responses={(200, "image/jpeg"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID, image_id: UUID) -> HttpResponse:
        return self.file(request, case_id, image_id)


class DataSetView(ImageFileView):
    part = "data_set"

    @extend_schema(
        operation_id="image_data_set_retrieve",
        tags=TAGS,
        summary="The de-identified DICOM data set",
        extensions=refuses(ImageRemoved, StoreAway),
        responses={(200, "application/dicom"): OpenApiTypes.BINARY},
    )
    def get(self, request: Request, case_id: UUID, image_id: UUID) -> HttpResponse:
        return self.file(request, case_id, image_id)


def _form(part: str, view_type: str) -> tuple[str, str]:
    """Media type and ending of a file."""
    if part == "data_set":
        return "application/dicom", "dcm"
    media_type = view_type if part == "view" else "image/jpeg"
    return media_type, media_type.removeprefix("image/").replace("jpeg", "jpg")


def _facts(request: Request) -> dict[str, Any]:
    serializer = FactsGiven(data=request.query_params.dict())
    serializer.is_valid(raise_exception=True)
    return dict(serializer.validated_data)


def _required_digest(request: Request) -> str:
    digest = raw_body.digest(request)
    if digest is None:
        raise serializers.ValidationError({"Repr-Digest": ["Send the SHA-256 of the whole image."]}, code="required")
    return digest


def _progress(image: Any) -> Response:
    response = answer(ImageShown, image)
    response["Upload-Offset"] = str(upload.received_bytes(image))
    response["Upload-Complete"] = "?0" if image.state == ImageState.AWAITED else "?1"
    return response
