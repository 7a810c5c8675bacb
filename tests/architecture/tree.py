"""The project's files as the checks see them: what is kept, not what is made on the spot."""

from __future__ import annotations

import ast
import subprocess
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
# The lock files are checked by rules of their own.
BINARY = {".png", ".webp", ".woff2", ".ico"}


@cache
def kept() -> tuple[Path, ...]:
    """Every file under version control, and every one that is about to be."""
    listed = subprocess.run(
        ["git", "-c", f"safe.directory={ROOT}", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    return tuple(path for name in sorted(filter(None, listed.split("\0"))) if (path := ROOT / name).is_file())


def named(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def under(folder: str, *endings: str) -> list[Path]:
    return [path for path in kept() if named(path).startswith(folder) and path.suffix in endings]


def text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(tree: ast.AST) -> Iterator[Function]:
    for node in ast.walk(tree):
        if isinstance(node, Function):
            yield node


def length(function: Function) -> int:
    """Lines of a function without its docstring and decorators."""
    lines = (function.end_lineno or function.lineno) - function.lineno + 1
    first = function.body[0]
    if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str):
        lines -= (first.end_lineno or first.lineno) - first.lineno + 1
    return lines
