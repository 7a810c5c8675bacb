"""A figure of the trade is a row with a source, never a number in a formula."""

from __future__ import annotations

import ast
import csv
import io
import re
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


# A page's address says neither who found a figure nor whether anybody who knows has looked at it.
PAGE = re.compile(r"\b[\w-]+\.(com|org|net|edu|info)\b|scribd|slideshare|popdentistry", re.IGNORECASE)


@pytest.mark.parametrize("path", TABLES, ids=tree.named)
def test_a_source_is_who_found_it_not_the_page_it_was_seen_on(path: Path) -> None:
    assert not [line for line in tree.text(path).splitlines() if PAGE.search(line)]


MODULES = [path for path in tree.under("planning/", ".py") if "/api/" not in tree.named(path)]
# Bounds of this program and factors between units; every other number with a name is listed here once it has been
# looked at: none of them may be a figure of the trade.
BOUND_OR_UNIT = re.compile(r"_?(MOST|LEAST)_|(.*_)?PER_")
NAMED = {
    "APART_MM": "rounding error",
    "AT_MM": "rounding error",
    "BLOCK": "how numpy adds up",
    "DIGITS": "rounding",
    "DROPPED_BITS": "doubles",
    "FAR": "quantiles",
    "FARTHEST": "a bound, as a factor",
    "FRUSTUM": "geometry",
    "HALF_MM_UM": "a unit",
    "HALVINGS": "steps of a search",
    "HUNDREDTH_MM": "a unit",
    "LANES": "how numpy adds up",
    "LEVEL": "as good as none",
    "LOOKS": "steps of a search",
    "NODES": "points of a quadrature",
    "OVER_MM2": "rounding error",
    "ROUNDING": "of a uniform distribution",
    "SHARES": "quantiles",
    "STEP_MM": "rounding error",
    "STRAIGHT_MM2": "rounding error",
    "TENTH": "the band that is told",
    "HALF_TURN_DEG": "a unit",
    "QUARTER_DEG": "a unit",
    "_ACROSS": "places in a row of parameters",
    "_APART": "points of a quadrature",
    "_DRAWN": "points of a quadrature",
    "_LIKELY": "a weight as good as none",
    "_PLACES": "steps of a search",
    "_ROUNDS": "steps of a search",
    "_SAME": "rounding error",
    "_SPREADS": "geometry",
    "_STEP": "of a difference",
    "_STEPS": "of a search",
    "_STILL": "rounding error",
    "_STRAIGHT": "as good as certain",
    "_STRAIGHT_MM": "rounding error",
    "_TRIED": "of a difference",
}


@pytest.mark.parametrize("path", MODULES, ids=tree.named)
def test_no_module_holds_a_figure(path: Path) -> None:
    assert not figures(tree.text(path))


def test_every_named_number_that_was_looked_at_is_still_there() -> None:
    assigned = {name for path in MODULES for name in _constants(ast.parse(tree.text(path)))}
    assert set(NAMED) <= assigned


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("def f(x): return x * 0.3", [(1, 0.3)]),
        ("def f(x): return x[3] + x[1:4] + x ** 3 + f'{x:.3f}'", []),
        ("def f(x): return round(x, 3) + 2 * x / 1 - 0.5", []),
        ("def f(x): return max(30, x)", [(1, 30)]),
        ("def f(x, most=30): return x", [(1, 30)]),
        ("def f(x):\n    def g(y=4, *, z=5): return y\n    return g", [(2, 4), (2, 5)]),
        ("f = lambda x: x * 0.3", [(1, 0.3)]),
        ("class A:\n    size: int = 25\n    def f(self): return 30", [(2, 25), (3, 30)]),
        ("class A:\n    steps: int = 0", []),
        ("MOST_ROWS = 30  # a page", []),
        ("MOST_ROWS = 30", [(1, 30)]),
        ("# a page\nMOST_ROWS = 30", []),
        ('MOST_ROWS = 30\n"""A page."""', []),
        ("UM_PER_MM = 1000", []),
        ("SET_BACK_MM = 1.5  # as everybody does it", [(1, 1.5)]),
        ("SIZES = (15, 20)  # ISO", [(1, 15), (1, 20)]),
        ("HALF_MM_UM: Final = 500  # the finest mark of a ruler", []),
        ("if True:\n    MOST_ROWS = 30  # hidden from the rule", [(2, 30)]),
    ],
)
def test_the_search_finds_figures_and_only_figures(source: str, expected: list[tuple[int, float]]) -> None:
    assert figures(source) == expected


def figures(source: str) -> list[tuple[int, float]]:
    """Line and value of the numbers that are not plain, an index, an exponent, digits, a width or named with a why."""
    parsed, lines = ast.parse(source), source.splitlines()
    named = {
        id(node) for name, node in _constants(parsed).items() if _may_be_named(name) and _says_why(name, node, lines)
    }
    return sorted(
        {
            (line, value)
            for statement in parsed.body
            if id(statement) not in named
            for line, value in _numbers(statement)
            if value not in PLAIN
        }
    )


def _constants(parsed: ast.Module) -> dict[str, ast.stmt]:
    """Names in capitals that are assigned at the top of a module; of several at once the first."""
    constants: dict[str, ast.stmt] = {}
    for node in parsed.body:
        if isinstance(node, ast.Assign | ast.AnnAssign):
            target: ast.expr = node.targets[0] if isinstance(node, ast.Assign) else node.target
            first = target.elts[0] if isinstance(target, ast.Tuple) else target
            if isinstance(first, ast.Name) and first.id.isupper():
                constants[first.id] = node
    return constants


def _may_be_named(name: str) -> bool:
    return name in NAMED or bool(BOUND_OR_UNIT.match(name))


def _says_why(name: str, node: ast.stmt, lines: list[str]) -> bool:
    """A comment beside or above, or a docstring below; the name of a factor between units says it all."""
    beside, above = "#" in lines[(node.end_lineno or node.lineno) - 1], lines[max(0, node.lineno - 2)]
    below = lines[node.end_lineno or node.lineno] if len(lines) > (node.end_lineno or node.lineno) else ""
    return beside or above.startswith("#") or below.startswith('"""') or "PER_" in name


def _numbers(node: ast.AST) -> Iterator[tuple[int, float]]:
    if isinstance(node, ast.Constant):
        if isinstance(node.value, int | float) and not isinstance(node.value, bool):
            yield node.lineno, node.value
        return
    for child in _counted(node):
        yield from _numbers(child)


def _counted(node: ast.AST) -> Iterator[ast.AST]:
    """The parts of a node whose numbers count as figures."""
    if isinstance(node, ast.Subscript | ast.FormattedValue):
        yield node.value
    elif isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow):
        yield node.left
    elif isinstance(node, ast.Call) and ast.unparse(node.func) == "round":
        yield from node.args[:1]
    else:
        yield from ast.iter_child_nodes(node)
