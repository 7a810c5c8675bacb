"""Practice over the API: begun with nothing set up, worked, ended, scored; who sees it; tasks."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.uuid7 import uuid7
from cases.models import Change, Person, PracticeAct, PracticeExercise, Programme
from cases.services.practice import exercises, seeds
from planning.practice.exercise import Act, ActKind, Exercise
from planning.practice.levels import levels
from tests.cast import API, client, problem
from tests.practice import LEVEL, begin, do, end, read, work


@pytest.fixture(autouse=True)
def one_canal(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every hidden canal is the same: its plan is made once in a process."""
    monkeypatch.setattr(seeds, "new_seed", lambda: 7)


def test_an_exercise_from_nothing_to_its_score(programme: Programme, priya: Person) -> None:
    """Depths and score are the engine's own for the same seed and acts: it is judged by its own tests."""
    phone = client(priya)
    practice = phone.get(f"{API}/programmes/{programme.pk}/practice").json()
    assert [level["key"] for level in practice["levels"]] == [level.key for level in levels()]
    assert (practice["proposed"], practice["unended_id"], practice["points"]) == ("straight-block", None, None)
    begun = begin(phone, programme)
    assert (begun["level"], begun["revision"], begun["done"], begun["reveal"]) == ("straight-block", 0, [], None)
    assert phone.get(f"{API}/programmes/{programme.pk}/practice").json()["unended_id"] == begun["id"]
    exercise = work(phone, begin(phone, programme, level=LEVEL))
    engine = Exercise.begun(LEVEL, 7)
    while engine.due:
        engine.act(Act(kind=ActKind.WORK, predicted_mm=engine.due.stop_mm))
    assert [done["depth_mm"] for done in exercise["done"]] == [done.depth_mm for done in engine.done]
    assert (exercise["due"], exercise["score"], exercise["reveal"]) == (None, None, None)
    ended = end(phone, exercise)
    assert ended["score"] == ended["reveal"]["score"]
    assert ended["score"]["mistakes"] == 0
    (canal,) = ended["reveal"]["canals"]
    assert [point["diameter_mm"] for point in canal["was"]] == [round(wide, 2) for _, wide in engine.hidden[0].shape]
    practice = phone.get(f"{API}/programmes/{programme.pk}/practice").json()
    assert (practice["worked"], practice["points"]) == (1, ended["score"]["points"])
    listed = phone.get(f"{API}/programmes/{programme.pk}/practice-exercises", {"level": LEVEL}).json()["results"]
    assert [row["score"] for row in listed] == [ended["score"]]


def test_sent_twice_it_is_done_once_and_the_second_device_looks_again(programme: Programme, priya: Person) -> None:
    phone = client(priya)
    id_, other = str(uuid7()), client(priya)
    first = begin(phone, programme, id=id_, level=LEVEL)
    assert begin(phone, programme, id=id_, level=LEVEL) == first
    address = f"{API}/practice-exercises/{id_}/acts"
    body: dict[str, Any] = {"id": str(uuid7()), "act": {"kind": "work"}}
    problem(phone.post(address, body, format="json"), 428, "precondition-missing")
    made, again = (phone.post(address, body, format="json", headers={"If-Match": '"0"'}) for _ in range(2))
    assert (made.status_code, again.status_code, again.json()) == (201, 200, made.json())
    problem(do(other, first, 0), 412, "changed-since")
    different = {**body, "act": {"kind": "skip"}}
    answer = phone.post(address, different, format="json", headers={"If-Match": '"1"'})
    problem(answer, 409, "id-used-differently")
    headers = {"If-Match": '"1"', "Idempotency-Key": '"once"'}
    kept = [phone.post(address, {"act": {"kind": "work"}}, format="json", headers=headers).json() for _ in range(2)]
    assert kept[0] == kept[1]
    assert (read(phone, first)["revision"], PracticeAct.objects.count()) == (2, 2)


