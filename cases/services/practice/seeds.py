"""Seeds of hidden canals: secret, as the code that draws a canal from one is open."""

from __future__ import annotations

import secrets

SEED_BITS = 63  # what a whole number of both databases holds; nobody tries so many


def new_seed() -> int:
    """One that nobody can guess."""
    return secrets.randbits(SEED_BITS)
