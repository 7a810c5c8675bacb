"""A program acts for a person who allows it: an authorisation code with PKCE (RFC 6749, 4.1; RFC 7636; RFC 8252;
RFC 9207), driven by a client of other make."""

from __future__ import annotations

import hashlib
import json
from base64 import urlsafe_b64encode
from collections.abc import Iterator
from typing import Any

import pytest
from authlib.common.security import generate_token
from authlib.integrations.base_client.errors import OAuthError
from django.apps import apps

from cases.domain.access.client_kinds import ActsFor, ClientType
from cases.domain.access.roles import Role
from cases.domain.access.scopes import OF_ROLE, Scope
from cases.models import Case, ChangeLog, Consent, Person, Programme, ToothPlanVersion
from cases.services.people import clients
from cases.services.people.clients import NewClient
from tests.cast import API, client, problem
from tests.factories import member
from tests.keys import program
from tests.oauth import (
    CHALLENGE,
    INTROSPECT,
    REVOKE,
    TOKEN,
    VERIFIER,
    allowed,
    browser_of,
    code_of,
    for_people,
    redeemed,
    session,
)

KEY, CONSENTS = f"{API}/key", f"{API}/consents"
READ = (Scope.CASES_READ,)


def test_the_vector_of_rfc_7636_appendix_b() -> None:
    octets = bytes([19, 211, 30, 150, 26, 26, 216, 236, 47, 22, 177, 12, 76, 152, 46, 8, 118, 168, 120, 173, 109, 241])
    assert hashlib.sha256(VERIFIER.encode()).digest()[:22] == octets
    assert urlsafe_b64encode(hashlib.sha256(VERIFIER.encode()).digest()).decode().rstrip("=") == CHALLENGE


@pytest.mark.parametrize("client_type", list(ClientType))
def test_a_person_allows_a_program_and_it_sees_what_they_see(
    rosa: Person, priya: Person, opened: Case, client_type: ClientType
) -> None:
    library = session(for_people(rosa, READ, client_type=client_type), READ)
    token = allowed(library, priya)
    assert (token["scope"], token["expires_in"], token["token_type"]) == ("cases:read", 900, "Bearer")
    asker = program(token["access_token"])
    assert asker.get(f"{API}/cases/{opened.pk}").json() == client(priya).get(f"{API}/cases/{opened.pk}").json()
    shown = asker.get(KEY).json()
    assert (shown["name"], shown["person"]["name"], shown["scopes"]) == ("Course diary", "Priya", ["cases:read"])
    problem(asker.patch(f"{API}/cases/{opened.pk}", {"isolated": True}), 403, "scope-missing")
    problem(asker.get(CONSENTS), 403, "key-opens-not")


@pytest.mark.parametrize(
    ("other", "error"),
    [
        ({"code_verifier": VERIFIER[:-1] + "l"}, "invalid_grant"),
        ({"code_verifier": CHALLENGE}, "invalid_grant"),
        ({"code_verifier": ""}, "invalid_grant"),
        ({"redirect_uri": "https://diary.example/back/"}, "invalid_request"),
    ],
)
def test_a_code_is_for_who_asked_alone(rosa: Person, priya: Person, other: dict[str, str], error: str) -> None:
    made = for_people(rosa)
    answer = redeemed(made, code_of(made, priya), **other)
    assert (answer.status_code, answer.json()["error"]) == (400, error)
    assert redeemed(made, "made-up").json()["error"] == "invalid_grant"


def test_a_code_is_no_use_to_another_client(rosa: Person, priya: Person) -> None:
    mine, other = for_people(rosa), for_people(rosa, name="Another")
    code = code_of(mine, priya)
    assert redeemed(other, code).json()["error"] == "invalid_grant"
    assert redeemed(mine, code).status_code == 200


def test_a_code_that_comes_twice_ends_what_came_of_it(rosa: Person, priya: Person) -> None:
    """RFC 6749, 4.1.2."""
    made = for_people(rosa)
    code = code_of(made, priya)
    token = redeemed(made, code).json()
    refreshed = session(made, token=token).refresh_token(TOKEN)
    assert program(refreshed["access_token"]).get(KEY).status_code == 200
    assert redeemed(made, code).json()["error"] == "invalid_grant"
    problem(program(refreshed["access_token"]).get(KEY), 401, "key-refused")
    with pytest.raises(OAuthError, match="invalid_grant"):
        session(made, token=refreshed).refresh_token(TOKEN)


def test_a_code_is_old_after_a_minute(rosa: Person, priya: Person) -> None:
    made = for_people(rosa)
    code = code_of(made, priya)
    apps.get_model("oauth2_provider", "Grant").objects.update(expires="2026-01-01T00:00:00Z")
    assert redeemed(made, code).json()["error"] == "invalid_grant"


