"""Images over the API: sent whole, in parts and as a form; listed; served; refused."""

from __future__ import annotations

import base64
import hashlib
from io import BytesIO
from typing import Any

import pytest
from django.core.files.storage import storages
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image as Picture
from pydicom import dcmread

from cases.domain.images import study_uid
from cases.domain.uuid7 import uuid7
from cases.imaging import reading
from cases.imaging.value import ReaderBusy
from cases.models import Case, ChangeLog, Image, ImagePart, Person, Programme
from tests.cases.pictures import intra_oral, noise, picture, written
from tests.cast import API, client, problem

PNG = picture()


def at(case: Case, id_: object = "", more: str = "") -> str:
    return f"{API}/cases/{case.pk}/images" + (f"/{id_}" if id_ else "") + more


def put(person: Person | None, case: Case, id_: object, data: bytes, query: str = "") -> Any:
    return client(person).put(at(case, id_, query), data, content_type="application/octet-stream")


def digest(data: bytes) -> str:
    return f"sha-256=:{base64.b64encode(hashlib.sha256(data).digest()).decode()}:"


def part(person: Person, case: Case, id_: object, whole: bytes, start: int, end: int, **headers: str) -> Any:
    usual = {"Repr-Digest": digest(whole), "Upload-Offset": str(start), "Upload-Length": str(len(whole))}
    where = at(case, id_, "?canal=P&purpose=length")
    body = whole[start:end]
    return client(person).patch(where, body, content_type="application/partial-upload", headers=usual | headers)


def files() -> set[str]:
    """Names of everything in the storage."""
    store, paths, folders = storages["images"], set(), [""]
    for folder in folders:
        below, names = store.listdir(folder) if store.exists(folder) or not folder else ([], [])
        folders += [f"{folder}{name}/" for name in below]
        paths |= {f"{folder}{name}" for name in names}
    return paths


@pytest.fixture(autouse=True)
def empty_storage(settings: Any) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}


# --- whole ---


def test_an_image_is_kept_and_served(priya: Person, vale: Person, opened: Case) -> None:
    id_ = uuid7()
    image = put(priya, opened, id_, PNG, "?canal=P&purpose=length").json()
    assert {
        "id": str(id_),
        "canal": "P",
        "purpose": "length",
        "state": "stored",
        "kind": "png",
    }.items() <= image.items()
    assert (image["width_px"], image["height_px"], image["sha256"]) == (40, 30, hashlib.sha256(PNG).hexdigest())
    served = client(vale).get(at(opened, id_, "/content"))
    assert served["Content-Type"] == "image/png"
    assert served["Cache-Control"] == "private, no-store"  # until somebody has looked
    assert served["X-Content-Type-Options"] == "nosniff"
    assert served["Content-Disposition"] == f'inline; filename="{id_}.png"'
    with Picture.open(BytesIO(served.content)) as kept, Picture.open(BytesIO(PNG)) as sent:
        assert kept.tobytes() == sent.tobytes()
    small = client(vale).get(at(opened, id_, "/thumbnail"))
    assert (small["Content-Type"], small.content[:2]) == ("image/jpeg", b"\xff\xd8")


def test_an_image_travels_as_it_is(priya: Person, opened: Case) -> None:
    """Compressing it once more would cost time and gain nothing."""
    id_ = uuid7()
    put(priya, opened, id_, picture(400, 400))
    zipped = {"Accept-Encoding": "gzip"}
    assert "Content-Encoding" not in client(priya).get(at(opened, id_, "/content"), headers=zipped)
    assert client(priya).get(at(opened), headers=zipped)["Content-Encoding"] == "gzip"


