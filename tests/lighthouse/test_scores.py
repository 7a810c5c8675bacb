"""What an outside judge of pages, Lighthouse, says of the app on a slow phone: accessibility and best practices whole,
and what has come to the screen stays where it is.

How fast it finds the pages is logged and not judged: that depends on the machine.
"""

from __future__ import annotations

import json
import logging
import os
import subprocess
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright

from tests.bucket import free_port
from tests.draws import WHOLE as EVERY_SCREEN
from tests.journeys.hands import person, type_sign_in
from tests.journeys.records import approves, submitted_plan
from tests.journeys.running import FLAGS, chromium, running, unhurried

FOLDER = Path(__file__).parent
WHOLE = {"accessibility": 100, "best-practices": 100}
# The lists are judged with DRAWS=whole alone: they are the lightest screens.
# Share of the screen by share of its height: "good" by Web Vitals, where users begin to hit what they did not mean.
MOST_SHIFT = 0.1


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[dict[str, Any]]:
    with running(tmp_path) as demonstration:
        yield demonstration


@pytest.fixture
def port() -> int:
    return free_port()


@pytest.fixture
def browser_of_its_own(playwright: Playwright, tmp_path: Path, port: int, demo: Mapping[str, Any]) -> Iterator[Page]:
    """A page of a browser in which the judge may open pages of its own, with the same cookies."""
    context: BrowserContext = playwright.chromium.launch_persistent_context(
        tmp_path / "profile",
        executable_path=chromium(),
        args=[*FLAGS, f"--remote-debugging-port={port}"],
        base_url=str(demo["url"]),
    )
    yield unhurried(context.new_page())
    context.close()


def test_the_judge_finds_nothing(browser_of_its_own: Page, port: int, demo: Mapping[str, Any]) -> None:
    page = browser_of_its_own
    judged = scores(port, [f"{demo['url']}/"])
    sign_in(page, demo, "student")
    version = submitted_plan(page, "Bench 911", tooth="26")
    sign_in(page, demo, "supervisor")
    if EVERY_SCREEN:
        judged += scores(port, [f"{demo['url']}/worklist"])
    approves(page, version)
    sign_in(page, demo, "student")
    case = f"{demo['url']}/cases/{version['case_id']}"
    lists = [f"{demo['url']}/cases"] if EVERY_SCREEN else []
    judged += scores(port, [*lists, f"{case}/plan", f"{case}/chair"])
    assert {verdict["url"]: verdict["faults"] for verdict in judged if verdict["faults"]} == {}
    assert [verdict["url"] for verdict in judged if verdict["scores"] | WHOLE != verdict["scores"]] == []
    assert {verdict["url"]: verdict["shift"] for verdict in judged if verdict["shift"] > MOST_SHIFT} == {}


def sign_in(page: Page, demo: Mapping[str, Any], role: str) -> None:
    page.context.clear_cookies()
    page.goto("/")
    with page.expect_response(lambda answer: answer.request.method == "POST" and answer.ok):
        type_sign_in(page, person(demo, role))
    understood = page.get_by_role("button", name="Understood")
    understood.or_(page.get_by_role("banner")).first.wait_for()
    if understood.is_visible():
        understood.click()
        page.get_by_role("banner").wait_for()


def scores(port: int, urls: Sequence[str]) -> list[dict[str, Any]]:
    """What the judge says of pages; each line of it is logged."""
    command = [os.environ.get("PLAYWRIGHT_NODEJS_PATH", "node"), str(FOLDER / "scores.mjs"), str(port), *urls]
    ran = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    assert ran.returncode == 0, ran.stderr
    verdicts = [json.loads(line) for line in ran.stdout.splitlines()]
    for verdict in verdicts:
        # A page that another one took the place of was not judged.
        assert (verdict["shown"], verdict.get("error")) == (verdict["url"], None), verdict
        logging.getLogger(__name__).info("%s %s, shift %.3f", verdict["url"], verdict["scores"], verdict["shift"])
    return verdicts
