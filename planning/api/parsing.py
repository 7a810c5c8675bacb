"""JSON from outside, within bounds: not too long, not too deep, nothing said twice, no number that JSON has not."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import IO, Any, NoReturn

from rest_framework import status
from rest_framework.exceptions import APIException, ParseError
from rest_framework.parsers import JSONParser

MOST_BYTES = 500_000  # ten times a plan of eight canals with all their readings


class BodyTooLong(APIException):
    status_code = status.HTTP_413_REQUEST_ENTITY_TOO_LARGE
    default_code = "body-too-long"
    default_detail = f"The body is longer than {MOST_BYTES} bytes."


class BoundedJSONParser(JSONParser):
    """Reads JSON (RFC 8259) in UTF-8. Raises BodyTooLong, and ParseError for what is none or could be read two ways."""

    def parse(
        self,
        stream: IO[Any],
        media_type: str | None = None,
        parser_context: Mapping[str, Any] | None = None,
    ) -> Any:
        # One byte more than is taken tells that there is more, without reading all of it.
        body = stream.read(MOST_BYTES + 1)
        if len(body) > MOST_BYTES:
            raise BodyTooLong
        try:
            return json.loads(body.decode("utf-8"), parse_constant=_refuse_constant, object_pairs_hook=_object)
        except RecursionError:
            raise ParseError("The JSON is nested too deeply.") from None
        except ValueError as wrong:  # no UTF-8, no JSON, or a number with thousands of digits
            raise ParseError(f"The body is no JSON: {wrong}.") from None


def _refuse_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is no number in JSON")


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    # Readers of JSON differ on which of two equal keys counts, so neither does.
    read = dict(pairs)
    if len(read) < len(pairs):
        seen: set[str] = set()
        for key, _ in pairs:
            if key in seen:
                raise ValueError(f"'{key[:40]}' is there twice in one object")
            seen.add(key)
    return read
