"""How often the instruments of a student's set have been used."""

from __future__ import annotations

from dataclasses import replace

from cases.mapping.kits import kit_of, thresholds_of
from cases.models.events import InstrumentUse
from cases.models.kits import Kit as KitRow
from cases.models.people import Person
from cases.models.prepared import Prepared
from cases.models.teeth import Case
from planning.contract.plan_input import Kit
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion
from planning.techniques.technique import Setting

_USES = Prepared(
    lambda kit, student: (
        InstrumentUse.objects.filter(kit=kit, student=student)
        .exclude(case__setting=Setting.CLINIC)
        .order_by("at", "event__position", "pk")
    )
)


def counted(row: KitRow, student: Person, case: Case | None = None) -> Kit:
    """The kit with the uses of the student's set: what the programme stated, and every canal entered since.

    One use is one canal; a discarded instrument is followed by a new one with none. Canals of `case` itself are left
    out: its plan counts them. What is used on a patient is used on no other, so the clinic's uses stay in their case,
    and small hand instruments are for one canal.
    """
    kit = kit_of(row)
    if case is not None and case.setting == Setting.CLINIC:
        return _of_one_patient(kit, Figures(thresholds_of(row.programme_id)))
    uses = {instrument.key: instrument.uses for instrument in kit.instruments}
    for use in _USES(row.pk, student.pk):
        if use.discarded:
            uses[use.instrument] = 0
        elif case is None or use.case_id != case.pk:
            uses[use.instrument] = uses.get(use.instrument, 0) + 1
    return replace(
        kit, instruments=tuple(replace(instrument, uses=uses[instrument.key]) for instrument in kit.instruments)
    )


def _of_one_patient(kit: Kit, figures: Figures) -> Kit:
    """Small hand instruments bend and unwind unseen: a new one for each canal."""
    once = figures["single_use.to_size"]
    return replace(
        kit,
        instruments=tuple(
            _once(instrument) if _is_small(instrument, once) else instrument for instrument in kit.instruments
        ),
    )


def _is_small(instrument: Instrument, most: float) -> bool:
    return instrument.motion is Motion.HAND and instrument.size <= most


def _once(instrument: Instrument) -> Instrument:
    return replace(instrument, most_uses=1)
