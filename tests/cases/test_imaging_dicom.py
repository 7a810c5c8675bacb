"""DICOM images: what is shown, what is kept, what of a patient is not. Files: the samples that come with pydicom."""

from __future__ import annotations

import re
import warnings
from collections.abc import Iterator
from dataclasses import astuple
from io import BytesIO
from pathlib import Path
from typing import Any
from uuid import UUID

import numpy as np
import pydicom
import pytest
from PIL import Image
from pydicom._dicom_dict import DicomDictionary
from pydicom.dataset import Dataset
from pydicom.sequence import Sequence
from pydicom.uid import SecondaryCaptureImageStorage

from cases.domain.images import BurntInText, DataSetUids, ImageKind, Spacing, study_uid
from cases.imaging import dicom
from cases.imaging.dicom_spacing import spacing_of
from cases.imaging.kinds import kind_of
from cases.imaging.value import Clean, Unreadable
from tests.cases.pictures import SAMPLES, intra_oral, written
from tests.cases.test_imaging import LIMITS, UIDS

SECRET = "SECRETNAME"
SECRET_UID = "1.2.826.9.9.9"
SECRET_DATE = "19680704"


@pytest.fixture(autouse=True)
def no_warnings() -> Iterator[None]:
    """Files from devices break rules of wording that nothing here rests on; pydicom warns of each."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def clean(data_set: Dataset) -> Clean:
    return dicom.clean(written(data_set), LIMITS, UIDS)


def sample(name: str) -> Dataset:
    return pydicom.dcmread(SAMPLES / name)


def as_capture(name: str) -> Dataset:
    """The sample under the class of a secondary capture, so that it is taken."""
    data_set = sample(name)
    data_set.SOPClassUID = data_set.file_meta.MediaStorageSOPClassUID = SecondaryCaptureImageStorage
    return data_set


def shown(image: Clean) -> list[int]:
    with Image.open(BytesIO(image.view)) as opened:
        return list(opened.tobytes())


def kept(image: Clean) -> Dataset:
    return pydicom.dcmread(BytesIO(image.data_set))


# --- every sample, sound or broken ---

FILES = sorted(path for path in SAMPLES.rglob("*") if path.is_file())
# Projections, captures and photographs of one frame that are whole; all others are of another class, have several
# frames, or are broken.
TAKEN = {
    "GDCMJ2K_TextGBR.dcm",
    "JPEG2000.dcm",
    "JPEGLSNearLossless_08.dcm",
    "JPEGLSNearLossless_16.dcm",
    "SC_jpeg_no_color_transform.dcm",
    "SC_jpeg_no_color_transform_2.dcm",
    "SC_rgb_dcmtk_+eb+cr.dcm",
    "SC_rgb_dcmtk_+eb+cy+n1.dcm",
    "SC_rgb_dcmtk_+eb+cy+n2.dcm",
    "SC_rgb_dcmtk_+eb+cy+np.dcm",
    "SC_rgb_dcmtk_+eb+cy+s2.dcm",
    "SC_rgb_dcmtk_+eb+cy+s4.dcm",
    "SC_rgb_gdcm_KY.dcm",
    "SC_rgb_jls_lossy_line.dcm",
    "SC_rgb_jls_lossy_sample.dcm",
    "SC_rgb_jpeg.dcm",
    "SC_rgb_jpeg_app14_dcmd.dcm",
    "SC_rgb_jpeg_dcmd.dcm",
    "SC_rgb_jpeg_dcmtk.dcm",
    "SC_rgb_jpeg_gdcm.dcm",
    "SC_rgb_jpeg_lossy_gdcm.dcm",
    "SC_rgb_rle.dcm",
    "SC_rgb_rle_16bit.dcm",
    "SC_rgb_small_odd.dcm",
    "SC_rgb_small_odd_big_endian.dcm",
    "SC_rgb_small_odd_jpeg.dcm",
    "SC_ybr_full_422_uncompressed.dcm",
    "dicomdirtests/77654033/CR1/6154",
    "dicomdirtests/77654033/CR2/6247",
    "dicomdirtests/77654033/CR3/6278",
    "image_dfl.dcm",
}


def outcome(path: Path) -> Clean | str:
    data = path.read_bytes()
    try:
        assert kind_of(data) is ImageKind.DICOM
        return dicom.clean(data, LIMITS, UIDS)
    except Unreadable as refusal:
        return str(refusal)


def test_every_sample_is_taken_right_or_refused_in_words() -> None:
    outcomes = {path.relative_to(SAMPLES).as_posix(): outcome(path) for path in FILES}
    assert {name for name, image in outcomes.items() if isinstance(image, Clean)} == TAKEN
    assert all(image for image in outcomes.values())
    for name in TAKEN:
        image, data_set = outcomes[name], sample(name)
        assert isinstance(image, Clean)
        assert (image.height_px, image.width_px) == (data_set.Rows, data_set.Columns)
        spacing = data_set.get("PixelSpacing")
        assert (image.spacing and image.spacing.pixel_spacing_mm) == (spacing and tuple(map(float, spacing)))


@pytest.mark.parametrize("name", ["MR_small_RLE.dcm", "MR_small_jp2klossless.dcm", "MR_small_jpeg_ls_lossless.dcm"])
def test_a_compressed_image_is_the_uncompressed_one(name: str) -> None:
    """pydicom's samples: the same slice, stored plainly and without loss in three compressed forms."""
    assert shown(clean(as_capture(name))) == shown(clean(as_capture("MR_small.dcm")))


