"""What waits for a supervisor: the riskiest first, then the oldest."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from functools import cached_property
from typing import Any
from uuid import UUID

from django.db.models import OuterRef, QuerySet, Subquery

from cases.domain.access.permissions import May
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.models import Review, RunningWork, ToothPlanVersion
from cases.models.prepared import Prepared
from cases.queries import places, seen
from cases.queries.charts import names_of
from cases.queries.places import Order, Place
from cases.queries.seen import Asker
from planning.contract.plan_value import ToothNames
from planning.foundation.encoding import digest

MOST_WAITING = 200  # on a page: more plans than one supervisor can decide on in a day
MOST_RUNNING = 200  # on a page: more chairs than one supervisor can look at
WAITING: Order = {"-stops": int, "-cautions": int, "submitted_at": datetime, "pk": UUID}
THAT_WAITS: Order = {"-halted": bool, "waiting_since": datetime, "case_id": UUID}
THAT_GOES_ON: Order = {"-changed_at": datetime, "case_id": UUID}
SECONDS_A_MINUTE = 60
# A username is one person's, and a version's or a line's own id says its case: reading ids takes most of the time.
PERSON = ("display_name", "username")
OF_CASE = (
    *("case__setting", "case__tooth__iso", "case__patient__alias"),
    *(f"case__student__{part}" for part in PERSON),
)
SHOWN_WAITING = (
    *("submitted_at", "pk", "asked", "case_revision", "case__revision", *OF_CASE),
    *(f"case__supervisor__{part}" for part in PERSON),
)
"""What is shown of a waiting version and can change; what never changes in one is not read for the tag. Nor is the last
decision on its case: while a version waits no other of its case stands, and after its own it is asked for anew.
"""
SHOWN_RUNNING = (
    *("waiting_since", "step_since", "case", "position", "halted", "changed_at", "text", *OF_CASE),
    *(f"on_site__{part}" for part in PERSON),
    *(f"taken_over__{part}" for part in PERSON),
)
"""What is shown of running work."""


class Asks(StrEnum):
    """Why a plan is asked for."""

    FIRST = "first"
    """No supervisor has decided on this case yet."""
    AFTER_RETURN = "after_return"
    AFTER_APPROVAL = "after_approval"
    """An approved plan was changed: the approval no longer counts."""


@dataclass(frozen=True, slots=True)
class Waiting:
    """One plan that waits."""

    row: ToothPlanVersion
    names: ToothNames
    asks: Asks
    waiting_s: int
    stale: bool
    difficulty: str | None
    """Level; None where none is counted."""


@dataclass(frozen=True)
class WaitingPage:
    """The waiting plans of a programme. They are read only when asked for: the tag alone costs much less."""

    programme_id: UUID
    now: datetime
    limit: int
    after: Place | None

    @cached_property
    def tag(self) -> str:
        """Changes with all that is shown, times told in whole minutes."""
        is_usual = self.after is None and self.limit == MOST_WAITING
        rows = _SHOWN_WAITING(self.programme_id) if is_usual else _shown_waiting(*self._asked)
        return digest(repr([(_whole_minutes(_seconds(at, self.now)), shown) for at, *shown in rows]))

    @property
    def results(self) -> Sequence[Waiting]:
        return [_waiting(row, self.now) for row in self._rows[: self.limit]]

    @property
    def next(self) -> str | None:
        """Where the next page goes on; None where this is the last."""
        is_last = len(self._rows) <= self.limit
        return None if is_last else places.written(places.place_of(self._rows[self.limit - 1], WAITING))

    @property
    def _asked(self) -> tuple[UUID, int, Place | None]:
        return self.programme_id, self.limit, self.after

    @cached_property
    def _rows(self) -> list[ToothPlanVersion]:
        return list(
            _waiting_rows(self.programme_id, self.after)
            .annotate(last_decision=_LAST_DECISION)
            .select_related("case__tooth", "case__patient", "case__student", "case__supervisor")
            # One more than is listed tells that there are more, without counting them all.
            .prefetch_related("canal_plans")[: self.limit + 1]
        )


def _shown_waiting(programme_id: UUID, limit: int, after: Place | None) -> QuerySet[ToothPlanVersion, tuple[Any, ...]]:
    return _waiting_rows(programme_id, after).values_list(*SHOWN_WAITING)[: limit + 1]


_SHOWN_WAITING = Prepared(lambda programme_id: _shown_waiting(programme_id, MOST_WAITING, None))


def waiting(
    asker: Asker, programme_id: UUID, now: datetime, *, limit: int | None = None, after: Place | None = None
) -> WaitingPage:
    """The waiting plans of the programme, the riskiest and then the oldest first, of those after a place in `WAITING`
    where one is named. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.SEE_WORKLIST, asker, programme_id)
    return WaitingPage(programme_id, now, limit or MOST_WAITING, after)


def _waiting_rows(programme_id: UUID, after: Place | None) -> QuerySet[ToothPlanVersion]:
    rows: QuerySet[ToothPlanVersion] = ToothPlanVersion.objects.filter(
        programme_id=programme_id, state=PlanState.WAITING
    )
    return (rows if after is None else places.beyond(rows, WAITING, after)).order_by(*WAITING)


_LAST_DECISION = Subquery(
    Review.objects.filter(version__case=OuterRef("case")).order_by("-at", "-asked").values("decision")[:1]
)


