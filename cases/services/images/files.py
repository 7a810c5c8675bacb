"""The files of images, in whatever storage the settings name. Nothing is served from there but through a view."""

from __future__ import annotations

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from uuid import UUID

from django.core.files.base import ContentFile
from django.core.files.storage import Storage, storages

from cases.domain.image_errors import StoreAway
from cases.domain.images import ImageState, NameCheck
from cases.imaging.value import Clean
from cases.models import Image

logger = logging.getLogger(__name__)
PARTS = ("view", "thumbnail", "data_set")


@contextmanager
def storage() -> Iterator[Storage]:
    """For calls of the storage alone. Raises StoreAway for whatever goes wrong there but a file that is missing."""
    try:
        yield storages["images"]
    except FileNotFoundError:
        raise
    except Exception as error:
        # Each kind of storage raises what its authors thought of.
        logger.exception("the images' storage failed")
        raise StoreAway from error


def put(image: Image, clean: Clean) -> int:
    """Writes the files of an image and returns how many bytes they take. What a crash left there is written over."""
    written = 0
    for part in PARTS:
        content: bytes = getattr(clean, part)
        if content:
            name = image.name_of(part)
            with storage() as store:
                if store.exists(name):
                    store.delete(name)
                store.save(name, ContentFile(content))
            written += len(content)
    return written


def opened(image: Image, part: str) -> bytes:
    """The content of a file of a stored image."""
    with storage() as store, store.open(image.name_of(part)) as file:
        content: bytes = file.read()
    return content


def thumbnails(case_id: UUID) -> dict[str, bytes]:
    """Small pictures (JPEG) of a case's stored images by their ids, but none in which somebody may be named."""
    images = Image.objects.filter(case=case_id, state=ImageState.STORED)
    return {str(image.pk): opened(image, "thumbnail") for image in images if image.name_check is not NameCheck.OPEN}


def take_away(image: Image) -> None:
    """Deletes every file of an image, also where one is missing already."""
    _remove([image.name_of(part) for part in PARTS])


def remove_left_alone(before: datetime) -> int:
    """Removes the files that `left_alone` names, and returns how many there were."""
    names = list(left_alone(before))
    _remove(names)
    return len(names)


def left_alone(before: datetime) -> Iterator[str]:
    """Names of files that no stored image owns: a removed image's at once, others if written before that time."""
    for case in _below("")[0]:
        for id_ in _below(case)[0]:
            names = [f"{case}/{id_}/{file}" for file in _below(f"{case}/{id_}")[1]]
            state = _state(id_) if names else None
            if state != ImageState.STORED:
                gone = state == ImageState.REMOVED
                yield from (name for name in names if gone or _written(name) < before)


def _remove(names: list[str]) -> None:
    with storage() as store:
        for name in names:
            store.delete(name)


def _below(folder: str) -> tuple[list[str], list[str]]:
    """Folders and files; a storage that was never written to has none."""
    try:
        with storage() as store:
            return store.listdir(folder)
    except FileNotFoundError:
        return [], []


def _written(name: str) -> datetime:
    with storage() as store:
        return store.get_modified_time(name)


def _state(id_: str) -> str | None:
    """Where the image of that id stands; None where there is none."""
    try:
        return Image.objects.filter(pk=UUID(id_)).values_list("state", flat=True).first()
    except ValueError:
        return None
