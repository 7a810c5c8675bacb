"""Records of drawn courses: what happened is drawn in memory, all else is a case that lies in the database."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from types import SimpleNamespace
from typing import Any, cast

from cases.domain.access.roles import Role
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.values.record import Record
from cases.domain.record.values.timeline import RecordPerson
from cases.mapping.plans import plan_of
from cases.models import ToothPlanVersion
from cases.queries.record import _Made
from planning.techniques.technique import Setting
from tests.walkers.drawn import STUDENT, Drawn, Luck, dice

NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)


def drawn_history(version: ToothPlanVersion, seed: str, luck: Luck, count: int) -> CaseHistory:
    """A course of the version's plan, an entry a minute."""
    plan = plan_of(version)
    sheets = {version.hash: {canal.canal: canal.run_sheet for canal in plan.canals}}
    drawn = Drawn(sheets, Setting(plan.setting), dice(seed), luck)
    drawn.draw(count)
    facts = tuple(
        RecordedEvent(
            event=event,
            position=number,
            at=NOON + timedelta(minutes=number),
            device_time=NOON,
            who=RecordPerson(
                id=event.actor,
                name=event.actor.capitalize(),
                role=Role.STUDENT if event.actor == STUDENT else Role.SUPERVISOR,
            ),
        )
        for number, event in enumerate(drawn.events, 1)
    )
    versions = _Made(version.case_id).history.versions
    return CaseHistory(facts=facts, versions=versions, course=drawn.course(), people={})


def record_of(version: ToothPlanVersion, history: CaseHistory) -> Record:
    """The record of the version's case as if this had happened in it."""
    made = _Made(version.case_id)
    made.history = history
    rows = [SimpleNamespace(position=fact.position, server_time=fact.at) for fact in history.facts]
    made.rows = cast(Any, rows)
    return made.record()
