"""The figures of a programme, over the API."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Case, ChangeLog, Person, Programme, ThresholdOverride
from cases.services.planning.plan_input import Asked
from planning.foundation import tables
from tests.cast import API, canal_of, client, problem


def at(programme: Programme, key: str = "") -> str:
    return f"{API}/programmes/{programme.pk}/figures" + (f"/{key}" if key else "")


def shown(programme: Programme, person: Person, key: str) -> Any:
    return next(figure for figure in client(person).get(at(programme)).json()["results"] if figure["key"] == key)


def test_every_figure_is_shown_with_its_source(programme: Programme, priya: Person) -> None:
    figures = client(priya).get(at(programme)).json()["results"]
    assert [figure["key"] for figure in figures] == list(tables.published())
    assert all(figure["source"] and figure["know"] and figure["says"] and not figure["own"] for figure in figures)


def test_the_coordinator_sets_one_and_goes_back(programme: Programme, rosa: Person, priya: Person) -> None:
    answer = client(rosa).put(at(programme, "wall.caution"), {"value": 0.7}, format="json")
    assert answer.status_code == 200, answer.json()
    figure = shown(programme, priya, "wall.caution")
    assert answer.json() == figure
    assert (figure["value"], figure["published"], figure["own"], figure["unit"]) == (0.7, 0.5, True, "mm")
    assert client(rosa).delete(at(programme, "wall.caution")).status_code == 204
    assert shown(programme, priya, "wall.caution")["own"] is False
    lines = ChangeLog.objects.filter(programme=programme, verb="set figure").order_by("pk")
    assert [line.after for line in lines] == ['{"wall.caution":0.7}', '{"wall.caution":null}']


# A third to three times the published figure: further out is a slip of the decimal point.
@pytest.mark.parametrize(
    ("key", "value", "status"),
    [
        ("wall.caution", 1.5, 200),
        ("wall.caution", 1.51, 422),
        ("wall.caution", 0.16, 422),
        ("wall.caution", -0.5, 422),
        ("set_back.block", 0.5, 200),
        ("set_back.block", 1.1, 422),
        ("passes.no_gain", 2.5, 422),
        ("final.severe_cap", 33, 422),
        ("final.severe_cap", 35, 200),
        ("wall.caution", "0.7", 400),
        ("wall.caution", True, 400),
        ("wall.caution", None, 400),
    ],
)
def test_a_figure_stays_near_the_published_one(
    programme: Programme, rosa: Person, key: str, value: Any, status: int
) -> None:
    answer = client(rosa).put(at(programme, key), {"value": value}, format="json")
    assert answer.status_code == status, answer.json()
    assert ThresholdOverride.objects.exists() is (status == 200)
    if status != 200:
        assert [error["pointer"] for error in answer.json()["errors"]] == ["#/value"]


def test_who_sets_figures(programme: Programme, priya: Person, vale: Person, stranger: Person, rosa: Person) -> None:
    for person in (priya, vale):
        problem(client(person).put(at(programme, "wall.stop"), {"value": 0.4}, format="json"), 403, "not-allowed")
        problem(client(person).delete(at(programme, "wall.stop")), 403, "not-allowed")
    problem(client(stranger).get(at(programme)), 404, "not-found")
    problem(client(stranger).put(at(programme, "wall.stop"), {"value": 0.4}, format="json"), 404, "not-found")
    problem(client(rosa).put(at(programme, "wall.nothing"), {"value": 0.4}, format="json"), 404, "not-found")
    assert not ThresholdOverride.objects.exists()


# --- widths ---

NARROW = [
    {"from_end_mm": 0.0, "narrow_mm": 0.18, "wide_mm": None},
    {"from_end_mm": 2.0, "narrow_mm": 0.2, "wide_mm": 0.3},
]


def widths_at(programme: Programme, place: str = "") -> str:
    return f"{API}/programmes/{programme.pk}/widths{place}"


def narrow_mm(plan: Any, canal: str) -> float:
    """At the canal's end."""
    canal_plan = next(each for each in plan["canals"] if each["canal"] == canal)
    return float(canal_plan["expectation"]["initial_shape"]["points"][-1]["narrow_mm"])


