"""Two doors for whoever watches over the process: is it alive, and may it be sent requests?"""

from __future__ import annotations

from collections.abc import Callable

from django.db import DatabaseError, connection
from django.http import HttpRequest, HttpResponse, HttpResponseBase

LIVE, READY = "/livez", "/readyz"


class HealthMiddleware:
    """Stands before everything: who asks comes by number, without HTTPS and without a name that is allowed."""

    def __init__(self, further: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self._further = further

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        if request.path_info == LIVE:
            return _told(200, "alive")
        if request.path_info == READY:
            return _told(200, "ready") if _database_answers() else _told(503, "no database")
        return self._further(request)


def _told(status: int, text: str) -> HttpResponse:
    return HttpResponse(text, status=status, content_type="text/plain", headers={"Cache-Control": "no-store"})


def _database_answers() -> bool:
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT 1")
    except DatabaseError:
        return False
    return True
