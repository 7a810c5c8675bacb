"""What a plan says: the value that is stored, hashed, approved, drawn and printed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from planning.anatomy.walls import WallLeft
from planning.contract.chairside import AtTheChair
from planning.contract.difficulty import Difficulty
from planning.contract.expected import Expectation, ProfilePoint
from planning.contract.obturation import Obturation
from planning.contract.rationale import Rationale
from planning.instruments.iso_3630 import DiameterAt
from planning.instruments.strain import Strain
from planning.lengths.readings import Length
from planning.run_sheet.graph import RunSheet, Target


class Severity(StrEnum):
    NOTE = "note"
    CAUTION = "caution"
    STOP = "stop"
    """Withholds steps until it is put right, or a supervisor lets it pass with a reason where that may be done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    code: str
    severity: Severity
    canal: str | None
    says: str
    do: str
    """What to do about it."""
    row: str
    """The data row or rule it rests on."""
    value: float | None = None
    limit: float | None = None
    unit: str | None = None
    step: str | None = None
    """The step of the canal's run sheet it concerns, where it concerns one."""
    know: str = ""
    """How its source is known; `from memory` marks a reference value that has to be checked."""
    may_override: bool = False
    """A supervisor may let the work go on, with a reason."""
    overridden: str | None = None
    """The supervisor's reason, where one let the work go on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToothNames:
    iso: str
    universal: str
    palmer: str
    palmer_glyph: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentName:
    """An instrument as plans and screens name it."""

    key: str
    name: str
    size: int
    taper: int
    motion: str
    colour: str | None
    """ISO 3630-1 colour name; never the only sign."""
    setting_says: str
    """Speed and torque as the programme typed them in, or that they are not stated."""
    setting_stated: bool = True
    """False for an engine instrument whose speed or torque is missing: it is not used before they are looked up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedleNow:
    """How deep the needle may go once the instrument `after` has been at length."""

    after: str
    at_most_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedleDepth:
    ceiling_mm: float
    """Never deeper, however wide the canal."""
    now: tuple[NeedleNow, ...]
    begins_mm: float | None = None
    """How deep it may go by how wide the canal is before this order of work; None in older plans."""
    says: str = ""
    """What to do where the needle is free nowhere below the orifice; otherwise empty."""
    first_at_ceiling: str | None = None
    """The first step after which the needle gets to its ceiling."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeReason:
    """One reason for a bound of the range, or something told beside it."""

    code: str
    """Of our own: floor, narrow-end, first-binder, published-upper, curvature-cap, ..."""
    bound: Literal["least", "most", "tells"]
    size: int | None
    says: str
    row: str
    """Key of `rows_used`, or table and row."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeOption:
    """One final size that may be chosen, and what it would mean."""

    size: int
    inside: bool
    """Inside the advised range."""
    wall_share: float | None
    """Share of the canal's wall that a round preparation of this size reaches near the end; none where the wide
    diameter is not known."""
    wall_left_mm: float | None
    strain_pct: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRange:
    """Advised range of the final size, each bound with its reason."""

    least: int
    most: int
    """In a wide canal it is below the least: the canal asks for a larger size than it can bear."""
    proposed: int | None
    """None for a wide canal: a supervisor chooses."""
    reasons: tuple[SizeReason, ...]
    options: tuple[SizeOption, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Withheld:
    """What is not in the order of work yet, and why."""

    from_phase: str
    code: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class IrrigantTotal:
    irrigant: str
    volume_ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalPlan:
    canal: str
    root: str
    reference_point: str
    length: Length
    end_mm: float | None
    """Deepest stop of a shaping instrument: the working length, or the junction for a joining canal."""
    junction_mm: float | None
    """Where this canal joins, from the reference point, before rounding."""
    joins: str | None
    """The main canal it joins."""
    provisional: bool
    """The stops rest on an estimate and will be computed again."""
    final_size: int | None
    """None for a wide canal while nobody has chosen one."""
    final_taper: int
    size_range: SizeRange
    outline: tuple[ProfilePoint, ...]
    """The shape once everything in the order of work has stood at its stop, reference point side first."""
    needle: NeedleDepth | None
    withheld: tuple[Withheld, ...]
    run_sheet: RunSheet
    expected_path: tuple[str, ...]
    """Node ids in the order expected, loops walked as often as the estimate or else the technique expects."""
    expectation: Expectation | None = None
    """The contact-depth estimate; none before there is a length, or where no widths are known."""
    strain: tuple[Strain, ...] = ()
    wall: WallLeft | None = None
    obturation: Obturation | None = None
    irrigants: tuple[IrrigantTotal, ...] = ()
    """Totals over the expected path."""
    rationales: tuple[Rationale, ...] = ()

    @property
    def final_name(self) -> str | None:
        """Final size and taper as the trade names an instrument: 30/.04; None while no size has been chosen."""
        return None if self.final_size is None else f"{self.final_size:02d}/.{self.final_taper:02d}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    canal: str
    stop_mm: float
    target: Target
    why: str = ""
    """The name under which the canal's rationales have this stop."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StopRow:
    """One instrument in one phase, and its stop in each canal where it is used there."""

    instrument: InstrumentName
    phase: str
    stops: tuple[Stop, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayStep:
    """One taking-up of an instrument, and the canals it serves before it is put down."""

    phase: str
    instrument: str
    canals: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayOrder:
    changes: int
    steps: tuple[TrayStep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayItem:
    """What to lay out, left to right in order of first use."""

    instrument: InstrumentName
    canals: tuple[str, ...]
    expected: bool
    """False for what may be needed only to make room or to open the way again."""
    outline: tuple[DiameterAt, ...] = ()
    """Its diameters from the tip upwards, as it is drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exposure:
    """One image, and the canals that it shows beside each other."""

    canals: tuple[str, ...]
    turned: bool
    """Taken from another angle, which shows apart what lies one behind the other on the first image."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A point of the work to which canals come together."""

    phase: str
    title: str
    hold_point: str
    """What a supervisor's sign-off is about; empty where none is asked for."""
    canals: tuple[str, ...]
    exposures: tuple[Exposure, ...]
    sign_offs: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedFor:
    """How often the expected work asks for a supervisor's sign-off, and for an image."""

    stages: tuple[Stage, ...]
    exposures: int
    sign_offs: int
    """Includes the sign-off on the plan itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowUsed:
    """A figure the plan rests on."""

    key: str
    value: float
    unit: str
    source: str
    know: str
    programme: bool
    """The programme put its own value in its place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    tooth: ToothNames
    setting: str
    technique: str
    kit: str
    irrigant: str
    canals: tuple[CanalPlan, ...]
    stop_table: tuple[StopRow, ...]
    tray: TrayOrder
    one_at_a_time: TrayOrder
    tray_list: tuple[TrayItem, ...]
    cautions: tuple[Caution, ...]
    rows_used: tuple[RowUsed, ...]
    planner_version: str
    data_version: str
    notice: str
    difficulty: Difficulty | None = None
    """None for a training block."""
    at_the_chair: AtTheChair | None = None
    """What the phone shows at the chair without asking anybody; None in plans made before there was any."""
    asks: AskedFor | None = None
    """None in plans made before it was counted."""
    rationales: tuple[Rationale, ...] = ()
    """The rule behind each number of the tooth as a whole; a canal has its own."""
    schema_version: Literal[1] = 1
