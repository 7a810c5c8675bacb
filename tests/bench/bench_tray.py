"""How long the order at the tray takes against a general solver, and how it grows with the canals.

    python -m tests.bench.bench_tray

Both find the same least number of changes; that is checked on the way.
"""

from __future__ import annotations

import random
import time
from collections.abc import Callable, Iterator, Sequence
from statistics import median

from planning.tray.level_search import by_level
from planning.tray.supersequence import shortest_common_supersequence, without_contained
from tests.bench.rows import Row, alone
from tests.reference.supersequences import by_integer_program

INSTANCES = 40
STEPS = 12
Words = Sequence[Sequence[str]]


def parts(dice: random.Random, canals: int) -> tuple[int, list[str]]:
    """Lists of one technique: three passes over a series, some of it left out in each canal."""
    series = "abcdefgh"[: dice.randint(4, 6)]
    order = series * 3
    return len(order), ["".join(a for a in order if dice.random() < 0.75)[:STEPS] for _ in range(canals)]


def uniform(dice: random.Random, canals: int, letters: int) -> list[str]:
    return ["".join(dice.choice("abcdefghijklmnopqrst"[:letters]) for _ in range(STEPS)) for _ in range(canals)]


def seconds(work: Callable[..., object], *arguments: object) -> float:
    start = time.perf_counter()
    work(*arguments)
    return time.perf_counter() - start


def rows() -> Iterator[Row]:
    yield from against_the_solver()
    yield from hostile()


def against_the_solver() -> Iterator[Row]:
    """Parts of one order; the solver's time is building and solving."""
    for canals in range(2, 7):
        ours, theirs = [], []
        for seed in range(INSTANCES):
            places, words = parts(random.Random(seed), canals)
            assert len(shortest_common_supersequence(words)) == by_integer_program(words, places)
            ours.append(seconds(shortest_common_supersequence, words))
            theirs.append(seconds(by_integer_program, words, places))
        ratios = [mine / solver for mine, solver in zip(ours, theirs, strict=True)]
        yield Row(
            what=f"{canals} canals, the slowest of {INSTANCES}",
            now=max(ratios),
            median=median(ratios),
            against="HiGHS, building and solving",
            goal=1,
        )


def hostile() -> Iterator[Row]:
    """Six lists with nothing in common."""
    alike = [parts(random.Random(seed), 6)[1] for seed in range(INSTANCES)]
    usual = median(seconds(shortest_common_supersequence, words) for words in alike)
    for letters in (3, 4, 6, 10, 20):
        words = uniform(random.Random(letters), 6, letters)
        for what, work, sequences in (
            ("both ways", shortest_common_supersequence, words),
            ("all levels alone", by_level, without_contained(words)),
        ):
            yield Row(
                what=f"six lists of {letters} letters, {what}",
                now=seconds(work, sequences) / usual,
                against="parts of one order",
            )


if __name__ == "__main__":
    alone("tray", rows())
