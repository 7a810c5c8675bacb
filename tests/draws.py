"""How much a test that draws draws: a share in the gate, all of it with DRAWS=whole (`python3 .ci/test.py whole`)."""

from __future__ import annotations

import os

WHOLE = os.environ.get("DRAWS") == "whole"
SHARE = 4


def draws(whole: int, share: int = SHARE) -> int:
    """`whole` or its share, one in so many. Bounds of what is counted must follow the number that comes back."""
    return whole if WHOLE else -(-whole // share)
