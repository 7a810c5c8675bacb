"""What is refused below FHIR's addresses, in FHIR's words: a problem of the API (RFC 9457) as an OperationOutcome."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.http import HttpResponse, JsonResponse

from cases.api import problems
from cases.exports.fhir.bundles import MEDIA_TYPE, operation_outcome

PREFIX = "/api/fhir/"


def outcome_of(problem: Mapping[str, Any]) -> dict[str, Any]:
    """The refusal as a resource: what is wrong, then each place of it."""
    places = [f"{error['pointer'].removeprefix('#/')}: {error['detail']}" for error in problem["errors"]]
    return operation_outcome(problem["status"], problem["type"], problem["detail"], places)


def answer_of(problem: HttpResponse) -> HttpResponse:
    """The same answer as a resource."""
    data = outcome_of(problems.data_of(problem))
    return JsonResponse(data, status=problem.status_code, content_type=MEDIA_TYPE)
