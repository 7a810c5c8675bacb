"""Real DICOM files that come with other packages (nibabel, pynetdicom), sound and broken, read as they are and as if a
device had written them as captures: right, or refused in words; and nothing that points to a person is kept.
"""

from __future__ import annotations

import gzip
import warnings
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import nibabel
import numpy as np
import pydicom
import pynetdicom
import pytest
from pydicom.dataset import Dataset
from pydicom.uid import SecondaryCaptureImageStorage

from cases.domain.images import ImageKind
from cases.imaging import dicom
from cases.imaging.reading import read
from cases.imaging.value import Clean, Unreadable
from tests.cases.identities import identities, without_own_names
from tests.cases.pictures import SAMPLES, written
from tests.cases.test_imaging import LIMITS, UIDS
from tests.cases.test_imaging_dicom import TAKEN
from tests.dicom_checker import judged
from tests.draws import draws

FOLDERS = (
    Path(nibabel.__file__).parent / "nicom" / "tests" / "data",
    Path(pynetdicom.__file__).parent / "tests" / "dicom_files",
)
FILES = sorted(path for folder in FOLDERS for path in folder.iterdir() if path.is_file())
OTHER_CLASS = "This kind of DICOM file is not taken."
NO_IMAGE = "This is no image that can be kept here."
# Slices and plans: not taken as what they are. One is a capture. The others hold a piece of a head, or words.
TAKEN_AS_IT_IS = {"SCImageStorage_Deflated.dcm"}
REFUSED_AS_CAPTURE = {
    "csa_slice_norm.dcm": "The DICOM file holds no image.",
    "philips_mprage.dcm.gz": "The DICOM file holds several images.",
}


@pytest.fixture(autouse=True)
def no_warnings() -> Iterator[None]:
    """pydicom warns of files that break rules of wording."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def content(path: Path) -> bytes:
    data = path.read_bytes()
    return gzip.decompress(data) if path.name.endswith(".dcm.gz") else data


def is_dicom(path: Path) -> bool:
    return ".dcm" in path.name


def as_capture(path: Path) -> Dataset:
    data_set = pydicom.dcmread(BytesIO(content(path)))
    data_set.SOPClassUID = SecondaryCaptureImageStorage
    return data_set


def outcome(data: bytes) -> Clean | str:
    try:
        return read(data, LIMITS, UIDS)
    except Unreadable as refusal:
        return str(refusal)


def kept_bytes(clean: Clean) -> bytes:
    return clean.view + clean.thumbnail + without_own_names(clean.data_set) + repr(clean.spacing).encode()


def test_there_are_samples() -> None:
    """So that a package without its samples is not taken for a good outcome."""
    assert len(FILES) >= 20
    assert len([path for path in FILES if is_dicom(path)]) >= 14


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_as_it_is(path: Path) -> None:
    result = outcome(content(path))
    if path.name in TAKEN_AS_IT_IS:
        assert isinstance(result, Clean)
        assert result.kind is ImageKind.DICOM
    else:
        assert isinstance(result, str)
        assert result.startswith(OTHER_CLASS if is_dicom(path) else NO_IMAGE)


@pytest.mark.parametrize("path", [path for path in FILES if is_dicom(path)], ids=lambda path: path.name)
def test_as_a_capture(path: Path, tmp_path: Path) -> None:
    data_set = as_capture(path)
    result = outcome(written(data_set))
    if path.name in REFUSED_AS_CAPTURE:
        assert isinstance(result, str)
        assert result.startswith(REFUSED_AS_CAPTURE[path.name])
        return
    assert isinstance(result, Clean)
    assert (result.width_px, result.height_px) == (data_set.Columns, data_set.Rows)
    spacing = data_set.get("PixelSpacing")
    assert (result.spacing and result.spacing.pixel_spacing_mm) == (spacing and tuple(map(float, spacing)))
    kept = pydicom.dcmread(BytesIO(result.data_set))
    assert np.array_equal(kept.pixel_array, data_set.pixel_array)
    (tmp_path / "kept.dcm").write_bytes(result.data_set)
    assert judged(tmp_path / "kept.dcm") == ("SCImage", [])


def test_nothing_of_a_person_is_kept() -> None:
    """Every byte that is kept, held against every name, number, date, identifier and free word of the source."""
    others = [path for path in FILES if is_dicom(path) and path.name not in REFUSED_AS_CAPTURE]
    sent = {path.name: written(as_capture(path)) for path in others}
    sent |= {name: (SAMPLES / name).read_bytes() for name in TAKEN}
    for name, data in sent.items():
        persons = identities(pydicom.dcmread(BytesIO(data)))
        assert persons, name
        kept = kept_bytes(dicom.clean(data, LIMITS, UIDS))
        assert [value for value in sorted(persons) if value in kept] == [], name


def test_cut_off_anywhere_it_is_refused() -> None:
    data_set = as_capture(next(path for path in FILES if path.name == "CTImageStorage.dcm"))
    whole, pixels = written(data_set), data_set.PixelData
    assert isinstance(outcome(whole), Clean)
    first_pixel = whole.index(pixels)
    for length in [*range(140, first_pixel, first_pixel // draws(12)), first_pixel + 1, first_pixel + len(pixels) - 1]:
        assert isinstance(outcome(whole[:length]), str)
