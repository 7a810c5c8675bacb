"""Requests of the stateless API, made from the planner's check case."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from rest_framework.test import APIClient

from cases.models.people import Person
from planning.foundation.encoding import encode
from tests.planning.given import molar

ROOT = "/api/v1/"


def signed_in() -> APIClient:
    """A client of somebody signed in. Computing stores nothing, so nobody needs to be in the tables."""
    client = APIClient()
    client.force_authenticate(Person(username="priya"))
    return client


def plan_request(**more: Any) -> dict[str, Any]:
    """The four-canal molar as it is sent."""
    body = encode(molar())
    body["tooth"] = {"notation": "iso_3950", "designation": "26"}
    body["technique"] = "crown-down"
    return deepcopy(body | more)


Answer = Any
"""What the test client returns: a response with `json()` and more, which its types leave out."""


def post(path: str, data: object) -> Answer:
    return signed_in().post(ROOT + path, data, format="json")


def get(path: str) -> Answer:
    """As a stranger."""
    return APIClient().get(ROOT + path)


def problem(answer: Answer, status: int, code: str) -> dict[str, str]:
    """Pointer and sentence of each error, once status, code and media type are as claimed."""
    body = answer.json()
    assert (answer.status_code, body["type"]) == (status, f"/api/v1/problems/{code}"), body
    assert answer["Content-Type"] == "application/problem+json"
    return {error["pointer"]: error["detail"] for error in body["errors"]}
