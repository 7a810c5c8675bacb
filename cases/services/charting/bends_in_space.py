"""Combining two marked images of one canal: the bend in space is kept, and charted."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from django.db import transaction

from cases.domain.access.permissions import May
from cases.domain.errors import NotUsable
from cases.mapping.kits import thresholds_of
from cases.mapping.markings import bend_of
from cases.models import BendInSpace, Canal, Marking, Person
from cases.services.charting import canals
from cases.services.common import audit, idempotency
from cases.services.common.guard import guard
from cases.services.common.locking import locked
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.radiograph import views
from planning.radiograph.values import Between

MOST_BENDS = 60  # of one canal: far more views than anybody takes


@dataclass(frozen=True, slots=True, kw_only=True)
class Combined:
    """Two markings of one canal, on different images, and how the views lie to each other."""

    id: UUID
    first_id: UUID
    second_id: UUID
    apart_deg: float
    other_side: bool


@transaction.atomic
def combine(*, actor: Person, canal: Canal, pair: Combined) -> tuple[BendInSpace, bool]:
    """The bend in space and True; False where it was sent before.

    Raises NotAllowed, SentDifferently, NotUsable; ViewsDoNotFit for views that show nearly the same.
    """
    guard(May.CHART, actor, canal.tooth.case)
    case = locked(canal.tooth.case_id)
    what = {
        "first": str(pair.first_id),
        "second": str(pair.second_id),
        "apart_deg": pair.apart_deg,
        "other_side": pair.other_side,
    }
    sent_hash = idempotency.fingerprint(actor=actor, to=canal.pk, what=what)
    if before := idempotency.sent_before(BendInSpace, pair.id, sent_hash):
        return before, False
    if canal.bends_in_space.count() >= MOST_BENDS:
        raise NotUsable(reason=f"{canal.name} has {MOST_BENDS} bends in space; more are not taken.")
    first, second = (_marking(canal, name, getattr(pair, name)) for name in ("first_id", "second_id"))
    if first.image_id == second.image_id:
        raise NotUsable(reason="Two views are two images. Choose another one.", at=("second_id",))
    read = _read(canal, first, second, pair, Figures(thresholds_of(case.programme_id)))
    last = canal.bends_in_space.order_by("-number").values_list("number", flat=True).first()
    row = BendInSpace(
        id=pair.id,
        sent_hash=sent_hash,
        canal=canal,
        number=(last or 0) + 1,
        made_by=actor,
        first=first,
        second=second,
        apart_deg=pair.apart_deg,
        other_side=pair.other_side,
        text=canonical_text(read),
    )
    row.save(force_insert=True)
    audit.changed(actor=actor, verb="combine", subject=row, case=case, after={"canal": canal.name, **what})
    canals.change_canal(actor=actor, canal=canal, changes={"curvature_deg": read.value})
    return row, True


def _marking(canal: Canal, name: str, id_: UUID) -> Marking:
    rows = Marking.objects.select_related("image").filter(image__case=canal.tooth.case_id)
    marking: Marking | None = rows.filter(pk=id_).first()
    if marking is None:
        raise NotUsable(reason="This case has no such marking.", at=(name,))
    if not marking.image.counts_in(canal.name):
        reason = f"This image was struck, or put to another canal than {canal.name}. Choose another one."
        raise NotUsable(reason=reason, at=(name,))
    return marking


def _read(canal: Canal, first: Marking, second: Marking, pair: Combined, figures: Figures) -> Between:
    """The angle in space, from both markings as they were measured on their day."""
    angles = []
    for name, marking in (("first_id", first), ("second_id", second)):
        angle = bend_of(marking, canal.name)
        if angle is None:
            reason = f"Where {canal.name} bends is not marked on this image. Mark it first."
            raise NotUsable(reason=reason, at=(name,))
        angles.append(angle)
    first_angle, second_angle = angles
    bends = views.Bends(
        first_deg=first_angle.value,
        second_deg=-second_angle.value if pair.other_side else second_angle.value,
        apart_deg=pair.apart_deg,
        first_within=first_angle,
        second_within=second_angle,
    )
    try:
        read = views.read(views.Views(bends=bends), figures)
    except PlanningError as refusal:
        # Two markings were sent and no bends: the path is told in what was sent.
        refusal.pointer = tuple(step for step in refusal.pointer if step != "bends")
        raise
    if read.in_space is None:
        raise AssertionError("both angles came with their intervals")
    return read.in_space
