"""Whoever reads says which fields they need."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Case, Person, ToothPlanVersion
from tests.api.judged import description
from tests.cast import API, canal_of, client, problem, state_of


def addresses(version: ToothPlanVersion) -> dict[str, str]:
    """Of what may be asked for in part, by the route that describes it."""
    case, programme = f"{API}/cases/{version.case_id}", f"{API}/programmes/{version.programme_id}"
    canal = f"{API}/canals/{canal_of(version.case, 'P').pk}"
    return {
        "cases/{case_id}": case,
        "cases/{case_id}/canals": f"{case}/canals",
        "canals/{canal_id}": canal,
        "cases/{case_id}/plan-versions": f"{case}/plan-versions",
        "cases/{case_id}/overrides": f"{case}/overrides",
        "plan-versions/{version_id}": f"{API}/plan-versions/{version.pk}",
        "plan-versions/{version_id}/summary": f"{API}/plan-versions/{version.pk}/summary",
        "programmes/{programme_id}": programme,
        "programmes/{programme_id}/cases": f"{programme}/cases",
        "programmes/{programme_id}/people": f"{programme}/people",
        "programmes/{programme_id}/kits": f"{programme}/kits",
    }


def described(route: str) -> list[str]:
    """The names that the description says may be chosen."""
    parameters = description()["paths"][f"{API}/{route}"]["get"]["parameters"]
    (fields,) = [parameter for parameter in parameters if parameter["name"] == "fields"]
    names: list[str] = fields["schema"]["items"]["enum"]
    return names


def rows_in(shown: dict[str, Any]) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = shown.get("results", [shown])
    return rows


def test_each_field_can_be_had_alone_and_all_of_them_are_the_whole(approved: ToothPlanVersion, vale: Person) -> None:
    """As the description names them, at every address that takes any."""
    for route, address in addresses(approved).items():
        whole = client(vale).get(address).json()
        names = described(route)
        assert all(list(row) == names for row in rows_in(whole)), route
        assert client(vale).get(address, {"fields": ",".join(reversed(names))}).json() == whole
        for name in (names[0], names[-1]):
            part = client(vale).get(address, {"fields": name}).json()
            assert rows_in(part) == [{name: row[name]} for row in rows_in(whole)], route
            assert part.keys() == whole.keys() or "results" not in whole


def test_what_can_be_chosen_from_is_tried_everywhere(approved: ToothPlanVersion) -> None:
    taking = {
        path.removeprefix(f"{API}/")
        for path, operations in description()["paths"].items()
        if any(each.get("name") == "fields" for each in operations.get("get", {}).get("parameters", []))
    }
    # Of one row of a list that is tried, or of a case that a service knows by a key of its own.
    alike = {
        "programmes/{programme_id}/kits/{kit_id}",
        "overrides/{override_id}",
        "programmes/{programme_id}/cases/by-external-id/{external_id}",
    }
    assert taking == addresses(approved).keys() | alike


def test_another_choice_has_another_tag_with_the_same_state(opened: Case, priya: Person) -> None:
    address, browser = f"{API}/cases/{opened.pk}", client(priya)
    whole, part = browser.get(address), browser.get(address, {"fields": "id,revision"})
    assert (whole["ETag"] != part["ETag"], state_of(whole)) == (True, state_of(part))
    again = {"If-None-Match": part["ETag"]}
    assert browser.get(address, {"fields": "id,revision"}, headers=again).status_code == 304
    assert browser.get(address, headers=again).status_code == 200
    changed = browser.patch(address, {"isolated": True}, format="json", headers={"If-Match": part["ETag"]})
    assert changed.status_code == 200


@pytest.mark.parametrize("fields", ["shoe_size", "id,shoe_size", "", "id,", "id, revision", "canals.name"])
def test_a_field_that_is_not_there_is_refused(fields: str, opened: Case, priya: Person) -> None:
    refused = client(priya).get(f"{API}/cases/{opened.pk}", {"fields": fields})
    assert "revision" in problem(refused, 400, "not-understood")["#/fields"]
    assert [fault["code"] for fault in refused.json()["errors"]] == ["not-of-these"]


def test_what_is_refused_and_what_is_changed_is_answered_whole(opened: Case, priya: Person, stranger: Person) -> None:
    address = f"{API}/cases/{opened.pk}"
    problem(client(stranger).get(address, {"fields": "id"}), 404, "not-found")
    assert client(priya).patch(f"{address}?fields=id", {}, format="json").status_code == 400
    assert client(priya).get(f"{address}/record", {"fields": "id"}).status_code == 400
