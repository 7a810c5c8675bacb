"""What a hold point lacks, held against the file of cases that the phone answers too."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from cases.domain.progress.lacking import lacking
from planning.lengths.readings import LengthState
from tests.cases.test_course import SHEETS, course_of, happened

CASES = json.loads((Path(__file__).parents[1] / "shared" / "lacking.json").read_text(encoding="utf-8"))["cases"]


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_what_a_hold_point_lacks(case: dict[str, Any]) -> None:
    sheets = {"MB1": SHEETS["hold"]}
    course = course_of({"plans": {"A": {"MB1": "hold"}}, **case})
    events = [happened(n, event, ["MB1"]) for n, event in enumerate(case["events"], start=1)]
    lacks = lacking("MB1", course.canals["MB1"], LengthState(case["length"]), events, sheets, set(course.undone))
    assert list(lacks) == case["lacking"]
