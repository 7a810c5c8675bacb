"""Inviting: by the coordinator alone, nobody twice, links shown once and withdrawn."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from typing import Any

import pytest
from django.utils import timezone

from cases.models import ChangeLog, Invitation, Person, Programme
from cases.services.people import invitations as service
from tests.cast import *  # noqa: F403
from tests.cast import API, client, problem

LIST = "name,user name,role,group\nNour,nour,student,Monday\nPriya,PRIYA,student,Monday\nTom,tom holm,studnt,\n"
NOUR = {"name": "Nour", "username": "nour", "role": "student", "group": "Monday"}


@pytest.fixture
def ask(rosa: Person, programme: Programme) -> Callable[..., Any]:
    """A POST of the coordinator's, below the programme."""
    browser = client(rosa)
    return lambda to, body: browser.post(f"{API}/programmes/{programme.pk}/{to}", body, format="json")


def invited(ask: Callable[..., Any], *people: dict[str, str]) -> Any:
    answer = ask("invitations", {"people": people})
    assert answer.status_code == 200, answer.json()
    return answer.json()


def test_a_list_is_looked_at_and_nothing_is_changed(ask: Callable[..., Any], priya: Person) -> None:
    lines = ask("people-list-check", {"text": LIST}).json()["lines"]
    assert [(line["line"], line["state"]) for line in lines] == [(2, "new"), (3, "member"), (4, "wrong")]
    assert lines[0]["person"] == NOUR
    assert {fault["column"] for fault in lines[2]["faults"]} == {"user name", "role"}
    assert not Invitation.objects.exists()
    problem(ask("people-list-check", {"text": "Nour;student\n"}), 422, "not-usable")


def test_the_same_again_invites_nobody_twice(ask: Callable[..., Any]) -> None:
    first, again = invited(ask, NOUR), invited(ask, {**NOUR, "username": "Nour"})
    assert (len(first["made"]), first["left_out"]) == (1, [])
    assert (again["made"], [each["username"] for each in again["left_out"]]) == ([], ["Nour"])
    assert ask("people-list-check", {"text": LIST}).json()["lines"][0]["state"] == "invited"


def test_the_link_is_shown_once_and_kept_nowhere(ask: Callable[..., Any], rosa: Person, programme: Programme) -> None:
    made = invited(ask, NOUR)["made"][0]
    secret = made["link"].partition("/join#")[2]
    row = Invitation.objects.get()
    assert len(secret) == 32
    assert secret not in str([row.secret_hash, *ChangeLog.objects.values_list("before", "after")])
    lists = client(rosa).get(f"{API}/programmes/{programme.pk}/invitations?state=open")
    assert [each["id"] for each in lists.json()["results"]] == [made["invitation"]["id"]]
    assert secret not in lists.content.decode()
    # Whom somebody invited is no line of the log: a name could not be erased from there.
    assert "nour" not in str(ChangeLog.objects.values_list("after")).casefold()


def test_another_link_ends_the_one_before_and_withdrawn_is_withdrawn(
    ask: Callable[..., Any], rosa: Person, programme: Programme
) -> None:
    made = invited(ask, NOUR)["made"][0]
    at = f"invitations/{made['invitation']['id']}"
    renewed = ask(f"{at}/link", {}).json()["link"]

    def look(link: str) -> Any:
        return client(None).post(f"{API}/join/link", {"invitation": link.partition("#")[2]}, format="json")

    problem(look(made["link"]), 410, "invitation-refused")
    assert look(renewed).json()["name"] == "Nour"
    browser = client(rosa)
    for _ in range(2):
        assert browser.delete(f"{API}/programmes/{programme.pk}/{at}").status_code == 204
    problem(look(renewed), 410, "invitation-refused")
    assert browser.get(f"{API}/programmes/{programme.pk}/{at}").json()["state"] == "withdrawn"
    # Whoever was withdrawn may be invited again.
    assert len(invited(ask, NOUR)["made"]) == 1


@pytest.mark.parametrize(
    "people",
    [
        [{"role": "student", "username": "a b"}],
        [NOUR, {**NOUR, "username": "NOUR"}],
        [{**NOUR, "name": "N\u200bour"}],
    ],
    ids=["no user name", "twice", "not seen"],
)
def test_of_what_cannot_be_nobody_is_invited(ask: Callable[..., Any], people: list[dict[str, str]]) -> None:
    refused = ask("invitations", {"people": [{"role": "supervisor"}, *people]})
    (pointer,) = problem(refused, 422, "not-usable")
    assert pointer.startswith("#/people/")
    assert not Invitation.objects.exists()


@pytest.mark.parametrize("asker", ["priya", "vale"])
def test_who_is_no_coordinator_invites_nobody(request: Any, asker: str, ask: Callable[..., Any], rosa: Person) -> None:
    made = invited(ask, NOUR)["made"][0]["invitation"]["id"]
    person: Person = request.getfixturevalue(asker)
    at, browser = f"{API}/programmes/{rosa.memberships.get().programme_id}", client(person)
    body = {"people": [{"role": "coordinator"}]}
    problem(browser.post(f"{at}/invitations", body, format="json"), 403, "not-allowed")
    problem(browser.post(f"{at}/people-list-check", {"text": LIST}, format="json"), 403, "not-allowed")
    problem(browser.post(f"{at}/invitations/{made}/link", {}, format="json"), 403, "not-allowed")
    problem(browser.delete(f"{at}/invitations/{made}"), 403, "not-allowed")
    for address in ("invitations", f"invitations/{made}", "former-people"):
        problem(browser.get(f"{at}/{address}"), 403, "not-allowed")
    problem(client(None).post(f"{at}/invitations", body, format="json"), 401, "not-authenticated")


def test_a_stranger_finds_no_programme(ask: Callable[..., Any], stranger: Person, programme: Programme) -> None:
    body = {"people": [{"role": "coordinator"}]}
    problem(
        client(stranger).post(f"{API}/programmes/{programme.pk}/invitations", body, format="json"), 404, "not-found"
    )


def test_names_of_who_did_not_come_go_after_a_while(ask: Callable[..., Any]) -> None:
    made = invited(ask, NOUR, {**NOUR, "username": "ada"})["made"]
    ended = timezone.now() - service.KEPT_AFTER - timedelta(days=1)
    rows = Invitation.objects.filter(pk=made[0]["invitation"]["id"])
    rows.update(made_at=ended - timedelta(days=1), ends_at=ended)
    assert service.tidy() == 1
    assert [row.username for row in Invitation.objects.all()] == ["ada"]
