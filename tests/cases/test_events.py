"""Every kind of event is told whole: an event that is added in one place only fails here.

That the phone knows it too is held by `tests/frontend/course.test.ts` and `who-tells.test.ts`.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import get_args, get_type_hints

from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import EventPayload
from cases.domain.events.registry import EVENTS
from cases.domain.record.sentences import sentence

SHARED = Path(__file__).parents[1] / "shared"


def test_every_kind_has_its_row_and_every_payload_that_is_read_its_kind() -> None:
    assert set(EVENTS) == set(EventKind)
    assert {rules.payload: kind.value for kind, rules in EVENTS.items()} == {
        payload: _kind_of(payload) for payload in get_args(EventPayload)
    }


def _kind_of(payload: type[EventPayload]) -> str:
    """The one text that tells the payload from all others."""
    (kind,) = get_args(get_type_hints(payload)["kind"])
    return str(kind)


def test_every_payload_has_a_sentence() -> None:
    assert set(sentence.registry) == {object, *get_args(EventPayload)}


def test_every_kind_has_a_teller_row_and_a_worked_case_for_both_sides() -> None:
    tells = json.loads((SHARED / "who-tells.json").read_text(encoding="utf-8"))
    cases = json.loads((SHARED / "courses.json").read_text(encoding="utf-8"))["cases"]
    worked = {event.get("kind", "step") for case in cases for event in case["events"]}
    assert set(tells) == worked == set(EventKind)
