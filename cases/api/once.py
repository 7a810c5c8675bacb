"""A POST that may be sent again: whoever gives it an `Idempotency-Key` is answered once and shown that answer again
(draft-ietf-httpapi-idempotency-key-header-07)."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from hashlib import file_digest
from typing import Any
from uuid import UUID

from django.core.files.uploadedfile import UploadedFile
from django.http import HttpResponse, QueryDict
from rest_framework.exceptions import ErrorDetail, ValidationError
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.views import APIView

from cases.models.kept_answers import MOST_KEY
from cases.services.common.kept_answers import Answer, answer_once
from planning.foundation.encoding import digest

HEADER = "Idempotency-Key"
# A string of RFC 9651 (3.3.3) without escapes; a bare one is taken too, as many programs send it.
_QUOTED = re.compile(rf'"([ !#-\[\]-~]{{1,{MOST_KEY}}})"')
_BARE = re.compile(rf"([!#-+\--\[\]-~]{{1,{MOST_KEY}}})")


def keyed(view: APIView, handler: Callable[..., Response], asker_id: UUID) -> Callable[..., HttpResponse]:
    """The handler of a request that came with a key. Raises ValidationError, and what `answer_once` does."""

    def handle(request: Request, *args: Any, **kwargs: Any) -> HttpResponse:
        def act() -> Answer:
            try:
                response = handler(request, *args, **kwargs)
            except Exception as error:
                response = view.handle_exception(error)  # raises what nobody foresaw
            shown = view.finalize_response(request, response, *args, **kwargs).render()
            return Answer(status=shown.status_code, headers=dict(shown.items()), body=shown.content.decode())

        answer = answer_once(asker_id=asker_id, key=_key(request), sent_hash=_hash(request), act=act)
        return HttpResponse(answer.body, status=answer.status, headers=dict(answer.headers))

    return handle


def _key(request: Request) -> str:
    text = request.headers[HEADER].strip()
    match = _QUOTED.fullmatch(text) or _BARE.fullmatch(text)
    if match is None:
        says = f"Must be a key of 1 to {MOST_KEY} visible characters of ASCII in quotation marks, such as a new UUID."
        raise ValidationError({HEADER: [ErrorDetail(says, code="not-understood")]})
    return match[1]


def _hash(request: Request) -> str:
    """Of all that makes it the same request."""
    where = {"method": request.method, "address": request.get_full_path(), "if_match": request.headers.get("If-Match")}
    return digest(json.dumps({**where, "body": _content(request.data)}, sort_keys=True))


def _content(data: Any) -> Any:
    """What was sent, as JSON has it: of a form its fields, and of a file its SHA-256."""
    if not isinstance(data, QueryDict):
        return data
    return {name: [_hash_of_file(each) for each in data.getlist(name)] for name in data}


def _hash_of_file(field: Any) -> str:
    if not isinstance(field, UploadedFile):
        return str(field)
    field.seek(0)
    sha256 = file_digest(field, "sha256").hexdigest()
    field.seek(0)
    return sha256
