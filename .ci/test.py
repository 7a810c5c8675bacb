#!/usr/bin/env python3
"""Installs what the tests need and runs them all, or the parts named: `python3 .ci/test.py lint web`.

The last line counts the parts. A part that fails ends the run.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path

# The project's root, for its own packages; this folder is on the path already.
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from frontend.server import environment

if __name__ == "__main__":
    environment.ensure("dev")

from parts import FURTHER, PARTS, PartFailed

# Needs no Python: it runs beside the parts before its turn, on the core they leave free.
ASIDE = "web"


Outcome = tuple[str, int]
"""A part's line of the summary, and how many parts failed."""


@contextmanager
def beside(name: str) -> Iterator[Callable[[], Outcome]]:
    """Runs a part in a process of its own; what comes back waits for it and shows what it said."""
    with tempfile.TemporaryFile("w+", encoding="utf-8") as said:
        command = [sys.executable, __file__, name]
        process = subprocess.Popen(command, stdout=said, stderr=subprocess.STDOUT, start_new_session=True)

        def ended() -> Outcome:
            failed = process.wait()
            said.seek(0)
            shown, _, summary = said.read().rpartition("\n\n")
            print(shown, flush=True)
            return (summary.splitlines() or [f"{name} FAILED"])[0], min(failed, 1)

        try:
            yield ended
        finally:
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGTERM)
                process.wait()


def main(wanted: list[str]) -> int:
    known = {**PARTS, **FURTHER}
    unknown = [name for name in wanted if name not in known]
    if unknown:
        print(f"No part is called {', '.join(unknown)}. The parts are: {', '.join(known)}.", file=sys.stderr)
        return 2
    names = [name for name in known if name in (wanted or PARTS)]
    with beside(ASIDE) if ASIDE in names[1:] else nullcontext() as aside:
        return run(names, aside)


def run(names: list[str], aside: Callable[[], Outcome] | None) -> int:
    told: list[str] = []
    failed = 0
    for name in names:
        line, failed = aside() if aside and name == ASIDE else outcome(name)
        told.append(line)
        if failed:
            break
    print("\n" + "\n".join(told))
    left = len(names) - len(told)
    print(f"{len(told) - failed} passed, {failed} failed" + (f", {left} not run" if left else ""), flush=True)
    return failed


def outcome(name: str) -> Outcome:
    """Runs a part."""
    print(f"\n=== {name}", flush=True)
    began = time.monotonic()
    try:
        {**PARTS, **FURTHER}[name]()
        failed = 0
    except PartFailed as reason:
        print(reason, file=sys.stderr)
        failed = 1
    return f"{name:<11} {'FAILED' if failed else 'passed'} in {time.monotonic() - began:.0f} s", failed


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
