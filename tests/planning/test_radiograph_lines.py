"""Lengths along marks on an image. Arcs by their formula, ellipses by scipy's elliptic integral, the rest by hand."""

from __future__ import annotations

import json
import math
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ellipeinc

from planning.radiograph import bend, line


def arc(radius: float, degrees: float, marks: int) -> line.Marks:
    """Marks on a circle, evenly: down from the origin, bending to the right."""
    turn = np.radians(np.linspace(0, degrees, marks))
    return radius * np.column_stack((1 - np.cos(turn), np.sin(turn)))


@given(st.floats(2, 40), st.floats(5, 90), st.integers(4, 12))
def test_marks_on_a_circle_measure_the_circle(radius: float, degrees: float, marks: int) -> None:
    """Length of an arc = radius times angle; straight pieces between the same marks are always shorter."""
    on_circle = arc(radius, degrees, marks)
    exact = radius * math.radians(degrees)
    straight = sum(math.dist(a, b) for a, b in pairwise(on_circle))
    assert line.length(on_circle) == pytest.approx(exact, rel=1e-9)
    assert straight < exact


def test_marks_on_an_ellipse_measure_the_ellipse() -> None:
    """A curve whose bend changes all along: half axes 12 and 5, a quarter of it (scipy.special.ellipeinc)."""
    turn = np.linspace(0, np.pi / 2, 6)
    marks = np.column_stack((5 * np.cos(turn), 12 * np.sin(turn)))
    # E(phi, m) runs from the minor axis's end; the quarter is the same from either.
    exact = 12 * ellipeinc(np.pi / 2, 1 - (5 / 12) ** 2)
    assert line.length(marks) == pytest.approx(exact, abs=0.015)
    assert sum(math.dist(a, b) for a, b in pairwise(marks)) < exact - 0.05


def test_two_marks_are_a_straight_line_and_so_are_many_on_one() -> None:
    assert line.length(np.array([[0.0, 0.0], [3.0, 4.0]])) == 5
    assert line.length(np.array([[0.0, 0.0], [1.5, 2.0], [3.0, 4.0], [6.0, 8.0]])) == pytest.approx(10)


def test_above_the_orifice_an_instrument_is_straight() -> None:
    """8 mm down to the orifice, then an arc of radius 10 over 40 degrees that begins at an angle of its own."""
    leaning = np.array([[-2.0, -math.sqrt(8**2 - 2**2)]])
    marks = np.vstack((leaning, arc(10, 40, 5)))
    assert line.length(marks, straight_to=1) == pytest.approx(8 + 10 * math.radians(40), abs=1e-9)


@given(st.floats(5, 30), st.floats(10, 80), st.floats(0, 1))
def test_a_place_on_a_circle_lies_on_it(radius: float, degrees: float, share: float) -> None:
    """By the circle's own equation: turned by share times the angle."""
    marks = arc(radius, degrees, 6)
    turn = math.radians(degrees) * share
    place = line.places(marks, np.array([radius * turn]))[0]
    assert place == pytest.approx([radius * (1 - math.cos(turn)), radius * math.sin(turn)], abs=1e-6)


def test_nothing_lies_before_the_first_mark_or_past_the_last() -> None:
    marks = np.array([[0.0, 0.0], [0.0, 10.0]])
    places = line.places(marks, np.array([-0.1, 0.0, 4.0, 10.0, 10.1]))
    assert places[1:4] == pytest.approx(np.array([[0.0, 0.0], [0.0, 4.0], [0.0, 10.0]]))
    assert np.isnan(places[[0, 4]]).all()


SHARED = json.loads((Path(__file__).parents[1] / "shared/marks.json").read_text(encoding="utf-8"))["cases"]


@pytest.mark.parametrize("case", SHARED, ids=lambda case: case["name"])
def test_a_worked_case_that_the_phone_answers_too(case: dict[str, Any]) -> None:
    marks = np.array(case["marks"])
    if "length" in case:
        assert line.length(marks, case["straight_to"]) == pytest.approx(case["length"], abs=1e-5)
    places = line.places(marks, np.array([place["along"] for place in case["places"]]), case["straight_to"])
    for place, at in zip(case["places"], places, strict=True):
        assert np.isnan(at).all() if place["at"] is None else at == pytest.approx(place["at"], abs=1e-5)
    if "axis" in case:
        angle = abs(math.degrees(bend.to_side_rad(marks[: case["axis"]], marks[case["axis"] - 1], marks[-1])))
        assert angle == pytest.approx(case["schneider_deg"], abs=1e-5)
