"""On which line of a TOML text each table and key is stated."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

Path = tuple[str | int, ...]

TOKEN = re.compile(
    r"'''.*?'''|\"\"\"(?:\\.|[^\\])*?\"\"\"|'[^'\n]*'|\"(?:\\.|[^\"\\\n])*\"|\#[^\n]*|[\[{]|[\]}]|\n", re.DOTALL
)
"""What a statement's end depends on: strings and comments as wholes, brackets, ends of lines."""


class Lines:
    """Lines of a text that has been read as TOML; the first is 1."""

    def __init__(self, text: str) -> None:
        self._line: dict[Path, int] = {}
        table: Path = ()
        tables: Counter[Path] = Counter()
        for line, statement in _statements(text):
            if statement.lstrip().startswith("["):
                table = _header(tomllib.loads(statement), tables)
                self._line.setdefault(table, line)
            else:
                for path in _keys(tomllib.loads(statement)):
                    self._line.setdefault((*table, *path), line)

    def of(self, path: Sequence[str | int]) -> int:
        """The line of what a path leads to, or of the nearest thing around it that has one."""
        around = (tuple(path[:length]) for length in range(len(path), 0, -1))
        return next((self._line[each] for each in around if each in self._line), 1)


def _statements(text: str) -> Iterator[tuple[int, str]]:
    """Headers and keys with their values, each with its line."""
    line, start, depth, first = 1, 0, 0, 1
    for token in TOKEN.finditer(f"{text}\n"):
        part = token.group()
        # As long as a bracket is open the value goes on over the end of the line.
        depth += (part in ("[", "{")) - (part in ("]", "}"))
        if part == "\n" and depth == 0:
            statement = text[start : token.start()]
            if statement.strip() and not statement.lstrip().startswith("#"):
                yield first, statement
            start, first = token.end(), line + 1
        line += part.count("\n")


def _header(parsed: Mapping[str, Any], tables: Counter[Path]) -> Path:
    """The path of `[a.b]` or `[[a.b]]`, the latter with its number; `tables` counts those that there have been."""
    path: Path = ()
    inside: Any = parsed
    while isinstance(inside, dict) and inside:
        # A header by itself has one key at each level.
        ((key, inside),) = inside.items()
        path = (*path, key)
        if isinstance(inside, list):
            tables[path] += 1
            inside = inside[0]
        if tables[path]:
            path = (*path, tables[path] - 1)
    return path


def _keys(parsed: Mapping[str, Any]) -> Iterator[Path]:
    """The key that a statement gives a value; of an inline table its keys too."""
    for key, value in parsed.items():
        yield (key,)
        if isinstance(value, dict):
            yield from ((key, *path) for path in _keys(value))