# --- what is shown ---


def test_values_are_stretched_from_dark_to_light() -> None:
    assert shown(clean(intra_oral())) == [round(value * 255 / 47) for value in range(48)]


def test_one_hot_pixel_does_not_make_the_others_grey() -> None:
    """Of 2,000 values ten are left out at either end, by hand: 9,010 is black, 10,989 white."""
    values = np.array([*range(9_000, 10_999), 65_535], dtype="<u2")
    data_set = intra_oral(Rows=40, Columns=50, BitsStored=16, HighBit=15, PixelData=values.tobytes())
    assert shown(clean(data_set))[1000] == round((10_000 - 9_010) / (10_989 - 9_010) * 255)
    assert kept(clean(data_set)).PixelData == values.tobytes()


def test_what_falls_as_it_rises_is_stretched_by_what_is_shown() -> None:
    values = np.arange(48, dtype="<u2").tobytes()
    data_set = intra_oral(PixelData=values, RescaleSlope=-2, RescaleIntercept=10)
    assert shown(clean(data_set)) == [255 - round(value * 255 / 47) for value in range(48)]


def test_a_negative_is_turned_over() -> None:
    dark = clean(intra_oral(PhotometricInterpretation="MONOCHROME1"))
    assert shown(dark) == [255 - round(value * 255 / 47) for value in range(48)]


def test_the_window_of_the_file_is_used() -> None:
    """DICOM PS3.3, C.11.2.1.2.1: black up to c - ½ - (w - 1)/2, white above c - ½ + (w - 1)/2, between them linear."""
    values = shown(clean(intra_oral(WindowCenter=24, WindowWidth=10)))
    assert values[19] == 0
    assert values[29] == 255
    assert values[24] == round(((24 - 23.5) / 9 + 0.5) * 255)


def test_words_drawn_into_the_upper_bits_are_not_kept() -> None:
    """Retired in PS3.5, 8.1.2, and still met: an overlay in the bits above the picture."""
    with_words = (np.arange(48, dtype="<u2") | 0x8000).tobytes()
    image = clean(intra_oral(PixelData=with_words))
    assert shown(image) == shown(clean(intra_oral()))
    assert kept(image).PixelData == np.arange(48, dtype="<u2").tobytes()


# --- scale, as read ---


def test_row_spacing_comes_first() -> None:
    image = clean(as_capture("dicomdirtests/98892001/CT2N/6293"))
    assert image.spacing is not None
    assert image.spacing.pixel_spacing_mm == (0.545455, 0.596847)


def test_spacing_of_the_detector_alone() -> None:
    image = dicom.clean((SAMPLES / "dicomdirtests/77654033/CR1/6154").read_bytes(), LIMITS, UIDS)
    assert image.spacing == Spacing(imager_pixel_spacing_mm=(0.1, 0.1))


