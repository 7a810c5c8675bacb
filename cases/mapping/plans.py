"""Versions as what they were made from and what the planner said."""

from __future__ import annotations

import json
from dataclasses import replace

from cases.mapping.recent import Recent
from cases.models.plans import ToothPlanVersion
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import Mode, decode
from planning.foundation.tables import published

# By the version's hash, which is over both texts. A plan takes about 1.5 MB, what it was made from a tenth of that.
_inputs: Recent[str, PlanInput] = Recent(32)
_plans: Recent[str, Plan] = Recent(32)


def plan_input_of(version: ToothPlanVersion) -> PlanInput:
    """What the version was made from. A programme's value for a figure that there is no more is left out."""
    return _inputs.of(version.hash, lambda: _input_in(version.input_text))


def plan_of(version: ToothPlanVersion) -> Plan:
    """What the planner said. A frozen value; one approval reads its plan four times."""
    return _plans.of(version.hash, lambda: decode(Plan, json.loads(version.output_text), Mode.KEPT))


def _input_in(text: str) -> PlanInput:
    read = decode(PlanInput, json.loads(text), Mode.KEPT)
    return replace(read, thresholds={key: read.thresholds[key] for key in read.thresholds if key in published()})
