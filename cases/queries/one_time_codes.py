"""Whose one-time codes count at the bench."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from django.db.models import Exists, OuterRef, QuerySet

from cases.models import OneTimeCode, Person


class OneTimeCodeState(StrEnum):
    NONE = "none"
    TO_CONFIRM = "to_confirm"
    """Made, and no code of it was typed in yet."""
    COUNTS = "counts"


@dataclass(frozen=True, slots=True, kw_only=True)
class OneTimeCodeShown:
    """Where a supervisor's codes stand."""

    state: OneTimeCodeState
    since: datetime | None
    """Since when it counts."""


def one_time_code_shown(person: Person) -> OneTimeCodeShown:
    """Where the person's codes stand; never the secret."""
    rows = list(OneTimeCode.objects.filter(person=person, ended_at=None))
    counting = next((row for row in rows if row.confirmed_at), None)
    if counting is not None:
        return OneTimeCodeShown(state=OneTimeCodeState.COUNTS, since=counting.confirmed_at)
    return OneTimeCodeShown(state=OneTimeCodeState.TO_CONFIRM if rows else OneTimeCodeState.NONE, since=None)


def with_one_time_codes(people: QuerySet[Person]) -> QuerySet[Person]:
    """People with `signs_on_site`: whether codes of theirs count."""
    counts = OneTimeCode.objects.filter(person=OuterRef("pk"), ended_at=None, confirmed_at__isnull=False)
    return people.annotate(signs_on_site=Exists(counts))
