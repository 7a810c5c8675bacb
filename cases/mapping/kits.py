"""What a programme keeps (kits, figures, widths, techniques) as values, and back."""

from __future__ import annotations

import json
from typing import Any
from uuid import UUID

from cases.mapping.charts import micrometres, millimetres, widths_in
from cases.models.kits import Kit as KitRow
from cases.models.kits import KitFilling, KitInstrument, KitNeedle, ProgrammeWidths, TechniqueRecord, ThresholdOverride
from cases.models.prepared import Prepared, hand_out
from planning.anatomy import like
from planning.contract.canal_facts import WidthInput
from planning.contract.obturation import FillingItem
from planning.contract.plan_input import Kit, Needle
from planning.foundation.encoding import Mode, canonical_text, decode
from planning.foundation.quantities import mm, um
from planning.instruments.iso_3630 import DiameterAt, Instrument, Motion, Use
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Technique

_THRESHOLDS = Prepared(
    lambda programme: ThresholdOverride.objects.filter(programme=programme).order_by("key").values_list("key", "value")
)
_WIDTHS = Prepared(lambda programme: ProgrammeWidths.objects.filter(programme=programme))
_TECHNIQUES = Prepared(lambda programme: TechniqueRecord.objects.filter(programme=programme).order_by("key"))
_KIT = Prepared(lambda kit: KitRow.objects.filter(pk=kit))
_IN_A_KIT: dict[str, Prepared[Any]] = {
    "instruments": Prepared(lambda kit: KitInstrument.objects.filter(kit=kit)),
    "needles": Prepared(lambda kit: KitNeedle.objects.filter(kit=kit)),
    "filling": Prepared(lambda kit: KitFilling.objects.filter(kit=kit)),
}


def thresholds_of(programme_id: UUID) -> dict[str, float]:
    return dict(_THRESHOLDS(programme_id))


def widths_key(tooth: str) -> str | None:
    """The tooth whose widths stand for this one: those of the two sides are alike. None for what has no such widths."""
    try:
        return like(tooth)
    except (KeyError, IndexError):
        return None


def programme_widths(programme_id: UUID, tooth: str) -> dict[str, tuple[WidthInput, ...]]:
    """The programme's own widths of a tooth's canals, by canal."""
    key = widths_key(tooth)
    return {row.canal: widths_in(row.text) for row in _WIDTHS(programme_id) if row.tooth == key}


def kit_at_hand(kit_id: UUID) -> KitRow | None:
    """The kit with all that is in it; None where there is none."""
    row = _KIT.first(kit_id)
    if row is not None:
        for name, inside in _IN_A_KIT.items():
            hand_out([row], name, inside(kit_id))
    return row


def kit_of(row: KitRow) -> Kit:
    # One order whoever asks, so that one kit has one text.
    instruments = sorted(row.instruments.all(), key=lambda each: (each.use, each.size, each.taper, each.motion))
    needles = sorted(row.needles.all(), key=lambda each: (each.gauge, each.tip))
    filling = sorted(row.filling.all(), key=lambda each: (each.kind, each.size, each.taper))
    return Kit(
        name=row.name,
        instruments=tuple(_instrument(each) for each in instruments),
        needles=tuple(_needle(each) for each in needles),
        filling=tuple(_filling(each) for each in filling),
    )


def _instrument(row: KitInstrument) -> Instrument:
    return Instrument(
        size=row.size,
        taper=row.taper,
        motion=Motion(row.motion),
        use=Use(row.use),
        length_mm=mm(row.length_um),
        cutting_part_mm=mm(row.cutting_part_um),
        largest_flute_mm=millimetres(row.largest_flute_um),
        speed_rpm=row.speed_rpm,
        torque_ncm=row.torque_ncm,
        diameters=decode(tuple[DiameterAt, ...], json.loads(row.diameters_text or "[]"), Mode.KEPT),
        uses=row.uses,
        most_uses=row.most_uses,
    )


def _needle(row: KitNeedle) -> Needle:
    return decode(Needle, {"gauge": row.gauge, "tip": row.tip}, Mode.KEPT)


def _filling(row: KitFilling) -> FillingItem:
    return decode(FillingItem, {"kind": row.kind, "size": row.size, "taper": row.taper}, Mode.KEPT)


def filling_row(kit_row: KitRow, value: FillingItem) -> KitFilling:
    return KitFilling(kit=kit_row, kind=value.kind, size=value.size, taper=value.taper)


def instrument_row(kit_row: KitRow, value: Instrument) -> KitInstrument:
    return KitInstrument(
        kit=kit_row,
        size=value.size,
        taper=value.taper,
        motion=value.motion,
        use=value.use,
        length_um=um(value.length_mm),
        cutting_part_um=um(value.cutting_part_mm),
        largest_flute_um=micrometres(value.largest_flute_mm),
        speed_rpm=value.speed_rpm,
        torque_ncm=value.torque_ncm,
        diameters_text=canonical_text(value.diameters) if value.diameters else "",
        uses=value.uses,
        most_uses=value.most_uses,
    )


def techniques_of(programme_id: UUID) -> dict[str, Technique]:
    """The provided techniques and the programme's own, by key."""
    rows = _TECHNIQUES(programme_id)
    own = {row.key: decode(Technique, json.loads(row.text), Mode.KEPT) for row in rows}
    return {**provided_techniques(), **own}
