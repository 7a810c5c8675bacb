"""People, times and lengths as they stand in a cell."""

from __future__ import annotations

from datetime import UTC, datetime

from cases.domain.record.values.timeline import RecordPerson


def person(person: RecordPerson) -> str:
    return f"{person.name} ({person.role})" if person.role else person.name


def time(at: datetime | None) -> str:
    return "" if at is None else f"{at.astimezone(UTC):%Y-%m-%d %H:%M}"


def by(who: RecordPerson, at: datetime | None) -> str:
    return f"{person(who)}, {time(at)}"


def mm(value: float | None) -> str:
    return "" if value is None else f"{value:.2f}".removesuffix("0")
