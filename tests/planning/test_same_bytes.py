"""The same input gives the same bytes, whatever process makes the plan."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from planning.foundation.encoding import canonical_text, digest
from planning.whole_tooth.plan import plan
from tests.planning.given import molar

PLAN_OF_THE_MOLAR = (
    "from planning.foundation.encoding import canonical_text, digest;"
    "from planning.whole_tooth.plan import plan;"
    "from tests.planning.given import molar;"
    "print(digest(canonical_text(plan(molar()))))"
)


def test_the_same_input_gives_the_same_bytes_in_another_process() -> None:
    """Sets and dictionaries of texts come in another order under another hash seed: no plan may follow it."""
    root = Path(__file__).parents[2]
    digests = {
        subprocess.run(
            [sys.executable, "-c", PLAN_OF_THE_MOLAR],
            cwd=root,
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(root)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert digests == {digest(canonical_text(plan(molar()))) + "\n"}
