"""What the computing addresses take and give: plain values, read and written by the one encoder."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Annotated, Any

from annotated_types import MaxLen

from planning import anatomy
from planning.anatomy import Tooth, ToothName
from planning.anatomy.curvature import TappedCurve
from planning.contract.difficulty import Factor
from planning.contract.plan_input import OwnFigure, PlanInput, ToothInput
from planning.contract.plan_value import Caution, InstrumentName, Withheld
from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.errors import CanalsDoNotFit, PlanningError, TechniqueNotUsable
from planning.foundation.pages import Page
from planning.lengths.readings import Length, Reading, Resorption
from planning.radiograph.values import ImageMarks
from planning.radiograph.views import Views
from planning.run_sheet.graph import RunSheet
from planning.techniques.files import MOST_CHARACTERS, provided_techniques
from planning.techniques.technique import Setting, Technique


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRequest(ToothInput):
    """One tooth to be planned, with everything the plan rests on."""

    tooth: ToothName
    technique: str | Technique
    """The key of a provided technique, or a whole technique of one's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheetRequest:
    """One canal of a tooth to be planned. The whole tooth is needed: canals that join depend on each other."""

    canal: str
    plan: PlanRequest


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheetAnswer:
    """The order of work of one canal."""

    canal: str
    length: Length
    provisional: bool
    """The stops rest on an estimate and will be computed again."""
    run_sheet: RunSheet
    expected_path: tuple[str, ...]
    """Node ids in the order expected, loops walked as often as the technique expects."""
    withheld: tuple[Withheld, ...]
    instruments: tuple[InstrumentName, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthRequest:
    """The readings of one canal."""

    canal: str
    reference_point: str
    """Readings from another point are listed and do not count."""
    setting: Setting
    readings: Annotated[tuple[Reading, ...], at_most("readings")]
    resorption: Resorption = Resorption.NONE
    apex_mm: Annotated[float, within("apex")] | None = None
    """Width of the apical opening where it was seen to be wide."""
    thresholds: Annotated[dict[str, OwnFigure], at_most("thresholds")] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurvatureRequest:
    """Points tapped on an image, in mm in the plane of the image."""

    curve: TappedCurve
    thresholds: Annotated[dict[str, OwnFigure], at_most("thresholds")] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureRequest:
    """Marks on one image, in pixels, with what is known of its scale."""

    marks: ImageMarks
    thresholds: Annotated[dict[str, OwnFigure], at_most("thresholds")] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoViewsRequest:
    """Two views of one root."""

    views: Views
    thresholds: Annotated[dict[str, OwnFigure], at_most("thresholds")] = field(default_factory=dict)
    """The programme's own values in place of figures of the data tables, by key."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Teeth(Page):
    results: tuple[Tooth, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TechniqueText:
    """A technique as a file holds it."""

    text: Annotated[str, MaxLen(MOST_CHARACTERS)]
    """TOML, as the techniques provided are written."""
    name: str = "technique"
    """Of the file; it stands before what is wrong."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Techniques(Page):
    results: tuple[Technique, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DifficultyFactors(Page):
    """What can make a case difficult. What is recorded of a case are codes of levels, one of a factor at most."""

    results: tuple[Factor, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentSize:
    """A size of the ISO 3630-1 series."""

    size: int
    """Tip in hundredths of a millimetre."""
    tip_mm: float
    colour: str
    """Never the only sign: several sizes share each colour."""
    d16_mm: float
    """Diameter 16 mm from the tip of an instrument of taper .02."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentSizes(Page):
    results: tuple[InstrumentSize, ...]


def plan_input_of(request: PlanRequest) -> PlanInput:
    """The planner's input. Raises UnknownTooth and TechniqueNotUsable with their paths."""
    same: dict[str, Any] = {each.name: getattr(request, each.name) for each in fields(ToothInput)}
    return PlanInput(tooth=_tooth_of(request.tooth), technique=_technique_of(request.technique), **same)


def canal_of(request: RunSheetRequest) -> str:
    """The canal asked for. Raises CanalsDoNotFit where the tooth has none of that name."""
    if request.canal not in {canal.name for canal in request.plan.canals}:
        raise CanalsDoNotFit(reason=f"There is no canal {request.canal} among the canals sent.", at=("canal",))
    return request.canal


def _tooth_of(name: ToothName) -> str:
    try:
        return anatomy.find(name).iso
    except PlanningError as refusal:
        raise refusal.below("tooth") from None


def _technique_of(technique: str | Technique) -> Technique:
    if isinstance(technique, Technique):
        return technique
    provided = provided_techniques()
    if technique not in provided:
        reason = f"no such technique is provided; there are {' and '.join(provided)}."
        raise TechniqueNotUsable(where=technique[:40], reason=reason, at=("technique",))
    return provided[technique]