def test_its_student_and_the_supervisors_see_it_and_its_student_alone_works_it(
    programme: Programme, priya: Person, tom: Person, vale: Person, rosa: Person, stranger: Person
) -> None:
    exercise = begin(client(priya), programme, level=LEVEL)
    address = f"{API}/practice-exercises/{exercise['id']}"
    listed = f"{API}/programmes/{programme.pk}/practice-exercises"
    assert read(client(vale), exercise) == exercise
    assert [row["id"] for row in client(vale).get(listed, {"student_id": str(priya.pk)}).json()["results"]] == [
        exercise["id"]
    ]
    assert client(tom).get(listed).json()["results"] == []
    problem(client(rosa).get(listed), 403, "not-allowed")
    problem(client(rosa).get(f"{API}/programmes/{programme.pk}/practice"), 403, "not-allowed")
    for person in (tom, rosa, stranger):
        problem(client(person).get(address), 404, "not-found")
        problem(do(client(person), exercise, 0), 404, "not-found")
    for move in ("acts", "end"):
        answer = client(vale).post(f"{address}/{move}", {"act": {"kind": "work"}}, headers={"If-Match": '"0"'})
        problem(answer, 403, "not-allowed")
    problem(client(vale).post(listed, {}, format="json"), 403, "not-allowed")
    # Nobody else is told of it.
    assert not Change.objects.exists()


def test_a_mistake_is_told_with_what_it_comes_to(programme: Programme, priya: Person) -> None:
    """A stop 1 mm past the end widens it by the taper of ISO 3630-1: 0.02 mm for .02, within the 5 % it may be off."""
    phone = client(priya)
    exercise = work(phone, begin(phone, programme, level="straight-block"), acts=4)
    assert exercise["due"]["instrument"] == "20/.02 hand"
    done = do(phone, exercise, 4, past_mm=1.0).json()["done"]
    assert [mistake["code"] for mistake in done["mistakes"]] == ["past-end"]
    assert "wider" in done["mistakes"][0]["says"]
    (canal,) = end(phone, read(phone, exercise))["reveal"]["canals"]
    assert canal["over_wide_mm"] == pytest.approx(0.02, rel=0.05)


def test_ended_early_it_is_shown_and_not_scored(programme: Programme, priya: Person) -> None:
    phone = client(priya)
    exercise = work(phone, begin(phone, programme, level=LEVEL), acts=1)
    ended = end(phone, exercise)
    assert (ended["score"], ended["due"], len(ended["done"])) == (None, None, 1)
    assert ended["reveal"]["canals"][0]["was"]
    assert end(phone, exercise) == ended
    problem(do(phone, exercise, 1), 412, "changed-since")
    problem(do(phone, exercise, 2), 409, "conflict")
    assert phone.get(f"{API}/programmes/{programme.pk}/practice").json()["worked"] == 0


def test_what_cannot_be_done_says_why(programme: Programme, priya: Person) -> None:
    phone = client(priya)
    address = f"{API}/programmes/{programme.pk}/practice-exercises"
    assert "#/level" in problem(phone.post(address, {"level": "nowhere"}, format="json"), 422, "unknown-level")
    exercise = begin(phone, programme, level=LEVEL)
    refused = do(phone, exercise, 0, kind="insert", instrument="99/.99")
    assert problem(refused, 422, "act-refused")["#/act"] == "This instrument is not laid out for the canal."
    assert read(phone, exercise) == exercise


