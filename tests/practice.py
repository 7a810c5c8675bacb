"""Practice over the API, as the app asks for it."""

from __future__ import annotations

from typing import Any

from rest_framework.test import APIClient

from cases.models import Programme
from tests.cast import API

LEVEL = "incisor"  # of all levels the fewest acts


def begin(asker: APIClient, programme: Programme, **body: Any) -> Any:
    """The exercise that was begun, as it is shown."""
    answer = asker.post(f"{API}/programmes/{programme.pk}/practice-exercises", body, format="json")
    assert answer.status_code in (200, 201), answer.json()
    return answer.json()


def do(asker: APIClient, exercise: Any, revision: int, **act: Any) -> Any:
    """The whole answer to an act, the step that is due where nothing else is said."""
    return asker.post(
        f"{API}/practice-exercises/{exercise['id']}/acts",
        {"act": {"kind": "work", **act}},
        format="json",
        headers={"If-Match": f'"{revision}"'},
    )


def work(asker: APIClient, exercise: Any, acts: int = 300) -> Any:
    """The exercise after so many steps more, or all, each predicted at its stop."""
    due, revision = exercise["due"], exercise["revision"]
    while due is not None and acts:
        answer = do(asker, exercise, revision, predicted_mm=due["stop_mm"])
        assert answer.status_code == 201, answer.json()
        due, revision, acts = answer.json()["due"], revision + 1, acts - 1
    return read(asker, exercise)


def read(asker: APIClient, exercise: Any) -> Any:
    return asker.get(f"{API}/practice-exercises/{exercise['id']}").json()


def end(asker: APIClient, exercise: Any) -> Any:
    """The exercise with what was hidden."""
    tag = f'"{exercise["revision"]}"'
    answer = asker.post(f"{API}/practice-exercises/{exercise['id']}/end", headers={"If-Match": tag})
    assert answer.status_code == 200, answer.json()
    return answer.json()
