"""Platforms of courses are registered by their programme's coordinator."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import ChangeLog, LtiPlatform, Person, Programme
from tests.cast import API, client, problem
from tests.factories import PASSWORD

GIVEN = {
    "name": "Courses",
    "issuer": "https://courses.example",
    "client_id": "fourth-canal-1",
    "deployment_ids": ["1", "2", "1"],
    "login_address": "https://courses.example/authorize",
    "token_address": "https://courses.example/token",
    "key_set_address": "https://courses.example/keys",
    "password": PASSWORD,
}


@pytest.fixture
def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/lti-platforms"


def test_a_platform_is_registered_changed_and_switched_off(rosa: Person, at: str) -> None:
    made = client(rosa).post(at, GIVEN)
    assert made.status_code == 201, made.json()
    shown = made.json()
    assert (shown["deployment_ids"], shown["active"], shown["teachers_supervise"]) == (["1", "2"], True, False)
    assert PASSWORD not in str(shown)
    assert client(rosa).get(at).json()["results"] == [shown]
    changed = client(rosa).put(f"{at}/{shown['id']}", {**GIVEN, "active": False, "teachers_supervise": True})
    assert (changed.json()["active"], changed.json()["teachers_supervise"]) == (False, True)
    verbs = ChangeLog.objects.filter(subject="LtiPlatform").order_by("pk").values_list("verb", flat=True)
    assert list(verbs) == ["register", "change"]


def test_only_the_coordinator_keeps_platforms_and_says_who_they_are(
    rosa: Person, vale: Person, priya: Person, stranger: Person, at: str
) -> None:
    problem(client(rosa).post(at, {**GIVEN, "password": "not-mine"}), 422, "password-wrong")
    shown = client(rosa).post(at, GIVEN).json()
    for other in (vale, priya):
        problem(client(other).get(at), 403, "not-allowed")
        problem(client(other).post(at, GIVEN), 403, "not-allowed")
        problem(client(other).put(f"{at}/{shown['id']}", GIVEN), 403, "not-allowed")
    problem(client(stranger).get(at), 404, "not-found")
    problem(client(stranger).put(f"{at}/{shown['id']}", GIVEN), 404, "not-found")


def test_a_client_of_an_issuer_is_registered_once(rosa: Person, at: str) -> None:
    assert client(rosa).post(at, GIVEN).status_code == 201
    problem(client(rosa).post(at, GIVEN), 409, "taken-already")
    other = client(rosa).post(at, {**GIVEN, "client_id": "fourth-canal-2"}).json()
    problem(client(rosa).put(f"{at}/{other['id']}", GIVEN), 409, "taken-already")
    assert LtiPlatform.objects.count() == 2


@pytest.mark.parametrize("field", ["login_address", "token_address", "key_set_address"])
@pytest.mark.parametrize(
    "address",
    [
        "http://courses.example/keys",
        "https://10.0.0.1/keys",
        "https://0x7f.1/keys",
        "https://[::1]/keys",
        "https://courses.lan/keys",
        "https://name@courses.example/keys",
        "ftp://courses.example/keys",
        "no address",
    ],
)
def test_no_address_leads_inside_or_goes_in_clear(rosa: Person, at: str, field: str, address: str) -> None:
    refused = client(rosa).post(at, {**GIVEN, field: address})
    assert list(problem(refused, 422, "not-usable")) == [f"#/{field}"]
    assert not LtiPlatform.objects.exists()


@pytest.mark.parametrize(
    "wrong", [{"deployment_ids": []}, {"deployment_ids": ["x"] * 21}, {"issuer": ""}, {"client_id": "x" * 256}]
)
def test_what_a_platform_is_has_its_limits(rosa: Person, at: str, wrong: dict[str, Any]) -> None:
    assert client(rosa).post(at, {**GIVEN, **wrong}).status_code == 400