def test_a_renewed_planner_does_not_go_on_with_another_canal(
    programme: Programme, priya: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    phone = client(priya)
    exercise = work(phone, begin(phone, programme, level=LEVEL), acts=1)
    monkeypatch.setattr(exercises, "VERSION", "another")
    problem(do(phone, exercise, 1), 409, "conflict")
    ended = end(phone, exercise)
    assert (ended["reveal"], ended["done"]) == (None, exercise["done"])


def test_who_forgets_too_many_ends_one_first(
    programme: Programme, priya: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exercises, "MOST_UNENDED", 1)
    exercise = begin(client(priya), programme, level=LEVEL)
    address = f"{API}/programmes/{programme.pk}/practice-exercises"
    problem(client(priya).post(address, {}, format="json"), 409, "conflict")
    end(client(priya), exercise)
    assert begin(client(priya), programme, level=LEVEL)


# --- tasks ---


def test_a_task_is_one_canal_for_a_group_and_its_results_are_the_supervisors(
    programme: Programme, priya: Person, tom: Person, vale: Person, rosa: Person
) -> None:
    address = f"{API}/programmes/{programme.pk}/practice-tasks"
    body = {"id": str(uuid7()), "level": LEVEL, "group": "Monday"}
    task, again = (client(vale).post(address, body, format="json") for _ in range(2))
    assert (task.status_code, again.status_code, again.json()) == (201, 200, task.json())
    for_all = client(vale).post(address, {"level": LEVEL}, format="json").json()
    id_ = task.json()["id"]
    assert [row["id"] for row in client(priya).get(address).json()["results"]] == [for_all["id"], id_]
    assert [row["id"] for row in client(tom).get(address).json()["results"]] == [for_all["id"]]
    problem(client(rosa).get(address), 403, "not-allowed")
    problem(client(rosa).get(f"{address}/{id_}"), 403, "not-allowed")
    problem(client(tom).get(f"{address}/{id_}"), 404, "not-found")
    problem(client(priya).post(address, body, format="json"), 403, "not-allowed")
    problem(client(vale).post(address, {"level": LEVEL, "group": "Nobody"}, format="json"), 422, "not-usable")
    problem(client(vale).post(address, {"level": "nowhere"}, format="json"), 422, "unknown-level")
    exercise = begin(client(priya), programme, task_id=id_)
    assert (exercise["level"], exercise["task_id"]) == (LEVEL, id_)
    assert begin(client(priya), programme, task_id=id_)["id"] == exercise["id"]
    listed = f"{API}/programmes/{programme.pk}/practice-exercises"
    problem(client(tom).post(listed, {"task_id": id_}, format="json"), 404, "not-found")
    end(client(priya), exercise)
    shown = client(vale).get(f"{address}/{id_}").json()
    assert (shown["begun"], shown["ended"], shown["exercise_id"]) == (1, 1, None)
    assert client(priya).get(f"{address}/{id_}").json()["exercise_id"] == exercise["id"]
    assert [row["student"]["name"] for row in client(vale).get(listed, {"task_id": id_}).json()["results"]] == ["Priya"]


def test_all_work_the_canal_of_a_task(
    programme: Programme, priya: Person, tom: Person, vale: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    numbers = iter(range(7, 20))
    monkeypatch.setattr(seeds, "new_seed", lambda: next(numbers))
    address = f"{API}/programmes/{programme.pk}/practice-tasks"
    task = client(vale).post(address, {"level": LEVEL}, format="json").json()
    same = [end(client(each), begin(client(each), programme, task_id=task["id"])) for each in (priya, tom)]
    own = end(client(tom), begin(client(tom), programme, level=LEVEL))
    shapes = [each["reveal"]["canals"][0]["was"] for each in (*same, own)]
    assert shapes[0] == shapes[1] != shapes[2]


def test_a_task_that_was_withdrawn_is_begun_by_nobody_more(
    programme: Programme, priya: Person, tom: Person, vale: Person
) -> None:
    address = f"{API}/programmes/{programme.pk}/practice-tasks"
    task = client(vale).post(address, {"level": LEVEL}, format="json").json()
    begin(client(priya), programme, task_id=task["id"])
    withdraw = f"{address}/{task['id']}/withdraw"
    problem(client(priya).post(withdraw), 403, "not-allowed")
    first, second = client(vale).post(withdraw), client(vale).post(withdraw)
    assert first.json() == second.json()
    assert first.json()["withdrawn_at"]
    assert client(tom).get(address).json()["results"] == []
    assert [row["id"] for row in client(priya).get(address).json()["results"]] == [task["id"]]
    assert PracticeExercise.objects.count() == 1
