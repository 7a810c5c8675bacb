"""Fewest changes, held against solvers that know nothing of the problem.

Judges: the integer program solver HiGHS and the shortest paths of scipy, and plain recursion (`tests.reference`).
"""

from __future__ import annotations

import random
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.foundation.errors import TooMuchWork
from planning.tray.level_search import MOST_STATES, by_level
from planning.tray.supersequence import MOST_REACHED, by_best_first, shortest_common_supersequence, without_contained
from tests.draws import draws
from tests.reference.supersequences import by_exhaustion, by_integer_program, by_shortest_path

ANY = st.lists(st.text("abc", max_size=5), min_size=1, max_size=3)
TWELVE = 12
CHUNKS = range(draws(20))
EACH = 15  # in all three hundred sets of parts of one order, where all are drawn


def contains(whole: Sequence[str], part: Sequence[str]) -> bool:
    rest = iter(whole)
    return all(letter in rest for letter in part)


def parts_of_one_order(dice: random.Random) -> tuple[list[str], list[str]]:
    """An order with repeats, and lists of up to six canals that leave some of it out."""
    order = [dice.choice("abcdefghijklmn"[: dice.randint(3, 14)]) for _ in range(dice.randint(6, 18))]
    kept = [dice.choice([0.5, 0.75, 0.9]) for _ in range(dice.randint(2, 6))]
    return order, ["".join(letter for letter in order if dice.random() < share)[:TWELVE] for share in kept]


def uniform(dice: random.Random, words: int, letters: int, most: int) -> list[str]:
    pool = "abcdefghijklmnopqrst"[:letters]
    return ["".join(dice.choice(pool) for _ in range(dice.randint(most // 2, most))) for _ in range(words)]


@pytest.mark.parametrize("chunk", CHUNKS)
def test_parts_of_one_order_take_as_few_letters_as_an_integer_program_says(chunk: int) -> None:
    dice = random.Random(chunk)  # noqa: S311 - a fixed seed, no secret
    for _ in range(EACH):
        order, words = parts_of_one_order(dice)
        # The order itself contains every part, so the program needs no more places than it has.
        least = by_integer_program(words, len(order))
        for shortest in (shortest_common_supersequence(words), by_level(without_contained(words))):
            assert len(shortest) == least, words
            assert all(contains(shortest, word) for word in words), words


@pytest.mark.parametrize(("words", "letters", "most"), [(4, 10, 8), (4, 3, 8), (3, 20, 12), (6, 4, 4), (5, 4, 5)])
@pytest.mark.parametrize("seed", range(6))
def test_words_with_nothing_in_common_take_as_few_letters_as_a_shortest_path(
    words: int, letters: int, most: int, seed: int
) -> None:
    sequences = uniform(random.Random(seed), words, letters, most)  # noqa: S311 - a fixed seed, no secret
    least = by_shortest_path(sequences)
    for shortest in (shortest_common_supersequence(sequences), by_level(without_contained(sequences))):
        assert len(shortest) == least, sequences
        assert all(contains(shortest, word) for word in sequences), sequences


@given(ANY)
def test_any_few_words_take_as_few_letters_as_recursion_finds(words: list[str]) -> None:
    shortest = shortest_common_supersequence(words)
    assert len(shortest) == by_exhaustion(words)
    assert all(contains(shortest, word) for word in words)


@given(ANY)
def test_the_two_searches_agree(words: list[str]) -> None:
    first = by_best_first(without_contained(words), most=MOST_REACHED)
    assert first is not None
    assert len(first) == len(by_level(without_contained(words)))


@given(ANY)
def test_a_word_that_is_dropped_is_contained_in_one_that_stays(words: list[str]) -> None:
    kept = without_contained(words)
    assert all(any(contains(longer, word) for longer in kept) for word in words)
    assert not any(contains(word, other) for word in kept for other in kept if word is not other)


def test_words_that_make_the_first_search_give_up_are_searched_level_by_level() -> None:
    sequences = uniform(random.Random(1), 6, 10, TWELVE)  # noqa: S311 - a fixed seed, no secret
    assert by_best_first(sequences, most=MOST_REACHED) is None
    shortest = shortest_common_supersequence(sequences)
    assert shortest == by_level(without_contained(sequences))
    assert all(contains(shortest, word) for word in sequences)


def test_words_with_too_many_states_are_refused_before_any_is_visited() -> None:
    letters = "abcdefghijkl"
    sequences = [letters[n:] + letters[:n] for n in range(8)]
    assert MOST_STATES < 13**8
    with pytest.raises(TooMuchWork, match="differ too much") as refusal:
        shortest_common_supersequence(sequences)
    assert refusal.value.pointer == ("canals",)
