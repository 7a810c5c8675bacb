"""What the rationales of one canal are made from, and how each is put."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planning.canal.canal import Canal
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan, Rationale, RationaleInput
from planning.foundation.tables import Figure, Figures

Entry = tuple[str, float | None, str]
"""Name, value and unit of what went in; left out where there is no value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RationaleContext:
    canal: Canal
    plan: CanalPlan
    tooth_iso: str
    figures: Figures

    @property
    def plan_input(self) -> PlanInput:
        return self.canal.plan_input


def rationale(of: str, rule: str, inputs: Sequence[Entry] = (), rows: Sequence[Figure | str] = ()) -> Rationale:
    keys = (row if isinstance(row, str) else row.key for row in rows)
    return Rationale(
        of=of,
        rule=rule,
        inputs=tuple(
            RationaleInput(name=name, value=value, unit=unit) for name, value, unit in inputs if value is not None
        ),
        # Each row once, in the order of use; a figure that was entered has no row.
        rows=tuple(dict.fromkeys(key for key in keys if key)),
    )
