"""Under which class an image is kept, and what that class asks for beside pixels and scale (DICOM PS3.3).

A word of the file is kept only where the standard lists it. A file that does not say all that its own class requires,
and every photograph, is kept as a secondary capture, which requires nothing that only the device could know.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path
from typing import Any

from pydicom import uid
from pydicom.dataset import Dataset
from pydicom.multival import MultiValue
from pydicom.sequence import Sequence

Attributes = dict[str, Any]
PRESENTED = {
    uid.DigitalIntraOralXRayImageStorageForPresentation: "FOR PRESENTATION",
    uid.DigitalIntraOralXRayImageStorageForProcessing: "FOR PROCESSING",
    uid.DigitalXRayImageStorageForPresentation: "FOR PRESENTATION",
    uid.DigitalXRayImageStorageForProcessing: "FOR PROCESSING",
}
INTRA_ORAL = (
    uid.DigitalIntraOralXRayImageStorageForPresentation,
    uid.DigitalIntraOralXRayImageStorageForProcessing,
)
LOSSY = (uid.JPEGBaseline8Bit, uid.JPEGExtended12Bit, uid.JPEGLSNearLossless, uid.JPEG2000)
# C.7.2 to C.7.6: required of every image, and empty where a person or a place would stand.
OF_EVERY_IMAGE: Attributes = {
    "ReferringPhysicianName": "",
    "AccessionNumber": "",
    "SeriesNumber": 1,
    "InstanceNumber": 1,
    "Manufacturer": "",
}
# C.7.3.1, C.7.6.1: not told, where the class does not ask for it in words of its own.
SIDE: Attributes = {"Laterality": "", "PatientOrientation": ""}
# C.8.6.1: made by a workstation; what made it before is not kept.
SECONDARY_CAPTURE: Attributes = SIDE | {"ConversionType": "WSD"}
# C.8.1.1: both may be empty.
COMPUTED: Attributes = SIDE | {"BodyPartExamined": "", "ViewPosition": ""}
# C.8.11.2 to C.8.11.7: words that a digital radiograph must say, and what they may be.
LISTED: dict[str, tuple[Any, ...]] = {
    "ImageLaterality": ("R", "L", "U", "B"),
    "PixelIntensityRelationship": ("LIN", "LOG"),
    "PixelIntensityRelationshipSign": (1, -1),
    "LossyImageCompression": ("00", "01"),
}
POSITIONERS = ("CARM", "COLUMN", "MAMMOGRAPHIC", "PANORAMIC", "CEPHALOSTAT", "RIGID", "NONE")
# Context groups of PS3.16: regions and teeth of an intra-oral radiograph.
REGIONS, TEETH = "4016", "4018"


def _meanings() -> dict[tuple[str, str], str]:
    """By group and code. In a file of their own: to load all that pydicom has takes longer than to read an image."""
    with Path(__file__).with_name("coded.csv").open(encoding="utf-8") as lines:
        rows = csv.DictReader(line for line in lines if not line.startswith("#"))
        return {(row["group"], row["code"]): row["meaning"] for row in rows}


# Read now: when an image is read, nothing can be opened any more.
MEANINGS = _meanings()
DETECTORS = ("DIRECT", "SCINTILLATOR", "STORAGE", "FILM")


def write_class(kept: Dataset, sent: Dataset) -> None:
    """Writes the class that is kept and what it asks for. The pixels stand in `kept` already."""
    _complete(kept)
    of_class = OWN[sent.SOPClassUID](sent, kept) if sent.SOPClassUID in OWN else None
    kept.SOPClassUID = uid.SecondaryCaptureImageStorage if of_class is None else sent.SOPClassUID
    for keyword, value in (OF_EVERY_IMAGE | (SECONDARY_CAPTURE if of_class is None else of_class)).items():
        setattr(kept, keyword, value)
    if _was_lossy(sent):
        kept.LossyImageCompression = "01"


def _complete(kept: Dataset) -> None:
    """C.11.1.1, C.11.2.1: what stands together or not at all."""
    if "RescaleSlope" in kept or "RescaleIntercept" in kept:
        kept.RescaleSlope = kept.get("RescaleSlope", 1)
        kept.RescaleIntercept = kept.get("RescaleIntercept", 0)
        kept.RescaleType = "US"
    if ("WindowCenter" in kept) != ("WindowWidth" in kept):
        _without_window(kept)


def _without_window(kept: Dataset) -> None:
    for keyword in ("WindowCenter", "WindowWidth"):
        kept.pop(keyword, None)


def _was_lossy(sent: Dataset) -> bool:
    """C.7.6.1.1.5: whatever became of it since."""
    return sent.get("LossyImageCompression") == "01" or sent.file_meta.TransferSyntaxUID in LOSSY


def _computed(sent: Dataset, kept: Dataset) -> Attributes:
    return COMPUTED


def _digital(sent: Dataset, kept: Dataset) -> Attributes | None:
    """The attributes of a digital radiograph; None where the file does not say what one must."""
    said: Attributes = {keyword: sent.get(keyword) for keyword in LISTED}
    orientation = sent.get("PatientOrientation")
    whole = all(value in LISTED[keyword] for keyword, value in said.items())
    if not whole or kept.PixelRepresentation or not _directions(orientation):
        return None
    presented = PRESENTED[sent.SOPClassUID]
    if presented == "FOR PROCESSING":
        _without_window(kept)  # C.8.11.3: only an image for presentation has one
    return said | {
        "PatientOrientation": list(orientation),
        "PresentationIntentType": presented,
        "PresentationLUTShape": "INVERSE" if kept.PhotometricInterpretation == "MONOCHROME1" else "IDENTITY",
        "ImageType": ["ORIGINAL", "PRIMARY", ""],
        "RescaleIntercept": kept.get("RescaleIntercept", 0),
        "RescaleSlope": kept.get("RescaleSlope", 1),
        "RescaleType": "US",
        "DetectorType": _one_of(DETECTORS, sent.get("DetectorType")),
        "PositionerType": _one_of(POSITIONERS, sent.get("PositionerType")),
        "AnatomicRegionSequence": _coded(sent, "AnatomicRegionSequence", REGIONS),
        "AcquisitionContextSequence": [],
    }


def _intra_oral(sent: Dataset, kept: Dataset) -> Attributes | None:
    of_class = _digital(sent, kept)
    tooth = _coded(sent, "PrimaryAnatomicStructureSequence", TEETH)
    if of_class is None or not of_class["PositionerType"] or not of_class["AnatomicRegionSequence"] or not tooth:
        return None
    return of_class | {"PrimaryAnatomicStructureSequence": tooth}


OWN: dict[str, Callable[[Dataset, Dataset], Attributes | None]] = {
    uid.ComputedRadiographyImageStorage: _computed,
    **{each: _intra_oral if each in INTRA_ORAL else _digital for each in PRESENTED},
}


def _one_of(listed: tuple[str, ...], said: Any) -> str:
    return said if said in listed else ""


def _directions(said: Any) -> bool:
    """C.7.6.1.1.1: along the rows and along the columns, in letters."""
    return isinstance(said, MultiValue) and len(said) == 2 and all(each and set(each) <= set("APRLHF") for each in said)


def _coded(sent: Dataset, keyword: str, listed: str) -> list[Dataset]:
    """What the file says by a code, in the standard's own words; empty where the code is none of those listed."""
    said = sent.get(keyword)
    if not isinstance(said, Sequence) or not said:
        return []
    code = said[0].get("CodeValue")
    if (meaning := MEANINGS.get((listed, code))) is None:
        return []
    item = Dataset()
    item.CodeValue, item.CodingSchemeDesignator, item.CodeMeaning = code, "SCT", meaning
    return [item]
