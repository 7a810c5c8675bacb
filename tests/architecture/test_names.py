"""One name for one thing."""

from __future__ import annotations

import ast
from collections import defaultdict

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
