"""A patient's visit over the API: named, worked, closed, checked, opened again, renewed."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Person, ToothPlanVersion
from tests.api.test_cases_treatment import LAPTOP, PHONE, TABLET, at, event, report, running
from tests.cast import canal_of, client, problem

CLOSE = {"kind": "close", "access_sealed": True, "dressing": "calcium_hydroxide", "temporary": "glass_ionomer"}
DAM_ON = {"kind": "dam", "state": "on"}
CHECK = {"kind": "sign_off", "exit": "approved"}


def reopen(supervisor: Person | None, *as_left: str, **more: Any) -> dict[str, Any]:
    return {
        "kind": "reopen",
        "as_left": list(as_left),
        "protected": True,
        "supervisor_id": str(supervisor.pk) if supervisor else "",
        **more,
    }


def on_site(supervisor: Person) -> dict[str, Any]:
    return {"kind": "on_site", "supervisor_id": str(supervisor.pk)}


def visit_event(version: ToothPlanVersion, seq: int, body: dict[str, Any], node: str = "") -> dict[str, Any]:
    return event(version, seq, body, canal="", node=node)


def test_the_answer_says_what_is_missing_before_the_first_step(
    priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    course = client(priya).get(at(clinic.case)).json()["course"]
    assert course["missing"] == ["dam_off", "nobody_on_site"]
    course = report(
        priya, clinic.case, PHONE, visit_event(clinic, 1, DAM_ON), visit_event(clinic, 2, on_site(vale))
    ).json()["course"]
    assert (course["missing"], course["on_site"], course["dam"]) == ([], str(vale.pk), "on")


def test_a_visit_from_closing_to_going_on(priya: Person, vale: Person, clinic: ToothPlanVersion) -> None:
    course = report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE)).json()["course"]
    assert (course["closed"], course["check_due"], course["missing"]) == (True, True, ["closed"])
    course = report(vale, clinic.case, LAPTOP, visit_event(clinic, 1, CHECK, "visit/check")).json()["course"]
    assert (course["closed"], course["check_due"]) == (True, False)
    again = visit_event(clinic, 2, reopen(vale, "MB1", "MB2", "DB", "P"))
    assert report(priya, clinic.case, PHONE, again).json()["course"]["missing"] == ["approval_lapsed"]
    renewed = report(vale, clinic.case, LAPTOP, visit_event(clinic, 2, CHECK, "visit/renew")).json()
    assert renewed["course"]["missing"] == []
    assert {canal["state"] for canal in renewed["canals"]} == {"hold_point"}


def test_a_student_neither_checks_nor_renews(priya: Person, clinic: ToothPlanVersion) -> None:
    report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE))
    for node in ("visit/check", "visit/renew"):
        answer = report(priya, clinic.case, PHONE, visit_event(clinic, 2, CHECK, node))
        assert list(problem(answer, 403, "not-allowed")) == ["#/events/0/payload/kind"]


def test_only_a_supervisor_of_the_programme_is_named_as_being_in_the_room(
    priya: Person, tom: Person, stranger: Person, clinic: ToothPlanVersion
) -> None:
    """Whoever else is named is kept as told, marked, and lets nobody work."""
    named = [on_site(tom), on_site(stranger), *({"kind": "on_site", "supervisor_id": name} for name in ("", "Dr Vale"))]
    bodies = [*named, CLOSE, reopen(tom)]
    events = [visit_event(clinic, seq, body) for seq, body in enumerate(bodies, start=1)]
    shown = report(priya, clinic.case, PHONE, *events).json()
    # The first event is the plan in force.
    assert [each["not_checked"] for each in shown["events"][1:]] == [*["room"] * 4, "", "room"]
    assert set(shown["course"]["out_of_course"].values()) == {"not_checked"}
    assert len(shown["course"]["out_of_course"]) == len(named)
    # The visit is open again, and nobody is in the room.
    assert (shown["course"]["closed"], shown["course"]["on_site"]) == (False, "")
    assert "nobody_on_site" in shown["course"]["missing"]


def test_strangers_close_nothing(tom: Person, stranger: Person, clinic: ToothPlanVersion) -> None:
    assert report(tom, clinic.case, PHONE, visit_event(clinic, 1, CLOSE)).status_code == 404
    assert report(stranger, clinic.case, PHONE, visit_event(clinic, 1, CLOSE)).status_code == 404


def test_closed_twice_by_two_phones_the_second_is_kept_out_of_course(priya: Person, clinic: ToothPlanVersion) -> None:
    report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE))
    late = visit_event(clinic, 1, CLOSE | {"dressing": "none"})
    assert report(priya, clinic.case, TABLET, late).json()["course"]["out_of_course"] == {late["id"]: "closed"}


@pytest.mark.parametrize(
    ("body", "pointer"),
    [
        ({"kind": "close", "access_sealed": True, "dressing": "chewing gum"}, "dressing"),
        ({"kind": "dam", "state": "nearly"}, "state"),
        ({"kind": "reopen", "as_left": [], "found": [{"canal": "P"}]}, "found/0/reference_there"),
    ],
)
def test_what_is_not_understood_is_named(
    body: dict[str, Any], pointer: str, priya: Person, clinic: ToothPlanVersion
) -> None:
    answer = report(priya, clinic.case, PHONE, visit_event(clinic, 1, body))
    assert list(problem(answer, 400, "not-understood")) == [f"#/events/0/payload/{pointer}"]


@pytest.mark.parametrize(
    ("as_found", "pointer"),
    [
        ({"canal": "P", "reference_there": True, "small_as_deep": False, "length_agrees": True}, "found/0"),
        ({"canal": "DB", "reference_there": False}, "found/0/reference_point"),
        ({"canal": "DB", "reference_there": True, "reference_point": "P cusp"}, "found/0/reference_point"),
        ({"canal": "DB", "reference_there": False, "reference_point": "x" * 41}, "found/0/reference_point"),
    ],
)
def test_what_was_found_does_not_contradict_itself(
    as_found: dict[str, Any], pointer: str, priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    answer = report(priya, clinic.case, PHONE, visit_event(clinic, 1, reopen(vale, "P", found=[as_found])))
    assert list(problem(answer, 422, "found-not-clear")) == [f"#/events/0/payload/{pointer}"]


def test_a_reference_point_that_has_gone_voids_the_lengths_that_use_it(
    priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    """Decision A7: readings from different points never combine; the other canals are untouched."""
    browser, before = client(priya), canal_of(clinic.case, "DB").reference_point
    as_found = [{"canal": "DB", "reference_there": False, "reference_point": f"{before}, reduced"}]
    again = visit_event(clinic, 2, reopen(vale, "MB1", "MB2", "P", found=as_found))
    shown = report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE), again).json()
    assert {each["canal"]: each["state"] for each in shown["canals"]}["DB"] == "to_plan"
    charted = {each["name"]: each for each in browser.get(f"/api/v1/cases/{clinic.case_id}").json()["canals"]}
    assert charted["DB"]["reference_point"] == f"{before}, reduced"
    assert [charted[name]["length"]["stop_mm"] for name in ("DB", "P")] == [None, 21.5]


def test_a_new_reference_point_has_a_name_of_its_own(priya: Person, vale: Person, clinic: ToothPlanVersion) -> None:
    before = canal_of(clinic.case, "DB").reference_point
    as_found = [{"canal": "DB", "reference_there": False, "reference_point": before}]
    again = visit_event(clinic, 2, reopen(vale, found=as_found))
    shown = report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE), again).json()
    # The first event is the plan in force.
    assert [each["not_checked"] for each in shown["events"][1:]] == ["", "point"]
    # Kept and marked: the canal waits for a plan, and no length has come to count under an old name.
    assert {each["canal"]: each["state"] for each in shown["canals"]}["DB"] == "to_plan"
    assert canal_of(clinic.case, "DB").reference_point == before


def test_supervisors_see_who_is_in_the_room_and_what_is_missing(
    priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    report(priya, clinic.case, PHONE, visit_event(clinic, 1, DAM_ON), visit_event(clinic, 2, on_site(vale)))
    (work,) = running(vale, clinic.case)
    assert (work["on_site"]["name"], work["missing"], work["check_due"]) == ("Vale", [], False)
    report(priya, clinic.case, PHONE, visit_event(clinic, 3, {"kind": "dam", "state": "leaking"}))
    (work,) = running(vale, clinic.case)
    assert (work["missing"], work["halted"]) == (["dam_off"], False)


def test_a_closed_visit_stays_on_the_list_until_it_was_checked(
    priya: Person, vale: Person, clinic: ToothPlanVersion
) -> None:
    report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE))
    (work,) = running(vale, clinic.case)
    assert (work["check_due"], work["missing"], work["on_site"]) == (True, ["closed"], None)
    assert work["waiting_s"] is not None
    report(vale, clinic.case, LAPTOP, visit_event(clinic, 1, CHECK, "visit/check"))
    assert running(vale, clinic.case) == []


def test_an_approval_that_lapsed_waits_for_a_supervisor(priya: Person, vale: Person, clinic: ToothPlanVersion) -> None:
    canals = ("MB1", "MB2", "DB", "P")
    report(priya, clinic.case, PHONE, visit_event(clinic, 1, CLOSE), visit_event(clinic, 2, reopen(vale, *canals)))
    (work,) = running(vale, clinic.case)
    assert work["missing"] == ["approval_lapsed"]
    assert work["waiting_s"] is not None
