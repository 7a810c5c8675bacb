"""The files of images, in whatever storage the settings name. Nothing is served from there but through a view."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from uuid import UUID

from django.core.files.base import ContentFile
from django.core.files.storage import Storage, storages

from cases.domain.images import ImageState
from cases.imaging.value import Clean
from cases.models import Image

PARTS = ("view", "thumbnail", "data_set")


def storage() -> Storage:
    return storages["images"]


def put(image: Image, clean: Clean) -> int:
    """Writes the files of an image; how many bytes they take. Files left there by a crash are written over."""
    written = 0
    for part in PARTS:
        content: bytes = getattr(clean, part)
        if content:
            name = image.name_of(part)
            if storage().exists(name):
                storage().delete(name)
            storage().save(name, ContentFile(content))
            written += len(content)
    return written


def opened(image: Image, part: str) -> bytes:
    """The content of a file of a stored image."""
    with storage().open(image.name_of(part)) as file:
        content: bytes = file.read()
    return content


def take_away(image: Image) -> None:
    """Deletes every file of an image; one that is not there is no matter."""
    for part in PARTS:
        storage().delete(image.name_of(part))


def left_alone(before: datetime) -> Iterator[str]:
    """Names of files that no stored image owns: a removed image's at once, others if written before that time."""
    for case in _folders(""):
        for id_ in _folders(case):
            names = [f"{case}/{id_}/{file}" for file in storage().listdir(f"{case}/{id_}")[1]]
            state = _state(id_) if names else None
            if state != ImageState.STORED:
                gone = state == ImageState.REMOVED
                yield from (name for name in names if gone or storage().get_modified_time(name) < before)


def _folders(below: str) -> list[str]:
    try:
        return storage().listdir(below)[0]
    except FileNotFoundError:  # nothing was ever stored
        return []


def _state(id_: str) -> str | None:
    """Where the image of that id stands; None where there is none."""
    try:
        return Image.objects.filter(pk=UUID(id_)).values_list("state", flat=True).first()
    except ValueError:
        return None
