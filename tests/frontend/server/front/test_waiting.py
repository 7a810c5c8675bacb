"""Who waits for what changes is asked for again and again until something did, or nobody is there any more."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest

from frontend.server.front import waiting
from frontend.server.front.bodies import Gone
from frontend.server.front.gateway import Answer
from frontend.server.front.turns import Busy
from frontend.server.front.waiting import MOST_OF_ONE, MOST_WAITING, Waiting
from tests.frontend.server.front.test_other_systems import PATIENCE_S

NOTHING, SOMETHING = Answer(200, ((b"nothing-new", b"1"),), b"[]"), Answer(200, (), b"[1]")


async def stays() -> dict[str, Any]:
    """Nobody goes away."""
    future: asyncio.Future[dict[str, Any]] = asyncio.get_running_loop().create_future()
    return await future


def test_many_wait_and_are_asked_again_the_more_rarely_the_more_they_are(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(waiting, "LEAST_PAUSE_S", 0.001)
    monkeypatch.setattr(waiting, "MOST_ASKED_A_SECOND", asked_a_second := 100 * MOST_WAITING)

    async def course() -> None:
        front, changed, pauses = Waiting(), asyncio.Event(), [0.0]

        async def ask() -> Answer:
            pauses.append(front.pause_s)
            return SOMETHING if changed.is_set() else NOTHING

        def waits(who: str) -> asyncio.Task[Answer]:
            return asyncio.create_task(front.answer(ask, wait_s=30, who=who, receive=stays))

        those = [waits(f"system {number // MOST_OF_ONE}") for number in range(MOST_WAITING)]
        with pytest.raises(Busy):
            await waits("another system")
        those.pop().cancel()
        with pytest.raises(Busy):
            await waits("system 0")
        changed.set()
        assert {answer.body for answer in await asyncio.gather(*those)} == {SOMETHING.body}
        assert max(pauses) * asked_a_second == pytest.approx(MOST_WAITING)
        assert not front.waiting

    asyncio.run(asyncio.wait_for(course(), PATIENCE_S))


def test_nobody_is_asked_for_who_has_gone_away() -> None:
    async def course() -> int:
        asked = []

        async def ask() -> Answer:
            asked.append(1)
            return NOTHING

        async def leaves() -> dict[str, Any]:
            return {"type": "http.disconnect"}

        with pytest.raises(Gone):
            await Waiting().answer(ask, wait_s=30, who="system", receive=leaves)
        return len(asked)

    assert asyncio.run(asyncio.wait_for(course(), PATIENCE_S)) == 1
