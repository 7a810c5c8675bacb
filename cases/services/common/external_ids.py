"""A service notes by which key of its own it knows a case, a person or a kit.

The key is the service's note and says nothing of the thing, so it is not logged: a person's could not be erased there.
"""

from __future__ import annotations

from typing import Any

from django.db import transaction

from cases.domain.external_id import external_id_of
from cases.domain.program_errors import ExternalIdTaken
from cases.models import Case, ExternalId, Kit, Person, Service

Subject = Case | Person | Kit


def hold(service: Service) -> None:
    """One after another until the transaction ends: who comes second finds what the first has noted."""
    Service.objects.select_for_update(no_key=True).get(pk=service.pk)


@transaction.atomic
def note(*, service: Service, subject: Subject, value: str) -> bool:
    """The service knows the subject by this key from now on; True where it knew it by none.

    Raises ExternalIdRefused, and ExternalIdTaken for the key of another thing of the kind.
    """
    hold(service)
    kind = type(subject)._meta.model_name or ""
    key = external_id_of(value)
    others = ExternalId.objects.filter(service=service, value=key, **{f"{kind}__isnull": False})
    if others.exclude(**{kind: subject}).exists():
        raise ExternalIdTaken(kind=kind, at=("external_id",))
    subjects: dict[str, Any] = {kind: subject}
    _, created = ExternalId.objects.update_or_create(service=service, **subjects, defaults={"value": key})
    return created


@transaction.atomic
def forget(*, service: Service, subject: Subject) -> None:
    """The service knows the subject by no key of its own any more; nothing where it knew none."""
    kind = type(subject)._meta.model_name or ""
    ExternalId.objects.filter(service=service, **{kind: subject}).delete()
