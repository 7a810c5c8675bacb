"""JSON from outside, within bounds: not too long, not too deep."""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO
from typing import IO, Any

from rest_framework import status
from rest_framework.exceptions import APIException, ParseError
from rest_framework.parsers import JSONParser

MOST_BYTES = 500_000  # ten times a plan of eight canals with all their readings


class BodyTooLong(APIException):
    status_code = status.HTTP_413_REQUEST_ENTITY_TOO_LARGE
    default_code = "body-too-long"
    default_detail = f"The body is longer than {MOST_BYTES} bytes."


class BoundedJSONParser(JSONParser):
    """Reads JSON. Raises BodyTooLong, and ParseError for what is no JSON or is nested beyond reading."""

    def parse(
        self,
        stream: IO[Any],
        media_type: str | None = None,
        parser_context: Mapping[str, Any] | None = None,
    ) -> Any:
        body = stream.read(MOST_BYTES + 1)
        if len(body) > MOST_BYTES:
            raise BodyTooLong
        try:
            return super().parse(BytesIO(body), media_type, dict(parser_context or {}))
        except RecursionError:
            raise ParseError("The JSON is nested too deeply.") from None
        except ParseError as wrong:
            where = str(wrong.detail).removeprefix("JSON parse error - ")
            raise ParseError(f"The body is no JSON. {where}.") from None
