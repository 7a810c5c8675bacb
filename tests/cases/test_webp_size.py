"""The size in the head of a WebP image, against what Pillow wrote."""

from __future__ import annotations

from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from cases.imaging.webp_size import size_px


def written(width: int, height: int, mode: str, **more: object) -> bytes:
    into = BytesIO()
    Image.new(mode, (width, height)).save(into, "WEBP", **more)
    return into.getvalue()


@settings(max_examples=30)
@given(
    st.integers(1, 400),
    st.integers(1, 400),
    st.sampled_from([("RGB", {}), ("RGB", {"lossless": True}), ("RGBA", {"exact": True}), ("RGB", {"xmp": b"<x/>"})]),
)
def test_every_kind_of_head(width: int, height: int, how: tuple[str, dict[str, object]]) -> None:
    mode, more = how
    assert size_px(written(width, height, mode, **more)) == (width, height)


def test_the_three_heads_are_all_met() -> None:
    heads = {written(9, 7, "RGB", **more)[12:16] for more in ({}, {"lossless": True}, {"xmp": b"<x/>"})}
    assert heads == {b"VP8 ", b"VP8L", b"VP8X"}


@pytest.mark.parametrize("data", [b"", b"RIFF", b"RIFF____WEBPVP8L" + bytes(20), b"RIFF____WEBPVP9 " + bytes(20)])
def test_no_head_no_size(data: bytes) -> None:
    assert size_px(data) is None
