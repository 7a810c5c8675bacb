"""Notifications of supervisors, against a push service on this machine."""

from __future__ import annotations

import time
from collections.abc import Iterator
from importlib import import_module
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric import ec
from django.apps import apps
from pytest_django import DjangoCaptureOnCommitCallbacks, Settings

from cases.models import Person, PushKey, PushSubscription, ToothPlanVersion, TreatmentEvent
from cases.services.people import push, push_sender
from cases.services.people.sealed import point, quoted
from tests.api.test_cases_treatment import APPROVED, LAPTOP, PHONE, event, report, to_the_length_hold_point
from tests.cast import API, client, problem
from tests.push_service import Browser, PushService, claims, push_service, raw

AT = "length/sign-off"
EMERGENCY = {"kind": "emergency", "what": "instrument_separated"}
SENT_LATER = push_sender.put
ASK = {"kind": "ask", "note": "Tip looks 1 mm short."}


@pytest.fixture(autouse=True)
def here(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    """Push services of this machine are let in; what is sent is sent at once, and again without a pause."""
    settings.PUSH_HTTP_HERE = True
    monkeypatch.setattr(push_sender, "put", push_sender.deliver)
    monkeypatch.setattr(push_sender, "RETRIES", push_sender.RETRIES.new(backoff_factor=0))


@pytest.fixture
def service() -> Iterator[PushService]:
    with push_service() as service:
        yield service


def subscribe(person: Person | None, endpoint: str, browser: Browser | None = None) -> Any:
    body = {"endpoint": endpoint} | (browser or Browser()).keys
    return client(person).put(f"{API}/push-subscription", body, format="json")


def unsubscribe(person: Person | None, endpoint: str) -> Any:
    return client(person).delete(f"{API}/push-subscription", query_params={"endpoint": endpoint})


def key(person: Person) -> str:
    return str(client(person).get(f"{API}/push-key").json()["key"])


@pytest.fixture
def reporter(django_capture_on_commit_callbacks: DjangoCaptureOnCommitCallbacks) -> Any:
    """Reports, and has done what waits for the commit."""

    def reported(*args: Any) -> Any:
        with django_capture_on_commit_callbacks(execute=True):
            return report(*args)

    return reported


def test_the_reader_of_these_tests_reads_the_published_example() -> None:
    """RFC 8291, section 5."""
    number = int.from_bytes(raw("q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94"))
    browser = Browser(ec.derive_private_key(number, ec.SECP256R1()), raw("BTBZMqHH6r4Tts7J_aSIgg"))
    sealed = (
        "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBr"
        "u3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN"
    )
    assert browser.read(raw(sealed)) == b"When I grow up, I want to be a watermelon"


def test_a_canal_that_comes_to_a_hold_point_is_told(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    browser = Browser()
    assert subscribe(vale, f"{service.at}/vale", browser).status_code == 204
    explored = event(approved, 1, {"kind": "step", "exit": "reached", "depth_um": 18_000}, node="explore/10-02")
    rinsed = event(approved, 2, {"kind": "step", "exit": "done"}, node="explore/10-02/irrigate")
    reporter(priya, approved.case, PHONE, explored, rinsed)
    assert service.got == []
    reporter(priya, approved.case, PHONE, event(approved, 3, {"kind": "step", "exit": "done"}, node="length/image"))
    assert service.messages(browser) == [
        {
            "case_id": str(approved.case_id),
            "alias": "Bench 1",
            "tooth": "26",
            "canal": "DB",
            "what": "hold_point",
            "hold_point": "length",
        }
    ]


def test_the_headers_are_those_of_the_standards(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    subscribe(vale, f"{service.at}/vale")
    to_the_length_hold_point(priya, approved)
    for seq, what in ((4, ASK), (5, ASK), (6, EMERGENCY)):
        reporter(priya, approved.case, PHONE, event(approved, seq, what, node=AT, canal="DB" if what is ASK else ""))
    headers = [headers for path, headers, _ in service.got if path == "/vale"]
    assert [header["Urgency"] for header in headers] == ["normal", "normal", "high"]
    topics = [header["Topic"] for header in headers]
    assert topics[0] == topics[1] != topics[2]
    # RFC 8030, 5.4: at most 32 characters of base64url.
    assert all(len(raw(topic)) == 24 for topic in topics)
    assert {(header["TTL"], header["Content-Encoding"]) for header in headers} == {("3600", "aes128gcm")}
    for header in headers:
        claimed = claims(header["Authorization"], key(vale))
        # RFC 8292, 2: the origin of the push service, and at most a day.
        assert claimed["aud"] == service.at
        assert 0 < claimed["exp"] - time.time() <= 86_400
        assert claimed["sub"].startswith("https://")


def test_each_thing_is_told_once(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    browser = Browser()
    subscribe(vale, f"{service.at}/vale", browser)
    to_the_length_hold_point(priya, approved)
    asked = event(approved, 4, ASK, node=AT)
    halted = event(approved, 5, EMERGENCY, canal="")
    for reported in (asked, asked, halted, halted, event(approved, 6, {"kind": "note", "text": "Seen."})):
        reporter(priya, approved.case, PHONE, reported)
    assert [message["what"] for message in service.messages(browser)] == ["asked", "emergency"]
    assert service.messages(browser)[1]["canal"] == ""


def test_canals_asked_for_in_one_are_told_in_one(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    browser = Browser()
    subscribe(vale, f"{service.at}/vale", browser)
    both = ASK | {"together": "0190"}
    asked = [event(approved, seq, both, node=AT, canal=name) for seq, name in ((1, "DB"), (2, "P"))]
    reporter(priya, approved.case, PHONE, *asked)
    assert [(message["what"], message["canal"]) for message in service.messages(browser)] == [("asked", "DB, P")]


def test_who_asked_on_the_way_is_told_again_at_the_hold_point(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    browser = Browser()
    subscribe(vale, f"{service.at}/vale", browser)
    reporter(priya, approved.case, PHONE, event(approved, 1, ASK, node="explore/10-02"))
    explored = event(approved, 2, {"kind": "step", "exit": "reached", "depth_um": 18_000}, node="explore/10-02")
    rinsed = event(approved, 3, {"kind": "step", "exit": "done"}, node="explore/10-02/irrigate")
    reporter(priya, approved.case, PHONE, explored, rinsed)
    reporter(priya, approved.case, PHONE, event(approved, 4, {"kind": "step", "exit": "done"}, node="length/image"))
    messages = [(message["what"], message["hold_point"]) for message in service.messages(browser)]
    assert messages == [("asked", ""), ("hold_point", "length")]


def test_a_word_is_no_news(
    priya: Person, vale: Person, approved: ToothPlanVersion, service: PushService, reporter: Any
) -> None:
    to_the_length_hold_point(priya, approved)
    subscribe(vale, f"{service.at}/vale")
    assert reporter(vale, approved.case, LAPTOP, event(approved, 1, APPROVED, node=AT)).status_code == 200
    assert service.got == []


def test_supervisors_of_the_programme_are_told_and_nobody_else(
    priya: Person,
    vale: Person,
    amari: Person,
    stranger: Person,
    approved: ToothPlanVersion,
    service: PushService,
    reporter: Any,
) -> None:
    for person in (vale, amari, stranger):
        assert subscribe(person, f"{service.at}/{person.username}").status_code == 204
    amari.is_active = False
    amari.save()
    reporter(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal=""))
    assert [path for path, _, _ in service.got] == ["/vale"]


def test_a_browser_that_is_gone_is_forgotten(
    priya: Person, vale: Person, approved: ToothPlanVersion, reporter: Any
) -> None:
    with push_service(410) as gone, push_service() as there:
        subscribe(vale, f"{gone.at}/laptop")
        subscribe(vale, f"{there.at}/phone")
        reporter(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal=""))
        assert (len(gone.got), len(there.got)) == (1, 1)
    assert [row.endpoint for row in PushSubscription.objects.all()] == [f"{there.at}/phone"]


@pytest.mark.parametrize(("answers", "tries"), [((503,), 4), ((503, 201), 2), ((302,), 1), ((403,), 1)])
def test_a_push_service_that_fails_does_not_fail_the_event(
    priya: Person, vale: Person, approved: ToothPlanVersion, reporter: Any, answers: tuple[int, ...], tries: int
) -> None:
    with push_service(*answers) as service:
        subscribe(vale, f"{service.at}/vale")
        answer = reporter(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal=""))
        assert (answer.status_code, len(service.got)) == (200, tries)
        assert {path for path, _, _ in service.got} == {"/vale"}
    assert TreatmentEvent.objects.filter(case=approved.case).exclude(kind="replan").count() == 1
    assert PushSubscription.objects.count() == 1


def test_nobody_there_does_not_fail_the_event(
    priya: Person, vale: Person, approved: ToothPlanVersion, reporter: Any
) -> None:
    with push_service() as service:
        subscribe(vale, f"{service.at}/vale")
    assert reporter(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal="")).status_code == 200


@pytest.mark.django_db(transaction=True)
def test_whatever_goes_wrong_after_the_commit_what_was_recorded_is_answered(
    priya: Person, vale: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    subscribe(vale, "https://push.example.net/x")
    tried: list[str] = []

    def out_of_order(letter: push_sender.Letter) -> None:
        tried.append(letter.endpoint)
        raise RuntimeError("out of order")

    monkeypatch.setattr(push_sender, "put", out_of_order)
    answer = report(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal=""))
    assert (answer.status_code, len(answer.json()["events"])) == (200, 2)  # the plan in force, and this
    assert tried == ["https://push.example.net/x"]


def test_threads_send_while_the_request_goes_on(
    priya: Person,
    vale: Person,
    approved: ToothPlanVersion,
    service: PushService,
    reporter: Any,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(push_sender, "put", SENT_LATER)
    browser = Browser()
    subscribe(vale, f"{service.at}/vale", browser)
    reporter(priya, approved.case, PHONE, event(approved, 1, EMERGENCY, canal=""))
    assert service.came.wait(timeout=20)
    assert [message["what"] for message in service.messages(browser)] == ["emergency"]


# --- who may, and where to ---


def test_the_key_stays_the_same_and_its_private_half_is_not_told(vale: Person, priya: Person) -> None:
    first = client(vale).get(f"{API}/push-key").json()
    assert first == client(priya).get(f"{API}/push-key").json()
    assert list(first) == ["key"]
    assert (len(raw(first["key"])), raw(first["key"])[0]) == (65, 4)
    assert "PRIVATE" in PushKey.objects.get().private_pem


def test_the_key_is_made_where_the_database_is_set_up(db: None) -> None:
    PushKey.objects.all().delete()
    make = import_module("cases.migrations.0002_push_key").make
    make(apps, None)
    made = PushKey.objects.get().private_pem
    make(apps, None)
    assert PushKey.objects.get().private_pem == made
    assert quoted(point(push.own_key())) == push.public_key()
    assert "PRIVATE KEY" in made


def test_nobody_signed_in_is_told_nothing() -> None:
    assert client(None).get(f"{API}/push-key").status_code == 401
    assert subscribe(None, "https://push.example.net/x").status_code == 401
    assert unsubscribe(None, "https://push.example.net/x").status_code == 401


def test_notifications_are_for_supervisors(priya: Person) -> None:
    problem(subscribe(priya, "https://push.example.net/x"), 403, "not-allowed")


def test_twice_is_once_and_the_next_person_at_the_browser_takes_it_over(vale: Person, amari: Person) -> None:
    for person in (vale, vale, amari):
        assert subscribe(person, "https://push.example.net/x").status_code == 204
    assert PushSubscription.objects.get().person == amari
    assert unsubscribe(vale, "https://push.example.net/x").status_code == 204
    assert PushSubscription.objects.count() == 1
    for _ in range(2):
        assert unsubscribe(amari, "https://push.example.net/x").status_code == 204
    assert PushSubscription.objects.count() == 0


def test_of_many_devices_the_oldest_go(vale: Person) -> None:
    for number in range(12):
        subscribe(vale, f"https://push.example.net/{number}")
    kept = {int(row.endpoint.rpartition("/")[2]) for row in PushSubscription.objects.filter(person=vale)}
    assert kept == set(range(2, 12))


INWARD = """
http://push.example.net/x        https://127.0.0.1/x        https://10.0.0.7/x       https://[::1]/x
https://[::ffff:10.0.0.7]/x      https://2130706433/x       https://0x7f.1/x         https://127.1/x
https://localhost/x              https://database/x         https://nas.local/x      https://push.example.net.:443/x
https://a.example.net@10.0.0.7/  https://10.0.0.7\\.example.net/x                    https://push.example.net:8443/x
https://8.8.8.8/x                file:///etc/passwd         https://[x/              http://127.0.0.2/x
"""


@pytest.mark.parametrize("endpoint", INWARD.split())
def test_no_address_leads_inwards(vale: Person, endpoint: str) -> None:
    assert list(problem(subscribe(vale, endpoint), 422, "not-usable")) == ["#/endpoint"]


def test_this_machine_is_a_push_service_in_tests_only(vale: Person, settings: Settings) -> None:
    settings.PUSH_HTTP_HERE = False
    problem(subscribe(vale, "http://127.0.0.1:9/x"), 422, "not-usable")


@pytest.mark.parametrize(
    ("field", "wrong"), [("p256dh", "AAAA"), ("p256dh", "!" * 87), ("auth", "AAAA"), ("auth", "é" * 22)]
)
def test_keys_that_are_none_are_named(vale: Person, field: str, wrong: str) -> None:
    body = {"endpoint": "https://push.example.net/x"} | Browser().keys | {field: wrong}
    answer = client(vale).put(f"{API}/push-subscription", body, format="json")
    assert list(problem(answer, 422, "not-usable")) == [f"#/{field}"]


def test_what_is_not_known_is_refused(vale: Person) -> None:
    body = {"endpoint": "https://push.example.net/x", "expirationTime": None} | Browser().keys
    problem(client(vale).put(f"{API}/push-subscription", body, format="json"), 400, "not-understood")
    problem(client(vale).delete(f"{API}/push-subscription"), 400, "not-understood")
