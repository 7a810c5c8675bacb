"""Tables of a programme, as other systems fetch them."""

from __future__ import annotations

import csv
import gc
import io
import json
import tracemalloc
from datetime import timedelta
from itertools import pairwise
from pathlib import Path
from statistics import median
from typing import Any
from unittest import mock
from urllib.request import Request

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from cases.domain.access.scopes import Scope
from cases.domain.plans.lifecycle import Decision
from cases.domain.struck import StruckWhy
from cases.models import Case, Person, Programme, ToothPlanVersion
from cases.queries.export import pages
from cases.queries.export.pages import TABLES, Page
from cases.services.charting import canals
from cases.services.corrections import struck
from cases.services.planning import overrides, plans, revocation
from cases.services.planning.plan_input import Asked
from cases.services.planning.reviews import Remark
from tests.api.test_cases_bends_in_space import FIRST as FIRST_VIEW
from tests.api.test_cases_bends_in_space import SECOND as SECOND_VIEW
from tests.api.test_cases_bends_in_space import combine, marked
from tests.api.test_cases_treatment import PHONE, REACHED, event, report
from tests.cast import API, canal_of, client, decide, open_case, problem
from tests.keys import program, service_key
from tests.many import copies
from tests.reference import feed_copy

FORMULA = '=HYPERLINK("http://example.org")'
TABLE_COLUMNS = {table.name: {column.name for column in table.columns} for table in TABLES.values()}


@pytest.fixture
def archive(rosa: Person) -> APIClient:
    return program(service_key(rosa, [Scope.EXPORT, Scope.CASES_READ, Scope.IMAGES_READ, Scope.PEOPLE_READ]).text)


@pytest.fixture
def full(
    programme: Programme,
    clinic: ToothPlanVersion,
    molar: Case,
    priya: Person,
    vale: Person,
    asked: Asked,
    tmp_path: Path,
) -> Programme:
    """Two cases of which something stands in every table, with texts that a table program would stumble over."""
    note = {"kind": "note", "text": f"{FORMULA}\r\nand, on a second line, “quoted”"}
    step = event(clinic, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_500}, node="explore/10-02")
    work = (step, event(clinic, 2, note), event(clinic, 3, {"kind": "reopen", "as_left": ["DB"]}, canal=""))
    assert report(priya, clinic.case, PHONE, *work).status_code == 200
    revocation.revoke(actor=vale, version=clinic, seen_hash=clinic.hash, reason="'quoted")
    views = [marked(priya, molar, tmp_path, root) for root in (FIRST_VIEW, SECOND_VIEW)]
    assert combine(priya, molar, views).status_code == 201
    reading = canal_of(molar, "P").readings.order_by("number")[0]
    struck.strike(actor=priya, reading=reading, why=StruckWhy.MISTYPED)
    canals.change_canal(actor=priya, canal=canal_of(molar, "P"), changes={"apex_mm": 1.2})
    molar.refresh_from_db()
    version = plans.submit(actor=priya, version=plans.propose(actor=priya, case=molar, asked=asked)[0])
    decide(vale, version, Decision.RETURNED, remarks=[Remark(canal="MB1", text="-3.5 mm?")], note="@Priya: again.")
    overrides.add(actor=vale, case=molar, code="apex-wide", canal="P", reason="+1 mm on the image")
    return programme


def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/export"


def contents(asker: APIClient, programme: Programme) -> dict[str, Any]:
    answer = asker.get(at(programme))
    assert answer.status_code == 200, answer.content
    shown: dict[str, Any] = answer.json()
    return shown


def pages_of(asker: APIClient, address: str, **asked: Any) -> list[bytes]:
    """Every page, gone on as the `Link` header says."""
    answer = asker.get(address, asked)
    parts = []
    while True:
        assert answer.status_code == 200, answer.content
        parts.append(answer.content)
        if "Link" not in answer.headers:
            return parts
        answer = asker.get(answer["Link"].removeprefix("<").partition(">")[0])


def rows_of(asker: APIClient, programme: Programme, table: str, **asked: Any) -> list[dict[str, Any]]:
    whole = b"".join(pages_of(asker, f"{at(programme)}/{table}.ndjson", **asked))
    return [json.loads(line) for line in whole.split(b"\n")[:-1]]


def value_of(cell: str, type_: str) -> Any:
    """What a cell of CSV holds, as the description says."""
    if cell == "":
        return None
    return cell.removeprefix("'") if type_ in ("id", "text", "moment") else json.loads(cell)


