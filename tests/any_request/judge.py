"""The judge of requests that are drawn: the schemathesis package, reading the description that was agreed to."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import schemathesis
import yaml
from django.core.wsgi import get_wsgi_application
from schemathesis import GenerationMode, checks
from schemathesis.core.parameters import ParameterLocation

from tests.cast import API

# No answer is a fault of the server or another one than is described, and what is described as wrong is refused.
JUDGED = (
    checks.not_a_server_error,
    checks.status_code_conformance,
    checks.content_type_conformance,
    checks.response_schema_conformance,
    checks.negative_data_rejection,
)
schemathesis.serializer.alias("application/partial-upload", "application/octet-stream")
# That the server tells this very description is tested apart (`openapi`); to make it anew takes long.
AGREED = Path(__file__).parents[1] / "architecture" / "openapi.yaml"
schema = schemathesis.openapi.from_dict(yaml.load(AGREED.read_text(encoding="utf-8"), yaml.CSafeLoader))
schema.app = get_wsgi_application()
# 2026-12-01: the judge knows every status by which wrong data is refused but 413 (RFC 9110, 15.5.14), too much of it.
schema.config.checks.negative_data_rejection.expected_statuses.append("413")
# Signing in and out is tested on its own: it would end the session that asks.
records = schema.exclude(path=f"{API}/session")


def is_wrong(case: Any, part: ParameterLocation) -> bool:
    """Whether this part of the request was drawn as the description does not allow it."""
    drawn = case.meta.components.get(part) if case.meta else None
    return drawn is not None and drawn.mode is GenerationMode.NEGATIVE


def judged(case: Any) -> list[Any]:
    """What the answer is judged by. With chosen fields it has these alone: `test_chosen_fields` holds it to them.

    A query drawn as wrong may choose some and be answered: text in place of a list looks alike in an address.
    """
    chosen = "fields" in (case.query or {})
    return [check for check in JUDGED if not (chosen and check is checks.response_schema_conformance)]
