"""An image in the wrong canal is put to the right one, or struck. What rested on it is computed anew."""

from __future__ import annotations

from django.db import transaction

from cases.domain.access.permissions import May
from cases.domain.errors import NotUsable
from cases.domain.events.payloads import StruckPayload
from cases.domain.struck import StruckWhy
from cases.mapping import folds
from cases.mapping.charts import facts_of
from cases.models import Canal, Image, ImagePutRight, LengthReading, Person
from cases.services.charting import canals, rests_on
from cases.services.common import audit
from cases.services.common.guard import guard
from cases.services.corrections import struck
from cases.services.images.removal import lock_image
from cases.services.treatment import after_events, server_events


@transaction.atomic
def strike(*, actor: Person, image: Image, why: StruckWhy) -> Image:
    """The image, struck: it stays to be looked at and counts for nothing. The first who struck it stays.

    Lengths and bends taken from it count no more. Raises NotAllowed.
    """
    guard(May.CHART, actor, image.case)
    row = lock_image(image)
    if row.struck:
        return row
    row.struck = True
    row.save(update_fields=["struck"])
    _put_right(actor, row, row.canal, why, None)
    for name in rests_on.canals_on(row):
        _let_go(actor, row, name, why)
    return row


@transaction.atomic
def move(*, actor: Person, image: Image, canal: str) -> Image:
    """The image, of that canal from here on; empty: of the whole tooth. Moved there again it is answered the same.

    Lengths and bends that were taken from it for the canal where it was count no more. Raises NotAllowed, NotUsable.
    """
    guard(May.CHART, actor, image.case)
    row = lock_image(image)
    if row.struck:
        raise NotUsable(reason="This image was struck and counts for nothing. Take a new one of the right canal.")
    if canal and not Canal.objects.filter(tooth__case=row.case_id, name=canal).exists():
        raise NotUsable(reason=f"This tooth has no canal {canal}. Choose one of its canals.", at=("canal",))
    before = row.canal
    if before == canal:
        return row
    row.canal = canal
    row.save(update_fields=["canal"])
    _put_right(actor, row, before, StruckWhy.WRONG_CANAL, canal)
    if before in rests_on.canals_on(row):
        _let_go(actor, row, before, StruckWhy.WRONG_CANAL)
    return row


def _put_right(actor: Person, row: Image, was: str, why: StruckWhy, moved_to: str | None) -> None:
    """Keeps who did it, when and why, and tells the chair where a plan is in force."""
    case, is_struck = row.case, moved_to is None
    ImagePutRight.objects.create(
        image=row, by=actor, why=why.value, canal=was, struck=is_struck, moved_to=moved_to or ""
    )
    verb, after = "strike" if is_struck else "move", {"why": why.value, "canal": moved_to}
    audit.changed(actor=actor, verb=verb, subject=row, case=case, before={"canal": was}, after=after)
    course = folds.course_of(case.pk)
    if course is None:
        return
    payload = StruckPayload(what="image", struck=str(row.pk), why=why, moved_to=moved_to)
    version = case.versions.get(hash=course.plan)
    server_events.write(actor=actor, case=case, version=version, payload=payload, canal=was)
    after_events.keep(case)


def _let_go(actor: Person, image: Image, name: str, why: StruckWhy) -> None:
    """Strikes the lengths that were taken of the canal from the image, and charts anew, or as unknown, what was charted
    by it.
    """
    canal = Canal.objects.select_related("tooth__case").get(tooth__case=image.case_id, name=name)
    for reading in LengthReading.objects.filter(marking__image=image, canal=canal, struck_at=None):
        struck.strike(actor=actor, reading=reading, why=why)
    # What somebody charted otherwise since stays.
    from_it = [item for facts in rests_on.charted_from(image, canal) for item in facts.items()]
    stands, now = rests_on.charted(canal), facts_of(canal)
    changes = {fact: stands.get(fact) for fact, value in from_it if getattr(now, fact) == value}
    if changes:
        canals.change_canal(actor=actor, canal=canal, changes=changes)
