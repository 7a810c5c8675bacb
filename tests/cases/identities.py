"""Whatever in a DICOM file could point to a person: names, numbers, dates, times, places, identifiers, free words."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

from pydicom import dcmread
from pydicom._uid_dict import UID_dictionary
from pydicom.dataset import Dataset
from pydicom.uid import PYDICOM_IMPLEMENTATION_UID

KINDS = {"PN", "LO", "SH", "ST", "LT", "UT", "UC", "UI", "DA", "DT", "TM", "AE", "AS"}
# Shorter ones stand in any pixels by chance.
LEAST_BYTES = 5


def identities(data_set: Dataset) -> set[bytes]:
    """Every such value, also within sequences, in private attributes and in the file's head; of names each part too.

    The standard's own identifiers (classes, encodings) and that of the library that writes files point to nobody.
    """
    whole = {text for part in (data_set, data_set.file_meta) for text in _said(part)}
    texts = whole | {part for text in whole for part in text.split("^")}
    nobodys = {*UID_dictionary, PYDICOM_IMPLEMENTATION_UID}
    return {text.encode() for text in texts if len(text.encode()) >= LEAST_BYTES and text not in nobodys}


def without_own_names(data_set: bytes) -> bytes:
    """A kept data set without the identifiers that it was given when it was kept: chance puts any number into them."""
    read_back = dcmread(BytesIO(data_set))
    for uid in {read_back.SOPInstanceUID, read_back.StudyInstanceUID, read_back.SeriesInstanceUID}:
        data_set = data_set.replace(str(uid).encode(), b"")
    return data_set


def _said(data_set: Dataset) -> Iterator[str]:
    for element in data_set.iterall():
        if element.VR in KINDS and element.value:
            values = element.value if element.VM > 1 else [element.value]
            yield from (str(value).strip() for value in values)
