"""One name for one thing."""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Iterator

import pytest

from tests.architecture import tree

# Names that were given up: what each was called says too little, or says two things. The words are in `WORDS.md`.
GIVEN_UP = {
    "About",
    "Begun",
    "Behind",
    "BenchCode",
    "Felt",
    "Fixed",
    "Happened",
    "InHand",
    "LetPassRecord",
    "Made",
    "Missing",
    "NaturalCanal",
    "NaturalShape",
    "Place",
    "Reported",
    "Sent",
    "Standing",
    "StandingState",
    "StepStanding",
    "Story",
    "VisitsBelow",
    "What",
    "Why",
    "Word",
    "WordRecord",
    "Worked",
}


def _classes(*folders: str) -> dict[str, list[str]]:
    """Where each class stands, by its name."""
    places = defaultdict(list)
    for path in (path for folder in folders for path in tree.under(folder, ".py")):
        for node in ast.walk(ast.parse(tree.text(path))):
            if isinstance(node, ast.ClassDef):
                places[node.name].append(f"{tree.named(path)}:{node.lineno}")
    return places


@pytest.mark.parametrize("folders", [("planning/",), ("cases/domain/", "cases/services/")], ids=["planner", "records"])
def test_no_two_classes_have_one_name(folders: tuple[str, ...]) -> None:
    classes = _classes(*folders)
    assert classes
    assert not {name: places for name, places in classes.items() if len(places) > 1}


def test_no_name_comes_back_that_was_given_up() -> None:
    classes = _classes("planning/", "cases/", "frontend/")
    assert not {name: places for name, places in classes.items() if name in GIVEN_UP}


# What a thing is called where it is worked with is its noun: `canal`, `payload`, `plan_input`.
SAYS_NOTHING = {"told", "found", "one", "given"}


def _locals(module: ast.Module) -> Iterator[tuple[int, str]]:
    """Every name that a module, a function or a loop gives a value to, with its line. A field of a class is none."""
    fields = {
        id(statement.target if isinstance(statement, ast.AnnAssign) else statement.targets[0])
        for class_ in ast.walk(module)
        if isinstance(class_, ast.ClassDef)
        for statement in class_.body
        if isinstance(statement, ast.AnnAssign | ast.Assign)
    }
    for node in ast.walk(module):
        match node:
            case ast.Name(id=name, ctx=ast.Store()) if id(node) not in fields:
                yield node.lineno, name
            case ast.arg(arg=name):
                yield node.lineno, name
            case ast.MatchAs(name=str(name)) | ast.MatchStar(name=str(name)) | ast.ExceptHandler(name=str(name)):
                yield node.lineno, name


def test_a_local_name_says_the_noun() -> None:
    files = [path for path in tree.under("", ".py") if "/migrations/" not in tree.named(path)]
    assert files
    empty = {
        f"{tree.named(path)}:{line}": name
        for path in files
        for line, name in _locals(ast.parse(tree.text(path)))
        if name in SAYS_NOTHING
    }
    assert not empty


@pytest.mark.parametrize(
    "source",
    [
        "found = 1",
        "def f(told: int) -> None: ...",
        "def f(**given: int) -> None: ...",
        "lambda one: one",
        "[one for one in ()]",
        "with open(p) as told: ...",
        "if found := 1: ...",
        "match 1:\n    case int() as found: ...",
        "class A:\n    def f(self) -> None:\n        given = 1",
    ],
)
def test_which_local_names_are_refused(source: str) -> None:
    assert {name for _, name in _locals(ast.parse(source))} & SAYS_NOTHING


def test_a_field_may_be_called_after_what_it_holds() -> None:
    assert not list(_locals(ast.parse("class Inspected:\n    found: str\n    one = 1")))
