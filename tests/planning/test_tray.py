"""The order at the tray against exhaustive search."""

from __future__ import annotations

import random
from collections.abc import Sequence
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.errors import TooMuchWork
from planning.tray import Course, one_at_a_time, shared, shortest_common_supersequence

WORDS = st.lists(st.text("abc", max_size=5), min_size=1, max_size=3)


def by_exhaustion(words: Sequence[str]) -> int:
    """Length of a shortest common supersequence: the plain recursion over what is left of every word."""

    @cache
    def least(left: tuple[str, ...]) -> int:
        heads = {word[0] for word in left if word}
        if not heads:
            return 0
        return 1 + min(least(tuple(w[1:] if w[:1] == head else w for w in left)) for head in heads)

    return least(tuple(words))


def contains(whole: Sequence[str], part: Sequence[str]) -> bool:
    rest = iter(whole)
    return all(letter in rest for letter in part)


@given(WORDS)
def test_the_order_is_as_short_as_exhaustive_search_finds(words: list[str]) -> None:
    assert len(shortest_common_supersequence(words)) == by_exhaustion(words)


@given(WORDS)
def test_every_canal_finds_its_own_order_in_it(words: list[str]) -> None:
    whole = shortest_common_supersequence(words)
    assert all(contains(whole, word) for word in words)


def course(canal: str, *sections: str, shares: bool = True) -> Course:
    return Course(
        canal=canal, sections=tuple(tuple(("phase", letter) for letter in s) for s in sections), shares=shares
    )


def test_hold_points_are_barriers() -> None:
    courses = (course("MB", "ab", "c"), course("DB", "b", "ac"))
    order = shared(courses)
    assert [(s.instrument, s.canals) for s in order.steps] == [
        ("a", ("MB",)),
        ("b", ("MB", "DB")),
        ("a", ("DB",)),
        ("c", ("MB", "DB")),
    ]
    assert order.changes == 4
    assert one_at_a_time(courses).changes == 6


def test_a_canal_that_does_not_share_is_served_on_its_own() -> None:
    order = shared((course("MB", "ab"), course("P", "ab"), course("DB", "ab", shares=False)))
    assert [s.canals for s in order.steps] == [("MB", "P"), ("MB", "P"), ("DB",), ("DB",)]


def test_sharing_is_not_offered_where_one_canal_at_a_time_takes_fewer_changes() -> None:
    order = shared((course("MB", "a", "a"), course("DB", "b", "b")))
    assert (order.changes, [s.canals for s in order.steps]) == (2, [("MB",), ("MB",), ("DB",), ("DB",)])


def test_an_instrument_that_stays_in_the_hand_is_one_change() -> None:
    assert one_at_a_time((course("MB", "a"), course("DB", "ab"))).changes == 2


def test_hostile_lists_are_refused_before_they_take_for_ever() -> None:
    dice = random.Random(7)  # noqa: S311 - a fixed seed, no secret
    words = ["".join(dice.choice("abcdefghijklmnopqrst") for _ in range(40)) for _ in range(8)]
    with pytest.raises(TooMuchWork):
        shortest_common_supersequence(words)