@dataclass(frozen=True, slots=True)
class Running:
    """Work that goes on at the chair."""

    row: RunningWork
    names: ToothNames
    case_summary: Mapping[str, Any]
    """`domain.progress.summary.CaseSummary` as it is kept, in JSON data: it is shown as it is."""
    waiting_s: int | None
    """Seconds since a supervisor's sign-off is due; none where none is."""
    step_s: int | None
    """Seconds the present step has been in hand."""


@dataclass(frozen=True)
class RunningPage:
    """The running work of a programme. It is read only when asked for: the tag alone costs much less."""

    programme_id: UUID
    now: datetime
    limit: int
    after: Place | None

    @cached_property
    def tag(self) -> str:
        """Changes with all that is shown, times told in whole minutes."""
        if self.after is None and self.limit == MOST_RUNNING:
            rows = [*_SHOWN_AND_WAITS(self.programme_id), *_SHOWN_AND_GOES_ON(self.programme_id)]
        else:
            rows = [row for part in self._parts for row in _shown(part, self.limit)]
        minutes = [[_whole_minutes(_seconds(since, self.now)) for since in row[:2]] for row in rows]
        return digest(repr([(*waited, *row[2:]) for waited, row in zip(minutes, rows, strict=True)]))

    @property
    def results(self) -> Sequence[Running]:
        return [_running(row, self.now) for row in self._rows[: self.limit]]

    @property
    def next(self) -> str | None:
        """Where the next page goes on; None where this is the last."""
        if len(self._rows) <= self.limit:
            return None
        last = self._rows[self.limit - 1]
        return places.written(places.place_of(last, THAT_GOES_ON if last.waiting_since is None else THAT_WAITS))

    @property
    def _parts(self) -> Sequence[QuerySet[RunningWork]]:
        """Each part is read off an index of its own, in the order that it is shown in."""
        waits, goes_on = _that_waits(self.programme_id), _that_goes_on(self.programme_id)
        if self.after is None:
            return waits, goes_on
        if len(self.after) == len(THAT_WAITS):
            return places.beyond(waits, THAT_WAITS, self.after), goes_on
        return (places.beyond(goes_on, THAT_GOES_ON, self.after),)

    @cached_property
    def _rows(self) -> list[RunningWork]:
        shown = ("case__tooth", "case__patient", "case__student", "on_site", "taken_over")
        rows: list[RunningWork] = []
        for part in self._parts:
            rows += part.select_related(*shown).defer("learned")[: self.limit + 1 - len(rows)]
        return rows


def running(
    asker: Asker, programme_id: UUID, now: datetime, *, limit: int | None = None, after: Place | None = None
) -> RunningPage:
    """The running work of the programme: halted first, what waits longest, then what went on last; of that after a
    place in `THAT_WAITS` or `THAT_GOES_ON` where one is named. Raises NotHere and NotAllowed.
    """
    seen.refuse_unless_may(May.SEE_WORKLIST, asker, programme_id)
    return RunningPage(programme_id, now, limit or MOST_RUNNING, after)


def _that_waits(programme_id: UUID) -> QuerySet[RunningWork]:
    work = RunningWork.objects.filter(programme_id=programme_id, finished=False, waiting_since__isnull=False)
    return work.order_by(*THAT_WAITS)


def _that_goes_on(programme_id: UUID) -> QuerySet[RunningWork]:
    work = RunningWork.objects.filter(programme_id=programme_id, finished=False, waiting_since__isnull=True)
    return work.order_by(*THAT_GOES_ON)


def _shown(work: QuerySet[RunningWork], limit: int) -> QuerySet[RunningWork, tuple[Any, ...]]:
    return work.values_list(*SHOWN_RUNNING)[: limit + 1]


_SHOWN_AND_WAITS = Prepared(lambda programme_id: _shown(_that_waits(programme_id), MOST_RUNNING))
_SHOWN_AND_GOES_ON = Prepared(lambda programme_id: _shown(_that_goes_on(programme_id), MOST_RUNNING))


def _running(row: RunningWork, now: datetime) -> Running:
    return Running(
        row=row,
        names=names_of(row.case.tooth.iso),
        case_summary=json.loads(row.text),
        waiting_s=_seconds(row.waiting_since, now),
        step_s=_seconds(row.step_since, now),
    )


def _seconds(since: datetime | None, now: datetime) -> int | None:
    return None if since is None else max(0, int((now - since).total_seconds()))


def _whole_minutes(seconds: int | None) -> int | None:
    return None if seconds is None else seconds // SECONDS_A_MINUTE


def _waiting(row: ToothPlanVersion, now: datetime) -> Waiting:
    asked_at = row.submitted_at or row.created_at
    return Waiting(
        row=row,
        names=names_of(row.case.tooth.iso),
        asks=_asks(row.last_decision),  # type: ignore[attr-defined]
        waiting_s=max(0, int((now - asked_at).total_seconds())),
        stale=row.case_revision != row.case.revision,
        difficulty=row.difficulty or None,
    )


def _asks(last_decision: str | None) -> Asks:
    if last_decision is None:
        return Asks.FIRST
    return Asks.AFTER_APPROVAL if last_decision == Decision.APPROVED else Asks.AFTER_RETURN