def test_all_that_a_scale_rests_on() -> None:
    spacings: dict[str, Any] = {
        "PixelSpacing": [0.018, 0.019],
        "PixelSpacingCalibrationType": "FIDUCIAL",
        "PixelSpacingCalibrationDescription": SECRET,
        "EstimatedRadiographicMagnificationFactor": 1.1,
        "DistanceSourceToDetector": 330,
        "DistanceSourceToPatient": 300,
        "NominalScannedPixelSpacing": [0.05, 0.05],
    }
    image = clean(intra_oral(**spacings))
    assert image.spacing == Spacing(
        imager_pixel_spacing_mm=(0.02, 0.02),
        pixel_spacing_mm=(0.018, 0.019),
        pixel_spacing_calibration_type="FIDUCIAL",
        estimated_magnification=1.1,
        source_to_detector_mm=330,
        source_to_patient_mm=300,
        nominal_scanned_pixel_spacing_mm=(0.05, 0.05),
    )
    assert spacing_of(kept(image)) == image.spacing


@pytest.mark.parametrize("none", [[0, 0], [-0.1, 0.1], [0.1, 0]], ids=str)
def test_spacing_of_nothing_was_not_said(none: list[float]) -> None:
    image = clean(intra_oral(ImagerPixelSpacing=none, PixelSpacing=[0.02, 0.02], DistanceSourceToPatient=0))
    assert image.spacing == Spacing(pixel_spacing_mm=(0.02, 0.02))
    assert "ImagerPixelSpacing" not in kept(image)
    assert "DistanceSourceToPatient" not in kept(image)


def test_spacing_that_is_no_pair_of_numbers_is_none() -> None:
    data_set = intra_oral()
    data_set.add_new(0x00280030, "LO", "wide")
    del data_set.ImagerPixelSpacing
    assert clean(data_set).spacing is None


@pytest.mark.parametrize(
    ("annotation", "means"), [("YES", BurntInText.STATED), ("NO", BurntInText.DENIED), (None, BurntInText.UNKNOWN)]
)
def test_words_in_the_picture_are_for_a_person(annotation: str | None, means: BurntInText) -> None:
    data_set = intra_oral() if annotation is None else intra_oral(BurnedInAnnotation=annotation)
    assert clean(data_set).burnt_in_text is means


# --- nothing of a patient ---

TEXT_VALUES = dict.fromkeys(("AE", "CS", "LO", "LT", "PN", "SH", "ST", "UC", "UR", "UT"), SECRET)
TEXT_VALUES |= {"UI": SECRET_UID, "DA": SECRET_DATE, "DT": SECRET_DATE, "TM": "010203"}
# Without these there is no image to be kept at all.
NEEDED = {"SOPClassUID", "PhotometricInterpretation"}


# Written out: a new attribute needs a look at what it could say.
MAY_BE_KEPT = """
    SOPClassUID SOPInstanceUID StudyInstanceUID SeriesInstanceUID Modality StudyDate StudyTime StudyID
    PatientName PatientID PatientBirthDate PatientSex PatientIdentityRemoved DeidentificationMethod BurnedInAnnotation
    ImagerPixelSpacing PixelSpacing NominalScannedPixelSpacing EstimatedRadiographicMagnificationFactor
    DistanceSourceToDetector DistanceSourceToPatient PixelSpacingCalibrationType PixelSpacingCalibrationDescription
    Rows Columns SamplesPerPixel PhotometricInterpretation BitsAllocated BitsStored HighBit PixelRepresentation
    PlanarConfiguration WindowCenter WindowWidth RescaleIntercept RescaleSlope PixelData
    ReferringPhysicianName AccessionNumber SeriesNumber InstanceNumber Laterality PatientOrientation Manufacturer
    ConversionType RescaleType LossyImageCompression
"""


