"""How long the order at the tray takes against a general solver, and how it grows with the canals: ratios, one run.

    python -m tests.bench.bench_tray

Both find the same least number of changes; that is checked on the way.
"""

from __future__ import annotations

import random
import time
from collections.abc import Callable, Sequence
from statistics import median

from planning.tray.level_search import by_level
from planning.tray.supersequence import shortest_common_supersequence, without_contained
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


def seconds(work: Callable[..., object], *given: object) -> float:
    start = time.perf_counter()
    work(*given)
    return time.perf_counter() - start


def against_the_solver() -> None:
    print(f"parts of one order, {INSTANCES} instances of {STEPS} steps: HiGHS, building and solving, over ours")
    for canals in range(2, 7):
        ratios, ours = [], []
        for seed in range(INSTANCES):
            places, words = parts(random.Random(seed), canals)
            assert len(shortest_common_supersequence(words)) == by_integer_program(words, places)
            ours.append(seconds(shortest_common_supersequence, words))
            ratios.append(seconds(by_integer_program, words, places) / ours[-1])
        print(
            f"  {canals} canals: median {median(ratios):4.0f} times, least {min(ratios):5.1f}; "
            f"ours median {median(ours) * 1000:.2f} ms, most {max(ours) * 1000:.2f} ms"
        )


def hostile() -> None:
    print(f"six lists of {STEPS} with nothing in common: time over the median of parts of one order")
    alike = [parts(random.Random(seed), 6)[1] for seed in range(INSTANCES)]
    usual = median(seconds(shortest_common_supersequence, words) for words in alike)
    for letters in (3, 4, 6, 10, 20):
        words = uniform(random.Random(letters), 6, letters)
        both = seconds(shortest_common_supersequence, words)
        levels = seconds(by_level, without_contained(words))
        print(f"  {letters:2d} letters: {both / usual:5.0f} times ({both:.2f} s; all levels alone {levels:.2f} s)")


if __name__ == "__main__":
    against_the_solver()
    hostile()
