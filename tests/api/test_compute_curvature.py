"""Curvature over HTTP: what comes back, and what is refused with a pointer."""

from __future__ import annotations

from typing import Any

import pytest

from tests.api.compute import post, problem

AXIS, LEAVES = {"x_mm": 0, "y_mm": 0}, {"x_mm": 0, "y_mm": 10}


def asked(**curve: Any) -> dict[str, Any]:
    return {"curve": {"axis": AXIS, "leaves": LEAVES, "end": {"x_mm": 2, "y_mm": 14}} | curve}


def test_an_angle_and_what_it_is_called() -> None:
    """Schneider's construction by hand: atan(2/4) = 26.565 degrees: severe there, moderate on the society's form."""
    curvature = post("compute/curvature", asked()).json()
    assert curvature["angle_deg"] == 26.565
    assert {each["scheme"]: each["name"] for each in curvature["classes"]}["Schneider"] == "severe"
    assert {each["scheme"]: each["name"] for each in curvature["classes"]}["AAE case difficulty"] == "moderate"
    assert all(each["source"] and each["know"] for each in curvature["classes"])
    assert [arc["by"] for arc in curvature["arcs"]] == ["one_arc"]


@pytest.mark.parametrize(
    ("curve", "pointer"),
    [
        ({"end": LEAVES}, "#/curve/end"),
        ({"end": {"x_mm": 0, "y_mm": 2}}, "#/curve/end"),
        ({"end": {"x_mm": 1e3, "y_mm": -1e3}}, "#/curve/end"),
        ({"on_curve": LEAVES}, "#/curve/on_curve"),
        ({"other_view_deg": 90}, "#/curve/other_view_deg"),
    ],
)
def test_points_that_are_no_canal(curve: dict[str, Any], pointer: str) -> None:
    assert pointer in problem(post("compute/curvature", asked(**curve)), 422, "points-do-not-fit")


def test_a_point_missing() -> None:
    assert "#/curve/end" in problem(
        post("compute/curvature", {"curve": {"axis": AXIS, "leaves": LEAVES}}), 400, "not-understood"
    )


def test_an_instrument_set_to_no_length_is_refused_as_a_length() -> None:
    """Of marks on an image; what is answered is described, which every answer here is held to."""
    marks = {"lines": [{"canal": "P", "points": [], "set_mm": 0}]}
    assert "#/marks/lines/0/set_mm" in problem(post("compute/measure", {"marks": marks}), 422, "length-out-of-bounds")
