"""What devices tell: in batches, late, twice, with gaps."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest

from cases.domain.course import CanalState, OutOfCourse
from cases.domain.errors import NotAllowed, NotHere, NotUsable, SentDifferently, SequenceGap
from cases.domain.told import ReadingTold, ReplanTold, SignOffTold, StepTold, Told, UndoTold
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent, values
from cases.models.values import reading
from cases.queries.course import treatment_of
from cases.services import plans, treatment
from cases.services.plan_input import Asked
from cases.services.treatment import Reported
from planning.graph import Exit
from planning.plan_input import Felt
from planning.readings import ConfirmingImage
from tests.cast import canal_of, with_size

PHONE, TABLET = uuid7(), uuid7()
NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)


REACHED = StepTold(exit=Exit.REACHED, depth_um=21_500)
SIGNED = SignOffTold(exit="approved")


def event(version: ToothPlanVersion, device_seq: int, told: Told = REACHED, **more: Any) -> Reported:
    given: dict[str, Any] = {
        "id": uuid7(),
        "seen_position": 0,
        "plan_hash": version.hash,
        "device_time": NOON,
        "canal": "P",
        "node": "explore/10",
    }
    return Reported(device_seq=device_seq, told=told, **(given | more))


def record(person: Person, version: ToothPlanVersion, *batch: Reported, device: UUID = PHONE) -> list[TreatmentEvent]:
    return treatment.record(actor=person, case=version.case, device=device, batch=batch)


def test_events_get_their_places_in_order(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, event(approved, 1), event(approved, 2))
    assert [row.position for row in stored] == [1, 2]
    assert json.loads(stored[0].text)["depth_um"] == 21_500


def test_a_batch_sent_twice_is_stored_once(priya: Person, approved: ToothPlanVersion) -> None:
    batch = (event(approved, 1), event(approved, 2))
    assert record(priya, approved, *batch) == record(priya, approved, *batch)
    assert TreatmentEvent.objects.count() == 2


def test_the_rest_of_a_batch_is_stored_when_its_start_is_known(priya: Person, approved: ToothPlanVersion) -> None:
    first, second = event(approved, 1), event(approved, 2)
    record(priya, approved, first)
    assert [row.position for row in record(priya, approved, first, second)] == [1, 2]


def test_a_known_id_with_another_body_is_refused(priya: Person, approved: ToothPlanVersion) -> None:
    first = event(approved, 1)
    record(priya, approved, first)
    with pytest.raises(SentDifferently):
        record(priya, approved, event(approved, 1, StepTold(exit=Exit.SHORT), id=first.id))


def test_after_a_gap_nothing_is_stored_and_the_missing_one_is_named(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(SequenceGap) as gap:
        record(priya, approved, event(approved, 1), event(approved, 3), event(approved, 4))
    assert gap.value.expected == 2
    assert [row.device_seq for row in TreatmentEvent.objects.all()] == [1]


def test_two_devices_count_on_their_own(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, event(approved, 1))
    stored = record(vale, approved, event(approved, 1, SIGNED), device=TABLET)
    assert [(row.device_seq, row.position) for row in stored] == [(1, 2)]


def test_a_late_event_of_an_old_version_is_kept(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    second, _ = plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))
    record(priya, approved, event(second, 1))
    late = record(priya, approved, event(approved, 2))
    assert (late[0].version, late[0].position) == (approved, 2)


def test_a_wrong_claim_of_what_was_seen_stops_no_fact(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, event(approved, 1, seen_position=99))
    assert stored[0].seen_position == 0


def test_a_plan_the_case_never_had(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotUsable, match="never had"):
        record(priya, approved, event(approved, 1, plan_hash="0" * 64))


def test_a_student_does_not_sign_off(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed, match="supervisor"):
        record(priya, approved, event(approved, 1), event(approved, 2, SIGNED))
    assert not TreatmentEvent.objects.exists()


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
    record(priya, approved, event(approved, 2, UndoTold(undoes=str(first.pk)), node=""))
    shown = treatment_of(approved.case_id)
    assert shown.course is not None
    assert (len(shown.events), shown.course.undone) == (2, (str(first.pk),))


def test_the_course_of_the_check_molar_goes_as_the_run_sheet_says(priya: Person, approved: ToothPlanVersion) -> None:
    start = treatment_of(approved.case_id).canals
    assert {canal.canal: (canal.node, canal.stop_um) for canal in start}["P"] == ("explore/10-02", 21_500)
    record(priya, approved, event(approved, 1, node="explore/10-02"))
    palatal = {canal.canal: canal for canal in treatment_of(approved.case_id).canals}["P"]
    assert palatal.node == "explore/10-02/irrigate"


@pytest.mark.parametrize("depth_um", [-1, 36_001])
def test_a_depth_longer_than_any_tooth_is_a_slip(depth_um: int, priya: Person, approved: ToothPlanVersion) -> None:
    """36 mm: input bound of the program, where a length is taken for a typing error."""
    with pytest.raises(NotUsable, match="decimal point"):
        record(priya, approved, event(approved, 1, StepTold(exit=Exit.SHORT, depth_um=depth_um)))


def test_a_length_taken_at_the_chair_is_a_reading_and_withholds_its_canal(
    priya: Person, approved: ToothPlanVersion
) -> None:
    taken = ConfirmingImage(set_mm=21.0, tip_short_mm=1.0, reference_point="palatal cusp", after_flaring=True)
    record(priya, approved, event(approved, 1, ReadingTold(taken=taken), node=""))
    palatal = canal_of(approved.case, "P")
    last = palatal.readings.order_by("number").last()
    assert last is not None
    assert reading(last) == taken
    assert {c.canal: c.state for c in treatment_of(approved.case_id).canals}["P"] is CanalState.TO_PLAN


def test_no_device_makes_a_new_version_take_over(vale: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed, match="recorded here"):
        record(vale, approved, event(approved, 1, ReplanTold(replaces=approved.hash), canal=""))


def test_before_an_approval_there_is_no_course(proposed: ToothPlanVersion) -> None:
    assert treatment_of(proposed.case_id).course is None


def test_a_case_keeps_its_own_events(priya: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, event(approved, 1))
    assert Case.objects.get(pk=approved.case_id).events.count() == 1


def test_the_next_plan_knows_what_was_felt(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    start = values.made(approved).canals[0].run_sheet.start
    told = StepTold(exit=Exit.SHORT, depth_um=18_500, stop_um=19_500)
    record(priya, approved, event(approved, 1, told, canal="MB1", node=start))
    again, created = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert created
    felt = {canal.name: canal.felt for canal in values.given(again).canals}
    assert felt == {"MB1": (Felt(node=start, depth_mm=18.5, stop_mm=19.5),), "MB2": (), "DB": (), "P": ()}
