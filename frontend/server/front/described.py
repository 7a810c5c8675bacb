"""What the door refuses of each operation, for the API's description."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from frontend.server.front.bodies import TooLong, TooSlow
from frontend.server.front.door import REFUSALS
from frontend.server.front.lanes import lane_of
from frontend.server.front.rates import LaneThrottle, TooOften
from frontend.server.front.rooms import RoomClosed
from frontend.server.front.turns import Busy
from planning.api.refusals import REFUSES


def of_the_door(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook: adds codes to what each operation refuses by its own rules."""
    for address, path in result["paths"].items():
        for method, operation in path.items():
            kinds = _of(method.upper(), address, operation)
            operation[REFUSES] = [*operation.get(REFUSES, ()), *(REFUSALS[kind][1] for kind in kinds)]
    return result


def _of(method: str, address: str, operation: dict[str, Any]) -> Iterator[type[Exception]]:
    lane = lane_of(method, address)
    yield Busy
    if "requestBody" in operation:
        yield from (TooLong, TooSlow)
    if lane.name in LaneThrottle.THROTTLE_RATES or any("key" in way for way in operation["security"]):
        yield TooOften
    if lane.apart:
        yield RoomClosed
