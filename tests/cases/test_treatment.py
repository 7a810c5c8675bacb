"""What devices tell: in batches, late, twice, with gaps."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest

from cases.domain.errors import NotAllowed, NotHere, NotUsable, SentDifferently, SequenceGap
from cases.domain.events import EventKind
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent
from cases.services import plans, treatment
from cases.services.plan_input import Asked
from cases.services.treatment import Told
from tests.cast import with_size

PHONE, TABLET = uuid7(), uuid7()
NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)


def told(version: ToothPlanVersion, device_seq: int, kind: EventKind = EventKind.STEP, **more: Any) -> Told:
    given: dict[str, Any] = {
        "id": uuid7(),
        "seen_position": 0,
        "plan_hash": version.hash,
        "device_time": NOON,
        "canal": "P",
        "node": "explore/10",
        "body": {"exit": "reached", "depth_um": 21_500},
    }
    return Told(device_seq=device_seq, kind=kind, **(given | more))


def record(person: Person, version: ToothPlanVersion, *batch: Told, device: UUID = PHONE) -> list[TreatmentEvent]:
    return treatment.record(actor=person, case=version.case, device=device, batch=batch)


def test_events_get_their_places_in_order(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, told(approved, 1), told(approved, 2))
    assert [event.position for event in stored] == [1, 2]
    assert stored[0].text == '{"depth_um":21500,"exit":"reached"}'


def test_a_batch_sent_twice_is_stored_once(priya: Person, approved: ToothPlanVersion) -> None:
    batch = (told(approved, 1), told(approved, 2))
    assert record(priya, approved, *batch) == record(priya, approved, *batch)
    assert TreatmentEvent.objects.count() == 2


def test_the_rest_of_a_batch_is_stored_when_its_start_is_known(priya: Person, approved: ToothPlanVersion) -> None:
    first, second = told(approved, 1), told(approved, 2)
    record(priya, approved, first)
    assert [event.position for event in record(priya, approved, first, second)] == [1, 2]


def test_a_known_id_with_another_body_is_refused(priya: Person, approved: ToothPlanVersion) -> None:
    event = told(approved, 1)
    record(priya, approved, event)
    with pytest.raises(SentDifferently):
        record(priya, approved, told(approved, 1, id=event.id, body={"exit": "short"}))


def test_after_a_gap_nothing_is_stored_and_the_missing_one_is_named(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(SequenceGap) as gap:
        record(priya, approved, told(approved, 1), told(approved, 3), told(approved, 4))
    assert gap.value.expected == 2
    assert [event.device_seq for event in TreatmentEvent.objects.all()] == [1]


def test_two_devices_count_on_their_own(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, told(approved, 1))
    stored = record(vale, approved, told(approved, 1, EventKind.SIGN_OFF), device=TABLET)
    assert [(event.device_seq, event.position) for event in stored] == [(1, 2)]


def test_a_late_event_of_an_old_version_is_kept(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    second, _ = plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))
    record(priya, approved, told(second, 1))
    late = record(priya, approved, told(approved, 2))
    assert (late[0].version, late[0].position) == (approved, 2)


def test_a_wrong_claim_of_what_was_seen_stops_no_fact(priya: Person, approved: ToothPlanVersion) -> None:
    stored = record(priya, approved, told(approved, 1, seen_position=99))
    assert stored[0].seen_position == 0


def test_a_plan_the_case_never_had(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotUsable, match="never had"):
        record(priya, approved, told(approved, 1, plan_hash="0" * 64))


def test_a_student_does_not_sign_off(priya: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed, match="supervisor"):
        record(priya, approved, told(approved, 1), told(approved, 2, EventKind.SIGN_OFF))
    assert not TreatmentEvent.objects.exists()


def test_others_record_nothing(tom: Person, stranger: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(NotAllowed):
        record(tom, approved, told(approved, 1))
    with pytest.raises(NotHere):
        record(stranger, approved, told(approved, 1))


def undo(version: ToothPlanVersion, device_seq: int, event: TreatmentEvent) -> Told:
    return told(version, device_seq, EventKind.UNDO, body={"undoes": str(event.pk)}, node="")


def test_an_undo_names_the_last_entry_and_both_stay(priya: Person, approved: ToothPlanVersion) -> None:
    first, second = record(priya, approved, told(approved, 1), told(approved, 2))
    with pytest.raises(NotUsable, match="own last entry"):
        record(priya, approved, undo(approved, 3, first))
    record(priya, approved, undo(approved, 3, second))
    record(priya, approved, undo(approved, 4, first))
    assert TreatmentEvent.objects.count() == 4


def test_an_emergency_is_never_undone(priya: Person, approved: ToothPlanVersion) -> None:
    (emergency,) = record(priya, approved, told(approved, 1, EventKind.EMERGENCY))
    with pytest.raises(NotUsable, match="never undone"):
        record(priya, approved, undo(approved, 2, emergency))


def test_nobody_undoes_for_another(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    (event,) = record(priya, approved, told(approved, 1))
    with pytest.raises(NotUsable, match="own last entry"):
        record(vale, approved, undo(approved, 1, event), device=TABLET)


def test_a_case_keeps_its_own_events(priya: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, told(approved, 1))
    assert Case.objects.get(pk=approved.case_id).events.count() == 1
