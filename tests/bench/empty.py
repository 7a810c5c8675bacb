"""The unit of the benchmarks: e, one empty authenticated request through the whole stack but the wire."""

from __future__ import annotations

from collections.abc import Callable


def empty_request() -> Callable[[], None]:
    """Sends one each time. Django is set up before."""
    from django.contrib.auth import get_user_model
    from django.test import Client
    from django.test.utils import override_settings

    client = Client()
    client.force_login(get_user_model().objects.create_user(username="bench"))

    def empty() -> None:
        with override_settings(ROOT_URLCONF="tests.bench.empty_view", ALLOWED_HOSTS=["testserver"]):
            assert client.get("/empty").status_code == 200

    return empty
