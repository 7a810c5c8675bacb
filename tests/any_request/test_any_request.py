"""Any request the description allows, and many it does not: never a broken answer, and what is wrong is refused.

Each operation is asked about things that exist (`things`), by its examples, by each limit of its description
(coverage) and by what is drawn (fuzzing). In the gate a request is asked by one of the askers, and of the limits a
share is asked; with DRAWS=whole all are asked by all.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from zlib import crc32

from hypothesis import HealthCheck, settings
from schemathesis.core import NotSet
from schemathesis.core.parameters import ParameterLocation
from schemathesis.generation.meta import TestPhase

from tests.any_request.askers import ASKERS, Asker, one_connection
from tests.any_request.judge import is_wrong, judged, records
from tests.draws import WHOLE, draws

EXAMPLES = draws(20, share=5)  # of each operation
SHARE = 12  # of the limits of an operation the gate asks one in so many


@records.parametrize()
@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_request(case: Any, things: Mapping[str, str], askers: Mapping[str, Asker]) -> None:
    number = _number(case)
    if not WHOLE and case.meta.phase.name is TestPhase.COVERAGE and number // len(ASKERS) % SHARE:
        return
    if not is_wrong(case, ParameterLocation.PATH):
        case.path_parameters = {name: things[name] for name in case.path_parameters or {}}
    if not is_wrong(case, ParameterLocation.QUERY):
        # The whole answer is judged where it may be.
        (case.query or {}).pop("fields", None)
    for name in ASKERS if WHOLE else (ASKERS[number % len(ASKERS)],):
        askers[name].put_into(case)
        with one_connection():
            case.call_and_validate(checks=judged(case))


def _number(case: Any) -> int:
    """One of the request's own: the same request is asked by the same asker, in this run and in the next."""
    body = None if isinstance(case.body, NotSet) else case.body
    drawn = (case.method, case.path_parameters, case.query, dict(case.headers or {}), body)
    return crc32(repr((case.operation.label, drawn)).encode())
