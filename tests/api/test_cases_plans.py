"""From a preview to an approval, over the API."""

from __future__ import annotations

from typing import Any

import pytest
from django.db.models import QuerySet
from pytest_django import DjangoAssertNumQueries

from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.uuid7 import uuid7
from cases.models import Case, Kit, Person, Programme, Review, ToothPlanVersion
from cases.queries import worklist
from cases.services.charting import canals, readings
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from planning.contract.canal_facts import Finding
from planning.lengths.readings import ConfirmingImage
from tests.cast import API, canal_of, client, decide, open_case, problem, state_of, with_size
from tests.many import copies


@pytest.fixture
def body(kit: Kit) -> dict[str, Any]:
    choices = {"needle": {"gauge": 30, "tip": "open"}}
    return {"kit_id": str(kit.pk), "technique": "crown-down", "choices": choices}


def at(case: Case, more: str) -> str:
    return f"{API}/cases/{case.pk}/{more}"


def version_at(version: ToothPlanVersion | dict[str, Any], more: str = "") -> str:
    id_ = version["id"] if isinstance(version, dict) else version.pk
    return f"{API}/plan-versions/{id_}{more}"


def ends(plan: dict[str, Any]) -> dict[str, tuple[float, float]]:
    return {canal["canal"]: (canal["length"]["stop_mm"], canal["end_mm"]) for canal in plan["canals"]}


# The check case of the molar, as given by those who asked for it.
MOLAR = {"MB1": (19.5, 19.5), "MB2": (19.0, 16.0), "DB": (18.0, 18.0), "P": (21.5, 21.5)}
CEILINGS = {"MB1": 17.5, "MB2": 14.0, "DB": 16.0, "P": 19.5}


def test_a_preview_gives_the_numbers_of_the_check_case(molar: Case, priya: Person, body: dict[str, Any]) -> None:
    preview = client(priya).post(at(molar, "preview"), body, format="json").json()
    assert ends(preview) == MOLAR
    assert {canal["canal"]: canal["needle"]["ceiling_mm"] for canal in preview["canals"]} == CEILINGS


def test_what_was_gauged_measured_and_kept_shapes_the_plan(molar: Case, priya: Person, body: dict[str, Any]) -> None:
    """First to bind 35, so 40 is the least (programme rule). The kit's cone of the final size is proposed."""
    facts = {"first_binder_size": 35, "wall": {"thickness_mm": 0.9, "from_end_mm": 8.0}}
    client(priya).patch(f"{API}/canals/{canal_of(molar, 'MB1').pk}", facts, format="json")
    preview = client(priya).post(at(molar, "preview"), body, format="json").json()
    mb1 = next(canal for canal in preview["canals"] if canal["canal"] == "MB1")
    assert (mb1["size_range"]["least"], mb1["final_size"]) == (40, 40)
    assert (mb1["wall"]["before_mm"], mb1["wall"]["measured"]) == (0.9, True)
    assert mb1["obturation"]["master_cone"] == "40/.04"


def test_what_goes_in_otherwise_is_told_before_a_plan_is_made(molar: Case, priya: Person, body: dict[str, Any]) -> None:
    """A bend, a measured wall and a first binder: none of them may hide behind outcomes that did not move."""
    browser = client(priya)
    number = browser.post(at(molar, "plan-versions"), body, format="json").json()["number"]
    asks = {**body, "against": number}
    changes = browser.post(at(molar, "preview/changes"), asks, format="json").json()
    assert changes == {"from_number": number, "tooth": [], "canals": []}
    facts = {"curvature_deg": 24, "first_binder_size": 25, "wall": {"thickness_mm": 0.9, "from_end_mm": 8.0}}
    browser.patch(f"{API}/canals/{canal_of(molar, 'MB1').pk}", facts, format="json")
    changes = browser.post(at(molar, "preview/changes"), asks, format="json").json()
    (of_canal,) = changes["canals"]
    labels = {change["label"]: (change["before"], change["after"]) for change in of_canal["changes"]}
    assert of_canal["canal"] == "MB1"
    assert labels.keys() >= {"curvature", "first hand size to bind after coronal flaring", "thinnest wall"}
    problem(browser.post(at(molar, "preview/changes"), {**asks, "against": 9}, format="json"), 404, "not-found")