def test_csv_and_ndjson_of_every_table_hold_the_same(archive: APIClient, full: Programme) -> None:
    """Read back by the standard library's readers. In every table there is something, and in some a formula."""
    guarded = 0
    for table in contents(archive, full)["tables"]:
        types = {column["name"]: column["type"] for column in table["columns"]}
        rows = rows_of(archive, full, table["name"])
        assert rows, table["name"]
        assert all(list(row) == list(types) for row in rows)
        text = b"".join(pages_of(archive, table["csv"], limit=2)).decode()
        cells = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
        assert [{name: value_of(cell, types[name]) for name, cell in row.items()} for row in cells] == rows
        assert text.endswith("\r\n")
        texts = [cell for row in cells for name, cell in row.items() if types[name] == "text"]
        assert not [cell for cell in texts if cell.startswith(("=", "+", "-", "@", "\t", "\r"))]
        guarded += sum(cell.startswith("'") for cell in texts)
    # A note, a reason in two tables, a remark, another note, another reason.
    assert guarded == 6


def test_every_value_is_of_its_columns_type_and_unit(archive: APIClient, full: Programme) -> None:
    kinds: dict[str, Any] = {"whole": int, "yes_no": bool, "json": (list, dict), "number": (int, float)}
    for table in contents(archive, full)["tables"]:
        columns = {column["name"]: column for column in table["columns"]}
        assert len(columns) == len(table["columns"])
        assert next(iter(columns)) == "id"
        for row in rows_of(archive, full, table["name"]):
            for name, value in row.items():
                column = columns[name]
                assert value is None or isinstance(value, kinds.get(column["type"], str)), (table["name"], name, value)
                assert (column["unit"] == "mm") is name.endswith("_mm"), name
        assert not [name for name in columns if name.endswith("_um")]


def by_feed(archive: APIClient, programme: Programme) -> dict[str, Any]:
    """The cases as the feed's copy keeps them."""

    def urlopen(request: Request, timeout: float) -> io.BytesIO:
        return io.BytesIO(archive.get(request.full_url).content)

    with mock.patch.object(feed_copy, "urlopen", urlopen):
        copy = feed_copy.copied("http://testserver", "", str(programme.pk), None)
    assert copy["next"] == contents(archive, programme)["changes_after"]
    cases: dict[str, Any] = copy["cases"]
    return cases


def as_in_a_table(shown: dict[str, Any], **more: Any) -> dict[str, Any]:
    """A resource as a row: of people their ids, lengths in millimetres, nothing where it is empty."""
    row = {}
    for name, value in (shown | more).items():
        if name.endswith("_um"):
            row[name.removesuffix("um") + "mm"] = None if value is None else value / 1000
        elif isinstance(value, dict) and value.keys() == {"id", "name"}:
            row[f"{name}_id"] = value["id"]
        else:
            row[name] = None if value == "" else value
    return row


def charted(case: dict[str, Any]) -> dict[str, list[Any]]:
    """What the tables of a case's chart ought to hold."""
    roots = {root["name"]: root for root in case["roots"]}
    rows: dict[str, list[Any]] = {"canals": [], "readings": [], "junctions": []}
    for canal in case["canals"]:
        root, length = roots[canal["root"]], canal["length"]
        more = {"root_pattern": root["pattern"], "is_main": root["main_canal"] == canal["name"], "case_id": case["id"]}
        of_length = {"length_state": length["state"]} if length else {}
        rows["canals"].append(as_in_a_table(length or {}, **of_length, **canal, **more))
        for table, part in (("readings", "reading"), ("junctions", "junction")):
            for taken in canal[table]:
                struck_row = {f"struck_{name}": value for name, value in (taken["struck"] or {}).items()}
                ids = {"case_id": case["id"], "canal_id": canal["id"]}
                rows[table].append(as_in_a_table(taken[part], **taken, **as_in_a_table(struck_row), **ids))
    more = {"tooth": case["tooth"]["iso"], "plan_state": case["status"]["state"], "version_id": case["version"]["id"]}
    rows["cases"] = [as_in_a_table(case, **more)]
    rows["overrides"] = [as_in_a_table(each, case_id=case["id"]) for each in case["overrides"]]
    return rows


def planned(archive: APIClient, case: str) -> dict[str, list[Any]]:
    """What the tables of a case's plans ought to hold."""
    rows: dict[str, list[Any]] = {name: [] for name in ("plan-versions", "canal-plans", "reviews", "revocations")}
    for listed in archive.get(f"{API}/cases/{case}/plan-versions").json()["results"]:
        rows["plan-versions"].append(as_in_a_table(listed))
        for kind in ("reviews", "revocations"):
            rows[kind] += [as_in_a_table(each, version_id=listed["id"]) for each in listed[kind]]
        texts = archive.get(f"{API}/plan-versions/{listed['id']}/texts/{listed['hash']}").json()
        for canal in texts["plan"]["canals"]:
            length = {"length_state": canal["length"]["state"], "stop_mm": canal["length"]["stop_mm"]}
            rows["canal-plans"].append(as_in_a_table(canal, version_id=listed["id"], **length))
    return rows


