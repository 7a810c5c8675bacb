"""One canal as the record has it: what was planned of its work, and what was done."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from cases.domain.progress.canal_progress import CanalState
from planning.contract.expected import Against, ProfilePoint
from planning.contract.plan_value import Severity
from planning.lengths.readings import Length
from planning.run_sheet.graph import Action, Exit


class StepComparison(StrEnum):
    """How a step compares with the plan."""

    AS_PLANNED = "as_planned"
    ADDED = "added"
    """Done in addition to what was expected: once more, to make room, to open the way again."""
    LEFT_OUT = "left_out"
    """Expected and passed over."""
    NOT_YET = "not_yet"
    """Expected and not done so far."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRecord:
    """One step: as planned, as done, or both."""

    version: int
    node: str
    pass_number: int
    """Which time the step was worked, from 1."""
    phase: str
    action: Action
    instrument: str | None
    """Its name: size and taper."""
    comparison: StepComparison
    stop_mm: float | None
    """The stop that was shown, else the planned one."""
    position: int | None = None
    """Its place in the timeline; None where it was not done."""
    how: Exit | None = None
    """How it was left."""
    depth_mm: float | None = None
    """Where the tip stopped, as recorded."""
    low_mm: float | None = None
    """The band it was expected in when the plan was made; an estimate, never a target."""
    high_mm: float | None = None
    against_band: Against | None = None
    as_if_straight: bool = False
    """The canal is bent, and the estimate takes it as straight."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalShape:
    """A canal as it is drawn: planned, or done."""

    end_mm: float | None
    """Where it ends, from the reference point."""
    size: str | None
    """Size and taper of the largest instrument at that end."""
    outline: tuple[ProfilePoint, ...]
    """Reference point side first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalRecord:
    """One canal: what its length rests on, what was planned, what was done."""

    canal: str
    root: str
    reference_point: str
    state: CanalState | None
    """Where it stands; none before the work began or where no plan has it."""
    length: Length | None
    length_problem: str
    """Why no length can be worked out from the readings, or empty."""
    planned_size: str | None
    """Final size and taper of the plan that stands."""
    largest_at_length: str | None
    """The largest shaping instrument that stood at the canal's end."""
    charted: str
    """What was seen and measured of it beside its length, or empty."""
    end_mm: float | None
    """Where it ends: as done once it is finished or was worked deeper than planned, before that as planned."""
    joins: str | None
    """The canal that it joins at its end."""
    planned: CanalShape | None
    """By the plan that stands; None where none has the canal."""
    done: CanalShape | None
    """By the depths recorded; None before the first."""
    differs: tuple[str, ...]
    """How end and size differ from the plan, a few words each; while it is worked, how far it is."""
    steps: tuple[StepRecord, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Deviation:
    """Something that was not as planned, in one line."""

    sign: Severity
    """How grave it is."""
    canal: str
    """Empty where it concerns the whole tooth."""
    says: str
    """What it was."""
    position: int | None = None
    """Its place in the timeline, where it is one entry."""
