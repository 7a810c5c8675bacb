"""What may not stand in any file: places of one machine, addresses of registries, things that cannot fail."""

from __future__ import annotations

import ast
import re

import pytest

from tests.architecture import tree

# Patterns are written so that this file does not contain what it looks for.
FORBIDDEN = {
    "a folder of somebody's machine": r"(?<![\w.\-])/(?:root|home|work|Users|mnt|opt)/\w",
    "a registry's address": r"registry\.(?:npmjs|yarnpkg)|python[h]osted|\bpy[p]i\.org|deb\.[d]ebian",
    "a reference into somebody's notes": r"\bshared/(?:design|evidence|samples)|\bdecisions-(?:clinical|engineering)\b",
    "the number of a ticket": r"\b[Ii]ssues? #?\d|\b[Ss]tage[- ]\d\b",
}


def _places(pattern: str) -> list[str]:
    places = []
    for path in tree.kept():
        if path.suffix in tree.BINARY:
            continue
        for number, line in enumerate(tree.text(path).splitlines(), start=1):
            if re.search(pattern, line):
                places.append(f"{tree.named(path)}:{number}: {line.strip()[:100]}")
    return places


@pytest.mark.parametrize("what", FORBIDDEN)
def test_no_file_holds(what: str) -> None:
    assert not _places(FORBIDDEN[what])


PLANTED = ["see /ho" + "me/someone/notes", "https://pypi" + ".org/simple", "as in issue" + " 7"]


@pytest.mark.parametrize("planted", PLANTED)
def test_a_planted_line_is_found(planted: str) -> None:
    assert any(re.search(pattern, planted) for pattern in FORBIDDEN.values())


def test_lock_files_name_versions_and_digests_but_no_address() -> None:
    python = tree.under(".lock/", ".txt")
    npm = [path for path in tree.kept() if path.name == "package-lock.json"]
    assert python
    assert npm
    assert not [tree.named(path) for path in python if "://" in tree.text(path)]
    assert not [tree.named(path) for path in npm if re.search(r'"resolved"', tree.text(path))]


def test_every_test_claims_something() -> None:
    functions = [
        (f"{tree.named(path)}:{function.name}", function)
        for path in tree.under("tests/", ".py")
        for function in tree.functions(ast.parse(tree.text(path)))
    ]
    claiming = _claiming([function for _, function in functions])
    assert not [name for name, function in functions if _is_test(function) and not _claims(function, claiming)]


def test_a_test_that_claims_nothing_is_found() -> None:
    source = "def fine(x): assert x\ndef test_a(): fine(1)\ndef test_b(): print(2)\ndef test_c(): test_b()"
    functions = list(tree.functions(ast.parse(source)))
    claiming = _claiming(functions)
    assert [function.name for function in functions if not _claims(function, claiming)] == ["test_b", "test_c"]


def _is_test(function: tree.Function) -> bool:
    return function.name.startswith("test_")


def _claiming(functions: list[tree.Function]) -> set[str]:
    """Names of the functions that assert something, by themselves or through another of them."""
    claiming: set[str] = set()
    while True:
        names = {function.name for function in functions if not _is_test(function) and _claims(function, claiming)}
        if names == claiming:
            return claiming
        claiming = names


def _claims(function: tree.Function, claiming: set[str]) -> bool:
    for node in ast.walk(function):
        if isinstance(node, ast.Assert):
            return True
        if isinstance(node, ast.Call):
            called = ast.unparse(node.func).split(".")[-1]
            if called in claiming or re.search(r"^(raises|fail|expect|check)|assert|validate", called):
                return True
    return False
