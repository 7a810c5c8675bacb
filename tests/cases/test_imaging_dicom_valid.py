"""What is kept of a DICOM file is a valid object of the class it says, for an outside judge (dciodvfy); and it is that
class only where the file said what the class requires.
"""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import pydicom
import pytest
from pydicom import uid
from pydicom.dataset import Dataset
from pydicom.pixels.processing import apply_modality_lut, apply_voi_lut
from pydicom.sr.codedict import codes
from pydicom.uid import UID

from cases.imaging import dicom
from cases.imaging.dicom_class import MEANINGS, REGIONS, TEETH
from tests.cases.pictures import SAMPLES, intra_oral, written
from tests.cases.test_imaging import LIMITS, UIDS
from tests.cases.test_imaging_dicom import TAKEN
from tests.dicom_checker import judged
from tests.radiographs import Root, drawn

ROOT = Root(canal="ML", begins=(6, 3), straight_mm=13, radius_mm=9, bend_deg=40)
SECRET = "SECRETNAME"


@pytest.fixture(autouse=True)
def no_warnings() -> Iterator[None]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """An intra-oral radiograph that says all its class requires; dciodvfy finds no error in it."""
    path = drawn(ROOT).dicom(tmp_path_factory.mktemp("drawn") / "drawn.dcm")
    assert judged(path) == ("IntraoralImageForPresentation", [])
    return path.read_bytes()


def changed(whole: bytes, **values: Any) -> bytes:
    data_set = pydicom.dcmread(BytesIO(whole))
    for keyword, value in values.items():
        setattr(data_set, keyword, value)
    data_set.file_meta.MediaStorageSOPClassUID = data_set.SOPClassUID
    return written(data_set)


def kept_at(data: bytes, folder: Path) -> Path:
    path = folder / "kept.dcm"
    path.write_bytes(dicom.clean(data, LIMITS, UIDS).data_set)
    return path


@pytest.mark.parametrize("name", sorted(TAKEN))
def test_of_every_sample(name: str, tmp_path: Path) -> None:
    path = kept_at((SAMPLES / name).read_bytes(), tmp_path)
    computed = pydicom.dcmread(SAMPLES / name).SOPClassUID == uid.ComputedRadiographyImageStorage
    assert judged(path) == ("CRImage" if computed else "SCImage", [])


@pytest.mark.parametrize(
    ("sop_class", "presented", "taken_for"),
    [
        (uid.DigitalIntraOralXRayImageStorageForPresentation, "FOR PRESENTATION", "IntraoralImageForPresentation"),
        (uid.DigitalIntraOralXRayImageStorageForProcessing, "FOR PROCESSING", "IntraoralImageForProcessing"),
        (uid.DigitalXRayImageStorageForPresentation, "FOR PRESENTATION", "DXImageForPresentation"),
        (uid.DigitalXRayImageStorageForProcessing, "FOR PROCESSING", "DXImageForProcessing"),
    ],
)
@pytest.mark.parametrize("shown_as", ["MONOCHROME1", "MONOCHROME2"])
def test_of_digital_radiographs(
    sop_class: UID, presented: str, taken_for: str, shown_as: str, whole: bytes, tmp_path: Path
) -> None:
    modality = "IO" if "Intraoral" in taken_for else "DX"
    values = {"Modality": modality, "PresentationIntentType": presented, "PhotometricInterpretation": shown_as}
    path = kept_at(changed(whole, SOPClassUID=sop_class, **values), tmp_path)
    assert judged(path) == (taken_for, [])


