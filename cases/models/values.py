"""Rows as the planner's frozen values, and back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any

from django.db.models import Prefetch, QuerySet

from cases.domain import images
from cases.domain.course import Happened
from cases.domain.events import EventKind, NotChecked
from cases.models.events import TreatmentEvent
from cases.models.images import Image
from cases.models.kits import Kit as KitRow
from cases.models.kits import KitFilling, KitInstrument, KitNeedle, ProgrammeWidths, TechniqueRecord, ThresholdOverride
from cases.models.overrides import CautionOverride
from cases.models.plans import ToothPlanVersion
from cases.models.readings import JunctionReading, LengthReading
from cases.models.teeth import Canal, Case, Root
from planning import technique_files
from planning.encoding import Mode, canonical_text, decode
from planning.instruments import DiameterAt, Instrument, Motion, Use
from planning.lengths import About, settle
from planning.obturation import FillingItem
from planning.plan_input import (
    CanalInput,
    Finding,
    Junction,
    Kit,
    Needle,
    Override,
    Pattern,
    PlanInput,
    RootInput,
    WallInput,
    WidthInput,
)
from planning.plan_value import Plan
from planning.quantities import mm, um
from planning.radiograph.values import Calibration, PixelSpacing, SpacingFacts
from planning.readings import Length, Reading, Resorption
from planning.tables import Figures, published
from planning.techniques import Technique
from planning.teeth import like

# --- cases ---


def charted(cases: QuerySet[Case]) -> QuerySet[Case]:
    """The cases with all that is needed to show or plan them, in a fixed number of questions to the database."""
    canals = Canal.objects.select_related("root").order_by("place")
    readings = LengthReading.objects.select_related("actor", "struck_by").order_by("number")
    junctions = JunctionReading.objects.select_related("actor", "struck_by").order_by("number")
    overrides = CautionOverride.objects.select_related("canal", "supervisor", "withdrawn_by").order_by("at", "pk")
    return cases.select_related("tooth", "patient", "student", "supervisor", "programme").prefetch_related(
        Prefetch("overrides", queryset=overrides),
        Prefetch("tooth__roots", queryset=Root.objects.select_related("main_canal").order_by("name")),
        Prefetch("tooth__canals", queryset=canals),
        Prefetch("tooth__canals__readings", queryset=readings),
        Prefetch("tooth__canals__junctions", queryset=junctions),
    )


def reading(row: LengthReading) -> Reading:
    found: Reading = decode(Reading, row.told, Mode.KEPT)
    return found


def junction(row: JunctionReading) -> Junction:
    return decode(Junction, row.told, Mode.KEPT)


def counting(row: Canal) -> list[LengthReading]:
    """The canal's readings without those that were struck."""
    return [each for each in row.readings.all() if each.struck_at is None]


def last_junction(row: Canal) -> Junction | None:
    """Where the canal joins, by the last reading that was not struck.

    One that was taken while a reading stood that has been struck since is measured from the present length: the length
    that was kept with it may have rested on that reading.
    """
    last = next((each for each in reversed(row.junctions.all()) if each.struck_at is None), None)
    if last is None:
        return None
    struck = [each for each in row.readings.all() if each.struck_at is not None]
    rested = any(each.at <= last.at < each.struck_at for each in struck)
    return replace(junction(last), at_length_mm=None) if rested else junction(last)


def millimetres(length_um: int | None) -> float | None:
    return None if length_um is None else mm(length_um)


def micrometres(length_mm: float | None) -> int | None:
    return None if length_mm is None else um(length_mm)


def root_input(row: Root) -> RootInput:
    main = row.main_canal.name if row.main_canal else None
    return RootInput(name=row.name, pattern=Pattern(row.pattern), main_canal=main)


