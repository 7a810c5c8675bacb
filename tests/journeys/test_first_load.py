"""What the first visit, the worker's install and a later visit bring over the line, counted between browser and server.

Bytes and requests, never time; heads of answers count with their bodies. What comes is logged, to be read with
`--log-cli-level=INFO`.
"""

from __future__ import annotations

import logging
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, expect

from tests.journeys.hands import person, type_sign_in
from tests.journeys.relay import Passed, Relay, relay

# What we ask of ourselves; a slow line has some 50 kB a second.
FIRST_SCREEN_MOST_BYTES = 90_000
FIRST_SCREEN_MOST_REQUESTS = 8
WHOLE_APP_MOST_BYTES = 200_000


@pytest.fixture
def line(demo: Mapping[str, Any]) -> Iterator[Relay]:
    with relay(urlsplit(demo["url"]).port or 80) as counted:
        yield counted


def test_little_is_fetched_and_nothing_twice(
    open_phone: Callable[..., Page], demo: Mapping[str, Any], line: Relay
) -> None:
    phone = open_phone()
    asked_by_page: set[str] = set()
    errors: list[str] = []
    phone.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
    phone.on("request", lambda request: asked_by_page.add(urlsplit(request.url).path))
    phone.goto(line.url)
    expect(phone.get_by_label("User name")).to_be_visible()
    signing_in = _of_page(line, asked_by_page)
    # Who is signed in is asked once, with the scripts, and that nobody is is no error.
    assert [answer.status for answer in line.passed if answer.path == "/api/v1/session"] == [204]
    assert errors == []
    phone.wait_for_function("() => navigator.serviceWorker.controller !== null")
    assert _twice(line) == {}
    installed = [answer for answer in line.passed if answer not in signing_in]
    whole = [answer for answer in line.passed if not answer.path.startswith("/api/")]

    type_sign_in(phone, person(demo, "student"))
    phone.get_by_role("button", name="Understood").click()
    expect(phone.get_by_role("main").get_by_role("listitem").get_by_role("link").first).to_be_visible()
    first_list = _of_page(line, asked_by_page)

    line.passed.clear()
    phone.reload()
    expect(phone.get_by_role("main").get_by_role("listitem").get_by_role("link").first).to_be_visible()
    phone.wait_for_load_state("networkidle")
    later = line.passed

    counted = {
        "signing in": signing_in,
        "install": installed,
        "first list": first_list,
        "whole app": whole,
        "later": later,
    }
    says = "; ".join(f"{name} {len(answers)} requests, {_bytes_of(answers)} bytes" for name, answers in counted.items())
    logging.getLogger(__name__).info(says)
    assert max(_bytes_of(signing_in), _bytes_of(first_list)) <= FIRST_SCREEN_MOST_BYTES, says
    assert len(signing_in) <= FIRST_SCREEN_MOST_REQUESTS, says
    assert _bytes_of(whole) <= WHOLE_APP_MOST_BYTES, says
    # The app lies on the phone and so does the list, which has not changed: the browser asks whether there is a newer
    # worker, the app whether somebody is still signed in.
    assert {answer.path for answer in later if answer.status == 200} <= {"/sw.js", "/api/v1/session"}, says
    assert [answer.status for answer in later if answer.path.endswith("/cases")] == [304]


def test_a_page_that_came_past_the_worker_is_taken_up_by_it(phone: Page, demo: Mapping[str, Any]) -> None:
    """As one that was on its way when the worker became active. A forced reload goes past it: Service Workers
    specification (W3C), 'handle fetch', 'force bypass cache for a shift+reload'.
    """
    controlled = "() => navigator.serviceWorker.controller !== null"
    phone.goto("/")
    phone.wait_for_function(controlled)
    loads: list[Page] = []
    phone.on("load", lambda page: loads.append(page))  # it cannot hold a list's own method
    # What the browser itself says at the first script of the page.
    phone.add_init_script("window.controlledAtFirst = navigator.serviceWorker.controller !== null")
    phone.context.new_cdp_session(phone).send("Page.reload", {"ignoreCache": True})
    expect(phone.get_by_label("User name")).to_be_visible()
    phone.wait_for_function("() => window.controlledAtFirst === false")
    phone.wait_for_function(controlled)
    # It goes on where it is, and is not loaded once more for that.
    assert len(loads) == 1


def _of_page(line: Relay, paths: set[str]) -> list[Passed]:
    """What the page itself has asked for so far."""
    return [answer for answer in line.passed if urlsplit(answer.path).path in paths]


def _bytes_of(answers: Iterable[Passed]) -> int:
    return sum(answer.size_bytes for answer in answers)


def _twice(line: Relay) -> dict[str, int]:
    """Files of the app of which the body came more than once."""
    bodies = Counter(answer.path for answer in line.passed if answer.status == 200 and "/api/" not in answer.path)
    return {path: times for path, times in bodies.items() if times > 1}
