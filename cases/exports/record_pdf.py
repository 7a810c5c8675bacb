"""The record of a case on paper. The same record is the same bytes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from io import BytesIO

from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.record.values.record import Record
from cases.domain.record.values.sign_offs import SignOffRecord
from cases.domain.record.values.work import CanalRecord
from cases.domain.record.words import plain
from cases.exports import board_drawing, cells
from cases.exports.board import DrawnCanal
from cases.exports.paper import Paper
from cases.exports.record_paper import record_paper
from cases.exports.record_tables import tables
from cases.exports.table import Column, Row

BOARD_MM = 78
IMAGE_MM, IMAGE_GAP_MM = 28, 2


def record_pdf(record: Record, record_hash: str, *, images: Mapping[str, bytes] | None = None) -> bytes:
    """The record as a PDF: the board and what was not as planned, decisions, then what was measured and used.

    `record_hash` is printed, so that it can be compared with the one kept; `images` are small JPEGs by their ids.
    """
    with record_paper(record, record_hash, "Record") as paper:
        _head(paper, record)
        _board(paper, record)
        _deviations(paper, record)
        _decisions(paper, record)
        for head, columns, rows in tables(record):
            if there := list(rows):
                paper.heading(head)
                paper.table_of(columns, there)
        _images(paper, record, images or {})
        return bytes(paper.output())


def _head(paper: Paper, record: Record) -> None:
    if not record.versions or record.versions[-1].state is not PlanState.APPROVED:
        paper.paragraph("NOT APPROVED: the plan that stands has no approval.", bold=True, boxed=True)
    if record.invented:
        paper.paragraph("Demonstration: the programme, its people and this case are invented.", bold=True)
    supervisor = cells.person(record.supervisor) if record.supervisor else "none named"
    for line in (
        f"Patient alias: {record.patient_alias}. Setting: {plain(record.setting)}. Programme: {record.programme}.",
        f"Student: {record.student.name}. Supervisor: {supervisor}.",
        f"Opened {cells.time(record.opened_at)}. {record.position} entries, the last at {cells.time(record.last_at)}. "
        "Times are UTC.",
    ):
        paper.paragraph(line)


def drawn(canal: CanalRecord) -> DrawnCanal:
    """A canal of the record as the board draws it."""
    planned, done = canal.planned, canal.done
    return DrawnCanal(
        name=canal.canal,
        reference_point=canal.reference_point,
        end_mm=canal.end_mm,
        joins=canal.joins,
        planned=planned.outline if planned else (),
        planned_end_mm=planned.end_mm if planned else None,
        done=done.outline if done else (),
        notes=canal.differs,
    )


def _board(paper: Paper, record: Record) -> None:
    if not record.canals:
        return
    paper.ln(2)
    layout = board_drawing.draw(paper, [drawn(each) for each in record.canals], width_mm=paper.epw, height_mm=BOARD_MM)
    paper.paragraph(
        f"Grey: done. Dashed: planned. mm from the reference point; {layout.widened:g} times wider than to scale."
    )


def _deviations(paper: Paper, record: Record) -> None:
    paper.heading("Not as planned")
    for each in record.deviations:
        entry = f" (entry {each.position})" if each.position is not None else ""
        paper.signed(each.sign, f"{each.canal or 'tooth'}: {each.says}{entry}")
    if not record.deviations:
        paper.paragraph("Nothing so far." if record.position else "Nothing was recorded yet.")


_DECISIONS = (
    Column(head="What", width=34),
    Column(head="Canals", width=20),
    Column(head="Decision", width=58),
    Column(head="By", width=36),
    Column(head="At", width=27),
)


def _decisions(paper: Paper, record: Record) -> None:
    paper.heading("Decisions")
    asked = record.asked
    counts = [
        f"{what}: {done}" + ("" if planned is None else f" (planned: {planned})")
        for what, done, planned in (
            ("Sign-offs by a supervisor", asked.sign_offs, asked.planned_sign_offs),
            ("Exposures", asked.exposures, asked.planned_exposures),
        )
    ]
    paper.paragraph(". ".join(counts) + ".")
    rows = [*_of_plans(record), *_sign_offs(record)]
    if rows:
        paper.table_of(_DECISIONS, rows)


def _of_plans(record: Record) -> Iterator[Row]:
    for version in record.versions:
        what = f"Plan {version.number}: {version.technique}, {version.kit}, by {version.author.name}"
        if not version.decisions:
            yield Row(cells=(what, "", f"no decision; {plain(version.state)}", "", ""))
        for each in version.decisions:
            acknowledged = [f"acknowledged, {bar.canal or 'whole tooth'}: {bar.says}" for bar in each.acknowledged]
            own = [f"measured {own.length_mm:.1f} mm in {own.canal}" for own in each.own_lengths]
            said = "\n".join(part for part in (_said(each.decision), each.note, *acknowledged, *own) if part)
            yield Row(cells=(what, "", said, cells.person(each.who), cells.time(each.at)))


def _sign_offs(record: Record) -> Iterator[Row]:
    """Hold points; what was said of several canals at once stands in one row."""
    rows: dict[tuple[str, str, str, str], list[SignOffRecord]] = {}
    for each in record.sign_offs:
        marks = (
            _said(each.said),
            "in spite of what is missing" if each.despite_missing else "",
            "on site" if each.on_site else "",
            "" if each.in_course else "out of course",
            "AN IMAGE IT RESTED ON WAS PUT RIGHT SINCE" if each.image_gone else "",
            each.reason,
        )
        said = ", ".join(mark for mark in marks if mark)
        key = (plain(each.hold_point), said, cells.person(each.who), cells.time(each.at))
        rows.setdefault(key, []).append(each)
    for (what, said, who, at), of in rows.items():
        yield Row(cells=(what, ", ".join(each.canal for each in of), said, who, at))


def _said(decision: Decision) -> str:
    return "APPROVED" if decision is Decision.APPROVED else "RETURNED"


def _images(paper: Paper, record: Record, images: Mapping[str, bytes]) -> None:
    """The images side by side, each with its entry under it."""
    shown = [each for each in record.images if each.image_id in images]
    across = int((paper.epw + IMAGE_GAP_MM) / (IMAGE_MM + IMAGE_GAP_MM))
    for first in range(0, len(shown), across):
        if paper.will_page_break(IMAGE_MM + 2 * IMAGE_GAP_MM):
            paper.add_page()
        top_mm = paper.y
        for number, each in enumerate(shown[first : first + across]):
            x_mm = paper.l_margin + number * (IMAGE_MM + IMAGE_GAP_MM)
            paper.image(BytesIO(images[each.image_id]), x_mm, top_mm, IMAGE_MM, IMAGE_MM - 4, keep_aspect_ratio=True)
            paper.caption(x_mm, top_mm + IMAGE_MM - 3.5, f"entry {each.position} {each.canal}")
        paper.set_xy(paper.l_margin, top_mm + IMAGE_MM + IMAGE_GAP_MM)
