"""What a field is called for people and what a change of it bears on, noted on the field's own type.

The comparison of plans, the record, the phone's forms and the API's description read the notes with `bounds.noted`.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Bears(StrEnum):
    """What a difference bears on, the most dangerous first. The order is a judgement, no source."""

    DEPTH = "depth"
    """How deep an instrument or a needle goes."""
    SAFETY = "safety"
    """What may be done, with what fluid, and what keeps the patient safe."""
    SHAPE = "shape"
    """What the canal is like and how wide it becomes."""
    MEANS = "means"
    """What the work is done with, and in what order."""
    PROGRESS = "progress"
    """How far the work has come."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A note on a field's type: what people call it, and what a change of it bears on."""

    label: str
    bears_on: Bears
    usual: bool = False
    """Asked for of every canal; a form folds the others away."""


@dataclass(frozen=True, slots=True)
class NotTold:
    """A note on a field's type: a change of it is rightly not told to people."""

    why: str
