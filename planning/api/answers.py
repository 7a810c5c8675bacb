"""From what was asked to what is answered: one call of the planner each."""

from __future__ import annotations

from collections.abc import Mapping

from planning import anatomy, radiograph
from planning.anatomy import Notation, Tooth, ToothName
from planning.anatomy.curvature import Curvature, measure
from planning.api.requests import (
    CurvatureRequest,
    DifficultyFactors,
    InstrumentSize,
    InstrumentSizes,
    LengthRequest,
    MeasureRequest,
    PlanRequest,
    RunSheetAnswer,
    RunSheetRequest,
    Techniques,
    TechniqueText,
    Teeth,
    TwoViewsRequest,
    canal_of,
    plan_input_of,
)
from planning.contract.difficulty import factors
from planning.contract.plan_value import Plan
from planning.foundation import tables
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.instruments import iso_3630
from planning.instruments.iso_3630 import Instrument, Motion, Use
from planning.lengths.readings import Length
from planning.lengths.working_length import LengthContext, settle
from planning.radiograph import Measured
from planning.radiograph.views import TwoViewsRead, read
from planning.techniques.files import provided_techniques, read_technique
from planning.whole_tooth.limits import refuse_thresholds
from planning.whole_tooth.plan import plan
from planning.whole_tooth.technique_check import TechniqueChecked, check

D16_MM = 16.0  # ISO 3630-1: where the shaft side of the cutting part is measured
STANDARD_TAPER = 2  # ISO 3630-1: hundredths of a millimetre per millimetre of a standard instrument


def all_teeth() -> Teeth:
    return Teeth(results=anatomy.all_teeth())


def tooth_of_iso(designation: str) -> Tooth:
    """Raises UnknownTooth."""
    return anatomy.find(ToothName(notation=Notation.ISO_3950, designation=designation))


def techniques() -> Techniques:
    return Techniques(results=tuple(provided_techniques().values()))


def technique_check(asked: TechniqueText) -> TechniqueChecked:
    """Raises TechniqueFileRefused and TechniqueNotUsable, their path the text."""
    try:
        return check(read_technique(asked.text, where=asked.name))
    except PlanningError as refusal:
        # The fault lies somewhere in the text, which is one field of what was sent; its line says where.
        refusal.pointer = ("text",)
        raise


def difficulty_factors() -> DifficultyFactors:
    return DifficultyFactors(results=tuple(factors().values()))


def instrument_sizes() -> InstrumentSizes:
    return InstrumentSizes(results=tuple(_size(row) for row in tables.rows("sizes")))


def length(asked: LengthRequest) -> Length:
    """Raises LengthOutOfBounds, ReadingNotUsable and ChoiceNotPossible."""
    about = LengthContext(
        canal=asked.canal,
        reference_point=asked.reference_point,
        setting=asked.setting,
        resorption=asked.resorption,
        apex_mm=asked.apex_mm,
    )
    refuse_thresholds(asked.thresholds)
    try:
        return settle(asked.readings, about, Figures(asked.thresholds))
    except PlanningError as refusal:
        raise refusal.below("readings") from None


def curvature(asked: CurvatureRequest) -> Curvature:
    """Raises PointsDoNotFit and ChoiceNotPossible."""
    refuse_thresholds(asked.thresholds)
    try:
        return measure(asked.curve, Figures(asked.thresholds))
    except PlanningError as refusal:
        raise refusal.below("curve") from None


def measured(asked: MeasureRequest) -> Measured:
    """Raises ScaleNotUsable, PointsDoNotFit, LengthOutOfBounds, TooMuchWork and ChoiceNotPossible."""
    refuse_thresholds(asked.thresholds)
    try:
        return radiograph.measure(asked.marks, Figures(asked.thresholds))
    except PlanningError as refusal:
        raise refusal.below("marks") from None


def two_views(asked: TwoViewsRequest) -> TwoViewsRead:
    """Raises ViewsDoNotFit and ChoiceNotPossible."""
    refuse_thresholds(asked.thresholds)
    try:
        return read(asked.views, Figures(asked.thresholds))
    except PlanningError as refusal:
        raise refusal.below("views") from None


def tooth_plan(asked: PlanRequest) -> Plan:
    """Raises PlanningError, its path below the request."""
    return plan(plan_input_of(asked))


def run_sheet(asked: RunSheetRequest) -> RunSheetAnswer:
    """Raises PlanningError, its path below the request."""
    name = canal_of(asked)
    try:
        whole = tooth_plan(asked.plan)
    except PlanningError as refusal:
        raise refusal.below("plan") from None
    canal = next(each for each in whole.canals if each.canal == name)
    return RunSheetAnswer(
        canal=name,
        length=canal.length,
        provisional=canal.provisional,
        run_sheet=canal.run_sheet,
        expected_path=canal.expected_path,
        withheld=canal.withheld,
        instruments=tuple(item.instrument for item in whole.tray_list if name in item.canals),
        cautions=tuple(caution for caution in whole.cautions if caution.canal in (None, name)),
    )


def _size(row: Mapping[str, str]) -> InstrumentSize:
    standard = Instrument(
        size=int(row["size"]),
        taper=STANDARD_TAPER,
        motion=Motion.HAND,
        use=Use.HAND,
        length_mm=D16_MM,
        cutting_part_mm=D16_MM,
    )
    return InstrumentSize(
        size=standard.size,
        tip_mm=round(iso_3630.diameter_mm(standard, 0.0), 2),
        colour=row["colour"],
        d16_mm=round(iso_3630.diameter_mm(standard, D16_MM), 2),
        source=row["source"],
        know=row["know"],
    )
