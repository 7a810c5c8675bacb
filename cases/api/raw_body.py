"""Bodies that are bytes, and what their headers say of them."""

from __future__ import annotations

import base64
import binascii
import re
from collections.abc import Mapping
from typing import IO, Any

from django.conf import settings
from rest_framework.exceptions import ParseError
from rest_framework.parsers import BaseParser
from rest_framework.request import Request

from planning.api.parsing import BodyTooLong

SHA_256 = re.compile(r"(?:^|,)\s*sha-256=:([A-Za-z0-9+/=]+):")


class BytesTooMany(BodyTooLong):
    default_detail = "The image has too many bytes. Send a smaller one, or it in parts."


class BytesParser(BaseParser):
    """Takes the body as it is, whatever it says it is. Raises BytesTooMany."""

    media_type = "*/*"

    def parse(
        self, stream: IO[Any], media_type: str | None = None, parser_context: Mapping[str, Any] | None = None
    ) -> Any:
        # One byte more than is taken tells that there is more, without reading all of it.
        body: bytes = stream.read(settings.IMAGE_MOST_BYTES + 1)
        if len(body) > settings.IMAGE_MOST_BYTES:
            raise BytesTooMany
        return body


def body(request: Request) -> bytes:
    """What was sent; empty where nothing was."""
    data: object = request.data
    return data if isinstance(data, bytes) else b""


def digest(request: Request) -> str | None:
    """The SHA-256 in Repr-Digest (RFC 9530) in hexadecimal; None where there is no such header. Raises ParseError."""
    header = request.headers.get("Repr-Digest")
    if header is None:
        return None
    match = SHA_256.search(header)
    try:
        value = base64.b64decode(match[1], validate=True) if match else b""
    except binascii.Error:
        value = b""
    if len(value) != 32:  # bytes of a SHA-256
        raise ParseError("Repr-Digest must hold the SHA-256 of the whole image: sha-256=:<base64>: (RFC 9530).")
    return value.hex()


def count(request: Request, header: str) -> int:
    """A header that is a number of bytes. Raises ParseError."""
    value = request.headers.get(header, "")
    if not (value.isascii() and value.isdecimal() and len(value) < 12):
        raise ParseError(f"{header} must be a number of bytes.")
    return int(value)
