"""Taking images in: announced, received whole or in parts, cleaned by a process of its own, stored or refused.

The parts of an upload wait in the database, so that any server process may receive the next one. No lock is held
while an image is read.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any
from uuid import UUID

from django.conf import settings
from django.db import transaction
from django.db.models import Max, Sum
from django.utils import timezone

from cases.domain.errors import NotUsable, SentDifferently
from cases.domain.events.payloads import ImagePurpose
from cases.domain.feed import FeedKind
from cases.domain.image_errors import ImageDamaged, ImageRefused, ImageRemoved, ImagesFull, OffsetMismatch, ReadingBusy
from cases.domain.images import BYTES_PER_MB, DataSetUids, ImageState, RemovalReason
from cases.imaging import reading
from cases.imaging.value import Clean, Limits, ReaderBusy, Unreadable
from cases.models import Case, Image, ImagePart, Person
from cases.services.common import audit, feed, idempotency, parts
from cases.services.common.locking import locked
from cases.services.images import files, gone
from planning.foundation.encoding import canonical_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Announced:
    """What is said of an image before its bytes."""

    id: UUID
    sha256: str
    sent_bytes: int
    device_time: datetime
    canal: str = ""
    purpose: ImagePurpose = "other"


def receive(*, actor: Person, case: Case, announced: Announced, data: bytes) -> Image:
    """The stored image. The same again is answered the same.

    Raises NotAllowed, SentDifferently, ImagesFull, ImageRemoved; ImageDamaged and ImageRefused, after which nothing of
    the bytes is kept; StoreAway and ReadingBusy, after which the same may be sent again.
    """
    image = _announce(actor, case, announced, begins=True)
    return _finish(actor, image, lambda: data)


def receive_part(*, actor: Person, case: Case, announced: Announced, offset: int, data: bytes) -> Image:
    """The image after this part: stored once all bytes are there, awaited until then. A part that came before counts
    once.

    Raises what `receive` does, and OffsetMismatch where another byte is next.
    """
    image = _announce(actor, case, announced, begins=offset == 0)
    if image.state == ImageState.AWAITED and _append(image, offset, data) < image.sent_bytes:
        return image
    return _finish(actor, image, lambda: b"".join(image.parts.order_by("offset").values_list("data", flat=True)))


def received_bytes(image: Image) -> int:
    """How many bytes of the upload are here."""
    if image.state != ImageState.AWAITED:
        return image.sent_bytes
    return int(image.parts.aggregate(bytes=Sum("length"))["bytes"] or 0)


@transaction.atomic
def _announce(actor: Person, case: Case, announced: Announced, *, begins: bool) -> Image:
    parts.refuse_unless_worked(actor, case, "Images are added")
    case = locked(case.pk)
    facts = {
        "sha256": announced.sha256,
        "sent_bytes": announced.sent_bytes,
        "canal": announced.canal,
        "purpose": announced.purpose,
    }
    sent_hash = idempotency.fingerprint(actor=actor, to=case.pk, what=facts)
    broken = _broken(actor, case, announced) if begins else None
    if broken is None and (before := idempotency.sent_before(Image, announced.id, sent_hash)):
        return before
    if not 0 < announced.sent_bytes <= settings.IMAGE_MOST_BYTES:
        most = settings.IMAGE_MOST_BYTES // BYTES_PER_MB
        raise NotUsable(reason=f"An image has at least one byte and at most {most} MB. Send a smaller one.")
    # An upload that begins anew is among what is kept already.
    counted = broken.sent_bytes if broken and broken.state == ImageState.AWAITED else 0
    _refuse_full(case, announced.sent_bytes - counted)
    facts |= {"sent_hash": sent_hash, "device_time": announced.device_time}
    feed.tell(actor=actor, kind=FeedKind.IMAGE_ANNOUNCED, subject_id=announced.id, case=case)
    if broken is None:
        return Image.objects.create(id=announced.id, case=case, taken_by=actor, **facts)
    broken.parts.all().delete()
    gone.from_the_file()
    for name, value in (facts | {"state": ImageState.AWAITED, "reason": ""}).items():
        setattr(broken, name, value)
    broken.save()
    return broken


def _broken(actor: Person, case: Case, announced: Announced) -> Image | None:
    """The person's upload of that id, if it begins anew: nothing of it is kept, and other bytes come now. Else None."""
    not_kept = (ImageState.AWAITED, ImageState.REFUSED)
    of_actor = Image.objects.filter(pk=announced.id, case=case, taken_by=actor, state__in=not_kept)
    return of_actor.exclude(sha256=announced.sha256, sent_bytes=announced.sent_bytes).first()


