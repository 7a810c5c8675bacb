"""Cases, canals and readings over the API."""

from __future__ import annotations

from typing import Any, get_type_hints

import pytest
from pytest_django import DjangoAssertNumQueries

from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, Programme, ToothPlanVersion
from cases.services.planning.plan_input import Asked, snapshot
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.encoding import encode
from tests.cast import API, canal_of, client, open_case, problem, state_of

NEW: dict[str, Any] = {
    "patient_alias": "Bench 7",
    "tooth": {"notation": "universal", "designation": "14"},
    "setting": "extracted",
}


def cases_of(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/cases"


def case_at(case: Case) -> str:
    return f"{API}/cases/{case.pk}"


# --- opening ---


def test_a_student_opens_a_case(programme: Programme, priya: Person, vale: Person) -> None:
    id_ = str(uuid7())
    answer = client(priya).post(cases_of(programme), {**NEW, "id": id_, "supervisor_id": str(vale.pk)}, format="json")
    case = answer.json()
    assert (answer.status_code, case["id"], state_of(answer)) == (201, id_, "1")
    assert case["tooth"]["iso"] == "26"
    assert (case["notation"], case["designation"]) == ("universal", "14")
    assert [canal["name"] for canal in case["canals"]] == ["MB1", "MB2", "DB", "P"]
    assert case["status"]["state"] == "none"
    assert case["supervisor"] == {"id": str(vale.pk), "name": "Vale"}


def test_sent_again_it_is_the_same_case(programme: Programme, priya: Person) -> None:
    body = {**NEW, "id": str(uuid7())}
    first = client(priya).post(cases_of(programme), body, format="json")
    second = client(priya).post(cases_of(programme), body, format="json")
    assert (first.status_code, second.status_code) == (201, 200)
    assert first.json() == second.json()
    other = client(priya).post(cases_of(programme), {**body, "setting": "block"}, format="json")
    assert "#/id" in problem(other, 409, "id-used-differently")


@pytest.mark.parametrize(
    ("change", "status", "code", "pointer"),
    [
        ({"tooth": {"designation": "14"}}, 422, "notation-missing", "#/tooth/notation"),
        ({"tooth": {"notation": "palmer", "designation": "14"}}, 422, "unknown-tooth", "#/tooth/designation"),
        ({"tooth": {"notation": "guess", "designation": "14"}}, 400, "not-understood", "#/tooth/notation"),
        ({"tooth": "14"}, 400, "not-understood", "#/tooth"),
        ({"setting": "home"}, 400, "not-understood", "#/setting"),
        ({"patient_alias": " "}, 400, "not-understood", "#/patient_alias"),
        ({"patient_alias": 7}, 400, "not-understood", "#/patient_alias"),
        ({"patient_name": "Somebody Real"}, 400, "not-understood", "#/patient_name"),
        ({"canals": ["MB1", "Q"]}, 422, "not-usable", "#/canals/1"),
        ({"id": 5}, 400, "not-understood", "#/id"),
    ],
)
def test_what_is_wrong_is_named_with_its_place(
    programme: Programme, priya: Person, change: dict[str, Any], status: int, code: str, pointer: str
) -> None:
    answer = client(priya).post(cases_of(programme), NEW | change, format="json")
    assert pointer in problem(answer, status, code)
    assert not Case.objects.exists()


def test_who_may_open(programme: Programme, vale: Person, stranger: Person) -> None:
    problem(client(vale).post(cases_of(programme), NEW, format="json"), 403, "not-allowed")
    problem(client(stranger).post(cases_of(programme), NEW, format="json"), 404, "not-found")
    problem(client(None).post(cases_of(programme), NEW, format="json"), 401, "not-authenticated")


# --- listing ---


def test_students_see_their_own_and_supervisors_all(
    programme: Programme, opened: Case, tom: Person, vale: Person, rosa: Person, priya: Person, stranger: Person
) -> None:
    open_case(programme, tom, "37")
    seen = {who: len(client(who).get(cases_of(programme)).json()["results"]) for who in (priya, tom, vale, rosa)}
    assert seen == {priya: 1, tom: 1, vale: 2, rosa: 2}
    problem(client(stranger).get(cases_of(programme)), 404, "not-found")


def test_pages_go_on_where_the_last_ended(programme: Programme, priya: Person) -> None:
    made = [str(open_case(programme, priya, "26", patient_alias=f"Bench {n}").pk) for n in range(5)]
    listed, address = [], f"{cases_of(programme)}?limit=2"
    while address:
        page = client(priya).get(address).json()
        listed += [case["id"] for case in page["results"]]
        address = page["next"]
    assert listed == made[::-1]


def test_a_list_asks_the_database_as_often_however_long_it_is(
    programme: Programme, priya: Person, approved: ToothPlanVersion, django_assert_num_queries: DjangoAssertNumQueries
) -> None:
    browser = client(priya)
    for n in range(6):
        open_case(programme, priya, "36", patient_alias=f"Bench {n}")
    # Session, person, programme, cases with what they refer to, versions.
    with django_assert_num_queries(5):
        assert len(browser.get(cases_of(programme)).json()["results"]) == 7


def test_a_list_can_be_asked_for_of_somebody_some_teeth_some_setting(
    programme: Programme, opened: Case, priya: Person, tom: Person, vale: Person
) -> None:
    """`opened` is Priya's 26, extracted."""
    of_tom = open_case(programme, tom, "37", setting="block", supervisor_id=vale.pk)
    other = open_case(programme, tom, "26", setting="block")
    asked = {
        "": {opened, of_tom, other},
        f"student_id={tom.pk}": {of_tom, other},
        f"student_id={tom.pk}&tooth=26": {other},
        f"supervisor_id={vale.pk}": {of_tom},
        "setting=extracted&limit=1": {opened},
        "setting=clinic": set(),
    }
    for query, cases in asked.items():
        listed = client(vale).get(f"{cases_of(programme)}?{query}").json()["results"]
        assert {case["id"] for case in listed} == {str(case.pk) for case in cases}, query
    assert client(priya).get(f"{cases_of(programme)}?student_id={tom.pk}").json()["results"] == []


def test_pages_go_on_within_what_was_asked_for(programme: Programme, priya: Person) -> None:
    for tooth in ("26", "37", "26", "37", "26"):
        open_case(programme, priya, tooth)
    page = client(priya).get(f"{cases_of(programme)}?limit=2&tooth=26").json()
    rest = client(priya).get(page["next"]).json()
    assert [len(page["results"]), len(rest["results"]), rest["next"]] == [2, 1, None]


@pytest.mark.parametrize("query", ["student_id=priya", "tooth=99", "setting=home", "studnet=1", "ordering=id"])
def test_a_list_is_not_asked_for_of_what_nobody_knows(programme: Programme, priya: Person, query: str) -> None:
    """Left aside, a misspelt name would bring a list of all."""
    answer = client(priya).get(f"{cases_of(programme)}?{query}")
    assert list(problem(answer, 400, "not-understood")) == [f"#/{query.split('=')[0]}"]


# --- one case ---


def test_a_case_shows_what_each_length_rests_on(molar: Case, priya: Person) -> None:
    case = client(priya).get(case_at(molar)).json()
    palatal = next(canal for canal in case["canals"] if canal["name"] == "P")
    assert (palatal["length"]["state"], palatal["length"]["stop_mm"]) == ("settled", 21.5)
    assert palatal["length"]["rests_on"] == ["confirming_image"]
    assert [reading["reading"]["method"] for reading in palatal["readings"]] == [
        "pre_operative_image",
        "confirming_image",
    ]
    assert case["roots"][1] == {"name": "MB", "pattern": "2-1", "main_canal": "MB1"}


def test_a_case_asks_the_database_as_often_however_much_was_measured(
    molar: Case, priya: Person, django_assert_num_queries: DjangoAssertNumQueries
) -> None:
    browser = client(priya)
    # Session, person, the right to see it, case, overrides, roots, canals, readings, junctions, versions, figures.
    with django_assert_num_queries(11):
        browser.get(case_at(molar))


def test_whose_case_it_is(opened: Case, tom: Person, vale: Person, stranger: Person) -> None:
    assert client(vale).get(case_at(opened)).status_code == 200
    for person in (tom, stranger):
        problem(client(person).get(case_at(opened)), 404, "not-found")
    problem(client(vale).get(f"{API}/cases/{uuid7()}"), 404, "not-found")


def test_facts_change_with_the_revision_that_was_seen(opened: Case, priya: Person) -> None:
    browser = client(priya)
    answer = browser.patch(case_at(opened), {"isolated": True}, format="json", headers={"If-Match": '"1"'})
    assert (answer.status_code, answer.json()["isolated"], state_of(answer)) == (200, True, "2")
    stale = browser.patch(case_at(opened), {"isolated": False}, format="json", headers={"If-Match": '"1"'})
    problem(stale, 412, "changed-since")
    problem(browser.patch(case_at(opened), {"isolated": False}, format="json"), 428, "precondition-missing")
    for changed in ('"3"', 'W/"1"', "*"):
        other = browser.patch(case_at(opened), {"isolated": False}, format="json", headers={"If-Match": changed})
        problem(other, 412, "changed-since")
    wrong = browser.patch(case_at(opened), {"isolated": "yes"}, format="json", headers={"If-Match": '"2"'})
    assert "#/isolated" in problem(wrong, 400, "not-understood")


def test_every_fact_of_the_tooth_goes_in_and_out_and_is_planned_from(molar: Case, vale: Person, asked: Asked) -> None:
    """Each is sent as something else than it is where nobody charted anything."""
    ticked = {name: True for name, type_ in get_type_hints(ToothFacts).items() if type_ is bool}
    sent = {**ticked, "anatomy": "fused_or_c_shaped", "factors": ["opening:moderate"]}
    usual = encode(ToothFacts())
    assert sent.keys() == usual.keys()
    assert [name for name in sent if sent[name] == usual[name]] == []
    headers = {"If-Match": f'"{molar.revision}"'}
    changed = client(vale).patch(case_at(molar), sent, format="json", headers=headers)
    assert (changed.status_code, changed.json()["revision"]) == (200, molar.revision + 1)
    case = Case.objects.get(pk=molar.pk)
    for answer in (changed.json(), client(vale).get(case_at(molar)).json(), encode(snapshot(case, asked, samples=0))):
        assert {name: answer[name] for name in sent} == sent


def test_a_tag_weakened_by_compression_still_names_what_was_seen(opened: Case, priya: Person) -> None:
    browser = client(priya)
    compressed = browser.get(case_at(opened), headers={"Accept-Encoding": "gzip"})
    assert compressed["Content-Encoding"] == "gzip"
    changed = browser.patch(
        case_at(opened), {"isolated": True}, format="json", headers={"If-Match": compressed["ETag"]}
    )
    assert (compressed["ETag"][:5], changed.status_code) == ('W/"1-', 200)


# --- canals ---


def canal_at(case: Case, name: str, more: str = "") -> str:
    return f"{API}/canals/{canal_of(case, name).pk}{more}"


def test_a_canal_is_charted_in_millimetres(opened: Case, priya: Person) -> None:
    facts = {"finding": "found", "orifice_mm": 8.5, "curve_start_mm": 14.256, "curvature_deg": 22.04}
    shown = client(priya).patch(canal_at(opened, "MB1"), facts, format="json").json()
    assert (shown["orifice_mm"], shown["curve_start_mm"], shown["curvature_deg"]) == (8.5, 14.26, 22.0)
    cleared = client(priya).patch(canal_at(opened, "MB1"), {"curve_start_mm": None}, format="json").json()
    assert (cleared["curve_start_mm"], cleared["orifice_mm"]) == (None, 8.5)


@pytest.mark.parametrize(
    ("facts", "status", "pointer"),
    [
        ({"orifice_mm": "8,5"}, 400, "#/orifice_mm"),
        ({"orifice_mm": 1e308}, 422, "#/orifice_mm"),
        ({"orifice_mm": -1}, 422, "#/orifice_mm"),
        ({"curvature_deg": 181}, 422, "#/curvature_deg"),
        ({"curvature_deg": True}, 400, "#/curvature_deg"),
        ({"orifice_mm": 10, "curve_start_mm": 9}, 422, "#/curve_start_mm"),
        ({"name": "DB"}, 409, "#/name"),
        ({"length_mm": 20}, 400, "#/length_mm"),
    ],
)
def test_what_cannot_be_charted(opened: Case, priya: Person, facts: dict[str, Any], status: int, pointer: str) -> None:
    answer = client(priya).patch(canal_at(opened, "MB1"), facts, format="json")
    assert answer.status_code == status
    assert pointer in {error["pointer"] for error in answer.json()["errors"]}


def test_a_found_canal_is_added_and_an_empty_one_taken_out(opened: Case, priya: Person) -> None:
    body = {"id": str(uuid7()), "name": "MB3", "root": "MB", "reference_point": "MB cusp", "finding": "found"}
    address = f"{case_at(opened)}/canals"
    assert client(priya).post(address, body, format="json").status_code == 201
    assert client(priya).post(address, body, format="json").status_code == 200
    assert client(priya).delete(canal_at(opened, "MB3")).status_code == 204
    assert len(client(priya).get(address).json()["results"]) == 4


def test_a_measured_canal_stays(molar: Case, priya: Person) -> None:
    problem(client(priya).delete(canal_at(molar, "P")), 409, "canal-in-use")


def test_canals_of_others_do_not_exist(molar: Case, tom: Person, stranger: Person) -> None:
    for person in (tom, stranger):
        problem(client(person).patch(canal_at(molar, "P"), {"finding": "found"}, format="json"), 404, "not-found")
        problem(client(person).get(canal_at(molar, "P", "/readings")), 404, "not-found")


def test_roots_say_how_their_canals_run(opened: Case, priya: Person) -> None:
    address = f"{case_at(opened)}/roots/MB"
    case = client(priya).put(address, {"pattern": "2-1", "main_canal": "MB1"}, format="json").json()
    assert {"name": "MB", "pattern": "2-1", "main_canal": "MB1"} in case["roots"]
    wrong = client(priya).put(address, {"pattern": "2-1", "main_canal": "P"}, format="json")
    assert "#/main_canal" in problem(wrong, 422, "not-usable")


# --- readings ---

CONFIRMING = {"method": "confirming_image", "set_mm": 21.0, "tip_short_mm": 1.5, "reference_point": "palatal cusp"}


def test_a_reading_is_answered_with_what_the_length_comes_to(opened: Case, priya: Person) -> None:
    body = {"id": str(uuid7()), "reading": CONFIRMING}
    answer = client(priya).post(canal_at(opened, "P", "/readings"), body, format="json")
    assert (answer.status_code, answer.json()["length"]["stop_mm"]) == (201, 21.5)
    again = client(priya).post(canal_at(opened, "P", "/readings"), body, format="json")
    assert (again.status_code, again.json()) == (200, answer.json())
    (kept,) = client(priya).get(canal_at(opened, "P", "/readings")).json()["results"]
    assert kept["id"] == body["id"]


@pytest.mark.parametrize(
    ("change", "status", "code", "pointer"),
    [
        ({"set_mm": 36.5}, 422, "length-out-of-bounds", "#/reading/set_mm"),
        ({"set_mm": 9.5}, 422, "length-out-of-bounds", "#/reading/set_mm"),
        ({"set_mm": "21"}, 400, "not-understood", "#/reading/set_mm"),
        ({"method": "guess"}, 400, "not-understood", "#/reading/method"),
        ({"depth": 3}, 400, "not-understood", "#/reading/depth"),
    ],
)
def test_a_reading_that_cannot_be_right(
    opened: Case, priya: Person, change: dict[str, Any], status: int, code: str, pointer: str
) -> None:
    body = {"reading": CONFIRMING | change}
    answer = client(priya).post(canal_at(opened, "P", "/readings"), body, format="json")
    assert pointer in problem(answer, status, code)


def test_a_junction_is_kept_with_the_length_of_its_moment(molar: Case, priya: Person) -> None:
    body = {"id": str(uuid7()), "junction": {"from_terminus_mm": 2.5, "method": "two_instruments"}}
    answer = client(priya).post(canal_at(molar, "MB2", "/junctions"), body, format="json")
    assert answer.status_code == 201
    assert answer.json()["junction"] == {"from_terminus_mm": 2.5, "method": "two_instruments", "at_length_mm": 19.0}
    beyond = {"junction": {"from_terminus_mm": 19.5, "method": "cone_mark"}}
    answer = client(priya).post(canal_at(molar, "MB2", "/junctions"), beyond, format="json")
    assert "#/junction/from_terminus_mm" in problem(answer, 422, "not-usable")


# --- what was measured of a curve and a wall ---


def test_a_curve_and_a_wall_that_were_measured_come_back(molar: Case, priya: Person) -> None:
    address = f"{API}/canals/{canal_of(molar, 'MB1').pk}"
    measured: dict[str, Any] = {
        "curve_radius_mm": 6.0,
        "curve_from_end_mm": 4.0,
        "wall": {"thickness_mm": 0.79, "from_end_mm": 10.0},
        "first_binder_size": 25,
    }
    answer = client(priya).patch(address, measured, format="json")
    assert answer.status_code == 200, answer.json()
    assert {key: client(priya).get(address).json()[key] for key in measured} == measured
    cleared = client(priya).patch(address, dict.fromkeys(measured), format="json").json()
    assert {key: cleared[key] for key in measured} == dict.fromkeys(measured)


@pytest.mark.parametrize(
    ("change", "status", "pointer"),
    [
        ({"curve_radius_mm": 0}, 422, "#/curve_radius_mm"),
        ({"curve_radius_mm": 500}, 422, "#/curve_radius_mm"),
        ({"curve_from_end_mm": -1}, 422, "#/curve_from_end_mm"),
        ({"wall": {"thickness_mm": 0, "from_end_mm": 3}}, 422, "#/wall/thickness_mm"),
        ({"wall": {"thickness_mm": 79, "from_end_mm": 3}}, 422, "#/wall/thickness_mm"),
        ({"wall": {"thickness_mm": 0.8, "from_end_mm": 41}}, 422, "#/wall/from_end_mm"),
        ({"wall": {"thickness_mm": 0.8, "from_end_mm": 1e300}}, 422, "#/wall/from_end_mm"),
        ({"wall": {"thickness_mm": 0.8}}, 400, "#/wall/from_end_mm"),
        ({"first_binder_size": 22}, 422, "#/first_binder_size"),
        ({"first_binder_size": True}, 400, "#/first_binder_size"),
        ({"first_binder_size": 10**30}, 400, "#/first_binder_size"),
    ],
)
def test_a_curve_or_wall_that_cannot_be_is_refused(
    molar: Case, priya: Person, change: dict[str, Any], status: int, pointer: str
) -> None:
    answer = client(priya).patch(f"{API}/canals/{canal_of(molar, 'MB1').pk}", change, format="json")
    assert answer.status_code == status, answer.json()
    assert [error["pointer"] for error in answer.json()["errors"]] == [pointer]
