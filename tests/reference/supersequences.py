"""Length of a shortest common supersequence by others: two solvers that know nothing of the problem, and recursion."""

from __future__ import annotations

import itertools
from collections import defaultdict
from collections.abc import Sequence
from functools import cache

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import shortest_path

Word = Sequence[str]


def by_exhaustion(words: Sequence[Word]) -> int:
    """The plain recursion over what is left of every word."""

    @cache
    def least(left: tuple[Word, ...]) -> int:
        heads = {word[0] for word in left if word}
        if not heads:
            return 0
        return 1 + min(least(tuple(w[1:] if w and w[0] == head else w for w in left)) for head in heads)

    return least(tuple(words))


def by_integer_program(words: Sequence[Word], places: int) -> int:
    """By HiGHS (scipy.optimize.milp), for words that have a supersequence of `places` letters.

    y[a, t]: place t holds letter a. c[w, i, t]: letter i of word w stands at place t or before. A place holds one
    letter at most; a word goes on by a letter only where the place holds it, and only after the letter before.
    """
    program = _Program()
    letters = sorted({letter for word in words for letter in word})
    for t in range(places):
        program.at_most(1, [(("y", a, t), 1) for a in letters])
    for w, word in enumerate(dict.fromkeys(map(tuple, words))):
        for (i, letter), t in itertools.product(enumerate(word), range(places)):
            here: Name = ("c", w, i, t)
            before: list[Name] = [("c", w, i, t - 1)] if t else []
            letter_before: list[Name] = [("c", w, i - 1, t - 1)] if t else []
            program.at_most(0, [(here, 1), *((name, -1) for name in before), (("y", letter, t), -1)])
            program.at_most(0, [*((name, 1) for name in before), (here, -1)])
            if i:
                program.at_most(0, [(here, 1), *((name, -1) for name in letter_before)])
        if word:
            program.at_most(-1, [(("c", w, len(word) - 1, places - 1), -1)])
    return program.least([("y", a, t) for a in letters for t in range(places)])


Name = tuple[str | int, ...]
Terms = list[tuple[Name, int]]


class _Program:
    """Rows over variables that are 0 or 1."""

    def __init__(self) -> None:
        self.number: dict[Name, int] = defaultdict(lambda: len(self.number))
        self.cells: list[tuple[int, int, int]] = []
        self.most: list[int] = []

    def at_most(self, most: int, terms: Terms) -> None:
        self.cells += [(len(self.most), self.number[name], factor) for name, factor in terms]
        self.most.append(most)

    def least(self, counted: list[Name]) -> int:
        """The least count of variables that are 1. Fails where the solver does not prove it."""
        cost = np.zeros(len(self.number))
        cost[[self.number[name] for name in counted]] = 1
        row, column, factor = zip(*self.cells, strict=True)
        matrix = coo_matrix((factor, (row, column)), shape=(len(self.most), cost.size)).tocsr()
        rows = LinearConstraint(matrix, -np.inf, self.most)
        solution = milp(cost, constraints=rows, integrality=np.ones(cost.size), bounds=Bounds(0, 1))
        assert solution.status == 0, solution.message
        optimum: float = solution.fun
        return round(optimum)


def by_shortest_path(words: Sequence[Word]) -> int:
    """By scipy's shortest path through the grid of all states; a letter may move any of the words that wait for it."""
    sizes = [len(word) + 1 for word in words]
    states = np.array(list(itertools.product(*map(range, sizes))))
    waiting = np.array([[*map(ord, "".join(word)), 0] + [0] * (max(sizes) - len(word) - 1) for word in words])
    letters = np.stack([waiting[w, states[:, w]] for w in range(len(words))], axis=1)
    steps = np.array([np.prod(sizes[w + 1 :], dtype=int) for w in range(len(words))])
    sources, targets = [], []
    for chosen in itertools.product([False, True], repeat=len(words)):
        if any(chosen):
            of_chosen = letters[:, list(chosen)]
            alike = np.flatnonzero((of_chosen == of_chosen[:, :1]).all(axis=1) & (of_chosen[:, 0] > 0))
            sources.append(alike)
            targets.append(alike + steps[list(chosen)].sum())
    source, target = np.concatenate(sources), np.concatenate(targets)
    graph = coo_matrix((np.ones(source.size), (source, target)), shape=(len(states), len(states))).tocsr()
    return int(shortest_path(graph, unweighted=True, indices=0)[-1])
