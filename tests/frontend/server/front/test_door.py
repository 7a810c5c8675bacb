"""The door: what comes in by one interface goes out by the other, and what has no worker is told so.

The interfaces are the judges: PEP 3333 says what an application is given, RFC 9110 and 9457 how a refusal looks.
"""

from __future__ import annotations

import asyncio
import json
import threading
from collections.abc import Awaitable, Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any
from wsgiref.validate import validator

import pytest

from frontend.server.asgi import trusting
from frontend.server.front import door, lanes
from frontend.server.front.door import Door
from frontend.server.front.lanes import COMPUTING, EVENTS, IMAGES, LANES, LAUNCHES, READS, Lane, lane_of
from frontend.server.front.rates import KEYS, LaneThrottle

Message = Mapping[str, Any]
EVENTS_PATH = "/api/v1/cases/1/events"


def echo(environ: dict[str, Any], start: Any) -> list[bytes]:
    """Says what it was told."""
    body = environ["wsgi.input"].read(int(environ["CONTENT_LENGTH"]))
    start("200 OK", [("Content-Type", "application/json"), ("X-Thread", threading.current_thread().name)])
    environment = {key: value for key, value in environ.items() if isinstance(value, str)}
    return [json.dumps(environment | {"body": body.decode()}).encode()]


@dataclass
class Sent:
    """One request through a door."""

    method: str = "GET"
    path: str = "/"
    body: bytes = b""
    headers: list[tuple[bytes, bytes]] = field(default_factory=list)
    query: bytes = b""
    answered: list[dict[str, Any]] = field(default_factory=list)

    async def through(self, to: Any) -> Sent:
        scope = {
            "type": "http",
            "http_version": "1.1",
            "method": self.method,
            "path": self.path,
            "query_string": self.query,
            "headers": [(b"host", b"localhost"), (b"content-length", str(len(self.body)).encode()), *self.headers],
            "client": ("192.0.2.7", 4711),
            "server": ("127.0.0.1", 8000),
            "scheme": "http",
        }

        async def receive() -> dict[str, Any]:
            return {"type": "http.request", "body": self.body, "more_body": False}

        async def send(message: dict[str, Any]) -> None:
            self.answered.append(message)

        await to(scope, receive, send)
        return self

    @property
    def status(self) -> int:
        return int(self.answered[0]["status"])

    @property
    def answer_headers(self) -> dict[str, str]:
        return {name.decode(): value.decode() for name, value in self.answered[0]["headers"]}

    @property
    def json(self) -> Any:
        return json.loads(self.answered[1]["body"])


def run(course: Awaitable[Any]) -> Any:
    async def bounded() -> Any:
        return await asyncio.wait_for(course, 30)

    return asyncio.run(bounded())


def threads_alone(**more: Any) -> tuple[Lane, ...]:
    """The lanes with no process of their own, so that what is tested is the door."""
    return tuple(replace(lane, apart=False, **more) for lane in LANES)


def test_a_request_reaches_the_application_as_its_interface_asks() -> None:
    sent = Sent("PUT", "/röntgen", "bräunlich".encode(), [(b"content-type", b"text/plain")], b"a=%20b")
    sent.headers += [(b"cookie", b"a=1"), (b"cookie", b"b=2"), (b"x-two", b"1"), (b"x-two", b"2")]
    wsgi = run(sent.through(Door(validator(echo), threads_alone()))).json
    assert (wsgi["REQUEST_METHOD"], wsgi["QUERY_STRING"], wsgi["CONTENT_TYPE"]) == ("PUT", "a=%20b", "text/plain")
    assert wsgi["PATH_INFO"].encode("latin-1").decode() == "/röntgen"
    assert wsgi["body"] == "bräunlich"
    assert wsgi["CONTENT_LENGTH"] == str(len("bräunlich".encode()))
    assert (wsgi["HTTP_COOKIE"], wsgi["HTTP_X_TWO"]) == ("a=1; b=2", "1,2")
    assert (wsgi["REMOTE_ADDR"], wsgi["SERVER_PORT"]) == ("192.0.2.7", "8000")


