"""What the record adds up, against plain sums in whole hundredths."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from cases.domain.access.roles import Role
from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import (
    EventPayload,
    ImagePayload,
    IrrigatedPayload,
    NoImage,
    SignOffPayload,
    StepPayload,
)
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.visit import Visit
from cases.domain.record import sums
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.values.timeline import RecordPerson
from planning.run_sheet.graph import Exit
from planning.techniques.technique import Setting

NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)
PRIYA = RecordPerson(id="p", name="Priya", role=Role.STUDENT)
HUNDREDTHS = st.integers(min_value=0, max_value=2_000)
Rinsed = tuple[bool, str, str, int, bool]
"""As a step or beside it, where, with what, how many hundredths of a millilitre, taken back or not."""

rinsed = st.tuples(
    st.booleans(),
    st.sampled_from(["MB1", "DB", ""]),
    st.sampled_from(["water", "saline", "edta"]),
    HUNDREDTHS,
    st.booleans(),
)


def rinse(as_step: bool, irrigant: str, volume_ml: float) -> EventPayload:
    if as_step:
        return StepPayload(exit=Exit.DONE, irrigant=irrigant, volume_ml=volume_ml)
    return IrrigatedPayload(irrigant=irrigant, volume_ml=volume_ml)


def rinsed_history(rinses: list[Rinsed]) -> CaseHistory:
    facts = tuple(
        RecordedEvent(
            event=CourseEvent(
                id=f"e{number}",
                actor="p",
                plan="h",
                canal=canal,
                payload=rinse(as_step, irrigant, hundredths / 100),
            ),
            position=number,
            at=NOON,
            device_time=NOON,
            who=PRIYA,
        )
        for number, (as_step, canal, irrigant, hundredths, _) in enumerate(rinses, start=1)
    )
    gone = tuple(f"e{number}" for number, rinsing in enumerate(rinses, start=1) if rinsing[-1])
    return CaseHistory(
        facts=facts,
        versions={},
        course=CaseState(plan="h", canals={}, visit=Visit(setting=Setting.BLOCK), undone=gone),
        people={},
    )


@given(st.lists(rinsed, max_size=40))
def test_irrigants_add_up_to_the_hundredth(rinses: list[Rinsed]) -> None:
    """Exact arithmetic in whole hundredths of a millilitre, what was taken back left out."""
    expected: dict[str, dict[str, int]] = {}
    for _, canal, irrigant, hundredths, gone in rinses:
        if not gone:
            of = expected.setdefault(irrigant, {})
            of[canal] = of.get(canal, 0) + hundredths
    totals = {
        total.irrigant: (
            Fraction(str(total.volume_ml)),
            {each.canal: Fraction(str(each.volume_ml)) for each in total.canals},
        )
        for total in sums.irrigants(rinsed_history(rinses))
    }
    assert totals == {
        irrigant: (Fraction(sum(of.values()), 100), {canal: Fraction(n, 100) for canal, n in of.items()})
        for irrigant, of in expected.items()
    }


def fact(number: int, payload: EventPayload, canal: str = "") -> RecordedEvent:
    event = CourseEvent(id=f"e{number}", actor="p", plan="h", canal=canal, payload=payload)
    at = NOON + timedelta(hours=number)
    return RecordedEvent(event=event, position=number, at=at, device_time=at, who=PRIYA)


def history(*facts: RecordedEvent, setting: Setting = Setting.BLOCK) -> CaseHistory:
    course = CaseState(plan="h", canals={}, visit=Visit(setting=setting))
    return CaseHistory(facts=facts, versions={}, course=course, people={})


def unshown(why: NoImage, together: str = "") -> StepPayload:
    return StepPayload(exit=Exit.DONE, no_image=why, together=together)


def test_what_was_one_act_counts_once() -> None:
    """By hand: two decisions on plans, one sign-off for three canals and one alone: 4. One image for two canals, one
    more, a film for two and one taken elsewhere: 4; without a sensor none was taken."""
    asked_for = sums.asked(
        history(
            *(
                fact(n, SignOffPayload(exit="approved", together="w"), name)
                for n, name in enumerate(("MB1", "DB", "P"))
            ),
            fact(3, SignOffPayload(exit="approved"), "MB2"),
            *(fact(n, ImagePayload(image_id="i1"), name) for n, name in ((4, "MB1"), (5, "DB"))),
            fact(6, ImagePayload(image_id="i2"), "MB2"),
            *(fact(n, unshown("film", together="x"), name) for n, name in ((7, "MB1"), (8, "DB"))),
            fact(9, unshown("image_elsewhere"), "P"),
            fact(10, unshown("no_sensor"), "P"),
        ),
        decisions=2,
    )
    assert (asked_for.sign_offs, asked_for.exposures) == (4, 4)
    assert (asked_for.planned_sign_offs, asked_for.planned_exposures) == (None, None)
