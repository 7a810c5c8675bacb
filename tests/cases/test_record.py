"""The record of one canal that was worked at the chair, held against what a person would write by hand."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from hashlib import sha256
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from cases.domain.events.payloads import (
    AnswerPayload,
    CorrectedPayload,
    EmergencyPayload,
    EventPayload,
    ImagePayload,
    InspectedPayload,
    IrrigatedPayload,
    NotePayload,
    PausePayload,
    ResumePayload,
    SignOffPayload,
    StepPayload,
    UndoPayload,
)
from cases.domain.events.visit_payloads import ClosePayload, OnSitePayload, ReopenPayload
from cases.domain.images import RemovalReason
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.record import words
from cases.domain.record.values.record import Record
from cases.domain.record.values.work import StepComparison
from cases.domain.uuid7 import uuid7
from cases.exports import record_tables
from cases.exports.record_pdf import record_pdf
from cases.models import Image, Person, ToothPlanVersion, TreatmentEvent
from cases.queries.record import record_of
from cases.services.charting import canals
from cases.services.images import removal, upload
from cases.services.images.upload import Announced
from cases.services.treatment import treatment
from cases.services.treatment.treatment import ReceivedEvent
from planning.contract.canal_facts import WallInput
from planning.run_sheet.graph import Exit
from tests.cases.pictures import picture
from tests.cast import canal_of

NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)
PHONE, LAPTOP = uuid7(), uuid7()
DONE = StepPayload(exit=Exit.DONE)
RINSED = StepPayload(exit=Exit.DONE, irrigant="water", volume_ml=2)


class Chair:
    """Somebody who records on a device of their own."""

    def __init__(self, person: Person, version: ToothPlanVersion, device: Any) -> None:
        self.person, self.version, self.device, self.seq = person, version, device, 0

    def tells(self, payload: EventPayload, node: str = "", canal: str = "DB") -> TreatmentEvent:
        self.seq += 1
        received = ReceivedEvent(
            id=uuid7(),
            device_seq=self.seq,
            seen_position=0,
            plan_hash=self.version.hash,
            device_time=NOON,
            payload=payload,
            canal=canal,
            node=node,
        )
        return treatment.record(actor=self.person, case=self.version.case, device=self.device, batch=[received])[0]


@pytest.fixture
def student(priya: Person, approved: ToothPlanVersion) -> Chair:
    return Chair(priya, approved, PHONE)


@pytest.fixture
def supervisor(vale: Person, approved: ToothPlanVersion) -> Chair:
    return Chair(vale, approved, LAPTOP)


def at_stop(depth_um: int = 18_000) -> StepPayload:
    return StepPayload(exit=Exit.REACHED, depth_um=depth_um, stop_um=18_000)


def record(version: ToothPlanVersion) -> Record:
    return record_of(version.case_id).record


def test_the_first_steps_of_a_canal_as_a_person_would_write_them(
    student: Chair, supervisor: Chair, vale: Person, approved: ToothPlanVersion
) -> None:
    """By hand: DB of the check molar is explored with 10/.02 to 18.0, rinsed with 2 ml, imaged and signed off."""
    student.tells(OnSitePayload(supervisor_id=str(vale.pk)), canal="")
    student.tells(at_stop(), "explore/10-02")
    student.tells(RINSED, "explore/10-02/irrigate")
    student.tells(IrrigatedPayload(irrigant="water", volume_ml=0.5))
    student.tells(ImagePayload(image_id="0190-abc", purpose="length"))
    student.tells(DONE, "length/image")
    supervisor.tells(SignOffPayload(exit="approved", reason="Agrees with the locator."), "length/sign-off")
    made = record(approved)
    assert [(entry.position, entry.who.name, entry.canal, entry.says) for entry in made.timeline] == [
        (1, "Vale", "", "Plan 1 is in force"),
        (2, "Priya", "", "In the room: Vale"),
        (3, "Priya", "DB", "10/.02: at its stop, 18.0 mm"),
        (4, "Priya", "DB", "Irrigated: water, 2 ml"),
        (5, "Priya", "DB", "Irrigated once more: water, 0.5 ml"),
        (6, "Priya", "DB", "Image of the length"),
        (7, "Priya", "DB", "Image: done"),
        (8, "Vale", "DB", "Approved, length: Agrees with the locator."),
    ]
    assert [(volume.irrigant, volume.volume_ml) for volume in made.irrigants] == [("water", 2.5)]
    assert [(row.instrument, row.canals, row.uses) for row in made.instruments] == [("10/.02", ("DB",), 1)]
    assert [
        (sign_off.hold_point, sign_off.said, sign_off.who.name, sign_off.who.role) for sign_off in made.sign_offs
    ] == [("length", "approved", "Vale", "supervisor")]
    assert [(image.image_id, image.purpose) for image in made.images] == [("0190-abc", "length")]
    assert [[who.name for who in visit.on_site] for visit in made.visits] == [["Vale"]]


def test_a_removed_image_stays_in_the_record_with_who_and_why(
    student: Chair, vale: Person, approved: ToothPlanVersion, settings: Any
) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}
    data, ids = picture(), [uuid7(), uuid7()]
    for id_ in ids:
        announced = Announced(id=id_, sha256=sha256(data).hexdigest(), sent_bytes=len(data), device_time=NOON)
        upload.receive(actor=student.person, case=approved.case, announced=announced, data=data)
        student.tells(ImagePayload(image_id=str(id_), purpose="length"))
    before = record_of(approved.case_id)
    removal.remove(actor=vale, image=Image.objects.get(pk=ids[0]), reason=RemovalReason.NAMES_SOMEBODY)
    after = record_of(approved.case_id)
    assert [(image.image_id, image.removed and image.removed.who.name) for image in after.record.images] == [
        (str(ids[0]), "Vale"),
        (str(ids[1]), None),
    ]
    assert after.record.timeline == before.record.timeline
    assert after.hash != before.hash
    paper = PdfReader(BytesIO(record_pdf(after.record, after.hash)))
    text = " ".join(" ".join(page.extract_text().split()) for page in paper.pages)
    assert "REMOVED: a name or a number of a person is written in it. Vale" in text


def test_every_record_says_it_is_for_training(approved: ToothPlanVersion) -> None:
    assert "does not replace the supervising licensed clinician" in record(approved).notice


def test_before_anything_was_done_the_record_says_what_was_planned(approved: ToothPlanVersion) -> None:
    made = record(approved)
    assert (made.position, [entry.says for entry in made.timeline], made.irrigants) == (1, ["Plan 1 is in force"], ())
    planned = {canal.canal: canal.planned_size for canal in made.canals}
    assert planned == {"MB1": "30/.04", "MB2": "30/.04", "DB": "30/.04", "P": "35/.04"}
    assert {step.comparison for canal in made.canals for step in canal.steps} == {StepComparison.NOT_YET}


def test_what_was_charted_of_a_canal_is_in_the_record_and_on_paper(approved: ToothPlanVersion, priya: Person) -> None:
    wall = WallInput(thickness_mm=0.9, from_end_mm=3.0)
    changes = {"curvature_deg": 24.0, "orifice_mm": 8.5, "wall": wall}
    canals.change_canal(actor=priya, canal=canal_of(approved.case, "P"), changes=changes)
    after = record_of(approved.case_id)
    charted = {canal.canal: canal.charted for canal in after.record.canals}
    assert charted["P"] == (
        "orifice found, depth of the orifice 8.5 mm, curvature 24°, thinnest wall thickness 0.9 mm, from the end 3 mm"
    )
    assert charted["DB"] == "orifice found"
    paper = PdfReader(BytesIO(record_pdf(after.record, after.hash)))
    assert "curvature 24°" in " ".join(" ".join(page.extract_text().split()) for page in paper.pages)


def test_what_was_taken_back_is_there_and_does_not_count(student: Chair, approved: ToothPlanVersion) -> None:
    wrong = student.tells(at_stop(), "explore/10-02")
    student.tells(UndoPayload(undoes=str(wrong.pk)))
    made = record(approved)
    assert [(entry.says, entry.undone) for entry in made.timeline[1:]] == [
        ("10/.02: at its stop, 18.0 mm", True),
        ("Taken back: entry 2", False),
    ]
    assert made.instruments == ()


def test_a_fact_out_of_course_is_there_with_the_reason_and_counts(student: Chair, approved: ToothPlanVersion) -> None:
    student.tells(RINSED, "explore/10-02/irrigate")
    made = record(approved)
    _, entry = made.timeline
    assert (entry.out_of_course, entry.out_of_course_says) == (OutOfCourse.OTHER_STEP, "another step was due")
    assert [(volume.irrigant, volume.volume_ml) for volume in made.irrigants] == [("water", 2)]


def test_work_stands_against_the_plan_step_by_step(student: Chair, approved: ToothPlanVersion) -> None:
    """By hand: stopping short at the very first step is expected by nobody; what follows on the sheet is ahead."""
    student.tells(StepPayload(exit=Exit.SHORT, depth_um=15_000, stop_um=18_000), "explore/10-02")
    steps = next(canal for canal in record(approved).canals if canal.canal == "DB").steps
    first = steps[0]
    assert (first.node, first.pass_number, first.comparison) == ("explore/10-02", 1, StepComparison.AS_PLANNED)
    assert (first.stop_mm, first.depth_mm, first.how, first.position) == (18.0, 15.0, Exit.SHORT, 2)
    assert {step.comparison for step in steps[1:]} == {StepComparison.NOT_YET}


def test_a_step_passed_over_is_marked_where_it_was_expected(student: Chair, approved: ToothPlanVersion) -> None:
    student.tells(at_stop(), "explore/10-02")
    student.tells(DONE, "length/image")
    steps = next(canal for canal in record(approved).canals if canal.canal == "DB").steps
    assert [(step.node, step.comparison) for step in steps[:3]] == [
        ("explore/10-02", StepComparison.AS_PLANNED),
        ("explore/10-02/irrigate", StepComparison.LEFT_OUT),
        ("length/image", StepComparison.AS_PLANNED),
    ]


def test_a_halt_and_what_ended_it(student: Chair, supervisor: Chair, approved: ToothPlanVersion) -> None:
    student.tells(PausePayload(reason="Not sure"))
    supervisor.tells(ResumePayload(reason="Seen, go on."))
    student.tells(EmergencyPayload(what="instrument_separated"), canal="")
    made = record(approved)
    pause, emergency = made.halts
    assert (pause.kind, pause.canal, pause.says) == ("pause", "DB", "Paused: Not sure")
    assert pause.ended is not None
    assert (pause.ended.position, pause.ended.who.name, pause.ended.reason) == (3, "Vale", "Seen, go on.")
    assert (emergency.says, emergency.ended) == ("EMERGENCY, an instrument has separated", None)


def test_after_an_emergency_with_a_patient_the_review_stands_until_the_next_visit(
    priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    """Seen again within 24 hours: CDA Essentials 2022 (read second-hand)."""
    student, supervisor = Chair(priya, clinic, PHONE), Chair(vale, clinic, LAPTOP)
    student.tells(EmergencyPayload(what="hypochlorite_accident"), canal="")
    student.tells(EmergencyPayload(what="sudden_bleeding"), canal="")
    first, second = record(clinic).halts
    assert first.review_by is not None
    assert (first.review_by - first.at, first.seen_again) == (timedelta(hours=24), None)
    mistaken = TreatmentEvent.objects.get(position=second.position)
    student.tells(CorrectedPayload(corrects=str(mistaken.pk)), canal="")
    supervisor.tells(ResumePayload(reason="Seen."), canal="")
    student.tells(ClosePayload(access_sealed=True), canal="")
    student.tells(ReopenPayload(as_left=()), canal="")
    first, second = record(clinic).halts
    assert first.seen_again == record(clinic).timeline[-1].at
    assert (second.review_by, second.seen_again) == (None, None)


def test_past_its_stop_and_the_answer(student: Chair, approved: ToothPlanVersion) -> None:
    past = student.tells(at_stop(18_500), "explore/10-02")
    student.tells(AnswerPayload(asks=str(past.pk), cause="stop_moved"))
    (halt,) = record(approved).halts
    assert (halt.kind, halt.says) == ("past_stop", "10/.02: past its stop, 18.5 mm (stop 18.0 mm)")
    assert halt.ended is not None
    assert halt.ended.reason == "the stop had moved"


def test_a_discarded_instrument_begins_anew(student: Chair, approved: ToothPlanVersion) -> None:
    """By hand: 10/.02 enters DB, is discarded, and a new one enters DB: two uses, one of them of the one there now."""
    student.tells(at_stop(), "explore/10-02")
    student.tells(InspectedPayload(instrument="10/.02 hand", found="discarded", why="bent"))
    student.tells(at_stop(), "explore/10-02")
    made = record(approved)
    assert [(row.instrument, row.canals, row.discarded, row.uses) for row in made.instruments] == [
        ("10/.02", ("DB", "DB"), 1, 1)
    ]
    assert [(row.instrument, row.why, row.canal) for row in made.discarded] == [("10/.02", "bent", "DB")]


def test_a_visit_ends_as_it_was_closed(student: Chair, approved: ToothPlanVersion) -> None:
    student.tells(ClosePayload(access_sealed=True, note="Temporary in place."), canal="")
    (visit,) = record(approved).visits
    assert (visit.access_sealed, visit.note, visit.closed_by and visit.closed_by.name) == (
        True,
        "Temporary in place.",
        "Priya",
    )


def test_every_event_is_in_the_timeline_exactly_once(
    student: Chair, supervisor: Chair, approved: ToothPlanVersion
) -> None:
    student.tells(at_stop(), "explore/10-02")
    student.tells(at_stop(), "nowhere")
    student.tells(NotePayload(text="Long canal."))
    supervisor.tells(SignOffPayload(exit="returned", reason="Blurred."), "length/sign-off")
    stored = TreatmentEvent.objects.order_by("position").values_list("position", "id")
    told_of = [(entry.position, entry.event_id) for entry in record(approved).timeline]
    assert told_of == [(position, str(id_)) for position, id_ in stored]


def test_the_same_record_has_the_same_hash_and_another_entry_another(
    student: Chair, approved: ToothPlanVersion
) -> None:
    before = record_of(approved.case_id).hash
    assert record_of(approved.case_id).hash == before
    student.tells(NotePayload(text="Anything."))
    assert record_of(approved.case_id).hash != before


def test_every_reason_has_words() -> None:
    assert set(words.WHY) == set(OutOfCourse)
    assert set(record_tables.STATE) == set(CanalState)
