"""What becomes of an image once it is here: somebody looks whether it names a person, or it is removed."""

from __future__ import annotations

from typing import Any

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May
from cases.domain.errors import NotUsable
from cases.domain.images import ImageState, RemovalReason
from cases.models import Image, Person
from cases.services.common import audit
from cases.services.common.guard import guard
from cases.services.common.locking import locked
from cases.services.images import files, gone
from cases.services.images.upload import refuse_removed


@transaction.atomic
def nobody_named(*, actor: Person, image: Image) -> Image:
    """A person looked and found no name and no number of a person. The first who looked stays.

    Raises NotAllowed, ImageRemoved, NotUsable.
    """
    guard(May.CHART, actor, image.case)
    row = lock_image(image)
    refuse_removed(row)
    if row.state != ImageState.STORED:
        raise NotUsable(reason="The image is not here yet. Look at it once it is.")
    if row.checked_by is None:
        _write(row, checked_by=actor, checked_at=timezone.now())
        audit.changed(actor=actor, verb="nobody named", subject=row, case=row.case)
    return row


@transaction.atomic
def remove(*, actor: Person, image: Image, reason: RemovalReason) -> Image:
    """Takes the picture away for good, also one on its way; what was marked on it and told of it stays true.

    The first who removed it stays; of a refused one nothing was kept. Raises NotAllowed.
    """
    guard(May.CHART, actor, image.case)
    row = lock_image(image)
    if row.state in (ImageState.REMOVED, ImageState.REFUSED):
        return row
    before = {"state": row.state}
    _write(
        row,
        state=ImageState.REMOVED,
        removed_by=actor,
        removed_at=timezone.now(),
        removed_for=reason,
        stored_bytes=0,
        has_data_set=False,
    )
    row.parts.all().delete()
    gone.from_the_file()
    audit.changed(actor=actor, verb="remove", subject=row, case=row.case, before=before, after={"reason": reason})

    def files_too() -> None:
        files.take_away(row)

    # After the commit: a file is not taken back with the rest. What a crash leaves then, `tidy` takes.
    transaction.on_commit(files_too, robust=True)
    return row


def lock_image(image: Image) -> Image:
    """The row as it is now, held until the transaction ends, and its case with it."""
    locked(image.case_id)
    rows = Image.objects.select_for_update(no_key=True, of=("self",))
    return rows.select_related("case", "taken_by", "checked_by", "removed_by").get(pk=image.pk)


def _write(row: Image, **values: Any) -> None:
    for name, value in values.items():
        setattr(row, name, value)
    row.save(update_fields=list(values))
