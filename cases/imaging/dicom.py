"""DICOM images. What is kept is a data set built anew from the pixels and a few numbers: nothing is copied from the
file because it was not on a list of things to remove; what is not named here is not kept.
"""

from __future__ import annotations

from io import BytesIO
from typing import Any

import numpy as np
import numpy.typing as npt
from PIL import Image
from pydicom import dcmread, uid
from pydicom.dataset import Dataset, FileMetaDataset
from pydicom.errors import InvalidDicomError
from pydicom.pixels.processing import apply_color_lut, apply_modality_lut, apply_voi_lut
from pydicom.pixels.utils import pixel_array

from cases.domain.images import BurntInText, DataSetUids, ImageKind
from cases.imaging.decoders import decoder_of
from cases.imaging.dicom_class import write_class
from cases.imaging.dicom_spacing import spacing_of, write_spacing
from cases.imaging.pictures import LEFT_OUT, by_level, eight_bits_of_colour, png, thumbnail
from cases.imaging.value import Clean, Limits, Unreadable

Values = npt.NDArray[Any]
SOP_CLASSES = (
    uid.DigitalIntraOralXRayImageStorageForPresentation,
    uid.DigitalIntraOralXRayImageStorageForProcessing,
    uid.DigitalXRayImageStorageForPresentation,
    uid.DigitalXRayImageStorageForProcessing,
    uid.ComputedRadiographyImageStorage,
    uid.SecondaryCaptureImageStorage,
    uid.VLPhotographicImageStorage,
)
MODALITIES = ("IO", "DX", "CR", "RG", "XC", "OT")
GREY = ("MONOCHROME1", "MONOCHROME2")
COLOUR = ("RGB", "YBR_FULL", "YBR_FULL_422", "YBR_RCT", "YBR_ICT")
DEPTHS_BITS = (8, 16)
BURNT_IN = {"YES": BurntInText.STATED, "NO": BurntInText.DENIED}
# Windows and rescaling, numbers that say how the stored values are shown.
SHOWN_BY = ("WindowCenter", "WindowWidth", "RescaleIntercept", "RescaleSlope")


def clean(data: bytes, limits: Limits, uids: DataSetUids) -> Clean:
    """The image for screens and the de-identified data set, under those UIDs. Raises Unreadable."""
    try:
        sent = dcmread(BytesIO(data))
    except InvalidDicomError:
        raise Unreadable("The DICOM file has no readable head. Export it again from where it was taken.") from None
    _refuse(sent, limits)
    for keyword in SHOWN_BY:
        if sent.get(keyword) is None:
            sent.pop(keyword, None)  # there and empty: not said
    values = _values(sent)
    grey = sent.PhotometricInterpretation in GREY
    picture = Image.fromarray(_shown(sent, values) if grey else eight_bits_of_colour(values))
    view, view_type = png(picture)
    kept = _data_set(sent, values if grey else np.asarray(picture), uids)
    return Clean(
        kind=ImageKind.DICOM,
        width_px=picture.width,
        height_px=picture.height,
        view=view,
        view_type=view_type,
        thumbnail=thumbnail(picture),
        data_set=_written(kept),
        sop_class=str(kept.SOPClassUID),
        modality=kept.Modality,
        spacing=spacing_of(sent),
        burnt_in_text=BURNT_IN.get(sent.get("BurnedInAnnotation", ""), BurntInText.UNKNOWN),
    )


def _refuse(sent: Dataset, limits: Limits) -> None:
    if sent.get("SOPClassUID") not in SOP_CLASSES:
        raise Unreadable(
            "This kind of DICOM file is not taken. Send an intra-oral, digital or computed radiograph, a secondary "
            "capture or a photograph."
        )
    if int(sent.get("NumberOfFrames") or 1) != 1:
        raise Unreadable("The DICOM file holds several images. Send one at a time.")
    if sent.get("Rows") is None or sent.get("Columns") is None or "PixelData" not in sent:
        raise Unreadable("The DICOM file holds no image. Export the image and not its report.")
    limits.refuse_size(int(sent.Columns), int(sent.Rows))
    # Nothing that stands in the file is said again: whatever it says there could be a name.
    if sent.get("PhotometricInterpretation") not in (*GREY, *COLOUR, "PALETTE COLOR"):
        raise Unreadable("The DICOM image is of colours that are not taken. Export it in grey or RGB.")
    if sent.get("BitsAllocated") not in DEPTHS_BITS:
        raise Unreadable("The DICOM image is neither of 8 nor of 16 bits. Export it as one of them.")


