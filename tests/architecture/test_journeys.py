"""How journeys find things and what they wait for: by role and name, and for what is to be seen.

What is drawn and has no role says by a `data-` attribute what it is.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping

import pytest

from tests.architecture import tree

WAITS = ("wait_for_timeout", "sleep")
FINDS = ("locator", "query_selector", "query_selector_all")
BY_LOOKS = re.compile(r"[.#][A-Za-z]|xpath")
# Said in the line before, with the reason.
TIME_ITSELF = "# Time itself:"
BY_LOOKS_HERE = "# By its looks:"
# Inside a script that the page runs: a selector in quotes, as `'.card b'` or `'tbody.needle'`.
QUOTED = re.compile(r"""(?P<quote>['"`])(?P<text>(?:(?!(?P=quote)).)*)(?P=quote)""")
TAG = r"\b(?:a|b|button|dialog|div|g|h[1-6]|li|main|nav|ol|p|path|section|span|svg|table|tbody|td|text|th|tr|ul)"
A_CLASS = re.compile(rf"(?:^|[\s,>+~(\]]|{TAG})\.[a-z][a-z-]*(?![\w(])")
SCRIPT = re.compile(r"document\.|querySelector|\.closest\(|\.matches\(|=>")


def _selectors(source: str) -> Mapping[str, str]:
    """The module's own words, by their names."""
    return {
        target.id: statement.value.value
        for statement in ast.parse(source).body
        if isinstance(statement, ast.Assign)
        and isinstance(statement.value, ast.Constant)
        and isinstance(statement.value.value, str)
        for target in statement.targets
        if isinstance(target, ast.Name)
    }


def _selector(argument: ast.expr, named: Mapping[str, str]) -> str | None:
    match argument:
        case ast.Constant(value=str(selector)):
            return selector
        case ast.Name(id=name):
            return named.get(name)
        case ast.JoinedStr(values=parts):
            return "".join(str(part.value) if isinstance(part, ast.Constant) else "x" for part in parts)
        case _:
            return None


def faults(source: str, elsewhere: Mapping[str, str]) -> Iterator[str]:
    """Every wait of a fixed time, and everything that is found by how it looks or by where it lies."""
    lines = source.splitlines()
    named = {**elsewhere, **_selectors(source)}
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
            continue
        called = node.func.attr
        if called in WAITS and TIME_ITSELF not in lines[node.lineno - 2]:
            yield f"{node.lineno}: {called}"
        if called in FINDS:
            selector = _selector(node.args[0], named)
            if selector is None or BY_LOOKS.search(selector):
                yield f"{node.lineno}: {selector}"


def _classes_in_scripts(source: str) -> Iterator[str]:
    """Every selector by class in a script that the page runs."""
    lines = source.splitlines()
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Constant) or not isinstance(node.value, str) or not SCRIPT.search(node.value):
            continue
        if lines[node.lineno - 2].startswith(BY_LOOKS_HERE):
            continue
        for quoted in QUOTED.finditer(node.value):
            if A_CLASS.search(quoted["text"]):
                yield f"{node.lineno}: {quoted['text']}"


def test_journeys_wait_for_what_is_to_be_seen_and_find_it_by_role_and_name() -> None:
    files = tree.under("tests/journeys", ".py")
    assert files
    named = {name: selector for path in files for name, selector in _selectors(tree.text(path)).items()}
    faults_by_file = {
        tree.named(path): [*faults(tree.text(path), named), *_classes_in_scripts(tree.text(path))] for path in files
    }
    assert {name: each for name, each in faults_by_file.items() if each} == {}


PLANTED = (
    "page.wait_for_timeout(50)",
    "time.sleep(1)",
    'page.locator(".now-card")',
    'page.locator("#main")',
    'page.locator(f".{name}")',
    'page.locator("xpath=..")',
    'CARD = ".card"\npage.locator(CARD)',
    "page.locator(name)",
)
TAKEN = (
    "# Time itself: no clock of a test moves it.\ntime.sleep(1)",
    'page.locator("[data-drawn=mark]")',
    'page.get_by_role("button", name="Done.")',
)


@pytest.mark.parametrize("source", PLANTED)
def test_what_is_refused(source: str) -> None:
    assert list(faults(source, {}))


@pytest.mark.parametrize("source", TAKEN)
def test_what_is_taken(source: str) -> None:
    assert not list(faults(source, {}))


@pytest.mark.parametrize(
    "script",
    [
        "() => document.querySelector('.now-card')",
        "() => document.querySelectorAll('dialog .button, table:has(tbody.needle)')",
        "all => all.filter(each => !each.closest('.unseen, svg'))",
        "const all = () => [text('.chair:not(:has(.main)) b')]",
    ],
)
def test_what_no_script_of_a_page_may_look_for(script: str) -> None:
    assert list(_classes_in_scripts(f'"""The journey."""\nSCRIPT = """{script}"""'))
    assert not list(_classes_in_scripts(f'# By its looks: the reason.\nSCRIPT = """{script}"""'))


@pytest.mark.parametrize(
    "script",
    [
        "() => document.querySelector('[data-drawn=mark]').naturalWidth > 1.5",
        "file => new File([file], 'shared.png')",
    ],
)
def test_what_a_script_of_a_page_may_say(script: str) -> None:
    assert not list(_classes_in_scripts(f'"""The journey."""\nSCRIPT = """{script}"""'))
