"""Versions as what they were made from and what the planner said."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import lru_cache

from cases.models.plans import ToothPlanVersion
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import Mode, decode
from planning.foundation.tables import published

# Each takes about 1.5 MB with its text.
PLANS_KEPT = 32


def plan_input_of(version: ToothPlanVersion) -> PlanInput:
    """What the version was made from. A programme's value for a figure that there is no more is left out."""
    read = decode(PlanInput, json.loads(version.input_text), Mode.KEPT)
    return replace(read, thresholds={key: read.thresholds[key] for key in read.thresholds if key in published()})


def plan_of(version: ToothPlanVersion) -> Plan:
    """What the planner said."""
    return _plan_in(version.output_text)


@lru_cache(PLANS_KEPT)
def _plan_in(text: str) -> Plan:
    """A frozen value; one approval reads its plan four times."""
    return decode(Plan, json.loads(text), Mode.KEPT)