def test_refreshing_turns_both_tokens_and_one_that_comes_twice_ends_all(rosa: Person, priya: Person) -> None:
    """RFC 9700, 4.14.2."""
    made = for_people(rosa)
    first = allowed(session(made), priya)
    second = session(made, token=first).refresh_token(TOKEN)
    assert {first["access_token"], first["refresh_token"]}.isdisjoint((second["access_token"], second["refresh_token"]))
    problem(program(first["access_token"]).get(KEY), 401, "key-refused")
    assert program(second["access_token"]).get(KEY).status_code == 200
    with pytest.raises(OAuthError, match="invalid_grant"):
        session(made, token=first).refresh_token(TOKEN)
    problem(program(second["access_token"]).get(KEY), 401, "key-refused")
    with pytest.raises(OAuthError, match="invalid_grant"):
        session(made, token=second).refresh_token(TOKEN)


def test_refreshing_narrows_scopes_and_never_widens_them(rosa: Person, priya: Person) -> None:
    made = for_people(rosa)
    token = allowed(session(made, (Scope.CASES_READ, Scope.IMAGES_READ)), priya)
    with pytest.raises(OAuthError, match="invalid_scope"):
        session(made, token=token).refresh_token(TOKEN, scope="cases:read cases:write")
    narrow = session(made, token=token).refresh_token(TOKEN, scope="cases:read")
    assert narrow["scope"] == "cases:read"


def test_a_refresh_token_is_no_use_to_another_client(rosa: Person, priya: Person) -> None:
    token = allowed(session(for_people(rosa)), priya)
    with pytest.raises(OAuthError, match="invalid_grant"):
        session(for_people(rosa, name="Another"), token=token).refresh_token(TOKEN)


@pytest.mark.parametrize("role", list(Role))
def test_nothing_is_given_that_the_role_leaves_closed(programme: Programme, rosa: Person, role: Role) -> None:
    person = member(programme, "someone", role)
    token = allowed(session(for_people(rosa)), person)
    assert set(token["scope"].split()) == set(OF_ROLE[role])
    # Whoever has another role today has what that one leaves open, of what was allowed.
    person.memberships.update(role=Role.STUDENT)
    now = program(token["access_token"]).get(KEY).json()["scopes"]
    assert set(now) == set(OF_ROLE[role]) & set(OF_ROLE[Role.STUDENT])


def test_a_supervisor_decides_through_a_program_with_the_scope_alone(
    rosa: Person, vale: Person, priya: Person, submitted: ToothPlanVersion
) -> None:
    made = for_people(rosa)
    address = f"{API}/plan-versions/{submitted.pk}/reviews"
    decision = {"decision": "returned", "note": "The reference point of MB1, please."}
    tag = {"If-Match": f'"{submitted.hash}"'}
    reads = program(allowed(session(made, READ), vale)["access_token"])
    problem(reads.post(address, decision, format="json", headers=tag), 403, "scope-missing")
    decides = program(allowed(session(made, (Scope.REVIEWS_WRITE, Scope.CASES_READ)), vale)["access_token"])
    answer = decides.post(address, decision, format="json", headers=tag)
    assert answer.status_code == 201, answer.json()
    entered = decides.get(f"{API}/cases/{submitted.case_id}/record").json()["record"]["entered"]
    assert [(each["service"], each["person"]["name"], each["says"]) for each in entered] == [
        ("Course diary", "Vale", "plan returned")
    ]


def test_what_a_person_does_through_a_program_is_theirs_by_it(rosa: Person, priya: Person, opened: Case) -> None:
    asker = program(allowed(session(for_people(rosa), (Scope.CASES_READ, Scope.CASES_WRITE)), priya)["access_token"])
    tag = asker.get(f"{API}/cases/{opened.pk}")["ETag"]
    changed = asker.patch(f"{API}/cases/{opened.pk}", {"isolated": True}, format="json", headers={"If-Match": tag})
    assert changed.status_code == 200, changed.json()
    line = ChangeLog.objects.get(verb="change", subject="Case")
    assert (line.actor, line.client and line.client.name) == (priya, "Course diary")


def test_it_acts_in_its_own_programme_alone(rosa: Person, priya: Person, opened: Case, elsewhere: Programme) -> None:
    """Whoever belongs to two programmes lets a program of one act in that one."""
    priya.memberships.create(programme=elsewhere, role=Role.STUDENT)
    other = Case.objects.get(pk=opened.pk)
    asker = program(allowed(session(for_people(rosa)), priya)["access_token"])
    assert asker.get(f"{API}/programmes/{opened.programme_id}/cases").status_code == 200
    assert [each["id"] for each in asker.get(KEY).json()["programmes"]] == [str(opened.programme_id)]
    assert client(priya).get(f"{API}/programmes/{elsewhere.pk}/cases").status_code == 200
    problem(asker.get(f"{API}/programmes/{elsewhere.pk}/cases"), 404, "not-found")
    Case.objects.filter(pk=other.pk).update(programme=elsewhere)
    assert client(priya).get(f"{API}/cases/{other.pk}").status_code == 200
    problem(asker.get(f"{API}/cases/{other.pk}"), 404, "not-found")
    # Where no address names the programme, as FHIR's do not.
    patients = "/api/fhir/R4/Patient"
    assert len(client(priya).get(patients).json()["entry"]) == 1
    assert not asker.get(patients).json().get("entry")


