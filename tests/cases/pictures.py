"""Pictures and DICOM files for the tests, made on the spot."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import pydicom
from PIL import Image
from pydicom.dataset import Dataset, FileMetaDataset
from pydicom.uid import DigitalIntraOralXRayImageStorageForPresentation, ExplicitVRLittleEndian, generate_uid

SAMPLES = Path(pydicom.__file__).parent / "data" / "test_files"


def picture(width: int = 40, height: int = 30, form: str = "PNG", **more: Any) -> bytes:
    """A picture whose every pixel is another: a ramp along each side."""
    x, y = np.meshgrid(np.linspace(0, 255, width), np.linspace(0, 255, height))
    values = np.stack([x, y, 255 - x], axis=-1).astype(np.uint8)
    out = BytesIO()
    Image.fromarray(values).save(out, form, **more)
    return out.getvalue()


def noise(width: int, height: int, form: str = "PNG") -> bytes:
    """Pixels that do not compress, so that the file is as long as it looks."""
    values = np.random.default_rng(1).integers(0, 255, (height, width, 3), dtype=np.uint8)
    out = BytesIO()
    Image.fromarray(values).save(out, form)
    return out.getvalue()


def intra_oral(**more: Any) -> Dataset:
    """An intra-oral radiograph of 8 by 6 pixels, values 0 to 47 row by row, spacing of the detector 0.02 mm."""
    told = Dataset()
    told.file_meta = FileMetaDataset()
    told.file_meta.TransferSyntaxUID = ExplicitVRLittleEndian
    told.SOPClassUID = DigitalIntraOralXRayImageStorageForPresentation
    told.SOPInstanceUID = generate_uid()
    told.Modality = "IO"
    told.Rows, told.Columns, told.SamplesPerPixel = 6, 8, 1
    told.BitsAllocated, told.BitsStored, told.HighBit, told.PixelRepresentation = 16, 12, 11, 0
    told.PhotometricInterpretation = "MONOCHROME2"
    told.ImagerPixelSpacing = [0.02, 0.02]
    told.PixelData = np.arange(48, dtype="<u2").tobytes()
    told["PixelData"].VR = "OW"
    for keyword, value in more.items():
        setattr(told, keyword, value)
    return told


def written(told: Dataset) -> bytes:
    out = BytesIO()
    told.save_as(out, enforce_file_format=True)
    return out.getvalue()
