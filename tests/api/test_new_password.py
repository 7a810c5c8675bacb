"""A new password ends all that was opened under the one before (OWASP ASVS 5.0, 7.4.3), however it is changed."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from django.contrib.auth.hashers import make_password
from django.core.management import call_command
from django.test import Client
from django.urls import reverse
from rest_framework.test import APIClient

from cases.models import AccessKey, ChangeLog, Person, PushSubscription
from tests.api.test_cases_push import subscribe
from tests.cast import *  # noqa: F403
from tests.cast import API, client, problem
from tests.factories import PASSWORD
from tests.keys import own_key, program, service_key

pytestmark = pytest.mark.django_db
NEW = "quite another sentence"


def by_the_administration(person: Person) -> None:
    keeper = Client()
    keeper.force_login(Person.objects.create_superuser("keeper"))
    form = {"password1": NEW, "password2": NEW, "usable_password": "true"}
    answer = keeper.post(reverse("admin:auth_user_password_change", args=[person.pk]), form)
    assert answer.status_code == 302, answer.content
    assert Person.objects.get(pk=person.pk).check_password(NEW)


def by_command(person: Person) -> None:
    call_command("changepassword", person.username)


def taken_away(person: Person) -> None:
    person.set_unusable_password()
    person.save()


@pytest.mark.parametrize("changes", [by_the_administration, by_command, taken_away])
def test_keys_and_sessions_end(priya: Person, monkeypatch: pytest.MonkeyPatch, changes: Callable[..., None]) -> None:
    script, browser = program(own_key(priya).text), APIClient()
    assert browser.post(f"{API}/session", {"username": priya.username, "password": PASSWORD}).status_code == 200
    assert [script.get(f"{API}/key").status_code, browser.get(f"{API}/keys").status_code] == [200, 200]
    monkeypatch.setattr("getpass.getpass", lambda prompt="": NEW)
    changes(priya)
    problem(script.get(f"{API}/key"), 401, "key-refused")
    problem(browser.get(f"{API}/keys"), 401, "not-authenticated")
    priya.refresh_from_db()
    assert client(priya).get(f"{API}/keys").json()["results"] == []
    assert ChangeLog.objects.filter(verb="revoke", subject_id=str(AccessKey.objects.get().pk)).exists()


def test_browsers_are_notified_no_more(vale: Person, amari: Person) -> None:
    """Who signs in there again is notified again: the app sends its subscription once more."""
    for person in (vale, amari):
        subscribe(person, f"https://push.example/{person.username}")
    vale.set_password(NEW)
    vale.save()
    assert [row.person for row in PushSubscription.objects.all()] == [amari]


def test_what_is_another_persons_or_the_programmes_stays(priya: Person, tom: Person, rosa: Person) -> None:
    others = [program(own_key(tom).text), program(service_key(rosa).text)]
    for person in (priya, rosa):
        person.set_password(NEW)
        person.save()
    assert [each.get(f"{API}/key").status_code for each in others] == [200, 200]


def test_a_password_that_is_hashed_anew_is_the_same_password(priya: Person) -> None:
    """As after an update of the framework, which wants more rounds: nobody has changed anything."""
    script = program(own_key(priya).text)
    old = make_password(PASSWORD, salt="few", hasher="md5")
    Person.objects.filter(pk=priya.pk).update(password=old)
    assert APIClient().post(f"{API}/session", {"username": priya.username, "password": PASSWORD}).status_code == 200
    priya.refresh_from_db()
    assert priya.password != old
    assert script.get(f"{API}/key").status_code == 200
