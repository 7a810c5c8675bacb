"""How often the instruments of a student's set have been used."""

from __future__ import annotations

from dataclasses import replace

from cases.models import values
from cases.models.events import InstrumentUse
from cases.models.kits import Kit as KitRow
from cases.models.people import Person
from cases.models.teeth import Case
from planning.plan_input import Kit
from planning.techniques import Setting


def counted(row: KitRow, student: Person, case: Case | None = None) -> Kit:
    """The kit with the uses of the student's set: what the programme stated, and every canal entered since.

    One use is one canal; a discarded instrument is followed by a new one with none. Canals of `case` itself are left
    out: its plan counts them. What is used on a patient is used on no other, so the clinic's uses stay in their case.
    """
    kit = values.kit(row)
    if case is not None and case.setting == Setting.CLINIC:
        return kit
    uses = {one.key: one.uses for one in kit.instruments}
    rows = InstrumentUse.objects.filter(kit=row, student=student).exclude(case__setting=Setting.CLINIC)
    for use in rows.order_by("at", "event__position", "pk"):
        if use.discarded:
            uses[use.instrument] = 0
        elif case is None or use.case_id != case.pk:
            uses[use.instrument] = uses.get(use.instrument, 0) + 1
    return replace(kit, instruments=tuple(replace(one, uses=uses[one.key]) for one in kit.instruments))
