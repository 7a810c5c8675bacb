"""A fact of a tooth is declared once. What reads the declaration is held against the dataclass itself."""

from __future__ import annotations

from dataclasses import fields
from typing import get_type_hints

from planning.contract.plan_input import PlanInput
from planning.contract.tooth_facts import AskedIn, ToothFacts
from planning.foundation.bounds import noted
from planning.foundation.encoding import json_schema
from planning.foundation.facts import Fact
from planning.techniques.technique import Setting


def test_every_field_says_what_people_call_it() -> None:
    assert [field.name for field in fields(ToothFacts)] == list(noted(ToothFacts, Fact))


def test_a_form_knows_where_to_ask_for_each_yes_or_no() -> None:
    asked = noted(ToothFacts, AskedIn)
    assert list(asked) == [name for name, type_ in get_type_hints(ToothFacts).items() if type_ is bool]
    assert all(asked.values())


def test_of_a_block_nothing_is_asked_that_only_a_tooth_can_have() -> None:
    """Common practice, no source: a dam is on a patient, and no block of resin was ever filled."""
    asked = {name: set(each.settings) for name, each in noted(ToothFacts, AskedIn).items()}
    assert asked["isolated"] == {Setting.CLINIC}
    assert asked["root_filled"] == asked["perforation"] == {Setting.CLINIC, Setting.EXTRACTED}


def test_what_is_planned_from_is_described_in_the_same_words() -> None:
    facts = json_schema(ToothFacts)["$defs"]["ToothFactsRequest"]["properties"]
    planned = json_schema(PlanInput)["$defs"]["PlanInputRequest"]["properties"]
    assert "factors" in facts
    assert {name: planned[name] for name in facts} == facts
