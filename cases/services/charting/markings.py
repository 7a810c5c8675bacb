"""Marking images: the marks are kept, and what they measure becomes readings and facts of the canals."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from uuid import UUID

from django.db import transaction

from cases.domain.access.permissions import May
from cases.domain.errors import NoSuchCanal, NotUsable
from cases.domain.images import ImageState
from cases.mapping.images import spacing_facts
from cases.mapping.kits import thresholds_of
from cases.models import Canal, Image, Marking, Person
from cases.services.charting import canals, readings, rests_on
from cases.services.common import audit, idempotency, parts
from cases.services.common.guard import guard
from cases.services.common.locking import locked
from cases.services.images import upload
from planning import radiograph
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.radiograph import ImageMarks, Measured

MOST_MARKINGS = 60  # of one image: everybody who sees it, many times over


@dataclass(frozen=True, slots=True, kw_only=True)
class Marked:
    """A person's marks, and what is to be made of them."""

    id: UUID
    marks: ImageMarks
    """Without the file's facts: they are the image's own."""
    take: Sequence[str] = ()
    """Canals whose length becomes a reading, and whose bend is charted."""
    corrects_id: UUID | None = None
    note: str = ""


@transaction.atomic
def mark(*, actor: Person, image: Image, marked: Marked) -> tuple[Marking, bool]:
    """The marking and True; False where it was sent before.

    Raises NotAllowed, SentDifferently, ImageRemoved, NotUsable, NoSuchCanal; what cannot be measured (ScaleNotUsable,
    PointsDoNotFit); what the planner refuses of a length.
    """
    guard(May.CHART, actor, image.case)
    case = locked(image.case_id)
    what = {
        "marks": marked.marks,
        "take": list(marked.take),
        "corrects": str(marked.corrects_id or ""),
        "note": marked.note,
    }
    sent_hash = idempotency.fingerprint(actor=actor, to=image.pk, what=what)
    if before := idempotency.sent_before(Marking, marked.id, sent_hash):
        return before, False
    corrected = _refuse_unfit(image, marked)
    # Putting right what was marked is judging an image; measuring anew is work.
    if marked.take and corrected is None:
        parts.refuse_unless_works_now(actor, case, "Lengths are taken")
    measured = measure(image, marked.marks, Figures(thresholds_of(case.programme_id)))
    last = image.markings.order_by("-number").values_list("number", flat=True).first()
    row = Marking(
        id=marked.id,
        sent_hash=sent_hash,
        image=image,
        number=(last or 0) + 1,
        made_by=actor,
        corrects=corrected,
        note=marked.note,
        text=canonical_text(marked.marks),
        measured_text=canonical_text(measured),
    )
    row.save(force_insert=True)
    audit.changed(
        actor=actor, verb="mark", subject=row, case=case, after={"image": str(image.pk), "take": list(marked.take)}
    )
    for number, name in enumerate(marked.take):
        _take(actor, image, row, measured, name, ("take", number))
    return row, True


def measure(image: Image, marks: ImageMarks, figures: Figures) -> Measured:
    """What the marks measure on this image's own pixels. Raises what `planning.radiograph.measure` does."""
    try:
        return radiograph.measure(replace(marks, facts=spacing_facts(image)), figures)
    except PlanningError as refusal:
        raise refusal.below("marks") from None


def _refuse_unfit(image: Image, marked: Marked) -> Marking | None:
    """The marking that is corrected. Raises ImageRemoved and NotUsable."""
    image.refresh_from_db(fields=["state", "removed_for", "struck"])  # as it is under the lock
    upload.refuse_removed(image)
    if image.state != ImageState.STORED:
        raise NotUsable(reason="The image is not here yet. Marks come after it.")
    if image.struck and marked.take:
        raise NotUsable(reason="This image was struck: no length is taken from it. Take a new one.", at=("take", 0))
    if marked.marks.facts is not None:
        reason = "What the file says of its scale is the image's own. Leave it out."
        raise NotUsable(reason=reason, at=("marks", "facts"))
    if image.markings.count() >= MOST_MARKINGS:
        raise NotUsable(reason=f"The image was marked {MOST_MARKINGS} times; more are not taken.")
    _refuse_outside(image, marked.marks)
    lines = {line.canal for line in marked.marks.lines}
    for number, name in enumerate(marked.take):
        if name not in lines or name in marked.take[:number]:
            raise NotUsable(reason=f"{name} is not marked on this image, or named twice.", at=("take", number))
    if marked.corrects_id is None:
        return None
    corrected: Marking | None = image.markings.filter(pk=marked.corrects_id).first()
    if corrected is None:
        raise NotUsable(reason="This image has no such marking to correct.", at=("corrects_id",))
    return corrected


def _refuse_outside(image: Image, marks: ImageMarks) -> None:
    """Raises NotUsable for a mark that no finger can have set."""
    for at, mark in marks.places():
        if not (0 <= mark.x_px <= (image.width_px or 0) and 0 <= mark.y_px <= (image.height_px or 0)):
            raise NotUsable(reason="This mark lies outside the image. Take it away or set it anew.", at=("marks", *at))


def _take(actor: Person, image: Image, row: Marking, measured: Measured, name: str, at: tuple[str | int, ...]) -> None:
    """The canal's length becomes a reading, its bend is charted."""
    canal = Canal.objects.filter(tooth__case=image.case_id, name=name).select_related("tooth__case", "root").first()
    if canal is None:
        names = Canal.objects.filter(tooth__case=image.case_id).order_by("place").values_list("name", flat=True)
        raise NoSuchCanal(canal=name, canals=", ".join(names), at=at)
    line = next(line for line in measured.lines if line.canal == name)
    if line.reading is None:
        reason = f"{name} has no length on this image: mark its scale, and from the reference point to the root's end."
        raise NotUsable(reason=reason, at=at)
    try:
        readings.keep_length(actor=actor, canal=canal, reading=line.reading, marking=row)
    except PlanningError as refusal:
        refusal.pointer = at
        raise
    changes = rests_on.facts(line)
    if rests_on.standing_bends(canal):
        changes.pop("curvature_deg", None)  # one view shows a part of what two have shown
    if changes:
        canals.change_canal(actor=actor, canal=canal, changes=changes)
