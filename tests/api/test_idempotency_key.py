"""A POST sent again with its key is done once.

Judge: draft-ietf-httpapi-idempotency-key-header-07, section 2: the key, what a retry gets, when it is refused.
"""

from __future__ import annotations

from datetime import timedelta
from io import StringIO
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.core.management import call_command
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.utils import timezone
from rest_framework.test import APIClient

from cases.models import (
    AccessKey,
    Case,
    ChangeLog,
    Image,
    KeptAnswer,
    LengthReading,
    Person,
    Programme,
    ToothPlanVersion,
    WrongCode,
)
from tests.api.test_cases_description import operations
from tests.api.test_cases_on_site import Clock, clock, enrolled, sign_off, waiting
from tests.cases.pictures import picture
from tests.cast import API, canal_of, client, problem
from tests.keys import program, service_key

__all__ = ["clock", "waiting"]

KEY = '"8e03978e-40d5-43dd-bc93-6894a57f9324"'
BENCH = {"patient_alias": "Bench 7", "tooth": {"notation": "iso_3950", "designation": "26"}, "setting": "extracted"}
READING = {"reading": {"method": "pre_operative_image", "tooth_mm": 21.5, "reference_point": "MB cusp"}}


def post(asker: APIClient, address: str, body: Any = None, key: str = KEY, **headers: str) -> Any:
    return asker.post(address, body, format="json", headers={"Idempotency-Key": key, **headers})


@pytest.fixture
def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/cases"


def test_the_same_sent_again_is_done_once_and_answered_alike(at: str, priya: Person) -> None:
    first, second = (post(client(priya), at, BENCH) for _ in range(2))
    assert (first.status_code, second.status_code) == (201, 201)
    assert first.content == second.content
    assert (first["ETag"], first["Content-Type"]) == (second["ETag"], second["Content-Type"])
    assert Case.objects.count() == 1
    assert ChangeLog.objects.count() == 1
    assert post(client(priya), at, BENCH, key='"another"').json()["id"] != first.json()["id"]


def test_an_answer_that_was_lost_is_had_again_of_what_cannot_be_done_twice(
    submitted: ToothPlanVersion, vale: Person
) -> None:
    tag, address = {"If-Match": f'"{submitted.hash}"'}, f"{API}/plan-versions/{submitted.pk}/reviews"
    decision = {"decision": "returned", "note": "One size larger, please."}
    first, second = (post(client(vale), address, decision, **tag) for _ in range(2))
    assert (first.status_code, second.status_code) == (201, 201), first.json()
    assert first.content == second.content
    problem(client(vale).post(address, decision, format="json", headers=tag), 409, "move-not-possible")


def test_a_form_with_a_file_is_the_same_where_its_file_is(opened: Case, priya: Person) -> None:
    address = f"{API}/cases/{opened.pk}/images"

    def send(data: bytes) -> Any:
        form = {"file": SimpleUploadedFile("x.png", data), "canal": "P", "purpose": "cone"}
        return client(priya).post(address, form, format="multipart", headers={"Idempotency-Key": KEY})

    first, second = send(picture()), send(picture())
    assert (first.status_code, second.status_code) == (201, 201), first.json()
    assert first.content == second.content
    assert Image.objects.count() == 1
    problem(send(picture() + b"more"), 422, "idempotency-key-used-differently")


def test_a_key_is_of_one_request(at: str, opened: Case, priya: Person) -> None:
    asker, canal = client(priya), canal_of(opened, "MB1")
    address = f"{API}/canals/{canal.pk}/readings"
    assert post(asker, address, READING).status_code == 201
    another = {"reading": READING["reading"] | {"tooth_mm": 22.0}}
    refused = [
        post(asker, address, another),
        post(asker, f"{API}/canals/{canal_of(opened, 'DB').pk}/readings", READING),
        post(asker, address, READING, **{"If-Match": '"1"'}),
        post(asker, at, BENCH),
    ]
    for each in refused:
        problem(each, 422, "idempotency-key-used-differently")
    assert LengthReading.objects.count() == 1


def test_a_key_is_of_one_asker(at: str, programme: Programme, priya: Person, tom: Person, rosa: Person) -> None:
    mine, his = post(client(priya), at, BENCH), post(client(tom), at, BENCH)
    assert mine.json()["id"] != his.json()["id"]
    service = program(service_key(rosa).text)
    theirs = post(service, at, BENCH | {"student_id": str(priya.pk)})
    assert theirs.status_code == 201
    assert Case.objects.count() == 3
    # Where a service acts for a student the key is still the service's.
    canal = canal_of(Case.objects.get(pk=theirs.json()["id"]), "MB1")
    problem(post(service, f"{API}/canals/{canal.pk}/readings", READING), 422, "idempotency-key-used-differently")


def test_what_was_refused_may_be_put_right_and_sent_with_the_same_key(at: str, priya: Person) -> None:
    problem(post(client(priya), at, BENCH | {"setting": "moon"}), 400, "not-understood")
    problem(post(client(priya), at, BENCH | {"patient_alias": "Anna Miller"}), 422, "alias-looks-like-a-name")
    assert not KeptAnswer.objects.exists()
    assert post(client(priya), at, BENCH).status_code == 201


