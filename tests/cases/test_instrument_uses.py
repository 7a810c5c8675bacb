"""How often instruments were used, counted by hand: one use is one canal, a discarded one is followed by a new one."""

from __future__ import annotations

import pytest

from cases.domain.events.payloads import InspectedPayload, StepPayload, UndoPayload
from cases.domain.uuid7 import uuid7
from cases.mapping import uses
from cases.mapping.plans import plan_of
from cases.models import Case, InstrumentUse, Kit, Person, Programme, ToothPlanVersion
from cases.models.kits import KitInstrument
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked, snapshot
from planning.run_sheet.graph import Exit
from tests.cases.test_record import Chair
from tests.cast import chart, open_case

EXPLORES = "10/.02 hand"
REACHED = StepPayload(exit=Exit.REACHED, depth_um=18_000, stop_um=18_000)
DISCARDED = InspectedPayload(instrument=EXPLORES, found="discarded", why="bent")


@pytest.fixture
def student(priya: Person, approved: ToothPlanVersion) -> Chair:
    return Chair(priya, approved, uuid7())


@pytest.fixture
def next_case(programme: Programme, priya: Person) -> Case:
    case = open_case(programme, priya, patient_alias="Bench 2")
    chart(case, priya)
    return case


def explore(student: Chair, *canals: str) -> None:
    for canal in canals:
        student.tells(REACHED, "explore/10-02", canal)


def planned_with(case: Case, asked: Asked) -> int:
    """Uses of 10/.02 as the next plan of the case counts them."""
    return next(
        instrument.uses for instrument in snapshot(case, asked, samples=0).kit.instruments if instrument.key == EXPLORES
    )


def test_each_canal_it_entered_is_one_use_for_the_next_case(student: Chair, next_case: Case, asked: Asked) -> None:
    explore(student, "DB", "P", "DB")
    assert planned_with(next_case, asked) == 2


def test_the_plan_of_the_same_case_counts_its_canals_itself(student: Chair, asked: Asked) -> None:
    explore(student, "DB", "P")
    assert planned_with(student.version.case, asked) == 0


def test_what_the_programme_stated_comes_first(student: Chair, kit: Kit, next_case: Case, asked: Asked) -> None:
    KitInstrument.objects.filter(kit=kit, size=10, taper=2).update(uses=3)
    explore(student, "DB")
    assert planned_with(next_case, asked) == 4


def test_a_new_one_begins_at_zero(student: Chair, kit: Kit, next_case: Case, asked: Asked) -> None:
    KitInstrument.objects.filter(kit=kit, size=10, taper=2).update(uses=3)
    explore(student, "DB", "P")
    student.tells(DISCARDED, canal="")
    assert planned_with(next_case, asked) == 0
    explore(student, "P")
    assert planned_with(next_case, asked) == 1


def test_what_was_taken_back_is_no_use(student: Chair, next_case: Case, asked: Asked) -> None:
    wrong = student.tells(REACHED, "explore/10-02")
    assert planned_with(next_case, asked) == 1
    student.tells(UndoPayload(undoes=str(wrong.pk)))
    assert planned_with(next_case, asked) == 0


def test_sent_twice_it_is_counted_once(student: Chair, next_case: Case, asked: Asked) -> None:
    explore(student, "DB")
    rows = list(InstrumentUse.objects.values_list("pk", flat=True))
    student.seq -= 1
    with pytest.raises(Exception, match="Expected event 2"):
        explore(student, "P")
    assert list(InstrumentUse.objects.values_list("pk", flat=True)) == rows


def test_another_students_set_is_another_set(student: Chair, programme: Programme, tom: Person, asked: Asked) -> None:
    explore(student, "DB")
    assert planned_with(open_case(programme, tom, patient_alias="Bench 3"), asked) == 0


def test_on_a_patient_every_instrument_is_a_new_one(
    student: Chair, programme: Programme, priya: Person, asked: Asked
) -> None:
    """Decided with course directors: in the clinic instruments are used on a single patient (common practice)."""
    explore(student, "DB")
    clinic = open_case(programme, priya, patient_alias="Heron 2", setting="clinic")
    assert planned_with(clinic, asked) == 0


def test_the_next_plan_warns_of_what_is_worn(
    student: Chair, kit: Kit, next_case: Case, priya: Person, asked: Asked
) -> None:
    """By hand: 10/.02 entered 2 canals and is planned for 4 more; 5 are allowed."""
    KitInstrument.objects.filter(kit=kit, size=10, taper=2).update(most_uses=5)
    explore(student, "DB", "P")
    version, _ = plans.propose(actor=priya, case=next_case, asked=asked)
    (worn,) = [caution for caution in plan_of(version).cautions if caution.code == "instrument-worn"]
    assert worn.says == "10/.02 has been used in 2 canals and is planned for 4 more; 5 are allowed."


def test_uses_do_not_change_what_an_approval_binds(
    student: Chair, next_case: Case, priya: Person, vale: Person, asked: Asked
) -> None:
    before, _ = plans.propose(actor=priya, case=next_case, asked=asked)
    explore(student, "DB")
    after, created = plans.propose(actor=priya, case=next_case, asked=asked)
    assert created
    assert after.intent_hash == before.intent_hash


def test_a_student_sees_what_their_own_set_has_done(student: Chair, kit: Kit, priya: Person, rosa: Person) -> None:
    explore(student, "DB")
    counts = [
        next(instrument.uses for instrument in uses.counted(kit, person).instruments if instrument.key == EXPLORES)
        for person in (priya, rosa)
    ]
    assert counts == [1, 0]


def test_on_a_patient_small_hand_instruments_are_for_one_canal(
    programme: Programme, priya: Person, asked: Asked
) -> None:
    """Textbooks, from memory: hand files 6 to 15 are used once; larger ones are counted as the kit says."""
    clinic = open_case(programme, priya, patient_alias="Heron 3", setting="clinic")
    hand = [
        instrument for instrument in snapshot(clinic, asked, samples=0).kit.instruments if instrument.motion == "hand"
    ]
    assert {instrument.size for instrument in hand if instrument.most_uses == 1} == {
        instrument.size for instrument in hand if instrument.size <= 15
    }
    assert {instrument.most_uses for instrument in hand if instrument.size > 15} == {None}
