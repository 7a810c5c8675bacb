"""Radiographs drawn by the tests: roots, canals and an instrument with known lengths and bends.

Invented: they look like a radiograph as far as marking needs it. A canal runs straight down and then along one arc;
the beam is parallel but for one magnification, the detector's pixels may differ by axis, and the picture is blurred
and noisy.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pydicom
from numpy.typing import NDArray
from PIL import Image
from pydicom.dataset import FileDataset, FileMetaDataset
from pydicom.sr.codedict import codes
from pydicom.sr.coding import Code
from pydicom.uid import DigitalIntraOralXRayImageStorageForPresentation as IntraOral
from pydicom.uid import ExplicitVRLittleEndian, generate_uid
from pydicom.valuerep import format_number_as_ds
from scipy.ndimage import gaussian_filter
from scipy.spatial import cKDTree

Places = NDArray[np.float64]
"""Shape (n, 2): across and down."""


@dataclass(frozen=True, kw_only=True)
class Root:
    """One canal, in mm in the plane of the tooth."""

    canal: str
    begins: tuple[float, float]
    """The reference point."""
    straight_mm: float
    radius_mm: float
    bend_deg: float
    """Of the arc; to the right, or below 0 to the left. Schneider's angle is half of it."""
    instrument_mm: float | None = None
    """How far an instrument goes in."""
    seen_from_deg: float = 0
    """How far the tube is turned about the tooth from straight before the bend: what runs to or fro is not seen."""

    @property
    def length_mm(self) -> float:
        """In space."""
        return self.straight_mm + self.radius_mm * math.radians(abs(self.bend_deg))

    def along(self, distances_mm: NDArray[np.float64]) -> Places:
        """Where distances from the reference point lie, in mm."""
        turn = np.maximum(0, distances_mm - self.straight_mm) / self.radius_mm
        across = math.copysign(1, self.bend_deg) * self.radius_mm * (1 - np.cos(turn))
        across *= math.cos(math.radians(self.seen_from_deg))
        deep = np.minimum(distances_mm, self.straight_mm) + self.radius_mm * np.sin(turn)
        return np.column_stack((self.begins[0] + across, self.begins[1] + deep))


@dataclass(frozen=True, kw_only=True)
class Radiograph:
    grey: NDArray[np.uint8]
    roots: tuple[Root, ...]
    row_mm: float
    """At the detector."""
    column_mm: float
    magnification: float

    def on_image(self, places_mm: Places) -> Places:
        """Pixels, columns first."""
        return places_mm * self.magnification / [self.column_mm, self.row_mm]

    def png(self, path: Path) -> Path:
        Image.fromarray(self.grey).save(path)
        return path

    def dicom(self, path: Path) -> Path:
        """An intra-oral image with its spacing at the detector and its magnification, nobody's."""
        data_set = _intra_oral(self)
        data_set.save_as(path, enforce_file_format=True)
        return path


def drawn(
    *roots: Root,
    row_mm: float = 0.03,
    column_mm: float = 0.03,
    magnification: float = 1.06,
    blur_mm: float = 0.06,
    noise: float = 6,
    seed: int = 1,
    room_mm: float = 4,
) -> Radiograph:
    """`noise` is one standard deviation in grey levels of 255."""
    bare = Radiograph(
        grey=np.zeros((1, 1), np.uint8), roots=roots, row_mm=row_mm, column_mm=column_mm, magnification=magnification
    )
    every = {root.canal: root.along(np.linspace(0, root.length_mm, 400)) for root in roots}
    columns, rows = np.ceil(bare.on_image(np.vstack([*every.values()]).max(axis=0) + room_mm)).astype(int)
    down, across = np.mgrid[0:rows, 0:columns]
    # Pixels back to mm in the plane of the tooth: distances there are true whatever the pixels are.
    plane = np.column_stack((across.ravel() * column_mm, down.ravel() * row_mm)) / magnification
    grey = np.full(rows * columns, 60.0)
    for root in roots:
        apart = cKDTree(every[root.canal]).query(plane)[0]
        grey += 90 / (1 + np.exp((apart - 1.4) / 0.15))
        grey -= 55 * np.exp(-((apart / 0.22) ** 2))
    for root in roots:
        if root.instrument_mm is not None:
            inside = root.along(np.linspace(0, root.instrument_mm, 400))
            grey += 130 * np.exp(-((cKDTree(inside).query(plane)[0] / 0.14) ** 2))
    sigma = (blur_mm / row_mm, blur_mm / column_mm)
    blurred = gaussian_filter(grey.reshape(rows, columns), sigma)
    noisy = blurred + np.random.default_rng(seed).normal(0, noise, blurred.shape)
    return Radiograph(
        grey=np.clip(noisy, 0, 255).astype(np.uint8),
        roots=roots,
        row_mm=row_mm,
        column_mm=column_mm,
        magnification=magnification,
    )


