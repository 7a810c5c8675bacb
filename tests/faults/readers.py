"""The processes that read images, watched from outside while a server runs."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from threading import Event, Thread

EVERY_S = 0.02
PROC = Path("/proc")


@dataclass(slots=True)
class Reader:
    seen_at: float
    seconds: float = 0.0
    addresses_bytes: int = 0
    """The most it ever took, as the kernel has it."""
    memory_bytes: int = 0


@dataclass(slots=True)
class Readers:
    """Those below the process `server`, from entering to leaving."""

    server: int
    by_process: dict[int, Reader] = field(default_factory=dict)
    at_once: int = 0
    _over: Event = field(default_factory=Event)
    _thread: Thread | None = None

    def __enter__(self) -> Readers:
        self._thread = Thread(target=self._watch, daemon=True)
        self._thread.start()
        return self

    def __exit__(self, *exception: object) -> None:
        self._over.set()
        if self._thread is not None:
            self._thread.join()

    def _watch(self) -> None:
        while not self._over.wait(EVERY_S):
            here = [process for process in _below(self.server) if _is_reader(process)]
            self.at_once = max(self.at_once, len(here))
            for process in here:
                reader = self.by_process.setdefault(process, Reader(time.monotonic()))
                sizes = _status(process)
                reader.addresses_bytes = max(reader.addresses_bytes, sizes.get("VmPeak", 0))
                reader.memory_bytes = max(reader.memory_bytes, sizes.get("VmHWM", 0))
                reader.seconds = time.monotonic() - reader.seen_at


def _below(process: int) -> Iterator[int]:
    """proc(5): the children that each of its threads started, and theirs."""
    for thread in (PROC / str(process) / "task").glob("*/children"):
        for child in map(int, _text(thread).split()):
            yield child
            yield from _below(child)


def _is_reader(process: int) -> bool:
    return "cases.imaging.child" in _text(PROC / str(process) / "cmdline").split("\0")


def _status(process: int) -> dict[str, int]:
    """What is told in kB, in bytes."""
    rows = (line.split() for line in _text(PROC / str(process) / "status").splitlines())
    return {row[0].rstrip(":"): int(row[1]) * 1024 for row in rows if row[2:] == ["kB"]}


def _text(path: Path) -> str:
    """Empty where the process has ended meanwhile."""
    try:
        return path.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ""
