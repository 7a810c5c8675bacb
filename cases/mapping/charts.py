"""Rows of a case as the values that a plan is computed from."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from cases.models.overrides import CautionOverride
from cases.models.readings import JunctionReading, LengthReading
from cases.models.teeth import Canal, Case, Root
from planning.contract.canal_facts import CanalFacts, WidthInput
from planning.contract.plan_input import CanalInput, Junction, Override, Pattern, RootInput
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.encoding import Mode, decode
from planning.foundation.quantities import mm, um
from planning.foundation.tables import Figures
from planning.lengths.readings import Length, Reading
from planning.lengths.working_length import LengthContext, settle


def reading_of(row: LengthReading) -> Reading:
    reading: Reading = decode(Reading, row.payload, Mode.KEPT)
    return reading


def junction_of(row: JunctionReading) -> Junction:
    return decode(Junction, row.payload, Mode.KEPT)


def counting_readings(row: Canal) -> list[LengthReading]:
    """The canal's readings without those that were struck."""
    return [each for each in row.readings.all() if each.struck_at is None]


def last_junction(row: Canal) -> Junction | None:
    """Where the canal joins, by the last reading that was not struck.

    One that was taken while a reading stood that has been struck since is measured from the present length: the length
    that was kept with it may have rested on that reading.
    """
    # Turned round here: the rows came with the chart, and another order would ask the database again.
    last = next((each for each in reversed(row.junctions.all()) if each.struck_at is None), None)
    if last is None:
        return None
    struck = [each for each in row.readings.all() if each.struck_at is not None]
    rested = any(each.at <= last.at < each.struck_at for each in struck)
    return replace(junction_of(last), at_length_mm=None) if rested else junction_of(last)


def millimetres(length_um: int | None) -> float | None:
    return None if length_um is None else mm(length_um)


def micrometres(length_mm: float | None) -> int | None:
    return None if length_mm is None else um(length_mm)


def root_input(row: Root) -> RootInput:
    main = row.main_canal.name if row.main_canal else None
    return RootInput(name=row.name, pattern=Pattern(row.pattern), main_canal=main)


def tooth_facts_of(row: Case) -> ToothFacts:
    """What was seen and recorded of the tooth."""
    return decode(ToothFacts, row.facts, Mode.KEPT)


def facts_of(row: Canal) -> CanalFacts:
    """What was seen and measured of the canal."""
    return decode(CanalFacts, row.facts, Mode.KEPT)


def by_name(facts: CanalFacts | ToothFacts) -> dict[str, Any]:
    """The facts by their names, as the planner's input takes them."""
    return {field.name: getattr(facts, field.name) for field in fields(facts)}


def canal_input(row: Canal, usual: Mapping[str, tuple[WidthInput, ...]]) -> CanalInput:
    """The canal as charted; `usual` are the programme's widths by canal, for one that nobody measured."""
    facts = facts_of(row)
    return CanalInput(
        name=row.name,
        root=row.root.name,
        reference_point=row.reference_point,
        readings=tuple(reading_of(each) for each in counting_readings(row)),
        junction=last_junction(row),
        **by_name(facts) | {"widths": facts.widths or usual.get(row.name, ())},
    )


def widths_in(text: str) -> tuple[WidthInput, ...]:
    return decode(tuple[WidthInput, ...], json.loads(text or "[]"), Mode.KEPT)


def override_inputs(row: Case) -> tuple[Override, ...]:
    """The overrides that supervisors have not withdrawn; `row` comes from `chart`."""
    standing = [each for each in row.overrides.all() if each.withdrawn_at is None]
    return tuple(override_input(each) for each in standing)


def override_input(row: CautionOverride) -> Override:
    return Override(
        code=row.code, canal=row.canal.name if row.canal else None, reason=row.reason, final_size=row.final_size
    )


def length_context(row: Canal, setting: str) -> LengthContext:
    facts = facts_of(row)
    return LengthContext(
        canal=row.name,
        reference_point=row.reference_point,
        setting=setting,
        resorption=facts.resorption,
        apex_mm=facts.apex_mm,
    )


def length_of(row: Canal, setting: str, figures: Figures) -> Length:
    """The length by a canal's readings. Raises PlanningError where they cannot be right together."""
    return settle([reading_of(each) for each in counting_readings(row)], length_context(row, setting), figures)
