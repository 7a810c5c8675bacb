"""A shortest common supersequence: a shortest word that contains the letters of every given word in their order.

It is exact, in bounded work. Here a word is a canal's list of instruments, and a letter is an instrument.

A state says how many letters of each word are behind. Taking a letter moves every word whose next letter it is: a
word left waiting could only be further back, and whatever finishes from further back finishes from further on. So a
shortest supersequence is a shortest way from no letters behind to all letters behind, every letter taken costing one.

Two searches find it. A* visits few states where the words are parts of one order, as the lists of one technique are.
Its bound is admissible: any way on must still take each letter at least as often as the one word does that needs it
most, so the sum of these over the letters is never more than the truth, and the first way to the end is a shortest.
Taking a letter lowers the bound by at most one, so no state is ever reached more cheaply after it has been left.
Words that have little in common make A* visit most states. Then all of them are searched, level by level, many at a
time: a state on level n is reached with n letters and not with fewer, so the level of the end is the answer.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Iterator, Mapping, Sequence

from planning.tray.level_search import by_level

MOST_REACHED = 2_000  # about 10 ms; parts of one order need a few dozen, and beyond it all levels are searched sooner
Word = Sequence[str]
State = tuple[int, ...]


def shortest_common_supersequence(words: Sequence[Word]) -> tuple[str, ...]:
    """A shortest common supersequence of the words, the same one every time.

    Raises TooMuchWork where no search within bounds would find it.
    """
    needed = without_contained(words)
    shortest = by_best_first(needed, most=MOST_REACHED)
    return by_level(needed) if shortest is None else shortest


def without_contained(words: Sequence[Word]) -> list[tuple[str, ...]]:
    """The words without those that another word contains: whatever contains the longer word contains them too."""
    distinct = sorted({tuple(word) for word in words}, key=lambda word: (-len(word), word))
    kept: list[tuple[str, ...]] = []
    for word in distinct:
        if not any(_contains(longer, word) for longer in kept):
            kept.append(word)
    return kept


def _contains(whole: Word, part: Word) -> bool:
    # `in` goes on from where it found the letter before, so order counts.
    rest = iter(whole)
    return all(letter in rest for letter in part)


def by_best_first(words: Sequence[Word], *, most: int) -> tuple[str, ...] | None:
    """A shortest common supersequence by A* (Hart, Nilsson & Raphael 1968, from memory); None once more than `most`
    states have been reached.
    """
    least = _bound(words)
    start, end = (0,) * len(words), tuple(map(len, words))
    queue = [(least(start), 0, start)]
    came: dict[State, tuple[State, str]] = {}
    cost = {start: 0}
    while queue:
        _, minus_done, state = heapq.heappop(queue)
        if state == end:
            return _traced(came, state)
        if -minus_done > cost[state]:
            # A cheaper way to it has been queued since: this one is stale (there is no lowering in a heap).
            continue
        for letter, following in _moves(words, state):
            price = cost[state] + 1
            if price < cost.get(following, price + 1):
                cost[following] = price
                came[following] = (state, letter)
                # Among equals the one furthest along first.
                heapq.heappush(queue, (price + least(following), -price, following))
        if len(cost) > most:
            return None
    return ()


def _moves(words: Sequence[Word], state: State) -> Iterator[tuple[str, State]]:
    for letter in sorted({w[i] for w, i in zip(words, state, strict=True) if i < len(w)}):
        yield letter, tuple(i + (i < len(w) and w[i] == letter) for w, i in zip(words, state, strict=True))


def _bound(words: Sequence[Word]) -> Callable[[State], int]:
    """A lower bound of the letters still to take: for each letter, the most that any one word still needs of it."""
    letters = sorted({letter for word in words for letter in word})
    left = [[[word[i:].count(letter) for letter in letters] for i in range(len(word) + 1)] for word in words]

    def least(state: State) -> int:
        return sum(map(max, zip(*(counts[i] for counts, i in zip(left, state, strict=True)), strict=True)))

    return least


def _traced(came: Mapping[State, tuple[State, str]], state: State) -> tuple[str, ...]:
    letters = []
    while state in came:
        state, letter = came[state]
        letters.append(letter)
    return tuple(reversed(letters))
