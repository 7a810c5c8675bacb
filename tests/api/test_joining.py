"""Joining by a link: once, by whom it is for, and with nothing told to who guesses."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from django.utils import timezone

from cases.domain.access.invited import Invited
from cases.domain.access.roles import Role
from cases.models import ChangeLog, FailedSignIn, Invitation, Membership, Person, Programme
from cases.services.people import invitations, joining, tries
from tests.api.test_session import fresh
from tests.cast import *  # noqa: F403
from tests.cast import API, client, problem
from tests.factories import PASSWORD

NEW = "quite another sentence"


def link(rosa: Person, **who: Any) -> str:
    """The secret of one."""
    programme_id = rosa.memberships.get().programme_id
    people = [Invited(**({"role": Role.STUDENT} | who))]
    return invitations.invite(actor=rosa, programme_id=programme_id, people=people, days=1).made[0].text


def look(secret: str) -> Any:
    return client(None).post(f"{API}/join/link", {"invitation": secret}, format="json")


def join(secret: str, browser: Any = None, **names: str) -> Any:
    body = {"invitation": secret, "password": NEW, **names}
    return (browser or client(None)).post(f"{API}/join/new-account", body, format="json")


def test_somebody_new_chooses_a_password_and_is_in(rosa: Person) -> None:
    secret = link(rosa, name="Nour", username="nour", group="Monday")
    seen = look(secret).json()
    assert (seen["programme"]["name"], seen["role"], seen["name"], seen["has_account"]) == (
        "Check programme",
        "student",
        "Nour",
        False,
    )
    browser = fresh()
    token = {"X-CSRFToken": browser.cookies["csrftoken"].value}
    body = {"invitation": secret, "password": NEW, "username": "somebody-else"}
    problem(browser.post(f"{API}/join/new-account", body, format="json"), 403, "token-missing")
    answer = browser.post(f"{API}/join/new-account", body, format="json", headers=token)
    # What the coordinator gave counts, and what was sent in its place does not.
    assert answer.json()["person"]["username"] == "nour"
    assert browser.get(f"{API}/session").json()["memberships"][0]["group"] == "Monday"
    signs_in = {"username": "nour", "password": NEW}
    assert client(None).post(f"{API}/session", signs_in, format="json").status_code == 200
    row = Invitation.objects.get()
    assert (str(row.used_by), row.name, row.username) == ("Nour", "", "")


def test_a_link_counts_once(rosa: Person) -> None:
    secret = link(rosa)
    assert join(secret, username="nour", name="Nour").status_code == 200
    problem(join(secret, username="ada", name="Ada"), 410, "invitation-refused")
    problem(look(secret), 410, "invitation-refused")
    assert not Person.objects.filter(username="ada").exists()
    made = Invitation.objects.get()
    at = f"{API}/programmes/{made.programme_id}/invitations/{made.pk}"
    problem(client(rosa).delete(at), 409, "conflict")
    problem(client(rosa).post(f"{at}/link", {}, format="json"), 409, "conflict")


def test_an_ended_link_counts_no_more(rosa: Person) -> None:
    secret = link(rosa)
    past = timezone.now() - timedelta(days=2)
    Invitation.objects.update(made_at=past, ends_at=past + timedelta(days=1))
    problem(join(secret, username="nour", name="Nour"), 410, "invitation-refused")
    assert not Membership.objects.exclude(person=rosa).exists()


@pytest.mark.parametrize(
    ("sent", "pointer"),
    [
        ({"username": "", "name": "Nour"}, "#/username"),
        ({"username": "nour", "name": " "}, "#/name"),
        ({"username": "no ur", "name": "Nour"}, "#/username"),
        ({"username": "PRIYA", "name": "Nour"}, "#/username"),
        ({"username": "nour", "name": "Nour", "password": "short"}, "#/password"),
        ({"username": "nour-al-amin", "name": "Nour", "password": "nour-al-amin"}, "#/password"),
        ({"username": "nour", "name": "Nour", "password": "abc123456789"}, "#/password"),
    ],
)
def test_what_cannot_be_is_said_where_it_stands_and_the_link_counts_on(
    rosa: Person, priya: Person, sent: dict[str, str], pointer: str
) -> None:
    secret = link(rosa)
    assert list(problem(join(secret, **sent), 422, "not-usable")) == [pointer]
    assert look(secret).status_code == 200
    assert Person.objects.count() == 2


def test_who_has_an_account_elsewhere_signs_in_and_joins_here_too(
    rosa: Person, stranger: Person, elsewhere: Programme
) -> None:
    secret = link(rosa, username="Stranger", name="Another name")
    assert look(secret).json()["has_account"] is True
    # By the link alone nobody gets at an account that is there, nor changes its password.
    problem(join(secret), 422, "not-usable")
    browser = client(stranger)
    answer = browser.post(f"{API}/join", {"invitation": secret}, format="json").json()
    places = {each["programme"]["name"]: each["role"] for each in answer["memberships"]}
    assert places == {"Another programme": "supervisor", "Check programme": "student"}
    stranger.refresh_from_db()
    assert (stranger.display_name, stranger.check_password(PASSWORD)) == ("Stranger", True)


def test_a_link_for_one_account_is_not_for_another(rosa: Person, stranger: Person, priya: Person) -> None:
    secret = link(rosa, username="stranger")
    problem(client(priya).post(f"{API}/join", {"invitation": secret}, format="json"), 422, "not-usable")
    problem(client(None).post(f"{API}/join", {"invitation": secret}, format="json"), 401, "not-authenticated")
    open_one = link(rosa, role=Role.COORDINATOR)
    # What somebody is here the coordinator changes, and no link.
    problem(client(priya).post(f"{API}/join", {"invitation": open_one}, format="json"), 409, "conflict")
    assert Membership.objects.get(person=priya).role == Role.STUDENT


def test_guessing_links_is_stopped(rosa: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(joining, "MOST_FROM_ONE_ADDRESS", 3)
    secret = link(rosa)
    for _ in range(3):
        problem(look("0" * 32), 410, "invitation-refused")
    problem(look(secret), 429, "too-many-tries")
    problem(join(secret, username="nour", name="Nour"), 429, "too-many-tries")
    FailedSignIn.objects.update(at=timezone.now() - tries.WINDOW)
    assert look(secret).status_code == 200


def test_joining_is_logged_and_told_without_a_name(rosa: Person) -> None:
    join(link(rosa), username="nour", name="Nour Amin")
    lines = ChangeLog.objects.filter(verb__in=("join", "use"))
    assert {line.subject for line in lines} == {"Membership", "Invitation"}
    assert "Nour" not in str(list(lines.values_list("before", "after")))
    person = Person.objects.get(username="nour")
    programme_id = rosa.memberships.get().programme_id
    changes = client(rosa).get(f"{API}/programmes/{programme_id}/changes?after=0").json()["results"]
    assert [(each["kind"], each["subject_id"]) for each in changes] == [("person_changed", str(person.pk))]
