"""Techniques as text: checked and told line by line, kept by a programme."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Person, Programme, TechniqueRecord
from planning.foundation.encoding import encode
from planning.foundation.tables import DATA
from planning.techniques.files import MOST_CHARACTERS, provided_techniques
from tests.api.compute import post
from tests.cast import API, client, problem

TEXT = (DATA / "techniques" / "step-back.toml").read_text(encoding="utf-8")
OWN = TEXT.replace('key = "step-back"', 'key = "our-step-back"').replace("steps = 3", "steps = 4")


def check(text: Any, **more: Any) -> Any:
    return post("compute/technique-check", {"text": text, "name": "ours.toml", **more})


def test_a_technique_that_can_be_used_is_answered_with_its_phases() -> None:
    checked = check(OWN).json()
    assert checked["technique"]["key"] == "our-step-back"
    settings = {trial["setting"]: trial for trial in checked["settings"]}
    assert list(settings) == ["block", "extracted", "clinic"]
    assert settings["clinic"]["phases"][0] == "access"
    assert settings["block"]["hold_points"] == ["length", "cone and final size", "final image"]
    more_steps = {trial["setting"]: trial["steps"] for trial in check(TEXT).json()["settings"]}
    assert all(settings[setting]["steps"] > steps for setting, steps in more_steps.items())


def test_all_that_is_wrong_comes_back_with_its_line() -> None:
    text = TEXT.replace("steps = 3", "steps = 30").replace(
        "from_size = 10\nto_size = 10", "from_size = 11\nto_size = 10"
    )
    lines = text.splitlines()
    answer = check(text)
    problem(answer, 422, "technique-not-usable")
    problem_ = answer.json()
    assert {error["pointer"] for error in problem_["errors"]} == {"#/text"}
    assert [lines[error["line"] - 1] for error in problem_["errors"]] == [
        "from_size = 11",
        "from_size = 11",
        "steps = 30",
    ]
    assert problem_["detail"].startswith(f"ours.toml, line {problem_['errors'][0]['line']}: ")
    assert problem_["errors"][-1]["detail"].endswith(
        "steps must be above 0 and at most 10: whatever repeats has to end."
    )


def test_a_technique_that_leaves_out_irrigation_says_what_to_do() -> None:
    start, end = TEXT.index('[[phases]]\nkey = "rinse"'), TEXT.index('[[phases]]\nkey = "cone"')
    answer = check(TEXT[:start] + TEXT[end:])
    assert "Put a phase of kind 'rinse' before it." in problem(answer, 422, "technique-not-usable")["#/text"]


def test_a_technique_that_no_kit_serves_is_refused_where_it_is_tried_out() -> None:
    answer = check((DATA / "techniques" / "crown-down.toml").read_text().replace("sizes_up = 3", "sizes_up = 20"))
    assert "it cannot be worked" in problem(answer, 422, "technique-not-usable")["#/text"]


@pytest.mark.parametrize(
    ("text", "status", "pointer"),
    [
        ("", 422, "#/text"),
        ("[" * 5_000, 422, "#/text"),
        ("a = " + "9" * 5_000, 422, "#/text"),
        ("a = nan\n", 422, "#/text"),
        ("\n" * MOST_CHARACTERS, 422, "#/text"),
        ("x" * (MOST_CHARACTERS + 1), 400, "#/text"),
        ("key = '\x00'", 400, "#/text"),
        (7, 400, "#/text"),
        (None, 400, "#/text"),
    ],
)
def test_what_is_no_technique_at_all(text: Any, status: int, pointer: str) -> None:
    answer = check(text)
    assert answer.status_code == status
    assert pointer in {error["pointer"] for error in answer.json()["errors"]}


def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/techniques"


def test_a_coordinator_keeps_a_technique_from_text(programme: Programme, rosa: Person, priya: Person) -> None:
    problem(client(priya).post(at(programme), {"text": OWN}, format="json"), 403, "not-allowed")
    made = client(rosa).post(at(programme), {"text": OWN}, format="json")
    assert (made.status_code, made.json()["technique"]["key"]) == (201, "our-step-back")
    techniques = client(priya).get(at(programme)).json()["results"]
    assert made.json() in techniques


def test_a_text_that_is_wrong_is_not_kept(programme: Programme, rosa: Person) -> None:
    answer = client(rosa).post(at(programme), {"text": OWN.replace("steps = 4", "steps = 40")}, format="json")
    assert "text, line " in problem(answer, 422, "technique-not-usable")["#/text"]
    both = {"text": OWN, "technique": {**encode(provided_techniques()["step-back"]), "key": "ours"}}
    for body in (both, {}):
        problem(client(rosa).post(at(programme), body, format="json"), 400, "not-understood")
    assert not TechniqueRecord.objects.exists()


def test_a_technique_is_tried_out_before_it_is_kept(programme: Programme, rosa: Person) -> None:
    technique = {**encode(provided_techniques()["crown-down"]), "key": "ours", "series_sizes_up": 20}
    answer = client(rosa).post(at(programme), {"technique": technique}, format="json")
    assert any(place.startswith("#/technique") for place in problem(answer, 422, "technique-not-usable"))
