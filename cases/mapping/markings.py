"""Markings as the planner's frozen values."""

from __future__ import annotations

import json

from cases.models.bends_in_space import BendInSpace
from cases.models.markings import Marking
from planning.foundation.encoding import Mode, decode
from planning.radiograph import ImageMarks, Measured
from planning.radiograph.values import Between


def marks_of(row: Marking) -> ImageMarks:
    return decode(ImageMarks, json.loads(row.text), Mode.KEPT)


def measured_of(row: Marking) -> Measured:
    """What the marks measured on the day they were set."""
    return decode(Measured, json.loads(row.measured_text), Mode.KEPT)


def in_space_of(row: BendInSpace) -> Between:
    """The angle in space that two views came to on the day they were combined."""
    return decode(Between, json.loads(row.text), Mode.KEPT)


def bend_of(row: Marking, canal: str) -> Between | None:
    """Schneider's angle of the canal; None where its bend is not marked."""
    line = next((line for line in measured_of(row).lines if line.canal == canal), None)
    return None if line is None or line.bend is None else line.bend.schneider_deg
