"""Pictures of a camera or a scanner. What is kept is drawn anew from the pixels: place, device, words, profiles and
whatever was put behind or beside them stay out."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from io import BytesIO
from typing import Any

import numpy as np
import numpy.typing as npt
from PIL import Image, ImageOps

from cases.domain.images import ImageKind
from cases.imaging import webp_size
from cases.imaging.faults import CUT_OFF
from cases.imaging.kinds import reads_heic
from cases.imaging.value import Clean, Limits, Unreadable

# The reader's own limit only warns; ours refuses before anything is decoded.
Image.MAX_IMAGE_PIXELS = None
if reads_heic():
    import pillow_heif

    pillow_heif.register_heif_opener(thumbnails=False)
# What it would load when first asked for: by then the reader opens no file.
Image.init()

Bytes = npt.NDArray[np.uint8]
Values = npt.NDArray[Any]
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
# Of the pixels at either end: single ones that are dead or hot made all others grey. Common practice, no source.
LEFT_OUT = 0.005
AT_A_TIME_PX = 1_000_000


def clean(data: bytes, kind: ImageKind, limits: Limits) -> Clean:
    """The picture, upright, without anything beside its pixels. Raises Unreadable."""
    if kind is ImageKind.WEBP:
        if size := webp_size.size_px(data):
            limits.refuse_size(*size)
        if len(data) < webp_size.length_bytes(data):
            raise Unreadable(CUT_OFF)
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
    # Profiles, notes and places travel in here and would be written again.
    flat.info = {}
    return flat


def eight_bits(values: Values) -> Bytes:
    """Stretched from dark to light over 0 to 255, the few darkest and lightest left out; an even image is black."""
    if values.dtype.kind in "iu" and values.dtype.itemsize <= 2:
        return by_level(values, lambda levels: levels)
    if not all(np.isfinite(rows).all() for rows in _by_rows(values)):
        raise Unreadable("The image has values that are no numbers. Export it again as JPEG or PNG.")
    every = np.sort(values, axis=None)
    out = int(len(every) * LEFT_OUT)
    ends = float(every[out]), float(every[-1 - out])
    # What is left is all of one grey: then the few left out are the picture.
    if ends[0] == ends[1]:
        ends = float(every[0]), float(every[-1])
    # It takes as much memory as the picture, and the bound on memory holds for what follows too.
    del every
    return np.concatenate([_stretched(rows, *ends) for rows in _by_rows(values)])


def by_level(values: Values, shown_as: Callable[[Values], Values], left_out: float = LEFT_OUT) -> Bytes:
    """As `eight_bits`, for integers of at most 16 bits. `shown_as` says what each value is shown as; it is asked once
    for each value that there can be, and not for each pixel.
    """
    darkest, lightest = int(values.min()), int(values.max())
    many = np.zeros(lightest - darkest + 1, dtype=np.int64)
    for rows in _by_rows(values):
        many += np.bincount(rows.ravel().astype(np.int64) - darkest, minlength=len(many))
    shown = np.asarray(shown_as(np.arange(darkest, lightest + 1).astype(values.dtype)), dtype=np.float64)
    if not np.isfinite(shown).all():
        raise Unreadable("The image says it is shown by values that are no numbers. Export it again without a window.")
    order = np.argsort(shown, kind="stable")
    # A value that no pixel has is neither the darkest nor the lightest.
    order = order[many[order] > 0]
    so_far = np.cumsum(many[order])
    out = int(values.size * left_out)
    low = shown[order[np.searchsorted(so_far, out, side="right")]]
    high = shown[order[np.searchsorted(so_far, values.size - 1 - out, side="right")]]
    if low == high:
        low, high = shown[order[0]], shown[order[-1]]
    table = _stretched(shown, low, high)
    return np.concatenate([table[rows.astype(np.int64) - darkest] for rows in _by_rows(values)])


def _stretched(values: Values, low: float, high: float) -> Bytes:
    if high == low:
        return np.zeros(values.shape, dtype=np.uint8)
    wide = values.astype(np.float64)
    stretched: Bytes = np.rint(np.clip((wide - low) * (255 / (high - low)), 0, 255)).astype(np.uint8)
    return stretched


def _by_rows(values: Values) -> Iterator[Values]:
    """A few rows at a time: what is reckoned on the way takes eight times the memory of the pixels."""
    rows = max(1, AT_A_TIME_PX // values.shape[1])
    return (values[first : first + rows] for first in range(0, len(values), rows))


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
