"""Images as they are shown, and what is left of the quota for more."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from uuid import UUID

from django.conf import settings

from cases.domain.images import BYTES_PER_MB, ImageState, Spacing
from cases.mapping.kits import thresholds_of
from cases.models import Case, Image
from planning.foundation.encoding import Mode, decode
from planning.foundation.tables import Figures
from planning.radiograph import MarkFigures, mark_figures

NOT_KEPT = (ImageState.AWAITED, ImageState.REFUSED)


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageQuota:
    """What may still be stored; asked before a camera opens."""

    left_bytes: int
    """Of the programme."""
    most_bytes: int
    most_bytes_each: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ImagesOfCase:
    quota: ImageQuota
    marking: MarkFigures
    images: Sequence[Image]


def images_of_case(case: Case) -> ImagesOfCase:
    """Every image of the case, in the order they were told of."""
    most = case.programme.images_most_mb * BYTES_PER_MB
    left = max(0, most - Image.objects.bytes_of(case.programme_id))
    rows = case.images.select_related("taken_by", "checked_by", "removed_by").prefetch_related("put_right__by")
    quota = ImageQuota(left_bytes=left, most_bytes=most, most_bytes_each=settings.IMAGE_MOST_BYTES)
    marking = mark_figures(Figures(thresholds_of(case.programme_id)))
    return ImagesOfCase(quota=quota, marking=marking, images=list(rows.order_by("server_time", "id")))


def is_stored(case: Case, image_id: UUID) -> bool:
    """Whether the whole image is here already."""
    return case.images.filter(pk=image_id).exclude(state__in=NOT_KEPT).exists()


def spacing_of(image: Image) -> Spacing | None:
    """What the file said of its scale; None where it said nothing."""
    return decode(Spacing, json.loads(image.spacing_text), Mode.KEPT) if image.spacing_text else None
