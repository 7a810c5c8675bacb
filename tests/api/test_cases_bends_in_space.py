"""Two drawn views of one canal over the API: combined, kept, charted. The bend was drawn in space and projected."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from cases.domain.uuid7 import uuid7
from cases.mapping.charts import facts_of
from cases.models import BendInSpace, Case, ChangeLog, Image, Marking, Person
from cases.services.charting import canals
from tests.api.test_cases_markings import mark, marks, sent
from tests.cast import canal_of, client, problem
from tests.radiographs import Root, drawn

pytestmark = pytest.mark.one_database

# Two roots that lean by tan 20 and tan 25 degrees in the straight view and a view at a right angle.
FIRST = Root(canal="P", begins=(6, 3), straight_mm=13, radius_mm=9, bend_deg=40, instrument_mm=18)
SECOND = Root(canal="P", begins=(9, 3), straight_mm=13, radius_mm=8, bend_deg=-50, instrument_mm=18)
# By hand: tan² in space is the sum of the squared tangents of both.
IN_SPACE_DEG = math.degrees(math.atan(math.hypot(math.tan(math.radians(20)), math.tan(math.radians(25)))))


@pytest.fixture(autouse=True)
def empty_storage(settings: Any) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}


@pytest.fixture
def views(priya: Person, opened: Case, tmp_path: Path) -> list[str]:
    """The two markings."""
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"reference_point": "palatal cusp"})
    return [marked(priya, opened, tmp_path, root) for root in (FIRST, SECOND)]


def marked(person: Person, case: Case, folder: Path, root: Root, image: Image | None = None) -> str:
    shown = drawn(root)
    image = image or sent(person, case, shown.png(folder / f"{root.bend_deg:g}.png").read_bytes())
    return str(mark(person, image, {"marks": marks(shown, root)}).json()["id"])


def combine(person: Person | None, case: Case, views: list[str], id_: object = None, **more: Any) -> Any:
    body = {"first_id": views[0], "second_id": views[1], "apart_deg": 90, "other_side": True} | more
    where = f"/api/v1/canals/{canal_of(case, 'P').pk}/bends-in-space"
    return client(person).put(f"{where}/{id_ or uuid7()}", body, format="json")


def listed(person: Person, case: Case) -> list[dict[str, Any]]:
    listed_bends: list[dict[str, Any]] = (
        client(person).get(f"/api/v1/canals/{canal_of(case, 'P').pk}/bends-in-space").json()["results"]
    )
    return listed_bends


def test_two_views_are_combined_kept_and_charted(priya: Person, opened: Case, views: list[str]) -> None:
    answer = combine(priya, opened, views)
    assert answer.status_code == 201
    in_space = answer.json()["in_space"]
    assert in_space["value"] == pytest.approx(IN_SPACE_DEG, abs=1)
    assert in_space["least"] < IN_SPACE_DEG < in_space["most"]
    assert facts_of(canal_of(opened, "P")).curvature_deg == round(in_space["value"], 1)
    (kept,) = listed(priya, opened)
    assert (kept["first_id"], kept["second_id"], kept["outdated"]) == (*views, False)
    assert kept["first_image_id"] != kept["second_image_id"]
    assert ChangeLog.objects.filter(verb="combine", subject_id=kept["id"]).count() == 1


def test_the_same_again_is_answered_the_same(priya: Person, opened: Case, views: list[str]) -> None:
    id_ = uuid7()
    assert combine(priya, opened, views, id_).status_code == 201
    again = combine(priya, opened, views, id_)
    assert again.status_code == 200
    at = f"/api/v1/canals/{canal_of(opened, 'P').pk}/bends-in-space/{id_}"
    assert client(priya).get(at).json() == again.json()
    problem(combine(priya, opened, views, id_, apart_deg=80), 409, "id-used-differently")
    assert BendInSpace.objects.count() == 1


def test_another_combines_anew_and_both_stay(priya: Person, vale: Person, opened: Case, views: list[str]) -> None:
    combine(priya, opened, views)
    second = combine(vale, opened, views, apart_deg=60, other_side=False).json()
    assert [(each["number"], each["made_by"]["id"]) for each in listed(priya, opened)] == [
        (1, str(priya.pk)),
        (2, str(vale.pk)),
    ]
    assert facts_of(canal_of(opened, "P")).curvature_deg == round(second["in_space"]["value"], 1)


def test_marks_of_later_make_it_outdated_and_do_not_chart_over_it(
    priya: Person, opened: Case, views: list[str], tmp_path: Path
) -> None:
    kept = combine(priya, opened, views).json()
    image = Marking.objects.get(pk=views[0]).image
    taken = {"marks": marks(drawn(FIRST), FIRST), "take": ["P"]}
    assert mark(priya, image, taken).json()["readings"] == ["P"]
    assert facts_of(canal_of(opened, "P")).curvature_deg == round(kept["in_space"]["value"], 1)
    assert [each["outdated"] for each in listed(priya, opened)] == [True]


def test_what_is_no_second_view_is_refused(priya: Person, opened: Case, views: list[str], tmp_path: Path) -> None:
    image = Marking.objects.get(pk=views[0]).image
    again = marked(priya, opened, tmp_path, FIRST, image)
    without = marks(drawn(SECOND), SECOND)
    without["lines"][0]["leaves"] = None
    straight = str(mark(priya, Marking.objects.get(pk=views[1]).image, {"marks": without}).json()["id"])
    for second, code, at in [
        (again, "not-usable", "#/second_id"),
        (straight, "not-usable", "#/second_id"),
        (str(uuid7()), "not-usable", "#/second_id"),
    ]:
        assert at in problem(combine(priya, opened, [views[0], second]), 422, code)
    assert "#/apart_deg" in problem(combine(priya, opened, views, apart_deg=5), 422, "views-do-not-fit")
    assert not BendInSpace.objects.exists()
    assert facts_of(canal_of(opened, "P")).curvature_deg is None


def test_who_may(stranger: Person, opened: Case, views: list[str]) -> None:
    problem(combine(stranger, opened, views), 404, "not-found")
    assert combine(None, opened, views).status_code in {401, 403}
    assert not BendInSpace.objects.exists()
