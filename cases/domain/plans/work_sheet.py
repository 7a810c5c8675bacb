"""What is printed before the work begins: a plan, whose it is, and whether it is approved."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from planning.contract.plan_value import Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkSheet:
    """One version of a plan as it is printed."""

    case_id: str
    patient_alias: str
    programme: str
    invented: bool
    """The programme is a demonstration."""
    student: str
    supervisor: str
    """Empty where none is named."""
    number: int
    hash: str
    made_at: datetime
    approved: bool
    """The work may go by it."""
    approval: str
    """Who approved it and when; where it is not approved, why not and what to do."""
    not_released: tuple[str, ...]
    """Canals that the approval leaves out."""
    plan: Plan
