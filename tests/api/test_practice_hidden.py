"""What is hidden in an exercise leaves the server by no address before the exercise is ended.

Each is asked twice, the second time with other seeds in the tables: where the two answers are the same to the byte,
headers included, nothing in them comes from the hidden canal but what an act was answered.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import pytest
from rest_framework.test import APIClient

from cases.api.needs import FHIR_NEEDS, FHIR_PREFIX, NEEDS, PREFIX, Without
from cases.models import AccessKey, Case, Person, PracticeExercise, PracticeTask, Programme
from cases.services.practice import seeds
from planning.practice.exercise import Act, ActKind, Exercise
from planning.practice.truth import lengths_mm
from tests.cast import API, client
from tests.draws import WHOLE
from tests.keys import own_key, program, service_key
from tests.practice import LEVEL, begin, do, end, read, work

# What is another one in every answer, whatever it is about.
OF_THE_ANSWER = {"X-Request-Id", "Date", "Set-Cookie", "Server-Timing", "RateLimit", "RateLimit-Policy"}
SEED = 7
CURVED = "curved-canal"


def other_seed(level: str, acts: int) -> int:
    """A seed of another hidden canal of which so many acts tell the same: the length, and where instruments stop."""

    def told(seed: int) -> list[Any]:
        course = Exercise.begun(level, seed)
        done = [course.act(Act(kind=ActKind.WORK, predicted_mm=course.due.stop_mm)) for _ in range(acts) if course.due]
        return [course.due, *done]

    first, known = told(SEED), lengths_mm(level, SEED)
    return next(seed for seed in range(8, 400) if lengths_mm(level, seed) == known and told(seed) == first)


@pytest.fixture(autouse=True)
def answers_as_described() -> None:
    """Other tests hold the same answers against the description."""


@pytest.fixture(autouse=True)
def first_seed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(seeds, "new_seed", lambda: SEED)


def with_other_seeds(acts: Mapping[str, int]) -> None:
    """Other canals of which what was done so far tells the same."""
    for level, count in acts.items():
        seed = other_seed(level, count)
        assert PracticeExercise.objects.filter(level=level).update(seed=seed)
        PracticeTask.objects.filter(level=level).update(seed=seed)


def told(answer: Any) -> tuple[int, dict[str, str], bytes]:
    """All of an answer but what is another one each time."""
    content = b"".join(answer.streaming_content) if answer.streaming else answer.content
    headers = {name: value for name, value in answer.items() if name not in OF_THE_ANSWER}
    return answer.status_code, headers, content


def everything(askers: Mapping[str, APIClient], ids: Mapping[str, object]) -> dict[tuple[str, str], Any]:
    """The answer of every address that is read; in the gate, what is open to all is asked by nobody alone."""
    addresses = {PREFIX + address: row for address, row in NEEDS.items() if "schema" not in address}
    addresses |= {FHIR_PREFIX + address: row for address, row in FHIR_NEEDS.items()}
    return {
        (name, address): told(asker.get(re.sub(r"{(\w+)}", lambda part: str(ids.get(part[1], "0")), address)))
        for address, row in addresses.items()
        for name, asker in askers.items()
        if "GET" in row and (WHOLE or (row["GET"] is Without.SIGN_IN) is (name == "nobody"))
    }


def test_no_address_tells_what_is_hidden(
    programme: Programme, opened: Case, priya: Person, tom: Person, vale: Person, rosa: Person
) -> None:
    service = service_key(rosa)
    AccessKey.objects.filter(pk=service.row.pk).update(scopes=["cases:read", "export", *service.row.scopes])
    askers = {"student": client(priya), "supervisor": client(vale), "service": program(service.text)}
    askers |= {"nobody": APIClient()}
    if WHOLE:
        askers |= {"key": program(own_key(priya).text), "other": client(tom), "coordinator": client(rosa)}
    task = client(vale).post(f"{API}/programmes/{programme.pk}/practice-tasks", {"level": CURVED}, format="json").json()
    exercise = work(askers["student"], begin(askers["student"], programme, task_id=task["id"]), acts=4)
    work(askers["student"], begin(askers["student"], programme, level=LEVEL), acts=3)
    ids = {
        "programme_id": programme.pk,
        "case_id": opened.pk,
        "exercise_id": exercise["id"],
        "task_id": task["id"],
        "person_id": priya.pk,
        "table": "cases",
        "iso": 11,
        "tooth": 11,
        "code": "act-refused",
        "page": "changes",
        "resource_id": opened.pk,
    }
    before = everything(askers, ids)
    with_other_seeds({CURVED: 4, LEVEL: 3})
    after = everything(askers, ids)
    assert {place for place in before if before[place] != after[place]} == set()
    status, _, content = before["student", f"{PREFIX}practice-exercises/{{exercise_id}}"]
    assert (status, b'"reveal":null' in content) == (200, True)


def test_no_refusal_and_no_act_tells_more_than_where_the_instrument_stopped(
    programme: Programme, priya: Person, vale: Person
) -> None:
    phone = client(priya)
    exercise = begin(phone, programme, level=LEVEL)
    body: dict[str, Any] = {"act": {"kind": "work"}}
    at = f"{API}/practice-exercises/{exercise['id']}"

    def refused() -> list[Any]:
        asked = [
            do(phone, exercise, 0, kind="insert", instrument="no such"),
            do(phone, exercise, 0, past_mm=9.0),
            do(phone, exercise, 0, predicted_mm=900.0),
            do(phone, exercise, 5),
            do(client(vale), exercise, 0),
            phone.post(f"{at}/acts", body, format="json"),
            phone.post(f"{at}/end"),
        ]
        assert [answer.status_code for answer in asked] == [422, 422, 422, 412, 403, 428, 428]
        return [told(answer) for answer in asked]

    before = refused()
    with_other_seeds({LEVEL: 0})
    assert refused() == before


def test_an_act_tells_no_more_than_where_the_instrument_stopped(programme: Programme, priya: Person) -> None:
    phone, acts = client(priya), 3
    first, other = (begin(phone, programme, level=LEVEL) for _ in range(2))
    PracticeExercise.objects.filter(pk=other["id"]).update(seed=other_seed(LEVEL, acts))
    for revision in range(acts):
        answers = [do(phone, each, revision, predicted_mm=each["due"]["stop_mm"]).json() for each in (first, other)]
        assert [{**each, "id": "", "at": ""} for each in answers] == [{**answers[0], "id": "", "at": ""}] * 2


def test_two_hidden_canals_differ_once_they_are_shown(programme: Programme, priya: Person) -> None:
    """What the tests above compare could differ: else they would prove nothing."""
    phone = client(priya)
    first, other = (work(phone, begin(phone, programme, level=LEVEL), acts=3) for _ in range(2))
    PracticeExercise.objects.filter(pk=other["id"]).update(seed=other_seed(LEVEL, 3))
    ended, other_ended = end(phone, first), end(phone, read(phone, other))
    assert ended["done"] == other_ended["done"]
    assert ended["reveal"] != other_ended["reveal"]


def test_a_seed_cannot_be_guessed(programme: Programme, priya: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()
    begin(client(priya), programme, level=LEVEL)
    begin(client(priya), programme, level=LEVEL)
    seeds = list(PracticeExercise.objects.values_list("seed", flat=True))
    assert len(set(seeds)) == 2
    # One of 2^63 below 2^40 would come once in eight million.
    assert min(seeds) > 2**40