def test_a_header_with_an_underscore_is_not_taken_for_another() -> None:
    sent = Sent(headers=[(b"x_forwarded_proto", b"https")])
    assert "HTTP_X_FORWARDED_PROTO" not in run(sent.through(Door(echo, threads_alone()))).json


@pytest.mark.parametrize(
    ("proxies", "address"),
    [([], "192.0.2.7"), (["10.0.0.1"], "192.0.2.7"), (["192.0.2.7"], "203.0.113.9"), (["192.0.2.0/24"], "203.0.113.9")],
)
def test_only_a_trusted_proxy_is_believed_who_asks(proxies: list[str], address: str) -> None:
    """The right-most address that no proxy of ours has: whatever stands further left, anybody may have written."""
    sent = Sent(headers=[(b"x-forwarded-for", b"198.51.100.1, 203.0.113.9")])
    assert run(sent.through(trusting(Door(echo, threads_alone()), proxies))).json["REMOTE_ADDR"] == address


def test_nobody_is_let_in_before_what_they_would_wait_for_is_ready() -> None:
    happened: list[str] = []
    door = Door(echo, threads_alone(), warm=lambda application: happened.append("warm"))

    async def life() -> None:
        messages = iter([{"type": "lifespan.startup"}, {"type": "lifespan.shutdown"}])

        async def receive() -> dict[str, Any]:
            return next(messages)

        async def send(message: dict[str, Any]) -> None:
            happened.append(message["type"])

        await door({"type": "lifespan"}, receive, send)

    run(life())
    assert happened == ["warm", "lifespan.startup.complete", "lifespan.shutdown.complete"]


def test_each_lane_has_threads_of_its_own() -> None:
    through = Door(echo, threads_alone())
    assert run(Sent().through(through)).answer_headers["x-thread"].startswith("reads")
    assert run(Sent("POST", EVENTS_PATH).through(through)).answer_headers["x-thread"].startswith("events")