def test_without_a_junction_the_joining_canal_has_no_shaping(
    programme: Programme, priya: Person, body: dict[str, Any]
) -> None:
    case = open_case(programme, priya)
    browser = client(priya)
    for name, set_mm in (("MB1", 19.5), ("MB2", 19.0)):
        reading = {"method": "confirming_image", "set_mm": set_mm, "tip_short_mm": 1.0, "reference_point": "MB cusp"}
        browser.post(f"{API}/canals/{canal_of(case, name).pk}/readings", {"reading": reading}, format="json")
    browser.put(at(case, "roots/MB"), {"pattern": "2-1", "main_canal": "MB1"}, format="json")
    preview = browser.post(at(case, "preview"), body, format="json").json()
    mb2 = next(canal for canal in preview["canals"] if canal["canal"] == "MB2")
    shaping = {item["instrument"]["name"] for item in preview["tray_list"] if "MB2" in item["canals"]}
    assert not any(name.endswith(".04") for name in shaping)
    assert mb2["withheld"]


def test_the_whole_way_from_plan_to_approval(molar: Case, priya: Person, vale: Person, body: dict[str, Any]) -> None:
    student, supervisor = client(priya), client(vale)
    made = student.post(at(molar, "plan-versions?expand=plan"), {**body, "id": str(uuid7())}, format="json")
    version = made.json()
    assert (made.status_code, version["number"], version["state"], ends(version["plan"])) == (201, 1, "draft", MOLAR)
    other = student.post(version_at(version, "/submit"), headers={"If-Match": '"of another screen"'})
    problem(other, 412, "changed-since")
    submit = student.post(version_at(version, "/submit"), headers={"If-Match": f'"{version["hash"]}"'})
    assert submit.json()["state"] == "waiting"

    (waiting,) = supervisor.get(f"{API}/programmes/{molar.programme_id}/worklist").json()["results"]
    assert (waiting["version_id"], waiting["asks"]) == (version["id"], "first")
    shown = supervisor.get(version_at(version))
    remark: dict[str, Any] = {"decision": "returned", "remarks": [{"canal": "MB2", "text": "Smaller, it joins."}]}
    returned = supervisor.post(
        version_at(version, "/reviews"), remark, format="json", headers={"If-Match": shown["ETag"]}
    )
    remarks = [{**remark["remarks"][0], "returned": False}]
    assert (returned.status_code, returned.json()["remarks"]) == (201, remarks)
    assert student.get(at(molar, "")[:-1]).json()["status"]["state"] == "returned"

    sized = {**body, "choices": {**body["choices"], "canals": [{"canal": "P", "final_size": 40}]}}
    second = student.post(at(molar, "plan-versions"), sized, format="json").json()
    student.post(version_at(second, "/submit"))
    changes = supervisor.get(version_at(second, "/changes")).json()["changes"]
    assert [canal["canal"] for canal in changes["canals"]] == ["P"]
    (waiting,) = supervisor.get(f"{API}/programmes/{molar.programme_id}/worklist").json()["results"]
    assert waiting["asks"] == "after_return"
    approval = supervisor.post(
        version_at(second, "/reviews"),
        {"decision": "approved"},
        format="json",
        headers={"If-Match": f'"{waiting["hash"]}"'},
    )
    assert approval.status_code == 201
    approved_version = student.get(version_at(second)).json()
    assert (approved_version["state"], approved_version["status"]["state"]) == ("approved", "approved")

    student.post(at(molar, "plan-versions"), body, format="json")
    assert student.get(at(molar, "")[:-1]).json()["status"]["state"] == "approval_void"


def test_a_version_is_shown_with_all_it_rests_on(proposed: ToothPlanVersion, vale: Person) -> None:
    answer = client(vale).get(version_at(proposed), {"expand": "choices,given,plan"})
    version = answer.json()
    assert state_of(answer) == proposed.hash
    assert version["given"]["kit"]["name"] == "check kit"
    assert version["choices"] == version["given"]["choices"]
    assert version["plan"]["rows_used"]
    assert version["plan"]["notice"]


