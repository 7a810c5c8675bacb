"""A plan on one sheet of paper, to lie beside the tray while the work begins."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from tempfile import TemporaryDirectory

from cases.domain.plans.work_sheet import WorkSheet
from cases.domain.record.words import irrigant, plain
from cases.exports import board_drawing, cells
from cases.exports.board import DrawnCanal
from cases.exports.paper import Paper
from cases.exports.record_paper import LETTERS
from cases.exports.table import Column, Row
from cases.exports.typefaces import Faces, faces
from planning.contract.plan_value import CanalPlan, Plan, Severity, Stop
from planning.foundation.encoding import canonical_text
from planning.run_sheet.graph import Target

BOARD_MM = (66, 54, 44)  # the highest that leaves room for all else
TEXT_PT = 8
RESISTANCE = " *"
_LEGEND = "* to resistance, never past this stop; the others to length. Stops in mm from the reference point."


def work_sheet_pdf(sheet: WorkSheet) -> bytes:
    """The sheet as a PDF: board, stops by instrument and canal, what to lay out, irrigation, what to mind.

    One page: the board gives way to what is written. The same sheet is the same bytes.
    """
    with TemporaryDirectory() as folder:
        # The glyph of the Palmer notation is not printed, and only one large typeface has it.
        text = canonical_text(sheet).replace(sheet.plan.tooth.palmer_glyph, "")
        typefaces = faces(text + LETTERS, Path(folder))
        # Each is written out, as that closes its typefaces.
        pdf = b""
        for board_mm in BOARD_MM:
            paper = _paper(sheet, typefaces, board_mm)
            pdf = bytes(paper.output())
            if len(paper.pages) == 1:
                break
        return pdf


def _paper(sheet: WorkSheet, typefaces: Faces, board_mm: float) -> Paper:
    plan = sheet.plan
    paper = Paper(
        top=f"Before work · {sheet.patient_alias} · tooth {plan.tooth.iso} · case {sheet.case_id}",
        below=f"{plan.notice} Plan {sheet.number}, SHA-256 {sheet.hash}",
        seal=sheet.hash,
        at=sheet.made_at,
        faces=typefaces,
        text_pt=TEXT_PT,
    )
    paper.set_title(f"Before work, {sheet.patient_alias}, tooth {plan.tooth.iso}")
    paper.add_page()
    _head(paper, sheet)
    canals = [_drawn(each) for each in plan.canals]
    layout = board_drawing.draw(paper, canals, width_mm=paper.epw, height_mm=board_mm)
    paper.paragraph(f"In mm; {layout.widened:g} times wider than to scale.")
    _stops(paper, plan)
    _tray(paper, plan)
    _irrigation(paper, plan)
    _cautions(paper, plan)
    return paper


def _head(paper: Paper, sheet: WorkSheet) -> None:
    plan = sheet.plan
    paper.headline(f"Before work: {plan.tooth.name} ({plan.tooth.iso})")
    if sheet.approved:
        left_out = f" Not released: {', '.join(sheet.not_released)}." if sheet.not_released else ""
        paper.paragraph(f"{sheet.approval}{left_out}", bold=True)
    else:
        paper.paragraph(f"NOT APPROVED. {sheet.approval}", bold=True, boxed=True)
    if sheet.invented:
        paper.paragraph("Demonstration: the programme, its people and this case are invented.", bold=True)
    supervisor = sheet.supervisor or "none named"
    paper.paragraph(
        f"Patient alias: {sheet.patient_alias}. Setting: {plain(plan.setting)}. Programme: {sheet.programme}. "
        f"Student: {sheet.student}. Supervisor: {supervisor}."
    )
    paper.paragraph(
        f"Plan {sheet.number}: {plan.technique}, {plan.kit}, made {cells.time(sheet.made_at)}. Times are UTC."
    )
    paper.ln(1)


def _drawn(canal: CanalPlan) -> DrawnCanal:
    notes = (canal.final_name or "no size chosen", *(["estimate"] if canal.provisional else []))
    return DrawnCanal(
        name=canal.canal,
        reference_point=canal.reference_point,
        end_mm=canal.end_mm,
        joins=canal.joins if canal.junction_mm is not None else None,
        planned=canal.outline,
        planned_end_mm=canal.end_mm,
        done=(),
        notes=notes,
    )


def _stops(paper: Paper, plan: Plan) -> None:
    paper.heading("Stops, in order of use")
    names = [canal.canal for canal in plan.canals]
    columns = [
        Column(head="Instrument", width=20),
        Column(head="Phase", width=26),
        *(Column(head=name, width=16, right=True) for name in names),
    ]
    rows = []
    for row in plan.stop_table:
        at = {stop.canal: _stop(stop) for stop in row.stops}
        rows.append(Row(cells=(row.instrument.name, plain(row.phase), *(at.get(name, "") for name in names))))
    rows.append(Row(cells=("needle", "never past", *map(_needle, plan.canals))))
    paper.table_of(columns, rows)
    paper.paragraph(_LEGEND)


def _stop(stop: Stop) -> str:
    # A blank of the same width keeps the numbers under each other.
    return cells.mm(stop.stop_mm) + (RESISTANCE if stop.target is Target.TO_RESISTANCE else "")


def _needle(canal: CanalPlan) -> str:
    return cells.mm(canal.needle.ceiling_mm) if canal.needle else ""


def _tray(paper: Paper, plan: Plan) -> None:
    paper.heading("Tray")
    expected = ", ".join(item.instrument.name for item in plan.tray_list if item.expected)
    paper.paragraph(f"Lay out, left to right: {expected or 'nothing yet'}.")
    if besides := ", ".join(item.instrument.name for item in plan.tray_list if not item.expected):
        paper.paragraph(f"At hand, to make room or open the way again: {besides}.")
    name_of = {item.instrument.key: item.instrument.name for item in plan.tray_list}
    order = [
        f"{plain(phase)} " + ", ".join(f"{name_of[each.instrument]} ({' '.join(each.canals)})" for each in steps)
        for phase, steps in groupby(plan.tray.steps, key=lambda step: step.phase)
    ]
    if order:
        paper.paragraph(f"Taken up in this order: {'; '.join(order)}.")


def _irrigation(paper: Paper, plan: Plan) -> None:
    paper.heading("Irrigation")
    for line in _irrigants(plan):
        paper.paragraph(line)


def _irrigants(plan: Plan) -> Iterator[str]:
    names = dict.fromkeys(total.irrigant for canal in plan.canals for total in canal.irrigants)
    for name in names:
        volumes = [
            f"{canal.canal} {total.volume_ml:g} ml"
            for canal in plan.canals
            for total in canal.irrigants
            if total.irrigant == name
        ]
        yield f"{irrigant(name).capitalize() if name != 'edta' else 'EDTA'}: {', '.join(volumes)}."
    if not names:
        yield "Nothing yet."


def _cautions(paper: Paper, plan: Plan) -> None:
    """What must be put right and what to be careful of, unless a supervisor let it pass."""
    standing = [each for each in plan.cautions if each.severity is not Severity.NOTE and each.overridden is None]
    if not standing:
        return
    paper.heading("To mind")
    for each in standing:
        paper.signed(each.severity, f"{each.canal or 'tooth'}: {each.says}")
