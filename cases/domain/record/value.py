"""The record of a case: the whole course as a timeline, and what it comes to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Literal

from cases.domain.access.roles import Role
from cases.domain.events.kinds import EventKind
from cases.domain.images import RemovalReason
from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.course import CanalState, OutOfCourse
from cases.domain.struck import StruckWhy
from planning.contract.expected import Against
from planning.contract.plan_value import Severity, ToothNames
from planning.lengths.readings import Length
from planning.run_sheet.graph import Action, Exit


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordPerson:
    """Somebody as the record names them."""

    id: str
    name: str
    role: Role | None
    """In the programme; none for somebody who is not in it any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimelineEntry:
    """One event, said plainly. What was taken back stays, marked."""

    position: int
    event: str
    """Its id."""
    at: datetime
    """When the server had it."""
    device_time: datetime
    """By the device's own clock, which may be wrong."""
    who: RecordPerson
    canal: str
    """Empty where it concerns the whole tooth."""
    kind: EventKind
    says: str
    version: int
    """Number of the plan that was on the screen."""
    out_of_course: OutOfCourse | None = None
    """Why it moved nothing."""
    out_of_course_says: str = ""
    undone: bool = False
    not_checked_says: str = ""
    """What of it could not be checked when it came in; empty where nothing."""


