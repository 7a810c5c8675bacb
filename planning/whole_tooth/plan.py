"""The front door: one value in, one plan value out. The same input gives the same output."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from planning import tray
from planning.anatomy import Tooth
from planning.canal.canal import tooth_of
from planning.canal.setting_phases import phases_of
from planning.contract.cautions import by_severity, overridden, refuse_overrides, unused_overrides, withholding
from planning.contract.chairside import at_the_chair
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Caution, Plan, RowUsed, ToothNames
from planning.foundation.errors import InstrumentTooShort, PlanningError
from planning.foundation.quantities import mm, um
from planning.foundation.tables import Figures, data_version
from planning.foundation.version import VERSION
from planning.instruments.iso_3630 import Instrument, reach_mm
from planning.run_sheet.graph import Step
from planning.techniques.files import refuse_unusable
from planning.tray import layout, selection
from planning.tray.selection import Selection
from planning.whole_tooth import cautions, difficulty_rules
from planning.whole_tooth.canals import PlannedCanals, plan_canals
from planning.whole_tooth.limits import refuse_thresholds, refuse_too_much
from planning.whole_tooth.rationales.tooth import tooth_rationales
from planning.whole_tooth.refusals import refuse
from planning.work.canal_plan import PlannedCanal
from planning.work.stages import asked_for

NOTICE = (
    "For training. It supports and does not replace the supervising licensed clinician, "
    "the maker's instructions and local rules."
)


def plan(plan_input: PlanInput) -> Plan:
    """The plan of one tooth. Raises PlanningError, whose `pointer` is the path into the input."""
    # First of all, and by counting alone: everything after it takes time that grows with these counts.
    refuse_too_much(plan_input)
    # `Figures` below takes any value that it is given.
    refuse_thresholds(plan_input.thresholds)
    _refuse_unusable_technique(plan_input)
    tooth = tooth_of(plan_input)
    figures = Figures(plan_input.thresholds)
    refuse(plan_input, tooth, figures)
    refuse_overrides(plan_input)
    selected = selection.select(plan_input, figures)
    difficulty = difficulty_rules.count(plan_input, tooth, figures)
    warned = [*cautions.tooth_cautions(plan_input, tooth, figures), *difficulty_rules.cautions(plan_input, difficulty)]
    all_cautions = overridden(plan_input, warned)
    canals = plan_canals(plan_input, tooth, withholding(all_cautions), selected, figures)
    all_cautions += canals.warned
    all_cautions += cautions.worn_cautions(plan_input, canals.planned)
    # Last, once every caution is known that an override could be meant for.
    all_cautions += unused_overrides(plan_input, all_cautions)
    made = _assembled(plan_input, tooth, selected, canals, all_cautions, figures)
    # Figures of its own: what is brought along for the chair is nothing that this plan's numbers rest on.
    return replace(made, difficulty=difficulty, at_the_chair=at_the_chair(Figures(plan_input.thresholds)))


def _refuse_unusable_technique(plan_input: PlanInput) -> None:
    try:
        refuse_unusable(plan_input.technique, where=plan_input.technique.name)
    except PlanningError as refusal:
        raise refusal.below("technique") from None


def _assembled(
    plan_input: PlanInput,
    tooth: Tooth,
    selected: Selection,
    canals: PlannedCanals,
    all_cautions: list[Caution],
    figures: Figures,
) -> Plan:
    kit, planned = selected.kit, canals.planned
    _refuse_short(planned, kit, figures)
    # The tray follows the path that is expected, the stop table what the technique writes: no stop hangs on an
    # estimate.
    laid = {p.plan.canal: p.steps for p in planned}
    tabled = {p.plan.canal: p.tabled_steps for p in planned}
    may_take = {p.plan.canal: p.may_take for p in planned}
    runs = tuple(
        tray.tray_run(p.plan.canal, p.steps, shares=cautions.passed_on(canal, figures))
        for canal, p in zip(canals.described, planned, strict=True)
    )
    joining = [canal.input.name for canal in canals.described if canal.join is not None]
    asks = asked_for(plan_input, tabled, joining, phases_of(plan_input), figures)
    return Plan(
        asks=asks,
        rationales=tuple(tooth_rationales(asks)),
        tooth=ToothNames(
            iso=tooth.iso,
            universal=tooth.universal,
            palmer=tooth.palmer,
            palmer_glyph=tooth.palmer_glyph,
            name=tooth.name,
        ),
        setting=plan_input.setting,
        technique=plan_input.technique.name,
        kit=plan_input.kit.name,
        irrigant=plan_input.choices.irrigant,
        canals=tuple(p.plan for p in planned),
        stop_table=layout.stop_table(tabled, plan_input.technique, kit, {p.plan.canal: p.plan.end_mm for p in planned}),
        tray=tray.shared(runs),
        one_at_a_time=tray.one_at_a_time(runs),
        tray_list=layout.tray_list(laid, may_take, plan_input.technique, kit),
        cautions=by_severity(all_cautions),
        rows_used=_rows_used(figures),
        planner_version=VERSION,
        data_version=data_version(),
        notice=NOTICE,
    )


def _refuse_short(planned: Sequence[PlannedCanal], kit: Mapping[str, Instrument], figures: Figures) -> None:
    """Raises InstrumentTooShort for the first instrument that cannot reach one of its stops."""
    numbers = {key: number for number, key in enumerate(kit)}
    reaches_um: dict[str, int] = {}
    for p in planned:
        # Not the order of work alone: what is tabled although it is withheld must be possible too.
        for node in p.tabled.nodes.values():
            if not isinstance(node, Step) or node.instrument is None or node.stop_um is None:
                continue
            instrument = kit[node.instrument]
            if node.instrument not in reaches_um:
                reaches_um[node.instrument] = um(reach_mm(instrument, figures))
            if reaches_um[node.instrument] < node.stop_um:
                raise InstrumentTooShort(
                    instrument=instrument.name,
                    length_mm=instrument.length_mm,
                    reach_mm=reach_mm(instrument, figures),
                    canal=p.plan.canal,
                    need_mm=mm(node.stop_um),
                    at=("kit", "instruments", numbers[instrument.key], "length_mm"),
                )


def _rows_used(figures: Figures) -> tuple[RowUsed, ...]:
    return tuple(
        RowUsed(key=f.key, value=f.value, unit=f.unit, source=f.source, know=f.know, programme=f.programme)
        for f in figures.used()
    )
