"""Programs sign in with keys: made, shown once, used, revoked.

The form of the challenge and its error codes are those of RFC 6750, 3 and 3.1.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Any
from uuid import uuid4

import pytest
from django.utils import timezone
from rest_framework.test import APIClient

from cases.domain.access import key_text
from cases.domain.access.scopes import Scope
from cases.models import AccessKey, Case, ChangeLog, Person
from cases.services.people.access_keys import MOST_KEYS
from tests.cast import API, client, problem
from tests.factories import PASSWORD
from tests.keys import own_key, program, service_key

KEYS, KEY = f"{API}/keys", f"{API}/key"
READ = (Scope.CASES_READ,)
ASKED = {"name": "Nightly copy", "scopes": ["cases:read"], "days": 90, "password": PASSWORD}


def service_keys(person: Person) -> str:
    return f"{API}/programmes/{person.memberships.get().programme_id}/service-keys"


def challenge(answer: Any) -> dict[str, str]:
    """The parts of the Bearer challenge, by name."""
    scheme, _, parts = answer["WWW-Authenticate"].partition("Bearer ")
    assert scheme == ""
    return dict(re.findall(r'(\w+)="([^"]*)"', parts))


def test_a_key_is_shown_once_and_kept_as_a_hash(priya: Person) -> None:
    answer = client(priya).post(KEYS, ASKED)
    assert answer.status_code == 201
    text = answer.json()["text"]
    assert re.fullmatch(r"fourthcanal_[0-9a-f]{32}_[0-9a-f]{64}", text)
    secret = text.rpartition("_")[2]
    row = AccessKey.objects.get()
    # Nowhere in the row, nor in the log of its making.
    assert secret not in str(vars(row)) + str(list(ChangeLog.objects.values()))
    assert row.secret_hash == key_text.hash_of(secret)
    (listed,) = client(priya).get(KEYS).json()["results"]
    assert listed == answer.json()["key"]
    assert (listed["name"], listed["scopes"], listed["last_used_at"]) == ("Nightly copy", ["cases:read"], None)
    assert secret not in str(listed)


def test_a_script_reads_with_its_key_and_needs_neither_cookie_nor_token(priya: Person, opened: Case) -> None:
    script = program(own_key(priya, (Scope.CASES_READ, Scope.CASES_WRITE)).text)
    answer = script.get(f"{API}/cases/{opened.pk}")
    assert answer.json()["student"]["name"] == "Priya"
    changed = script.patch(f"{API}/cases/{opened.pk}", {"isolated": True}, headers={"If-Match": answer["ETag"]})
    assert changed.status_code == 200, changed.json()
    assert ChangeLog.objects.get(verb="change", subject="Case").key == AccessKey.objects.get()


def test_a_key_says_who_it_is(priya: Person, rosa: Person) -> None:
    script = program(own_key(priya, READ).text).get(KEY).json()
    assert (script["person"]["name"], script["scopes"]) == ("Priya", ["cases:read"])
    service = program(service_key(rosa, READ).text).get(KEY).json()
    assert (service["person"], service["name"]) == (None, "Image archive")
    assert [each["name"] for each in service["programmes"]] == ["Check programme"]
    problem(client(priya).get(KEY), 404, "not-found")


def wrong_keys(text: str) -> list[str]:
    start, id_, secret = text.split("_")
    other = "0" if secret[-1] != "0" else "1"
    return ["", "made-up", f"{start}_{uuid4().hex}_{secret}", f"{start}_{id_}_{secret[:-1]}{other}", f"{text}0"]


def test_a_wrong_key_is_answered_with_a_challenge(priya: Person) -> None:
    for wrong in wrong_keys(own_key(priya, READ).text):
        answer = program(wrong).get(KEY)
        problem(answer, 401, "key-refused")
        assert challenge(answer)["error"] == "invalid_token", wrong


def test_without_a_key_both_ways_to_sign_in_are_named_and_no_error(db: None) -> None:
    answer = APIClient().get(KEYS)
    problem(answer, 401, "not-authenticated")
    # RFC 6750, 3.1: a request that brought nothing gets no error code.
    assert answer["WWW-Authenticate"] == 'Session realm="fourth-canal", Bearer realm="fourth-canal"'


def test_a_wrong_key_is_not_made_good_by_a_cookie(priya: Person) -> None:
    browser = client(priya)
    browser.credentials(HTTP_AUTHORIZATION="Bearer made-up")
    problem(browser.get(KEYS), 401, "key-refused")


def revoke(row: AccessKey, priya: Person) -> None:
    assert client(priya).delete(f"{KEYS}/{row.pk}").status_code == 204


def end(row: AccessKey, priya: Person) -> None:
    now = timezone.now()
    AccessKey.objects.filter(pk=row.pk).update(made_at=now - timedelta(days=2), ends_at=now)


def remove_its_owner(row: AccessKey, priya: Person) -> None:
    Person.objects.filter(pk=priya.pk).update(is_active=False)


@pytest.mark.parametrize("ends", [revoke, end, remove_its_owner])
def test_a_key_dies(priya: Person, ends: Any) -> None:
    made = own_key(priya, READ)
    assert program(made.text).get(KEY).status_code == 200
    ends(made.row, priya)
    answer = program(made.text).get(KEY)
    problem(answer, 401, "key-refused")
    assert challenge(answer)["error"] == "invalid_token"


def test_who_left_a_programme_sees_nothing_of_it_by_a_key(priya: Person, opened: Case) -> None:
    script = program(own_key(priya, READ).text)
    priya.memberships.all().delete()
    problem(script.get(f"{API}/cases/{opened.pk}"), 404, "not-found")


def test_the_last_use_is_kept_to_the_minute(priya: Person) -> None:
    made = own_key(priya, READ)
    script = program(made.text)
    script.get(KEY)
    first = AccessKey.objects.get().last_used_at
    assert first is not None
    assert timezone.now() - first < timedelta(minutes=1)
    script.get(KEY)
    assert AccessKey.objects.get().last_used_at == first
    AccessKey.objects.update(last_used_at=first - timedelta(minutes=2))
    script.get(KEY)
    assert AccessKey.objects.filter(last_used_at__gte=first).exists()


def test_a_request_with_a_key_asks_the_database_no_more_than_one_with_a_session(
    priya: Person, rosa: Person, opened: Case, django_assert_max_num_queries: Any
) -> None:
    address = f"{API}/cases/{opened.pk}"
    programs = [program(own_key(priya, READ).text), program(service_key(rosa, READ).text)]
    browser = client(priya)
    for each in [browser, *programs]:
        each.get(address)
    with django_assert_max_num_queries(100) as by_session:
        assert browser.get(address).status_code == 200
    for each in programs:
        with django_assert_max_num_queries(len(by_session)):
            assert each.get(address).status_code == 200


def test_the_password_is_asked_for(priya: Person, rosa: Person) -> None:
    wrong = ASKED | {"password": "not-this-one"}
    assert "#/password" in problem(client(priya).post(KEYS, wrong), 422, "password-wrong")
    assert "#/password" in problem(client(rosa).post(service_keys(rosa), wrong), 422, "password-wrong")
    assert not AccessKey.objects.exists()


@pytest.mark.parametrize(
    ("change", "status", "code", "pointer"),
    [
        ({"days": 0}, 400, "not-understood", "#/days"),
        ({"days": 367}, 400, "not-understood", "#/days"),
        ({"scopes": []}, 422, "not-usable", "#/scopes"),
        ({"scopes": ["cases:all"]}, 400, "not-understood", "#/scopes/0"),
        ({"name": "  "}, 400, "not-understood", "#/name"),
    ],
)
def test_what_is_wrong_with_a_key_is_said(
    priya: Person, change: dict[str, Any], status: int, code: str, pointer: str
) -> None:
    assert pointer in problem(client(priya).post(KEYS, ASKED | change), status, code)


def test_there_are_so_many_keys_and_no_more(priya: Person) -> None:
    made = [own_key(priya, READ) for _ in range(MOST_KEYS)]
    problem(client(priya).post(KEYS, ASKED), 409, "conflict")
    revoke(made[0].row, priya)
    assert client(priya).post(KEYS, ASKED).status_code == 201


def test_keys_of_services_are_kept_by_the_coordinator(rosa: Person, vale: Person, priya: Person) -> None:
    made = client(rosa).post(service_keys(rosa), ASKED).json()["key"]
    address = service_keys(rosa)
    for person in (vale, priya):
        problem(client(person).get(address), 403, "not-allowed")
        problem(client(person).post(address, ASKED), 403, "not-allowed")
        problem(client(person).delete(f"{address}/{made['id']}"), 403, "not-allowed")
    assert [each["id"] for each in client(rosa).get(address).json()["results"]] == [made["id"]]
    assert client(rosa).delete(f"{address}/{made['id']}").status_code == 204
    assert client(rosa).get(address).json() == {"next": None, "previous": None, "results": []}
    assert list(ChangeLog.objects.values_list("verb", flat=True)) == ["make", "revoke"]


def test_what_is_not_ones_own_cannot_be_revoked(priya: Person, tom: Person, rosa: Person, stranger: Person) -> None:
    own, service = own_key(priya, READ), service_key(rosa, READ)
    problem(client(tom).delete(f"{KEYS}/{own.row.pk}"), 404, "not-found")
    problem(client(rosa).delete(f"{service_keys(rosa)}/{own.row.pk}"), 404, "not-found")
    problem(client(stranger).delete(f"{service_keys(rosa)}/{service.row.pk}"), 404, "not-found")
    assert not AccessKey.objects.exclude(revoked_at=None).exists()


@pytest.mark.parametrize("scope", ["reviews:write", "events:write"])
def test_a_service_never_has_what_is_a_persons_own_word(rosa: Person, scope: str) -> None:
    answer = client(rosa).post(service_keys(rosa), ASKED | {"scopes": ["cases:read", scope]})
    assert scope in problem(answer, 422, "not-usable")["#/scopes"]
