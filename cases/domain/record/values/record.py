"""The record of a case: the whole course as a timeline, and what it comes to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from cases.domain.record.values.evidence import Entered, ImageListed, ImagePutRight, StruckReading
from cases.domain.record.values.materials import Discarded, InstrumentUsed, IrrigantUsed
from cases.domain.record.values.plans import CautionRecord, OverrideRecord, VersionRecord
from cases.domain.record.values.sign_offs import AskCounts, SignOffRecord
from cases.domain.record.values.timeline import RecordPerson, TimelineEntry
from cases.domain.record.values.times import HaltRecord, VisitRecord
from cases.domain.record.values.work import CanalRecord, Deviation
from planning.contract.plan_value import ToothNames


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """Everything that was planned, done and decided in one case."""

    notice: str
    programme: str
    invented: bool
    """The programme is a demonstration: no such school, people or cases."""
    case_id: str
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
    entered: tuple[Entered, ...]
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
    deviations: tuple[Deviation, ...] = ()
    """What was not as planned, canal by canal, then what concerns the whole tooth."""
    schema_version: Literal[1] = 1
