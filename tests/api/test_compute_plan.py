"""Computing lengths, orders of work and whole plans without storing anything."""

from __future__ import annotations

from typing import Any

import pytest

from planning.foundation.encoding import encode
from planning.techniques.files import provided_techniques
from tests.api.compute import ROOT, plan_request, post, problem, signed_in

PALATAL: dict[str, Any] = {
    "canal": "P",
    "reference_point": "P cusp",
    "setting": "extracted",
    "readings": [
        {"method": "pre_operative_image", "tooth_mm": 22.0, "reference_point": "P cusp"},
        {"method": "confirming_image", "set_mm": 21.0, "tip_short_mm": 1.5, "reference_point": "P cusp"},
    ],
}


def stops(plan: dict[str, Any], size: int, taper: int = 2) -> dict[str, set[float]]:
    """Stops of an instrument by canal."""
    by_canal: dict[str, set[float]] = {}
    for row in plan["stop_table"]:
        if (row["instrument"]["size"], row["instrument"]["taper"]) == (size, taper):
            for stop in row["stops"]:
                by_canal.setdefault(stop["canal"], set()).add(stop["stop_mm"])
    return by_canal


# --- whole plans ---


def test_the_four_canal_molar_gets_its_lengths() -> None:
    plan = post("compute/plan", plan_request()).json()
    lengths = {canal["canal"]: canal["length"] for canal in plan["canals"]}
    assert {name: each["estimate_mm"] for name, each in lengths.items()} == {
        "MB1": 19.5,
        "MB2": 19.0,
        "DB": 18.5,
        "P": 21.0,
    }
    assert {name: each["stop_mm"] for name, each in lengths.items()} == {
        "MB1": 19.5,
        "MB2": 19.0,
        "DB": 18.0,
        "P": 21.5,
    }


def test_the_joining_canal_stops_at_the_junction() -> None:
    plan = post("compute/plan", plan_request()).json()
    assert max(stops(plan, 10)["MB2"]) == 16.0
    assert stops(plan, 15)["MB2"] == stops(plan, 20)["MB2"] == stops(plan, 25, 4)["MB2"] == {16.0}


def test_open_needle_ceilings() -> None:
    plan = post("compute/plan", plan_request()).json()
    assert {canal["canal"]: canal["needle"]["ceiling_mm"] for canal in plan["canals"]} == {
        "MB1": 17.5,
        "MB2": 14.0,
        "DB": 16.0,
        "P": 19.5,
    }


@pytest.mark.parametrize(
    "tooth",
    [
        {"notation": "universal", "designation": "14"},
        {"notation": "palmer", "designation": "UL6"},
        {"notation": "palmer", "designation": "⎿6"},
    ],
)
def test_asked_in_another_notation_it_is_the_same_case(tooth: dict[str, str]) -> None:
    in_iso = post("compute/plan", plan_request())
    assert in_iso.status_code == 200
    assert post("compute/plan", plan_request(tooth=tooth)).content == in_iso.content


def test_a_technique_of_ones_own_is_planned_like_a_provided_one() -> None:
    own = encode(provided_techniques()["crown-down"])
    assert post("compute/plan", plan_request(technique=own)).content == post("compute/plan", plan_request()).content


def test_without_a_junction_reading_the_joining_canal_has_no_engine_step() -> None:
    sent = plan_request()
    sent["canals"][1]["junction"] = None
    plan = post("compute/plan", sent).json()
    assert "MB2" not in stops(plan, 25, 4)
    assert "MB1" in stops(plan, 25, 4)
    withheld = {canal["canal"]: [each["code"] for each in canal["withheld"]] for canal in plan["canals"]}
    assert withheld["MB2"] == ["junction-missing"]


# --- refusals ---


def wrong(at: str, value: object) -> dict[str, Any]:
    """The molar with one thing changed, `at` a path of keys and numbers."""
    sent: Any = plan_request()
    *path, last = [int(part) if part.isdigit() else part for part in at.split("/")]
    inside = sent
    for part in path:
        inside = inside[part]
    inside[last] = value
    return dict(sent)


@pytest.mark.parametrize(
    ("at", "value", "code", "pointer"),
    [
        ("tooth/designation", "77", "unknown-tooth", "#/tooth/designation"),
        ("tooth/notation", None, "notation-missing", "#/tooth/notation"),
        ("tooth/designation", "75", "charted-not-planned", "#/tooth"),
        ("root_filled", True, "charted-not-planned", "#/root_filled"),
        ("canals/0/apex_mm", 1.6, "charted-not-planned", "#/canals/0/apex_mm"),
        ("canals", [], "no-canals", "#/canals"),
        ("canals/0/readings/0/tooth_mm", 205.0, "length-out-of-bounds", "#/canals/0/readings/0/tooth_mm"),
        ("technique", "sideways", "technique-not-usable", "#/technique"),
        ("kit/instruments/12/motion", "reciprocating", "motion-not-accepted", "#/kit/instruments/12/motion"),
        ("thresholds", {"no.such": 1.0}, "choice-not-possible", "#/thresholds/no.such"),
    ],
)
def test_what_cannot_be_planned_is_refused_where_it_stands(at: str, value: object, code: str, pointer: str) -> None:
    assert list(problem(post("compute/plan", wrong(at, value)), 422, code)) == [pointer]


def test_a_technique_that_contradicts_itself_is_refused_where_it_does() -> None:
    own = encode(provided_techniques()["crown-down"])
    own["phases"][6]["repeat_from"] = "nowhere"
    errors = problem(post("compute/plan", plan_request(technique=own)), 422, "technique-not-usable")
    assert list(errors) == ["#/technique/phases/6"]