# --- refusals, with a way out ---


def choosing(canal: str, final_size: int) -> dict[str, Any]:
    return {"needle": {"gauge": 30, "tip": "open"}, "canals": [{"canal": canal, "final_size": final_size}]}


@pytest.mark.parametrize(
    ("change", "status", "code", "pointer"),
    [
        ({"kit_id": str(uuid7())}, 422, "not-usable", "#/kit_id"),
        ({"technique": "guess"}, 422, "not-usable", "#/technique"),
        ({"choices": {}}, 400, "not-understood", "#/choices/needle"),
        ({"choices": {"needle": {"gauge": 30, "tip": "blunt"}}}, 400, "not-understood", "#/choices/needle/tip"),
        ({"choices": choosing("P", 30) | {"series_taper": 7}}, 422, "kit-lacks-instrument", "#/choices/series_taper"),
        ({"choices": choosing("Q", 30)}, 422, "canals-do-not-fit", "#/choices/canals/0/canal"),
    ],
)
def test_what_cannot_be_planned_is_named_with_its_place(
    molar: Case,
    priya: Person,
    body: dict[str, Any],
    change: dict[str, Any],
    status: int,
    code: str,
    pointer: str,
) -> None:
    for address in ("preview", "plan-versions"):
        answer = client(priya).post(at(molar, address), body | change, format="json")
        assert pointer in problem(answer, status, code)
    assert not ToothPlanVersion.objects.exists()


def test_a_case_without_canals_is_not_planned(programme: Programme, priya: Person, body: dict[str, Any]) -> None:
    case = open_case(programme, priya, "26", canals=[])
    problem(client(priya).post(at(case, "preview"), body, format="json"), 422, "no-canals")


def test_a_root_filled_tooth_is_charted_and_not_planned(molar: Case, priya: Person, body: dict[str, Any]) -> None:
    etag = f'"{molar.revision}"'
    client(priya).patch(at(molar, "")[:-1], {"root_filled": True}, format="json", headers={"If-Match": etag})
    answer = client(priya).post(at(molar, "preview"), body, format="json")
    assert "#/root_filled" in problem(answer, 422, "charted-not-planned")


def test_in_the_clinic_nothing_opens_without_isolation(
    programme: Programme, priya: Person, body: dict[str, Any]
) -> None:
    case = open_case(programme, priya, "26", setting="clinic")
    preview = client(priya).post(at(case, "preview"), body, format="json").json()
    assert "isolation-missing" in {caution["code"] for caution in preview["cautions"] if caution["severity"] == "stop"}
    assert preview["tray_list"] == []


def review(person: Person, version: ToothPlanVersion, hash_: str | None = None, **more: Any) -> Any:
    headers = {} if hash_ == "" else {"If-Match": f'"{hash_ or version.hash}"'}
    body = {"decision": "approved"} | more
    return client(person).post(version_at(version, "/reviews"), body, format="json", headers=headers)


def test_who_may_decide(
    priya: Person, tom: Person, rosa: Person, stranger: Person, submitted: ToothPlanVersion
) -> None:
    problem(review(priya, submitted), 403, "not-allowed")
    problem(review(rosa, submitted), 403, "not-allowed")
    problem(review(tom, submitted), 404, "not-found")
    problem(review(stranger, submitted), 404, "not-found")
    assert not Review.objects.exists()


def test_a_supervisors_own_length_stands_beside_the_plans(
    submitted: ToothPlanVersion, vale: Person, priya: Person
) -> None:
    own = [{"canal": "P", "length_mm": 18.25}]
    stored = submitted.canal_plans.get(canal="P")
    made = review(vale, submitted, decision="returned", note="Measure P again.", own_lengths=own)
    assert (made.status_code, made.json()["own_lengths"]) == (201, own)
    shown = client(priya).get(version_at(submitted)).json()
    assert shown["reviews"][-1]["own_lengths"] == own
    # The plan stays as the student made it.
    assert (shown["hash"], submitted.canal_plans.get(canal="P").pk) == (submitted.hash, stored.pk)
    (decision,) = client(priya).get(at(submitted.case, "record")).json()["record"]["versions"][0]["decisions"]
    assert decision["own_lengths"] == own


