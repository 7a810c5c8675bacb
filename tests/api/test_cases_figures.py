"""The figures of a programme, over the API."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import ChangeLog, Person, Programme, ThresholdOverride
from planning import tables
from tests.cast import API, client, problem


def at(programme: Programme, key: str = "") -> str:
    return f"{API}/programmes/{programme.pk}/figures" + (f"/{key}" if key else "")


def shown(programme: Programme, person: Person, key: str) -> Any:
    return next(one for one in client(person).get(at(programme)).json()["results"] if one["key"] == key)


def test_every_figure_is_shown_with_its_source(programme: Programme, priya: Person) -> None:
    found = client(priya).get(at(programme)).json()["results"]
    assert [one["key"] for one in found] == list(tables.published())
    assert all(one["source"] and one["know"] and one["says"] and not one["own"] for one in found)


def test_the_coordinator_sets_one_and_goes_back(programme: Programme, rosa: Person, priya: Person) -> None:
    answer = client(rosa).put(at(programme, "wall.caution"), {"value": 0.7}, format="json")
    assert answer.status_code == 200, answer.json()
    told = shown(programme, priya, "wall.caution")
    assert answer.json() == told
    assert (told["value"], told["published"], told["own"], told["unit"]) == (0.7, 0.5, True, "mm")
    assert client(rosa).delete(at(programme, "wall.caution")).status_code == 204
    assert shown(programme, priya, "wall.caution")["own"] is False
    lines = ChangeLog.objects.filter(programme=programme, verb="set").order_by("pk")
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
