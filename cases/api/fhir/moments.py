"""A point in time as FHIR's searches have it: as exact as it is written, with a prefix that says what is asked for."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from rest_framework.exceptions import ErrorDetail, ValidationError

_MOMENT = re.compile(
    r"(?P<prefix>eq|ne|gt|lt|ge|le|sa|eb)?(?P<year>[1-9]\d{3})(-(?P<month>\d\d)(-(?P<day>\d\d)"
    r"(T(?P<hour>\d\d):(?P<minute>\d\d)(:(?P<second>\d\d)(\.(?P<part>\d{1,6}))?)?(?P<zone>Z|[+-]\d\d:\d\d))?)?)?"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was written stands for all the time from `begin` to before `end`: a whole day, where a day was written."""

    prefix: str
    begin: datetime
    end: datetime

    @property
    def least(self) -> datetime | None:
        """Nothing before this fits; None where something may."""
        match self.prefix:
            case "eq" | "ge":
                return self.begin
            case "gt" | "sa":
                return self.end
            case _:
                return None

    def fits(self, at: datetime) -> bool:
        within = self.begin <= at < self.end
        match self.prefix:
            case "eq":
                return within
            case "ne":
                return not within
            case "gt" | "sa":
                return at >= self.end
            case "ge":
                return at >= self.begin
            case "lt" | "eb":
                return at < self.begin
            case _:
                return at < self.end


def asked_moment(text: str) -> Asked:
    """Raises ValidationError for what is no date of FHIR's, with a time but no zone for instance."""
    match = _MOMENT.fullmatch(text)
    try:
        if match is None:
            raise ValueError
        begin, end = _span(match)
    except (ValueError, OverflowError):
        says = "Write a date, or a time with its zone; before it eq, ne, gt, lt, ge or le: ge2026-11-30T08:00:00Z."
        raise ValidationError({"_lastUpdated": [ErrorDetail(says, code="not-a-moment")]}) from None
    return Asked(prefix=match["prefix"] or "eq", begin=begin, end=end)


def asked_instant(name: str, text: str) -> datetime:
    """A time to the second or closer, with its zone, as FHIR's `instant`. Raises ValidationError, at that name."""
    match = _MOMENT.fullmatch(text)
    try:
        if match is None or match["prefix"] or match["second"] is None:
            raise ValueError
        return _span(match)[0]
    except (ValueError, OverflowError):
        says = "Write a time with seconds and zone: 2026-11-30T08:00:00Z."
        raise ValidationError({name: [ErrorDetail(says, code="not-a-moment")]}) from None


def _span(match: re.Match[str]) -> tuple[datetime, datetime]:
    """All the time that what was written stands for. Raises ValueError and OverflowError."""
    year, month, day = (int(match[name] or 1) for name in ("year", "month", "day"))
    if match["hour"] is None:
        begin = datetime(year, month, day, tzinfo=UTC)
        if match["day"]:
            return begin, begin + timedelta(days=1)
        return begin, begin.replace(year=year + (not match["month"] or month == 12), month=_next(match["month"], month))
    zone = match["zone"].replace("Z", "+00:00")
    part = match["part"] or ""
    clock = f"{match['hour']}:{match['minute']}:{match['second'] or '00'}.{part:0<6}"
    begin = datetime.fromisoformat(f"{match['year']}-{match['month']}-{match['day']}T{clock}{zone}").astimezone(UTC)
    if match["second"] is None:
        return begin, begin + timedelta(minutes=1)
    return begin, begin + timedelta(microseconds=10 ** (6 - len(part)))


def _next(written: str | None, month: int) -> int:
    """The month after the one that was written; after a whole year the first."""
    return month % 12 + 1 if written else 1