@pytest.mark.parametrize(
    ("lengths", "code", "pointer"),
    [
        ([{"canal": "X", "length_mm": 18.0}], "no-such-canal", "#/own_lengths/0/canal"),
        ([{"canal": "P", "length_mm": 18.0}] * 2, "not-usable", "#/own_lengths/1/canal"),
        ([{"canal": "P", "length_mm": 99.0}], "length-out-of-bounds", "#/own_lengths/0/length_mm"),
    ],
)
def test_an_own_length_that_cannot_be_is_refused(
    submitted: ToothPlanVersion, vale: Person, lengths: list[dict[str, Any]], code: str, pointer: str
) -> None:
    assert pointer in problem(review(vale, submitted, own_lengths=lengths), 422, code)
    assert not Review.objects.exists()


def test_a_decision_names_the_version_that_was_seen(vale: Person, submitted: ToothPlanVersion) -> None:
    problem(review(vale, submitted, ""), 428, "precondition-missing")
    problem(review(vale, submitted, "0" * 64), 412, "changed-since")
    answer = client(vale).post(
        version_at(submitted, "/reviews"), {"decision": "approved"}, format="json", headers={"If-Match": "*"}
    )
    problem(answer, 412, "changed-since")


def test_decided_twice(vale: Person, amari: Person, submitted: ToothPlanVersion) -> None:
    id_ = str(uuid7())
    assert review(vale, submitted, id=id_).status_code == 201
    assert review(vale, submitted, id=id_).status_code == 200
    problem(review(vale, submitted), 409, "move-not-possible")
    problem(review(amari, submitted, decision="returned", note="No."), 409, "move-not-possible")


def test_a_draft_is_not_decided_on(vale: Person, proposed: ToothPlanVersion) -> None:
    problem(review(vale, proposed), 409, "move-not-possible")


def test_a_plan_of_a_case_that_changed_since(priya: Person, vale: Person, submitted: ToothPlanVersion) -> None:
    canal = canal_of(submitted.case, "P")
    client(priya).patch(f"{API}/canals/{canal.pk}", {"curvature_deg": 31}, format="json")
    (waiting,) = client(vale).get(f"{API}/programmes/{submitted.case.programme_id}/worklist").json()["results"]
    assert waiting["stale"]
    problem(review(vale, submitted), 409, "plan-stale")
    client(priya).post(version_at(submitted, "/withdraw"))
    problem(client(priya).post(version_at(submitted, "/submit")), 409, "plan-stale")


def test_a_return_says_something_about_a_canal_there_is(vale: Person, submitted: ToothPlanVersion) -> None:
    answer = review(vale, submitted, decision="returned")
    assert "#/remarks" in problem(answer, 422, "nothing-said")
    answer = review(vale, submitted, decision="returned", remarks=[{"canal": "MB3", "text": "There is one more."}])
    assert "#/remarks/0/canal" in problem(answer, 422, "no-such-canal")
    answer = review(vale, submitted, decision="maybe", remarks=[{"canal": "P"}])
    assert set(problem(answer, 400, "not-understood")) == {"#/decision", "#/remarks/0/text"}


def test_only_the_own_student_submits(vale: Person, tom: Person, stranger: Person, proposed: ToothPlanVersion) -> None:
    problem(client(vale).post(version_at(proposed, "/submit")), 403, "not-allowed")
    for person in (tom, stranger):
        problem(client(person).post(version_at(proposed, "/submit")), 404, "not-found")


def test_changes_against_a_version_there_is_not(proposed: ToothPlanVersion, priya: Person) -> None:
    assert client(priya).get(version_at(proposed, "/changes")).json() == {"changes": None}
    problem(client(priya).get(version_at(proposed, "/changes?against=9")), 404, "not-found")
    problem(client(priya).get(version_at(proposed, "/changes?against=last")), 422, "not-usable")


# --- lists ---


