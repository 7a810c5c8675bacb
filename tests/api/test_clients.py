"""A coordinator registers clients of OAuth 2; their secret is shown once."""

from __future__ import annotations

from io import StringIO
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from oauth2_provider.models import AccessToken

from cases.domain.access import key_text
from cases.models import ChangeLog, Client, Person, Programme
from cases.services.people import issued_tokens
from cases.services.people.clients import MOST_CLIENTS
from tests.cast import API, client, problem
from tests.factories import PASSWORD
from tests.keys import program
from tests.oauth import BACK, allowed, for_itself, for_people, session, token_for_itself

ASKED = {
    "name": "Course diary",
    "acts_for": "people",
    "client_type": "public",
    "scopes": ["cases:read"],
    "redirect_uris": [BACK],
    "password": PASSWORD,
}
FOR_ITSELF = {"acts_for": "itself", "client_type": "confidential", "redirect_uris": []}


def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/clients"


def test_a_secret_is_shown_once_and_kept_as_a_hash(rosa: Person, programme: Programme) -> None:
    answer = client(rosa).post(at(programme), ASKED | {"client_type": "confidential"})
    assert answer.status_code == 201, answer.json()
    secret = answer.json()["client_secret"]
    row = Client.objects.get()
    assert row.client_secret == key_text.hash_of(secret)
    assert secret not in str(vars(row)) + str(list(ChangeLog.objects.values()))
    (listed,) = client(rosa).get(at(programme)).json()["results"]
    assert listed == answer.json()["client"]
    assert (listed["id"], listed["redirect_uris"], listed["made_by"]["name"]) == (row.client_id, [BACK], "Rosa")
    assert secret not in str(listed)


def test_a_public_client_has_none(rosa: Person, programme: Programme) -> None:
    assert client(rosa).post(at(programme), ASKED).json()["client_secret"] is None


@pytest.mark.parametrize(
    ("other", "pointer"),
    [
        (FOR_ITSELF | {"scopes": ["cases:read", "reviews:write"]}, "#/scopes"),
        (FOR_ITSELF | {"client_type": "public"}, "#/client_type"),
        (FOR_ITSELF | {"redirect_uris": [BACK]}, "#/redirect_uris"),
        ({"redirect_uris": []}, "#/redirect_uris"),
        ({"scopes": []}, "#/scopes"),
        ({"name": " "}, "#/name"),
        ({"password": "wrong"}, "#/password"),
    ],
)
def test_what_cannot_be_is_refused(rosa: Person, programme: Programme, other: dict[str, Any], pointer: str) -> None:
    answer = client(rosa).post(at(programme), ASKED | other)
    assert answer.status_code in (400, 422)
    assert [each["pointer"] for each in answer.json()["errors"]] == [pointer]
    assert not Client.objects.exists()


@pytest.mark.parametrize(
    "address",
    [
        "http://diary.example/back",
        "http://localhost/back",
        "http://127.0.0.1.diary.example/back",
        "https://diary.example/back#part",
        "https://someone@diary.example/back",
        "https://*.diary.example/back",
        "https://",
        "https:diary.example",
        "diary://back",
        "javascript:alert(1)",
        "https://diary.example/ back",
        "https://diary.example:no/back",
        f"https://diary.example/{'x' * 500}",
    ],
)
def test_an_address_that_a_code_must_not_go_to_is_refused(rosa: Person, programme: Programme, address: str) -> None:
    """RFC 9700, 2.1 and 4.1; RFC 8252, 7.3 and 8.3."""
    answer = client(rosa).post(at(programme), ASKED | {"redirect_uris": [BACK, address]})
    assert "#/redirect_uris/1" in problem(answer, 422, "not-usable")


def test_a_coordinator_alone_keeps_them(
    rosa: Person, vale: Person, priya: Person, stranger: Person, programme: Programme
) -> None:
    made = for_people(rosa)
    for person, status in ((vale, 403), (priya, 403), (stranger, 404)):
        assert client(person).get(at(programme)).status_code == status
        assert client(person).post(at(programme), ASKED).status_code == status
        assert client(person).delete(f"{at(programme)}/{made.row.pk}").status_code == status
    assert Client.objects.count() == 1


def test_one_that_is_revoked_is_gone_with_all_that_people_allowed(
    rosa: Person, priya: Person, programme: Programme
) -> None:
    made = for_people(rosa)
    token = allowed(session(made), priya)
    assert client(rosa).delete(f"{at(programme)}/{made.row.pk}").status_code == 204
    problem(program(token["access_token"]).get(f"{API}/key"), 401, "key-refused")
    assert client(rosa).get(at(programme)).json()["results"] == []
    assert client(priya).get(f"{API}/consents").json()["results"] == []
    problem(client(rosa).delete(f"{at(programme)}/{made.row.pk}"), 404, "not-found")


def test_there_are_only_so_many(rosa: Person, programme: Programme) -> None:
    for number in range(MOST_CLIENTS):
        for_itself(rosa, name=f"System {number}")
    problem(client(rosa).post(at(programme), ASKED), 409, "conflict")


def run(*words: str) -> list[str]:
    said = StringIO()
    call_command("client", *words, stdout=said)
    return said.getvalue().split()


def test_whoever_runs_the_server_registers_one_too(rosa: Person) -> None:
    id_, secret = run("Timetable", "--by", "rosa", "--acts-for", "itself", "--scopes", "cases:read")
    row = Client.objects.get(client_id=id_)
    assert (row.made_by, row.client_secret) == (rosa, key_text.hash_of(secret))
    (public,) = run(
        "Diary", "--by", "rosa", "--acts-for", "people", "--public", "--scopes", "export", "--redirect", BACK
    )
    assert Client.objects.get(client_id=public).addresses == [BACK]


def test_the_command_says_what_cannot_be(rosa: Person, vale: Person) -> None:
    for words in (("--by", "vale"), ("--by", "rosa", "--public")):
        with pytest.raises(CommandError):
            run("Timetable", *words, "--acts-for", "itself", "--scopes", "cases:read")
    assert not Client.objects.exists()


def test_what_has_ended_is_tidied_away(rosa: Person, priya: Person) -> None:
    token_for_itself(for_itself(rosa))
    AccessToken.objects.update(expires="2026-01-01T00:00:00Z")
    token = allowed(session(for_people(rosa)), priya)
    assert issued_tokens.tidy() == 1
    assert program(token["access_token"]).get(f"{API}/key").status_code == 200