def test_a_wrong_try_counts_with_a_key_too(
    waiting: ToothPlanVersion, priya: Person, vale: Person, clock: Clock
) -> None:
    """Or a key would let codes be guessed without end."""
    code = enrolled(vale, clock).wrong()
    assert sign_off(priya, waiting, vale, code).status_code == 422
    body = {
        "supervisor_id": str(vale.pk),
        "code": code,
        "plan_hash": waiting.hash,
        "canal": "DB",
        "node": "length/sign-off",
    }
    address = f"{API}/cases/{waiting.case_id}/on-site-sign-offs"
    for tries in (2, 3):
        problem(post(client(priya), address, {**body, "exit": "approved"}), 422, "code-refused")
        assert WrongCode.objects.count() == tries


@pytest.mark.parametrize("key", ['"a b"', "4711", '"4711"', "8e03978e-40d5-43dd-bc93-6894a57f9324", "a" * 100])
def test_a_key_is_text_in_quotation_marks_or_bare(at: str, priya: Person, key: str) -> None:
    assert post(client(priya), at, BENCH, key=key).status_code == 201
    assert post(client(priya), at, BENCH, key=key).status_code == 201
    assert Case.objects.count() == 1


@pytest.mark.parametrize("key", ["", '""', '"a', "a b", 'a"b', '"a", "b"', "a" * 101, '"a\\"b"', "é"])
def test_what_is_no_key_is_refused(at: str, priya: Person, key: str) -> None:
    assert "#/Idempotency-Key" in problem(post(client(priya), at, BENCH, key=key), 400, "not-understood")
    assert not Case.objects.exists()


def test_bare_or_in_quotation_marks_it_is_the_same_key(at: str, priya: Person) -> None:
    assert post(client(priya), at, BENCH, key="4711").content == post(client(priya), at, BENCH, key='"4711"').content


def test_answers_are_kept_for_a_day(at: str, priya: Person) -> None:
    post(client(priya), at, BENCH)
    KeptAnswer.objects.update(at=timezone.now() - timedelta(hours=23))
    post(client(priya), at, BENCH)
    call_command("tidy", stdout=StringIO())
    assert (Case.objects.count(), KeptAnswer.objects.count()) == (1, 1)
    KeptAnswer.objects.update(at=timezone.now() - timedelta(hours=25))
    post(client(priya), at, BENCH)
    assert (Case.objects.count(), KeptAnswer.objects.count()) == (2, 1)
    KeptAnswer.objects.update(at=timezone.now() - timedelta(hours=25))
    call_command("tidy", stdout=StringIO())
    assert not KeptAnswer.objects.exists()


def test_a_request_that_breaks_leaves_neither_what_it_made_nor_its_key(
    at: str, priya: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    asker = client(priya)
    asker.raise_request_exception = False

    def breaking(**_: Any) -> None:
        assert Case.objects.count() == 1  # it was made, and nothing of that is seen from outside yet
        raise MemoryError

    with monkeypatch.context() as patched:
        patched.setattr(KeptAnswer.objects, "create", breaking)
        assert post(asker, at, BENCH).status_code == 500
    assert not Case.objects.exists()
    assert post(asker, at, BENCH).status_code == 201


def test_no_secret_is_kept(rosa: Person, priya: Person) -> None:
    body = {"name": "A script", "scopes": ["cases:read"], "days": 3, "password": "wrong"}
    post(client(priya), f"{API}/keys", body)
    assert not KeptAnswer.objects.exists()
    assert not AccessKey.objects.exists()


def test_an_alias_that_was_corrected_is_in_no_kept_answer(at: str, priya: Person, programme: Programme) -> None:
    alias = 'Bench "7" ü'
    shown = post(client(priya), at, BENCH | {"patient_alias": alias})
    post(client(priya), at, BENCH | {"patient_alias": "Bench 8"}, key='"another"')
    tag = {"If-Match": shown["ETag"]}
    change = {"patient_alias": "Reed 12"}
    address = f"{API}/cases/{shown.json()['id']}"
    assert client(priya).patch(address, change, format="json", headers=tag).status_code == 200
    assert [row.key for row in KeptAnswer.objects.all()] == ["another"]


def test_a_request_without_a_key_asks_nothing_more(programme: Programme, opened: Case, priya: Person) -> None:
    """With one it asks for the key, keeps the answer, and on PostgreSQL takes a lock."""
    asker, address = client(priya), f"{API}/canals/{canal_of(opened, 'MB1').pk}/readings"
    asker.post(address, READING, format="json")
    with CaptureQueriesContext(connection) as plain:
        asker.post(address, READING, format="json")
    with CaptureQueriesContext(connection) as keyed:
        post(asker, address, READING)
    assert not [each for each in plain if "keptanswer" in each["sql"]]
    ours = [each["sql"] for each in keyed if "keptanswer" in each["sql"] or "advisory" in each["sql"]]
    assert len(ours) == (3 if connection.vendor == "postgresql" else 2)
    transactions = [each for each in keyed if "SAVEPOINT" in each["sql"]]
    assert len(keyed) - len(ours) - len(transactions) == len(plain) - len([e for e in plain if "SAVEPOINT" in e["sql"]])


def test_the_description_says_where_a_key_is_taken() -> None:
    takes = {
        name
        for name, operation in operations()
        if any(each["name"] == "Idempotency-Key" for each in operation.get("parameters", []))
    }
    assert all(name.startswith("post ") for name in takes)
    # What keeps nothing, what answers a secret, and what is asked with a password: a digest of it would be kept.
    of_none = {"session", "keys", "service-keys", "clients", "lti-platforms", "webhooks", "secret"}
    of_none |= {"join", "new-account", "link", "invitations", "people-list-check"}
    of_none |= {"one-time-code", "confirm", "preview", "changes"}
    for name, _ in operations():
        if name.startswith("post ") and "/compute/" not in name:
            assert (name in takes) is (name.rpartition("/")[2] not in of_none), name
