"""Where the work on a case stands: its events folded over the run sheets of its plans."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from uuid import UUID

from cases.domain.at_a_glance import Band, Bands
from cases.domain.course import Course, Happened, Sheets, fold
from cases.domain.events import FROM_HERE, EventKind
from cases.domain.plan_life import Decision
from cases.models import values
from cases.models.events import TreatmentEvent
from cases.models.plans import ToothPlanVersion
from planning.plan_value import Plan
from planning.quantities import um
from planning.techniques import Setting

TEXTS = ("input_text", "output_text")
# Reading a plan takes longer than folding a visit; so many are worked on in one clinic.
PLANS_KEPT = 64


def course(case_id: UUID, events: Sequence[TreatmentEvent]) -> Course | None:
    """The fold of the case's events; None before a plan was approved."""
    first = _begun_with(case_id, events)
    if first is None:
        return None
    plans = {first.hash: worked(first.pk).sheets}
    taken_over = {row.plan_hash for row in events if row.kind == EventKind.REPLAN}
    for version in ToothPlanVersion.objects.filter(case_id=case_id, hash__in=taken_over).defer(*TEXTS):
        plans[version.hash] = worked(version.pk).sheets
    return fold(plans, first.hash, [values.happened(row) for row in events], setting=worked(first.pk).setting)


@dataclass(frozen=True, slots=True)
class InHand:
    """Work that goes on."""

    course: Course
    plans: Mapping[str, Sheets]
    """Run sheets of every version that something was recorded on."""
    events: Sequence[Happened]


def in_hand(case_id: UUID) -> InHand | None:
    """The work on the case; None before anything was done."""
    events = list(TreatmentEvent.objects.filter(case_id=case_id).order_by("position"))
    found = course(case_id, events) if any(map(_done, events)) else None
    if found is None:
        return None
    versions = ToothPlanVersion.objects.filter(case_id=case_id, hash__in={event.plan_hash for event in events})
    plans = {version.hash: worked(version.pk).sheets for version in versions.defer(*TEXTS)}
    return InHand(found, plans, [values.happened(event) for event in events])


def _begun_with(case_id: UUID, events: Sequence[TreatmentEvent]) -> ToothPlanVersion | None:
    """The plan that work began on: that of the first event of a device if it was approved, else the last approved one.

    What is recorded here before any work is a decision, and the next one may be on another plan.
    """
    approved = (
        ToothPlanVersion.objects.filter(case_id=case_id, reviews__decision=Decision.APPROVED)
        .defer(*TEXTS)
        .distinct()
        .order_by("-number")
    )
    by_hash = {version.hash: version for version in approved}
    begun = next((by_hash[event.plan_hash] for event in events if _done(event) and event.plan_hash in by_hash), None)
    return begun or next(iter(by_hash.values()), None)


def _done(event: TreatmentEvent) -> bool:
    return event.kind not in FROM_HERE


@dataclass(frozen=True, slots=True)
class Worked:
    """What the work at the chair asks of a version."""

    sheets: Sheets
    setting: Setting
    bands: Bands
    names: Mapping[str, str]
    """Written sizes of the instruments by their keys."""


@lru_cache(PLANS_KEPT)
def worked(version_id: UUID) -> Worked:
    """A version never changes, so it is read once."""
    plan = values.made(ToothPlanVersion.objects.get(pk=version_id))
    return Worked(
        sheets={canal.canal: canal.run_sheet for canal in plan.canals},
        setting=Setting(plan.setting),
        bands=_bands(plan),
        names={item.instrument.key: item.instrument.name for item in plan.tray_list},
    )


def _bands(plan: Plan) -> Bands:
    found: dict[tuple[str, str], list[Band | None]] = {}
    for canal in plan.canals:
        for step in canal.expectation.steps if canal.expectation else ():
            band = None
            if step.low_mm is not None and step.high_mm is not None:
                band = Band(low_um=um(step.low_mm), high_um=um(step.high_mm))
            found.setdefault((canal.canal, step.node), []).append(band)
    return found