def at_the_chair(archive: APIClient, case: str) -> dict[str, list[Any]]:
    """What the tables of a case's events and images ought to hold."""
    events = archive.get(f"{API}/cases/{case}/events").json()["events"]
    images = archive.get(f"{API}/cases/{case}/images").json()["images"]
    markings = []
    for image in images:
        marked_on = archive.get(f"{API}/cases/{case}/images/{image['id']}/markings").json()["markings"]
        markings += [as_in_a_table(each, case_id=case, image_id=image["id"]) for each in marked_on]
    return {
        "events": [as_in_a_table(each["payload"], **each, case_id=case) for each in events],
        "images": [as_in_a_table(each, case_id=case) for each in images],
        "markings": markings,
    }


NOT_IN_LISTS = {"canals": {"place"}, "overrides": {"version_id"}, "canal-plans": {"id"}, "events": {"kind"}}


def test_the_tables_hold_what_a_copy_by_the_feed_holds(archive: APIClient, full: Programme) -> None:
    """Row by row and column by column, against what the other addresses of the API show."""
    for case in by_feed(archive, full).values():
        id_ = case["id"]
        of_case = charted(case) | planned(archive, id_) | at_the_chair(archive, id_)
        for table, expected in of_case.items():
            rows = rows_of(archive, full, table, case_id=id_)
            untold = NOT_IN_LISTS.get(table, set())
            for row in expected:
                named = {name: row[name] for name in row if name in TABLE_COLUMNS[table]}
                fits = [each for each in rows if named.items() <= each.items()]
                assert len(fits) == 1, (table, named)
                assert all(fits[0][name] is None for name in fits[0].keys() - named.keys() - untold), (table, named)
            assert len(rows) == len(expected), table


def test_what_plans_are_made_from_is_as_the_api_shows_it(archive: APIClient, full: Programme, rosa: Person) -> None:
    """Kits, techniques and figures, every field of them; also where a page holds one row."""
    of_programme = f"{API}/programmes/{full.pk}"
    own = client(rosa).put(f"{of_programme}/figures/set_back.bone", {"value": 1.2}, format="json")
    assert own.status_code == 200, own.content
    shown = {
        name: archive.get(f"{of_programme}/{name}").json()["results"] for name in ("kits", "techniques", "figures")
    }
    expected = {
        "kits": [{"id": each["id"], "external_id": each["external_id"], **each["kit"]} for each in shown["kits"]],
        "techniques": [
            {"id": each["technique"].pop("key"), "provided": each["provided"], **each["technique"]}
            for each in shown["techniques"]
        ],
        "figures": [{"id": each.pop("key"), **each} for each in shown["figures"]],
    }
    for table, rows in expected.items():
        assert len(rows) > (table != "kits")
        in_order = [as_in_a_table(row) for row in sorted(rows, key=lambda row: str(row["id"]))]
        assert rows_of(archive, full, table) == rows_of(archive, full, table, limit=1) == in_order
    assert {row["own"] for row in rows_of(archive, full, "figures")} == {True, False}


def test_a_download_that_broke_off_goes_on_after_its_last_whole_line(archive: APIClient, full: Programme) -> None:
    """Whatever the line at which it broke off, in both forms; the pieces put together are the whole file."""
    ids = [row["id"] for row in rows_of(archive, full, "canals")]
    for ending, end in (("ndjson", b"\n"), ("csv", b"\r\n")):
        address = f"{at(full)}/canals.{ending}"
        (whole,) = pages_of(archive, address)
        lines = whole.split(end)[:-1]
        for count in range(1, len(ids)):
            kept = end.join(lines[: count + len(lines) - len(ids)]) + end
            assert kept + b"".join(pages_of(archive, address, after=ids[count - 1])) == whole
    assert "Link" not in archive.get(f"{at(full)}/canals.csv", {"after": ids[-1]}).headers


def test_where_nothing_changed_meanwhile_the_contents_say_so(
    archive: APIClient, programme: Programme, opened: Case
) -> None:
    before = contents(archive, programme)
    rows_of(archive, programme, "canals")
    assert contents(archive, programme) == before
    canals.change_canal(actor=opened.student, canal=canal_of(opened, "P"), changes={"reference_point": "a cusp"})
    assert contents(archive, programme)["changes_after"] != before["changes_after"]
    page = archive.get(f"{API}/programmes/{programme.pk}/changes", {"after": before["changes_after"]}).json()
    assert [change["kind"] for change in page["results"]] == ["canal_changed"]


