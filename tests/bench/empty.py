"""The unit of the benchmarks: e, one empty authenticated request through the whole stack but the wire."""

from __future__ import annotations

from collections.abc import Callable


def empty_request() -> Callable[[], None]:
    """Sends one each time. Django is set up before."""
    from django.contrib.auth import get_user_model
    from django.test import Client

    client = Client()
    client.force_login(get_user_model().objects.create_user(username="bench"))

    def empty() -> None:
        assert client.get("/empty").status_code == 200

    return empty
