"""Plans as the record has them: versions and decisions on them, cautions and overrides."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.own_lengths import OwnLength
from cases.domain.record.values.timeline import RecordPerson
from planning.contract.plan_value import Severity


@dataclass(frozen=True, slots=True, kw_only=True)
class AcknowledgedRecord:
    """What must be put right and was acknowledged by its name when the plan was approved."""

    code: str
    canal: str | None
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionRecord:
    """A supervisor's decision on a version of the plan."""

    decision: Decision
    who: RecordPerson
    at: datetime
    note: str
    acknowledged: tuple[AcknowledgedRecord, ...] = ()
    own_lengths: tuple[OwnLength, ...] = ()
    """What the supervisor measured beside the plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VersionRecord:
    """A version of the plan that was decided on or worked from."""

    number: int
    hash: str
    technique: str
    kit: str
    author: RecordPerson
    at: datetime
    state: PlanState
    """Where it stands now."""
    decisions: tuple[DecisionRecord, ...]


class CautionEnd(StrEnum):
    STANDS = "stands"
    """The plan that stands still has it, and nobody let it pass."""
    OVERRIDDEN = "overridden"
    """A supervisor let the work go on in spite of it, with a reason."""
    GONE = "gone"
    """A later version of the plan no longer has it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionRecord:
    """What a plan warned of, and how that ended."""

    code: str
    severity: Severity
    canal: str | None
    says: str
    version: int
    """The last version that has it."""
    settled: CautionEnd


@dataclass(frozen=True, slots=True, kw_only=True)
class OverrideRecord:
    """What a supervisor let pass; taking it back is added, not erased."""

    code: str
    canal: str | None
    reason: str
    final_size: int | None
    """What the supervisor chose for a wide canal."""
    who: RecordPerson
    at: datetime
    withdrawn_by: RecordPerson | None
    withdrawn_at: datetime | None
