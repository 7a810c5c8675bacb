"""Every code that is answered is explained at the address that the problem names as its type."""

from __future__ import annotations

import pytest
from rest_framework.test import APIClient

from cases.api import problems
from cases.api.problem_codes import NEVER_ANSWERED, problem_codes
from cases.api.v1 import urls
from frontend.server.front import door
from planning.foundation.encoding import SENTENCES
from planning.foundation.errors import Refusal
from tests.cast import API, problem

assert urls.urlpatterns  # the fields of all bodies are known once the views are


def kinds(kind: type[Refusal] = Refusal) -> list[type[Refusal]]:
    return [kind, *(each for below in kind.__subclasses__() for each in kinds(below))]


@pytest.mark.parametrize("kind", [kind for kind in kinds() if kind not in NEVER_ANSWERED])
def test_every_refusal_is_explained(kind: type[Refusal]) -> None:
    explained = problem_codes()[kind.code]
    assert problems.status_of(kind) in explained.statuses
    assert explained.within is None
    for sentence in (explained.meaning, explained.remedy):
        assert sentence.endswith("."), kind
        assert "{" not in sentence, kind


def test_what_never_reaches_a_rule_is_explained_too() -> None:
    assert {*SENTENCES} <= problem_codes().keys()
    # By RFC 9110 and RFC 6585 (429), as the door and the framework answer them.
    assert {code: status.value for status, code, _ in door.REFUSALS.values()} == {
        "body-too-long": 413,
        "body-too-slow": 408,
        "busy": 503,
        "took-too-long": 503,
        "too-often": 429,
    }
    for status, code, _ in door.REFUSALS.values():
        assert problem_codes()[code].statuses == (status.value,)
    for status, (code, _) in problems._SAID.items():
        assert status in problem_codes()[code].statuses


def test_the_type_of_a_problem_is_an_address_that_explains_it(db: None) -> None:
    """RFC 9457, 3.1.1: the type is an address, and what lies there is for people."""
    stranger = APIClient()
    refused = stranger.get(f"{API}/keys").json()
    explained = stranger.get(refused["type"])
    assert explained.status_code == 200
    assert explained.json() == {
        "code": "not-authenticated",
        "statuses": [refused["status"]],
        "meaning": "Nobody is signed in.",
        "remedy": "Sign in, or send a key, and go on.",
        "within": None,
    }


def test_all_are_listed_and_what_is_none_is_not_there(db: None) -> None:
    stranger = APIClient()
    listed = stranger.get(f"{API}/problems").json()["results"]
    assert [each["code"] for each in listed] == sorted(problem_codes())
    for each in listed:
        assert stranger.get(f"{API}/problems/{each['code']}").json() == each
    problem(stranger.get(f"{API}/problems/no-such-code"), 404, "not-found")


def test_a_fault_of_one_place_says_so() -> None:
    for code in ("missing", "not-an-id", "not-a-moment", "not-a-code", "twice", "too-few"):
        assert problem_codes()[code].within == "not-understood"
    # A number may be refused by its row of bounds, or as one place of several.
    assert problem_codes()["out-of-bounds"].statuses == (400, 422)
