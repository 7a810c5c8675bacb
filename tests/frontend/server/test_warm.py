"""What a server does before anybody asks."""

from __future__ import annotations

import pytest
from django.test import RequestFactory, override_settings

from frontend.server.warm import stranger


@pytest.mark.parametrize("allowed", ["*", ".school.example", "localhost"])
def test_its_own_question_comes_by_a_name_that_is_allowed(allowed: str) -> None:
    """Otherwise it is refused, and the first who asks waits for what it should have made ready."""
    with override_settings(ALLOWED_HOSTS=[allowed]):
        assert RequestFactory().get("/", HTTP_HOST=stranger()["HTTP_HOST"]).get_host()
