"""How often somebody may ask: hand arithmetic over a clock that is set by the test."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from random import Random

import pytest

from frontend.server.front import rates
from frontend.server.front.rates import Known, LaneThrottle, TooOften


class Clock:
    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


def throttle(monkeypatch: pytest.MonkeyPatch, rate: str, clock: Clock) -> LaneThrottle:
    monkeypatch.setitem(LaneThrottle.THROTTLE_RATES, "computing", rate)
    monkeypatch.setattr(LaneThrottle, "timer", clock)
    return LaneThrottle("computing")


def spent(rate: LaneThrottle, who: str) -> int:
    """How many go through before one is refused."""
    count = 0
    while True:
        try:
            rate.spend(who)
        except TooOften:
            return count
        count += 1


def test_so_many_at_once_and_then_as_they_come_back(monkeypatch: pytest.MonkeyPatch) -> None:
    clock = Clock()
    rate = throttle(monkeypatch, "30/min", clock)
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


def test_it_is_a_bucket_that_fills_evenly(monkeypatch: pytest.MonkeyPatch) -> None:
    """Held against the bucket itself, of 20 a minute: one in three seconds, so that all times are whole."""
    clock, random = Clock(), Random(20)  # noqa: S311
    rate = throttle(monkeypatch, "20/min", clock)
    left, refused = Fraction(20), 0
    for _ in range(3000):
        pause_s = random.choice((0, 0, 0, 0, 1, 1, 2, 3) * 4 + (40,))
        clock.now += pause_s
        left = min(Fraction(20), left + Fraction(pause_s, 3))
        if left >= 1:
            left -= 1
            rate.spend("priya")
        else:
            refused += 1
            with pytest.raises(TooOften) as refusal:
                rate.spend("priya")
            assert refusal.value.wait_s == ceil((1 - left) * 3)
    assert 100 < refused < 2900


def test_being_refused_costs_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    clock = Clock()
    rate = throttle(monkeypatch, "60/min", clock)
    spent(rate, "priya")
    for _ in range(50):
        with pytest.raises(TooOften):
            rate.spend("priya")
    clock.now += 1
    rate.spend("priya")


def test_one_takes_nothing_from_another(monkeypatch: pytest.MonkeyPatch) -> None:
    rate = throttle(monkeypatch, "5/min", Clock())
    assert (spent(rate, "priya"), spent(rate, "tom")) == (5, 5)


def test_no_more_are_remembered_than_there_is_room_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rates, "MOST_REMEMBERED", 3)
    rate, known = throttle(monkeypatch, "1/min", Clock()), Known()
    for number in range(10):
        rate.spend(str(number))
        known.answered(str(number), signed_in=True)
    # The framework's cache throws out a third when it is full, of those that were not seen for longest.
    with pytest.raises(TooOften):
        rate.spend("9")
    rate.spend("0")
    assert [number for number in range(10) if str(number) in known] == [7, 8, 9]


def test_a_session_that_ended_is_not_known_any_more() -> None:
    known = Known()
    known.answered("session", signed_in=True)
    assert "session" in known
    known.answered("session", signed_in=False)
    assert "session" not in known
