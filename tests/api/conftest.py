"""Brings the cast to the tests of the API, and holds whatever they are answered against the description."""

from __future__ import annotations

from typing import Any

import pytest
from django.db import connection
from django.test import Client
from django.urls import Resolver404, resolve

from tests.api import recorder
from tests.api.judged import judge
from tests.cast import *  # noqa: F403


def pytest_sessionfinish() -> None:
    if recorder.ON:
        recorder.write()


@pytest.fixture(autouse=True)
def answers_as_described(monkeypatch: pytest.MonkeyPatch) -> None:
    if connection.vendor == "postgresql":
        return  # the same answers were held against it on SQLite
    ask = Client.request

    def request(browser: Client, **asked: Any) -> Any:
        answer: Any = ask(browser, **asked)
        try:
            route = resolve(asked["PATH_INFO"]).route
        except Resolver404:
            return answer
        judge(asked["REQUEST_METHOD"], route, answer)
        if answer.status_code == 201 and "Location" in answer:
            assert browser.get(answer["Location"]).status_code == 200, answer["Location"]
        return answer

    monkeypatch.setattr(Client, "request", request)
