"""Processes seen from outside, by proc(5)."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

PROC = Path("/proc")


def below(process: int) -> Iterator[int]:
    """The children that each of its threads started, and theirs."""
    for thread in (PROC / str(process) / "task").glob("*/children"):
        for child in map(int, _text(thread).split()):
            yield child
            yield from below(child)


def words(process: int) -> list[str]:
    """What it was started with."""
    return _text(PROC / str(process) / "cmdline").split("\0")


def sizes(process: int) -> dict[str, int]:
    """What is told of it in kB, in bytes; the most that it ever held is `VmHWM`."""
    rows = (line.split() for line in _text(PROC / str(process) / "status").splitlines())
    return {row[0].rstrip(":"): int(row[1]) * 1024 for row in rows if row[2:] == ["kB"]}


def _text(path: Path) -> str:
    """Empty where the process has ended meanwhile."""
    try:
        return path.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ""