def canal_input(row: Canal, usual: Mapping[str, tuple[WidthInput, ...]]) -> CanalInput:
    """The canal as charted; `usual` are the programme's widths by canal, for one that nobody measured."""
    return CanalInput(
        name=row.name,
        root=row.root.name,
        reference_point=row.reference_point,
        finding=Finding(row.finding),
        readings=tuple(reading(each) for each in counting(row)),
        resorption=Resorption(row.resorption),
        junction=last_junction(row),
        curvature_deg=row.curvature_deg,
        curve_start_mm=millimetres(row.curve_start_um),
        orifice_mm=millimetres(row.orifice_um),
        apex_mm=millimetres(row.apex_um),
        curve_radius_mm=millimetres(row.curve_radius_um),
        curve_from_end_mm=millimetres(row.curve_from_end_um),
        wall=wall(row),
        first_binder_size=row.first_binder_size,
        widths=widths(row) or usual.get(row.name, ()),
    )


def wall(row: Canal) -> WallInput | None:
    """The thinnest wall where it was measured."""
    if row.wall_thickness_um is None or row.wall_from_end_um is None:
        return None
    return WallInput(thickness_mm=mm(row.wall_thickness_um), from_end_mm=mm(row.wall_from_end_um))


def widths(row: Canal) -> tuple[WidthInput, ...]:
    """Measured in this canal; empty where nobody did."""
    return _widths(row.widths_text)


def _widths(text: str) -> tuple[WidthInput, ...]:
    return decode(tuple[WidthInput, ...], json.loads(text or "[]"), Mode.KEPT)


def override_inputs(row: Case) -> tuple[Override, ...]:
    """What supervisors let pass and have not taken back; `row` comes from `charted`."""
    standing = [each for each in row.overrides.all() if each.withdrawn_at is None]
    return tuple(override_input(each) for each in standing)


def override_input(row: CautionOverride) -> Override:
    return Override(
        code=row.code, canal=row.canal.name if row.canal else None, reason=row.reason, final_size=row.final_size
    )


def about(row: Canal, setting: str) -> About:
    return About(
        canal=row.name,
        reference_point=row.reference_point,
        setting=setting,
        resorption=Resorption(row.resorption),
        apex_mm=millimetres(row.apex_um),
    )


def length(row: Canal, setting: str, figures: Figures) -> Length:
    """What the readings of a canal come to. Raises PlanningError where they cannot be right together."""
    return settle([reading(each) for each in counting(row)], about(row, setting), figures)


# --- plan versions ---

# Each takes about 1.5 MB with its text.
PLANS_KEPT = 32


def given(version: ToothPlanVersion) -> PlanInput:
    """What the version was made from. A programme's value of a figure that is none any more has nothing to say."""
    read = decode(PlanInput, json.loads(version.input_text), Mode.KEPT)
    return replace(read, thresholds={key: read.thresholds[key] for key in read.thresholds if key in published()})


def made(version: ToothPlanVersion) -> Plan:
    """What the planner said."""
    return _made(version.output_text)


@lru_cache(PLANS_KEPT)
def _made(text: str) -> Plan:
    """A frozen value; one approval reads its plan four times."""
    return decode(Plan, json.loads(text), Mode.KEPT)


# --- images ---


def spacing_facts(row: Image) -> SpacingFacts | None:
    """What the image's file said of its scale; None where it said nothing."""
    if not row.spacing_text:
        return None
    said = decode(images.Spacing, json.loads(row.spacing_text), Mode.KEPT)
    return SpacingFacts(
        in_patient=_spacing(said.pixel_spacing_mm),
        at_detector=_spacing(said.imager_pixel_spacing_mm),
        scanned=_spacing(said.nominal_scanned_pixel_spacing_mm),
        calibration=CALIBRATION.get(said.pixel_spacing_calibration_type or ""),
        magnification=said.estimated_magnification,
    )


CALIBRATION: Mapping[str, Calibration] = {"GEOMETRY": "geometry", "FIDUCIAL": "fiducial"}


def _spacing(pair: images.Pair | None) -> PixelSpacing | None:
    return None if pair is None else PixelSpacing(row_mm=pair[0], column_mm=pair[1])


