"""What a programme keeps: kits and techniques."""

from __future__ import annotations

import re
from uuid import UUID

from django.db import transaction

from cases.domain.access.permissions import May, refuse_unless
from cases.domain.errors import NotUsable, TakenAlready
from cases.domain.uuid7 import uuid7
from cases.mapping.kits import filling_row, instrument_row, techniques_of, thresholds_of
from cases.models import Kit, KitFilling, KitNeedle, Person, Programme, TechniqueRecord
from cases.models.base import KEY
from cases.models.kits import KitInstrument
from cases.services.common import audit, idempotency
from cases.services.common.guard import actor_in
from planning.contract.plan_input import Kit as KitValue
from planning.foundation.bounds import refuse_outside
from planning.foundation.counts import refuse_too_many
from planning.foundation.encoding import canonical_text, digest
from planning.foundation.errors import PlanningError, Pointer
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, refuse_undescribed
from planning.techniques.technique import Technique
from planning.whole_tooth.technique_check import check
from planning.work.irrigation import outside_um

MOST_NAME = 80
MOST_KEY = 60


@transaction.atomic
def add_kit(
    *,
    actor: Person,
    programme_id: UUID,
    kit: KitValue,
    id: UUID | None = None,
) -> tuple[Kit, bool]:
    """A kit for the programme and True; False where it was sent before.

    Raises NotAllowed, TakenAlready, NotUsable, InstrumentNotDescribed, ChoiceNotPossible.
    """
    lock_programme(actor, programme_id)
    sent_hash = idempotency.fingerprint(actor=actor, to=programme_id, what={"kit": kit})
    # First, as a kit that was sent before would find its own name taken.
    if before := idempotency.sent_before(Kit, id, sent_hash):
        return before, False
    if not 0 < len(kit.name.strip()) <= MOST_NAME:
        raise NotUsable(reason=f"A kit needs a name of at most {MOST_NAME} characters.", at=("kit", "name"))
    if Kit.objects.filter(programme_id=programme_id, name=kit.name).exists():
        raise TakenAlready(what="A kit", name=kit.name, at=("kit", "name"))
    _refuse_kit(kit, Figures(thresholds_of(programme_id)))
    row = Kit.objects.create(id=id or uuid7(), sent_hash=sent_hash, programme_id=programme_id, name=kit.name)
    KitInstrument.objects.bulk_create(instrument_row(row, each) for each in kit.instruments)
    KitNeedle.objects.bulk_create(KitNeedle(kit=row, gauge=each.gauge, tip=each.tip) for each in kit.needles)
    KitFilling.objects.bulk_create(filling_row(row, each) for each in kit.filling)
    audit.changed(actor=actor, verb="add", subject=row, programme_id=programme_id, after={"name": kit.name})
    return row, True


def lock_programme(actor: Person, programme_id: UUID) -> None:
    """Guards, and holds the programme until the transaction ends."""
    refuse_unless(May.KEEP_KITS, actor_in(actor, programme_id))
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)


def _refuse_kit(kit: KitValue, figures: Figures) -> None:
    refuse_outside(kit, ("kit",))
    refuse_too_many(kit, ("kit",))
    if not kit.instruments:
        raise NotUsable(reason="A kit has one instrument at least.", at=("kit", "instruments"))
    for number, instrument in enumerate(kit.instruments):
        _refuse_instrument(instrument, instrument in kit.instruments[:number], figures, ("kit", "instruments", number))
    for number, needle in enumerate(kit.needles):
        place = ("kit", "needles", number)
        try:
            outside_um(needle)
        except PlanningError as refusal:
            refusal.pointer = place
            raise
        if needle in kit.needles[:number]:
            raise NotUsable(reason="This needle is there twice.", at=place)
    _refuse_filling(kit)


def _refuse_filling(kit: KitValue) -> None:
    for number, item in enumerate(kit.filling):
        at = ("kit", "filling", number)
        if item in kit.filling[:number]:
            raise NotUsable(reason=f"This {item.kind} is there twice.", at=at)


def _refuse_instrument(instrument: Instrument, twice: bool, figures: Figures, at: Pointer) -> None:
    try:
        refuse_undescribed(instrument, figures)
    except PlanningError as refusal:
        raise refusal.below(*at) from None
    if twice:
        raise NotUsable(reason=f"{instrument.key} is there twice.", at=at)


@transaction.atomic
def add_technique(
    *,
    actor: Person,
    programme_id: UUID,
    technique: Technique,
    id: UUID | None = None,
) -> tuple[TechniqueRecord, bool]:
    """A technique of the programme's own and True; False where it was sent before.

    Raises NotAllowed, TakenAlready, NotUsable, TechniqueNotUsable.
    """
    lock_programme(actor, programme_id)
    sent_hash = idempotency.fingerprint(actor=actor, to=programme_id, what={"technique": technique})
    # First, as a technique that was sent before would find its own key taken.
    if before := idempotency.sent_before(TechniqueRecord, id, sent_hash):
        return before, False
    if not re.fullmatch(KEY.regex, technique.key) or len(technique.key) > MOST_KEY:
        reason = f"A key has small letters, digits and hyphens, at most {MOST_KEY}."
        raise NotUsable(reason=reason, at=("technique", "key"))
    try:
        check(technique)
    except PlanningError as refusal:
        raise refusal.below("technique") from None
    if technique.key in techniques_of(programme_id):
        raise TakenAlready(what="A technique", name=technique.key, at=("technique", "key"))
    text = canonical_text(technique)
    row = TechniqueRecord(
        id=id or uuid7(),
        sent_hash=sent_hash,
        programme_id=programme_id,
        key=technique.key,
        text=text,
        text_hash=digest(text),
    )
    row.save(force_insert=True)
    audit.changed(actor=actor, verb="add", subject=row, programme_id=programme_id, after={"key": technique.key})
    return row, True
