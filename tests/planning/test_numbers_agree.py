"""Every two numbers of a plan that tell the same agree, over plans drawn at random. They answer to each other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given

from planning.contract.plan_input import PlanInput
from planning.foundation.encoding import encode
from planning.whole_tooth.plan import plan
from tests.planning.claims import Json, claims, disagreements
from tests.planning.given import block, molar
from tests.planning.test_properties import inputs, over_plans, planned


@over_plans
@given(inputs())
def test_the_same_is_told_the_same_wherever_it_is_told(given_: PlanInput) -> None:
    assert disagreements(claims(encode(planned(replace(given_, samples=2))))) == {}


@pytest.mark.parametrize("given_", [molar(), block()], ids=["the check molar", "a block"])
def test_the_same_of_the_check_cases(given_: PlanInput) -> None:
    every_claim = list(claims(encode(plan(replace(given_, samples=2)))))
    assert disagreements(iter(every_claim)) == {}
    # Each quantity is told somewhere, or nothing was compared.
    quantities = {quantity for (quantity, _), _, _ in every_claim}
    assert quantities >= {
        "stop",
        "needle no deeper than",
        "insertions expected",
        "final size",
        "times that an instrument is taken up",
    }


def _stop(encoded: Json) -> None:
    encoded["stop_table"][0]["stops"][0]["stop_mm"] += 0.5


def _size(encoded: Json) -> None:
    encoded["canals"][0]["final_size"] += 5


def _needle(encoded: Json) -> None:
    for now in encoded["canals"][0]["needle"]["now"]:
        now["at_most_mm"] += 0.5


def _length(encoded: Json) -> None:
    encoded["canals"][2]["length"]["stop_mm"] -= 0.5


def _junction(encoded: Json) -> None:
    encoded["canals"][1]["junction_mm"] -= 0.5


def _path(encoded: Json) -> None:
    encoded["canals"][0]["expectation"]["steps"].pop()


def _tray(encoded: Json) -> None:
    encoded["tray"]["changes"] += 1


def _laid_out(encoded: Json) -> None:
    encoded["tray_list"][0]["canals"].pop()


def _irrigant(encoded: Json) -> None:
    encoded["canals"][0]["irrigants"][0]["volume_ml"] += 1


@pytest.mark.parametrize("breaks", [_stop, _size, _needle, _length, _junction, _path, _tray, _laid_out, _irrigant])
def test_one_number_that_is_told_otherwise_is_found(breaks: Callable[[Json], None]) -> None:
    encoded = encode(plan(replace(molar(), samples=2)))
    breaks(encoded)
    assert len(disagreements(claims(encoded))) == 1
