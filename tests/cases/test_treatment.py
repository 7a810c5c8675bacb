"""What devices tell: in batches, late, twice, with gaps."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest

from cases.domain.errors import NotAllowed, NotHere, NotUsable, SentDifferently, SequenceGap
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import (
    ComePayload,
    CorrectedPayload,
    EmergencyPayload,
    EventPayload,
    ReadingPayload,
    ReplanPayload,
    ResumePayload,
    SignOffPayload,
    StepPayload,
    UndoPayload,
)
from cases.domain.events.visit_payloads import OnSitePayload
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import reading_of
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, Membership, Person, ToothPlanVersion, TreatmentEvent
from cases.queries import worklist
from cases.queries.course import tag_of, treatment_of
from cases.queries.record import record_of
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.treatment import treatment
from cases.services.treatment.treatment import ReceivedEvent
from planning.contract.plan_input import RecordedDepth
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import Exit
from tests.cast import canal_of, with_size

PHONE, TABLET = uuid7(), uuid7()
NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)


REACHED = StepPayload(exit=Exit.REACHED, depth_um=21_500)
SIGNED = SignOffPayload(exit="approved")


def event(version: ToothPlanVersion, device_seq: int, payload: EventPayload = REACHED, **more: Any) -> ReceivedEvent:
    fields: dict[str, Any] = {
        "id": uuid7(),
        "seen_position": 0,
        "plan_hash": version.hash,
        "device_time": NOON,
        "canal": "P",
        "node": "explore/10",
    }
    return ReceivedEvent(device_seq=device_seq, payload=payload, **(fields | more))


def record(
    person: Person, version: ToothPlanVersion, *batch: ReceivedEvent, device: UUID = PHONE
) -> list[TreatmentEvent]:
    return treatment.record(actor=person, case=version.case, device=device, batch=batch)


def test_events_get_their_places_in_order(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, event(approved, 1), event(approved, 2))
    # The first place is the plan's that came into force.
    assert [row.position for row in stored] == [2, 3]
    assert json.loads(stored[0].text)["depth_um"] == 21_500


def test_a_batch_sent_twice_is_stored_once(priya: Person, approved: ToothPlanVersion) -> None:
    batch = (event(approved, 1), event(approved, 2))
    assert record(priya, approved, *batch) == record(priya, approved, *batch)
    assert TreatmentEvent.objects.filter(device=PHONE).count() == 2


def test_the_rest_of_a_batch_is_stored_when_its_start_is_known(priya: Person, approved: ToothPlanVersion) -> None:
    first, second = event(approved, 1), event(approved, 2)
    record(priya, approved, first)
    assert [row.position for row in record(priya, approved, first, second)] == [2, 3]


def test_a_known_id_with_another_body_is_refused(priya: Person, approved: ToothPlanVersion) -> None:
    first = event(approved, 1)
    record(priya, approved, first)
    with pytest.raises(SentDifferently):
        record(priya, approved, event(approved, 1, StepPayload(exit=Exit.SHORT), id=first.id))


def test_after_a_gap_nothing_is_stored_and_the_missing_one_is_named(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(SequenceGap) as gap:
        record(priya, approved, event(approved, 1), event(approved, 3), event(approved, 4))
    assert gap.value.expected == 2
    assert [row.device_seq for row in TreatmentEvent.objects.filter(device=PHONE)] == [1]


def test_two_devices_count_on_their_own(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, event(approved, 1))
    stored = record(vale, approved, event(approved, 1, SIGNED), device=TABLET)
    assert [(row.device_seq, row.position) for row in stored] == [(1, 3)]


def test_a_late_event_of_an_old_version_is_kept(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    second, _ = plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))
    record(priya, approved, event(second, 1))
    late = record(priya, approved, event(approved, 2))
    assert (late[0].version, late[0].position) == (approved, 3)


def test_a_wrong_claim_of_what_was_seen_stops_no_fact(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, event(approved, 1, seen_position=99))
    assert stored[0].seen_position == 1


def test_a_plan_that_is_not_here_is_kept_and_marked(priya: Person, approved: ToothPlanVersion) -> None:
    """As after a restore: the plan was made since the copy was taken, and the work on it was done all the same."""
    (stored,) = record(priya, approved, event(approved, 1, node="explore/10-02", plan_hash="0" * 64))
    assert (stored.not_checked, stored.version) == (NotChecked.PLAN, approved)
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert shown.course.out_of_course == {str(stored.pk): OutOfCourse.OTHER_PLAN}
    assert {canal.canal: canal.state for canal in shown.canals}["P"] is CanalState.TO_PLAN
    entry = record_of(approved.case_id).record.timeline[-1]
    assert entry.not_checked_says == "the plan it was recorded on is not here"


def test_nothing_is_recorded_in_a_case_that_never_had_a_plan(priya: Person, opened: Case) -> None:
    alone = ReceivedEvent(
        id=uuid7(), device_seq=1, seen_position=0, plan_hash="0" * 64, device_time=NOON, payload=REACHED, canal="P"
    )
    with pytest.raises(NotUsable, match="never had a plan"):
        treatment.record(actor=priya, case=opened, device=PHONE, batch=[alone])


def test_a_student_does_not_sign_off(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed, match="supervisor"):
        record(priya, approved, event(approved, 1), event(approved, 2, SIGNED))
    assert not TreatmentEvent.objects.filter(device=PHONE).exists()


def test_others_record_nothing(tom: Person, stranger: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed):
        record(tom, approved, event(approved, 1))
    with pytest.raises(NotHere):
        record(stranger, approved, event(approved, 1))


def test_a_word_at_the_wrong_moment_is_kept(vale: Person, approved: ToothPlanVersion) -> None:
    """A clinical fact is never refused for its state: the course sets it aside."""
    (word,) = record(vale, approved, event(approved, 1, SIGNED, node="nowhere"))
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert shown.course.out_of_course == {str(word.pk): OutOfCourse.OTHER_STEP}


def test_an_undo_and_what_it_undoes_both_stay(priya: Person, approved: ToothPlanVersion) -> None:
    (first,) = record(priya, approved, event(approved, 1))
    record(priya, approved, event(approved, 2, UndoPayload(undoes=str(first.pk)), node=""))
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert (len(shown.events), shown.course.undone) == (3, (str(first.pk),))


def test_the_course_of_the_check_molar_goes_as_the_run_sheet_says(priya: Person, approved: ToothPlanVersion) -> None:
    start = treatment_of(approved.case_id).canals
    assert {canal.canal: (canal.node, canal.stop_um) for canal in start}["P"] == ("explore/10-02", 21_500)
    record(priya, approved, event(approved, 1, node="explore/10-02"))
    palatal = {canal.canal: canal for canal in treatment_of(approved.case_id).canals}["P"]
    assert palatal.node == "explore/10-02/irrigate"


@pytest.mark.parametrize("depth_um", [-1, 36_001])
def test_a_depth_longer_than_any_tooth_is_kept_and_moves_nothing(
    depth_um: int, priya: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    """36 mm: input bound of the program, where a length is taken for a typing error."""
    payload = StepPayload(exit=Exit.SHORT, depth_um=depth_um, stop_um=21_500)
    (stored,) = record(priya, approved, event(approved, 1, payload, node="explore/10-02"))
    assert stored.not_checked == NotChecked.DEPTH
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert shown.course.out_of_course == {str(stored.pk): OutOfCourse.NOT_CHECKED}
    # A depth that cannot be is nothing to plan by.
    again, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert {canal.felt for canal in plan_input_of(again).canals} == {()}


@pytest.mark.parametrize("depth_um", [0, 36_000])
def test_the_longest_and_the_shortest_depth_are_facts(depth_um: int, priya: Person, approved: ToothPlanVersion) -> None:
    (stored,) = record(priya, approved, event(approved, 1, StepPayload(exit=Exit.SHORT, depth_um=depth_um)))
    assert stored.not_checked == ""


def test_a_length_that_would_not_be_taken_today_is_kept_without_a_reading(
    priya: Person, approved: ToothPlanVersion
) -> None:
    before = canal_of(approved.case, "P").readings.count()
    absurd = ConfirmingImage(set_mm=60.0, tip_short_mm=1.0, reference_point="palatal cusp", after_flaring=True)
    batch = (
        event(approved, 1, ReadingPayload(taken=absurd), node=""),
        event(approved, 2, ReadingPayload(taken=absurd), node="", canal="MB9"),
        event(approved, 3, node="explore/10-02", canal="MB1"),
    )
    stored = record(priya, approved, *batch)
    assert [row.not_checked for row in stored] == ["length", "length", ""]
    assert canal_of(approved.case, "P").readings.count() == before
    assert {c.canal: c.state for c in treatment_of(approved.case_id).canals}["P"] is CanalState.TO_PLAN


def test_a_supervisor_who_has_left_since_was_in_the_room(priya: Person, vale: Person, clinic: ToothPlanVersion) -> None:
    """Vale approved the plan and is taken off the list; the phone that was away names Vale all the same."""
    Membership.objects.filter(person=vale).delete()
    named = event(clinic, 1, OnSitePayload(supervisor_id=str(vale.pk)), canal="", node="")
    (stored,) = record(priya, clinic, named)
    assert stored.not_checked == NotChecked.ROOM_LEFT
    shown = treatment_of(clinic.case_id)
    assert shown.course is not None
    assert (shown.course.visit.on_site, shown.course.out_of_course) == (str(vale.pk), {})


HAPPENED = EmergencyPayload(what="collapse")


def emergency(version: ToothPlanVersion, payload: EventPayload = HAPPENED) -> tuple[UUID, ReceivedEvent]:
    """Comes from a device of its own, named by its own id."""
    id_ = uuid7()
    return id_, event(version, 1, payload, id=id_, canal="", node="")


def test_an_emergency_is_taken_before_what_its_phone_still_holds(priya: Person, approved: ToothPlanVersion) -> None:
    first = event(approved, 1, node="explore/10-02")
    id_, received = emergency(approved, EmergencyPayload(what="collapse", before=(str(first.id),)))
    (halted,) = record(priya, approved, received, device=id_)
    (stored,) = record(priya, approved, first)
    assert (halted.position, stored.position) == (2, 3)
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    # It was done before the emergency: it counts, and the tooth stands still.
    assert (shown.course.halted_by, shown.course.out_of_course) == (str(id_), {})


def test_the_list_says_of_what_and_that_it_was_not_so(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    id_, received = emergency(approved)
    record(priya, approved, received, device=id_)
    second, received = emergency(approved, EmergencyPayload(what="sudden_bleeding"))
    record(priya, approved, received, device=second)
    corrects, received = emergency(approved, CorrectedPayload(corrects=str(id_)))
    record(priya, approved, received, device=corrects)
    record(vale, approved, event(approved, 1, ComePayload(), canal="", node=""), device=TABLET)
    (work,) = worklist.running(vale, approved.case.programme_id, NOON).results
    assert [
        (emergency_["what"], emergency_["told_by"], emergency_["corrected_by"], emergency_["coming"])
        for emergency_ in work.case_summary["emergencies"]
    ] == [("", "Priya", "Priya", "Vale"), ("sudden_bleeding", "Priya", "", "Vale")]
    halts = record_of(approved.case_id).record.halts
    assert [halt.says for halt in halts] == [
        "EMERGENCY, the patient collapses. IT WAS NOT SO, the emergency of entry 2 (Priya)",
        "EMERGENCY, sudden bleeding",
    ]
    # The supervisor had seen one of the two on the screen.
    ends = ResumePayload(reason="Seen.", ends=(str(id_),))
    record(vale, approved, event(approved, 2, ends, canal="", node=""), device=TABLET)
    halts = record_of(approved.case_id).record.halts
    assert [halt.ended is not None for halt in halts] == [True, False]
    (work,) = worklist.running(vale, approved.case.programme_id, NOON).results
    assert [emergency_["what"] for emergency_ in work.case_summary["emergencies"]] == ["sudden_bleeding"]


def test_only_a_supervisor_resumes_also_what_was_not_so(priya: Person, approved: ToothPlanVersion) -> None:
    id_, received = emergency(approved)
    record(priya, approved, received, device=id_)
    with pytest.raises(NotAllowed, match="supervisor"):
        record(priya, approved, event(approved, 1, ResumePayload(reason="Nothing."), canal="", node=""))


def test_the_tag_of_a_course_is_another_where_the_same_position_holds_something_else(
    priya: Person, approved: ToothPlanVersion
) -> None:
    """A server that was restored comes to the same position once more; a phone that asks must not hear: unchanged."""
    record(priya, approved, event(approved, 1))
    before = tag_of(approved.case_id)
    TreatmentEvent.objects.all()._raw_delete("default")
    record(priya, approved, event(approved, 1))
    assert tag_of(approved.case_id) != before


def test_a_length_taken_at_the_chair_is_a_reading_and_withholds_its_canal(
    priya: Person, approved: ToothPlanVersion
) -> None:
    taken = ConfirmingImage(set_mm=21.0, tip_short_mm=1.0, reference_point="palatal cusp", after_flaring=True)
    record(priya, approved, event(approved, 1, ReadingPayload(taken=taken), node=""))
    palatal = canal_of(approved.case, "P")
    last = palatal.readings.order_by("number").last()
    assert last is not None
    assert reading_of(last) == taken
    assert {c.canal: c.state for c in treatment_of(approved.case_id).canals}["P"] is CanalState.TO_PLAN


def test_no_device_makes_a_new_version_take_over(vale: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed, match="recorded here"):
        record(vale, approved, event(approved, 1, ReplanPayload(replaces=approved.hash), canal=""))


def test_before_an_approval_there_is_no_course(proposed: ToothPlanVersion) -> None:
    assert treatment_of(proposed.case_id).course is None


def test_a_case_keeps_its_own_events(priya: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, event(approved, 1))
    assert Case.objects.get(pk=approved.case_id).events.filter(device=PHONE).count() == 1


def test_the_next_plan_knows_what_was_felt(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    start = plan_of(approved).canals[0].run_sheet.start
    payload = StepPayload(exit=Exit.SHORT, depth_um=18_500, stop_um=19_500)
    record(priya, approved, event(approved, 1, payload, canal="MB1", node=start))
    again, created = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert created
    felt = {canal.name: canal.felt for canal in plan_input_of(again).canals}
    assert felt == {"MB1": (RecordedDepth(node=start, depth_mm=18.5, stop_mm=19.5),), "MB2": (), "DB": (), "P": ()}
