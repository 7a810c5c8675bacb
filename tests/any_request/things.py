"""What requests are drawn about: the molar of the check case, submitted, and whatever else an address can name."""

from __future__ import annotations

from hashlib import sha256
from uuid import UUID

import pytest
from django.utils import timezone

from cases.domain.access.invited import Invited
from cases.domain.access.roles import Role
from cases.domain.uuid7 import uuid7
from cases.models import CautionOverride, Kit, LengthReading, LtiPlatform, Person, ToothPlanVersion
from cases.services.images import upload
from cases.services.images.upload import Announced
from cases.services.lti import platforms
from cases.services.lti.platforms import Registered
from cases.services.people import invitations
from cases.services.practice import exercises, tasks
from cases.services.webhooks import keeping
from cases.services.webhooks.keeping import Keeper
from tests.cases.pictures import picture
from tests.cast import canal_of
from tests.factories import PASSWORD
from tests.oauth import for_itself

PICTURE = picture()


@pytest.fixture
def things(submitted: ToothPlanVersion, vale: Person, rosa: Person) -> dict[str, str]:
    case = submitted.case
    override = CautionOverride.objects.create(
        sent_hash="", case=case, code="apex-wide", reason="Seen.", supervisor=vale, version=submitted
    )
    reading = LengthReading.objects.filter(canal__tooth__case=case)[0]
    announced = Announced(
        id=uuid7(), sha256=sha256(PICTURE).hexdigest(), sent_bytes=len(PICTURE), device_time=timezone.now()
    )
    webhook = keeping.add(
        keeper=Keeper(actor=rosa),
        programme_id=case.programme_id,
        address="https://records.example/",
        kinds=[],
        reached=0,
    )
    image = upload.receive(actor=case.student, case=case, announced=announced, data=PICTURE)
    return {
        **practice_of(case.student, vale),
        "page": "tour",
        "iso": "26",
        "table": "cases",
        "programme_id": str(case.programme_id),
        "case_id": str(case.pk),
        "canal_id": str(canal_of(case, "P").pk),
        "version_id": str(submitted.pk),
        "hash_": submitted.hash,
        "override_id": str(override.pk),
        "image_id": str(image.pk),
        "webhook_id": str(webhook.pk),
        "delivery_id": str(uuid7()),
        "client_id": str(for_itself(rosa).row.pk),
        "platform_id": str(platform_of(rosa).pk),
        "invitation_id": str(_invited(rosa, case.programme_id)),
        "consent_id": str(uuid7()),
        "marking_id": str(uuid7()),
        "bend_id": str(uuid7()),
        "key_id": str(uuid7()),
        "kit_id": str(Kit.objects.filter(programme=case.programme_id)[0].pk),
        "person_id": str(case.student_id),
        "external_id": "7",
        "review_id": str(uuid7()),
        "reading_id": str(reading.pk),
        "name": "MB",
        "key": "passes.gain",
        "tooth": "16",
        "code": "not-found",
        "canal": "P",
    }


def practice_of(student: Person, supervisor: Person) -> dict[str, str]:
    """An exercise of a task."""
    programme_id = supervisor.memberships.get().programme_id
    task, _ = tasks.set_task(actor=supervisor, programme_id=programme_id, level="incisor")
    exercise, _ = exercises.start(actor=student, programme_id=programme_id, task=task)
    return {"task_id": str(task.pk), "exercise_id": str(exercise.pk)}


def _invited(coordinator: Person, programme_id: UUID) -> UUID:
    people = [Invited(name="Nour", username="nour", role=Role.STUDENT)]
    made = invitations.invite(actor=coordinator, programme_id=programme_id, people=people, days=1).made
    return made[0].row.pk


def platform_of(coordinator: Person) -> LtiPlatform:
    registered = Registered(
        name="Courses",
        issuer="https://courses.example",
        client_id="7",
        deployment_ids=["1"],
        login_address="https://courses.example/authorize",
        token_address="https://courses.example/token",
        key_set_address="https://courses.example/keys",
    )
    programme_id = coordinator.memberships.get().programme_id
    return platforms.register(actor=coordinator, password=PASSWORD, programme_id=programme_id, registered=registered)