def test_what_was_shown_is_not_sent_again(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    put(priya, opened, id_, PNG)
    seen = client(priya).get(at(opened, id_, "/content"))["ETag"]
    again = client(priya).get(at(opened, id_, "/content"), headers={"If-None-Match": seen})
    assert (again.status_code, again.content) == (304, b"")


def test_the_same_bytes_again_are_answered_the_same_and_others_are_refused(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    first = put(priya, opened, id_, PNG)
    assert put(priya, opened, id_, PNG).json() == first.json()
    problem(put(priya, opened, id_, picture(41)), 409, "id-used-differently")
    assert ChangeLog.objects.filter(subject="Image", verb="stored").count() == 1


def test_a_broken_upload_is_sent_again_under_the_same_id(priya: Person, opened: Case) -> None:
    """An event at the chair names that id. Cut off on its way, the file is refused; then it comes whole."""
    id_ = uuid7()
    problem(put(priya, opened, id_, PNG[: len(PNG) // 2], "?canal=P&purpose=length"), 422, "image-refused")
    image = put(priya, opened, id_, PNG, "?canal=P&purpose=length").json()
    assert (image["state"], image["reason"], image["sent_bytes"]) == ("stored", "", len(PNG))
    assert image["sha256"] == hashlib.sha256(PNG).hexdigest()
    assert Image.objects.get(pk=id_).stored_bytes > 0
    problem(put(priya, opened, id_, PNG[:50]), 409, "id-used-differently")


def test_an_upload_half_done_begins_anew_with_other_bytes(priya: Person, vale: Person, opened: Case) -> None:
    """What was blacked out meanwhile: of the first bytes nothing is left."""
    id_, other = uuid7(), picture(41)
    part(priya, opened, id_, PNG, 0, 50)
    problem(part(vale, opened, id_, other, 0, 60), 403, "not-allowed")
    image = part(priya, opened, id_, other, 0, 60).json()
    assert (image["state"], image["received_bytes"]) == ("awaited", 60)
    assert bytes(ImagePart.objects.get().data) == other[:60]
    image = part(priya, opened, id_, other, 60, len(other)).json()
    assert (image["state"], image["width_px"]) == ("stored", 41)


def test_what_was_read_of_the_first_bytes_is_not_kept_for_the_second(
    priya: Person, opened: Case, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Other bytes begin while the first are read: a slow reader does not bring back what was blacked out."""
    id_, other = uuid7(), picture(41)
    real = reading.read

    def slow(data: bytes, *more: Any) -> Any:
        monkeypatch.setattr(reading, "read", real)
        part(priya, opened, id_, other, 0, 60)
        return real(data, *more)

    monkeypatch.setattr(reading, "read", slow)
    assert put(priya, opened, id_, PNG, "?canal=P&purpose=length").json()["state"] == "awaited"
    assert files() == set()
    image = part(priya, opened, id_, other, 60, len(other)).json()
    assert (image["state"], image["width_px"]) == ("stored", 41)


def test_what_was_changed_on_the_way_is_not_kept(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    wrong = {"Repr-Digest": digest(b"something else")}
    answer = client(priya).put(at(opened, id_), PNG, content_type="image/png", headers=wrong)
    problem(answer, 422, "image-damaged")
    assert files() == set()


def test_as_a_form(priya: Person, opened: Case) -> None:
    form = {"file": SimpleUploadedFile("x.gif", PNG, "image/gif"), "canal": "P", "purpose": "cone"}
    answer = client(priya).post(at(opened), form, format="multipart")
    assert answer.status_code == 201
    # Neither its name nor its type is asked: the content is.
    assert (answer.json()["kind"], answer.json()["purpose"]) == ("png", "cone")


def test_a_form_without_a_file(priya: Person, opened: Case) -> None:
    assert list(problem(client(priya).post(at(opened), {}, format="multipart"), 400, "not-understood")) == ["#/file"]


# --- in parts ---


def test_in_parts_with_a_lost_answer_in_between(priya: Person, opened: Case) -> None:
    id_, whole = uuid7(), noise(60, 60)
    first = part(priya, opened, id_, whole, 0, 4000)
    assert (first["Upload-Offset"], first["Upload-Complete"], first.json()["state"]) == ("4000", "?0", "awaited")
    again = part(priya, opened, id_, whole, 0, 4000)
    assert again["Upload-Offset"] == "4000"
    answer = part(priya, opened, id_, whole, 6000, 8000)
    assert answer.json()["expected"] == 4000
    problem(answer, 409, "offset-mismatch")
    asked = client(priya).head(at(opened, id_))
    assert (asked["Upload-Offset"], asked["Upload-Complete"]) == ("4000", "?0")
    last = part(priya, opened, id_, whole, 4000, len(whole))
    assert (last.json()["state"], last["Upload-Complete"]) == ("stored", "?1")
    assert part(priya, opened, id_, whole, 4000, len(whole)).json() == last.json()
    assert not ImagePart.objects.exists()


def test_a_server_that_died_before_reading_is_asked_once_more(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    part(priya, opened, id_, PNG, 0, 50)
    image = Image.objects.get(pk=id_)
    ImagePart.objects.create(image=image, offset=50, length=len(PNG) - 50, data=PNG[50:])
    assert part(priya, opened, id_, PNG, len(PNG), len(PNG)).json()["state"] == "stored"


def test_what_there_was_no_time_to_read_goes_on_where_it_was(
    priya: Person, opened: Case, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A machine that has too much to do says nothing against an image."""
    id_, half = uuid7(), len(PNG) // 2
    part(priya, opened, id_, PNG, 0, half)
    with monkeypatch.context() as busy:
        busy.setattr(reading, "read", no_time)
        answer = part(priya, opened, id_, PNG, half, len(PNG))
    problem(answer, 503, "reading-busy")
    assert answer["Retry-After"] == "10"
    assert client(priya).get(at(opened, id_))["Upload-Offset"] == str(len(PNG))
    image = part(priya, opened, id_, PNG, len(PNG), len(PNG)).json()
    assert (image["state"], image["width_px"]) == ("stored", 40)


def no_time(*_: object) -> None:
    raise ReaderBusy


def test_parts_of_two_images_under_one_id_are_refused(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    part(priya, opened, id_, PNG, 0, 50)
    problem(part(priya, opened, id_, picture(41), 50, 90), 409, "id-used-differently")


def test_parts_that_do_not_add_up_to_what_was_announced_begin_anew(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    part(priya, opened, id_, PNG, 0, 50)
    ImagePart.objects.filter(image_id=id_).update(data=b"\x00" * 50)
    problem(part(priya, opened, id_, PNG, 50, len(PNG)), 422, "image-damaged")
    assert client(priya).head(at(opened, id_))["Upload-Offset"] == "0"


@pytest.mark.parametrize("header", ["Upload-Offset", "Upload-Length"])
def test_a_part_says_where_it_belongs(header: str, priya: Person, opened: Case) -> None:
    answer = part(priya, opened, uuid7(), PNG, 0, 50, **{header: "-1"})
    problem(answer, 400, "parse-error")


# --- refused ---


def test_what_is_no_image_is_refused_and_nothing_of_it_is_kept(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    svg = b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"
    problem(put(priya, opened, id_, svg), 422, "image-refused")
    problem(put(priya, opened, id_, svg), 422, "image-refused")
    image = client(priya).get(at(opened, id_)).json()
    assert (image["state"], image["reason"]) == (
        "refused",
        "This is no image that can be kept here. Send JPEG, PNG, WebP, TIFF, HEIC or DICOM.",
    )
    assert files() == set()
    assert client(priya).get(at(opened, id_, "/content")).status_code == 404


def test_too_many_bytes(priya: Person, opened: Case, settings: Any) -> None:
    settings.IMAGE_MOST_BYTES = 100
    problem(put(priya, opened, uuid7(), PNG), 413, "body-too-long")
    problem(part(priya, opened, uuid7(), PNG, 0, 50), 422, "not-usable")
    form = {"file": SimpleUploadedFile("x.png", PNG)}
    problem(client(priya).post(at(opened), form, format="multipart"), 413, "body-too-long")


def test_nothing_is_left_of_the_quota(priya: Person, opened: Case, programme: Programme) -> None:
    programme.images_most_mb = 0
    programme.save()
    problem(put(priya, opened, uuid7(), PNG), 422, "images-full")
    assert client(priya).get(at(opened)).json()["quota"]["left_bytes"] == 0


def test_what_is_announced_counts_against_the_quota(priya: Person, opened: Case, programme: Programme) -> None:
    programme.images_most_mb = 1
    programme.save()
    headers = {"Repr-Digest": digest(b"x"), "Upload-Offset": "0", "Upload-Length": "900000"}
    client(priya).patch(at(opened, uuid7()), b"x", content_type="application/partial-upload", headers=headers)
    assert client(priya).get(at(opened)).json()["quota"]["left_bytes"] == 100_000
    problem(put(priya, opened, uuid7(), b"x" * 100_001), 422, "images-full")


def test_who_may(priya: Person, tom: Person, vale: Person, rosa: Person, stranger: Person, opened: Case) -> None:
    id_ = uuid7()
    assert put(None, opened, id_, PNG).status_code == 401
    for outside in (tom, stranger):
        assert put(outside, opened, id_, PNG).status_code == 404
    for who_works_nothing in (rosa, vale):
        problem(put(who_works_nothing, opened, id_, PNG), 403, "not-allowed")
    assert put(priya, opened, id_, PNG).status_code == 201
    for more in ("", "/content", "/thumbnail"):
        assert client(rosa).get(at(opened, id_, more)).status_code == 200
        assert client(tom).get(at(opened, id_, more)).status_code == 404
        assert client(stranger).get(at(opened, id_, more)).status_code == 404
        assert client(None).get(at(opened, id_, more)).status_code == 401
    assert client(stranger).get(at(opened)).status_code == 404


def test_an_image_of_another_case_is_not_in_this_one(priya: Person, opened: Case, molar: Case) -> None:
    id_ = uuid7()
    put(priya, opened, id_, PNG)
    assert client(priya).get(f"{API}/cases/{uuid7()}/images/{id_}").status_code == 404


# --- DICOM ---


def test_dicom_says_its_spacing_and_keeps_a_data_set(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    image = put(priya, opened, id_, written(intra_oral(BurnedInAnnotation="YES"))).json()
    assert (image["kind"], image["burnt_in_text"], image["has_data_set"]) == ("dicom", "stated", True)
    assert image["spacing"]["imager_pixel_spacing_mm"] == [0.02, 0.02]
    kept = client(priya).get(at(opened, id_, "/data-set"))
    assert kept["Content-Type"] == "application/dicom"
    assert kept["Content-Disposition"] == f'attachment; filename="{id_}.dcm"'


def test_all_data_sets_of_a_case_are_of_one_study(priya: Person, opened: Case) -> None:
    studies = set()
    for _ in range(2):
        id_ = uuid7()
        put(priya, opened, id_, written(intra_oral()))
        studies.add(dcmread(BytesIO(client(priya).get(at(opened, id_, "/data-set")).content)).StudyInstanceUID)
    assert studies == {study_uid(opened.pk)}
    assert study_uid(uuid7()) not in studies


def test_a_picture_has_no_data_set(priya: Person, opened: Case) -> None:
    id_ = uuid7()
    put(priya, opened, id_, PNG)
    problem(client(priya).get(at(opened, id_, "/data-set")), 404, "not-found")
