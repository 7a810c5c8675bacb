"""Whoever reads says which fields they need, and what is heavy is shown to whoever asks for it."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Case, CautionOverride, Person, Programme, ToothPlanVersion
from tests.api.judged import description
from tests.cast import API, canal_of, client, problem, state_of
from tests.practice import LEVEL, begin


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
        "programmes/{programme_id}": programme,
        "programmes/{programme_id}/cases": f"{programme}/cases",
        "programmes/{programme_id}/people": f"{programme}/people",
        "programmes/{programme_id}/kits": f"{programme}/kits",
        "programmes/{programme_id}/practice-exercises": f"{programme}/practice-exercises",
        "programmes/{programme_id}/practice-tasks": f"{programme}/practice-tasks",
    }


def described(route: str, query: str = "fields") -> list[str]:
    """The names that the description says may be chosen; none where it has no such query."""
    parameters = description()["paths"][f"{API}/{route}"]["get"]["parameters"]
    enums = [each["schema"]["items"]["enum"] for each in parameters if each["name"] == query]
    return enums[0] if enums else []


def rows_in(shown: dict[str, Any]) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = shown.get("results", [shown])
    return rows


@pytest.mark.one_database
def test_each_field_can_be_had_alone_and_all_of_them_are_the_whole(
    approved: ToothPlanVersion, programme: Programme, priya: Person, vale: Person
) -> None:
    """As the description names them, at every address that takes any."""
    CautionOverride.objects.create(
        case=approved.case, version=approved, code="apex-wide", reason="Seen on two images.", supervisor=vale
    )
    begin(client(priya), programme, level=LEVEL)
    client(vale).post(f"{API}/programmes/{programme.pk}/practice-tasks", {"level": LEVEL}, format="json")
    for route, address in addresses(approved).items():
        names, heavy = described(route), described(route, "expand")
        whole = client(vale).get(address, {"expand": ",".join(heavy)} if heavy else {}).json()
        assert rows_in(whole), route
        assert all(list(row) == names for row in rows_in(whole)), route
        slim = [{name: value for name, value in row.items() if name not in heavy} for row in rows_in(whole)]
        assert rows_in(client(vale).get(address).json()) == slim, route
        assert client(vale).get(address, {"fields": ",".join(reversed(names))}).json() == whole
        for name in (names[0], names[-1]):
            part = client(vale).get(address, {"fields": name}).json()
            assert rows_in(part) == [{name: row[name]} for row in rows_in(whole)], route
            assert part.keys() == whole.keys() or "results" not in whole


@pytest.mark.one_database
def test_what_can_be_chosen_from_is_tried_everywhere(approved: ToothPlanVersion) -> None:
    taking = {
        path.removeprefix(f"{API}/")
        for path, operations in description()["paths"].items()
        if any(each.get("name") == "fields" for each in operations.get("get", {}).get("parameters", []))
    }
    # Of one row of a list that is tried, or of a case that a service knows by a key of its own.
    alike = {
        "programmes/{programme_id}/kits/{kit_id}",
        "programmes/{programme_id}/people/{person_id}",
        "overrides/{override_id}",
        "programmes/{programme_id}/practice-tasks/{task_id}",
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


# --- what is heavy ---


def test_a_version_and_a_case_are_small_until_more_is_asked_for(vale: Person, approved: ToothPlanVersion) -> None:
    """A molar with four canals and one approved plan."""
    version, case = f"{API}/plan-versions/{approved.pk}", f"{API}/cases/{approved.case_id}"
    sizes = {address: len(client(vale).get(address).content) for address in (version, case)}
    assert (sizes[version] < 2_000, sizes[case] < 10_000) == (True, True), sizes
    assert len(client(vale).get(version, {"expand": "plan"}).content) > 40 * sizes[version]


def test_each_form_has_a_tag_that_moves_with_what_it_shows(vale: Person, submitted: ToothPlanVersion) -> None:
    address, browser = f"{API}/plan-versions/{submitted.pk}", client(vale)
    moving: list[dict[str, str]] = [{}, {"expand": "plan"}, {"expand": "plan,given"}, {"fields": "state"}]
    still: list[dict[str, str]] = [{"fields": "hash"}, {"fields": "plan"}, {"fields": "id", "expand": "choices"}]
    before = [browser.get(address, form) for form in (*moving, *still)]
    tags = [answer["ETag"] for answer in before]
    assert len(set(tags)) == len(tags)
    assert {state_of(answer) for answer in before} == {submitted.hash}
    headers = {"If-Match": tags[1]}
    made = browser.post(f"{address}/reviews", {"decision": "approved"}, format="json", headers=headers)
    assert made.status_code == 201, made.content
    after = [
        browser.get(address, form, headers={"If-None-Match": tag})
        for form, tag in zip((*moving, *still), tags, strict=True)
    ]
    assert [answer.status_code for answer in after] == [200] * len(moving) + [304] * len(still)


@pytest.mark.parametrize("expand", ["shoe_size", "plan,shoe_size", "", "plan,", "hash"])
def test_what_is_not_heavy_cannot_be_asked_for_as_such(expand: str, vale: Person, submitted: ToothPlanVersion) -> None:
    version, programme = f"{API}/plan-versions/{submitted.pk}", f"{API}/programmes/{submitted.programme_id}"
    for refused in (
        client(vale).get(version, {"expand": expand}),
        client(vale).post(f"{version}/withdraw?expand={expand}"),
    ):
        assert "choices, plan, given" in problem(refused, 400, "not-understood")["#/expand"]
    other = problem(client(vale).get(programme, {"expand": "plan"}), 400, "not-understood")
    assert other.keys() == {"#/expand"}


def test_a_change_answers_small_too_and_takes_expand(priya: Person, vale: Person, proposed: ToothPlanVersion) -> None:
    """Each that answers with a version is described so; these are made after one another."""
    every = {
        path.rpartition("/")[2]: {each["name"] for each in operation["parameters"]}
        for path, methods in description()["paths"].items()
        if (operation := methods.get("post")) and "VersionShown" in str(operation["responses"].get("200"))
    }
    assert every.keys() == {"plan-versions", "submit", "withdraw", "release", "revoke"}
    assert all("expand" in names for names in every.values())
    address, slim = f"{API}/plan-versions/{proposed.pk}", described("plan-versions/{version_id}")[:-3]
    submit, withdraw = f"{address}/submit", f"{address}/withdraw"
    assert list(client(priya).post(submit).json()) == slim
    assert list(client(priya).post(f"{withdraw}?expand=plan&expand=choices").json()) == [*slim, "choices", "plan"]
    key = {"Idempotency-Key": '"asked once"'}
    first, second = (client(priya).post(f"{submit}?expand=plan", headers=key) for _ in range(2))
    assert (first.content, list(first.json())) == (second.content, [*slim, "plan"])
    other = client(priya).post(f"{submit}?expand=given", headers=key)
    problem(other, 422, "idempotency-key-used-differently")
