"""The processes that read images, watched from outside while a server runs."""

from __future__ import annotations

import time
from dataclasses import dataclass, field
from threading import Event, Thread

from tests import processes

EVERY_S = 0.02
READER = "cases.imaging.child"


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
            here = [process for process in processes.below(self.server) if READER in processes.words(process)]
            self.at_once = max(self.at_once, len(here))
            for process in here:
                reader = self.by_process.setdefault(process, Reader(time.monotonic()))
                sizes = processes.sizes(process)
                reader.addresses_bytes = max(reader.addresses_bytes, sizes.get("VmPeak", 0))
                reader.memory_bytes = max(reader.memory_bytes, sizes.get("VmHWM", 0))
                reader.seconds = time.monotonic() - reader.seen_at
