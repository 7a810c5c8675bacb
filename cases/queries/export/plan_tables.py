"""Plans, what was decided on them and what was done at the chair, as tables."""

from __future__ import annotations

import json
from collections.abc import Callable
from uuid import UUID

from django.db.models import F, QuerySet

from cases.domain.column import ColumnType
from cases.domain.events.payloads import EventPayload
from cases.mapping.charts import millimetres
from cases.models import (
    CanalPlan,
    Case,
    CautionOverride,
    Review,
    ReviewRemark,
    Revocation,
    ToothPlanVersion,
    TreatmentEvent,
)
from cases.queries.export.table import KEY, Line, Table, of_line, of_row, of_value

ID, TEXT, MOMENT, WHOLE, NUMBER, YES_NO, JSON = ColumnType


class VersionLine(Line):
    @property
    def stale(self) -> bool:
        return bool(self.row.case_revision != self.row.case.revision)


class CanalPlanLine(Line):
    @property
    def stop_mm(self) -> float | None:
        return millimetres(self.row.stop_um)

    @property
    def end_mm(self) -> float | None:
        return millimetres(self.row.end_um)


def _versions(cases: QuerySet[Case]) -> QuerySet[ToothPlanVersion]:
    rows: QuerySet[ToothPlanVersion] = ToothPlanVersion.objects.filter(case__in=cases)
    return rows.select_related("case").annotate(carried_number=F("carried_from__number"))


def _events(_: UUID) -> Callable[[TreatmentEvent], Line]:
    return lambda row: Line(row, json.loads(row.text))


VERSIONS = Table(
    name="plan-versions",
    meaning="Versions of plans. All that one says is at plan-versions/{id}/texts/{hash}, and stays there unchanged.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "case_id"),
        of_row("number", WHOLE, "Counts within the case."),
        of_row("state", TEXT),
        of_line("stale", YES_NO, "The case has changed since it was made."),
        of_row("hash", TEXT, "SHA-256 of what was given and what came out."),
        of_row("intent_hash", TEXT, "Of kit, technique, choices, final sizes and limits alone."),
        of_row("author_id", ID, "", "author_id"),
        of_row("kit_id", ID, "", "kit_id"),
        of_row("technique", TEXT, "", "technique_key"),
        of_row("stops", WHOLE, "Cautions that withhold steps."),
        of_row("cautions", WHOLE, "Cautions that do not."),
        of_row("planner_version", TEXT),
        of_row("created_at", MOMENT),
        of_row("submitted_at", MOMENT),
        of_row("decided_at", MOMENT),
        of_row("not_released", JSON, "Canals that the approval leaves out."),
        of_row("carried_from", WHOLE, "Number of the version whose approval holds for it.", "carried_number"),
    ),
    rows=_versions,
    line=lambda _: lambda row: VersionLine(row, {}),
)
CANAL_PLANS = Table(
    name="canal-plans",
    meaning="Where each canal ends in each version of a plan, and how large it is made.",
    columns=(
        of_row(KEY, WHOLE),
        of_row("version_id", ID, "", "version_id"),
        of_row("canal", TEXT, "Its name when it was planned."),
        of_row("length_state", TEXT, "How sure its length is."),
        of_line("stop_mm", NUMBER, "Where the stop is set."),
        of_line("end_mm", NUMBER, "Where the preparation ends."),
        of_row("final_size", WHOLE, "Of the last instrument; nothing for a wide canal, no size chosen yet."),
        of_row("final_taper", WHOLE, "In per cent."),
    ),
    rows=lambda cases: CanalPlan.objects.filter(version__case__in=cases),
    line=lambda _: lambda row: CanalPlanLine(row, {}),
)
REVIEWS = Table(
    name="reviews",
    meaning="Decisions on versions.",
    columns=(
        of_row(KEY, ID),
        of_row("version_id", ID, "", "version_id"),
        of_row("decision", TEXT),
        of_row("asked", WHOLE, "Which submission of the version it answers."),
        of_row("supervisor_id", ID, "", "supervisor_id"),
        of_row("at", MOMENT),
        of_row("note", TEXT),
        of_row("acknowledged", JSON, "What must be put right and was acknowledged by its name."),
        of_row("own_lengths", JSON, "What the supervisor measured beside the plan: canal and length_mm."),
    ),
    rows=lambda cases: Review.objects.filter(version__case__in=cases),
)
REMARKS = Table(
    name="remarks",
    meaning="What was said of single canals in decisions.",
    columns=(
        of_row(KEY, WHOLE),
        of_row("review_id", ID, "", "review_id"),
        of_row("canal", TEXT, "Its name when it was planned.", "canal_plan.canal"),
        of_row("text", TEXT),
        of_row("returned", YES_NO, "The approval leaves this canal out."),
    ),
    rows=lambda cases: ReviewRemark.objects.filter(review__version__case__in=cases).select_related("canal_plan"),
)
REVOCATIONS = Table(
    name="revocations",
    meaning="Approvals that were withdrawn.",
    columns=(
        of_row(KEY, ID),
        of_row("version_id", ID, "", "version_id"),
        of_row("by_id", ID, "Id of who withdrew it.", "actor_id"),
        of_row("at", MOMENT),
        of_row("asked", WHOLE, "Which submission of the version had been approved."),
        of_row("reason", TEXT),
    ),
    rows=lambda cases: Revocation.objects.filter(version__case__in=cases),
)
OVERRIDES = Table(
    name="overrides",
    meaning="What supervisors let pass, those taken back too.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "case_id"),
        of_row("version_id", ID, "The version that carried the caution.", "version_id"),
        of_row("code", TEXT, "Of the caution."),
        of_row("canal", TEXT, "By its name; of the whole tooth: nothing.", "canal.name"),
        of_row("reason", TEXT),
        of_row("final_size", WHOLE, "What was chosen for a wide canal."),
        of_row("supervisor_id", ID, "", "supervisor_id"),
        of_row("at", MOMENT),
        of_row("withdrawn_at", MOMENT),
        of_row("withdrawn_by_id", ID, "", "withdrawn_by_id"),
    ),
    rows=lambda cases: CautionOverride.objects.filter(case__in=cases).select_related("canal"),
)
EVENTS = Table(
    name="events",
    meaning="What was done and seen at the chair, as it was told. Which columns are filled follows from the kind.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "case_id"),
        of_row("position", WHOLE, "The order within the case."),
        of_row("server_time", MOMENT, "When it came in."),
        of_row("device_id", ID, "", "device"),
        of_row("device_seq", WHOLE, "Counts the device's events of the case."),
        of_row("device_time", MOMENT, "By the device's clock, which may be wrong."),
        of_row("actor_id", ID, "Id of who did it.", "actor_id"),
        of_row("plan_hash", TEXT, "Of the plan on the screen."),
        of_row("canal", TEXT, "By its name; of the whole tooth: nothing."),
        of_row("node", TEXT, "The step in the run sheet."),
        of_row("not_checked", TEXT, "What of it could not be checked when it came in."),
        of_row("kind", TEXT, "What happened."),
        *of_value(EventPayload, without=("kind",)),
    ),
    rows=lambda cases: TreatmentEvent.objects.filter(case__in=cases),
    line=_events,
)
