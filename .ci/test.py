#!/usr/bin/env python3
"""Installs what the tests need and runs them all, or the parts named: `python3 .ci/test.py lint web`.

The last line counts the parts. A part that fails ends the run.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

# The project's root, for its own packages; this folder is on the path already.
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from frontend.server import environment

if __name__ == "__main__":
    environment.ensure("dev")

from parts import FURTHER, PARTS, PartFailed


def main(wanted: list[str]) -> int:
    known = {**PARTS, **FURTHER}
    unknown = [name for name in wanted if name not in known]
    if unknown:
        print(f"No part is called {', '.join(unknown)}. The parts are: {', '.join(known)}.", file=sys.stderr)
        return 2
    names = [name for name in known if name in (wanted or PARTS)]
    told: list[str] = []
    failed = 0
    for name in names:
        print(f"\n=== {name}", flush=True)
        began = time.monotonic()
        try:
            known[name]()
            outcome = "passed"
        except PartFailed as reason:
            print(reason, file=sys.stderr)
            outcome = "FAILED"
            failed = 1
        told.append(f"{name:<10} {outcome} in {time.monotonic() - began:.0f} s")
        if failed:
            break
    print("\n" + "\n".join(told))
    left = len(names) - len(told)
    print(f"{len(told) - failed} passed, {failed} failed" + (f", {left} not run" if left else ""), flush=True)
    return failed


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
