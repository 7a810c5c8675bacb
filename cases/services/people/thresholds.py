"""Figures of a programme's own: thresholds, and how wide canals are."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.errors import NotHere, NotUsable
from cases.mapping.kits import widths_key
from cases.models import Person, Programme, ProgrammeWidths, ThresholdOverride
from cases.services.common import audit
from cases.services.people.programmes import lock_programme
from planning.canal.initial_shape import refuse_widths
from planning.contract.canal_facts import WidthInput
from planning.foundation import tables
from planning.foundation.counts import at_most
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.whole_tooth.limits import refuse_thresholds

MOST_CANAL_NAME = 12


@transaction.atomic
def set_threshold(*, actor: Person, programme_id: UUID, key: str, value: float | None) -> None:
    """The programme's own value of a figure; None goes back to the published one.

    Plans that exist keep the figures they were made with. Raises NotAllowed, NotHere, ChoiceNotPossible.
    """
    lock_programme(actor, programme_id)
    published = tables.published().get(key)
    if published is None:
        raise NotHere(what=f"figure as '{key}'")
    if value is not None:
        _refuse_threshold(key, value)
    before = ThresholdOverride.objects.filter(programme_id=programme_id, key=key).first()
    if value is None:
        ThresholdOverride.objects.filter(programme_id=programme_id, key=key).delete()
    else:
        ThresholdOverride.objects.update_or_create(programme_id=programme_id, key=key, defaults={"value": value})
    audit.changed(
        actor=actor,
        verb="set figure",
        subject=Programme(pk=programme_id),
        programme_id=programme_id,
        before={key: before.value if before else published.value},
        after={key: value},
    )


def _refuse_threshold(key: str, value: float) -> None:
    try:
        refuse_thresholds({key: value})
    except PlanningError as refusal:
        refusal.pointer = ("value",)
        raise


@transaction.atomic
def set_widths(
    *, actor: Person, programme_id: UUID, tooth: str, canal: str, widths: Sequence[WidthInput] | None
) -> None:
    """The programme's own widths of a canal, of either side of the mouth; None goes back to the published ones.

    Plans that exist keep the widths they were made with. Raises NotAllowed, NotHere, NotUsable, CanalsDoNotFit.
    """
    lock_programme(actor, programme_id)
    key = widths_key(tooth)
    if key is None or not 0 < len(canal) <= MOST_CANAL_NAME:
        raise NotHere(what=f"canal as {canal} of tooth {tooth}")
    if widths is not None:
        _refuse_widths(widths, canal, programme_id)
    rows = ProgrammeWidths.objects.filter(programme_id=programme_id, tooth=key, canal=canal)
    before = rows.first()
    if widths is None:
        rows.delete()
    else:
        text = canonical_text(tuple(widths))
        ProgrammeWidths.objects.update_or_create(
            programme_id=programme_id, tooth=key, canal=canal, defaults={"text": text}
        )
    audit.changed(
        actor=actor,
        verb="set widths",
        subject=Programme(pk=programme_id),
        programme_id=programme_id,
        before=_logged(key, canal, before.text if before else None),
        after=_logged(key, canal, None if widths is None else canonical_text(tuple(widths))),
    )


def _logged(tooth: str, canal: str, text: str | None) -> dict[str, Any]:
    return {f"widths of {tooth} {canal}": text}


def _refuse_widths(widths: Sequence[WidthInput], canal: str, programme_id: UUID) -> None:
    most = at_most("widths").most
    if not 0 < len(widths) <= most:
        raise NotUsable(reason=f"Give 1 to {most} widths.", at=("widths",))
    try:
        refuse_widths(widths, canal)
    except PlanningError as refusal:
        raise refusal.below("widths") from None
