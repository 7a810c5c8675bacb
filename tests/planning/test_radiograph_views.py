"""Two views of one root. The buccal object rule as textbooks have it; angles in space against a bend drawn in space."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from planning.foundation.errors import ViewsDoNotFit
from planning.foundation.tables import Figures
from planning.radiograph.values import Between
from planning.radiograph.views import Bends, Shift, Side, Views, Way, read


# Textbooks (from memory): what moves the same way as the tube lies lingual, what moves against it buccal.
@pytest.mark.parametrize(
    ("tube", "first_mm", "second_mm", "side"),
    [
        ("mesial", 0.0, 1.2, "lingual"),
        ("mesial", 0.0, -1.2, "buccal"),
        ("distal", 0.0, -1.2, "lingual"),
        ("distal", 0.0, 1.2, "buccal"),
        ("distal", -2.0, -0.5, "buccal"),
        ("mesial", 1.0, 1.1, "cannot_tell"),
    ],
)
def test_the_buccal_object_rule(tube: Way, first_mm: float, second_mm: float, side: Side) -> None:
    views = read(Views(shift=Shift(tube=tube, first_mm=first_mm, second_mm=second_mm)), Figures())
    assert views.one_is == side
    assert views.why


def test_a_root_seen_from_the_side_by_projection() -> None:
    """Two lines in space, one 3 mm nearer the tongue, seen before and after the tube turned 20 degrees to the mesial.

    Parallel beam: a point's place on the image is its part across the beam. x runs mesial, y towards the tongue.
    """
    lingual, other = np.array([0.0, 3.0]), np.array([0.0, 0.0])
    turn = math.radians(20)
    # The tube stands at the cheek and looks towards the tongue; moved to the mesial, it looks distally as well.
    across = np.array([math.cos(turn), math.sin(turn)])
    first, second = (lingual - other)[0], float((lingual - other) @ across)
    views = read(Views(shift=Shift(tube="mesial", first_mm=first, second_mm=second)), Figures())
    assert second == pytest.approx(3 * math.sin(turn))
    assert views.one_is == "lingual"


def test_at_a_right_angle_it_is_the_sum_of_the_squared_tangents() -> None:
    """Published for a clinical and a proximal view: tan² = tan² of the one + tan² of the other."""
    views = read(Views(bends=Bends(first_deg=20, second_deg=30, apart_deg=90)), Figures())
    by_hand = math.degrees(math.atan(math.sqrt(math.tan(math.radians(20)) ** 2 + math.tan(math.radians(30)) ** 2)))
    assert views.in_space_deg == pytest.approx(by_hand, abs=1e-3)


@given(st.floats(-60, 60), st.floats(-60, 60), st.floats(15, 165))
def test_any_two_views_give_the_bend_that_was_drawn(mesial_deg: float, lingual_deg: float, apart_deg: float) -> None:
    """A lean drawn in space, projected on both images, comes back."""
    lean = np.tan(np.radians([mesial_deg, lingual_deg]))
    apart = math.radians(apart_deg)
    seen = [lean[0], lean @ [math.cos(apart), math.sin(apart)]]
    first, second = (math.degrees(math.atan(part)) for part in seen)
    views = read(Views(bends=Bends(first_deg=first, second_deg=second, apart_deg=apart_deg)), Figures())
    assert views.in_space_deg == pytest.approx(math.degrees(math.atan(np.hypot(*lean))), abs=1e-2)


def off_by(deg: float) -> Between:
    """An angle with one standard deviation of so much: 1.96 of them to an interval's end."""
    return Between(value=20, least=20 - 1.96 * deg, most=20 + 1.96 * deg)


@pytest.mark.parametrize(("mesial_deg", "lingual_deg", "apart_deg"), [(20, 25, 90), (30, 10, 40), (12, -18, 30)])
def test_an_angle_in_space_lies_within_its_interval_as_often_as_it_says(
    mesial_deg: float, lingual_deg: float, apart_deg: float
) -> None:
    """Drawn in space, projected, and every number off by chance; the turn by what the figures say."""
    draws, held = 500, 0
    chance = np.random.default_rng(13)
    lean = np.tan(np.radians([mesial_deg, lingual_deg]))
    exact = math.degrees(math.atan(np.hypot(*lean)))
    turn = math.radians(apart_deg)
    seen = [math.degrees(math.atan(part)) for part in (lean[0], lean @ [math.cos(turn), math.sin(turn)])]
    for _ in range(draws):
        bends = Bends(
            first_deg=seen[0] + chance.normal(0, 1),
            second_deg=seen[1] + chance.normal(0, 1.5),
            apart_deg=apart_deg + chance.normal(0, Figures()["views.apart_spread"]),
            first_within=off_by(1),
            second_within=off_by(1.5),
        )
        bend = read(Views(bends=bends), Figures()).in_space
        assert bend is not None
        held += bend.least <= exact <= (bend.most or 0)
    least, most = binom.interval(0.999, draws, 0.95)
    assert least <= held <= most


def test_angles_of_unknown_worth_have_no_interval() -> None:
    bends = Bends(first_deg=20, second_deg=30, apart_deg=90, first_within=off_by(1))
    assert read(Views(bends=bends), Figures()).in_space is None


@pytest.mark.parametrize(
    ("bends", "pointer"),
    [
        (Bends(first_deg=20, second_deg=21, apart_deg=5), "apart_deg"),
        (Bends(first_deg=20, second_deg=-20, apart_deg=178), "apart_deg"),
        (Bends(first_deg=90, second_deg=20, apart_deg=90), "first_deg"),
        (Bends(first_deg=20, second_deg=-95, apart_deg=90), "second_deg"),
        (
            Bends(first_deg=20, second_deg=20, apart_deg=90, first_within=off_by(1), second_within=off_by(-1)),
            "second_within",
        ),
        (
            Bends(first_deg=20, second_deg=20, apart_deg=90, first_within=off_by(50), second_within=off_by(1)),
            "first_within",
        ),
    ],
)
def test_views_that_show_the_same_are_refused(bends: Bends, pointer: str) -> None:
    with pytest.raises(ViewsDoNotFit) as refused:
        read(Views(bends=bends), Figures())
    assert refused.value.pointer == ("bends", pointer)


def test_nothing_given_nothing_told() -> None:
    views = read(Views(), Figures())
    assert (views.one_is, views.in_space_deg) == (None, None)
