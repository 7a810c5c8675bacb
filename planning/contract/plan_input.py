"""Everything a plan is computed from, in one frozen value: nothing is looked up elsewhere, nothing is current time."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Annotated, Literal

from planning.anatomy.curvature import BendShape
from planning.contract.canal_facts import CanalFacts, Finding, OrificeFinding
from planning.contract.obturation import FillingItem
from planning.foundation.bounds import within
from planning.instruments.iso_3630 import Instrument
from planning.lengths.readings import Reading
from planning.run_sheet.graph import Walked
from planning.techniques.technique import Setting, Technique


@dataclass(frozen=True, slots=True, kw_only=True)
class PastInsertion:
    """One insertion of an instrument that goes into the canal to work there."""

    step: str
    """In the order of work it was made by."""
    phase: str
    instrument: str
    """Key in the kit."""
    depth_mm: float
    """Where the tip stopped, from the reference point."""
    stop_mm: float | None = None
    """The stop it was worked to."""
    to_resistance: bool = False
    """Led in to resistance: then its depth tells how wide the canal is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """Where the work stands, in the order of work that was walked so far."""

    at: str
    """The step that is due."""
    phase: str
    """The phase of that step; where there is none any more, the last that was worked."""
    over: bool = False
    """That phase is over: the next one is due."""
    walked_before: Walked
    length_mm: float | None
    """The working length that was worked by and signed off; another one is signed off before the work goes on."""
    made: tuple[PastInsertion, ...] = ()
    """All that has been in the canal, in order."""


Depth = Annotated[float, within("depth")]
HandSize = Annotated[int, within("hand_size")]


class Anatomy(StrEnum):
    USUAL = "usual"
    FUSED_OR_C_SHAPED = "fused_or_c_shaped"
    CHARTED_BY_SUPERVISOR = "charted_by_supervisor"
    """An unusual tooth, a third molar for instance, whose canals a supervisor entered."""


class Pattern(StrEnum):
    """How the canals of one root run from orifices to foramina."""

    SEPARATE = "separate"
    JOIN = "2-1"
    DIVIDE = "1-2"
    JOIN_AND_DIVIDE = "2-1-2"
    DIVIDE_AND_JOIN = "1-2-1"
    UNKNOWN = "unknown"


class Irrigant(StrEnum):
    WATER = "water"
    SALINE = "saline"
    SODIUM_HYPOCHLORITE = "sodium_hypochlorite"
    CHLORHEXIDINE = "chlorhexidine"
    EDTA = "edta"


@dataclass(frozen=True, slots=True, kw_only=True)
class Junction:
    """Where a joining canal meets the main one, measured once."""

    from_terminus_mm: Depth
    """Distance from the common terminus."""
    method: Literal["cone_mark", "two_instruments", "image_estimate"]
    """An image estimate opens nothing."""
    at_length_mm: Depth | None = None
    """The joining canal's length when it was measured; a later change of length does not move the junction."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedDepth:
    """A depth that was felt and recorded at one step; in the order of work."""

    node: str
    """The step in the run sheet."""
    depth_mm: Depth
    """Where the tip stopped, from the reference point; the stop or deeper counts as reached."""
    stop_mm: Depth | None = None
    """The stop that it was worked to; none takes that of this plan's step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalInput(CanalFacts):
    """One canal as it was charted and read, and how far its work has come."""

    name: str
    root: str
    reference_point: str
    finding: OrificeFinding = Finding.FOUND
    """Who sends a canal to be planned has found it, unless told otherwise."""
    readings: tuple[Reading, ...] = ()
    junction: Junction | None = None
    bend_shape: BendShape | None = None
    """As marked images have it; None where none was marked, or it bends to one side."""
    felt: tuple[RecordedDepth, ...] = ()
    progress: Progress | None = None
    """How far its work had come when this plan was made; none before anything was done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RootInput:
    name: str
    pattern: Pattern = Pattern.UNKNOWN
    main_canal: str | None = None
    """Which canal goes to the terminus where two join: chosen by a person, never by list order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Needle:
    """An irrigation needle."""

    gauge: int
    tip: Literal["open", "side_vented"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kit:
    name: str
    instruments: tuple[Instrument, ...]
    needles: tuple[Needle, ...]
    filling: tuple[FillingItem, ...] = ()
    """Cones, pluggers and spreaders."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalChoice:
    canal: str
    final_size: HandSize | None = None
    """ISO size at the end; none takes the proposed one."""
    reason: str = ""
    """Why it lies outside the advised range."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    needle: Needle
    irrigant: Irrigant = Irrigant.WATER
    final_rinse: tuple[Irrigant, ...] = ()
    """In order; empty means the working irrigant alone."""
    series_taper: Annotated[int, within("instrument_taper")] | None = None
    """Taper of the shaping series where the kit has several."""
    glide_path_to_size: HandSize | None = None
    """Last glide-path size; none takes the technique's."""
    canals: tuple[CanalChoice, ...] = ()


WIDE_CANAL = "wide-canal"
"""The caution that a supervisor lets pass by choosing a size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Override:
    """A supervisor lets the work go on in spite of a caution."""

    code: str
    canal: str | None
    """None for a caution that concerns the whole tooth."""
    reason: str
    final_size: HandSize | None = None
    """The size that the supervisor chose for a wide canal; none lets the student's own pass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToothInput:
    """All that a plan rests on but which tooth it is and by which technique, which are told in more than one way."""

    setting: Setting
    canals: tuple[CanalInput, ...]
    kit: Kit
    choices: Choices
    roots: tuple[RootInput, ...] = ()
    isolated: bool = False
    """Dam in place and tight: in the clinic nothing opens without it."""
    root_filled: bool = False
    perforation: bool = False
    anatomy: Anatomy = Anatomy.USUAL
    thresholds: dict[str, float] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""
    factors: tuple[str, ...] = ()
    """Codes of what makes the case difficult, as a person recorded them: factor, colon, level."""
    overrides: tuple[Override, ...] = ()
    samples: int = 0
    """How many canals to draw from the published spreads for the bands; 0 for the medians alone."""
    seed: int = 0
    schema_version: Literal[1] = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanInput(ToothInput):
    """One tooth to be planned."""

    tooth: str
    """ISO 3950 designation."""
    technique: Technique