def _values(sent: Dataset) -> Values:
    """Stored values of grey, red green and blue of colour. Raises Unreadable for what no decoder here reads."""
    syntax = sent.file_meta.get("TransferSyntaxUID")
    if syntax is None:
        raise Unreadable("The DICOM file does not say how it is encoded. Export it again uncompressed.")
    try:
        values: Values = pixel_array(sent, decoding_plugin=decoder_of(syntax))
    except (RuntimeError, NotImplementedError):
        known = uid.UID(syntax)
        encoding = f" ({known.name})" if known.type == "Transfer Syntax" else ""
        raise Unreadable(f"The DICOM image could not be decoded{encoding}. Export it uncompressed.") from None
    if sent.PhotometricInterpretation == "PALETTE COLOR":
        return np.asarray(apply_color_lut(values, sent))
    stored = int(sent.get("BitsStored") or sent.BitsAllocated)
    # Older files draw words into the bits above the picture.
    return values & ((1 << stored) - 1) if values.dtype.kind == "u" else values


def _shown(sent: Dataset, values: Values) -> npt.NDArray[np.uint8]:
    """The grey picture as the file wants it shown: rescaled, within its window, turned from light to dark where it
    says so.
    """
    windowed = "WindowWidth" in sent or "VOILUTSequence" in sent

    def shown_as(levels: Values) -> Values:
        return np.asarray(apply_voi_lut(apply_modality_lut(levels, sent), sent))

    # A window leaves out what it leaves out. Of eight bits nothing stands out.
    eight = by_level(values, shown_as, 0 if windowed or sent.BitsAllocated == 8 else LEFT_OUT)
    # PS3.3, C.7.6.3.1.2: in MONOCHROME1 the least value is shown white.
    return 255 - eight if sent.PhotometricInterpretation == "MONOCHROME1" else eight


def _data_set(sent: Dataset, values: Values, uids: DataSetUids) -> Dataset:
    kept = Dataset()
    kept.SOPInstanceUID = uids.instance
    kept.StudyInstanceUID = uids.study
    kept.SeriesInstanceUID = uids.series
    kept.Modality = sent.get("Modality") if sent.get("Modality") in MODALITIES else "OT"
    # Required by the standard and empty: there is no patient here.
    for keyword in ("PatientName", "PatientID", "PatientBirthDate", "PatientSex", "StudyDate", "StudyTime", "StudyID"):
        setattr(kept, keyword, "")
    kept.PatientIdentityRemoved = "YES"
    kept.DeidentificationMethod = "Built anew from pixels and spacing"
    if sent.get("BurnedInAnnotation") in BURNT_IN:
        kept.BurnedInAnnotation = sent.BurnedInAnnotation
    write_spacing(kept, spacing_of(sent))
    _write_pixels(kept, sent, values)
    write_class(kept, sent)
    return kept


def _write_pixels(kept: Dataset, sent: Dataset, values: Values) -> None:
    kept.Rows, kept.Columns = values.shape[:2]
    grey = values.ndim == 2
    kept.SamplesPerPixel = 1 if grey else values.shape[2]
    kept.PhotometricInterpretation = sent.PhotometricInterpretation if grey else "RGB"
    kept.BitsAllocated = values.dtype.itemsize * 8
    kept.BitsStored = int(sent.BitsStored) if grey else kept.BitsAllocated
    kept.HighBit = kept.BitsStored - 1
    kept.PixelRepresentation = int(values.dtype.kind == "i")
    if grey:
        for keyword in SHOWN_BY:
            if isinstance(number := sent.get(keyword), float | int):
                setattr(kept, keyword, number)
    else:
        kept.PlanarConfiguration = 0
    kept.PixelData = values.astype(values.dtype.newbyteorder("<")).tobytes()
    # PS3.5, A.2: more than eight bits are words, else bytes.
    kept["PixelData"].VR = "OW" if kept.BitsAllocated > 8 else "OB"


def _written(kept: Dataset) -> bytes:
    kept.file_meta = FileMetaDataset()
    kept.file_meta.TransferSyntaxUID = uid.ExplicitVRLittleEndian
    out = BytesIO()
    kept.save_as(out, enforce_file_format=True)
    return out.getvalue()
