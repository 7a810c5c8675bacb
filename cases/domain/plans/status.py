"""Where the plan of a case stands, derived from its versions and the case's revision. One function says it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from cases.domain.plans.lifecycle import PlanState


class PlanStatusState(StrEnum):
    NONE = "none"
    """Not planned yet."""
    DRAFT = "draft"
    WAITING = "waiting"
    APPROVED = "approved"
    RETURNED = "returned"
    REVOKED = "revoked"
    """Its approval was withdrawn: work halts until a plan is approved again."""
    APPROVAL_VOID = "approval_void"
    """A version was approved, and the plan or the case has changed since: it must be asked for again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VersionFacts:
    number: int
    state: PlanState
    case_revision: int
    was_approved: bool
    """A supervisor approved it at some time."""
    not_released: tuple[str, ...] = ()
    """Canals that the approval leaves out."""
    carried_from: int | None = None
    """The version whose approval holds for this one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanStatus:
    """Where the plan of a case stands."""

    state: PlanStatusState
    number: int | None
    """The version that stands."""
    stale: bool
    """The case has changed since that version was made."""
    approved_number: int | None
    """The last version that was approved, whether or not the approval still counts."""
    says: str
    do: str
    """What to do next; empty where nothing is due."""


def status(versions: Sequence[VersionFacts], case_revision: int) -> PlanStatus:
    """Where a case's plan stands. At most one of the versions is not superseded."""
    current = next((each for each in versions if each.state is not PlanState.SUPERSEDED), None)
    approved = max((each.number for each in versions if each.was_approved), default=None)
    if current is None:
        return PlanStatus(
            state=PlanStatusState.NONE,
            number=None,
            stale=False,
            approved_number=approved,
            says="Not planned yet.",
            do="",
        )
    stale = current.case_revision != case_revision
    state = _state(current, approved, stale)
    says, do = _sentences(state, current.number, approved, stale)
    if state is PlanStatusState.APPROVED and current.carried_from is not None:
        says = f"Plan {current.number} goes by the approval of plan {current.carried_from}: only lengths have moved."
    if state is PlanStatusState.APPROVED and current.not_released:
        says = f"Plan {current.number} is approved, but not {' and '.join(current.not_released)}."
        do = "Read the remarks, change the plan, submit the new one. The other canals go on."
    return PlanStatus(state=state, number=current.number, stale=stale, approved_number=approved, says=says, do=do)


def _state(current: VersionFacts, approved: int | None, stale: bool) -> PlanStatusState:
    if current.state is PlanState.APPROVED:
        return PlanStatusState.APPROVAL_VOID if stale else PlanStatusState.APPROVED
    # A draft in the place of a version that was approved: that approval is not for it.
    if current.state is PlanState.DRAFT and approved is not None:
        return PlanStatusState.APPROVAL_VOID
    return PlanStatusState(current.state.value)


def _sentences(state: PlanStatusState, number: int, approved: int | None, stale: bool) -> tuple[str, str]:
    again = "Plan it again and submit the new plan."
    if state is PlanStatusState.APPROVAL_VOID:
        what = "the case" if approved == number and stale else "the plan"
        says = f"Plan {approved} was approved, and {what} has changed since: the approval no longer counts."
        return says, again if stale else f"Submit plan {number}."
    if stale:
        return f"The case has changed since plan {number} was made.", again
    return {
        PlanStatusState.DRAFT: (f"Plan {number} has not been submitted.", "Submit it."),
        PlanStatusState.WAITING: (f"Plan {number} waits for a supervisor.", ""),
        PlanStatusState.RETURNED: (f"Plan {number} was returned.", "Read the remarks, change the plan, submit it."),
        PlanStatusState.REVOKED: (
            f"The approval of plan {number} was withdrawn.",
            "Read the reason, change the plan if need be, submit it.",
        ),
        PlanStatusState.APPROVED: (f"Plan {number} is approved.", ""),
    }[state]
