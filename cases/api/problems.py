"""Every error as problem details (RFC 9457). `type` is the address at which `problem_codes` explains the code."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from http import HTTPStatus
from typing import Any

from django.core.exceptions import PermissionDenied, RequestDataTooBig
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from rest_framework import exceptions
from rest_framework.exceptions import ErrorDetail
from rest_framework.renderers import JSONRenderer
from rest_framework.response import Response
from rest_framework.views import exception_handler as usual_handler

from cases.domain.errors import (
    CaseError,
    ChangedSince,
    Conflict,
    HashMissing,
    InvitationRefused,
    KeyRefused,
    NotAllowed,
    NotHere,
    NotUsable,
    SequenceGap,
    SignInRefused,
    TooManyTries,
)
from cases.domain.image_errors import ImageRemoved, OffsetMismatch, ReadingBusy, StoreAway
from planning.api.parsing import BodyTooLong
from planning.foundation.encoding import SENTENCES
from planning.foundation.errors import NotUnderstood, PlanningError, Refusal, TechniqueFileRefused

MEDIA_TYPE = "application/problem+json"
SECONDS_PER_MINUTE = 60
TYPE_PREFIX = "/api/v1/problems/"

STATUS: dict[type[Refusal], HTTPStatus] = {
    NotUnderstood: HTTPStatus.BAD_REQUEST,
    PlanningError: HTTPStatus.UNPROCESSABLE_ENTITY,
    NotHere: HTTPStatus.NOT_FOUND,
    ImageRemoved: HTTPStatus.GONE,
    InvitationRefused: HTTPStatus.GONE,
    NotAllowed: HTTPStatus.FORBIDDEN,
    SignInRefused: HTTPStatus.UNAUTHORIZED,
    KeyRefused: HTTPStatus.UNAUTHORIZED,
    TooManyTries: HTTPStatus.TOO_MANY_REQUESTS,
    NotUsable: HTTPStatus.UNPROCESSABLE_ENTITY,
    StoreAway: HTTPStatus.SERVICE_UNAVAILABLE,
    ReadingBusy: HTTPStatus.SERVICE_UNAVAILABLE,
    Conflict: HTTPStatus.CONFLICT,
    ChangedSince: HTTPStatus.PRECONDITION_FAILED,
    HashMissing: HTTPStatus.PRECONDITION_REQUIRED,
}
# RFC 9110: a 401 says how to sign in, a 503 when to come back, in seconds; a 429 too (RFC 6585).
HEADERS: dict[int, dict[str, str]] = {
    HTTPStatus.UNAUTHORIZED: {"WWW-Authenticate": 'Session realm="fourth-canal"'},
    HTTPStatus.SERVICE_UNAVAILABLE: {"Retry-After": "10"},
}
_SAID: dict[HTTPStatus, tuple[str, str]] = {
    HTTPStatus.BAD_REQUEST: ("not-understood", "The request could not be read."),
    HTTPStatus.FORBIDDEN: ("not-allowed", "That is refused. If you were just signing in, load the page again."),
    HTTPStatus.NOT_FOUND: ("not-found", "There is nothing at this address."),
    HTTPStatus.INTERNAL_SERVER_ERROR: (
        "server-error",
        "Something broke on our side; what was sent may not have been kept. Send it again in a moment.",
    ),
}
_IN_OUR_WORDS = {
    "not-authenticated": "Sign in and go on.",
    "method-not-allowed": "That cannot be done at this address.",
    "unsupported-media-type": "Send JSON, as application/json.",
}
# Of a field, by the framework's codes.
_SAID_ALIKE = {
    "required": "missing",
    "null": "missing",
    "blank": "missing",
    "null_characters_not_allowed": "control-characters",
    "surrogate_characters_not_allowed": "control-characters",
}
OUR_CODES = {
    **_SAID_ALIKE,
    "invalid": "not-understood",
    "invalid_choice": "not-of-these",
    "max_length": "too-long",
    "min_value": "out-of-bounds",
    "max_value": "out-of-bounds",
}


def pointer(path: Iterable[str | int]) -> str:
    """A JSON pointer as a URI fragment (RFC 6901, 6); '#' is the whole."""
    return "#" + "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in path)


def body(
    status: HTTPStatus, code: str, detail: str, errors: list[dict[str, Any]] | None = None, **more: Any
) -> dict[str, Any]:
    """The problem as data."""
    problem = {"type": TYPE_PREFIX + code, "title": status.phrase, "status": status.value, "detail": detail, **more}
    return {**problem, "errors": errors or []}


def handler(error: Exception, context: dict[str, Any]) -> Response | None:
    """The REST framework's hook: what a view raised, as an answer; None for what nobody foresaw."""
    # A problem is JSON, also where the description was asked for as YAML.
    context["request"].accepted_renderer = JSONRenderer()
    context["request"].accepted_media_type = JSONRenderer.media_type
    if isinstance(error, TooManyTries):
        return _answer(_of_case_error(error), {"Retry-After": str(error.fields["minutes"] * SECONDS_PER_MINUTE)})
    if isinstance(error, CaseError):
        return _answer(_of_case_error(error))
    if isinstance(error, PlanningError):
        return _answer(_of_planning_error(error))
    if isinstance(error, RequestDataTooBig):
        error = BodyTooLong()
    elif isinstance(error, Http404):
        error = exceptions.NotFound(_SAID[HTTPStatus.NOT_FOUND][1])
    elif isinstance(error, PermissionDenied):
        error = exceptions.PermissionDenied(_SAID[HTTPStatus.FORBIDDEN][1])
    answer = usual_handler(error, context)
    if answer is None or not isinstance(error, exceptions.APIException):
        return answer
    answer.data = _of_api_error(error, HTTPStatus(answer.status_code))
    answer.content_type = MEDIA_TYPE
    return answer


