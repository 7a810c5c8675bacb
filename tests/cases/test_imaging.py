"""Images from outside are read by their content, drawn anew, and refused in words; hostile ones harm nobody."""

from __future__ import annotations

import re
import struct
import subprocess
import sys
import time
import zlib
from dataclasses import asdict, replace
from io import BytesIO

import numpy as np
import pillow_heif
import pytest
from PIL import Image, PngImagePlugin, UnidentifiedImageError

from cases.domain.images import DataSetUids, ImageKind
from cases.imaging import kinds
from cases.imaging.faults import sentence_for
from cases.imaging.reading import read
from cases.imaging.value import Limits, ReaderBusy, Unreadable
from tests.cases.pictures import picture

UIDS = DataSetUids(study="2.25.1", series="2.25.2", instance="2.25.3")
LIMITS = Limits(
    most_px=50_000_000,
    longest_side_px=12_000,
    computing_seconds=10,
    clock_seconds=15,
    memory_bytes=1_000_000_000,
)
SECRET = b"Priya at 51.5072 N, 0.1276 W"


def pixels(data: bytes) -> Image.Image:
    with Image.open(BytesIO(data)) as opened:
        opened.load()
        return opened


def heic() -> bytes:
    out = BytesIO()
    pillow_heif.register_heif_opener()
    pixels(picture(64, 48)).save(out, "HEIF")
    return out.getvalue()


# --- kinds ---


@pytest.mark.parametrize("form", ["PNG", "TIFF"])
def test_what_is_not_lossy_keeps_every_pixel(form: str) -> None:
    sent = picture(40, 30, form)
    clean = read(sent, LIMITS, UIDS)
    assert (clean.kind, clean.width_px, clean.height_px) == (ImageKind[form], 40, 30)
    assert pixels(clean.view).tobytes() == pixels(sent).tobytes()


@pytest.mark.parametrize(
    ("sent", "kind"),
    [(picture(64, 48, "JPEG"), ImageKind.JPEG), (picture(64, 48, "WEBP"), ImageKind.WEBP), (heic(), ImageKind.HEIC)],
    ids=["jpeg", "webp", "heic"],
)
def test_what_is_lossy_already_looks_the_same(sent: bytes, kind: ImageKind) -> None:
    clean = read(sent, LIMITS, UIDS)
    assert (clean.kind, clean.view_type, clean.width_px) == (kind, "image/jpeg", 64)
    kept, shown = np.asarray(pixels(clean.view), dtype=int), np.asarray(pixels(sent).convert("RGB"), dtype=int)
    # JPEG at this quality: a few steps of 255, common practice, no source.
    assert np.abs(kept - shown).mean() < 3


def test_a_thumbnail_is_small_and_whole() -> None:
    small = pixels(read(picture(2000, 1000), LIMITS, UIDS).thumbnail)
    assert small.size == (360, 180)


def test_sixteen_bits_are_stretched_over_eight() -> None:
    out = BytesIO()
    Image.fromarray(np.array([[1000, 2000], [3000, 5000]], dtype=np.uint16)).save(out, "PNG")
    # (v - 1000) / 4000 * 255 by hand: 0, 63.75, 127.5, 255; halves to the even number.
    assert list(pixels(read(out.getvalue(), LIMITS, UIDS).view).tobytes()) == [0, 64, 128, 255]


def sixteen_bits(values: np.ndarray) -> bytes:
    out = BytesIO()
    Image.fromarray(values.astype(np.uint16)).save(out, "PNG")
    return out.getvalue()


def test_a_hot_and_a_dead_pixel_do_not_make_the_others_grey() -> None:
    """Values 20,000 to 20,999 in 1,000 pixels, and one pixel far off at either end. The darkest and lightest 0.5 % are
    left out, by hand: five of 1,002 at each end, so 20,004 is black and 20,995 white.
    """
    values = np.array([0, *range(20_000, 21_000), 65_535]).reshape(2, 501)
    shown = list(pixels(read(sixteen_bits(values), LIMITS, UIDS).view).tobytes())
    assert (shown[0], shown[5], shown[-6], shown[-1]) == (0, 0, 255, 255)
    assert shown[501] == round((20_500 - 20_004) / 991 * 255)


def test_a_mark_smaller_than_what_is_left_out_is_still_seen() -> None:
    values = np.full((40, 30), 7)
    values[3, 4] = 9
    shown = np.asarray(pixels(read(sixteen_bits(values), LIMITS, UIDS).view))
    assert (shown[3, 4], int(shown.sum())) == (255, 255)


