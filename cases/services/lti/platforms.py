"""Platforms, registered by a programme's coordinator."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from typing import Any
from uuid import UUID

from django.db import IntegrityError, transaction
from django.utils import timezone

from cases.domain.access.permissions import May, refuse_unless
from cases.domain.errors import NotHere, TakenAlready
from cases.models import LtiPlatform, LtiWork, Person
from cases.services.common import audit
from cases.services.common.guard import actor_in
from cases.services.lti.line import refuse_address
from cases.services.people import sign_in

ADDRESSES = ("login_address", "token_address", "key_set_address")


@dataclass(frozen=True, slots=True, kw_only=True)
class Registered:
    """What a platform says of itself, and what the programme lets it do."""

    name: str
    issuer: str
    client_id: str
    deployment_ids: Sequence[str]
    login_address: str
    token_address: str
    key_set_address: str
    token_audience: str = ""
    teachers_supervise: bool = False
    active: bool = True


def register(*, actor: Person, password: str, programme_id: UUID, registered: Registered) -> LtiPlatform:
    """A platform whose courses lead to the programme. The coordinator is asked for the password once more.

    Raises NotHere, NotAllowed, PasswordWrong, TooManyTries, NotUsable, TakenAlready.
    """
    _refuse(actor, password, programme_id, registered)
    with _taken(registered), transaction.atomic():
        row = LtiPlatform.objects.create(programme_id=programme_id, **_columns(registered))
        _log(actor, "register", row)
    return row


def change(*, actor: Person, password: str, platform: LtiPlatform, registered: Registered) -> LtiPlatform:
    """The platform as it is from now on. Raises as `register` does."""
    _refuse(actor, password, platform.programme_id, registered)
    with _taken(registered), transaction.atomic():
        row = LtiPlatform.objects.select_for_update(no_key=True).filter(pk=platform.pk).first()
        if row is None:
            raise NotHere(what="platform")
        for name, value in _columns(registered).items():
            setattr(row, name, value)
        row.save()
        # What was not taken, or given up, may be taken as the platform is now.
        untaken = LtiWork.objects.filter(person__platform=row, tries__gt=0)
        untaken.update(tries=0, first_tried_at=None, due_at=timezone.now())
        _log(actor, "change", row)
    return row


def _columns(registered: Registered) -> dict[str, Any]:
    return {**asdict(registered), "deployment_ids": list(dict.fromkeys(registered.deployment_ids))}


def _refuse(actor: Person, password: str, programme_id: UUID, registered: Registered) -> None:
    refuse_unless(May.KEEP_PLATFORMS, actor_in(actor, programme_id))
    sign_in.confirm(person=actor, password=password)
    for name in ADDRESSES:
        refuse_address(getattr(registered, name), at=name)


@contextmanager
def _taken(registered: Registered) -> Iterator[None]:
    """Has the database's refusal of a second registration said in words."""
    try:
        yield
    except IntegrityError:
        raise TakenAlready(what="A registration of the client", name=registered.client_id) from None


def _log(actor: Person, verb: str, row: LtiPlatform) -> None:
    values = {
        "name": row.name,
        "issuer": row.issuer,
        "teachers_supervise": row.teachers_supervise,
        "active": row.active,
    }
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=row.programme_id, after=values)
