"""Everything a plan is computed from, in one frozen value: the planner looks nothing up and has no clock."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Annotated, Literal

from planning.anatomy.curvature import BendShape
from planning.contract.canal_facts import CanalFacts, Finding, OrificeFinding
from planning.contract.obturation import FillingItem
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.facts import Bears, Fact, NotTold
from planning.instruments.iso_3630 import Instrument
from planning.lengths.readings import Reading, ReferencePoint
from planning.run_sheet.graph import Walked
from planning.techniques.technique import Setting, Technique


@dataclass(frozen=True, slots=True, kw_only=True)
class PastInsertion:
    """One insertion of an instrument that goes into the canal to work there."""

    step: Annotated[str, Fact("step", Bears.PROGRESS)]
    """Id of the step in the order of work that was followed then."""
    phase: Annotated[str, Fact("phase", Bears.PROGRESS)]
    instrument: Annotated[str, Fact("instrument", Bears.PROGRESS)]
    """Key in the kit."""
    depth_mm: Annotated[float, within("told_depth_mm"), Fact("to", Bears.PROGRESS)]
    """Where the tip stopped, from the reference point."""
    stop_mm: Annotated[float, within("told_depth_mm"), Fact("worked to the stop", Bears.PROGRESS)] | None = None
    """The stop that was set for it."""
    to_resistance: Annotated[bool, Fact("led in to resistance", Bears.PROGRESS)] = False
    """It was led in until it met resistance, so its depth tells how wide the canal is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far the work has come in the order of work that was followed so far."""

    at: Annotated[str, Fact("step that is due", Bears.PROGRESS)]
    """The step that is due."""
    phase: Annotated[str, Fact("phase it stands in", Bears.PROGRESS)]
    """The phase of that step; where there is none any more, the last that was worked."""
    over: Annotated[bool, Fact("that phase is over", Bears.PROGRESS)] = False
    """That phase is finished, and the next one is due."""
    walked_before: Annotated[Walked, Fact("steps walked", Bears.PROGRESS)]
    length_mm: Annotated[float, within("told_depth_mm"), Fact("length signed off", Bears.DEPTH)] | None
    """The working length that was signed off and worked to; a new one is signed off before the work goes on."""
    made: Annotated[tuple[PastInsertion, ...], at_most("felt"), Fact("insertion", Bears.PROGRESS)] = ()
    """All that has been in the canal, in order."""


Depth = Annotated[float, within("depth")]
HandSize = Annotated[int, within("hand_size")]
OwnFigure = Annotated[float, within("figure")]


class Pattern(StrEnum):
    """How the canals of one root run from orifices to foramina."""

    SEPARATE = "separate"
    JOIN = "2-1"
    DIVIDE = "1-2"
    JOIN_AND_DIVIDE = "2-1-2"
    DIVIDE_AND_JOIN = "1-2-1"
    UNKNOWN = "unknown"


class Irrigant(StrEnum):
    """What a canal is rinsed with."""

    WATER = "water"
    SALINE = "saline"
    SODIUM_HYPOCHLORITE = "sodium_hypochlorite"
    CHLORHEXIDINE = "chlorhexidine"
    EDTA = "edta"


@dataclass(frozen=True, slots=True, kw_only=True)
class Junction:
    """Where a joining canal meets the main one, measured once."""

    from_terminus_mm: Annotated[Depth, Fact("from the common end", Bears.DEPTH)]
    """Distance from the common terminus."""
    method: Annotated[Literal["cone_mark", "two_instruments", "image_estimate"], Fact("method", Bears.DEPTH)]
    """How it was measured: an estimate from an image opens no step."""
    at_length_mm: Annotated[Depth, Fact("measured at a length of", Bears.DEPTH)] | None = None
    """The joining canal's length when it was measured; a later change of length does not move the junction."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedDepth:
    """The depth that was felt and recorded at one step of the order of work."""

    node: Annotated[str, Fact("step", Bears.PROGRESS)]
    """The step in the run sheet."""
    depth_mm: Annotated[Depth, Fact("felt at", Bears.PROGRESS)]
    """Where the tip stopped, from the reference point; the stop or deeper counts as reached."""
    stop_mm: Annotated[Depth, Fact("worked to the stop", Bears.PROGRESS)] | None = None
    """The stop that was set for it; None: that of this plan's step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalInput(CanalFacts):
    """One canal as it was charted and read, and how far its work has come."""

    name: Annotated[str, Fact("canal", Bears.DEPTH)]
    root: Annotated[str, Fact("root", Bears.SHAPE)]
    reference_point: ReferencePoint
    finding: OrificeFinding = Finding.FOUND
    """A canal that is sent to be planned counts as found, unless the request says otherwise."""
    readings: Annotated[tuple[Reading, ...], at_most("readings"), Fact("reading", Bears.DEPTH)] = ()
    junction: Annotated[Junction, Fact("where it joins", Bears.DEPTH)] | None = None
    bend_shape: Annotated[BendShape, Fact("bends to both sides", Bears.SHAPE)] | None = None
    """As marked images have it; None where none was marked, or it bends to one side."""
    felt: Annotated[tuple[RecordedDepth, ...], at_most("felt"), Fact("depth felt", Bears.PROGRESS)] = ()
    progress: Annotated[Progress, Fact("work so far", Bears.PROGRESS)] | None = None
    """How far its work had come when this plan was made; none before anything was done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RootInput:
    name: Annotated[str, Fact("root", Bears.SHAPE)]
    pattern: Annotated[Pattern, Fact("how its canals run", Bears.SHAPE)] = Pattern.UNKNOWN
    main_canal: Annotated[str, Fact("its main canal", Bears.DEPTH)] | None = None
    """Which canal goes to the terminus where two join: chosen by a person, never by list order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Needle:
    """An irrigation needle."""

    gauge: Annotated[int, within("needle_gauge"), Fact("gauge", Bears.SAFETY)]
    tip: Annotated[Literal["open", "side_vented"], Fact("tip", Bears.SAFETY)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kit:
    name: Annotated[str, Fact("kit", Bears.MEANS)]
    instruments: Annotated[tuple[Instrument, ...], at_most("instruments"), Fact("instrument of the kit", Bears.MEANS)]
    needles: Annotated[tuple[Needle, ...], at_most("needles"), Fact("needle of the kit", Bears.MEANS)]
    filling: Annotated[
        tuple[FillingItem, ...], at_most("filling"), Fact("cones, pluggers and spreaders", Bears.MEANS)
    ] = ()
    """Cones, pluggers and spreaders."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalChoice:
    canal: Annotated[str, Fact("canal", Bears.SHAPE)]
    final_size: Annotated[HandSize, Fact("final size chosen", Bears.SHAPE)] | None = None
    """ISO size at the canal's end; None: the proposed one."""
    reason: Annotated[str, Fact("reason for the size", Bears.SHAPE)] = ""
    """Why it lies outside the advised range."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    needle: Annotated[Needle, Fact("needle", Bears.SAFETY)]
    irrigant: Annotated[Irrigant, Fact("irrigant", Bears.SAFETY)] = Irrigant.WATER
    final_rinse: Annotated[tuple[Irrigant, ...], at_most("irrigants"), Fact("final rinse", Bears.SAFETY)] = ()
    """In order; empty means the working irrigant alone."""
    series_taper: Annotated[int, within("instrument_taper"), Fact("taper of the series", Bears.SHAPE)] | None = None
    """Taper of the shaping series where the kit has several."""
    glide_path_to_size: Annotated[HandSize, Fact("glide path up to size", Bears.SHAPE)] | None = None
    """Last glide-path size; None: the technique's own."""
    canals: Annotated[tuple[CanalChoice, ...], at_most("canals"), Fact("choice for the canal", Bears.SHAPE)] = ()


