"""What changed, as a system that keeps a copy reads it."""

from __future__ import annotations

from typing import Any

import pytest
from django.core import serializers
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from cases.api.v1.feed import ADDRESSES
from cases.domain.access.scopes import Scope
from cases.domain.feed import READ_ANEW, Bookmark, FeedKind, Resource
from cases.domain.plans.lifecycle import Decision
from cases.models import Case, Change, Person, Programme, ToothPlanVersion
from cases.services.charting import canals
from cases.services.common import feed as feed_service
from cases.services.people import programmes
from tests.api.test_cases_treatment import PHONE, REACHED, event, report
from tests.cast import API, canal_of, client, decide, open_case, problem
from tests.factories import PASSWORD
from tests.keys import program, service_key
from tests.planning.given import CHECK_KIT

CLOSE = {"kind": "close", "access_sealed": True}


def feed(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/changes"


def read(asker: APIClient, programme: Programme, **asked: Any) -> dict[str, Any]:
    answer = asker.get(feed(programme), asked)
    assert answer.status_code == 200, answer.content
    page: dict[str, Any] = answer.json()
    return page


def kinds(page: dict[str, Any]) -> list[str]:
    return [change["event"] or change["kind"] for change in page["results"]]


@pytest.fixture
def archive(rosa: Person) -> APIClient:
    return program(service_key(rosa, [Scope.CASES_READ, Scope.PEOPLE_READ]).text)


def test_a_course_is_told_in_order_and_each_address_shows_it(
    archive: APIClient, programme: Programme, priya: Person, vale: Person, submitted: ToothPlanVersion
) -> None:
    start = read(archive, programme, after="last")["next"]
    decide(vale, submitted, Decision.APPROVED)
    case = submitted.case
    report(priya, case, PHONE, event(submitted, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_000}, node="explore"))
    asks = event(submitted, 2, {"kind": "ask"})
    halts = event(submitted, 3, {"kind": "emergency", "what": "sudden_bleeding"}, canal="")
    report(priya, case, PHONE, asks, halts, event(submitted, 4, CLOSE, canal=""))
    page = read(archive, programme, after=start)
    assert kinds(page) == ["replan", "version_approved", "step", "ask", "emergency", "close"]
    positions = [change["position"] for change in page["results"]]
    assert positions == list(range(positions[0], positions[0] + 6))
    assert page["results"][3]["subject_id"] == asks["id"]
    for change in page["results"]:
        shown = archive.get(change["address"])
        assert shown.status_code == 200, change
        assert change["state"] is None or shown["ETag"].startswith(f'"{change["state"]}-')
    assert page["results"][1]["state"] == submitted.hash
    again = read(archive, programme, after=page["next"])
    assert again == {"results": [], "next": page["next"], "previous": None, "more": False}


def test_the_state_is_the_revision_that_the_case_has_now(
    archive: APIClient, programme: Programme, opened: Case
) -> None:
    canal = canal_of(opened, "P")
    for point in ("one cusp", "another cusp"):
        canals.change_canal(actor=opened.student, canal=canal, changes={"reference_point": point})
    changes = read(archive, programme)["results"]
    assert [change["kind"] for change in changes] == ["case_opened", "canal_changed", "canal_changed"]
    assert {change["state"] for change in changes} == {str(opened.revision + 2)}
    assert changes[-1]["address"] == f"{API}/canals/{canal.pk}"


def test_pages_go_on_where_the_one_before_ended(archive: APIClient, programme: Programme, molar: Case) -> None:
    whole = read(archive, programme)["results"]
    assert len(whole) > 4
    parts: list[Any] = []
    after, more = "0", True
    while more:
        page = read(archive, programme, after=after, limit=2)
        assert len(page["results"]) <= 2
        parts += page["results"]
        after, more = page["next"], page["more"]
    assert parts == whole
    assert after == read(archive, programme, after="last")["next"]


def test_students_see_their_own_cases_alone(
    programme: Programme, priya: Person, tom: Person, vale: Person, rosa: Person, opened: Case
) -> None:
    programmes.add_kit(actor=rosa, programme_id=programme.pk, kit=CHECK_KIT)
    of_tom = open_case(programme, tom)
    own = read(client(tom), programme)
    assert [(change["case_id"], change["position"]) for change in own["results"]] == [(str(of_tom.pk), 3)]
    assert len(read(client(vale), programme)["results"]) == 3
    # However far others' changes go, hers are not read again.
    assert read(client(priya), programme, after=own["next"])["results"] == []


def test_another_programme_is_not_there(
    stranger: Person, programme: Programme, opened: Case, elsewhere: Programme
) -> None:
    assert client(stranger).get(feed(programme)).status_code == 404
    assert read(client(stranger), elsewhere)["results"] == []


def test_a_key_without_the_scope_reads_nothing(rosa: Person, programme: Programme) -> None:
    answer = program(service_key(rosa, [Scope.PEOPLE_READ]).text).get(feed(programme))
    assert answer.status_code == 403


