"""Writes the change log, in the transaction of the change, and has other systems told of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import is_dataclass
from typing import Any

from django.db.models import Model

from cases.models import AccessKey, Case, ChangeLog, ClientToken, Person
from cases.services.common import feed
from planning.foundation.encoding import canonical_text, encode

Values = Mapping[str, Any]


def changed(
    *,
    actor: Person,
    verb: str,
    subject: Model,
    case: Case | None = None,
    programme_id: Any = None,
    before: Values | None = None,
    after: Values | None = None,
) -> None:
    """One line of the log. Values are those that changed; remarks and notes stay out of it."""
    key = actor.by_key
    ChangeLog.objects.create(
        programme_id=case.programme_id if case else programme_id,
        case=case,
        actor=actor,
        key=key if isinstance(key, AccessKey) else None,
        client=key.client if isinstance(key, ClientToken) else None,
        verb=verb,
        subject=type(subject).__name__,
        subject_id=str(subject.pk),
        before=_text(before),
        after=_text(after),
    )
    feed.logged(actor=actor, verb=verb, subject=subject, case=case, programme_id=programme_id)


def _text(values: Values | None) -> str:
    return canonical_text({key: _plain(value) for key, value in values.items()}) if values else ""


def _plain(value: Any) -> Any:
    if isinstance(value, Model):
        return str(value.pk)  # a name could not be erased from here
    if isinstance(value, list):
        return [_plain(each) for each in value]
    if isinstance(value, tuple) or is_dataclass(value):
        return encode(value)
    return value if value is None or isinstance(value, bool | int | float | str) else str(value)
