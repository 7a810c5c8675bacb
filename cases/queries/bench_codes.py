"""Whose one-time codes count at the bench."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from django.db.models import Exists, OuterRef, QuerySet

from cases.models import BenchCode, Person


class BenchCodeState(StrEnum):
    NONE = "none"
    TO_CONFIRM = "to_confirm"
    """Made, and no code of it was typed in yet."""
    COUNTS = "counts"


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchCodeShown:
    state: BenchCodeState
    since: datetime | None
    """Since when it counts."""


def bench_code_shown(person: Person) -> BenchCodeShown:
    """Where the person's codes stand; never the secret."""
    rows = list(BenchCode.objects.filter(person=person, ended_at=None))
    counting = next((row for row in rows if row.confirmed_at), None)
    if counting is not None:
        return BenchCodeShown(state=BenchCodeState.COUNTS, since=counting.confirmed_at)
    return BenchCodeShown(state=BenchCodeState.TO_CONFIRM if rows else BenchCodeState.NONE, since=None)


def with_bench_codes(people: QuerySet[Person]) -> QuerySet[Person]:
    """People with `signs_at_bench`: whether codes of theirs count."""
    counts = BenchCode.objects.filter(person=OuterRef("pk"), ended_at=None, confirmed_at__isnull=False)
    return people.annotate(signs_at_bench=Exists(counts))
