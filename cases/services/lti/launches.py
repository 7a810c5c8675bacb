"""A launch: used up once, by a person who is known by the platform's subject alone, for an assignment or for none."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.roles import Role
from cases.domain.errors import CaseError
from cases.domain.lti import Assignment, Progress, role_of
from cases.models import Case, LtiLaunch, LtiPerson, LtiPlatform, LtiWork, Membership, Person
from cases.services.charting.cases import open_case
from cases.services.common import feed
from cases.services.lti.messages import STATE_S, LaunchRefused, Message
from planning.anatomy import Notation, ToothName

RecordAddress = Callable[[UUID], str]
"""Where a case's record is opened."""

# No vowels, so that it spells nothing; letters alone, as a run of digits might be somebody's number.
LETTERS, CODE_LENGTH = "BCDFGHJKLMNPQRSTVWXZ", 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """Who came, and where to."""

    person: Person
    role: Role
    case_id: UUID | None


@transaction.atomic
def use_up(*, nonce: str) -> None:
    """The launch counts from now on no more, in any process. Raises LaunchRefused for one that was used."""
    # Its state has ended before its row goes.
    LtiLaunch.objects.filter(at__lt=timezone.now() - 2 * timedelta(seconds=STATE_S)).delete()
    _, fresh = LtiLaunch.objects.get_or_create(nonce=nonce)
    if not fresh:
        raise LaunchRefused


def arrive(*, message: Message, record_address: RecordAddress) -> Arrival:
    """Whoever launched, with the role of the course, and the case of the assignment. Raises LaunchRefused.

    The launch is used up whatever comes of it.
    """
    use_up(nonce=message.nonce)
    try:
        return _arrive(message, record_address)
    except CaseError as refusal:
        raise LaunchRefused(f"The assignment cannot be opened: {refusal}") from None


@transaction.atomic
def _arrive(message: Message, record_address: RecordAddress) -> Arrival:
    role = role_of(message.roles, teachers_supervise=message.platform.teachers_supervise)
    if role is None:
        raise LaunchRefused("Your role in the course has no place here. Ask the coordinator of your programme.")
    # One at a time from each platform: somebody new is made once.
    platform = LtiPlatform.objects.select_for_update(no_key=True).get(pk=message.platform.pk)
    known = _person(platform, message.subject)
    if not known.person.is_active:
        raise LaunchRefused("You sign in here no more. Ask the coordinator of your programme.")
    held = _role(known.person, platform, role)
    assignment = Assignment.of(message.custom) if message.link_id else None
    if held != Role.STUDENT or assignment is None:
        return Arrival(person=known.person, role=held, case_id=None)
    work = _work(known, message, assignment)
    _take_grades(work, message.line_item, record_address(work.case_id))
    return Arrival(person=known.person, role=held, case_id=work.case_id)


def _person(platform: LtiPlatform, subject: str) -> LtiPerson:
    known = LtiPerson.objects.select_related("person").filter(platform=platform, subject=subject).first()
    if known is None:
        # By hand nobody can sign in under it: it has no password.
        person = Person.objects.create_user(f"course-{_code().lower()}")
        known = LtiPerson.objects.create(platform=platform, subject=subject, person=person)
    return known


def _role(person: Person, platform: LtiPlatform, role: Role) -> Role:
    """The role from now on, which is that of the course. Raises LaunchRefused where a student would come to decide on
    cases of their own."""
    membership = Membership.objects.filter(person=person, programme=platform.programme_id).first()
    if membership is not None and membership.role == role:
        return role
    if role != Role.STUDENT and Case.objects.filter(student=person, programme=platform.programme_id).exists():
        raise LaunchRefused("You have cases of your own here, as a student. Ask the coordinator of your programme.")
    Membership.objects.update_or_create(
        person=person, programme_id=platform.programme_id, defaults={"role": role.value}
    )
    feed.person_changed(actor=person, person=person)
    return role


def _work(known: LtiPerson, message: Message, assignment: Assignment) -> LtiWork:
    """The one that the student opened by this link before, or a new one."""
    link = {"person": known, "deployment_id": message.deployment_id, "link_id": message.link_id}
    before = LtiWork.objects.filter(**link).first()
    if before is not None:
        return before
    case, _ = open_case(
        actor=known.person,
        programme_id=message.platform.programme_id,
        # Every heading of a case begins with its tooth.
        patient_alias=f"Course {_code()}",
        alias_is_no_name=True,
        tooth=ToothName(designation=assignment.iso, notation=Notation.ISO_3950),
        setting=assignment.setting.value,
        canals=assignment.canals,
    )
    return LtiWork.objects.create(case=case, **link)


def _take_grades(work: LtiWork, line_item: str, record_address: str) -> None:
    """The grade goes where this launch says. Another line item has not been told of anything."""
    rows = LtiWork.objects.filter(pk=work.pk)
    rows.update(record_address=record_address)
    rows.exclude(line_item=line_item).update(
        line_item=line_item,
        progress_told=Progress.UNDER_WAY,
        tries=0,
        first_tried_at=None,
        due_at=timezone.now(),
        refusal="",
    )


def _code() -> str:
    return "".join(secrets.choice(LETTERS) for _ in range(CODE_LENGTH))
