"""What the door says is left of a rate, and whose rate a key spends (draft-ietf-httpapi-ratelimit-headers-10)."""

from __future__ import annotations

from typing import Any

import http_sf
import pytest

from frontend.server.front.door import Door
from frontend.server.front.rates import LaneThrottle
from tests.frontend.server.front.test_door import PLAN, Sent, echo, is_problem, run, threads_alone

WITH_KEY = [(b"authorization", b"Bearer fck_1_secret")]
A_LIST = ("GET", "/api/v1/worklist")


def test_every_answer_says_what_is_left_of_a_rate(monkeypatch: pytest.MonkeyPatch) -> None:
    """Read by an outside reader of structured fields."""
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "keys", "3/min")
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "computing", "2/min")

    async def course() -> None:
        through = Door(echo, threads_alone())
        answers = [await Sent(*A_LIST, headers=WITH_KEY).through(through)]
        answers += [await Sent(*PLAN, b"{}", WITH_KEY).through(through) for _ in range(2)]
        left = [_list(each, "ratelimit") for each in answers]
        assert [{name: quota["r"] for name, quota in each.items()} for each in left] == [
            {"keys": 2},
            # Until then the key could have been made up; from now on it has a rate of its own.
            {"keys": 2, "computing": 1},
            {"keys": 1, "computing": 0},
        ]
        assert _list(answers[1], "ratelimit-policy") == {"keys": {"q": 3, "w": 60}, "computing": {"q": 2, "w": 60}}
        # Three a minute, and one is spent: it is made good after 20 s.
        assert left[0]["keys"]["t"] == 20
        assert (await Sent(*A_LIST, headers=WITH_KEY).through(through)).status == 200
        refused = await Sent(*A_LIST, headers=WITH_KEY).through(through)
        is_problem(refused, 429, "too-often")
        assert _list(refused, "ratelimit")["keys"]["r"] == 0
        # A page of another origin learns when to come back.
        assert refused.answer_headers["access-control-allow-origin"] == "*"
        assert "Retry-After" in refused.answer_headers["access-control-expose-headers"]
        by_hand = await Sent(*A_LIST).through(through)
        assert by_hand.status == 200
        assert "ratelimit" not in by_hand.answer_headers

    run(course())


def test_a_key_that_was_answered_has_a_rate_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    """One made up shares that of its address, whatever it asks for; no answer but the API's own proves a key."""
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "keys", "2/min")
    real, made_up = WITH_KEY, [(b"authorization", b"Bearer made-up")]

    def checks(environ: dict[str, Any], start: Any) -> list[bytes]:
        judged = environ["PATH_INFO"].startswith("/api/") and environ["REQUEST_METHOD"] != "OPTIONS"
        start("200 OK" if not judged or "secret" in environ["HTTP_AUTHORIZATION"] else "401 Unauthorized", [])
        return [b""]

    async def course() -> None:
        through = Door(checks, threads_alone())
        first = await Sent(*A_LIST, headers=real).through(through)  # as its address, until it is answered
        others = [
            await Sent(*asked, headers=made_up).through(through)
            for asked in (("OPTIONS", "/api/v1/worklist"), ("GET", "/sign-in"), A_LIST)
        ]
        assert [each.status for each in (first, *others)] == [200, 200, 429, 429]
        assert [(await Sent(*A_LIST, headers=real).through(through)).status for _ in range(3)] == [200, 200, 429]

    run(course())


def test_a_launch_that_is_refused_has_a_page_and_fhir_a_resource(monkeypatch: pytest.MonkeyPatch) -> None:
    """HL7 FHIR R4, 3.1.0.6: errors as OperationOutcome."""
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "launches", "1/min")
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "computing", "1/min")

    async def course() -> None:
        through = Door(echo, threads_alone())
        launch, patients = Sent("POST", "/lti/login"), Sent("GET", "/api/fhir/R4/Patient")
        for each in (launch, patients):
            assert (await each.through(through)).status == 200
        page = await Sent("POST", "/lti/launch").through(through)
        resource = await Sent("GET", "/api/fhir/R4/Patient").through(through)
        assert (page.status, resource.status) == (429, 429)
        assert page.answer_headers["content-type"].startswith("text/html")
        assert "frame-ancestors 'none'" in page.answer_headers["content-security-policy"]
        assert b"You are not signed in" in page.answered[1]["body"]
        assert resource.answer_headers["content-type"] == "application/fhir+json"
        assert (resource.json["resourceType"], resource.json["issue"][0]["code"]) == ("OperationOutcome", "throttled")
        assert int(resource.answer_headers["retry-after"]) == int(page.answer_headers["retry-after"]) == 60

    run(course())


def _list(sent: Sent, name: str) -> dict[str, dict[str, int]]:
    """The members of a list of structured fields with their parameters."""
    members: Any = http_sf.parse(sent.answer_headers[name].encode(), tltype="list")
    return {str(member): dict(parameters) for member, parameters in members}