def test_numbers_of_more_bits_are_stretched_alike() -> None:
    """TIFF of 32 bits, the values those of the hot and the dead pixel."""
    values = np.array([-9e9, *range(20_000, 21_000), 9e9]).reshape(2, 501)
    out = BytesIO()
    Image.fromarray(values.astype(np.float32)).save(out, "TIFF")
    shown = list(pixels(read(out.getvalue(), LIMITS, UIDS).view).tobytes())
    assert shown[501] == round((20_500 - 20_004) / 991 * 255)


def test_a_photo_held_upright_is_shown_upright() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # EXIF: the camera was turned a quarter
    clean = read(picture(64, 48, "JPEG", exif=exif), LIMITS, UIDS)
    assert (clean.width_px, clean.height_px) == (48, 64)
    assert pixels(clean.view).getexif() == {}


# --- nothing but pixels is kept ---


def told_everywhere(form: str) -> bytes:
    """A picture with the secret in every place that the format has for words."""
    exif = Image.Exif()
    exif[0x010E] = SECRET.decode()  # description
    exif.get_ifd(0x8825)[29] = SECRET.decode()  # GPS
    if form == "PNG":
        words = PngImagePlugin.PngInfo()
        words.add_text("Author", SECRET.decode())
        words.add_itxt("XML:com.adobe.xmp", SECRET.decode())
        return picture(40, 30, form, exif=exif, pnginfo=words, icc_profile=SECRET)
    if form == "JPEG":
        return picture(40, 30, form, exif=exif, comment=SECRET, icc_profile=SECRET, xmp=SECRET)
    if form == "WEBP":
        return picture(40, 30, form, exif=exif, xmp=SECRET, icc_profile=SECRET)
    return picture(40, 30, form, exif=exif, description=SECRET.decode(), icc_profile=SECRET)


@pytest.mark.parametrize("form", ["PNG", "JPEG", "WEBP", "TIFF"])
@pytest.mark.parametrize("behind", [b"", b"PK\x03\x04" + SECRET, b"<script>" + SECRET], ids=["", "archive", "script"])
def test_place_device_words_and_what_hides_behind_are_gone(form: str, behind: bytes) -> None:
    sent = told_everywhere(form) + behind
    assert SECRET in sent
    clean = read(sent, LIMITS, UIDS)
    for kept in (clean.view, clean.thumbnail):
        assert SECRET not in kept
        assert {*pixels(kept).info} <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


# --- refused ---


