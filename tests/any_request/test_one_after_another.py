"""Requests one after another, each about what the ones before made or showed: the judge's stateful phase."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from django.db import transaction
from hypothesis import HealthCheck, settings
from hypothesis.stateful import run_state_machine_as_test
from schemathesis import checks
from schemathesis.core.parameters import ParameterLocation

from tests.any_request.askers import ASKERS, Asker, one_connection
from tests.any_request.judge import is_wrong, judged, records
from tests.draws import draws

COURSES = draws(60, share=20)  # of each asker
STEPS = 12
IN_TURN = (checks.use_after_free, checks.ensure_resource_availability)
Machine: Any = records.as_state_machine()


@pytest.mark.parametrize("name", ASKERS)
def test_one_after_another(name: str, things: Mapping[str, str], askers: Mapping[str, Asker]) -> None:
    class Course(Machine):  # type: ignore[misc]
        def setup(self) -> None:
            self.begin = transaction.savepoint()
            self.shown = ""

        def teardown(self) -> None:
            transaction.savepoint_rollback(self.begin)
            super().teardown()

        def before_call(self, case: Any) -> None:
            """What nobody was shown is drawn at random, and is replaced by what is there."""
            if not is_wrong(case, ParameterLocation.PATH):
                drawn = case.path_parameters or {}
                case.path_parameters = {
                    name: value if str(value) in self.shown else things[name] for name, value in drawn.items()
                }
            if not is_wrong(case, ParameterLocation.QUERY):
                (case.query or {}).pop("fields", None)
            askers[name].put_into(case)

        def call(self, case: Any, **kwargs: Any) -> Any:
            with one_connection():
                return super().call(case, **kwargs)

        def after_call(self, response: Any, case: Any) -> None:
            super().after_call(response, case)
            self.shown += response.content.decode(errors="replace")

        def validate_response(self, response: Any, case: Any, additional_checks: Any = None, **_: Any) -> None:
            case.validate_response(response, checks=[*judged(case), *IN_TURN], recorder=self.recorder)

    how = settings(
        max_examples=COURSES, stateful_step_count=STEPS, deadline=None, suppress_health_check=list(HealthCheck)
    )
    run_state_machine_as_test(Course, settings=how)
