"""Photographs of real cameras and phones, as they come with a reader of their notes (npm package exif, which also says
what stands in them): upright, of the right size, and without place, device, date and words. Cut off, they are refused.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PIL import Image

from cases.domain.images import ImageKind
from cases.imaging.reading import read
from cases.imaging.value import Unreadable
from tests.cases.test_imaging import LIMITS, UIDS

FOLDER = Path(__file__).parents[1] / "photographs" / "node_modules" / "exif" / "test"
PHOTOGRAPHS = sorted(FOLDER.glob("*.jpg"))
HOW_MANY = 10
# Turned by a quarter (EXIF 2.3, tag 0x0112).
QUARTER = (5, 6, 7, 8)
LEAST_BYTES = 5  # shorter words stand in pixels by chance


def notes(path: Path) -> dict[str, dict[str, Any]]:
    """What the package's own reader finds in it, by group."""
    noted: dict[str, dict[str, Any]] = json.loads(path.with_suffix(".jpg.json").read_text(encoding="utf-8"))
    return noted


def words(note: Any) -> Iterator[bytes]:
    if isinstance(note, str) and len(note.encode()) >= LEAST_BYTES:
        yield note.encode()
    elif isinstance(note, dict | list):
        for each in note.values() if isinstance(note, dict) else note:
            yield from words(each)


def test_the_photographs_are_here() -> None:
    if not PHOTOGRAPHS and not os.environ.get("CI"):
        pytest.skip("npm ci in tests/photographs brings them; the gate does")
    assert len(PHOTOGRAPHS) == HOW_MANY
    assert len([path for path in PHOTOGRAPHS if notes(path)["gps"]]) >= 3
    assert len([path for path in PHOTOGRAPHS if set(words(notes(path)))]) >= 8
    assert {notes(path)["image"].get("Orientation", 1) for path in PHOTOGRAPHS} >= {1, 4, 8}


@pytest.mark.parametrize("path", PHOTOGRAPHS, ids=lambda path: path.name)
def test_a_photograph_is_kept_upright_and_without_its_notes(path: Path) -> None:
    sent, noted = path.read_bytes(), notes(path)
    clean = read(sent, LIMITS, UIDS)
    with Image.open(BytesIO(sent)) as opened:
        size = opened.size
    turned = noted["image"].get("Orientation") in QUARTER
    assert (clean.width_px, clean.height_px) == (size[::-1] if turned else size)
    assert clean.kind is ImageKind.JPEG
    written = {word for word in words(noted) if word in sent}
    for kept in (clean.view, clean.thumbnail):
        assert [word for word in sorted(written) if word in kept] == []
        with Image.open(BytesIO(kept)) as shown:
            assert not shown.getexif()


@pytest.mark.parametrize("path", PHOTOGRAPHS, ids=lambda path: path.name)
def test_a_photograph_looks_as_it_was_held(path: Path) -> None:
    """Its pixels, turned by hand after the table of EXIF 2.3."""
    by_hand = {1: lambda a: a, 4: lambda a: a[::-1], 8: lambda a: np.rot90(a)}
    with Image.open(BytesIO(path.read_bytes())) as opened:
        sent = np.asarray(opened.convert("L"), dtype=int)
    upright = by_hand[notes(path)["image"].get("Orientation", 1)](sent)
    with Image.open(BytesIO(read(path.read_bytes(), LIMITS, UIDS).view)) as shown:
        kept = np.asarray(shown.convert("L"), dtype=int)
    # A few steps of 255 are lost by JPEG: common practice, no source.
    assert np.abs(kept - upright).mean() < 3


@pytest.mark.parametrize("path", PHOTOGRAPHS, ids=lambda path: path.name)
def test_a_photograph_cut_off_is_refused(path: Path) -> None:
    sent = path.read_bytes()
    # Within the notes, and within the picture; one has a second picture behind it.
    for length in (len(sent) // 20, len(sent) // 2):
        with pytest.raises(Unreadable, match="damaged"):
            read(sent[:length], LIMITS, UIDS)
