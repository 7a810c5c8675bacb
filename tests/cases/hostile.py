"""Files that mean harm: small ones that unfold to huge ones, two kinds in one, words and scripts where none are looked
for. Each is written by the rules of its format, or by hand where no program would.
"""

from __future__ import annotations

import struct
import zlib
from io import BytesIO

import pillow_heif
from PIL import Image, PngImagePlugin
from pydicom import uid
from pydicom.dataset import Dataset

from tests.cases.pictures import intra_oral, picture, written

SECRET = "<script>alert('Priya')</script>"
HUGE_PX = 20_000
HUGE_BYTES = 3_000_000_000


def heic(width: int = 64, height: int = 48, **more: object) -> bytes:
    pillow_heif.register_heif_opener()
    out = BytesIO()
    with Image.open(BytesIO(picture(width, height))) as opened:
        opened.save(out, "HEIF", **more)
    return out.getvalue()


# --- small files that unfold ---


def chunk(kind: bytes, data: bytes) -> bytes:
    """W3C PNG, 5.3."""
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def zeros(length: int) -> bytes:
    """That many zeros as a raw deflated stream (RFC 1951), quick to make: one block after the other is the same."""
    packer, block = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS), bytes(1_000_000)
    block_packed = packer.compress(block) + packer.flush(zlib.Z_FULL_FLUSH)
    return block_packed * (length // len(block)) + packer.compress(bytes(length % len(block))) + packer.flush()


def packed(length: int) -> bytes:
    """That many zeros in a zlib stream (RFC 1950); the checksum of zeros counts them."""
    return b"\x78\xda" + zeros(length) + struct.pack(">HH", length % 65521, 1)


def png(width: int, height: int, *more: bytes) -> bytes:
    """All of its pixels black."""
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    body = chunk(b"IDAT", packed((width + 1) * height))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + b"".join(more) + body + chunk(b"IEND", b"")


def png_with_huge_words() -> bytes:
    words = packed(HUGE_BYTES)
    return png(8, 8, chunk(b"zTXt", b"Comment\0\0" + words), chunk(b"iCCP", b"profile\0\0" + words))


def tiff_that_unfolds() -> bytes:
    """TIFF 6.0 with one deflated strip, 20,000 by 20,000 px of one byte."""
    strip = packed(HUGE_PX * HUGE_PX)
    tags = [(256, 4, HUGE_PX), (257, 4, HUGE_PX), (258, 3, 8), (259, 3, 8), (262, 3, 1), (273, 4, 8), (277, 3, 1)]
    tags += [(278, 4, HUGE_PX), (279, 4, len(strip))]
    entries = b"".join(struct.pack("<HHII", tag, kind, 1, value) for tag, kind, value in tags)
    return b"II*\0" + struct.pack("<I", 8 + len(strip)) + strip + struct.pack("<H", len(tags)) + entries + bytes(4)


def webp(width: int, height: int) -> bytes:
    """One colour without loss, by hand (RFC 9649, 3): each of the five codes has one symbol, so that no pixel takes a
    bit, however many there are.
    """
    one_symbol_each = struct.pack("<I", 0x88888)[:3]
    bits = b"\x2f" + struct.pack("<I", (width - 1) | (height - 1) << 14) + one_symbol_each
    body = b"WEBPVP8L" + struct.pack("<I", len(bits)) + bits
    return b"RIFF" + struct.pack("<I", len(body)) + body


def jpeg_that_promises() -> bytes:
    """The size in its head (T.81, B.2.2) is another than that of its pixels."""
    sent = bytearray(picture(64, 48, "JPEG"))
    at = sent.index(b"\xff\xc0") + 5
    sent[at : at + 4] = struct.pack(">HH", HUGE_PX, HUGE_PX)
    return bytes(sent)


def heic_that_promises() -> bytes:
    """The size of the picture stands in its `ispe` (ISO 23008-12, 6.5.3)."""
    size = b"ispe" + bytes(4)
    return heic(400, 300).replace(size + struct.pack(">II", 400, 300), size + struct.pack(">II", HUGE_PX, HUGE_PX))


def dicom_that_promises() -> bytes:
    return written(intra_oral(Rows=HUGE_PX, Columns=HUGE_PX))


def dicom_with_zeros(length: int) -> bytes:
    """PS3.5, A.5: the whole data set is deflated. Behind the pixels is a private element of so many zeros."""
    whole = written(deflated())
    # PS3.10, 7.1: preamble, mark, and the length of the rest of the head.
    head_bytes = 128 + 4 + 12 + int(struct.unpack("<I", whole[140:144])[0])
    packer = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    unpacked = zlib.decompress(whole[head_bytes:], -zlib.MAX_WBITS)
    unpacked += struct.pack("<HH2sHI", 0x7FE1, 0x1010, b"OB", 0, length)
    return whole[:head_bytes] + packer.compress(unpacked) + packer.flush(zlib.Z_FULL_FLUSH) + zeros(length)


def deflated() -> Dataset:
    data_set = intra_oral()
    data_set.file_meta.TransferSyntaxUID = uid.DeflatedExplicitVRLittleEndian
    return data_set


UNFOLDING = {
    "png": lambda: png(HUGE_PX, HUGE_PX),
    "png's words": png_with_huge_words,
    "tiff": tiff_that_unfolds,
    "webp": lambda: webp(16_383, 16_383),
    "jpeg": jpeg_that_promises,
    "heic": heic_that_promises,
    "dicom": dicom_that_promises,
    "deflated dicom": lambda: dicom_with_zeros(HUGE_BYTES),
}


# --- two kinds in one, and words ---

ZIP = b"PK\x03\x04" + SECRET.encode() + b"PK\x05\x06" + bytes(18)
PDF = b"%PDF-1.7\n1 0 obj<</OpenAction<</S/JavaScript/JS(" + SECRET.encode() + b")>>>>endobj\ntrailer<<>>\n%%EOF"
HTML = b"<html>" + SECRET.encode() + b"</html>"


def exif() -> Image.Exif:
    tags = Image.Exif()
    tags[0x010E] = SECRET  # description
    tags[0x013B] = SECRET  # artist
    tags.get_ifd(0x8825)[29] = SECRET  # GPS
    return tags


def png_of_words() -> bytes:
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", SECRET)
    words.add_text(SECRET, "zipped", zip=True)
    words.add_itxt("XML:com.adobe.xmp", SECRET)
    return picture(form="PNG", pnginfo=words, exif=exif(), icc_profile=SECRET.encode())


def dicom_of_words() -> bytes:
    data_set = intra_oral(
        PatientName=SECRET, ImageComments=SECRET, DerivationDescription=SECRET, PixelSpacing=[0.02, 0.02]
    )
    data_set.PixelSpacingCalibrationDescription = SECRET
    own = data_set.private_block(0x0011, SECRET, create=True)
    own.add_new(1, "LT", SECRET)
    own.add_new(2, "OB", SECRET.encode())
    data_set.preamble = HTML.ljust(128)
    return written(data_set) + ZIP


CARRYING = {
    "html behind a png": lambda: picture(form="PNG") + HTML,
    "words in a png": png_of_words,
    "zip behind a jpeg": lambda: picture(form="JPEG") + ZIP,
    "pdf in a jpeg": lambda: picture(form="JPEG", comment=PDF, exif=exif(), xmp=SECRET.encode()) + PDF,
    "words in a webp": lambda: picture(form="WEBP", exif=exif(), xmp=SECRET.encode()) + HTML,
    "words in a tiff": lambda: picture(form="TIFF", exif=exif(), description=SECRET) + ZIP,
    "words in a heic": lambda: heic(exif=exif().tobytes(), xmp=SECRET.encode()) + ZIP,
    "words in a dicom": dicom_of_words,
}
NO_PICTURE = {
    "jpeg in a pdf": lambda: PDF + picture(form="JPEG"),
    "png in html": lambda: HTML + picture(form="PNG"),
    "zip": lambda: ZIP + picture(form="PNG"),
    "svg": lambda: f"<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg'>{SECRET}</svg>".encode(),
    "svg that starts like a tiff": lambda: b"MM\0*" + f"<svg>{SECRET}</svg>".encode(),
}
WHOLE = {
    "jpeg": lambda: picture(400, 300, "JPEG"),
    "png": lambda: picture(400, 300, "PNG"),
    "webp": lambda: picture(400, 300, "WEBP"),
    "tiff": lambda: picture(400, 300, "TIFF"),
    "heic": lambda: heic(400, 300),
    "dicom": lambda: written(intra_oral()),
    "deflated dicom": lambda: written(deflated()),
}