def _refuse_full(case: Case, more_bytes: int) -> None:
    most_mb = case.programme.images_most_mb
    left = most_mb * BYTES_PER_MB - Image.objects.bytes_of(case.programme_id)
    if more_bytes > left:
        raise ImagesFull(left_mb=max(0, left) // BYTES_PER_MB, most_mb=most_mb)


@transaction.atomic
def _append(image: Image, offset: int, data: bytes) -> int:
    """Keeps the part, and returns how many bytes are here now."""
    locked(image.case_id)
    announced = image.sha256
    _look_again(image)
    if image.sha256 != announced:
        raise SentDifferently(id=image.pk, at=("id",))
    if image.state != ImageState.AWAITED:
        return image.sent_bytes  # became something else while this part was under way
    here = received_bytes(image)
    if offset + len(data) <= here and (data or offset == here):
        return here  # came before: its answer was lost
    if offset != here or offset + len(data) > image.sent_bytes:
        raise OffsetMismatch(expected=here, given=offset)
    ImagePart.objects.create(image=image, offset=offset, length=len(data), data=data)
    return here + len(data)


def _look_again(image: Image) -> None:
    """Reads anew where the image stands: somebody else may have sent the rest of it, or removed it."""
    image.refresh_from_db(fields=["state", "reason", "removed_for", "sha256"])


def refuse_removed(image: Image) -> None:
    """Raises ImageRemoved."""
    if image.state == ImageState.REMOVED:
        raise ImageRemoved(why=RemovalReason(image.removed_for).says)


def _finish(actor: Person, image: Image, content: Callable[[], bytes]) -> Image:
    refuse_removed(image)
    if image.state == ImageState.REFUSED:
        raise ImageRefused(reason=image.reason)
    if image.state == ImageState.STORED:
        return image
    data = content()
    if hashlib.sha256(data).hexdigest() != image.sha256:
        _look_again(image)
        refuse_removed(image)  # its parts with it
        image.parts.all().delete()
        gone.from_the_file()
        raise ImageDamaged
    try:
        clean = reading.read(data, limits(), DataSetUids.of(case_id=image.case_id, image_id=image.pk))
    except ReaderBusy:
        raise ReadingBusy from None
    except Unreadable as refusal:
        _settle(actor, image, {"state": ImageState.REFUSED, "reason": str(refusal)})
        raise ImageRefused(reason=str(refusal)) from None
    settled = _settle(actor, image, _facts(clean), clean)
    refuse_removed(settled)
    return settled


@transaction.atomic
def _settle(actor: Person, read: Image, facts: dict[str, Any], clean: Clean | None = None) -> Image:
    """Writes what became of it, once: of two requests with the same bytes the second finds it done, and what was begun
    anew with other bytes is left to those.
    """
    image = Image.objects.select_for_update(no_key=True, of=("self",)).select_related("taken_by").get(pk=read.pk)
    if image.state != ImageState.AWAITED or image.sha256 != read.sha256:
        return image
    if clean is not None:
        facts |= {"stored_bytes": files.put(image, clean)}
    for name, value in facts.items():
        setattr(image, name, value)
    image.save(update_fields=list(facts))
    image.parts.all().delete()
    gone.from_the_file()
    audit.changed(actor=actor, verb=str(facts["state"]), subject=image, case=image.case)
    return image


def _facts(clean: Clean) -> dict[str, Any]:
    return {
        "state": ImageState.STORED,
        "kind": clean.kind,
        "width_px": clean.width_px,
        "height_px": clean.height_px,
        "view_type": clean.view_type,
        "has_data_set": bool(clean.data_set),
        "sop_class": clean.sop_class,
        "modality": clean.modality,
        "spacing_text": "" if clean.spacing is None else canonical_text(clean.spacing),
        "burnt_in_text": clean.burnt_in_text,
    }


def limits() -> Limits:
    return Limits(
        most_px=settings.IMAGE_MOST_PX,
        longest_side_px=settings.IMAGE_LONGEST_SIDE_PX,
        computing_seconds=settings.IMAGE_READ_COMPUTING_SECONDS,
        clock_seconds=settings.IMAGE_READ_SECONDS,
        memory_bytes=settings.IMAGE_READ_MEMORY_BYTES,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Tidied:
    """What was removed."""

    parts: int
    files: int


def tidy(*, older_than: timedelta) -> Tidied:
    """Removes parts of uploads that nobody went on with for that long, and files that no image owns.

    The image stays announced: a phone that comes back after a holiday begins its upload anew.
    """
    before = timezone.now() - older_than
    given_up = ImagePart.objects.values("image").annotate(last=Max("at")).filter(last__lt=before)
    parts, _ = ImagePart.objects.filter(image__in=given_up.values("image")).delete()
    gone.from_the_file()
    gone.from_the_table(ImagePart)
    return Tidied(parts=parts, files=files.remove_left_alone(before))
