"""What goes into the reading of an image and what comes out."""

from __future__ import annotations

from dataclasses import dataclass

from cases.domain.images import BurntInText, ImageKind, Spacing


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """The largest image that is read."""

    most_px: int
    """Width times height."""
    longest_side_px: int
    computing_seconds: int
    """For one image; beyond, it is refused."""
    clock_seconds: int
    """More than it may compute: beyond, the machine is at fault and the image may come again."""
    memory_bytes: int
    """Addresses the reading process may take."""

    def refuse_size(self, width_px: int, height_px: int) -> None:
        """Raises Unreadable. Asked before anything is decoded: a small file can unfold to a huge image."""
        if width_px < 1 or height_px < 1:
            raise Unreadable("The image has no pixels.")
        if max(width_px, height_px) > self.longest_side_px:
            raise Unreadable(f"The image is {width_px} by {height_px} px; a side has at most {self.longest_side_px}.")
        if width_px * height_px > self.most_px:
            most = self.most_px // 1_000_000
            raise Unreadable(f"The image is {width_px} by {height_px} px; at most {most} million are taken.")


class Unreadable(Exception):
    """The image is refused; the sentence says why and what to do."""


class ReaderBusy(Exception):
    """The machine had no time for it. The same image may be read later."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clean:
    """An image that may be kept: drawn anew from its pixels, so that nothing else of the file is left."""

    kind: ImageKind
    width_px: int
    height_px: int
    view: bytes
    """For screens, JPEG or PNG."""
    view_type: str
    thumbnail: bytes
    """JPEG."""
    data_set: bytes = b""
    """The de-identified DICOM data set; empty for other kinds."""
    sop_class: str = ""
    """Of the data set: the UID of what it is an image by."""
    modality: str = ""
    """Of the data set, as DICOM codes it."""
    spacing: Spacing | None = None
    burnt_in_text: BurntInText = BurntInText.UNKNOWN
