"""Whoever runs an empty server makes the first coordinator of a programme, and can do no harm by doing it again."""

from __future__ import annotations

from io import StringIO
from typing import Any

import pytest
from django.core.management import CommandError, call_command

from cases.models import Invitation, Membership, Person, Programme
from tests.cast import API, client, problem

pytestmark = pytest.mark.django_db
PASSWORD = "quite-a-long-sentence"


def run(*words: str) -> str:
    out = StringIO()
    call_command("first_coordinator", *words, stdout=out, stderr=StringIO())
    return out.getvalue().strip()


def joined(link: str, username: str = "rosa") -> dict[str, object]:
    names = {"username": username, "name": "Rosa", "password": PASSWORD}
    answer = client(None).post(
        f"{API}/join/new-account", {"invitation": link.partition("#")[2], **names}, format="json"
    )
    assert answer.status_code == 200, answer.json()
    return dict(answer.json())


def test_from_nobody_to_a_coordinator_who_invites(settings: Any) -> None:
    settings.PRODUCTION, settings.ALLOWED_HOSTS = True, ["canals.school.example", "testserver"]
    link = run("Autumn course")
    address, _, secret = link.partition("#")
    assert address == "https://canals.school.example/join"
    assert secret not in Invitation.objects.get().secret_hash
    assert joined(link)["memberships"][0]["role"] == "coordinator"  # type: ignore[index]
    rosa, programme = Person.objects.get(), Programme.objects.get(name="Autumn course")
    body = {"people": [{"role": "student"}]}
    assert client(rosa).post(f"{API}/programmes/{programme.pk}/invitations", body, format="json").status_code == 200


def test_again_before_anybody_came_the_first_link_counts_no_more() -> None:
    first, second = run("Autumn course"), run("Autumn course")
    refused = client(None).post(f"{API}/join/link", {"invitation": first.partition("#")[2]}, format="json")
    problem(refused, 410, "invitation-refused")
    joined(second)
    assert (Programme.objects.count(), Membership.objects.count()) == (1, 1)


def test_where_there_is_one_another_is_refused_and_a_further_programme_is_asked_about() -> None:
    joined(run("Autumn course"))
    for words in (("Autumn course",), ("Autumn course", "--further"), ("Spring course",), ("  ", "--further")):
        with pytest.raises(CommandError):
            run(*words)
    assert [programme.name for programme in Programme.objects.all()] == ["Autumn course"]
    joined(run("Spring course", "--further"), "sol")
    assert Membership.objects.filter(role="coordinator").count() == 2
