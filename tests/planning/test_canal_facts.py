"""A fact of a canal is declared once. What reads the declaration is held against the dataclass itself."""

from __future__ import annotations

from dataclasses import fields

import pytest

from planning.contract.canal_facts import CanalFacts, FactNumber, WallInput, as_charted, fact_numbers
from planning.contract.plan_input import CanalInput, Choices
from planning.foundation.bounds import noted, of_fields
from planning.foundation.encoding import json_schema
from planning.foundation.facts import Fact
from planning.lengths.readings import ApexLocator
from planning.techniques.technique import Technique

NUMBERS = list(fact_numbers())


def test_every_field_says_what_people_call_it() -> None:
    for type_ in (CanalFacts, WallInput):
        assert [field.name for field in fields(type_)] == list(noted(type_, Fact))


def test_a_form_asks_for_every_number_also_for_those_within_a_fact() -> None:
    asked = {number.path for number in NUMBERS}
    assert asked == {(name,) for name in of_fields(CanalFacts)} | {("wall", name) for name in of_fields(WallInput)}


@pytest.mark.parametrize("number", NUMBERS, ids=lambda number: ".".join(number.path))
def test_a_form_can_step_it_from_where_it_begins(number: FactNumber) -> None:
    bound = number.bound
    assert bound.step is not None
    assert bound.begins is not None
    assert bound.holds(bound.begins)
    assert bound.kept(bound.step) == bound.step
    assert not bound.whole or float(bound.step).is_integer()


def test_two_numbers_are_never_called_alike() -> None:
    assert len({number.label for number in NUMBERS}) == len(NUMBERS)


def test_numbers_are_kept_as_finely_as_they_are_measured() -> None:
    """Hundredths of a millimetre and tenths of a degree: a rule of this program."""
    facts = {"orifice_mm": 8.504, "curvature_deg": 22.04, "first_binder_size": 20, "apex_mm": None, "name": "MB"}
    assert as_charted(facts) == {**facts, "orifice_mm": 8.5, "curvature_deg": 22.0}


@pytest.mark.parametrize("type_", [CanalInput, ApexLocator, Choices, Technique])
def test_the_description_calls_a_field_as_people_do(type_: type) -> None:
    described = json_schema(type_)["$defs"][f"{type_.__name__}Request"]["properties"]
    labels = {name: fact.label for name, fact in noted(type_, Fact).items()}
    assert len(labels) > 3
    assert {name: field["title"] for name, field in described.items() if "title" in field} == labels


def test_what_is_planned_from_is_described_in_the_same_words() -> None:
    charted, planned = (json_schema(type_)["$defs"] for type_ in (CanalFacts, CanalInput))
    facts = charted["CanalFactsRequest"]["properties"]
    again = planned["CanalInputRequest"]["properties"]
    described = {name for name in facts if "description" in facts[name]}
    assert "orifice_mm" in described
    assert {name: again[name]["description"] for name in described} == {
        name: facts[name]["description"] for name in described
    }
