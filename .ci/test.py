#!/usr/bin/env python3
"""Installs what the tests need and runs them all, or the parts named: `python3 .ci/test.py lint web`.

The end says what each part took, and what it took before the first one began; its last line counts the parts. A part
that fails ends the run.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

# The project's root, for its own packages; this folder is on the path already.
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from frontend.server import environment

if __name__ == "__main__":
    # Kept when it starts again inside the environment.
    os.environ.setdefault("BEGAN", str(time.time()))
    environment.ensure("dev")

from parts import FURTHER, PARTS, PartFailed

# Each leaves a good part of the machine free: with which part it begins. In its own turn it is waited for.
BESIDE = {"web": "lint", "clients": "openapi", "lighthouse": "sqlite", "fhir": "any_request", "faults": "journeys"}


Outcome = tuple[str, int]
"""A part's line of the summary, and how many parts failed."""


@contextmanager
def beside(name: str) -> Iterator[Callable[[], Outcome]]:
    """Runs a part in a process of its own; what comes back waits for it and shows what it said."""
    with tempfile.TemporaryFile("w+", encoding="utf-8") as output:
        command = [sys.executable, __file__, name]
        process = subprocess.Popen(command, stdout=output, stderr=subprocess.STDOUT, start_new_session=True)

        def ended() -> Outcome:
            failed = process.wait()
            output.seek(0)
            shown, _, summary = output.read().rpartition("\n\n")
            print(shown, flush=True)
            return (summary.splitlines() or [f"{name} FAILED"])[0], min(failed, 1)

        try:
            yield ended
        finally:
            if process.poll() is None:
                # As by Ctrl-C: it ends what it has started.
                os.killpg(process.pid, signal.SIGINT)
                process.wait()


def main(wanted: list[str]) -> int:
    known = {**PARTS, **FURTHER}
    unknown = [name for name in wanted if name not in known]
    if unknown:
        print(f"No part is called {', '.join(unknown)}. The parts are: {', '.join(known)}.", file=sys.stderr)
        return 2
    names = [name for name in known if name in (wanted or PARTS)]
    with ExitStack() as aside:
        return run(names, aside)


def run(names: list[str], aside: ExitStack) -> int:
    began = float(os.environ["BEGAN"])
    before_s = time.time() - began
    lines: list[str] = []
    ends: dict[str, Callable[[], Outcome]] = {}
    failed = 0
    for name in names:
        for other in names:
            if BESIDE.get(other) == name:
                ends[other] = aside.enter_context(beside(other))
        line, failed = ends[name]() if name in ends else outcome(name)
        lines.append(line)
        if failed:
            break
    print("\n" + "\n".join(lines))
    left = len(names) - len(lines)
    print(f"{before_s:.0f} s before the first part, {time.time() - began:.0f} s in all")
    print(f"{len(lines) - failed} passed, {failed} failed" + (f", {left} not run" if left else ""), flush=True)
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
