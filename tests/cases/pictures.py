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
    data_set = Dataset()
    data_set.file_meta = FileMetaDataset()
    data_set.file_meta.TransferSyntaxUID = ExplicitVRLittleEndian
    data_set.SOPClassUID = DigitalIntraOralXRayImageStorageForPresentation
    data_set.SOPInstanceUID = generate_uid()
    data_set.Modality = "IO"
    data_set.Rows, data_set.Columns, data_set.SamplesPerPixel = 6, 8, 1
    data_set.BitsAllocated, data_set.BitsStored, data_set.HighBit, data_set.PixelRepresentation = 16, 12, 11, 0
    data_set.PhotometricInterpretation = "MONOCHROME2"
    data_set.ImagerPixelSpacing = [0.02, 0.02]
    data_set.PixelData = np.arange(48, dtype="<u2").tobytes()
    data_set["PixelData"].VR = "OW"
    for keyword, value in more.items():
        setattr(data_set, keyword, value)
    return data_set


def written(data_set: Dataset) -> bytes:
    out = BytesIO()
    data_set.save_as(out, enforce_file_format=True)
    return out.getvalue()
