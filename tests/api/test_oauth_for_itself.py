"""A program asks with tokens for itself: client credentials (RFC 6749, 4.4), driven by a client of other make."""

from __future__ import annotations

import base64
from typing import Any

import pytest
from authlib.integrations.base_client.errors import OAuthError
from django.test import Client as Browser
from django.utils import timezone
from oauth2_provider.models import AccessToken

from cases.domain.access.roles import Role
from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.models import Case, ChangeLog, Client, Person, Programme, Service, Webhook
from cases.services.people import clients, tries
from cases.services.webhooks import outbox
from tests.cast import API, problem
from tests.factories import member
from tests.keys import program
from tests.oauth import INTROSPECT, REVOKE, TOKEN, for_itself, for_people, session, token_for_itself

KEY = f"{API}/key"
GIVEN = {
    "patient_alias": "Bench 7",
    "tooth": {"notation": "iso_3950", "designation": "26"},
    "setting": "extracted",
}


def asked_by_hand(made: Any, secret: str, **more: str) -> Any:
    basic = base64.b64encode(f"{made.row.client_id}:{secret}".encode()).decode()
    return Browser().post(
        "/oauth/token", {"grant_type": "client_credentials", **more}, HTTP_AUTHORIZATION=f"Basic {basic}"
    )


def test_a_program_gets_a_token_and_says_who_it_is(rosa: Person, programme: Programme) -> None:
    token = session(for_itself(rosa), (Scope.CASES_READ,)).fetch_token(TOKEN, grant_type="client_credentials")
    assert token["token_type"] == "Bearer"
    assert token["scope"] == "cases:read"
    assert token["expires_in"] == 900
    # RFC 6749, 4.4.3: whoever has a secret needs no second one to refresh with.
    assert "refresh_token" not in token
    shown = program(token["access_token"]).get(KEY).json()
    assert (shown["name"], shown["person"], shown["scopes"]) == ("Timetable", None, ["cases:read"])
    assert [each["id"] for each in shown["programmes"]] == [str(programme.pk)]


def test_what_it_enters_for_a_student_is_said_in_the_record(rosa: Person, programme: Programme, priya: Person) -> None:
    asker = program(token_for_itself(for_itself(rosa)))
    opened = asker.post(f"{API}/programmes/{programme.pk}/cases", GIVEN | {"student_id": str(priya.pk)}, format="json")
    assert opened.status_code == 201, opened.json()
    record = asker.get(f"{API}/cases/{Case.objects.get().pk}/record").json()["record"]
    (entered,) = record["entered"]
    assert (entered["service"], entered["person"]["name"], entered["says"]) == ("Timetable", "Priya", "case opened")
    line = ChangeLog.objects.get(case=Case.objects.get())
    assert (line.client, line.key) == (Client.objects.get(), None)


def test_a_client_and_a_key_of_one_name_are_one_service(rosa: Person) -> None:
    for_itself(rosa, name="Image archive")
    for_itself(rosa, name="Image archive")
    assert Service.objects.count() == 1


@pytest.mark.parametrize("scope", ["reviews:write", "events:write", "everything"])
def test_a_scope_that_it_was_not_made_with_is_refused(rosa: Person, scope: str) -> None:
    with pytest.raises(OAuthError, match="invalid_scope"):
        session(for_itself(rosa), scope=scope).fetch_token(TOKEN, grant_type="client_credentials")


def test_a_persons_own_word_is_not_taken_whatever_the_rows_say(rosa: Person, proposed: Any) -> None:
    made = for_itself(rosa)
    text = token_for_itself(made)
    Client.objects.update(scopes=list(Scope))
    AccessToken.objects.update(scope=" ".join(Scope))
    assert program(text).get(KEY).json()["scopes"] == list(FOR_SERVICES)
    for address in (f"plan-versions/{proposed.pk}/reviews", f"cases/{proposed.case_id}/events"):
        problem(program(text).post(f"{API}/{address}", {}), 403, "scope-missing")


def test_a_wrong_secret_is_refused_with_a_challenge_and_after_many_not_looked_at(rosa: Person) -> None:
    made = for_itself(rosa)
    for _ in range(tries.MOST_FOR_ONE_NAME):
        answer = asked_by_hand(made, "wrong")
        assert (answer.status_code, answer.json()["error"]) == (401, "invalid_client")
        assert answer["WWW-Authenticate"] == 'Basic realm="fourth-canal"'
    late = asked_by_hand(made, str(made.secret))
    assert (late.status_code, late["Retry-After"]) == (429, "300")
    other = for_itself(rosa, name="Another")
    assert asked_by_hand(other, str(other.secret)).status_code == 200


@pytest.mark.parametrize("form", [{"grant_type": "password", "username": "priya", "password": "x"}, {}])
def test_other_grants_are_not_offered(rosa: Person, form: dict[str, str]) -> None:
    made = for_itself(rosa)
    answer = asked_by_hand(made, str(made.secret), **{"grant_type": "", **form})
    assert (answer.status_code, answer.json()["error"]) == (400, "unsupported_grant_type")


