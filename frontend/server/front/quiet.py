"""Loaded first in every room: from then on its process gives way to everything else on the machine."""

from __future__ import annotations

import os
from contextlib import suppress

# As far as it goes without being starved itself.
NICENESS = 10
with suppress(OSError):
    os.nice(NICENESS)
