"""The pages to try the API on: who signs in there goes on there."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page

from tests.journeys.conftest import Opens
from tests.journeys.hands import person


def tries(page: Page, group: str, operation: str, body: Mapping[str, Any]) -> int:
    """Opens an operation of a group and sends the body; the status of the answer."""
    page.get_by_role("link", name=group, exact=True).click()
    part = page.locator(f"[id$={operation}]")
    part.get_by_role("button").first.click()
    part.get_by_role("button", name="Try it out").click()
    part.get_by_role("textbox").last.fill(json.dumps(body))
    with page.expect_response(lambda answer: answer.request.method == "POST") as answered:
        part.get_by_role("button", name="Execute").click()
    return answered.value.status


def test_who_signs_in_on_the_page_may_send_at_once(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    """The token turns at sign-in: what is sent next carries the new one."""
    page = open_phone()
    page.set_default_timeout(60_000)  # the viewer draws the shape of every body first
    student = person(demo, "student")
    page.goto("/api/v1/docs")
    sent = {"username": student["username"], "password": student["password"]}
    assert tries(page, "session", "session_create", sent) == 200
    assert tries(page, "compute", "compute_tooth", {"notation": "iso_3950", "designation": "26"}) == 200