@pytest.mark.parametrize("after", ["7", "7-zz", "-1", "0-00000000", "now", "", "7-0c00ecf9 ", "٣-0c00ecf9"])
def test_what_no_page_has_named_is_refused(after: str, archive: APIClient, programme: Programme) -> None:
    answer = archive.get(feed(programme), {"after": after})
    assert set(problem(answer, 400, "not-understood")) == {"#/after"}


@pytest.mark.parametrize(
    "asked", [{"limit": "0"}, {"limit": "1001"}, {"wait_s": "31"}, {"wait_s": "-1"}, {"wait_s": "1.5"}]
)
def test_more_than_may_be_asked_for_is_refused(asked: dict[str, str], archive: APIClient, programme: Programme) -> None:
    assert archive.get(feed(programme), asked).status_code == 400


def test_who_read_more_than_there_is_begins_anew(archive: APIClient, programme: Programme, molar: Case) -> None:
    """The database was restored from a backup: the last changes are gone, and others come in their place."""
    page = read(archive, programme)
    lost = page["results"][-1]["position"]
    with connection.cursor() as cursor:
        cursor.execute("DELETE FROM cases_change WHERE position = %s", [lost])
    _refused(archive, programme, page["next"])
    canals.change_canal(actor=molar.student, canal=canal_of(molar, "P"), changes={"reference_point": "elsewhere"})
    assert read(archive, programme)["results"][-1]["position"] == lost
    _refused(archive, programme, page["next"])
    before = read(archive, programme, limit=lost - 1)["next"]
    assert [change["position"] for change in read(archive, programme, after=before)["results"]] == [lost]


def test_a_bookmark_holds_in_another_database(archive: APIClient, programme: Programme, molar: Case) -> None:
    """By Django's own dump, which keeps less of a time than a database does."""
    page = read(archive, programme, limit=3)
    dump = serializers.serialize("json", Change.objects.all())
    with connection.cursor() as cursor:
        cursor.execute("DELETE FROM cases_change")
    for row in serializers.deserialize("json", dump):
        row.save()
    assert read(archive, programme, after=page["next"])["results"][0]["position"] == 4


def _refused(archive: APIClient, programme: Programme, after: str) -> None:
    answer = archive.get(feed(programme), {"after": after})
    problem(answer, 409, "not-of-this-feed")
    assert "after=last" in answer.json()["detail"]


def test_the_same_page_again_is_not_sent(archive: APIClient, programme: Programme, molar: Case) -> None:
    tag = archive.get(feed(programme))["ETag"]
    assert archive.get(feed(programme), headers={"If-None-Match": tag}).status_code == 304
    canals.change_canal(actor=molar.student, canal=canal_of(molar, "P"), changes={"reference_point": "elsewhere"})
    assert archive.get(feed(programme), headers={"If-None-Match": tag}).status_code == 200


def test_a_page_asks_as_much_of_the_database_however_long_it_is(
    archive: APIClient, programme: Programme, proposed: ToothPlanVersion
) -> None:
    def asked_for(limit: int) -> int:
        with CaptureQueriesContext(connection) as asked:
            assert len(read(archive, programme, limit=limit)["results"]) == limit
        return len(asked)

    count = len(read(archive, programme)["results"])
    last = read(archive, programme, limit=count - 1)["next"]
    read(archive, programme, after=last)
    assert asked_for(2) == asked_for(count - 1)


def test_who_belongs_to_the_programme_is_told_from_the_administration(
    archive: APIClient, programme: Programme, tom: Person, rosa: Person
) -> None:
    rosa.is_staff = rosa.is_superuser = True
    rosa.save()
    browser = Client()
    assert browser.login(username="rosa", password=PASSWORD)
    start = read(archive, programme, after="last")["next"]
    fields = {"username": "tom", "display_name": "Tom H.", "is_active": "on"}
    assert browser.post(f"/admin/cases/person/{tom.pk}/change/", fields).status_code == 302
    (change,) = read(archive, programme, after=start)["results"]
    assert (change["kind"], change["subject_id"], change["actor_id"]) == ("person_changed", str(tom.pk), str(rosa.pk))
    people = archive.get(change["address"]).json()["results"]
    assert "Tom H." in [each["person"]["name"] for each in people]


def test_every_kind_has_an_address_and_every_line_of_the_log_a_kind() -> None:
    assert set(READ_ANEW) == set(FeedKind)
    assert set(ADDRESSES) == set(Resource)
    logged = {kind for kind in feed_service.KINDS.values() if kind}
    assert set(FeedKind) - logged == {FeedKind.EVENT, FeedKind.IMAGE_ANNOUNCED}


def test_a_bookmark_is_read_as_it_is_written() -> None:
    for bookmark in (Bookmark(0, ""), Bookmark(1, "0c00ecf9"), Bookmark(10**17, "00000000")):
        assert Bookmark.read(str(bookmark)) == bookmark
    assert Change._meta.get_field("kind").max_length == max(map(len, FeedKind))