def test_a_client_for_people_gets_nothing_for_itself(rosa: Person) -> None:
    with pytest.raises(OAuthError, match=r"unauthorized_client|invalid_client"):
        session(for_people(rosa)).fetch_token(TOKEN, grant_type="client_credentials")


def test_a_token_counts_until_it_ends_or_is_revoked(rosa: Person) -> None:
    made = for_itself(rosa)
    library = session(made)
    ended = library.fetch_token(TOKEN, grant_type="client_credentials")["access_token"]
    AccessToken.objects.update(expires="2026-01-01T00:00:00Z")
    revoked = library.fetch_token(TOKEN, grant_type="client_credentials")["access_token"]
    assert library.revoke_token(REVOKE, token=revoked).status_code == 200
    left = library.fetch_token(TOKEN, grant_type="client_credentials")["access_token"]
    clients.revoke(actor=rosa, programme_id=rosa.memberships.get().programme_id, id=made.row.pk)
    for text in (ended, revoked, left, "fourthcanal_token_" + "0" * 64):
        answer = program(text).get(KEY)
        problem(answer, 401, "key-refused")
        # RFC 6750, 3.1.
        assert 'error="invalid_token"' in answer["WWW-Authenticate"]
    with pytest.raises(OAuthError, match="invalid_client"):
        library.fetch_token(TOKEN, grant_type="client_credentials")


def test_nobody_revokes_the_token_of_another_client(rosa: Person) -> None:
    text = token_for_itself(for_itself(rosa))
    assert session(for_itself(rosa, name="Another")).revoke_token(REVOKE, token=text).status_code == 200
    assert program(text).get(KEY).status_code == 200


def test_what_a_token_is_is_told_to_its_programme_alone(rosa: Person, elsewhere: Programme) -> None:
    others = for_itself(member(elsewhere, "keeper", Role.COORDINATOR))
    text = token_for_itself(for_itself(rosa, name="Asks"), (Scope.CASES_READ,))
    beside = session(for_itself(rosa, name="Beside"))
    said = beside.introspect_token(INTROSPECT, token=text).json()
    assert (said["active"], said["scope"], said["token_type"]) == (True, "cases:read", "Bearer")
    assert said["sub"] == str(Service.objects.get(name="Asks").pk)
    # RFC 7662, 2.2: nothing but that it does not count.
    assert session(others).introspect_token(INTROSPECT, token=text).json() == {"active": False}
    public = session(for_people(rosa), token_endpoint_auth_method="none")
    assert public.introspect_token(INTROSPECT, token=text).json() == {"active": False}
    assert Browser().post("/oauth/introspect", {"token": text}).status_code == 401
    assert beside.introspect_token(INTROSPECT, token="made-up").json() == {"active": False}


def test_a_service_does_not_reach_another_programme(rosa: Person, elsewhere: Programme, opened: Case) -> None:
    asker = program(token_for_itself(for_itself(rosa)))
    problem(asker.get(f"{API}/programmes/{elsewhere.pk}/cases"), 404, "not-found")
    Case.objects.filter(pk=opened.pk).update(programme=elsewhere)
    problem(asker.get(f"{API}/cases/{opened.pk}"), 404, "not-found")


def test_the_metadata_tells_what_is_offered_and_no_more(db: None) -> None:
    """RFC 8414, 2, and RFC 9728, 2."""
    answer = Browser().get("/.well-known/oauth-authorization-server")
    metadata = answer.json()
    assert metadata["issuer"] == "http://testserver"
    assert metadata["response_types_supported"] == ["code"]
    assert metadata["grant_types_supported"] == ["authorization_code", "client_credentials", "refresh_token"]
    assert metadata["code_challenge_methods_supported"] == ["S256"]
    assert metadata["scopes_supported"] == sorted(Scope)
    assert metadata["authorization_response_iss_parameter_supported"] is True
    assert "none" in metadata["token_endpoint_auth_methods_supported"]
    assert "none" not in metadata["introspection_endpoint_auth_methods_supported"]
    assert {metadata[f"{name}_endpoint"] for name in ("authorization", "token", "revocation", "introspection")} == {
        f"http://testserver/oauth/{name}" for name in ("authorize", "token", "revoke", "introspect")
    }
    resource = Browser().get("/.well-known/oauth-protected-resource").json()
    assert resource["authorization_servers"] == [metadata["issuer"]]
    assert resource["scopes_supported"] == sorted(Scope)
    assert resource["bearer_methods_supported"] == ["header"]


def test_it_keeps_a_webhook_as_its_service_and_is_told_while_it_is_registered(
    rosa: Person, programme: Programme
) -> None:
    made = for_itself(rosa)
    asker = program(token_for_itself(made))
    at = f"{API}/programmes/{programme.pk}/webhooks"
    kept = asker.post(at, {"address": "https://records.example/told", "kinds": ["case_opened"]}, format="json")
    assert kept.status_code == 201, kept.json()
    webhook = Webhook.objects.get()
    assert webhook.service == Service.objects.get(name="Timetable")
    assert outbox._may_be_told(webhook, timezone.now())
    clients.revoke(actor=rosa, programme_id=programme.pk, id=made.row.pk)
    assert not outbox._may_be_told(webhook, timezone.now())
