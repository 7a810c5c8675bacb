"""Two at once: one wins, the other is told. On both databases, with connections of their own."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from typing import Any, Literal

import pyotp
import pytest
from django.utils import timezone

from cases.domain.access.one_time_code import STEP_S
from cases.domain.access.roles import Role
from cases.domain.events.payloads import EventPayload, SignOffPayload, StepPayload
from cases.domain.image_errors import ImageRemoved
from cases.domain.images import ImageState, RemovalReason
from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_of
from cases.models import (
    Case,
    ChangeLog,
    DemoPatient,
    Image,
    ImagePart,
    LengthReading,
    Person,
    Review,
    ToothPlanVersion,
    TreatmentEvent,
)
from cases.queries.course import treatment_of
from cases.services.charting import cases, readings
from cases.services.images import removal, upload
from cases.services.images.upload import Announced
from cases.services.people import one_time_codes
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.treatment import on_site_sign_off, treatment
from cases.services.treatment.on_site_sign_off import OnSiteSignOff
from cases.services.treatment.treatment import ReceivedEvent
from planning.contract.plan_input import Choices
from planning.lengths.readings import PreOperativeImage
from planning.run_sheet.graph import Action, Exit, RunSheet, Step
from planning.run_sheet.walk import Walk
from tests import factories
from tests.at_once import at_once
from tests.cases.pictures import picture
from tests.cast import canal_of, chart, decide, open_case
from tests.factories import PASSWORD
from tests.planning.given import OPEN_30

pytestmark = pytest.mark.usefixtures("database_of_many")


class Scene:
    """The molar, submitted, with two supervisors."""

    def __init__(self) -> None:
        self.programme = factories.ProgrammeFactory.create()
        self.student = factories.member(self.programme, "priya", Role.STUDENT)
        self.supervisors = [factories.member(self.programme, name, Role.SUPERVISOR) for name in ("vale", "amari")]
        self.case: Case = open_case(self.programme, self.student)
        kit = factories.kit_row(self.programme)
        self.asked = Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))

    def submitted(self) -> ToothPlanVersion:
        chart(self.case, self.student)
        version, _ = plans.propose(actor=self.student, case=self.case, asked=self.asked)
        return plans.submit(actor=self.student, version=version)


def test_of_two_supervisors_one_decides() -> None:
    scene = Scene()
    version = scene.submitted()

    def deciding(person: Person, decision: Decision) -> Callable[[], Any]:
        return lambda: decide(person, ToothPlanVersion.objects.get(pk=version.pk), decision)

    vale, amari = scene.supervisors
    came = at_once(deciding(vale, Decision.APPROVED), deciding(amari, Decision.RETURNED))
    assert sorted(type(each).__name__ for each in came) == ["DecidedBefore", "Review"]
    won = Review.objects.get()
    (refusal,) = [str(each) for each in came if not isinstance(each, tuple | Review)]
    assert f"{won.supervisor} was first: plan 1 was {won.decision}" in refusal


def test_of_two_words_at_a_hold_point_one_moves_the_canal_and_the_other_is_kept() -> None:
    scene = Scene()
    version = scene.submitted()
    vale, amari = scene.supervisors
    decide(vale, version, Decision.APPROVED)
    done = [("explore/10-02", Exit.REACHED), ("explore/10-02/irrigate", Exit.DONE), ("length/image", Exit.DONE)]
    steps = [_reported(version, n, node, StepPayload(exit=exit_)) for n, (node, exit_) in enumerate(done, start=1)]
    treatment.record(actor=scene.student, case=version.case, device=uuid7(), batch=steps)

    def saying(person: Person, exit_: Literal["approved", "returned"]) -> Callable[[], Any]:
        word = _reported(version, 1, "length/sign-off", SignOffPayload(exit=exit_, reason="Seen."))
        return lambda: treatment.record(actor=person, case=version.case, device=uuid7(), batch=[word])

    first, second = sorted(
        (row for (row,) in at_once(saying(vale, "approved"), saying(amari, "returned"))), key=lambda row: row.position
    )
    shown = treatment_of(version.case_id)
    assert shown.course is not None
    # Both are in the record with their names; the list says which of them moved nothing.
    assert shown.course.out_of_course == {str(second.pk): OutOfCourse.OTHER_STEP}
    assert [event.row.actor for event in shown.events[-2:]] == [first.actor, second.actor]
    assert shown.course.canals["DB"].walk.at != "length/sign-off"


def _reported(version: ToothPlanVersion, seq: int, node: str, payload: EventPayload) -> ReceivedEvent:
    return ReceivedEvent(
        id=uuid7(),
        device_seq=seq,
        seen_position=0,
        plan_hash=version.hash,
        device_time=datetime(2026, 3, 5, 12, tzinfo=UTC),
        payload=payload,
        canal="DB",
        node=node,
    )


def test_one_reading_sent_twice_at_once_is_one() -> None:
    scene, id_ = Scene(), uuid7()
    image = PreOperativeImage(tooth_mm=19.5, reference_point="DB cusp")

    def taking() -> Any:
        canal = canal_of(scene.case, "DB")
        return readings.take_length(actor=scene.student, canal=canal, reading=image, id=id_)

    came = at_once(taking, taking)
    assert sorted(made for _, made in came) == [False, True]
    assert LengthReading.objects.count() == 1
    assert Case.objects.get(pk=scene.case.pk).revision == scene.case.revision + 1


def test_one_image_sent_twice_at_once_is_one() -> None:
    scene, id_, data = Scene(), uuid7(), picture()
    announced = Announced(id=id_, sha256=sha256(data).hexdigest(), sent_bytes=len(data), device_time=timezone.now())

    def sending() -> Any:
        return upload.receive(actor=scene.student, case=scene.case, announced=announced, data=data)

    assert [image.pk for image in at_once(sending, sending)] == [id_, id_]
    assert ChangeLog.objects.filter(subject="Image", verb="stored").count() == 1


def test_an_image_removed_while_it_comes_in_is_removed_and_leaves_nothing(settings: Any, tmp_path: Path) -> None:
    backend = "django.core.files.storage.FileSystemStorage"
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": backend, "OPTIONS": {"location": tmp_path}}}
    scene, data = Scene(), picture()
    announced = Announced(id=uuid7(), sha256=sha256(data).hexdigest(), sent_bytes=len(data), device_time=timezone.now())
    image = upload.receive_part(actor=scene.student, case=scene.case, announced=announced, offset=0, data=data[:50])

    def sending() -> Any:
        return upload.receive_part(actor=scene.student, case=scene.case, announced=announced, offset=50, data=data[50:])

    def removing() -> Any:
        return removal.remove(actor=scene.supervisors[0], image=image, reason=RemovalReason.NAMES_SOMEBODY)

    sent, *removed = at_once(sending, removing, removing)
    # Either it was stored first and then removed, or the rest of it came too late.
    assert isinstance(sent, Image | ImageRemoved)
    assert [each.state for each in removed] == [ImageState.REMOVED] * 2
    assert Image.objects.get().state == ImageState.REMOVED
    assert ChangeLog.objects.filter(subject="Image", verb="remove").count() == 1
    assert not ImagePart.objects.exists()
    assert [each for each in tmp_path.rglob("*") if each.is_file() and "sqlite" not in each.name] == []


def test_one_opening_sent_twice_at_once_is_one() -> None:
    scene, id_ = Scene(), uuid7()

    def opening() -> Any:
        return open_case(scene.programme, scene.student, id=id_)

    assert [case.pk for case in at_once(opening, opening)] == [id_, id_]


def test_one_plan_proposed_twice_at_once_is_one_version() -> None:
    scene = Scene()
    chart(scene.case, scene.student)

    def proposing() -> Any:
        return plans.propose(actor=scene.student, case=Case.objects.get(pk=scene.case.pk), asked=scene.asked)

    came = at_once(proposing, proposing)
    assert sorted(made for _, made in came) == [False, True]
    assert ToothPlanVersion.objects.count() == 1


def test_one_code_typed_on_two_phones_at_once_counts_once() -> None:
    scene = Scene()
    version = scene.submitted()
    vale = scene.supervisors[0]
    decide(vale, version, Decision.APPROVED)
    secret = pyotp.TOTP(one_time_codes.make(actor=vale, password=PASSWORD).secret)
    step = int(timezone.now().timestamp()) // STEP_S
    one_time_codes.confirm(actor=vale, code=secret.generate_otp(step))
    canals = {canal.canal: canal for canal in plan_of(version).canals if canal.canal in ("DB", "P")}
    for canal in canals.values():
        _to_its_first_hold_point(scene, version, canal.run_sheet)
    code = secret.generate_otp(step + 1)

    def signing(name: str) -> Callable[[], Any]:
        waits = treatment_of(scene.case.pk)
        node = next(canal.node for canal in waits.canals if canal.canal == name)
        sign_off = SignOffPayload(exit="approved", on_site=True)
        entry = OnSiteSignOff(
            supervisor_id=vale.pk, code=code, plan_hash=version.hash, canal=name, node=node, payload=sign_off
        )
        return lambda: on_site_sign_off.sign_off(actor=scene.student, case=scene.case, entry=entry)

    came = at_once(*(signing(name) for name in canals))
    assert sorted(type(each).__name__ for each in came) == ["CodeRefused", "TreatmentEvent"]
    assert TreatmentEvent.objects.filter(kind="sign_off").count() == 1


def _to_its_first_hold_point(scene: Scene, version: ToothPlanVersion, sheet: RunSheet) -> None:
    walk, device = Walk(sheet), uuid7()
    batch: list[ReceivedEvent] = []
    while isinstance(walk.node, Step) and walk.node.action is not Action.SIGN_OFF:
        left = next(iter(walk.node.exits))
        batch.append(
            ReceivedEvent(
                id=uuid7(),
                device_seq=len(batch) + 1,
                seen_position=0,
                plan_hash=version.hash,
                device_time=timezone.now(),
                canal=sheet.canal,
                node=walk.at,
                payload=StepPayload(exit=left),
            )
        )
        walk.leave(left)
    treatment.record(actor=scene.student, case=scene.case, device=device, batch=batch)


def test_of_two_corrections_to_one_alias_one_patient_comes() -> None:
    scene = Scene()
    other = open_case(scene.programme, scene.student, "11", patient_alias="Bench 2")
    first, second = (
        lambda case=case, who=who: cases.change_case(
            actor=who, case=case, seen_revision=case.revision, changes={"patient_alias": "Reed 12"}
        )
        for case, who in zip((scene.case, other), scene.supervisors, strict=True)
    )
    assert all(isinstance(outcome, Case) for outcome in at_once(first, second))
    assert list(DemoPatient.objects.values_list("alias", flat=True)) == ["Reed 12"]


def test_a_case_opened_while_its_alias_is_corrected_stays_whole() -> None:
    scene = Scene()
    scene.case = Case.objects.get(pk=scene.case.pk)
    open_case(scene.programme, scene.student, "11", patient_alias="Reed 12")
    opened, corrected = at_once(
        lambda: open_case(scene.programme, scene.student, "12"),
        lambda: cases.change_case(
            actor=scene.supervisors[0],
            case=scene.case,
            seen_revision=scene.case.revision,
            changes={"patient_alias": "Reed 12"},
        ),
    )
    assert isinstance(opened, Case)
    assert isinstance(corrected, Case)
    assert Case.objects.get(pk=scene.case.pk).patient.alias == "Reed 12"
    # It came before and followed, or after and has an alias of its own: never one that is gone.
    assert Case.objects.get(pk=opened.pk).patient.alias in {"Bench 1", "Reed 12"}