@pytest.mark.parametrize(
    ("at", "many", "pointer"),
    [
        ("canals", 9, "#/canals"),
        ("kit/instruments", 121, "#/kit/instruments"),
        ("canals/0/readings", 61, "#/canals/0/readings"),
        ("kit/needles", 21, "#/kit/needles"),
    ],
)
def test_too_much_at_once_is_refused(at: str, many: int, pointer: str) -> None:
    inside: Any = plan_request()
    for part in at.split("/"):
        inside = inside[int(part) if part.isdigit() else part]
    answer = post("compute/plan", wrong(at, [inside[0]] * many))
    assert problem(answer, 400, "not-understood") == {pointer: f"At most {many - 1} of them."}


def test_a_technique_that_never_tires_is_refused() -> None:
    own = encode(provided_techniques()["crown-down"])
    own["phases"][6]["most_passes"] = 11
    errors = problem(post("compute/plan", plan_request(technique=own)), 422, "too-much-work")
    assert list(errors) == ["#/technique/phases/6/most_passes"]


def test_every_problem_is_told_at_once() -> None:
    sent = plan_request()
    sent["canals"][0]["readings"][0]["tooth_mm"] = "20.5"
    sent["canals"][1]["curvature_deg"] = True
    sent["kit"]["instruments"][0]["maker"] = "x"
    del sent["choices"]["needle"]
    assert problem(post("compute/plan", sent), 400, "not-understood") == {
        "#/canals/0/readings/0/tooth_mm": "Must be a number.",
        "#/canals/1/curvature_deg": "Must be a number.",
        "#/kit/instruments/0/maker": "Is not known here.",
        "#/choices/needle": "Fill this in.",
    }


@pytest.mark.parametrize(
    ("body", "status", "code"),
    [
        ("{", 400, "parse-error"),
        ('{"tooth": NaN}', 400, "parse-error"),
        ("[" * 100_000, 400, "parse-error"),
        ('"\\ud800"', 400, "not-understood"),
        (f'{{"tooth": {"9" * 5000}}}', 400, "parse-error"),
        ("", 400, "not-understood"),
        ('{"tooth": "' + "x" * 500_000 + '"}', 413, "body-too-long"),
    ],
)
def test_a_body_that_cannot_be_read_is_a_problem_and_no_crash(body: str, status: int, code: str) -> None:
    answer = signed_in().post(ROOT + "compute/plan", body, content_type="application/json")
    problem(answer, status, code)


def test_another_media_type_is_refused() -> None:
    answer = signed_in().post(ROOT + "compute/plan", "tooth=26", content_type="text/plain")
    problem(answer, 415, "unsupported-media-type")


# --- one length, one order of work ---


def test_a_confirmed_length_is_not_averaged_with_its_estimate() -> None:
    answer = post("compute/length", PALATAL).json()
    assert (answer["state"], answer["stop_mm"], answer["estimate_mm"]) == ("settled", 21.5, 21.0)
    assert answer["rests_on"] == ["confirming_image"]


def test_readings_that_disagree_are_unsettled() -> None:
    locator = {
        "method": "apex_locator",
        "read_mm": 20.0,
        "repeat_mm": 20.0,
        "mark": "apex",
        "reference_point": "P cusp",
    }
    answer = post("compute/length", PALATAL | {"readings": [*PALATAL["readings"], locator]}).json()
    assert (answer["state"], answer["apart_mm"]) == ("unsettled", 2.0)


@pytest.mark.parametrize(
    ("changed", "code", "pointer"),
    [
        ({"readings": [PALATAL["readings"][0] | {"tooth_mm": 9.9}]}, "length-out-of-bounds", "#/readings/0/tooth_mm"),
        ({"thresholds": {"nothing": 1}}, "choice-not-possible", "#/thresholds/nothing"),
    ],
)
def test_a_length_that_cannot_be_is_refused(changed: dict[str, Any], code: str, pointer: str) -> None:
    assert list(problem(post("compute/length", PALATAL | changed), 422, code)) == [pointer]


def test_a_programmes_own_set_back_is_used() -> None:
    answer = post("compute/length", PALATAL | {"thresholds": {"set_back.none": 1.5}}).json()
    assert answer["stop_mm"] == 21.0


def test_the_order_of_work_is_the_plans_own() -> None:
    sheet = post("compute/run-sheet", {"canal": "DB", "plan": plan_request()}).json()
    plan = post("compute/plan", plan_request()).json()
    canal = next(each for each in plan["canals"] if each["canal"] == "DB")
    assert sheet["run_sheet"] == canal["run_sheet"]
    assert sheet["expected_path"] == canal["expected_path"]
    assert set(sheet["expected_path"]) <= set(sheet["run_sheet"]["nodes"])
    assert {each["canal"] for each in sheet["cautions"]} <= {None, "DB"}


def test_a_canal_that_is_not_among_those_sent() -> None:
    answer = post("compute/run-sheet", {"canal": "MB3", "plan": plan_request()})
    assert list(problem(answer, 422, "canals-do-not-fit")) == ["#/canal"]


def test_what_is_wrong_with_the_plan_is_told_below_it() -> None:
    answer = post("compute/run-sheet", {"canal": "P", "plan": wrong("tooth/designation", "99")})
    assert list(problem(answer, 422, "unknown-tooth")) == ["#/plan/tooth/designation"]
