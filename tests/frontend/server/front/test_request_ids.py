"""Each request has a name: in its answer, whoever gives it, and in the lines of the log that it leaves."""

from __future__ import annotations

import asyncio
import logging
from typing import Any

import pytest
from django.http import HttpRequest, HttpResponse

from frontend.server.front.door import Door
from frontend.server.front.request_ids import NamedRequests, RequestIdFilter, RequestIdMiddleware
from tests.frontend.server.front.test_door import Sent, echo, threads_alone

SAFE = "lms-2026.11.30_7"


def through(door: Any, *headers: tuple[bytes, bytes], **more: Any) -> Sent:
    return asyncio.run(Sent(headers=[*headers], **more).through(NamedRequests(door)))


def test_the_senders_own_name_comes_back_and_goes_on() -> None:
    sent = through(Door(echo, threads_alone()), (b"x-request-id", SAFE.encode()))
    assert sent.answer_headers["x-request-id"] == sent.json["HTTP_X_REQUEST_ID"] == SAFE


@pytest.mark.parametrize("chosen", [b"", b"short", b"a" * 65, b"two words of it", b"line\r\nfeed-----", b"\xff" * 10])
def test_what_could_forge_a_line_of_the_log_is_not_taken(chosen: bytes) -> None:
    sent = through(Door(echo, threads_alone()), (b"x-request-id", chosen))
    name = sent.answer_headers["x-request-id"]
    assert (len(name), name.isalnum(), sent.json["HTTP_X_REQUEST_ID"]) == (32, True, name)


def test_two_requests_have_two_names_and_a_refusal_has_one_too() -> None:
    door = Door(echo, threads_alone(most_body_bytes=10))
    sent = [through(door, method="POST", path="/x", body=b"x" * 11) for _ in range(2)]
    assert [each.status for each in sent] == [413, 413]
    assert len({each.answer_headers["x-request-id"] for each in sent}) == 2


def test_a_file_of_the_app_is_not_made_longer_by_a_name() -> None:
    assert "x-request-id" not in through(Door(echo, threads_alone()), path="/assets/index.js").answer_headers


def line(logger: str, message: str, **more: Any) -> logging.LogRecord:
    record = logging.getLogger(logger).makeRecord(logger, logging.ERROR, "", 0, message, (), None, extra=more)
    assert RequestIdFilter().filter(record)
    return record


def test_a_line_that_a_request_leaves_names_it(rf: Any) -> None:
    lines: list[logging.LogRecord] = []

    def answer(request: HttpRequest) -> HttpResponse:
        lines.append(line("cases", "Something happened."))
        return HttpResponse()

    request = rf.get("/", headers={"X-Request-Id": SAFE})
    RequestIdMiddleware(answer)(request)
    lines += [line("django.request", "It broke.", request=request), line("cases", "Nobody asked.")]
    assert [each.request_id for each in lines] == [SAFE, SAFE, "-"]  # type: ignore[attr-defined]