def test_rows_are_those_of_the_cases_that_fit(
    archive: APIClient, programme: Programme, opened: Case, tom: Person
) -> None:
    of_tom = open_case(programme, tom, "37")
    Case.objects.filter(pk=of_tom.pk).update(created_at=opened.created_at + timedelta(days=2))
    between = (opened.created_at + timedelta(days=1)).isoformat()

    def cases(table: str, **asked: Any) -> set[str]:
        return {row["case_id" if table == "canals" else "id"] for row in rows_of(archive, programme, table, **asked)}

    for table in ("cases", "canals"):
        assert cases(table) == {str(opened.pk), str(of_tom.pk)}
        for asked in ({"student_id": tom.pk}, {"case_id": of_tom.pk}, {"opened_from": between}, {"group": "Friday"}):
            assert cases(table, **asked) == {str(of_tom.pk)}, asked
        assert cases(table, opened_until=between) == {str(opened.pk)}
        assert cases(table, tooth="37", student_id=opened.student_id) == set()


def test_students_fetch_their_own_cases_and_no_people(
    programme: Programme, priya: Person, tom: Person, vale: Person, stranger: Person, opened: Case
) -> None:
    of_tom = open_case(programme, tom, "37")
    assert [row["id"] for row in rows_of(client(tom), programme, "cases")] == [str(of_tom.pk)]
    assert len(rows_of(client(vale), programme, "cases")) == 2
    problem(client(tom).get(f"{at(programme)}/people.csv"), 403, "not-allowed")
    for address in (at(programme), f"{at(programme)}/cases.csv"):
        problem(client(stranger).get(address), 404, "not-found")


def test_no_name_of_a_person_leaves(archive: APIClient, full: Programme, priya: Person) -> None:
    """The account itself bears one, which can be erased; what was typed into notes is not looked at here."""
    assert {row["id"] for row in rows_of(archive, full, "people")} >= {str(priya.pk)}
    for table in TABLES:
        texts = [value for row in rows_of(archive, full, table) for value in row.values() if isinstance(value, str)]
        assert not {str(person) for person in Person.objects.all()} & set(texts)


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        ({"after": "x"}, "not-understood"),
        ({"after": "1"}, "not-understood"),
        ({"limit": "0"}, "out-of-bounds"),
        ({"limit": "10001"}, "out-of-bounds"),
        ({"case_id": "x"}, "not-an-id"),
        ({"opened_from": "monday"}, "not-a-moment"),
        ({"canal": "P"}, "unknown-key"),
    ],
)
def test_what_cannot_be_asked_for_is_refused(
    asked: dict[str, str], code: str, archive: APIClient, programme: Programme
) -> None:
    refused = archive.get(f"{at(programme)}/canals.csv", asked)
    assert problem(refused, 400, "not-understood").keys() == {f"#/{name}" for name in asked}
    assert [fault["code"] for fault in refused.json()["errors"]] == [code]


def test_people_are_of_no_case_and_a_table_that_is_none_is_not_there(archive: APIClient, programme: Programme) -> None:
    for table in ("people", "kits", "figures"):
        problem(archive.get(f"{at(programme)}/{table}.csv", {"tooth": "26"}), 400, "not-understood")
    problem(archive.get(f"{at(programme)}/log.csv"), 404, "not-found")
    problem(archive.get(f"{at(programme)}/remarks.csv", {"after": "1" * 19}), 400, "not-understood")


def test_however_long_a_page_is_only_parts_of_it_are_held(
    programme: Programme, approved: ToothPlanVersion, vale: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By what is held at the end of each part, and by the statements: one for the cases, one for each part's plans."""
    part, parts = 20, 15
    monkeypatch.setattr(pages, "AT_ONCE", part)
    list(copies(approved, part * parts))
    cases = pages.cases_of(vale, programme.pk)
    page = Page(TABLES["cases"], vale, programme.pk, cases, after=None, limit=part * parts)
    held_bytes = []
    with CaptureQueriesContext(connection) as asked:
        tracemalloc.start()
        for count, _ in enumerate(page, start=1):
            if count % part == 0:
                # Rows that name each other are garbage that waits for its turn.
                gc.collect()
                held_bytes.append(tracemalloc.get_traced_memory()[0])
        tracemalloc.stop()
    assert len(held_bytes) == parts
    # With a part less than a row is added; what the process learns once, whenever that is, is no growth.
    grown_bytes = [after - before for before, after in pairwise(held_bytes)]
    assert median(grown_bytes) < held_bytes[0] / part
    # One part holds the row that tells that there are more.
    assert len(asked) == 1 + parts + 1