WIDE_CANAL = "wide-canal"
"""The caution that a supervisor lets pass by choosing a size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Override:
    """A supervisor lets the work go on in spite of a caution."""

    code: Annotated[str, Fact("caution", Bears.SAFETY)]
    canal: Annotated[str, Fact("canal", Bears.SAFETY)] | None
    """None for a caution that concerns the whole tooth."""
    reason: Annotated[str, Fact("reason", Bears.SAFETY)]
    final_size: Annotated[HandSize, Fact("final size chosen by a supervisor", Bears.SHAPE)] | None = None
    """The size that the supervisor chose for a wide canal; none lets the student's own pass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToothInput(ToothFacts):
    """All that a plan rests on but which tooth it is and by which technique, which are told in more than one way."""

    setting: Annotated[Setting, Fact("setting", Bears.SAFETY)]
    canals: Annotated[tuple[CanalInput, ...], at_most("canals"), Fact("canals", Bears.DEPTH)]
    kit: Annotated[Kit, Fact("kit", Bears.MEANS)]
    choices: Annotated[Choices, Fact("choices", Bears.SHAPE)]
    roots: Annotated[tuple[RootInput, ...], at_most("canals"), Fact("roots", Bears.SHAPE)] = ()
    thresholds: Annotated[
        dict[str, OwnFigure], at_most("thresholds"), Fact("figure of the programme", Bears.SAFETY)
    ] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""
    overrides: Annotated[
        tuple[Override, ...], at_most("overrides"), Fact("let pass by a supervisor", Bears.SAFETY)
    ] = ()
    samples: Annotated[int, within("samples"), Fact("canals drawn for the bands", Bears.PROGRESS)] = 0
    """How many canals to draw from the published spreads for the bands; 0 for the medians alone."""
    seed: Annotated[
        int, NotTold("picks which canals are drawn and is the case's own: two versions of one case never differ in it")
    ] = 0
    schema_version: Annotated[Literal[1], NotTold("there is one version")] = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanInput(ToothInput):
    """One tooth to be planned."""

    tooth: Annotated[str, Fact("tooth", Bears.SAFETY)]
    """ISO 3950 designation."""
    technique: Annotated[Technique, Fact("technique", Bears.MEANS)]
