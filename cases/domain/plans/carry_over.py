"""Whether a supervisor's approval of one plan holds for the one made after it."""

from __future__ import annotations

from cases.domain.plans.differences import differences
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan, Severity
from planning.foundation.quantities import um
from planning.foundation.tables import Figures
from planning.lengths.readings import LengthState

SIGNED_FOR = frozenset({LengthState.SETTLED, LengthState.TO_SETTLE})
"""States between which a length may change: with either, a supervisor still signs it off at its own hold point."""
SIGNED_APART = frozenset({"CanalInput.readings", "CanalInput.felt", "CanalInput.progress", "Instrument.uses"})
"""What the approval does not rest on: lengths have a sign-off of their own, the rest is counted during the work."""


def carries_over(before: PlanInput, approved: Plan, after: PlanInput, made: Plan) -> bool:
    """Whether the approval holds: only the progress of the work has changed, and lengths by no more than the programme
    lets pass.

    Lengths are signed off on their own. A final size that moved with them, or anything new that stops the work, asks
    for the plan to be approved anew.
    """
    return (
        all(any(step.field in SIGNED_APART for step in difference.steps) for difference in differences(before, after))
        and [canal.final_size for canal in approved.canals] == [canal.final_size for canal in made.canals]
        and _stops(made) <= _stops(approved)
        and _near(approved, made, um(Figures(after.thresholds)["replan.length_within"]))
    )


def _stops(plan: Plan) -> set[tuple[str, str | None]]:
    stops = [caution for caution in plan.cautions if caution.severity is Severity.STOP and caution.overridden is None]
    return {(caution.code, caution.canal) for caution in stops}


def _near(approved: Plan, made: Plan, within_um: int) -> bool:
    # The canals are the same ones in the same order: anything else would be a difference of the inputs.
    for old, new in zip(approved.canals, made.canals, strict=True):
        was_mm, now_mm = old.length.working_length_mm, new.length.working_length_mm
        if (was_mm, old.length.state) == (now_mm, new.length.state):
            continue
        if was_mm is None or now_mm is None or new.length.state not in SIGNED_FOR:
            return False
        if abs(um(now_mm) - um(was_mm)) > within_um:
            return False
    return True
