"""What each request asks of the database, told in the log where that is asked for."""

from __future__ import annotations

import json
import logging
import os
import subprocess
import sys
from dataclasses import replace

import pytest
from django.http import HttpRequest, HttpResponse
from django.test import RequestFactory
from pytest_django.fixtures import Settings

from cases.models import Person
from frontend.server.environment import ROOT
from frontend.server.queries import QueriesMiddleware


def five_of_two_kinds(request: HttpRequest) -> HttpResponse:
    for name in ("ines", "joon", "anouk", "emeka"):
        Person.objects.filter(username=name).exists()
    Person.objects.count()
    return HttpResponse(status=204)


def lines_logged(caplog: pytest.LogCaptureFixture) -> list[str]:
    with caplog.at_level(logging.INFO, "frontend.queries"):
        assert QueriesMiddleware(five_of_two_kinds)(RequestFactory().get("/api/v1/session")).status_code == 204
    return caplog.messages


@pytest.mark.django_db
def test_a_request_is_one_line_and_what_is_asked_in_a_loop_another(caplog: pytest.LogCaptureFixture) -> None:
    request, loop = lines_logged(caplog)
    assert request.startswith("GET /api/v1/session 204 in ")
    assert ", 5 queries in " in request
    assert loop.startswith("  4 times: SELECT ")


@pytest.mark.django_db
def test_every_statement_is_told_where_all_are_asked_for(caplog: pytest.LogCaptureFixture, settings: Settings) -> None:
    settings.ENVIRONMENT = replace(settings.ENVIRONMENT, show_queries="all")
    assert len(lines_logged(caplog)) == 2 + 5
    assert "anouk" not in caplog.text


@pytest.mark.parametrize(("asked", "counts"), [("", False), ("count", True)])
def test_nothing_is_counted_unless_it_is_asked_for(asked: str, counts: bool) -> None:
    code = "import json; from frontend.server import settings; print(json.dumps(settings.MIDDLEWARE))"
    env = {**os.environ, "SHOW_QUERIES": asked, "DATABASE_URL": "sqlite://:memory:"}
    printed = subprocess.run([sys.executable, "-c", code], cwd=ROOT, env=env, capture_output=True, check=True).stdout
    assert ("frontend.server.queries.QueriesMiddleware" in json.loads(printed)) is counts
