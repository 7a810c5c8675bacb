"""What is wrong with a body has one code and one sentence, whoever finds it: the planner or a field of the API."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from cases.api import fields
from cases.api.fields import Strict
from cases.models import Person, Programme
from tests.cast import API, client

TOOTH = {"notation": "iso_3950", "designation": "26"}
CASE: dict[str, Any] = {"patient_alias": "Bench 9", "setting": "extracted", "tooth": TOOTH, "canals": ["P"]}

# Of each fault: a body that the planner reads, one that fields read, where it is in both, its code.
SAME = {
    "left out": ({"notation": "iso_3950"}, {**CASE, "patient_alias": ...}, "missing"),
    "not known": ({**TOOTH, "x": 1}, {**CASE, "x": 1}, "unknown-key"),
    "a number for a text": ({**TOOTH, "designation": 26}, {**CASE, "patient_alias": 26}, "not-text"),
    "too long": ({**TOOTH, "designation": "x" * 2001}, {**CASE, "patient_alias": "x" * 41}, "too-long"),
    "a null byte": ({**TOOTH, "designation": "\x00"}, {**CASE, "patient_alias": "a\x00b"}, "control-characters"),
    "no object": ([], [], "not-an-object"),
    "none of these": ({**TOOTH, "notation": "x"}, {**CASE, "setting": "x"}, "not-of-these"),
}


@pytest.mark.parametrize("fault", SAME)
def test_a_fault_is_the_same_wherever_it_is_found(programme: Programme, priya: Person, fault: str) -> None:
    of_planner, of_fields, code = SAME[fault]
    if isinstance(of_fields, dict):
        of_fields = {name: value for name, value in of_fields.items() if value is not ...}
    browser = client(priya)
    answers = [
        browser.post(f"{API}/compute/tooth", of_planner, format="json"),
        browser.post(f"{API}/programmes/{programme.pk}/cases", of_fields, format="json"),
    ]
    assert [answer.status_code for answer in answers] == [400, 400]
    (planner,), (field,) = (answer.json()["errors"] for answer in answers)
    assert (planner["code"], field["code"]) == (code, code)
    if code not in ("too-long", "not-of-these"):  # those name what each would take
        assert planner["detail"] == field["detail"]


@pytest.mark.parametrize(("sent", "code"), [(None, "missing"), ("", "missing"), ("P", "not-a-list")])
def test_a_list_that_is_none(programme: Programme, priya: Person, sent: object, code: str) -> None:
    body = {**CASE, "canals": sent} if code == "not-a-list" else {**CASE, "patient_alias": sent}
    answer = client(priya).post(f"{API}/programmes/{programme.pk}/cases", body, format="json")
    assert [error["code"] for error in answer.json()["errors"]] == [code]


def every(serializer: type[Strict]) -> Iterator[type[Strict]]:
    for each in serializer.__subclasses__():
        yield each
        yield from every(each)


def test_no_body_has_a_field_that_speaks_in_the_framework_s_words() -> None:
    """Fields of our own have sentences of our own; one of the framework's would tell its own."""
    serializers = [*every(Strict)]
    assert len(serializers) > 15
    for serializer in serializers:
        for name, field in serializer().fields.items():
            own = any(base.__module__ == fields.__name__ for base in type(field).__mro__)
            assert own, (serializer.__name__, name, type(field).__name__)
