"""Which kind of image a file is. Its content says so; names and types that came with it are not asked."""

from __future__ import annotations

from importlib.util import find_spec

from cases.domain.images import ImageKind
from cases.imaging.value import Unreadable

PREAMBLE_BYTES = 128  # DICOM PS3.10: anything may stand there, then 'DICM'
HEIC_BRANDS = (b"heic", b"heix", b"heim", b"heis", b"mif1", b"msf1", b"hevc", b"hevx")
STARTS: tuple[tuple[bytes, ImageKind], ...] = (
    (b"\xff\xd8\xff", ImageKind.JPEG),
    (b"\x89PNG\r\n\x1a\n", ImageKind.PNG),
    (b"II*\x00", ImageKind.TIFF),
    (b"MM\x00*", ImageKind.TIFF),
)
NONE_OF_THEM = "This is no image that can be kept here. Send JPEG, PNG, WebP, TIFF{heic} or DICOM."
NO_HEIC = (
    "This server does not read HEIC. Send the image as JPEG: set the phone's camera to the most compatible format, or "
    "export the image as JPEG."
)


def kind_of(data: bytes) -> ImageKind:
    """Raises Unreadable for what is none of the kinds, for what two programs would read as two of them, and for HEIC
    where its decoder, an extra, is not installed.
    """
    kinds: list[ImageKind] = [kind for start, kind in STARTS if data.startswith(start)]
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        kinds.append(ImageKind.WEBP)
    if data[4:8] == b"ftyp" and data[8:12] in HEIC_BRANDS:
        kinds.append(ImageKind.HEIC)
    if data[PREAMBLE_BYTES : PREAMBLE_BYTES + 4] == b"DICM":
        # PS3.10, 7.1 lets the preamble hold the head of a TIFF for programs that know no DICOM: real devices do so.
        kinds = [*(kind for kind in kinds if kind is not ImageKind.TIFF), ImageKind.DICOM]
    if len(kinds) > 1:
        raise Unreadable("The file could be read as two kinds of image. Export it again as one of them.")
    if not kinds:
        raise Unreadable(NONE_OF_THEM.format(heic=", HEIC" if reads_heic() else ""))
    if kinds[0] is ImageKind.HEIC and not reads_heic():
        raise Unreadable(NO_HEIC)
    return kinds[0]


def reads_heic() -> bool:
    return find_spec("pillow_heif") is not None
