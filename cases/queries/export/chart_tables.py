"""Cases and what was charted, read and seen of them, as tables."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db.models import Prefetch

from cases.domain.column import ColumnType
from cases.mapping.charts import facts_of, tooth_facts_of
from cases.mapping.kits import thresholds_of
from cases.models import BendInSpace, Canal, Image, JunctionReading, LengthReading, Marking
from cases.queries import plans
from cases.queries.charts import with_length
from cases.queries.export.table import KEY, Line, Table, of_line, of_row, of_value
from planning.contract.canal_facts import CanalFacts
from planning.contract.plan_input import Junction
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.encoding import encode
from planning.foundation.tables import Figures
from planning.lengths.readings import Length, Reading

ID, TEXT, MOMENT, WHOLE, NUMBER, YES_NO, JSON = ColumnType
STRUCK = (
    of_row("struck_at", MOMENT, "Since then it counts for nothing."),
    of_row("struck_by_id", ID, "Id of who struck it.", "struck_by_id"),
    of_row("struck_why", TEXT),
)
OF_READING = (
    of_row(KEY, ID),
    of_row("case_id", ID, "", "canal.tooth_id"),
    of_row("canal_id", ID, "", "canal_id"),
    of_row("number", WHOLE, "Counts within the canal."),
    of_row("at", MOMENT, "When it was entered."),
    of_row("actor_id", ID, "Id of who entered it.", "actor_id"),
)


class CaseLine(Line):
    @property
    def plan_state(self) -> str:
        return plans.plan_status(self.row).state

    @property
    def version_id(self) -> UUID | None:
        version = plans.current(self.row)
        return version.pk if version else None


@dataclass(frozen=True, slots=True)
class CanalLine(Line):
    length: Length | None
    problem: str

    @property
    def is_main(self) -> bool:
        return bool(self.row.root.main_canal_id == self.row.pk)


def _canals(programme_id: UUID) -> Callable[[Any], CanalLine]:
    figures = Figures(thresholds_of(programme_id))

    def line(row: Canal) -> CanalLine:
        canal = with_length(row, row.tooth.case.setting, figures)
        return CanalLine(row, encode(facts_of(row)), canal.length, canal.problem)

    return line


def _with_text(_: UUID) -> Callable[[Any], Line]:
    return lambda row: Line(row, json.loads(row.text))


class MarkingLine(Line):
    @property
    def marks(self) -> Any:
        return json.loads(self.row.text)

    @property
    def measured(self) -> Any:
        return json.loads(self.row.measured_text)


CASES = Table(
    name="cases",
    meaning="Cases, each with its tooth. By alias: there is no field for a real identity.",
    columns=(
        of_row(KEY, ID),
        of_row("external_id", TEXT, "The key by which the service that asks knows it."),
        of_row("patient_alias", TEXT, "", "patient.alias"),
        of_row("tooth", TEXT, "ISO 3950 designation.", "tooth.iso"),
        of_row("notation", TEXT, "As the tooth was typed in.", "tooth.notation"),
        of_row("designation", TEXT, "As the tooth was typed in.", "tooth.designation"),
        of_row("setting", TEXT, "Where it is worked."),
        of_row("student_id", ID, "", "student_id"),
        of_row("supervisor_id", ID, "", "supervisor_id"),
        of_row("created_at", MOMENT, "When it was opened."),
        of_row("revision", WHOLE, "Rises with every change a plan could rest on."),
        of_line("plan_state", TEXT, "Where its plan stands."),
        of_line("version_id", ID, "The plan version that stands."),
        *of_value(ToothFacts),
    ),
    rows=lambda cases: cases.select_related("tooth", "patient").prefetch_related(plans.with_status()),
    line=lambda _: lambda row: CaseLine(row, encode(tooth_facts_of(row))),
)
CANALS = Table(
    name="canals",
    meaning="Canals as they are charted now, and what the readings of each come to.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "tooth_id"),
        of_row("name", TEXT),
        of_row("place", WHOLE, "Order on the screen."),
        of_row("root", TEXT, "", "root.name"),
        of_row("root_pattern", TEXT, "How the canals of the root run.", "root.pattern"),
        of_line("is_main", YES_NO, "The main canal of its root."),
        of_row("reference_point", TEXT),
        of_line("length_state", TEXT, "How sure its length is.", "length.state"),
        of_line("working_length_mm", NUMBER, "By its readings.", "length.working_length_mm"),
        of_line("stop_mm", NUMBER, "The working length as an instrument's stop is set.", "length.stop_mm"),
        of_line("estimate_mm", NUMBER, "Where no working length is known yet.", "length.estimate_mm"),
        of_line("length_problem", TEXT, "Why no length can be worked out.", "problem"),
        *of_value(CanalFacts),
    ),
    rows=lambda cases: (
        Canal.objects.filter(tooth__case__in=cases)
        .select_related("root", "tooth__case")
        .prefetch_related(
            Prefetch("readings", LengthReading.objects.order_by("number")),
            Prefetch("junctions", JunctionReading.objects.order_by("number")),
        )
    ),
    line=_canals,
)
READINGS = Table(
    name="readings",
    meaning="Readings of lengths, those struck too. Which columns are filled follows from the method.",
    columns=(
        *OF_READING,
        of_row("marking_id", ID, "The marks on an image that it was taken from.", "marking_id"),
        of_row("method", TEXT),
        *of_value(Reading, without=("method",)),
        *STRUCK,
    ),
    rows=lambda cases: LengthReading.objects.filter(canal__tooth__case__in=cases).select_related("canal"),
    line=_with_text,
)
JUNCTIONS = Table(
    name="junctions",
    meaning="Where canals join, as measured; those struck too. Of a canal the last that was not struck counts.",
    columns=(*OF_READING, *of_value(Junction), *STRUCK),
    rows=lambda cases: JunctionReading.objects.filter(canal__tooth__case__in=cases).select_related("canal"),
    line=_with_text,
)
IMAGES = Table(
    name="images",
    meaning="What is known of each image. Its pixels are at cases/{case}/images/{id}/content.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "case_id"),
        of_row("canal", TEXT, "By its name, where it counts now; of the whole tooth: nothing."),
        of_row("purpose", TEXT, "What it was taken for."),
        of_row("taken_by_id", ID, "", "taken_by_id"),
        of_row("device_time", MOMENT, "When it was taken, by the device's clock."),
        of_row("server_time", MOMENT, "When it was announced."),
        of_row("state", TEXT),
        of_row("reason", TEXT, "Why it was refused."),
        of_row("sha256", TEXT, "Of what was sent, in hexadecimal."),
        of_row("sent_bytes", WHOLE, "Of the whole upload."),
        of_row("kind", TEXT, "What was sent, by its content."),
        of_row("width_px", WHOLE),
        of_row("height_px", WHOLE),
        of_row("has_data_set", YES_NO, "A de-identified DICOM data set is there too."),
        of_row("burnt_in_text", TEXT, "What the file says of writing in the picture."),
        of_row("name_check", TEXT, "Whether somebody has looked that nobody is named in the picture."),
        of_row("checked_by_id", ID, "", "checked_by_id"),
        of_row("checked_at", MOMENT),
        of_row("removed_by_id", ID, "", "removed_by_id"),
        of_row("removed_at", MOMENT),
        of_row("removed_for", TEXT),
        of_row("struck", YES_NO, "It counts for nothing."),
    ),
    rows=lambda cases: Image.objects.filter(case__in=cases),
)
MARKINGS = Table(
    name="markings",
    meaning="What was marked on images, and what it measures.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "image.case_id"),
        of_row("image_id", ID, "", "image_id"),
        of_row("number", WHOLE, "Counts within the image."),
        of_row("made_by_id", ID, "", "made_by_id"),
        of_row("at", MOMENT),
        of_row("corrects_id", ID, "The marking in whose place it is.", "corrects_id"),
        of_row("note", TEXT),
        of_line("marks", JSON, "In pixels of the image."),
        of_line("measured", JSON),
    ),
    rows=lambda cases: Marking.objects.filter(image__case__in=cases).select_related("image"),
    line=lambda _: lambda row: MarkingLine(row, {}),
)
BENDS = Table(
    name="bends-in-space",
    meaning="Bends in space, each from two markings. Of a canal the last counts.",
    columns=(
        of_row(KEY, ID),
        of_row("case_id", ID, "", "canal.tooth_id"),
        of_row("canal_id", ID, "", "canal_id"),
        of_row("number", WHOLE, "Counts within the canal."),
        of_row("made_by_id", ID, "", "made_by_id"),
        of_row("at", MOMENT),
        of_row("first_id", ID, "The first marking.", "first_id"),
        of_row("second_id", ID, "The second marking.", "second_id"),
        of_row("apart_deg", NUMBER, "How far the tube turned between the two."),
        of_row("other_side", YES_NO, "In the second view it bends to the other side."),
        of_line("in_space", JSON, "Schneider's angle in space, in degrees.", "value"),
    ),
    rows=lambda cases: BendInSpace.objects.filter(canal__tooth__case__in=cases).select_related("canal"),
    line=_with_text,
)
