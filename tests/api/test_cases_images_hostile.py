"""Files that mean harm, over the API: refused or made harmless, nothing of them kept, and the next image is read."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from django.apps import apps
from django.core import serializers
from django.core.files.uploadedfile import SimpleUploadedFile
from pydicom.config import IGNORE
from pydicom.valuerep import DSfloat

from cases.domain.uuid7 import uuid7
from cases.models import Case, Image, ImagePart, Person
from tests.api.test_cases_images import at, part, put
from tests.cases.hostile import (
    CARRYING,
    NO_PICTURE,
    SECRET,
    UNFOLDING,
    WHOLE,
    deflated,
    dicom_with_zeros,
    heic,
    png,
    webp,
)
from tests.cases.pictures import intra_oral, picture, written
from tests.cast import client, problem

pytestmark = pytest.mark.one_database

Make = Callable[[], bytes]


@pytest.fixture(autouse=True)
def folder(settings: Any, tmp_path: Path) -> Path:
    """Where images are kept, as the program has it by default."""
    backend = "django.core.files.storage.FileSystemStorage"
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": backend, "OPTIONS": {"location": tmp_path}}}
    return tmp_path


def files(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()]


def tables() -> str:
    """Every row of every table of the records."""
    rows = [row for model in apps.get_app_config("cases").get_models() for row in model._default_manager.all()]
    return str(serializers.serialize("json", rows))


def refused(person: Person, case: Case, data: bytes, folder: Path) -> str:
    """The reason; nothing is left of it, sent whole or in parts, and the next image is read."""
    whole, in_parts, half = uuid7(), uuid7(), len(data) // 2
    problem(put(person, case, whole, data), 422, "image-refused")
    if data:
        part(person, case, in_parts, data, 0, half)
        problem(part(person, case, in_parts, data, half, len(data)), 422, "image-refused")
    assert files(folder) == []
    assert not ImagePart.objects.exists()
    assert {image.state for image in Image.objects.filter(pk__in=[whole, in_parts])} == {"refused"}
    assert client(person).get(at(case, whole, "/content")).status_code == 404
    assert SECRET not in tables()
    reason = client(person).get(at(case, whole)).json()["reason"]
    assert put(person, case, uuid7(), picture()).json()["state"] == "stored"
    return str(reason)


@pytest.mark.parametrize("make", UNFOLDING.values(), ids=UNFOLDING)
def test_what_unfolds(make: Make, priya: Person, opened: Case, folder: Path, settings: Any) -> None:
    sent = make()
    assert len(sent) < 10_000_000
    reason = refused(priya, opened, sent, folder)
    assert any(word in reason for word in ("px", "memory", "damaged"))


def test_a_large_webp_is_refused_by_its_size(priya: Person, opened: Case, folder: Path) -> None:
    """Its decoder takes the memory for every pixel before it tells how many there are."""
    assert "16383 by 16383 px" in refused(priya, opened, webp(16_383, 16_383), folder)


@pytest.mark.parametrize(
    ("sent", "size"),
    [
        (png(400, 300), (400, 300)),
        (webp(400, 300), (400, 300)),
        (heic(400, 300), (400, 300)),
        (dicom_with_zeros(1000), (8, 6)),
        (written(deflated()), (8, 6)),
    ],
    ids=["png", "webp", "heic", "dicom with zeros", "deflated dicom"],
)
def test_the_same_in_size_is_an_image(sent: bytes, size: tuple[int, int], priya: Person, opened: Case) -> None:
    """So that what unfolds is refused for its size and not for how the tests write it."""
    image = put(priya, opened, uuid7(), sent).json()
    assert (image["width_px"], image["height_px"]) == size


@pytest.mark.parametrize("make", NO_PICTURE.values(), ids=NO_PICTURE)
def test_what_is_no_picture(make: Make, priya: Person, opened: Case, folder: Path) -> None:
    sent = make()
    assert SECRET.encode() in sent
    reason = refused(priya, opened, sent, folder)
    assert reason.startswith(("This is no image", "The file is damaged"))


@pytest.mark.parametrize("make", WHOLE.values(), ids=WHOLE)
@pytest.mark.parametrize("share", [0.4, 0.9])
def test_what_is_cut_off(share: float, make: Make, priya: Person, opened: Case, folder: Path) -> None:
    sent = make()
    assert put(priya, opened, uuid7(), sent).json()["state"] == "stored"
    for path in files(folder):
        path.unlink()
    reason = refused(priya, opened, sent[: int(len(sent) * share)], folder)
    assert reason.startswith(("The file is damaged", "The DICOM", "This kind of DICOM", "The image"))


@pytest.mark.parametrize("make", CARRYING.values(), ids=CARRYING)
def test_what_carries_words_loses_them(make: Make, priya: Person, opened: Case, folder: Path) -> None:
    sent, id_ = make(), uuid7()
    assert SECRET.encode() in sent
    answer = put(priya, opened, id_, sent)
    assert answer.json()["state"] == "stored"
    assert len(files(folder)) in (2, 3)
    for secret in (SECRET.encode(), b"%PDF", b"PK\x03\x04", b"<html>"):
        assert not [path for path in files(folder) if secret in path.read_bytes()]
    assert SECRET not in tables()
    assert SECRET not in answer.content.decode()
    served = client(priya).get(at(opened, id_, "/content"))
    assert served["Content-Type"] in ("image/png", "image/jpeg")
    assert served["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize("ending", ["html", "svg", "exe", "php.png", "../../x.png"])
def test_a_files_name_and_type_say_nothing(ending: str, priya: Person, opened: Case, folder: Path) -> None:
    form = {"file": SimpleUploadedFile(f"x.{ending}", picture(form="JPEG"), "text/html")}
    image = client(priya).post(at(opened), form, format="multipart").json()
    assert image["kind"] == "jpeg"
    assert {path.name for path in files(folder)} == {"view", "thumbnail"}
    assert ending not in tables()


@pytest.mark.parametrize("spacing", [[1e6, 1e6], [1e-30, 1e-30], [33.3, 33.3]], ids=str)
def test_a_spacing_that_cannot_be_measures_nothing(spacing: list[float], priya: Person, opened: Case) -> None:
    """It is kept as it was said; whoever measures by it is told so."""
    id_ = uuid7()
    image = put(priya, opened, id_, written(intra_oral(ImagerPixelSpacing=spacing))).json()
    assert image["spacing"]["imager_pixel_spacing_mm"] == spacing
    row_mm, column_mm = spacing
    marks = {
        "lines": [{"canal": "P", "points": [{"x_px": 1, "y_px": 1}, {"x_px": 1, "y_px": 5}]}],
        "facts": {"at_detector": {"row_mm": row_mm, "column_mm": column_mm}},
    }
    answer = client(priya).post("/api/v1/compute/measure", {"marks": marks}, format="json")
    assert list(problem(answer, 422, "scale-not-usable")) == ["#/marks/facts/at_detector"]


@pytest.mark.parametrize(
    "spacing", [["1e30", "1e30"], ["1e400", "0.03"], ["nan", "nan"], ["0", "0"], ["-0.03", "0.03"]], ids=str
)
def test_a_spacing_that_is_none_was_not_said(spacing: list[str], priya: Person, opened: Case) -> None:
    data_set = intra_oral()
    data_set.ImagerPixelSpacing = [DSfloat(value, validation_mode=IGNORE) for value in spacing]
    answer = put(priya, opened, uuid7(), written(data_set)).json()
    assert (answer["state"], answer["spacing"]) == ("stored", None)