def _answer(data: dict[str, Any], headers: dict[str, str] | None = None) -> Response:
    sent_headers = headers or HEADERS.get(data["status"])
    return Response(data, status=data["status"], headers=sent_headers, content_type=MEDIA_TYPE)


def status_of(refusal: type[Refusal]) -> HTTPStatus:
    """The status of the first kind in the table that it is of."""
    return next(status for kind, status in STATUS.items() if issubclass(refusal, kind))


def _of_case_error(error: CaseError) -> dict[str, Any]:
    more = {"expected": error.expected} if isinstance(error, SequenceGap | OffsetMismatch) else {}
    errors = [_of_refusal(error)] if error.pointer else []
    return body(status_of(type(error)), error.code, str(error), errors, **more)


def _of_planning_error(error: PlanningError) -> dict[str, Any]:
    if isinstance(error, NotUnderstood):
        errors = [_error(*fault) for fault in error.faults]
    else:
        errors = _by_line(error) if isinstance(error, TechniqueFileRefused) else [_of_refusal(error)]
    return body(status_of(type(error)), error.code, str(error), errors)


def _of_refusal(error: Refusal) -> dict[str, Any]:
    return _error(error.pointer, error.code, str(error))


def _by_line(error: TechniqueFileRefused) -> list[dict[str, Any]]:
    """Every fault points at the text as a whole; its line is beside it."""
    return [
        {**_error(error.pointer, error.code, f"{error.where}, line {line}: {says}"), "line": line}
        for line, _, says in error.faults
    ]


def _of_api_error(error: exceptions.APIException, status: HTTPStatus) -> dict[str, Any]:
    if isinstance(error, exceptions.ValidationError):
        errors = list(_flat(error.detail, ()))
        places = "one place" if len(errors) == 1 else f"{len(errors)} places"
        return body(status, "not-understood", f"What was sent is wrong in {places}.", errors)
    # The framework's own codes have underscores, ours hyphens.
    code = str(getattr(error.detail, "code", error.default_code)).replace("_", "-")
    says = _IN_OUR_WORDS.get(code, str(error.detail))
    # A body that could not be read is wrong as a whole.
    unread = isinstance(error, exceptions.ParseError | BodyTooLong)
    return body(status, code, says, [_error((), code, says)] if unread else None)


def _flat(detail: Any, path: tuple[str | int, ...]) -> Iterable[dict[str, str]]:
    if isinstance(detail, dict):
        for key, value in detail.items():
            yield from _flat(value, path if key == "non_field_errors" else (*path, key))
    elif isinstance(detail, list):
        for number, value in enumerate(detail):
            yield from _flat(value, (*path, number) if isinstance(value, dict | list) else path)
    else:
        own = str(getattr(detail, "code", "invalid"))
        code = OUR_CODES.get(own, own.replace("_", "-"))
        yield _error(path, code, SENTENCES[code] if own in _SAID_ALIKE else str(detail))


def _error(path: tuple[str | int, ...], code: str, detail: str) -> dict[str, str]:
    return {"pointer": pointer(path), "code": code, "detail": detail}


# --- what never reached a view ---


def _plain(status: HTTPStatus) -> JsonResponse:
    code, detail = _SAID[status]
    return _outside(body(status, code, detail))


def _outside(data: dict[str, Any]) -> JsonResponse:
    return JsonResponse(data, status=data["status"], content_type=MEDIA_TYPE)


def query_refused(wrong: Mapping[str, ErrorDetail]) -> HttpResponse:
    """Parameters of an address, by their names, with what is wrong with each."""
    return _outside(_of_api_error(exceptions.ValidationError(wrong), HTTPStatus.BAD_REQUEST))


def data_of(problem: HttpResponse) -> dict[str, Any]:
    """What such an answer says."""
    data: dict[str, Any] = json.loads(problem.content)
    return data


def changed_since() -> HttpResponse:
    """What was read on condition of a state that it is no longer in."""
    return _outside(_of_case_error(ChangedSince(what="This")))


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponse:
    return _plain(HTTPStatus.BAD_REQUEST)


def permission_denied(request: HttpRequest, exception: Exception) -> HttpResponse:
    return _plain(HTTPStatus.FORBIDDEN)


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    return _plain(HTTPStatus.NOT_FOUND)


def server_error(request: HttpRequest) -> HttpResponse:
    return _plain(HTTPStatus.INTERNAL_SERVER_ERROR)