def with_secrets() -> Dataset:
    """Every attribute of the standard's dictionary that holds words, dates or identifiers, filled; also within
    sequences and in private ones."""
    data_set, filled = intra_oral(), 0
    for tag, (vr, _, _, _, keyword) in DicomDictionary.items():
        if vr in TEXT_VALUES and keyword not in NEEDED and tag >> 16 >= 0x0008 and tag >> 16 != 0x7FE0:
            data_set.add_new(tag, vr, TEXT_VALUES[vr])
            filled += 1
    assert filled > 1500
    assert {"PatientName", "PatientID", "PatientBirthDate", "OtherPatientIDs"} <= set(data_set.dir())
    nested = Dataset()
    nested.PatientName, nested.PatientID = SECRET, SECRET
    private = nested.private_block(0x0011, SECRET, create=True)
    private.add_new(1, "LO", SECRET)
    data_set.RequestAttributesSequence = Sequence([nested])
    data_set.OtherPatientIDsSequence = Sequence([nested])
    own = data_set.private_block(0x0013, SECRET, create=True)
    own.add_new(1, "LO", SECRET)
    own.add_new(2, "SQ", Sequence([nested]))
    own.add_new(3, "OB", SECRET.encode())
    data_set.file_meta.SourceApplicationEntityTitle = SECRET
    data_set.preamble = SECRET.encode().ljust(128, b"\x00")
    return data_set


def test_nothing_of_a_patient_is_kept() -> None:
    sent = written(with_secrets())
    for secret in (SECRET, SECRET_UID, SECRET_DATE):
        assert secret.encode() in sent
    image = dicom.clean(sent, LIMITS, UIDS)
    for secret in (SECRET, SECRET_UID, SECRET_DATE):
        for content in (image.data_set, image.view, image.thumbnail, repr(image.spacing).encode()):
            assert secret.encode() not in content
    data_set = kept(image)
    assert (data_set.PatientName, data_set.PatientID, data_set.PatientIdentityRemoved) == ("", "", "YES")
    assert not [element for element in data_set.iterall() if element.tag.is_private]


def test_what_is_kept_is_the_image_under_names_of_its_own() -> None:
    data_set = intra_oral()
    first = kept(clean(data_set))
    assert first.PixelData == data_set.PixelData
    assert (first.StudyInstanceUID, first.SeriesInstanceUID, first.SOPInstanceUID) == astuple(UIDS)
    assert {element.keyword for element in first} <= set(MAY_BE_KEPT.split())


def test_each_image_of_a_case_is_a_series_of_its_one_study() -> None:
    case_id = UUID("01893e4a-0000-7000-8000-000000000001")
    image_ids = [UUID(int=case_id.int + number) for number in (1, 2)]
    first, second = (DataSetUids.of(case_id=case_id, image_id=id_) for id_ in image_ids)
    assert first == DataSetUids.of(case_id=case_id, image_id=image_ids[0])
    assert first.study == second.study == study_uid(case_id)
    uids = {*astuple(first), *astuple(second)}
    assert len(uids) == 5
    for each in uids:
        # PS3.5, 9.1 and B.2: digits and points, at most 64 characters, under the root of UIDs made from UUIDs.
        assert re.fullmatch(r"2\.25\.[1-9]\d*", each)
        assert len(each) <= 64
        assert not any(str(id_.int) in each for id_ in (case_id, *image_ids))


# --- refused ---


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        ({"SOPClassUID": "1.2.840.10008.5.1.4.1.1.2"}, "This kind of DICOM file"),
        ({"NumberOfFrames": 2}, "several images"),
        ({"Rows": 20_000, "Columns": 20_000}, "20000 by 20000 px"),
        ({"Rows": 0}, "no pixels"),
        ({"BitsAllocated": 32}, "neither of 8 nor of 16 bits"),
        ({"PhotometricInterpretation": SECRET}, "colours that are not taken"),
    ],
)
def test_refused_before_anything_is_decoded(wrong: dict[str, Any], says: str) -> None:
    with pytest.raises(Unreadable, match=says) as why:
        clean(intra_oral(**wrong))
    assert SECRET not in str(why.value)


def test_no_pixels() -> None:
    data_set = intra_oral()
    del data_set.PixelData
    with pytest.raises(Unreadable, match="holds no image"):
        clean(data_set)
