"""What the rationales of one canal are made from, and how each is put."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planning.canal.canal import Canal
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan
from planning.contract.rationale import Calculation, Rationale, RationaleInput
from planning.foundation.tables import Figure, Figures
from planning.tray.selection import Selection
from planning.work.canal_plan import PlannedCanal

Entry = tuple[str, float | None, str]
"""Name, value and unit of what went in; left out where there is no value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RationaleContext:
    canal: Canal
    planned: PlannedCanal
    selected: Selection
    figures: Figures

    @property
    def plan(self) -> CanalPlan:
        return self.planned.plan

    @property
    def tooth_iso(self) -> str:
        return self.canal.size_asked.tooth_iso

    @property
    def plan_input(self) -> PlanInput:
        return self.canal.plan_input


def rationale(
    of: str,
    rule: str,
    inputs: Sequence[Entry] = (),
    rows: Sequence[Figure | str] = (),
    *calculations: Calculation,
) -> Rationale:
    keys = (row if isinstance(row, str) else row.key for row in rows)
    return Rationale(
        of=of,
        rule=rule,
        inputs=tuple(
            RationaleInput(name=name, value=value, unit=unit) for name, value, unit in inputs if value is not None
        ),
        # Each row once, in the order of use; a figure that was entered has no row.
        rows=tuple(dict.fromkeys(key for key in keys if key)),
        calculations=calculations,
    )