def sign_in_changes(person: Person) -> None:
    """A new password ends all sessions of a person."""
    person.set_password(generate_token(20))
    person.save()


def is_removed(person: Person) -> None:
    Person.objects.filter(pk=person.pk).update(is_active=False)


def leaves(person: Person) -> None:
    person.memberships.all().delete()


def ends_it(person: Person) -> None:
    (row,) = client(person).get(CONSENTS).json()["results"]
    assert (row["client"]["name"], row["client"]["programme"]["name"]) == ("Course diary", "Check programme")
    assert client(person).delete(f"{CONSENTS}/{row['id']}").status_code == 204
    assert client(person).get(CONSENTS).json()["results"] == []


def ends_it_on_the_page(person: Person) -> None:
    browser = browser_of(person)
    assert "Course diary" in browser.get("/oauth/consents").content.decode()
    assert browser.post("/oauth/consents", {"end": str(Consent.objects.get().pk)}).status_code == 302
    assert "None does." in browser.get("/oauth/consents").content.decode()


@pytest.mark.parametrize("ends", [sign_in_changes, is_removed, leaves, ends_it, ends_it_on_the_page])
def test_it_acts_no_more(rosa: Person, priya: Person, ends: Any) -> None:
    made = for_people(rosa)
    code, token = code_of(made, priya), allowed(session(made), priya)
    assert program(token["access_token"]).get(KEY).status_code == 200
    ends(priya)
    problem(program(token["access_token"]).get(KEY), 401, "key-refused")
    with pytest.raises(OAuthError, match="invalid_grant"):
        session(made, token=token).refresh_token(TOKEN)
    assert redeemed(made, code).json()["error"] == "invalid_grant"


def test_what_died_with_a_password_stays_dead_when_it_is_allowed_anew(rosa: Person, priya: Person) -> None:
    made = for_people(rosa)
    old = allowed(session(made), priya)
    sign_in_changes(priya)
    new = allowed(session(made), priya)
    problem(program(old["access_token"]).get(KEY), 401, "key-refused")
    assert program(new["access_token"]).get(KEY).status_code == 200


def test_a_client_that_revokes_its_refresh_token_holds_nothing_any_more(rosa: Person, priya: Person) -> None:
    """RFC 7009, 2.1."""
    library = session(for_people(rosa))
    token = allowed(library, priya)
    assert library.revoke_token(REVOKE, token=token["refresh_token"]).status_code == 200
    problem(program(token["access_token"]).get(KEY), 401, "key-refused")
    assert client(priya).get(CONSENTS).json()["results"] == []


def test_nobody_ends_what_another_person_allowed(rosa: Person, priya: Person, tom: Person) -> None:
    allowed(session(for_people(rosa)), priya)
    problem(client(tom).delete(f"{CONSENTS}/{Consent.objects.get().pk}"), 404, "not-found")


def test_asking_what_a_token_is_names_the_person_by_id_alone(rosa: Person, priya: Person) -> None:
    token = allowed(session(for_people(rosa), READ), priya)
    asks = session(for_people(rosa, name="Asks", client_type=ClientType.CONFIDENTIAL))
    said = asks.introspect_token(INTROSPECT, token=token["access_token"]).json()
    assert said["sub"] == str(priya.pk)
    assert "priya" not in json.dumps(said).lower()


def columns() -> Iterator[str]:
    """Every value of every row of every table, as text."""
    for model in apps.get_models(include_auto_created=True):
        for row in model._default_manager.values_list():
            yield from map(str, row)


def test_nothing_that_opens_lies_in_the_database(rosa: Person, priya: Person) -> None:
    made = for_people(rosa, client_type=ClientType.CONFIDENTIAL)
    code, token = code_of(made, priya), allowed(session(made), priya)
    itself = clients.grant(
        actor=rosa,
        programme_id=rosa.memberships.get().programme_id,
        new=NewClient(
            name="X", acts_for=ActsFor.ITSELF, client_type=ClientType.CONFIDENTIAL, scopes=READ, redirect_uris=()
        ),
    )
    text = session(itself).fetch_token(TOKEN, grant_type="client_credentials")["access_token"]
    opens = [code, token["access_token"], token["refresh_token"], text, made.secret, itself.secret, VERIFIER]
    everything = "\n".join(columns())
    assert made.row.client_id in everything
    for each in opens:
        assert each
        assert each.rpartition("_")[2] not in everything
