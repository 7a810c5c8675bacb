"""What uploads and crashes leave behind is removed; what is wanted stays."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from hashlib import sha256
from io import StringIO
from typing import Any

import pytest
from django.core.files.base import ContentFile
from django.core.files.storage import Storage, storages
from django.core.management import call_command

from cases.domain.image_errors import ImageRefused
from cases.domain.images import ImageState, RemovalReason
from cases.domain.uuid7 import uuid7
from cases.models import Case, Image, ImagePart, Person
from cases.services.images import files, removal, upload
from cases.services.images.upload import Announced
from tests.cases.pictures import picture

PNG = picture()


@pytest.fixture
def store(settings: Any, tmp_path: Any) -> Storage:
    """A folder, as the program has it by default."""
    backend = "django.core.files.storage.FileSystemStorage"
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": backend, "OPTIONS": {"location": tmp_path}}}
    return storages["images"]


def announcement(data: bytes = PNG) -> Announced:
    digest = sha256(data).hexdigest()
    return Announced(id=uuid7(), sha256=digest, sent_bytes=len(data), device_time=datetime.now(UTC))


def begun(actor: Person, case: Case) -> Image:
    return upload.receive_part(actor=actor, case=case, announced=announcement(), offset=0, data=PNG[:10])


def test_an_upload_that_nobody_went_on_with_can_begin_anew(priya: Person, opened: Case, store: Storage) -> None:
    image = begun(priya, opened)
    ImagePart.objects.update(at=datetime.now(UTC) - timedelta(days=15))
    going_on = begun(priya, opened)
    tidied = upload.tidy(older_than=timedelta(days=14))
    assert (tidied.parts, upload.received_bytes(image), upload.received_bytes(going_on)) == (1, 0, 10)


def test_files_without_an_image_go_and_an_images_files_stay(priya: Person, opened: Case, store: Storage) -> None:
    image = upload.receive(actor=priya, case=opened, announced=announcement(), data=PNG)
    lost = store.save(f"{opened.pk}/{uuid7()}/view", ContentFile(b"x"))
    foreign = store.save("somebody/else/here", ContentFile(b"x"))
    out = StringIO()
    call_command("tidy", "--days", "14", stdout=out)
    assert store.exists(lost)  # perhaps it is just being written
    call_command("tidy", "--days", "0", stdout=out)
    assert out.getvalue().splitlines()[-1] == "Removed 0 parts of uploads and 2 files."
    assert not store.exists(lost)
    assert not store.exists(foreign)
    assert files.opened(image, "view").startswith(b"\x89PNG")


def test_files_of_a_removed_image_that_a_crash_left_go_at_once(priya: Person, opened: Case, store: Storage) -> None:
    image = upload.receive(actor=priya, case=opened, announced=announcement(), data=PNG)
    # The test's own transaction never commits, so nothing takes the files away: as after a crash.
    removal.remove(actor=priya, image=image, reason=RemovalReason.NAMES_SOMEBODY)
    assert store.exists(image.name_of("view"))
    assert upload.tidy(older_than=timedelta(days=14)).files == 2  # the view and the thumbnail
    assert not store.exists(image.name_of("view"))


def test_files_left_by_a_crash_are_written_over(priya: Person, opened: Case, store: Storage) -> None:
    announced = announcement()
    store.save(f"{opened.pk}/{announced.id}/view", ContentFile(b"half"))
    image = upload.receive(actor=priya, case=opened, announced=announced, data=PNG)
    assert files.opened(image, "view").startswith(b"\x89PNG")


def test_what_is_refused_leaves_no_file(priya: Person, opened: Case, store: Storage) -> None:
    with pytest.raises(ImageRefused):
        upload.receive(actor=priya, case=opened, announced=announcement(b"none"), data=b"none")
    assert Image.objects.get().state == ImageState.REFUSED
    assert list(files.left_alone(datetime.now(UTC))) == []
