"""Which code the estimate of many canals spends its time in: numpy's, the reference, or the compiled one.

Both come to the same bytes, which tests hold them to: so a plan does not say which it was, and either goes on with what
the other made.
"""

from __future__ import annotations

from typing import Protocol

from planning.depth import numpy_rows
from planning.depth.rows import Floats, Rows, Tools


class Kernel(Protocol):
    """What `numpy_rows` says of its functions holds for every kernel's."""

    def load_mm2(self, tools: Tools, canals: Rows, tip_mm: Floats) -> Floats: ...

    def halved_mm(self, tools: Tools, canals: Rows, over_mm: Floats, limit_mm2: Floats) -> Floats: ...

    def stood(self, tools: Tools, canals: Rows, tip_mm: Floats, overcut_mm: Floats) -> Rows: ...


running: Kernel = numpy_rows


def take_compiled() -> bool:
    """Has this process compute by the compiled kernel from now on; False where the extra is not installed.

    The first time on a machine it takes seconds, else what was compiled is loaded: call it before there is anybody to
    wait.
    """
    global running
    try:
        from planning.depth import compiled_rows
    except ImportError:
        return False
    running = compiled_rows
    return True
