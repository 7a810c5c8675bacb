"""Whoever runs the server makes a key for a service, in the name of a coordinator."""

from __future__ import annotations

from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from cases.models import ChangeLog, Person, Service
from cases.services.people import access_keys


def run(*words: str) -> str:
    said = StringIO()
    call_command("service_key", *words, stdout=said)
    return said.getvalue().strip()


def test_it_prints_a_key_that_counts(rosa: Person) -> None:
    text = run("Timetable", "--by", "rosa", "--scopes", "cases:read", "people:read", "--days", "30")
    key = access_keys.admit(text=text)
    assert key.service == Service.objects.get(name="Timetable", programme__name="Check programme")
    assert key.scopes == ["cases:read", "people:read"]
    assert ChangeLog.objects.get().actor == rosa


@pytest.mark.parametrize(
    "words",
    [
        ("--by", "rosa", "--scopes", "reviews:write", "--days", "30"),
        ("--by", "rosa", "--scopes", "cases:read", "--days", "367"),
        ("--by", "vale", "--scopes", "cases:read", "--days", "30"),
        ("--by", "rosa", "--programme", "Elsewhere", "--scopes", "cases:read", "--days", "30"),
    ],
    ids=["a person's own word", "too long", "no coordinator", "another programme"],
)
def test_what_cannot_be_is_said(rosa: Person, vale: Person, words: tuple[str, ...]) -> None:
    with pytest.raises(CommandError):
        run("Timetable", *words)
    assert not Service.objects.exists()