def test_reads_that_hang_leave_events_their_workers() -> None:
    """And no more are worked on at once than the lane has workers."""
    hang, at_work = threading.Event(), threading.Semaphore(0)

    def hanging(environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        if environ["REQUEST_METHOD"] == "GET":
            at_work.release()
            hang.wait(20)
        return echo(environ, start)

    async def course() -> None:
        through = Door(hanging, threads_alone())
        reads = [asyncio.create_task(Sent().through(through)) for _ in range(3 * READS.at_once)]
        for _ in range(READS.at_once):
            await asyncio.to_thread(at_work.acquire, timeout=10)
        event = await Sent("POST", EVENTS_PATH, b"{}").through(through)
        assert event.status == 200
        assert through.workers["reads"].turns.running == READS.at_once
        assert through.workers["reads"].turns.waiting == 2 * READS.at_once
        assert not any(read.done() for read in reads)
        hang.set()
        assert {(await read).status for read in reads} == {200}

    run(course())


def test_who_gets_no_worker_is_told_when_to_come_back() -> None:
    hang = threading.Event()

    def hanging(environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        hang.wait(20)
        return echo(environ, start)

    async def course() -> None:
        through = Door(hanging, threads_alone(wait_s=0.05))
        busy = [asyncio.create_task(Sent().through(through)) for _ in range(READS.at_once)]
        await _running(through, READS.at_once)
        refused = await Sent().through(through)
        is_problem(refused, 503, "busy")
        assert int(refused.answer_headers["retry-after"]) == door.COME_BACK_S
        hang.set()
        assert {(await task).status for task in busy} == {200}
        assert through.bodies.held_bytes == 0

    run(course())


def test_a_worker_is_not_free_before_it_has_ended_though_nobody_waits_for_it() -> None:
    hang, at_work = threading.Event(), threading.Event()

    def hanging(environ: dict[str, Any], start: Any) -> Iterable[bytes]:
        at_work.set()
        hang.wait(20)
        return echo(environ, start)

    async def course() -> None:
        through = Door(hanging, threads_alone())
        given_up = asyncio.create_task(Sent().through(through))
        assert await asyncio.to_thread(at_work.wait, 10)
        given_up.cancel()
        await asyncio.wait([given_up])
        assert given_up.cancelled()
        assert through.workers["reads"].turns.running == 1
        hang.set()
        await _running(through, 0)

    run(course())


async def _running(through: Door, count: int) -> None:
    """Waits until so many reads are worked on."""
    while through.workers["reads"].turns.running != count:
        await asyncio.sleep(0.01)


def test_a_body_that_is_too_long_or_too_slow_is_a_problem_too() -> None:
    through = Door(echo, threads_alone(most_body_bytes=10, body_s=0.1))
    is_problem(run(Sent("POST", "/x", b"x" * 11).through(through)), 413, "body-too-long")

    async def never(scope: Any, receive: Any, send: Any) -> None:
        async def nothing() -> Any:
            await asyncio.Event().wait()

        await through(scope, nothing, send)

    is_problem(run(Sent("POST", "/x", b"x").through(never)), 408, "body-too-slow")


PLAN = ("POST", "/api/v1/compute/plan")
MADE_UP = [f"made up {number}" for number in range(5)]


def cookie(session: str) -> list[tuple[bytes, bytes]]:
    return [(b"cookie", f"csrftoken=x; sessionid={session}; more=1".encode())]


def bearer(key: str) -> list[tuple[bytes, bytes]]:
    return [(b"authorization", f"Bearer {key}".encode())]


def signs_in(environ: dict[str, Any], start: Any) -> list[bytes]:
    """Knows one session and one key of all that may be made up; that nobody is signed in is an error where a sign-in is
    needed.
    """
    known = "sessionid=real" in environ.get("HTTP_COOKIE", "") or environ.get("HTTP_AUTHORIZATION") == "Bearer real"
    nobody = "204 No Content" if environ["PATH_INFO"] == "/api/v1/session" else "401 Unauthorized"
    start("200 OK" if known else nobody, [])
    return [b""]


def test_who_asks_too_often_is_told_when_to_come_back_before_the_body_comes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "computing", "3/min")

    async def course() -> None:
        through = Door(signs_in, threads_alone())
        answers = [await Sent(*PLAN, b"{}").through(through) for _ in range(4)]
        assert [answer.status for answer in answers] == [401, 401, 401, 429]
        is_problem(answers[3], 429, "too-often")
        assert answers[3].answer_headers["retry-after"] == "20"  # three a minute

        async def never(scope: Any, receive: Any, send: Any) -> None:
            async def nothing() -> Any:
                await asyncio.Event().wait()

            await through(scope, nothing, send)

        assert (await Sent(*PLAN, b"{}").through(never)).status == 429

    run(course())


@pytest.mark.parametrize(
    ("named", "who_asks", "nobody"), [(cookie, "/api/v1/session", 204), (bearer, "/api/v1/key", 401)]
)
def test_strangers_behind_one_address_do_not_use_up_what_somebody_there_has(
    monkeypatch: pytest.MonkeyPatch, named: Callable[[str], list[tuple[bytes, bytes]]], who_asks: str, nobody: int
) -> None:
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "computing", "3/min")

    async def course() -> None:
        through = Door(signs_in, threads_alone())
        asking = [Sent("GET", who_asks, headers=named(of)) for of in ("real", *MADE_UP)]
        assert [(await each.through(through)).status for each in asking] == [200, *[nobody] * 5]
        made_up = [await Sent(*PLAN, b"{}", named(of)).through(through) for of in MADE_UP]
        assert [answer.status for answer in made_up] == [401, 401, 401, 429, 429]
        real = [await Sent(*PLAN, b"{}", named("real")).through(through) for _ in range(4)]
        assert [answer.status for answer in real] == [200, 200, 200, 429]

    run(course())


