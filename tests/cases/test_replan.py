"""A new version in the middle of the work: what carries an approval over, and where the work goes on."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any
from uuid import UUID

import pytest

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import (
    EmergencyPayload,
    EventPayload,
    PausePayload,
    ReadingPayload,
    SignOffPayload,
    StepPayload,
    TurnPayload,
)
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.status import PlanStatusState
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.uuid7 import uuid7
from cases.mapping import courses
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, FoldKept, Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.queries.course import treatment_of
from cases.queries.plans import status_of
from cases.queries.record import record_of
from cases.services.charting import canals, readings
from cases.services.planning import plans, replan
from cases.services.planning.plan_input import Asked
from cases.services.treatment import treatment
from cases.services.treatment.server_events import HERE
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import Exit
from planning.work.mid_course import LENGTH_MOVED
from tests.cases.test_treatment import NOON
from tests.cast import canal_of, decide, with_size

PHONE, LAPTOP = uuid7(), uuid7()


class Hand:
    """Records on one device, one after the other."""

    def __init__(self, person: Person, version: ToothPlanVersion, device: UUID) -> None:
        self.person, self.version, self.device = person, version, device

    def tells(
        self, payload: EventPayload, canal: str = "DB", node: str = "", version: ToothPlanVersion | None = None
    ) -> None:
        seq = TreatmentEvent.objects.filter(case=self.version.case, device=self.device).count() + 1
        received = treatment.ReceivedEvent(
            id=uuid7(),
            device_seq=seq,
            seen_position=0,
            plan_hash=(version or self.version).hash,
            device_time=NOON,
            payload=payload,
            canal=canal,
            node=node,
        )
        treatment.record(actor=self.person, case=self.version.case, device=self.device, batch=[received])

    def leaves(self, canal: str = "DB", exit: Exit = Exit.REACHED, **more: Any) -> None:
        """The step that is due, by one of its exits."""
        at = course_of(self.version.case)[canal].node
        stop = course_of(self.version.case)[canal].stop_um
        depth = more.pop("depth_um", stop if exit is Exit.REACHED else None)
        payload = StepPayload(exit=exit, depth_um=depth, stop_um=stop)
        self.tells(payload, canal, at, **more)


def course_of(case: Case) -> dict[str, Any]:
    return {canal.canal: canal for canal in treatment_of(case.pk).canals}


def course_plan(case: Case) -> str:
    """Hash of the plan in force."""
    course = treatment_of(case.pk).course
    assert course is not None
    return course.plan


@pytest.fixture
def phone(priya: Person, approved: ToothPlanVersion) -> Hand:
    return Hand(priya, approved, PHONE)


@pytest.fixture
def laptop(vale: Person, approved: ToothPlanVersion) -> Hand:
    return Hand(vale, approved, LAPTOP)


def into_the_glide_path(phone: Hand, laptop: Hand, canal: str = "DB") -> None:
    """Explored, the length signed off, the first hand size at length."""
    phone.leaves(canal)
    phone.leaves(canal, Exit.DONE)
    phone.leaves(canal, Exit.DONE)
    laptop.tells(SignOffPayload(exit="approved"), canal, "length/sign-off")
    phone.leaves(canal)


def shorter(set_mm: float = 18.0) -> ReadingPayload:
    """DB by another image: its tip 0.5 mm short at 18.0 gives 17.5, half a millimetre less than before."""
    return ReadingPayload(taken=ConfirmingImage(set_mm=set_mm, tip_short_mm=0.5, reference_point="DB cusp"))


def again(priya: Person, asked: Asked, case: Case) -> ToothPlanVersion:
    return plans.propose(actor=priya, case=case, asked=asked)[0]


def test_a_length_taken_again_carries_the_approval_over_and_asks_for_its_word(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    stood = course_of(approved.case)["DB"].node
    phone.tells(shorter())
    assert course_of(approved.case)["DB"].state is CanalState.TO_PLAN
    new = again(priya, asked, approved.case)
    assert (new.state, new.carried_from) == (PlanState.APPROVED, approved)
    db = course_of(approved.case)["DB"]
    assert (db.node, db.state) == (LENGTH_MOVED, CanalState.HOLD_POINT)
    laptop.tells(SignOffPayload(exit="approved"), "DB", LENGTH_MOVED, new)
    assert course_of(approved.case)["DB"].node == stood
    Hand(priya, new, PHONE).leaves("DB", Exit.DONE)
    db = course_of(approved.case)["DB"]
    assert (db.node, db.stop_um) == ("glide-path/15-02", 17_500)


def test_canals_that_did_not_move_go_on_as_they_stood(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    phone.leaves("P")
    before = course_of(approved.case)
    phone.tells(shorter())
    again(priya, asked, approved.case)
    after = course_of(approved.case)
    assert {name: (progress.node, progress.stop_um) for name, progress in after.items() if name != "DB"} == {
        name: (progress.node, progress.stop_um) for name, progress in before.items() if name != "DB"
    }


def test_the_new_version_is_told_by_the_server_itself(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand
) -> None:
    phone.leaves()
    new = again(priya, asked, approved.case)
    last = TreatmentEvent.objects.filter(case=approved.case).order_by("-position")[0]
    assert (last.kind, last.device, last.device_seq, last.plan_hash) == ("replan", HERE, 2, new.hash)


def test_the_standing_says_whose_approval_it_is(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand
) -> None:
    phone.leaves()
    again(priya, asked, approved.case)
    approved.case.refresh_from_db()
    status = status_of(approved.case)
    assert (status.state, status.number) == (PlanStatusState.APPROVED, 2)
    assert "approval of plan 1" in status.says


def test_a_larger_size_is_asked_for_anew_and_takes_over_when_it_is_approved(
    priya: Person, vale: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    stood = course_of(approved.case)["DB"].node
    new = again(priya, with_size(asked, "P", 45), approved.case)
    assert new.state == PlanState.DRAFT
    assert treatment_of(approved.case_id).course.plan == approved.hash  # type: ignore[union-attr]
    decide(vale, plans.submit(actor=priya, version=new), Decision.APPROVED)
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert shown.course.plan == new.hash
    assert course_of(approved.case)["DB"].node == stood


def test_work_done_while_the_plan_waited_is_in_the_version_that_takes_over(
    priya: Person, vale: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    new = plans.submit(actor=priya, version=again(priya, with_size(asked, "P", 45), approved.case))
    phone.leaves("DB", Exit.DONE)
    stood = course_of(approved.case)["DB"].node
    decide(vale, new, Decision.APPROVED)
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    worked = ToothPlanVersion.objects.get(case=approved.case, hash=shown.course.plan)
    assert (worked.number, worked.carried_from, worked.author) == (3, new, priya)
    assert course_of(approved.case)["DB"].node == stood


@pytest.fixture
def from_the_start(monkeypatch: pytest.MonkeyPatch) -> list[UUID]:
    """The cases whose events are folded from the start from now on, one after the other."""
    cases: list[UUID] = []
    real = courses.fold_events

    def counted(case_id: UUID, events: Sequence[CourseEvent]) -> tuple[CaseState, UUID] | None:
        cases.append(case_id)
        return real(case_id, events)

    monkeypatch.setattr(courses, "fold_events", counted)
    return cases


def test_progress_a_carried_approval_and_the_record_go_on_from_the_stored_fold(
    asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand, from_the_start: list[UUID]
) -> None:
    """The judge is the same where nothing is stored."""
    into_the_glide_path(phone, laptop)
    case = approved.case
    plan_input = plan_input_of(approved)

    def now() -> list[object]:
        made = record_of(case.pk)
        return [replan.progress(case), replan.approval_for(case, plan_input, plan_of(approved)), made.hash]

    gone_on, count = now(), len(from_the_start)
    FoldKept.objects.all().delete()
    assert (gone_on, count) == (now(), 0)
    assert len(from_the_start) == 3


def test_a_version_that_takes_over_has_the_work_folded_anew_once(
    priya: Person,
    vale: Person,
    asked: Asked,
    approved: ToothPlanVersion,
    phone: Hand,
    laptop: Hand,
    from_the_start: list[UUID],
) -> None:
    """Its own event changes what earlier ones say."""
    into_the_glide_path(phone, laptop)
    new = plans.submit(actor=priya, version=again(priya, with_size(asked, "P", 45), approved.case))
    phone.leaves("DB", Exit.DONE)
    assert from_the_start == []
    decide(vale, new, Decision.APPROVED)
    assert from_the_start == [approved.case_id]


def test_what_came_late_on_the_old_version_is_planned_in(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    tablet = Hand(priya, approved, uuid7())
    new = again(priya, asked, approved.case)
    tablet.tells(StepPayload(exit=Exit.REACHED, depth_um=18_000, stop_um=18_000), "DB", "glide-path/15-02", approved)
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert list(shown.course.out_of_course.values()) == [OutOfCourse.OTHER_PLAN]
    assert course_of(approved.case)["DB"].state is CanalState.TO_PLAN
    later = again(priya, asked, approved.case)
    assert later.carried_from == new
    assert course_of(approved.case)["DB"].state is CanalState.OPEN
    progress = {canal.name: canal.progress for canal in plan_input_of(later).canals}["DB"]
    assert progress is not None
    assert [made.step for made in progress.made] == ["explore/10-02", "glide-path/10-02", "glide-path/15-02"]


def test_what_is_paused_stays_so(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    into_the_glide_path(phone, laptop)
    phone.tells(PausePayload(reason="Sore."))
    phone.tells(shorter())
    again(priya, asked, approved.case)
    assert course_of(approved.case)["DB"].state is CanalState.PAUSED


def test_a_length_that_moved_far_is_asked_for_anew(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    """18.0 before; 16.5 is 1.5 mm less, and the programme lets 1.0 pass."""
    into_the_glide_path(phone, laptop)
    phone.tells(shorter(17.0))
    new = again(priya, asked, approved.case)
    assert (new.state, new.carried_from) == (PlanState.DRAFT, None)
    assert course_of(approved.case)["DB"].state is CanalState.TO_PLAN


def test_a_length_that_is_unsettled_withholds_its_canal(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand, laptop: Hand
) -> None:
    """Longer after flaring cannot be."""
    into_the_glide_path(phone, laptop)
    longer = ConfirmingImage(set_mm=19.0, tip_short_mm=0.5, reference_point="DB cusp", after_flaring=True)
    phone.tells(ReadingPayload(taken=longer))
    assert again(priya, asked, approved.case).state == PlanState.DRAFT


def test_anything_else_that_was_charted_is_asked_for_anew(
    priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand
) -> None:
    phone.leaves()
    canals.change_canal(actor=priya, canal=canal_of(approved.case, "DB"), changes={"curvature_deg": 22.0})
    assert again(priya, asked, approved.case).state == PlanState.DRAFT


def test_before_anything_was_done_nothing_is_carried_over(
    priya: Person, asked: Asked, approved: ToothPlanVersion
) -> None:
    taken = shorter().taken
    readings.take_length(actor=priya, canal=canal_of(approved.case, "DB"), reading=taken)
    assert again(priya, asked, approved.case).state == PlanState.DRAFT
    assert course_plan(approved.case) == approved.hash


def test_sent_twice_it_is_one_version(priya: Person, asked: Asked, approved: ToothPlanVersion, phone: Hand) -> None:
    phone.leaves()
    id_ = uuid7()
    first, _ = plans.propose(actor=priya, case=approved.case, asked=asked, id=id_)
    second, created = plans.propose(actor=priya, case=approved.case, asked=asked, id=id_)
    assert (first, created) == (second, False)
    assert TreatmentEvent.objects.filter(kind="replan").count() == 2  # the first plan, and this one


def test_a_plan_approved_while_the_phone_was_away_rules_and_what_it_did_by_the_older_one_moves_nothing(
    priya: Person, amari: Person, asked: Asked, approved: ToothPlanVersion
) -> None:
    """Plan 1 had DB to 18.0; the new length is 16.5. The phone, offline, turns to DB and goes to 18.0 by plan 1."""
    assert course_of(approved.case)["DB"].stop_um == 18_000
    readings.take_length(actor=priya, canal=canal_of(approved.case, "DB"), reading=shorter(17.0).taken)
    second = plans.submit(actor=priya, version=again(priya, asked, approved.case))
    decide(amari, second, Decision.APPROVED)
    assert course_plan(approved.case) == second.hash
    phone = Hand(priya, approved, PHONE)
    phone.tells(TurnPayload())
    assert course_plan(approved.case) == second.hash
    phone.tells(StepPayload(exit=Exit.REACHED, depth_um=18_000, stop_um=18_000), "DB", "explore/10-02")
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    db = course_of(approved.case)["DB"]
    assert (shown.course.plan, db.stop_um, db.node) == (second.hash, 16_500, "explore/10-02")
    assert [(event.row.kind, event.row.version) for event in shown.events] == [
        ("replan", approved),
        ("replan", second),
        ("turn", approved),
        ("step", approved),
    ]
    assert [shown.course.out_of_course.get(str(event.row.pk)) for event in shown.events] == [
        None,
        None,
        OutOfCourse.OTHER_PLAN,
        OutOfCourse.OTHER_PLAN,
    ]
    # Something has been in the canal that plan 2 does not know of: it is planned anew, and begins where that was.
    assert (shown.course.turned_to, db.state) == ("", CanalState.TO_PLAN)
    third = again(priya, asked, approved.case)
    assert (third.carried_from, course_plan(approved.case)) == (second, third.hash)
    Hand(priya, third, PHONE).leaves("P")
    assert course_of(approved.case)["P"].node == "explore/10-02/irrigate"


def test_an_emergency_and_a_pause_told_late_by_the_older_plan_hold(
    priya: Person, vale: Person, asked: Asked, approved: ToothPlanVersion
) -> None:
    second = plans.submit(actor=priya, version=again(priya, with_size(asked, "P", 45), approved.case))
    decide(vale, second, Decision.APPROVED)
    phone = Hand(priya, approved, PHONE)
    phone.tells(PausePayload(reason="Sore."))
    phone.tells(EmergencyPayload(what="sudden_bleeding"), "")
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert (shown.course.plan, shown.course.halted_by is not None) == (second.hash, True)
    assert course_of(approved.case)["DB"].state is CanalState.PAUSED


def test_a_first_plan_is_in_force_and_no_work_has_begun(approved: ToothPlanVersion) -> None:
    assert course_plan(approved.case) == approved.hash
    assert replan.progress(approved.case) == {}
    assert not RunningWork.objects.exists()
