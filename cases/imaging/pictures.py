"""Pictures of a camera or a scanner. What is kept is drawn anew from the pixels: place, device, words, profiles and
whatever was put behind or beside them stay out."""

from __future__ import annotations

from contextlib import suppress
from io import BytesIO
from typing import Any

import numpy as np
import numpy.typing as npt
import pillow_heif
from PIL import Image, ImageOps

from cases.domain.images import ImageKind
from cases.imaging import webp_size
from cases.imaging.value import Clean, Limits, Unreadable

# The reader's own limit only warns; ours refuses before anything is decoded.
Image.MAX_IMAGE_PIXELS = None
pillow_heif.register_heif_opener(thumbnails=False)

Bytes = npt.NDArray[np.uint8]
FORMATS = {
    ImageKind.JPEG: "JPEG",
    ImageKind.PNG: "PNG",
    ImageKind.WEBP: "WEBP",
    ImageKind.TIFF: "TIFF",
    ImageKind.HEIC: "HEIF",
}
# These are lossy already; the others keep every pixel.
LOSSY = frozenset({ImageKind.JPEG, ImageKind.WEBP, ImageKind.HEIC})
# A phone puts a depth map or a smaller copy behind the picture: the first one is it.
FIRST_IS_IT = frozenset({ImageKind.JPEG, ImageKind.HEIC})
QUALITY = 95
THUMBNAIL_PX = 360  # two of them side by side on a phone with a fine screen
THUMBNAIL_QUALITY = 80
DEEP = ("I", "F", "I;16", "I;16B", "I;16L", "I;16N")
GREY = ("1", "L", "LA", "La")


def clean(data: bytes, kind: ImageKind, limits: Limits) -> Clean:
    """The picture, upright, without anything beside its pixels. Raises Unreadable."""
    if kind is ImageKind.WEBP and (size := webp_size.size_px(data)):
        limits.refuse_size(*size)
    with Image.open(BytesIO(data), formats=[FORMATS[kind]]) as opened:
        limits.refuse_size(*opened.size)
        if kind not in FIRST_IS_IT and getattr(opened, "n_frames", 1) > 1:
            raise Unreadable("The file holds several images. Send one at a time.")
        opened.load()
        picture = flattened(_upright(opened))
    view, view_type = _jpeg(picture, QUALITY) if kind in LOSSY else png(picture)
    return Clean(
        kind=kind,
        width_px=picture.width,
        height_px=picture.height,
        view=view,
        view_type=view_type,
        thumbnail=thumbnail(picture),
    )


def _upright(picture: Image.Image) -> Image.Image:
    # A file with broken notes on how it was held is shown as it lies.
    with suppress(Exception):
        return ImageOps.exif_transpose(picture)
    return picture


def flattened(picture: Image.Image) -> Image.Image:
    """Grey or colour with eight bits, and nothing in it but pixels."""
    if picture.mode in DEEP:
        return Image.fromarray(eight_bits(np.asarray(picture)))
    flat = picture.convert("L" if picture.mode in GREY else "RGB")
    flat.info = {}
    return flat


def eight_bits(values: npt.NDArray[Any]) -> Bytes:
    """Stretched from darkest to lightest over 0 to 255; an even image is black."""
    wide = values.astype(np.float64)
    if not np.isfinite(wide).all():
        raise Unreadable("The image has values that are no numbers.")
    darkest, lightest = wide.min(), wide.max()
    if lightest == darkest:
        return np.zeros(values.shape, dtype=np.uint8)
    stretched: Bytes = np.rint((wide - darkest) * (255 / (lightest - darkest))).astype(np.uint8)
    return stretched


def eight_bits_of_colour(values: npt.NDArray[Any]) -> Bytes:
    """The upper eight bits of each colour."""
    upper: Bytes = (values >> 8 * (values.dtype.itemsize - 1)).astype(np.uint8)
    return upper


def thumbnail(picture: Image.Image) -> bytes:
    small = picture.copy()
    small.thumbnail((THUMBNAIL_PX, THUMBNAIL_PX))
    return _jpeg(small, THUMBNAIL_QUALITY)[0]


def png(picture: Image.Image) -> tuple[bytes, str]:
    out = BytesIO()
    picture.save(out, "PNG")
    return out.getvalue(), "image/png"


def _jpeg(picture: Image.Image, quality: int) -> tuple[bytes, str]:
    out = BytesIO()
    picture.save(out, "JPEG", quality=quality)
    return out.getvalue(), "image/jpeg"
