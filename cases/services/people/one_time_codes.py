"""A supervisor's one-time codes: made once, confirmed by a first code, used once each."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from datetime import timedelta
from math import ceil

from django.db import transaction
from django.db.models import QuerySet
from django.utils import timezone
from django.utils.crypto import salted_hmac

from cases.domain.access import one_time_code
from cases.domain.access.roles import Role
from cases.domain.errors import CaseError, CodeRefused, Conflict, NotAllowed, TooManyTries
from cases.models import Case, Membership, OneTimeCode, Person, WrongCode
from cases.services.common import audit
from cases.services.people import sign_in

ISSUER = "Fourth Canal"
# Three of a million codes count at a time, and this allows 480 tries a day: guessing takes about two years.
MOST_TRIES = 5
LOCKED_FOR = timedelta(minutes=15)


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeSecret:
    """Shown once, to the supervisor who made it."""

    secret: str
    address: str


def make(*, actor: Person, password: str) -> CodeSecret:
    """A new secret. It counts once a first code of it has been typed in; until then an earlier secret still counts.

    Raises NotAllowed for somebody who supervises nowhere, PasswordWrong, TooManyTries.
    """
    _refuse_others(actor)
    sign_in.confirm(person=actor, password=password)
    return _make(actor)


@transaction.atomic
def _make(actor: Person) -> CodeSecret:
    _held(actor).filter(confirmed_at=None).update(ended_at=timezone.now())
    row = OneTimeCode.objects.create(person=actor, seed=secrets.token_hex(32))
    secret = _secret(row)
    return CodeSecret(
        secret=one_time_code.secret_text(secret),
        address=one_time_code.address(secret, of=actor.username, issuer=ISSUER),
    )


def confirm(*, actor: Person, code: str) -> OneTimeCode:
    """The new secret counts from now on, the earlier one no more. Raises Conflict where none was made, and as `use`."""
    came = _confirm(actor, code)
    if isinstance(came, CaseError):
        raise came
    return came


@transaction.atomic
def _confirm(actor: Person, code: str) -> OneTimeCode | CaseError:
    row = _held(actor).filter(confirmed_at=None).first()
    if row is None:
        raise Conflict(reason="There is no new code to confirm. Make one first.")
    if refusal := _refusal(row, code, by=actor, case=None):
        return refusal
    now = timezone.now()
    _held(actor).exclude(pk=row.pk).update(ended_at=now)
    row.confirmed_at = now
    row.save(update_fields=["confirmed_at"])
    _log(actor, "confirm", row)
    return row


@transaction.atomic
def remove(*, actor: Person) -> None:
    """No code counts any more; harmless where none did."""
    for row in _held(actor):
        row.ended_at = timezone.now()
        row.save(update_fields=["ended_at"])
        _log(actor, "remove", row)


def use(*, supervisor: Person, code: str, by: Person, case: Case) -> CaseError | None:
    """Uses the code up. Where it does not count, returns the refusal, to be raised once the wrong try is stored.

    CodeRefused for a wrong, old or used one, and where the supervisor has none; TooManyTries after five wrong ones.
    Within the caller's transaction, which must not be rolled back.
    """
    row = _held(supervisor).filter(confirmed_at__isnull=False).first()
    if row is None:
        return CodeRefused(reason=f"{supervisor} has no code for the bench yet.", at=("supervisor_id",))
    return _refusal(row, code, by=by, case=case)


def _refusal(row: OneTimeCode, code: str, *, by: Person, case: Case | None) -> CaseError | None:
    now = timezone.now()
    # Counted for the supervisor whose code it is, on whosever phone it was typed.
    wrong = WrongCode.objects.filter(supervisor=row.person, at__gt=now - LOCKED_FOR).order_by("-at")[:MOST_TRIES]
    tries = list(wrong)
    # The next try comes when the oldest of these no longer counts.
    if len(tries) == MOST_TRIES:
        return TooManyTries(minutes=ceil((tries[-1].at + LOCKED_FOR - now) / timedelta(minutes=1)))
    step = one_time_code.matching_step(_secret(row), code, at_s=now.timestamp(), later_than=row.last_step)
    if step is None:
        WrongCode.objects.create(supervisor=row.person, by=by, case=case)
        left = MOST_TRIES - len(tries) - 1
        return CodeRefused(reason=_wrong(left), at=("code",))
    row.last_step = step
    row.save(update_fields=["last_step"])
    return None


def _wrong(left: int) -> str:
    locked = f"No more tries for {LOCKED_FOR // timedelta(minutes=1)} minutes."
    more = "1 more try." if left == 1 else f"{left} more tries." if left else locked
    return f"This code is wrong, too old, or was used before. Type the one that is shown now. {more}"


def _held(person: Person) -> QuerySet[OneTimeCode]:
    """The person's enrolments that are not over; their person is held until the transaction ends."""
    Person.objects.select_for_update(no_key=True).get(pk=person.pk)
    return OneTimeCode.objects.filter(person=person, ended_at=None)


def _secret(row: OneTimeCode) -> bytes:
    digest = salted_hmac("fourth-canal one-time code", row.seed, algorithm="sha256").digest()
    return digest[: one_time_code.SECRET_BYTES]


def _refuse_others(actor: Person) -> None:
    if not Membership.objects.filter(person=actor, role=Role.SUPERVISOR).exists():
        raise NotAllowed(reason="Codes for the bench are for supervisors.")


def _log(actor: Person, verb: str, row: OneTimeCode) -> None:
    for membership in actor.memberships.filter(role=Role.SUPERVISOR):
        audit.changed(actor=actor, verb=verb, subject=row, programme_id=membership.programme_id)