def test_reads_and_events_are_never_too_many() -> None:
    """What has processes of its own has a rate, and nothing else has, but for other systems and their launches."""
    assert {lane.name for lane in LANES if lane.apart} | {LAUNCHES.name} == set(LaneThrottle.THROTTLE_RATES) - {KEYS}
    assert not {READS.name, EVENTS.name, lanes.FILES.name, lanes.HEALTH.name} & set(LaneThrottle.THROTTLE_RATES)


def is_problem(sent: Sent, status: int, code: str) -> None:
    assert sent.status == status
    assert sent.answer_headers["content-type"] == "application/problem+json"
    assert sent.json["type"] == f"/api/v1/problems/{code}"
    assert sent.json["status"] == status
    assert sent.json["detail"].endswith(".")


# --- lanes ---


@pytest.mark.parametrize(
    ("method", "path", "lane"),
    [
        ("GET", "/", "reads"),
        ("GET", "/api/v1/cases/1", "reads"),
        ("GET", "/api/v1/cases/1/events", "reads"),
        ("POST", "/api/v1/cases/1/events", "events"),
        ("POST", "/api/v1/cases/1/on-site-sign-offs", "events"),
        ("POST", "/api/v1/plan-versions/1/reviews", "reads"),
        ("POST", "/api/v1/session", "sign-in"),
        ("DELETE", "/api/v1/session", "reads"),
        ("POST", "/api/v1/keys", "sign-in"),
        ("GET", "/api/v1/keys", "reads"),
        ("POST", "/api/v1/programmes/1/service-keys", "sign-in"),
        ("POST", "/admin/login/", "sign-in"),
        ("GET", "/api/v1/programmes/1/changes", "changes"),
        ("GET", "/api/v1/programmes/1/cases", "reads"),
        ("GET", "/api/v1/schema", "description"),
        ("HEAD", "/api/v1/schema", "description"),
        ("POST", "/api/v1/compute/plan", "computing"),
        ("POST", "/api/v1/compute/tooth", "reads"),
        ("POST", "/api/v1/cases/1/preview", "computing"),
        ("POST", "/api/v1/cases/1/plan-versions", "computing"),
        ("GET", "/api/v1/cases/1/plan-versions", "reads"),
        ("GET", "/api/v1/cases/1/bands", "computing"),
        ("GET", "/api/v1/cases/1/record.pdf", "computing"),
        ("GET", "/api/v1/cases/1/course.pdf", "computing"),
        ("GET", "/api/v1/plan-versions/1/work-sheet.pdf", "computing"),
        ("GET", "/api/v1/cases/1/record", "reads"),
        ("PATCH", "/api/v1/cases/1/images/2", "images"),
        ("PUT", "/api/v1/cases/1/images/2", "images"),
        ("POST", "/api/v1/cases/1/images", "images"),
        ("POST", "/api/v1/cases/1/images/2/remove", "reads"),
        ("PUT", "/api/v1/cases/1/images/2/markings/3", "reads"),
        ("GET", "/api/v1/cases/1/images/2/content", "files"),
        ("GET", "/api/v1/cases/1/images/2", "reads"),
        ("GET", "/livez", "health"),
        ("GET", "/api/fhir/R4/metadata", "reads"),
        ("GET", "/api/fhir/R4/CodeSystem/tooth", "reads"),
        ("GET", "/api/fhir/R4/Patient/1/$everything", "computing"),
        ("GET", "/api/fhir/R4/Observation", "computing"),
    ],
)
def test_what_is_heavy_has_a_lane_of_its_own(method: str, path: str, lane: str) -> None:
    assert lane_of(method, path).name == lane


def test_what_takes_an_image_takes_as_many_bytes_as_an_image_may_have() -> None:
    from django.conf import settings

    assert lanes.MOST_IMAGE_BODY_BYTES > settings.IMAGE_MOST_BYTES
    assert lanes.MOST_BODY_BYTES == settings.DATA_UPLOAD_MAX_MEMORY_SIZE
    assert IMAGES.answer_s > 2 * settings.IMAGE_READ_SECONDS
    assert COMPUTING.apart
    assert not EVENTS.apart
