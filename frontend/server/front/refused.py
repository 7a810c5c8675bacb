"""A refusal of the door in the words of who asks: FHIR's programs read resources, a launch from a course opens in a
window, and everybody else reads problem details."""

from __future__ import annotations

import json
from http import HTTPStatus

from django.template.loader import render_to_string

from cases.api import problems
from cases.api.fhir import outcomes
from cases.exports.fhir.bundles import MEDIA_TYPE

PAGES = "/lti/"
# The page has nothing but its style, and is shown in no frame.
PAGE_POLICY = b"default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"


def refused(path: str, status: HTTPStatus, code: str, says: str) -> tuple[list[tuple[bytes, bytes]], bytes]:
    """Headers and body. `code` is one of `problem_codes`."""
    if path.startswith(PAGES):
        page = render_to_string("lti/refused.html", {"reason": says})
        kind = (b"content-type", b"text/html; charset=utf-8")
        return [kind, (b"content-security-policy", PAGE_POLICY)], page.encode()
    problem = problems.body(status, code, says)
    if path.startswith(outcomes.PREFIX):
        return [(b"content-type", MEDIA_TYPE.encode())], json.dumps(outcomes.outcome_of(problem)).encode()
    return [(b"content-type", problems.MEDIA_TYPE.encode())], json.dumps(problem).encode()
