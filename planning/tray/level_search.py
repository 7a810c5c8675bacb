"""A shortest common supersequence by breadth-first search (Moore 1959, from memory): every state, level by level, as
arrays. For words with little in common.

The states are a grid, an axis for each word, numbered row by row. `planning.tray.supersequence` says what a state is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import prod

import numpy as np
from numpy.typing import NDArray

from planning.foundation.errors import TooMuchWork

MOST_STATES = 5_000_000  # six words of twelve letters: about a second
States = NDArray[np.int64]
Moved = NDArray[np.uint32]
"""Which words a letter has moved, a bit for each: more words than bits would have more states than are allowed."""


class _Grid:
    """The states of some words, and the letter that each word is waiting for in each of them."""

    def __init__(self, words: Sequence[Sequence[str]]) -> None:
        self.words = words
        self.sizes = [len(word) + 1 for word in words]
        self.steps = [prod(self.sizes[axis + 1 :]) for axis in range(len(words))]
        """How far apart two states lie that differ by one letter of the word."""
        letters = sorted({letter for word in words for letter in word})
        self.done = len(letters)
        """In place of a letter: the word has none left."""
        self._next = [np.array([*map(letters.index, word), self.done]) for word in words]

    def waiting(self, states: States) -> list[NDArray[np.int64]]:
        """For each word its next letter in each of the states."""
        grid = zip(self._next, self.steps, self.sizes, strict=True)
        return [letters[states // step % size] for letters, step, size in grid]


def by_level(words: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """A shortest common supersequence, the same one every time. Raises TooMuchWork for words with too many states."""
    # Counted before anything is laid out: so many states would not go into memory.
    count = prod(len(word) + 1 for word in words)
    if count > MOST_STATES:
        raise TooMuchWork(reason="The canals' orders differ too much for one order at the tray.", at=("canals",))
    grid = _Grid(words)
    moved: Moved = np.zeros(count, np.uint32)
    moved[0] = 1  # the start counts as reached
    level: States = np.zeros(1, np.int64)
    while not moved[-1]:
        level = np.concatenate([_newly(moved, to, by) for to, by in _moves(grid, level)])
    return _traced(grid, moved)


def _moves(grid: _Grid, level: States) -> Iterator[tuple[States, Moved]]:
    """Where each letter leads from the states of a level, and the words that it moves."""
    waiting = grid.waiting(level)
    for axis, letters in enumerate(waiting):
        # A letter that an earlier word waits for too has been taken with that one.
        first = letters != grid.done
        for earlier in waiting[:axis]:
            first &= earlier != letters
        here = np.flatnonzero(first)
        to, by = level[here], np.zeros(here.size, np.uint32)
        for other in range(axis, len(waiting)):
            same = waiting[other][here] == letters[here]
            to += same * grid.steps[other]
            by |= same.astype(np.uint32) << np.uint32(other)
        yield to, by


def _newly(moved: Moved, to: States, by: Moved) -> States:
    """Those of the states that no one has reached before, each once; `moved` learns how."""
    new = moved[to] == 0
    moved[to[new]] = by[new]
    # In the order of their numbers, so that equal ways are settled the same way every time.
    return np.unique(to[new])


def _traced(grid: _Grid, moved: Moved) -> tuple[str, ...]:
    letters = []
    # The words that a letter moved say where it was taken: no state has to remember the one before it.
    state = moved.size - 1
    while state:
        axes = [axis for axis in range(len(grid.words)) if int(moved[state]) >> axis & 1]
        state -= sum(grid.steps[axis] for axis in axes)
        letters.append(grid.words[axes[0]][state // grid.steps[axes[0]] % grid.sizes[axes[0]]])
    return tuple(reversed(letters))
