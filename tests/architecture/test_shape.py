"""Where files stand and how long they may be."""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest

from tests.architecture import tree

TOP = {"README.md", "DEVELOPERS.md", "manage.py", "pyproject.toml", "cases", "planning", "frontend", "tests"}
PYTHON_LINES = 400
TYPESCRIPT_LINES = 300
FUNCTION_LINES = 50
TEST_LINES = 40
# A browser's way through a case is told in one piece.
LONG_TESTS = ("tests/journeys/",)
GENERATED = ("generated.ts", "/migrations/")


def _is_made(name: str) -> bool:
    return any(part in name for part in GENERATED)


def test_the_top_level_holds_what_it_may_and_nothing_else() -> None:
    names = {tree.named(path).split("/")[0] for path in tree.kept()}
    assert {name for name in names if not name.startswith(".")} == TOP


@pytest.mark.parametrize(
    ("endings", "most"), [((".py",), PYTHON_LINES), ((".ts", ".tsx"), TYPESCRIPT_LINES)], ids=["python", "typescript"]
)
def test_no_file_is_longer_than_one_can_hold_in_mind(endings: tuple[str, ...], most: int) -> None:
    files = [path for path in tree.under("", *endings) if not _is_made(tree.named(path))]
    assert files
    too_long = {tree.named(path): count for path in files if (count := tree.text(path).count("\n")) > most}
    assert not too_long


def test_no_function_is_longer_than_a_screen() -> None:
    too_long = {}
    for path in tree.under("", ".py"):
        name = tree.named(path)
        if _is_made(name) or name.startswith(LONG_TESTS):
            continue
        for function in tree.functions(ast.parse(tree.text(path))):
            is_test = name.startswith("tests/") and function.name.startswith("test_")
            if tree.length(function) > (TEST_LINES if is_test else FUNCTION_LINES):
                too_long[f"{name}:{function.name}"] = tree.length(function)
    assert not too_long


# Found by the framework by where they stand or what they extend.
BY_FRAMEWORK = {
    "Command",
    "CasesConfig",
    "FrontendConfig",
    "_StrictExtension",
    "_ValueExtension",
    "check_environment",
    "PersonAdmin",
    "ProgrammeAdmin",
    "KitAdmin",
}


def _names(module: ast.AST) -> Iterator[str]:
    """Every name that a module uses, in words or inside a string, as settings and serializers name what they call."""
    for node in ast.walk(module):
        match node:
            case ast.Name(id=name) | ast.Attribute(attr=name) | ast.alias(name=name):
                yield name
            case ast.Constant(value=str(text)) if " " not in text:
                yield from text.split(".")


def _registers(item: ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef) -> bool:
    """One of several under one name, chosen by the class of what it is given (`functools.singledispatch`)."""
    return any(isinstance(each, ast.Attribute) and each.attr == "register" for each in item.decorator_list)


def test_nothing_stands_here_that_only_tests_use() -> None:
    modules = {
        tree.named(path): ast.parse(tree.text(path))
        for folder in ("planning/", "cases/", "frontend/", ".ci/", "manage.py")
        for path in tree.under(folder, ".py")
        if "/migrations/" not in tree.named(path)
    }
    used = BY_FRAMEWORK.union(*(_names(module) for module in modules.values()))
    unused = [
        f"{name}: {item.name}"
        for name, module in modules.items()
        for item in module.body
        if isinstance(item, ast.ClassDef | tree.Function)
        if item.name not in used and not _registers(item)
    ]
    assert not unused
