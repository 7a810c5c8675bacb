"""What a server does before anybody asks."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from django.test import RequestFactory, override_settings

from cases.domain.events.payloads import NotePayload
from cases.domain.uuid7 import uuid7
from cases.services.treatment.treatment import ReceivedEvent
from frontend.server.warm import WRITTEN, stranger
from planning.foundation.encoding import canonical_text, kept_text, prepare_writing, writing


@pytest.mark.parametrize("allowed", ["*", ".school.example", "localhost"])
def test_its_own_question_comes_by_a_name_that_is_allowed(allowed: str) -> None:
    """Otherwise it is refused, and the first who asks waits for what it should have made ready."""
    with override_settings(ALLOWED_HOSTS=[allowed]):
        assert RequestFactory().get("/", HTTP_HOST=stranger()["HTTP_HOST"]).get_host()


def test_the_first_event_finds_ready_what_writes_it() -> None:
    writing._writer.cache_clear()
    for kept in WRITTEN:
        prepare_writing(kept)
    made = writing._writer.cache_info().misses
    note = NotePayload(text="Seen.")
    event = ReceivedEvent(
        id=uuid7(), device_seq=1, seen_position=0, plan_hash="", device_time=datetime.now(UTC), payload=note
    )
    assert all("Seen." in text for text in (kept_text(event), canonical_text(note)))
    assert writing._writer.cache_info().misses == made
