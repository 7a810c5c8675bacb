"""The first size to bind, recorded or felt: gauged after coronal flaring; what was loose before does not count."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.canal.gauging import first_binder, loosened
from planning.contract.plan_input import CanalInput, Choices, PlanInput, RecordedDepth
from planning.techniques.technique import Phase, PhaseKind
from tests.planning.given import OPEN_30, four_canals, molar, technique

END_UM = 19_500


def given(*felt: tuple[str, float], glide_path_to: int | None = None, **more: Any) -> PlanInput:
    """Crown-down with a phase in which hand sizes are gauged after flaring."""
    crown_down = technique("crown-down")
    flare = next(n for n, phase in enumerate(crown_down.phases) if phase.kind is PhaseKind.FLARE)
    gauge = Phase(key="gauging", title="Gauging", kind=PhaseKind.TO_LENGTH, from_size=15, to_size=40, why="How wide?")
    phases = (*crown_down.phases[: flare + 1], gauge, *crown_down.phases[flare + 1 :])
    recorded = tuple(RecordedDepth(node=node, depth_mm=depth) for node, depth in felt)
    canals = (replace(four_canals()[0], felt=recorded, **more), *four_canals()[1:])
    choices = Choices(needle=OPEN_30, glide_path_to_size=glide_path_to)
    return molar(technique=replace(crown_down, phases=phases), canals=canals, choices=choices)


def test_the_smallest_that_stops_short_after_flaring() -> None:
    felt = (("gauging/15-02", 19.5), ("gauging/20-02", 19.0), ("gauging/25-02", 18.0))
    assert first_binder(given(*felt, glide_path_to=10), 0, END_UM) == 20


def test_a_size_that_was_loose_before_cannot_be_it() -> None:
    """The glide path went to 20: the first to bind is 25 or more."""
    gauged = given(("gauging/20-02", 19.0), ("gauging/25-02", 18.0))
    assert loosened(gauged) == 20
    assert first_binder(gauged, 0, END_UM) == 25


def test_what_stops_short_before_flaring_or_once_the_series_was_at_work_does_not_count() -> None:
    assert first_binder(given(("glide-path/25-02", 18.0), ("confirm/30-02", 19.0)), 0, END_UM) is None


def test_an_engine_instrument_does_not_gauge() -> None:
    assert first_binder(given(("gauging/25-04", 18.0)), 0, END_UM) is None


def test_without_a_length_nothing_is_short_of_it() -> None:
    assert first_binder(given(("gauging/25-02", 18.0)), 0, None) is None


def test_what_a_person_recorded_goes_before() -> None:
    assert first_binder(given(("gauging/25-02", 18.0), first_binder_size=30), 0, END_UM) == 30


@pytest.mark.parametrize("key", ["step-back"])
def test_a_technique_without_flaring_gauges_nothing(key: str) -> None:
    plain = molar(technique=technique(key))
    assert loosened(plain) is None
    assert first_binder(plain, 0, END_UM) is None


def test_what_was_gauged_and_not_held_is_narrower_than_the_canal() -> None:
    """25 and 30 went to the end: 35 is the smallest that can be the first to bind."""
    plain = molar(canals=(with_felt(("first-binder/25-02", 19.5), ("first-binder/30-02", 19.5)), *four_canals()[1:]))
    assert first_binder(plain, 0, END_UM) == 35
    held = molar(canals=(with_felt(("first-binder/25-02", 19.5), ("first-binder/30-02", 18.5)), *four_canals()[1:]))
    assert first_binder(held, 0, END_UM) == 30


def test_what_was_worked_to_length_says_nothing() -> None:
    assert first_binder(given(("gauging/25-02", 19.5)), 0, END_UM) is None


def with_felt(*felt: tuple[str, float]) -> CanalInput:
    return replace(four_canals()[0], felt=tuple(RecordedDepth(node=node, depth_mm=depth) for node, depth in felt))
