"""Marks that whoever set them is asked about: a line that turns back, or sharply as no canal does."""

from __future__ import annotations

import math
from collections.abc import Iterator

from planning.foundation.tables import Figures
from planning.radiograph import line
from planning.radiograph.line import Marks
from planning.radiograph.values import Doubt, DoubtKind

QUARTER_DEG = 90  # a line that turns by more runs back


def doubts(marks: Marks, figures: Figures) -> Iterator[Doubt]:
    """The doubts about all marks but the first and the last. The phone has the same: `frontend/src/marks/doubts.ts`."""
    for number in range(1, len(marks) - 1):
        turn = abs(math.degrees(line.turn_rad(*marks[number - 1 : number + 2])))
        if turn > figures["marks.turn_deg"]:
            kind = DoubtKind.TURNS_BACK if turn > QUARTER_DEG else DoubtKind.SHARP
            yield Doubt(point=number, kind=kind)