@pytest.mark.parametrize(
    "missing",
    [
        {"ImageLaterality": SECRET},
        {"PixelIntensityRelationship": SECRET},
        {"PixelIntensityRelationshipSign": 0},
        {"LossyImageCompression": ""},
        {"PositionerType": SECRET},
        {"PatientOrientation": [SECRET, SECRET]},
        {"PatientOrientation": ""},
        {"AnatomicRegionSequence": []},
        {"PrimaryAnatomicStructureSequence": []},
        {"PositionerType": SECRET, "RescaleSlope": 2, "RescaleIntercept": None, "WindowWidth": None},
        {"SOPClassUID": uid.VLPhotographicImageStorage},
    ],
    ids=lambda missing: next(iter(missing)),
)
def test_without_what_its_class_requires_it_is_a_secondary_capture(
    missing: dict[str, Any], whole: bytes, tmp_path: Path
) -> None:
    path = kept_at(changed(whole, **missing), tmp_path)
    assert judged(path) == ("SCImage", [])
    assert SECRET.encode() not in path.read_bytes()


def test_a_bare_radiograph_is_a_secondary_capture_with_its_scale(tmp_path: Path) -> None:
    path = kept_at(written(intra_oral()), tmp_path)
    assert judged(path) == ("SCImage", [])
    assert list(pydicom.dcmread(path).ImagerPixelSpacing) == [0.02, 0.02]


def test_words_beside_a_code_are_the_standards_own(whole: bytes, tmp_path: Path) -> None:
    data_set = pydicom.dcmread(BytesIO(whole))
    for keyword in ("AnatomicRegionSequence", "PrimaryAnatomicStructureSequence"):
        data_set[keyword][0].CodeMeaning = SECRET
        data_set[keyword][0].PatientName = SECRET
    kept = pydicom.dcmread(kept_at(written(data_set), tmp_path))
    assert kept.PrimaryAnatomicStructureSequence[0].CodeMeaning == "Mandibular left first molar tooth"
    assert kept.AnatomicRegionSequence[0].CodeMeaning == "Jaw region"
    assert SECRET not in str(kept)


@pytest.mark.parametrize("group", [REGIONS, TEETH])
def test_the_codes_are_the_standards(group: str) -> None:
    """PS3.16 as pydicom carries it."""
    concepts = getattr(codes, f"cid{group}")
    theirs = [getattr(concepts, name) for name in concepts.dir()]
    assert {code.scheme_designator for code in theirs} == {"SCT"}
    ours = {code: meaning for (of, code), meaning in MEANINGS.items() if of == group}
    assert ours == {code.value: code.meaning for code in theirs}


@pytest.mark.parametrize(
    ("syntax", "lossy_before", "lossy"),
    [
        ("SC_rgb_jpeg_dcmtk.dcm", None, "01"),
        ("JPEGLSNearLossless_08.dcm", None, "01"),
        ("SC_rgb_rle.dcm", None, None),
        ("SC_rgb_rle.dcm", "01", "01"),
    ],
)
def test_what_was_lost_once_is_said(syntax: str, lossy_before: str | None, lossy: str | None) -> None:
    """PS3.3, C.7.6.1.1.5: once an image was compressed with a loss, it says so for ever."""
    data_set = pydicom.dcmread(SAMPLES / syntax)
    if "LossyImageCompression" in data_set:
        del data_set.LossyImageCompression
    if lossy_before:
        data_set.LossyImageCompression = lossy_before
    kept = pydicom.dcmread(BytesIO(dicom.clean(written(data_set), LIMITS, UIDS).data_set))
    assert kept.get("LossyImageCompression") == lossy


def test_what_is_kept_shows_the_same_as_what_was_sent(whole: bytes) -> None:
    """As pydicom shows both: value by value after rescaling and window."""

    def shown(data_set: Dataset) -> Any:
        return apply_voi_lut(apply_modality_lut(data_set.pixel_array, data_set), data_set)

    sent = changed(whole, WindowCenter=90, WindowWidth=60, RescaleIntercept=3, RescaleSlope=2)
    kept = pydicom.dcmread(BytesIO(dicom.clean(sent, LIMITS, UIDS).data_set))
    assert np.array_equal(shown(kept), shown(pydicom.dcmread(BytesIO(sent))))