def png_of(width: int, height: int) -> bytes:
    """A PNG whose head promises that size, written by hand (W3C PNG, 5.3), with all of its pixels black."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    packer = zlib.compressobj(9)
    row = bytes(width + 1)
    packed = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", packed) + chunk(b"IEND", b"")


def refused(data: bytes, limits: Limits = LIMITS) -> str:
    with pytest.raises(Unreadable) as why:
        read(data, limits, UIDS)
    return str(why.value)


def test_a_huge_image_in_a_small_file_is_refused_before_it_is_unfolded() -> None:
    bomb = png_of(20_000, 20_000)
    assert len(bomb) < 1_000_000  # 400 million pixels
    began = time.process_time()
    assert refused(bomb) == "The image is 20000 by 20000 px; a side has at most 12000."
    assert time.process_time() - began < 1
    assert refused(png_of(9_000, 9_000)) == "The image is 9000 by 9000 px; at most 50 million are taken."


@pytest.mark.parametrize("form", ["PNG", "JPEG", "TIFF", "WEBP"])
def test_a_truncated_file_is_refused(form: str) -> None:
    sent = picture(400, 300, form)
    assert refused(sent[: len(sent) // 2]).startswith("The file is damaged: it ends before")


@pytest.mark.parametrize(
    ("error", "says"),
    [
        (OSError("image file is truncated (3 bytes not processed)"), "ends before the picture does"),
        (EOFError(), "ends before the picture does"),
        (UnidentifiedImageError("cannot identify"), "says nothing of a picture"),
        (NotImplementedError("depth of 12"), "of a form that is not read"),
        (MemoryError(), "more memory"),
        (ValueError(SECRET.decode()), "could not be read to its end"),
    ],
    ids=lambda value: type(value).__name__,
)
def test_each_fault_has_a_sentence_of_its_own(error: Exception, says: str) -> None:
    """And each says what to do; of what a decoder said nothing is told."""
    sentence = sentence_for(error)
    assert says in sentence
    assert re.search(r"\. (Send|Export) .*\.$", sentence)
    assert SECRET.decode() not in sentence


@pytest.mark.parametrize(
    "sent",
    [
        b"",
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        b"%PDF-1.7",
        b"GIF89a" + bytes(100),
        b"<!doctype html><script>alert(1)</script>",
        b"PK\x03\x04" + bytes(200),
    ],
    ids=["nothing", "svg", "pdf", "gif", "html", "archive"],
)
def test_what_is_no_picture_is_refused_by_its_content(sent: bytes) -> None:
    assert refused(sent) == "This is no image that can be kept here. Send JPEG, PNG, WebP, TIFF, HEIC or DICOM."


def test_without_its_extra_heic_is_refused_with_what_to_do(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kinds, "find_spec", lambda name: None)  # as where it was never installed
    assert refused(heic()) == (
        "This server does not read HEIC. Send the image as JPEG: set the phone's camera to the most compatible format, "
        "or export the image as JPEG."
    )
    assert refused(b"%PDF-1.7") == "This is no image that can be kept here. Send JPEG, PNG, WebP, TIFF or DICOM."


def test_without_that_extra_the_other_kinds_are_read() -> None:
    """In a process in which its package cannot be imported."""
    reads = (
        "import sys; sys.modules['pillow_heif'] = None\n"
        "from cases.domain.images import DataSetUids, ImageKind; from cases.imaging import pictures\n"
        "from cases.imaging.value import Limits\n"
        f"clean = pictures.clean(sys.stdin.buffer.read(), ImageKind.PNG, Limits(**{asdict(LIMITS)}))\n"
        "print(clean.width_px, clean.height_px)"
    )
    done = subprocess.run([sys.executable, "-c", reads], input=picture(40, 30), capture_output=True, check=False)
    assert (done.stdout, done.stderr) == (b"40 30\n", b"")


def test_a_file_of_two_kinds_is_refused() -> None:
    sent = bytearray(picture(200, 200))
    sent[128:132] = b"DICM"
    assert "two kinds" in refused(bytes(sent))


def test_several_pages_are_refused() -> None:
    pages = [Image.new("L", (8, 8), grey) for grey in (0, 200)]
    out = BytesIO()
    pages[0].save(out, "TIFF", save_all=True, append_images=pages[1:])
    assert refused(out.getvalue()) == "The file holds several images. Send one at a time."


# --- the reader's bounds ---


def test_a_reader_that_runs_out_of_memory_says_so_and_nothing_else_is_touched() -> None:
    little = replace(LIMITS, memory_bytes=150_000_000)
    assert "memory" in refused(png_of(7_000, 7_000), little)


def test_a_reader_that_falls_over_is_a_refusal(monkeypatch: pytest.MonkeyPatch) -> None:
    """What a decoder in C does that steps outside its memory: the process dies by a signal."""
    _instead(monkeypatch, "import os, signal; os.kill(os.getpid(), signal.SIGSEGV)")
    assert "fell over it" in refused(picture())


def test_an_installation_without_decoders_is_not_blamed_on_the_image(monkeypatch: pytest.MonkeyPatch) -> None:
    _instead(monkeypatch, "import a_decoder_that_is_not_there")
    with pytest.raises(RuntimeError, match="a_decoder_that_is_not_there"):
        read(picture(), LIMITS, UIDS)


def test_a_reader_that_the_machine_ended_did_not_fail_by_its_image(monkeypatch: pytest.MonkeyPatch) -> None:
    """What a system does that has no memory left."""
    _instead(monkeypatch, "import os, signal; os.kill(os.getpid(), signal.SIGKILL)")
    with pytest.raises(ReaderBusy):
        read(picture(), LIMITS, UIDS)


def test_a_reader_that_computes_too_long_is_ended(monkeypatch: pytest.MonkeyPatch) -> None:
    _instead(monkeypatch, f"from cases.imaging.closed_off import *; bound(Limits(**{asdict(SHORT)}))\nwhile True: pass")
    assert "took too long" in refused(picture())


SHORT = replace(LIMITS, computing_seconds=1)


def _instead(monkeypatch: pytest.MonkeyPatch, script: str) -> None:
    real = subprocess.run

    def other(command: list[str], **more: object) -> object:
        return real([sys.executable, "-c", script], **more)  # type: ignore[call-overload]

    monkeypatch.setattr(subprocess, "run", other)