# --- what was done ---


def happened(event: TreatmentEvent) -> Happened:
    return Happened(
        id=str(event.pk),
        kind=EventKind(event.kind),
        actor=str(event.actor_id),
        plan=event.plan_hash,
        canal=event.canal,
        node=event.node,
        body=json.loads(event.text),
        not_checked=NotChecked(event.not_checked) if event.not_checked else None,
    )


# --- what the programme keeps ---


def thresholds(programme_id: Any) -> dict[str, float]:
    rows = ThresholdOverride.objects.filter(programme_id=programme_id).order_by("key")
    return dict(rows.values_list("key", "value"))


def widths_key(tooth: str) -> str | None:
    """The tooth whose widths stand for this one: those of the two sides are alike. None for what has no such widths."""
    try:
        return like(tooth)
    except (KeyError, IndexError):
        return None


def programme_widths(programme_id: Any, tooth: str) -> dict[str, tuple[WidthInput, ...]]:
    """The programme's own widths of a tooth's canals, by canal."""
    rows = ProgrammeWidths.objects.filter(programme_id=programme_id, tooth=widths_key(tooth))
    return {row.canal: _widths(row.text) for row in rows}


def kit(row: KitRow) -> Kit:
    # One order whoever asks, so that one kit has one text.
    instruments = sorted(row.instruments.all(), key=lambda each: (each.use, each.size, each.taper, each.motion))
    needles = sorted(row.needles.all(), key=lambda each: (each.gauge, each.tip))
    filling = sorted(row.filling.all(), key=lambda each: (each.kind, each.size, each.taper))
    return Kit(
        name=row.name,
        instruments=tuple(_instrument(each) for each in instruments),
        needles=tuple(_needle(each) for each in needles),
        filling=tuple(_filling(each) for each in filling),
    )


def _instrument(row: KitInstrument) -> Instrument:
    return Instrument(
        size=row.size,
        taper=row.taper,
        motion=Motion(row.motion),
        use=Use(row.use),
        length_mm=mm(row.length_um),
        cutting_part_mm=mm(row.cutting_part_um),
        largest_flute_mm=millimetres(row.largest_flute_um),
        speed_rpm=row.speed_rpm,
        torque_ncm=row.torque_ncm,
        diameters=decode(tuple[DiameterAt, ...], json.loads(row.diameters_text or "[]"), Mode.KEPT),
        uses=row.uses,
        most_uses=row.most_uses,
    )


def _needle(row: KitNeedle) -> Needle:
    return decode(Needle, {"gauge": row.gauge, "tip": row.tip}, Mode.KEPT)


def _filling(row: KitFilling) -> FillingItem:
    return decode(FillingItem, {"kind": row.kind, "size": row.size, "taper": row.taper}, Mode.KEPT)


def filling_row(kit_row: KitRow, value: FillingItem) -> KitFilling:
    return KitFilling(kit=kit_row, kind=value.kind, size=value.size, taper=value.taper)


def instrument_row(kit_row: KitRow, value: Instrument) -> KitInstrument:
    return KitInstrument(
        kit=kit_row,
        size=value.size,
        taper=value.taper,
        motion=value.motion,
        use=value.use,
        length_um=um(value.length_mm),
        cutting_part_um=um(value.cutting_part_mm),
        largest_flute_um=micrometres(value.largest_flute_mm),
        speed_rpm=value.speed_rpm,
        torque_ncm=value.torque_ncm,
        diameters_text=canonical_text(value.diameters) if value.diameters else "",
        uses=value.uses,
        most_uses=value.most_uses,
    )


def techniques(programme_id: Any) -> dict[str, Technique]:
    """The provided techniques and the programme's own, by key."""
    rows = TechniqueRecord.objects.filter(programme_id=programme_id).order_by("key")
    own = {row.key: decode(Technique, json.loads(row.text), Mode.KEPT) for row in rows}
    return {**technique_files.provided(), **own}