def _intra_oral(of: Radiograph) -> FileDataset:
    """What the intra-oral image of DICOM PS3.3 asks for, with empty values where it allows them."""
    meta = FileMetaDataset()
    meta.MediaStorageSOPClassUID = IntraOral
    meta.MediaStorageSOPInstanceUID = generate_uid()
    meta.TransferSyntaxUID = ExplicitVRLittleEndian
    data_set = FileDataset("", {}, file_meta=meta, preamble=b"\0" * 128)
    data_set.SOPClassUID, data_set.SOPInstanceUID = IntraOral, meta.MediaStorageSOPInstanceUID
    data_set.StudyInstanceUID, data_set.SeriesInstanceUID = generate_uid(), generate_uid()
    data_set.SeriesNumber, data_set.InstanceNumber = 1, 1
    for empty in ("PatientName", "PatientID", "PatientBirthDate", "PatientSex", "StudyDate", "StudyTime", "StudyID"):
        setattr(data_set, empty, "")
    data_set.AccessionNumber = data_set.ReferringPhysicianName = ""
    data_set.PatientOrientation = ["A", "F"]
    data_set.Manufacturer, data_set.AcquisitionDate, data_set.AcquisitionTime = "", "", ""
    data_set.ContentDate, data_set.ContentTime = "20260101", "120000"
    data_set.ImageType = ["ORIGINAL", "PRIMARY", ""]
    data_set.Modality, data_set.PresentationIntentType = "IO", "FOR PRESENTATION"
    data_set.ImageLaterality, data_set.PositionerType = "L", "NONE"
    data_set.BurnedInAnnotation, data_set.LossyImageCompression = "NO", "00"
    data_set.PatientIdentityRemoved, data_set.DeidentificationMethod = "YES", "Drawn: there is no patient"
    data_set.ImagerPixelSpacing = [format_number_as_ds(value) for value in (of.row_mm, of.column_mm)]
    data_set.PixelSpacing = data_set.ImagerPixelSpacing
    data_set.EstimatedRadiographicMagnificationFactor = format_number_as_ds(of.magnification)
    data_set.DetectorType = "DIRECT"
    data_set.PixelIntensityRelationship, data_set.PixelIntensityRelationshipSign = "LOG", -1
    data_set.RescaleIntercept, data_set.RescaleSlope, data_set.RescaleType = "0", "1", "US"
    data_set.PresentationLUTShape = "IDENTITY"
    data_set.WindowCenter, data_set.WindowWidth = "128", "256"
    data_set.AnatomicRegionSequence = [_code(codes.SCT.JawRegion)]
    data_set.PrimaryAnatomicStructureSequence = [_code(codes.cid4018.MandibularLeftFirstMolarTooth)]
    data_set.AcquisitionContextSequence = []
    data_set.SamplesPerPixel, data_set.PhotometricInterpretation = 1, "MONOCHROME2"
    data_set.BitsAllocated = data_set.BitsStored = 8
    data_set.HighBit, data_set.PixelRepresentation = 7, 0
    data_set.Rows, data_set.Columns = of.grey.shape
    data_set.PixelData = of.grey.tobytes() + b"\0" * (of.grey.size % 2)
    return data_set


def _code(of: Code) -> pydicom.Dataset:
    item = pydicom.Dataset()
    item.CodeValue, item.CodingSchemeDesignator, item.CodeMeaning = of.value, of.scheme_designator, of.meaning
    return item
