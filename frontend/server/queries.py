"""Tells in the log what each request asked of the database. Never the values that went with it: they are records."""

from __future__ import annotations

import logging
from collections import Counter
from collections.abc import Callable
from time import perf_counter
from typing import Any

from django.conf import settings
from django.db import connection
from django.http import HttpRequest, HttpResponseBase

logger = logging.getLogger("frontend.queries")

MS_PER_S = 1000
OFTEN = 3  # the same statement so often in one request is asked in a loop


class QueriesMiddleware:
    """In use where SHOW_QUERIES is `count` (a line for each request) or `all` (a line for each statement, too)."""

    def __init__(self, further: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self._further = further

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        statements, began = _Statements(), perf_counter()
        with connection.execute_wrapper(statements):
            response = self._further(request)
        took = f"{_ms(perf_counter() - began)}, {len(statements.each)} queries in {_ms(statements.seconds)}"
        logger.info("%s %s %d in %s", request.method, request.path, response.status_code, took)
        for sql, times in statements.often():
            logger.info("  %d times: %s", times, sql)
        if settings.ENVIRONMENT.show_queries == "all":
            for sql, seconds in statements.each:
                logger.info("  %s: %s", _ms(seconds), sql)
        return response


class _Statements:
    """What was executed, in order, each with the seconds it took."""

    def __init__(self) -> None:
        self.each: list[tuple[str, float]] = []

    def __call__(self, execute: Callable[..., Any], sql: str, params: Any, many: bool, context: Any) -> Any:
        began = perf_counter()
        try:
            return execute(sql, params, many, context)
        finally:
            self.each.append((sql, perf_counter() - began))

    @property
    def seconds(self) -> float:
        return sum(seconds for _, seconds in self.each)

    def often(self) -> list[tuple[str, int]]:
        """Those executed often, with how many times."""
        counted = Counter(sql for sql, _ in self.each)
        return [(sql, times) for sql, times in counted.most_common() if times >= OFTEN]


def _ms(seconds: float) -> str:
    return f"{seconds * MS_PER_S:.1f} ms"
