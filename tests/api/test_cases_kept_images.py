"""What becomes of images over the API: somebody looks for a name in the picture, or the image is removed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from pytest_django import DjangoCaptureOnCommitCallbacks

from cases.domain.uuid7 import uuid7
from cases.models import Case, ChangeLog, Image, ImagePart, Person
from tests.api.test_cases_images import at, files, part, put
from tests.api.test_cases_markings import DRAWN, mark, marks
from tests.cases.pictures import intra_oral, picture, written
from tests.cast import client, problem

PNG = picture()
NAMED = {"reason": "names_somebody"}
Remove = Callable[..., Any]


@pytest.fixture(autouse=True)
def empty_storage(settings: Any) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}


@pytest.fixture
def remove(django_capture_on_commit_callbacks: DjangoCaptureOnCommitCallbacks) -> Remove:
    """Asks for the removal and commits it."""

    def ask(person: Person | None, case: Case, id_: object, body: object = None) -> Any:
        with django_capture_on_commit_callbacks(execute=True):
            return client(person).post(at(case, id_, "/remove"), body or NAMED, format="json")

    return ask


def stored(person: Person, case: Case, data: bytes = PNG) -> str:
    id_ = str(uuid7())
    assert put(person, case, id_, data, "?canal=P&purpose=length").status_code == 201
    return id_


def look(person: Person | None, case: Case, id_: object) -> Any:
    return client(person).post(at(case, id_, "/name-check"))


def dicom(**more: Any) -> bytes:
    return written(intra_oral(**more))


# --- looked at ---


@pytest.mark.parametrize(
    ("data", "asked"),
    [
        (dicom(BurnedInAnnotation="YES"), "open"),
        (dicom(), "open"),
        (dicom(BurnedInAnnotation="NO"), "not_asked"),
        (PNG, "open"),
        (picture(form="JPEG"), "open"),
    ],
    ids=["stated", "not said", "denied", "png", "jpeg"],
)
def test_what_a_person_has_to_look_at(priya: Person, opened: Case, data: bytes, asked: str) -> None:
    """DICOM PS3.3, C.7.6.1.1.3: (0028,0301) says YES, NO, or nothing; nothing does not mean NO."""
    id_ = stored(priya, opened, data)
    assert client(priya).get(at(opened, id_)).json()["name_check"] == asked


def test_who_looked_first_is_kept(priya: Person, vale: Person, opened: Case) -> None:
    id_ = stored(priya, opened, dicom(BurnedInAnnotation="YES"))
    image = look(priya, opened, id_).json()
    assert (image["name_check"], image["checked_by"]["name"]) == ("nobody_named", "Priya")
    assert look(vale, opened, id_).json() == image
    assert [image_["checked_at"] for image_ in client(vale).get(at(opened)).json()["images"]] == [image["checked_at"]]
    assert ChangeLog.objects.filter(verb="nobody named", subject_id=id_).count() == 1


def test_no_browser_keeps_a_picture_that_nobody_looked_at(priya: Person, opened: Case) -> None:
    """RFC 9111, 5.2.2.5: no-store keeps an answer out of every cache."""
    id_ = stored(priya, opened, dicom(BurnedInAnnotation="YES"))
    assert client(priya).get(at(opened, id_, "/thumbnail"))["Cache-Control"] == "private, no-store"
    look(priya, opened, id_)
    assert client(priya).get(at(opened, id_, "/thumbnail"))["Cache-Control"] == "private, no-cache"


def test_nobody_has_looked_at_what_is_not_here(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    part(priya, opened, id_, PNG, 0, 50)
    problem(look(priya, opened, id_), 422, "not-usable")


# --- removed ---


def test_a_removed_image_leaves_no_file_and_gives_its_quota_back(
    priya: Person, vale: Person, opened: Case, remove: Remove
) -> None:
    before = client(priya).get(at(opened)).json()["quota"]
    id_ = stored(priya, opened, dicom(BurnedInAnnotation="YES"))
    assert len(files()) == 3
    assert client(priya).get(at(opened)).json()["quota"] != before
    removed = remove(vale, opened, id_).json()
    assert (removed["state"], removed["removed_for"], removed["removed_by"]["name"]) == (
        "removed",
        "names_somebody",
        "Vale",
    )
    assert (removed["name_check"], removed["has_data_set"], removed["canal"]) == ("not_asked", False, "P")
    assert files() == set()
    listed = client(priya).get(at(opened)).json()
    assert (listed["quota"], listed["images"]) == (before, [removed])


def test_its_files_are_gone_also_for_who_has_seen_them(priya: Person, opened: Case, remove: Remove) -> None:
    id_ = stored(priya, opened)
    seen = client(priya).get(at(opened, id_, "/content"))["ETag"]
    remove(priya, opened, id_)
    for more in ("/content", "/thumbnail", "/data-set"):
        answer = client(priya).get(at(opened, id_, more), headers={"If-None-Match": seen})
        problem(answer, 410, "image-removed")
        assert "a name or a number of a person is written in it" in answer.json()["detail"]


def test_a_phone_does_not_bring_it_back(priya: Person, opened: Case, remove: Remove) -> None:
    id_ = stored(priya, opened)
    remove(priya, opened, id_, {"reason": "not_usable"})
    for answer in (
        put(priya, opened, id_, PNG, "?canal=P&purpose=length"),
        part(priya, opened, id_, PNG, 0, 50),
        part(priya, opened, id_, PNG, len(PNG), len(PNG)),
    ):
        problem(answer, 410, "image-removed")
        assert "nothing can be told from it" in answer.json()["detail"]
    assert (files(), ImagePart.objects.count()) == (set(), 0)


def test_an_upload_under_way_can_be_removed(priya: Person, opened: Case, remove: Remove) -> None:
    id_ = uuid7()
    part(priya, opened, id_, PNG, 0, 50)
    assert remove(priya, opened, id_).json()["state"] == "removed"
    assert not ImagePart.objects.exists()
    problem(part(priya, opened, id_, PNG, 50, len(PNG)), 410, "image-removed")
    assert not ImagePart.objects.exists()


def test_what_was_thrown_away_before_it_was_sent_can_be_told_of(priya: Person, opened: Case, remove: Remove) -> None:
    """An event may name it: an empty part announces the image, and the removal says that it will not come."""
    id_ = uuid7()
    problem(remove(priya, opened, id_), 404, "not-found")
    assert part(priya, opened, id_, PNG, 0, 0).json()["state"] == "awaited"
    assert remove(priya, opened, id_).json()["state"] == "removed"


def test_the_first_removal_stays(priya: Person, vale: Person, opened: Case, remove: Remove) -> None:
    id_ = stored(priya, opened)
    first = remove(priya, opened, id_).json()
    assert remove(vale, opened, id_, {"reason": "not_usable"}).json() == first
    assert ChangeLog.objects.filter(verb="remove", subject_id=id_).count() == 1
    problem(look(vale, opened, id_), 410, "image-removed")


def test_of_a_refused_image_there_is_nothing_to_remove(priya: Person, opened: Case, remove: Remove) -> None:
    id_ = uuid7()
    put(priya, opened, id_, b"none")
    assert remove(priya, opened, id_).json()["state"] == "refused"


@pytest.mark.parametrize("body", [{"reason": "somebody's name"}, {"reason": "names_somebody", "note": "x"}, {"x": 1}])
def test_no_name_can_be_written_down_as_a_reason(priya: Person, opened: Case, remove: Remove, body: object) -> None:
    id_ = stored(priya, opened)
    problem(remove(priya, opened, id_, body), 400, "not-understood")
    assert client(priya).get(at(opened, id_)).json()["state"] == "stored"


def test_what_was_marked_stays_and_nothing_more_is_marked(
    priya: Person, opened: Case, remove: Remove, tmp_path: Path
) -> None:
    id_ = stored(priya, opened, DRAWN.png(tmp_path / "drawn.png").read_bytes())
    image = Image.objects.get(pk=id_)
    first = uuid7()
    kept = mark(priya, image, {"marks": marks()}, first)
    assert kept.status_code == 201
    remove(priya, opened, id_)
    markings = client(priya).get(at(opened, id_, "/markings")).json()["markings"]
    assert markings == [kept.json()]
    assert markings[0]["measured"]["lines"][0]["canal"] == "P"
    # Sent again after a lost answer it is answered; a further one is not taken.
    assert mark(priya, image, {"marks": marks()}, first).json() == kept.json()
    problem(mark(priya, image, {"marks": marks()}), 410, "image-removed")


@pytest.mark.parametrize("ask", ["look", "remove"])
def test_who_may(
    ask: str,
    priya: Person,
    tom: Person,
    vale: Person,
    rosa: Person,
    stranger: Person,
    opened: Case,
    remove: Remove,
) -> None:
    id_ = stored(priya, opened)
    asked = remove if ask == "remove" else look
    assert asked(None, opened, id_).status_code == 401
    for outside in (tom, stranger):
        problem(asked(outside, opened, id_), 404, "not-found")
    problem(asked(rosa, opened, id_), 403, "not-allowed")
    problem(asked(vale, opened, uuid7()), 404, "not-found")
    assert Image.objects.get(pk=id_).state == "stored"
    assert asked(vale, opened, id_).status_code == 200
