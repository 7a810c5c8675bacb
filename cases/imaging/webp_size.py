"""How large a WebP image is, by its head: its decoder takes the memory for all pixels before it tells their number, and
does not tell that a file ends too early."""

from __future__ import annotations

import struct

MOST_BYTES = 10  # from which any of the three tells its size


def size_px(data: bytes) -> tuple[int, int] | None:
    """Width and height; None where the head says neither. RFC 9649, sections 2.5 to 2.7; RFC 6386, 9.1, with loss."""
    kind, content = data[12:16], data[20 : 20 + MOST_BYTES].ljust(MOST_BYTES, b"\0")
    if kind == b"VP8X":
        width, height = (int.from_bytes(content[at : at + 3], "little") for at in (4, 7))
        return width + 1, height + 1
    if kind == b"VP8L" and content[0] == 0x2F:
        (bits,) = struct.unpack("<I", content[1:5])
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    if kind == b"VP8 " and content[3:6] == b"\x9d\x01\x2a":
        width, height = struct.unpack("<HH", content[6:10])
        return width & 0x3FFF, height & 0x3FFF
    return None


def length_bytes(data: bytes) -> int:
    """Bytes of the whole file, as its head says. RFC 9649, 2.3 and 2.4: it counts what follows the first eight."""
    return 8 + int.from_bytes(data[4:8], "little")