def test_versions_are_listed_with_what_was_decided(
    vale: Person, priya: Person, submitted: ToothPlanVersion, asked: Asked
) -> None:
    decide(vale, submitted, Decision.RETURNED)
    plans.propose(actor=priya, case=submitted.case, asked=with_size(asked, "P", 45))
    versions = client(priya).get(at(submitted.case, "plan-versions")).json()["results"]
    assert [(each["number"], each["state"], len(each["reviews"])) for each in versions] == [
        (2, "draft", 0),
        (1, "superseded", 1),
    ]


def measured(programme: Programme, student: Person, alias: str, **facts: Any) -> Case:
    """A first molar of which only the palatal canal is charted, its length confirmed."""
    case = open_case(programme, student, "26", canals=["P"], patient_alias=alias)
    palatal = {"finding": Finding.FOUND, "reference_point": "palatal cusp", **facts}
    canals.change_canal(actor=student, canal=canal_of(case, "P"), changes=palatal)
    reading = ConfirmingImage(set_mm=21.0, tip_short_mm=1.0, reference_point="palatal cusp")
    readings.take_length(actor=student, canal=canal_of(case, "P"), reading=reading)
    case.refresh_from_db()
    return case


def test_the_worklist_has_the_riskiest_and_then_the_oldest_first(
    programme: Programme, priya: Person, tom: Person, vale: Person, submitted: ToothPlanVersion, asked: Asked
) -> None:
    curved = measured(programme, tom, "Bench 2", curvature_deg=40.0)
    plans.submit(actor=tom, version=plans.propose(actor=tom, case=curved, asked=asked)[0])
    rows = client(vale).get(f"{API}/programmes/{programme.pk}/worklist").json()["results"]
    assert [each["student"]["name"] for each in rows] == ["Tom", "Priya"]
    assert rows[0]["stops"] > rows[1]["stops"] == 0
    # Society form 2022: a first molar is moderate, and nothing else of this case counts.
    assert rows[1]["difficulty"] == "moderate"
    assert rows[1]["canals"][1] == {
        "canal": "MB2",
        "length_state": "settled",
        "stop_mm": 19.0,
        "end_mm": 16.0,
        "final_size": submitted.canal_plans.get(canal="MB2").final_size,
        "final_taper": 4,
    }


def test_the_worklist_is_for_supervisors_of_the_programme(
    programme: Programme, priya: Person, stranger: Person, rosa: Person
) -> None:
    address = f"{API}/programmes/{programme.pk}/worklist"
    problem(client(priya).get(address), 403, "not-allowed")
    problem(client(stranger).get(address), 404, "not-found")
    assert client(rosa).get(address).json() == {"next": None, "previous": None, "results": []}


def test_no_more_plans_than_can_be_decided_on(
    programme: Programme, vale: Person, submitted: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    address = f"{API}/programmes/{programme.pk}/worklist"
    (riskier,) = copies(submitted, 1, state=PlanState.WAITING)
    QuerySet.update(ToothPlanVersion.objects.filter(pk=riskier.pk), stops=submitted.stops + 1)
    list(copies(submitted, 1, state=PlanState.WAITING))
    for most, more in ((3, False), (2, True)):
        monkeypatch.setattr(worklist, "MOST_WAITING", most)
        page = client(vale).get(address).json()
        assert (len(page["results"]), page["next"] is not None) == (most, more)
        # The riskier one goes before the older one, and the newest is left out first.
        assert [each["version_id"] for each in page["results"][:2]] == [str(riskier.pk), str(submitted.pk)]


def test_the_worklist_asks_the_database_as_often_however_long_it_is(
    programme: Programme,
    tom: Person,
    vale: Person,
    submitted: ToothPlanVersion,
    asked: Asked,
    django_assert_num_queries: DjangoAssertNumQueries,
) -> None:
    for name in ("one", "two", "three"):
        case = measured(programme, tom, name)
        plans.submit(actor=tom, version=plans.propose(actor=tom, case=case, asked=asked)[0])
    browser = client(vale)
    # Session, person, role, what the tag is of, versions with what they refer to, canals.
    with django_assert_num_queries(6):
        assert len(browser.get(f"{API}/programmes/{programme.pk}/worklist").json()["results"]) == 4