def preview(case: Case, student: Person, asked: Asked) -> Any:
    body = {
        "kit_id": str(asked.kit_id),
        "technique": asked.technique,
        "choices": {"needle": {"gauge": 30, "tip": "open"}},
    }
    return client(student).post(f"{API}/cases/{case.pk}/preview", body, format="json").json()


def test_the_programmes_widths_stand_for_both_sides_and_yield_to_what_was_measured(
    programme: Programme, rosa: Person, priya: Person, molar: Case, asked: Asked
) -> None:
    before = narrow_mm(preview(molar, priya, asked), "P")
    # Set for 16: the check case is a 26.
    made = client(rosa).put(widths_at(programme, "/16/P"), {"widths": NARROW}, format="json")
    assert made.status_code == 200, made.json()
    assert client(priya).get(widths_at(programme)).json()["results"] == [made.json()]
    assert (narrow_mm(preview(molar, priya, asked), "P"), before > 0.18) == (0.18, True)
    measured = [{"from_end_mm": 0.0, "narrow_mm": 0.22}]
    address = f"{API}/canals/{canal_of(molar, 'P').pk}"
    shown_canal = client(priya).patch(address, {"widths": measured}, format="json").json()
    assert shown_canal["widths"] == [{**measured[0], "wide_mm": None}]
    assert narrow_mm(preview(molar, priya, asked), "P") == 0.22
    client(priya).patch(address, {"widths": []}, format="json")
    assert client(rosa).delete(widths_at(programme, "/26/P")).status_code == 204
    assert narrow_mm(preview(molar, priya, asked), "P") == before
    assert ChangeLog.objects.filter(programme=programme, verb="set widths").count() == 2


@pytest.mark.parametrize(
    ("widths", "status", "pointer"),
    [
        ([], 422, "#/widths"),
        ([{"from_end_mm": 0.0, "narrow_mm": 9.0}], 422, "#/widths/0/narrow_mm"),
        ([{"from_end_mm": 0.0, "narrow_mm": 0.3, "wide_mm": 0.2}], 422, "#/widths/0/wide_mm"),
        ([NARROW[1], NARROW[0]], 422, "#/widths/1/from_end_mm"),
        ([{"from_end_mm": 0.0}], 400, "#/widths/0/narrow_mm"),
        ("wide", 400, "#/widths"),
    ],
)
def test_widths_that_cannot_be_are_refused(
    programme: Programme, rosa: Person, priya: Person, molar: Case, widths: Any, status: int, pointer: str
) -> None:
    answer = client(rosa).put(widths_at(programme, "/26/P"), {"widths": widths}, format="json")
    assert answer.status_code == status, answer.json()
    assert [error["pointer"] for error in answer.json()["errors"]] == [pointer]
    assert client(priya).get(widths_at(programme)).json()["results"] == []
    if widths:
        answer = client(priya).patch(f"{API}/canals/{canal_of(molar, 'P').pk}", {"widths": widths}, format="json")
        assert [error["pointer"] for error in answer.json()["errors"]] == [pointer]


def test_who_sets_widths(programme: Programme, priya: Person, vale: Person, rosa: Person, stranger: Person) -> None:
    body = {"widths": NARROW}
    for person in (priya, vale):
        problem(client(person).put(widths_at(programme, "/26/P"), body, format="json"), 403, "not-allowed")
    problem(client(stranger).put(widths_at(programme, "/26/P"), body, format="json"), 404, "not-found")
    problem(client(stranger).get(widths_at(programme)), 404, "not-found")
    for place in ("/75/P", "/99/P", "/x/P", "/26/anything-but-a-name"):
        problem(client(rosa).put(widths_at(programme, place), body, format="json"), 404, "not-found")
    problem(client(rosa).delete(widths_at(programme, "/75/P")), 404, "not-found")