class StepComparison(StrEnum):
    """How a step of the work lies against the plan."""

    AS_PLANNED = "as_planned"
    ADDED = "added"
    """Done beside what was expected: once more, to make room, to open the way again."""
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
    """In the timeline, where it was done."""
    how: Exit | None = None
    """How it was left."""
    depth_mm: float | None = None
    """Where the tip stopped, as recorded."""
    low_mm: float | None = None
    """The band it was expected in when the plan was made; an estimate, never a target."""
    high_mm: float | None = None
    against_band: Against | None = None
    as_if_straight: bool = False
    """The canal is bent, and the estimate knows nothing of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StruckReading:
    """A reading that was a mistake. It stays, and counts for nothing."""

    canal: str
    says: str
    """What was read."""
    taken_by: RecordPerson
    taken_at: datetime
    why: StruckWhy
    who: RecordPerson
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ImagePutRight:
    """An image that was struck, or put to another canal. What was said of it before stays."""

    image: str
    purpose: str
    canal: str
    """Where it was; empty for the whole tooth."""
    moved_to: str | None
    """Empty for the whole tooth; none where it was struck and counts for nothing."""
    taken_by: RecordPerson
    taken_at: datetime
    why: StruckWhy
    who: RecordPerson
    at: datetime


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
    steps: tuple[StepRecord, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AcknowledgedRecord:
    """What must be put right and was acknowledged by its name when the plan was approved."""

    code: str
    canal: str | None
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DecisionRecord:
    """A supervisor's decision on a version of the plan."""

    decision: Decision
    who: RecordPerson
    at: datetime
    note: str
    acknowledged: tuple[AcknowledgedRecord, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class VersionRecord:
    """A version of the plan that was decided on or worked from."""

    number: int
    hash: str
    technique: str
    kit: str
    author: RecordPerson
    at: datetime
    decisions: tuple[DecisionRecord, ...]


class CautionEnd(StrEnum):
    STANDS = "stands"
    """Nobody did anything about it that the plan knows of."""
    OVERRIDDEN = "overridden"
    """A supervisor let the work go on in spite of it, with a reason."""
    GONE = "gone"
    """A later version of the plan does not have it any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionRecord:
    """What a plan warned of, and how that ended."""

    code: str
    severity: Severity
    canal: str | None
    says: str
    version: int
    """The last version that has it."""
    settled: CautionEnd


@dataclass(frozen=True, slots=True, kw_only=True)
class OverrideRecord:
    """What a supervisor let pass; taking it back is added, not erased."""

    code: str
    canal: str | None
    reason: str
    final_size: int | None
    """What the supervisor chose for a wide canal."""
    who: RecordPerson
    at: datetime
    withdrawn_by: RecordPerson | None
    withdrawn_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOffRecord:
    """A supervisor's sign-off at a hold point."""

    position: int
    canal: str
    hold_point: str
    said: Decision
    despite_missing: bool
    """Approved although what the hold point asks for was not there."""
    on_site: bool
    """Given on the student's own phone, by a code of the supervisor's."""
    reason: str
    who: RecordPerson
    at: datetime
    in_course: bool
    image_gone: bool
    """An image that was there when it was given was struck since, or put to another canal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskCounts:
    """How often a supervisor and an image were asked for. Planned: by the plan in force, where that was counted."""

    sign_offs: int
    """Decisions on plans, and sign-offs at hold points; what was given in one counts once."""
    exposures: int
    """Images, also on film or kept elsewhere; one that shows several canals counts once."""
    planned_sign_offs: int | None
    planned_exposures: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalVolume:
    canal: str
    """Empty where the entry named none."""
    volume_ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class IrrigantUsed:
    """All of one irrigant, also what was recorded out of course; what was taken back does not count."""

    irrigant: str
    volume_ml: float
    canals: tuple[CanalVolume, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentUsed:
    """What one instrument of the kit was used for in this case; one use is one canal."""

    key: str
    instrument: str
    """Size and taper."""
    canals: tuple[str, ...]
    """In the order it entered them; a canal stands twice where a new one of its kind entered it again."""
    discarded: int
    """How many of its kind were discarded."""
    uses: int
    """Of the one that is there now: in this case, and before it as the plan counted them."""
    most_uses: int | None
    """As the kit allows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Discarded:
    position: int
    instrument: str
    canal: str
    why: str
    who: RecordPerson
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageRemoval:
    """An image was removed; nothing of its picture is left."""

    who: RecordPerson
    at: datetime
    reason: RemovalReason


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageListed:
    position: int
    image: str
    purpose: str
    canal: str
    who: RecordPerson
    at: datetime
    counts: bool = True
    """False where it was struck, or put to another canal."""
    removed: ImageRemoval | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HaltEnd:
    position: int
    who: RecordPerson
    at: datetime
    reason: str


class HaltKind(StrEnum):
    PAUSE = "pause"
    """One canal."""
    PAST_STOP = "past_stop"
    """An instrument went past its stop: one canal."""
    EMERGENCY = "emergency"
    """The whole tooth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HaltRecord:
    """Work stood still, and what let it go on."""

    position: int
    kind: HaltKind
    canal: str
    says: str
    cause: str
    """Of an instrument past its stop: what was answered."""
    who: RecordPerson
    at: datetime
    ended: HaltEnd | None
    review_by: datetime | None = None
    """Of an emergency with a patient: to be seen again until then; and when the next visit was opened."""
    seen_again: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class VisitRecord:
    number: int
    opened_at: datetime
    opened_by: RecordPerson
    on_site: tuple[RecordPerson, ...]
    """Licensed clinicians who were named as in the room."""
    closed_at: datetime | None
    closed_by: RecordPerson | None
    access_sealed: bool | None
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """Everything that was planned, done and decided in one case."""

    notice: str
    programme: str
    invented: bool
    """The programme is a demonstration: no such school, people or cases."""
    case: str
    patient_alias: str
    tooth: ToothNames
    setting: str
    student: RecordPerson
    supervisor: RecordPerson | None
    opened_at: datetime
    position: int
    """Of the last event; 0 where nothing was recorded."""
    last_at: datetime
    """When the server had the last event; before there was one, when the case was opened."""
    versions: tuple[VersionRecord, ...]
    canals: tuple[CanalRecord, ...]
    struck: tuple[StruckReading, ...]
    images_put_right: tuple[ImagePutRight, ...]
    cautions: tuple[CautionRecord, ...]
    overrides: tuple[OverrideRecord, ...]
    asked: AskCounts
    sign_offs: tuple[SignOffRecord, ...]
    halts: tuple[HaltRecord, ...]
    visits: tuple[VisitRecord, ...]
    irrigants: tuple[IrrigantUsed, ...]
    instruments: tuple[InstrumentUsed, ...]
    discarded: tuple[Discarded, ...]
    images: tuple[ImageListed, ...]
    timeline: tuple[TimelineEntry, ...]
    schema_version: Literal[1] = 1
