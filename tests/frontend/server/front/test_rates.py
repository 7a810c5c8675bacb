"""How often somebody may ask: hand arithmetic over a clock that is set by the test."""

from __future__ import annotations

import pytest

from frontend.server.front import rates
from frontend.server.front.rates import Known, Rate, TooOften


class Clock:
    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


def spent(rate: Rate, who: str) -> int:
    """How many go through before one is refused."""
    count = 0
    while True:
        try:
            rate.spend(who)
        except TooOften:
            return count
        count += 1


def test_so_many_at_once_and_then_as_they_come_back() -> None:
    clock = Clock()
    rate = Rate(30, clock)
    assert spent(rate, "priya") == 30
    clock.now += 1.9
    with pytest.raises(TooOften) as refusal:
        rate.spend("priya")
    assert refusal.value.wait_s == 1
    clock.now += 0.1
    rate.spend("priya")  # thirty a minute are one in two seconds
    with pytest.raises(TooOften) as refusal:
        rate.spend("priya")
    assert refusal.value.wait_s == 2
    clock.now += 3600
    assert spent(rate, "priya") == 30


def test_being_refused_costs_nothing() -> None:
    clock = Clock()
    rate = Rate(60, clock)
    spent(rate, "priya")
    for _ in range(50):
        with pytest.raises(TooOften):
            rate.spend("priya")
    clock.now += 1
    rate.spend("priya")


def test_one_takes_nothing_from_another() -> None:
    rate = Rate(5, Clock())
    assert (spent(rate, "priya"), spent(rate, "tom")) == (5, 5)


def test_no_more_are_remembered_than_there_is_room_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rates, "MOST_REMEMBERED", 3)
    rate, known = Rate(5, Clock()), Known()
    for number in range(10):
        rate.spend(str(number))
        known.answered(str(number), signed_in=True)
    assert list(rate._left) == ["7", "8", "9"]
    assert [number for number in range(10) if str(number) in known] == [7, 8, 9]


def test_a_session_that_ended_is_not_known_any_more() -> None:
    known = Known()
    known.answered("session", signed_in=True)
    assert "session" in known
    known.answered("session", signed_in=False)
    assert "session" not in known
