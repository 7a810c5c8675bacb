"""Who opens what with a key, or with a token of a client: every operation of the URL conf, by role and by scope.

A new endpoint without a row in the table of needs fails here.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any
from uuid import uuid4

import pytest
from drf_spectacular.generators import EndpointEnumerator
from oauth2_provider.models import AccessToken
from rest_framework.test import APIClient

from cases.api.fhir import urls as fhir_urls
from cases.api.needs import FHIR_NEEDS, FHIR_PREFIX, NEEDS, PREFIX, Need, Without, need_of
from cases.domain.access.key_text import hash_of
from cases.domain.access.roles import Role
from cases.domain.access.scopes import FOR_SERVICES, OF_ROLE, Scope
from cases.models import AccessKey, Canal, Person, ToothPlanVersion
from tests.api.test_cases_description import description
from tests.cast import client
from tests.draws import WHOLE
from tests.keys import own_key, program, service_key
from tests.oauth import allowed, for_itself, for_people, session, token_for_itself

pytestmark = pytest.mark.one_database

PARAMETER = re.compile(r"<(?:\w+:)?(\w+)>")
REFUSED = {"scope-missing", "key-opens-not"}
# Every address from the root of the server; FHIR's are in no description but their own.
TABLE = {PREFIX + address: row for address, row in NEEDS.items()} | {
    FHIR_PREFIX + address: row for address, row in FHIR_NEEDS.items()
}
# What the project does not let any service do, said once more by hand.
NEVER_BY_A_SERVICE = {
    "POST plan-versions/{version_id}/reviews",
    "POST plan-versions/{version_id}/release",
    "POST plan-versions/{version_id}/revoke",
    "POST cases/{case_id}/overrides",
    "POST overrides/{override_id}/withdraw",
    "POST cases/{case_id}/events",
    "POST cases/{case_id}/on-site-sign-offs",
    "POST cases/{case_id}/images/{image_id}/name-check",
    "POST session",
    "DELETE session",
    "POST join",
    "POST join/link",
    "POST join/new-account",
    "PATCH programmes/{programme_id}/people/{person_id}",
    "DELETE programmes/{programme_id}/people/{person_id}",
    "POST programmes/{programme_id}/people-list-check",
    "POST programmes/{programme_id}/invitations",
    "DELETE programmes/{programme_id}/invitations/{invitation_id}",
    "POST programmes/{programme_id}/invitations/{invitation_id}/link",
    "POST one-time-code",
    "POST one-time-code/confirm",
    "DELETE one-time-code",
    "PUT push-subscription",
    "POST keys",
    "DELETE keys/{key_id}",
    "POST programmes/{programme_id}/service-keys",
    "DELETE programmes/{programme_id}/service-keys/{key_id}",
    "POST programmes/{programme_id}/clients",
    "DELETE programmes/{programme_id}/clients/{client_id}",
    "DELETE consents/{consent_id}",
    "POST programmes/{programme_id}/practice-exercises",
    "POST practice-exercises/{exercise_id}/acts",
}


@cache
def operations() -> tuple[tuple[str, str], ...]:
    """Every method and address that the URL conf has."""
    enumerator: Any = EndpointEnumerator
    rows = enumerator().get_api_endpoints()
    fhir = [FHIR_PREFIX + PARAMETER.sub(r"{\1}", str(each.pattern)) for each in fhir_urls.urlpatterns]
    return (*((method, path) for path, _, method, _ in rows), *(("GET", address) for address in fhir))


def dealt(rows: Sequence[tuple[str, str]], place: int, of: int) -> Sequence[tuple[str, str]]:
    """What the asker at this place asks for: in the gate each asks for its part of them, else everybody for all."""
    return rows if WHOLE else rows[place::of]


def need(method: str, address: str) -> Need:
    return TABLE[address][method]


@pytest.fixture
def addresses(clinic: ToothPlanVersion) -> dict[str, str]:
    """For each address one that leads to something where there is something."""
    ids = {
        "programme_id": clinic.programme_id,
        "case_id": clinic.case_id,
        "version_id": clinic.pk,
        "code": "not-found",
        "canal_id": Canal.objects.filter(tooth__case=clinic.case_id).order_by("place")[0].pk,
        "hash_": clinic.hash,
        "iso": 26,
        "table": "cases",
        "tooth": 26,
        "name": "MB",
        "canal": "MB1",
        "key": "file.curve_margin",
    }
    return {address: filled(address, ids | {"resource_id": fhir_id(clinic, address)}) for address in TABLE}


def filled(address: str, ids: Mapping[str, object]) -> str:
    return re.sub(r"{(\w+)}", lambda part: str(ids.get(part[1], uuid4())), address)


def fhir_id(version: ToothPlanVersion, address: str) -> object:
    """The id of a resource of the type that the address has, where there is one."""
    ids = {"Patient": version.case.patient_id, "CarePlan": version.pk, "Task": f"{version.pk}-1", "CodeSystem": "tooth"}
    return ids.get(address.removeprefix(FHIR_PREFIX).partition("/")[0], version.case_id)


@pytest.fixture
def people(clinic: ToothPlanVersion, priya: Person, vale: Person, rosa: Person) -> dict[str, Person]:
    return {"student": priya, "supervisor": vale, "coordinator": rosa}


def asked(asker: APIClient, method: str, address: str) -> tuple[int, str]:
    """The status, and the code of the problem or nothing."""
    answer = getattr(asker, method.lower())(address, **({} if method == "GET" else {"data": {}, "format": "json"}))
    if answer.get("Content-Type") == "application/fhir+json" and not 200 <= answer.status_code < 300:
        return answer.status_code, answer.json()["issue"][0]["diagnostics"].rpartition("/")[2]
    if answer.get("Content-Type") != "application/problem+json":
        return answer.status_code, ""
    return answer.status_code, answer.json()["type"].rpartition("/")[2]


def test_every_operation_has_its_row_and_every_row_an_operation() -> None:
    rows = {(method, address) for address, methods in TABLE.items() for method in methods}
    assert set(operations()) == rows
    assert len(rows) > 70


def test_the_description_states_the_scope_of_each_operation() -> None:
    for scheme in ("key", "oauth2"):
        stated = {
            (method.upper(), address): [way[scheme] for way in operation["security"] if scheme in way]
            for address, path in description()["paths"].items()
            for method, operation in path.items()
        }
        for (method, address), scopes in stated.items():
            row = need(method, address)
            expected = [] if row is Without.KEY else [[row.value] if isinstance(row, Scope) else []]
            assert scopes == expected, (method, address)
        assert set(Scope) == {scope for scopes in stated.values() for each in scopes for scope in each}


def test_a_scope_opens_its_operations_and_no_other_to_every_role(
    addresses: dict[str, str], people: dict[str, Person], rosa: Person
) -> None:
    holders = {name: own_key(person) for name, person in people.items()}
    holders["service"] = service_key(rosa)
    for holder, made in holders.items():
        asker = program(made.text)
        for method, address in operations():
            row = need(method, address)
            if not isinstance(row, Scope):
                continue
            AccessKey.objects.filter(pk=made.row.pk).update(scopes=[each for each in Scope if each != row])
            assert asked(asker, method, addresses[address]) == (403, "scope-missing"), (holder, method, address)
            AccessKey.objects.filter(pk=made.row.pk).update(scopes=[row])
            status, code = asked(asker, method, addresses[address])
            opens = holder != "service" or row in FOR_SERVICES
            assert (status != 401 and code not in REFUSED) is opens, (holder, method, address, status, code)


def test_a_token_opens_what_its_scope_and_the_role_of_its_person_do(
    addresses: dict[str, str], people: dict[str, Person], rosa: Person
) -> None:
    made = for_people(rosa)
    texts = {name: allowed(session(made), person)["access_token"] for name, person in people.items()}
    may = {name: OF_ROLE[Role(name)] for name in people} | {"service": FOR_SERVICES}
    # What a scope is for any of them the keys above tell.
    texts = {**texts, "service": token_for_itself(for_itself(rosa))}
    for place, (holder, text) in enumerate(texts.items()):
        asker, row = program(text), AccessToken.objects.filter(token_checksum=hash_of(text))
        for method, address in dealt(operations(), place, len(texts)):
            scope = need(method, address)
            if scope is Without.KEY:
                assert asked(asker, method, addresses[address]) == (403, "key-opens-not"), (holder, method, address)
            if not isinstance(scope, Scope):
                continue
            row.update(scope=" ".join(each for each in Scope if each != scope))
            assert asked(asker, method, addresses[address]) == (403, "scope-missing"), (holder, method, address)
            row.update(scope=scope)
            status, code = asked(asker, method, addresses[address])
            opens = scope in may[holder]
            assert (status != 401 and code not in REFUSED) is opens, (holder, method, address, status, code)


def test_what_a_person_sees_a_client_sees_for_them(
    addresses: dict[str, str], people: dict[str, Person], rosa: Person
) -> None:
    made = for_people(rosa)
    for place, (name, person) in enumerate(people.items()):
        asker, browser = program(allowed(session(made), person)["access_token"]), client(person)
        open_to_them = [row for row in operations() if row[0] == "GET" and need(*row) in OF_ROLE[Role(name)]]
        for _, address in dealt(open_to_them, place, len(people)):
            by_token, by_hand = asker.get(addresses[address]), browser.get(addresses[address])
            assert by_token.status_code == by_hand.status_code, (person, address)
            if by_hand["Content-Type"] == "application/json":
                assert by_token.content == by_hand.content, (person, address)


def test_what_no_key_opens_is_closed_to_every_role(addresses: dict[str, str], people: dict[str, Person]) -> None:
    for name, person in people.items():
        asker = program(own_key(person).text)
        for method, address in operations():
            if need(method, address) is Without.KEY:
                answer = asked(asker, method, addresses[address])
                assert answer == (403, "key-opens-not"), (name, method, address)


def test_with_every_scope_a_script_sees_what_its_person_sees(
    addresses: dict[str, str], people: dict[str, Person], stranger: Person
) -> None:
    askers = (*people.values(), stranger)
    open_to_keys = [row for row in operations() if row[0] == "GET" and isinstance(need(*row), Scope)]
    for place, person in enumerate(askers):
        script, browser = program(own_key(person).text), client(person)
        for _, address in dealt(open_to_keys, place, len(askers)):
            by_key, by_hand = script.get(addresses[address]), browser.get(addresses[address])
            assert by_key.status_code == by_hand.status_code, (person, address)
            if by_hand["Content-Type"] in ("application/json", "application/fhir+json"):
                assert by_key.content == by_hand.content, (person, address)


def test_nobody_opens_what_needs_a_scope(addresses: dict[str, str]) -> None:
    for method, address in operations():
        if isinstance(need(method, address), Scope):
            assert asked(APIClient(), method, addresses[address])[0] == 401, (method, address)


def test_some_things_no_service_does_whatever_its_key_says(addresses: dict[str, str], rosa: Person) -> None:
    made = service_key(rosa)
    AccessKey.objects.filter(pk=made.row.pk).update(scopes=list(Scope))
    asker = program(made.text)
    closed = {
        f"{method} {address}"
        for method, address in operations()
        if need(method, address) is not Without.SIGN_IN and asked(asker, method, addresses[address])[1] in REFUSED
    }
    assert closed >= {each.replace(" ", f" {PREFIX}") for each in NEVER_BY_A_SERVICE}
    by_table = {
        f"{method} {address}"
        for method, address in operations()
        if (row := need(method, address)) is Without.KEY or (isinstance(row, Scope) and row not in FOR_SERVICES)
    }
    assert closed == by_table


def test_what_has_no_row_is_opened_by_no_key() -> None:
    assert need_of("GET", "api/v1/not-there") is None
    assert need_of("HEAD", "api/v1/cases/<uuid:case_id>") is Scope.CASES_READ
