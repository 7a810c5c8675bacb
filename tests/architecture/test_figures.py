"""A figure of the trade is a row with a source, never a number in a formula."""

from __future__ import annotations

import ast
import csv
import io
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture import tree

KNOWN = {
    "read",
    "read (abstract, table or opening page)",
    "read second-hand",
    "from memory",
    "derived",
    "common practice",
    "programme rule",
}
TABLES = tree.under("planning/data/", ".csv")
# Counting, halving, doubling; everything else is a figure.
PLAIN = {0, 1, 2, 0.5}


def test_there_are_tables() -> None:
    assert TABLES


@pytest.mark.parametrize("path", TABLES, ids=tree.named)
def test_every_row_says_where_it_is_from_and_how_it_is_known(path: Path) -> None:
    lines = [line for line in tree.text(path).splitlines() if line.strip() and not line.startswith("#")]
    rows = list(csv.DictReader(io.StringIO("\n".join(lines))))
    assert rows
    assert {"source", "year", "where", "know"} <= set(rows[0])
    assert not [row for row in rows if not (row["source"] or "").strip()]
    assert not [row for row in rows if row["know"] not in KNOWN]


def test_no_formula_holds_a_figure() -> None:
    found = []
    for path in tree.under("planning/", ".py"):
        if "/api/" not in tree.named(path):
            found += [f"{tree.named(path)}:{line}: {value}" for line, value in figures(tree.text(path))]
    assert not found


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("def f(x): return x * 0.3", [(1, 0.3)]),
        ("def f(x): return x[3] + x[1:4] + x ** 3 + f'{x:.3f}'", []),
        ("def f(x): return round(x, 3) + 2 * x / 1 - 0.5", []),
        ("def f(x): return max(30, x)", [(1, 30)]),
    ],
)
def test_the_search_finds_figures_and_only_figures(source: str, expected: list[tuple[int, float]]) -> None:
    assert figures(source) == expected


def figures(source: str) -> list[tuple[int, float]]:
    """Line and value of the numbers in function bodies that are not plain, an index, an exponent, digits or a width."""
    return [
        (line, value)
        for function in tree.functions(ast.parse(source))
        for statement in function.body
        for line, value in _numbers(statement)
        if value not in PLAIN
    ]


def _numbers(node: ast.AST) -> Iterator[tuple[int, float]]:
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int | float) and not isinstance(node.value, bool):
            yield node.lineno, node.value
        return
    for child in _counted(node):
        yield from _numbers(child)


def _counted(node: ast.AST) -> Iterator[ast.AST]:
    """The parts of a node whose numbers count as figures. A nested function is walked on its own."""
    if isinstance(node, tree.Function):
        return
    if isinstance(node, ast.Subscript | ast.FormattedValue):
        yield node.value
    elif isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow):
        yield node.left
    elif isinstance(node, ast.Call) and ast.unparse(node.func) == "round":
        yield from node.args[:1]
    else:
        yield from ast.iter_child_nodes(node)
