"""A recorded depth against what was expected; `tests/frontend/bands.test.tsx` answers the same file."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from planning.contract.expected import ExpectedStep, against

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "shared" / "depths-judged.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("case", CASES, ids=[case["says"] for case in CASES])
def test_a_depth_is_judged_by_the_limits_and_not_by_the_band(case: dict[str, Any]) -> None:
    nothing: dict[str, Any] = {"depth_mm": 11.0, "reach_share": None, "removes_mm3": 0.0, "shape": ()}
    step = ExpectedStep(node="a", pass_number=1, instrument="35/.04", **nothing, **case["expected"])
    for depth_mm, felt in case["depths"]:
        assert (None if step.limits_mm is None else against(depth_mm, step.limits_mm)) == felt
