"""What supervisors let pass, over the API."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.uuid7 import uuid7
from cases.models import Case, CautionOverride, Person
from cases.services.charting import canals
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from tests.cast import API, canal_of, client, problem

BODY: dict[str, Any] = {"code": "apex-wide", "canal": "P", "reason": "1.2 mm on two images."}


@pytest.fixture
def wide(molar: Case, priya: Person, asked: Asked) -> Case:
    """P with an apex of 1.2 mm, planned."""
    canals.change_canal(actor=priya, canal=canal_of(molar, "P"), changes={"apex_mm": 1.2})
    plans.propose(actor=priya, case=molar, asked=asked)
    return molar


def at(case: Case) -> str:
    return f"{API}/cases/{case.pk}/overrides"


def test_a_supervisor_lets_it_pass_and_everybody_of_the_case_sees_it(wide: Case, vale: Person, priya: Person) -> None:
    made = client(vale).post(at(wide), {**BODY, "id": str(uuid7())}, format="json")
    assert made.status_code == 201, made.json()
    override = made.json()
    assert (override["code"], override["canal"], override["reason"]) == ("apex-wide", "P", "1.2 mm on two images.")
    assert (override["supervisor"]["name"], override["withdrawn_at"]) == ("Vale", None)
    case = client(priya).get(f"{API}/cases/{wide.pk}").json()
    assert case["overrides"] == client(priya).get(at(wide)).json()["results"] == [override]
    assert case["status"]["stale"] is True


def test_the_plan_then_opens_the_canal(wide: Case, vale: Person, priya: Person, asked: Asked) -> None:
    client(vale).post(at(wide), BODY, format="json")
    body = {
        "kit_id": str(asked.kit_id),
        "technique": asked.technique,
        "choices": {"needle": {"gauge": 30, "tip": "open"}},
    }
    plan = client(priya).post(f"{API}/cases/{wide.pk}/preview", body, format="json").json()
    assert not next(canal for canal in plan["canals"] if canal["canal"] == "P")["withheld"]
    caution = next(caution for caution in plan["cautions"] if caution["code"] == "apex-wide")
    assert (caution["severity"], caution["overridden"]) == ("stop", "1.2 mm on two images.")


def test_it_can_be_taken_back(wide: Case, vale: Person, priya: Person) -> None:
    id_ = client(vale).post(at(wide), BODY, format="json").json()["id"]
    address = f"{API}/overrides/{id_}/withdraw"
    problem(client(priya).post(address), 403, "not-allowed")
    first, second = client(vale).post(address), client(vale).post(address)
    assert (first.status_code, second.json()) == (200, first.json())
    assert first.json()["withdrawn_by"]["name"] == "Vale"


def test_who_may(wide: Case, priya: Person, tom: Person, rosa: Person, stranger: Person, vale: Person) -> None:
    for person in (priya, rosa):
        problem(client(person).post(at(wide), BODY, format="json"), 403, "not-allowed")
    for person in (tom, stranger):
        problem(client(person).post(at(wide), BODY, format="json"), 404, "not-found")
        problem(client(person).get(at(wide)), 404, "not-found")
    problem(client(None).post(at(wide), BODY, format="json"), 401, "not-authenticated")
    id_ = client(vale).post(at(wide), BODY, format="json").json()["id"]
    problem(client(stranger).post(f"{API}/overrides/{id_}/withdraw"), 404, "not-found")
    assert CautionOverride.objects.get().withdrawn_at is None


@pytest.mark.parametrize(
    ("change", "status", "code", "pointer"),
    [
        ({"code": "isolation-missing"}, 422, "override-not-possible", "#/code"),
        ({"code": "length-unsettled"}, 422, "override-not-possible", "#/code"),
        ({"code": "never-heard-of"}, 422, "override-not-possible", "#/code"),
        ({"canal": "DB"}, 422, "not-usable", "#/code"),
        ({"canal": None}, 422, "not-usable", "#/code"),
        ({"reason": ""}, 400, "not-understood", "#/reason"),
        ({"reason": 5}, 400, "not-understood", "#/reason"),
        ({"code": "x" * 61}, 400, "not-understood", "#/code"),
        ({"why": "because"}, 400, "not-understood", "#/why"),
    ],
)
def test_what_is_wrong_is_named_with_its_place(
    wide: Case, vale: Person, change: dict[str, Any], status: int, code: str, pointer: str
) -> None:
    answer = client(vale).post(at(wide), BODY | change, format="json")
    assert pointer in problem(answer, status, code)
    assert not CautionOverride.objects.exists()


def test_sent_again_it_is_the_same(wide: Case, vale: Person) -> None:
    body = {**BODY, "id": str(uuid7())}
    first, second = (client(vale).post(at(wide), body, format="json") for _ in range(2))
    assert (first.status_code, second.status_code, second.json()) == (201, 200, first.json())
    problem(client(vale).post(at(wide), {**body, "reason": "Another."}, format="json"), 409, "id-used-differently")
    problem(client(vale).post(at(wide), BODY, format="json"), 409, "taken-already")


def test_a_wide_canal_is_let_pass_with_a_size(molar: Case, vale: Person, priya: Person, asked: Asked) -> None:
    """P whose first size to bind was 50 asks for 55, and at most 50 is advised: its size is null until it is chosen."""
    canals.change_canal(actor=priya, canal=canal_of(molar, "P"), changes={"first_binder_size": 50})
    version, _ = plans.propose(actor=priya, case=molar, asked=asked)
    shown = client(priya).get(f"{API}/plan-versions/{version.pk}", {"expand": "plan"}).json()
    of_p = next(canal for canal in shown["plan"]["canals"] if canal["canal"] == "P")
    assert (of_p["final_size"], of_p["size_range"]["proposed"]) == (None, None)
    body = {"code": "wide-canal", "canal": "P", "reason": "Own cone."}
    none = problem(client(vale).post(at(molar), body, format="json"), 422, "override-not-possible")
    lacking = problem(client(vale).post(at(molar), {**body, "final_size": 60}, format="json"), 422, "not-usable")
    assert "#/final_size" in none
    assert "#/final_size" in lacking
    made = client(vale).post(at(molar), {**body, "final_size": 50}, format="json")
    assert (made.status_code, made.json()["final_size"]) == (201, 50)
    record = client(priya).get(f"{API}/cases/{molar.pk}/record").json()["record"]
    assert [override["final_size"] for override in record["overrides"]] == [50]
