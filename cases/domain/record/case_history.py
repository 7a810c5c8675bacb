"""What a record is made from: the events in order, the plans they belong to, and who is who."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import EventPayload
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.put_right import PutRight, put_right
from cases.domain.record.values.evidence import ImageRemoval
from cases.domain.record.values.timeline import RecordPerson
from planning.contract.plan_input import Kit
from planning.contract.plan_value import CanalPlan, Plan
from planning.run_sheet.graph import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedEvent:
    """One event with its place, its times and its actor."""

    event: CourseEvent
    position: int
    at: datetime
    device_time: datetime
    who: RecordPerson

    @property
    def kind(self) -> EventKind:
        return self.event.kind

    @property
    def payload(self) -> EventPayload:
        return self.event.payload

    @property
    def canal(self) -> str:
        return self.event.canal


@dataclass(frozen=True, slots=True, kw_only=True)
class Version:
    """One version of the plan, as far as a record needs it."""

    number: int
    hash: str
    plan: Plan
    kit: Kit

    def canal(self, name: str) -> CanalPlan | None:
        return next((each for each in self.plan.canals if each.canal == name), None)

    def step(self, canal: str, node: str) -> Step | None:
        """The step of the canal's order of work; None where this version has none of that name."""
        canal_plan = self.canal(canal)
        step = canal_plan.run_sheet.nodes.get(node) if canal_plan else None
        return step if isinstance(step, Step) else None

    def instrument(self, key: str | None) -> str | None:
        """The name of the kit's instrument with this key; the key itself where the kit has none."""
        return next((each.name for each in self.kit.instruments if each.key == key), key)

    def key(self, called: str) -> str:
        """The key of the kit's instrument with this key or name; what was asked for where the kit has none."""
        return next((each.key for each in self.kit.instruments if called in (each.key, each.name)), called)


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseHistory:
    """Everything that happened in a case. `course` is the fold of the same events; none before an approved plan."""

    facts: tuple[RecordedEvent, ...]
    versions: Mapping[str, Version]
    """By hash, every version that an event or the course names."""
    course: CaseState | None
    people: Mapping[str, RecordPerson]
    removed: Mapping[str, ImageRemoval] = field(default_factory=dict)
    """Images that were removed, by their ids."""

    @property
    def put_right(self) -> PutRight:
        """Which images count where."""
        return put_right(fact.event for fact in self.facts)

    def version(self, fact: RecordedEvent) -> Version:
        """The version that the event was recorded on; the newest one where that is not here."""
        return self.versions.get(fact.event.plan) or max(self.versions.values(), key=lambda each: each.number)

    def step(self, fact: RecordedEvent) -> Step | None:
        """The step of the order of work that a fact was recorded at."""
        return self.version(fact).step(fact.canal, fact.event.node)

    def undone(self, fact: RecordedEvent) -> bool:
        return self.course is not None and fact.event.id in self.course.undone

    def in_course(self, fact: RecordedEvent) -> bool:
        return self.course is not None and not self.undone(fact) and fact.event.id not in self.course.out_of_course

    @property
    def counting(self) -> tuple[RecordedEvent, ...]:
        """What happened: all events but those that were taken back, and the undos. One out of course did happen."""
        return tuple(fact for fact in self.facts if fact.kind is not EventKind.UNDO and not self.undone(fact))
