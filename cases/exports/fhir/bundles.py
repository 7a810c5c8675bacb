"""What is answered about resources: lists of them, what was refused, and what a server can do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from cases.exports.fhir.codes import ATTRIBUTION

Json = dict[str, Any]
FHIR_VERSION = "4.0.1"
PUBLISHED = "2026-11-30"
MEDIA_TYPE = "application/fhir+json"
# FHIR's code of an issue, by the status of the answer.
_ISSUES = {
    400: "invalid",
    401: "login",
    403: "forbidden",
    404: "not-found",
    405: "not-supported",
    406: "not-supported",
    408: "timeout",
    412: "conflict",
    413: "too-long",
    429: "throttled",
    503: "transient",
}


def bundle(base: str, resources: Sequence[Json], links: Mapping[str, str]) -> Json:
    """Resources that were asked for, with links by their relations."""
    entries = [
        {"fullUrl": f"{base}/{each['resourceType']}/{each['id']}", "resource": each, "search": {"mode": "match"}}
        for each in resources
    ]
    linked = [{"relation": relation, "url": url} for relation, url in links.items()]
    # FHIR knows no empty list.
    return {"resourceType": "Bundle", "type": "searchset", "link": linked, **({"entry": entries} if entries else {})}


def operation_outcome(status: int, code: str, detail: str, places: Sequence[str]) -> Json:
    """A refusal: what is wrong and what to do, then each thing that is wrong with what was asked."""
    texts = [detail, *places]
    kind = _ISSUES.get(status, "exception" if status >= 500 else "processing")
    issues = [{"severity": "error", "code": kind, "details": {"text": text}, "diagnostics": code} for text in texts]
    return {"resourceType": "OperationOutcome", "issue": issues}


def capability_statement(base: str, version: str, resources: Sequence[Json], *, cors: bool) -> Json:
    """What the server can do; `resources` as the table of types has them."""
    return {
        "resourceType": "CapabilityStatement",
        "url": f"{base}/metadata",
        "status": "active",
        "date": PUBLISHED,
        "kind": "instance",
        "copyright": ATTRIBUTION,
        "software": {"name": "Fourth Canal", "version": version},
        "implementation": {
            "description": "Training cases of root-canal treatment, to read. Patients are aliases; all is test data.",
            "url": base,
        },
        "fhirVersion": FHIR_VERSION,
        "format": [MEDIA_TYPE],
        "rest": [
            {
                "mode": "server",
                "documentation": "Read only, by GET. A name in the query that is not stated here is refused. A page "
                "may hold less than was asked for: go on as long as there is a next link.",
                "security": {
                    "cors": cors,
                    "description": "A session of the app, or an access key (RFC 6750) with the scope cases:read, for "
                    "images also images:read. What the asker may not see is not there.",
                },
                "resource": list(resources),
            }
        ],
    }
