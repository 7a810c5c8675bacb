"""The course on paper: the work on each canal, and every entry."""

from __future__ import annotations

from datetime import UTC

from cases.domain.record.values.record import Record
from cases.domain.record.values.timeline import TimelineEntry
from cases.domain.record.values.work import CanalRecord, StepComparison, StepRecord
from cases.domain.record.words import plain
from cases.exports import cells
from cases.exports.paper import Paper
from cases.exports.record_paper import record_paper
from cases.exports.table import Column, Row
from planning.run_sheet.graph import Action

_STANDING = {
    StepComparison.AS_PLANNED: "as planned",
    StepComparison.ADDED: "added",
    StepComparison.LEFT_OUT: "LEFT OUT",
    StepComparison.NOT_YET: "not yet",
}
_AGAINST = {None: "", "as_expected": "within", "shorter": "shorter", "longer": "longer"}
# Said of every step these would fill pages; where one was left out it stands in the table all the same.
_QUIET = frozenset({Action.IRRIGATE, Action.RECAPITULATE})

_WORK = (
    Column(head="Entry", width=8, right=True),
    Column(head="Phase", width=22),
    Column(head="Step", width=28),
    Column(head="Stop, mm", width=11, right=True),
    Column(head="Depth, mm, or how", width=16, right=True),
    Column(head="Expected, mm", width=18, right=True),
    Column(head="Depth lies", width=13),
    Column(head="Against the plan", width=18),
)


def course_pdf(record: Record, record_hash: str) -> bytes:
    """The steps of each canal and every entry, as a PDF that carries the record's hash."""
    with record_paper(record, record_hash, "Course") as paper:
        for canal in record.canals:
            _work(paper, canal)
        _timeline(paper, record)
        return bytes(paper.output())


def _work(paper: Paper, canal: CanalRecord) -> None:
    """Everything done, and what was passed over; what is still ahead only as a number."""
    shown_steps = [step for step in canal.steps if _is_told(step)]
    ahead = sum(step.comparison is StepComparison.NOT_YET for step in canal.steps)
    if not shown_steps:
        return
    paper.heading(f"Work on {canal.canal}")
    quiet = "Irrigating and recapitulating stand here only where left out or added."
    estimate = "Expected is the estimate of the plan, for teaching, and never a target."
    if any(step.as_if_straight for step in shown_steps):
        estimate += " The canal is bent, and its expected depths are computed as if straight."
    paper.paragraph(f"{quiet} {estimate} {ahead} planned steps are ahead." if ahead else f"{quiet} {estimate}")
    paper.table_of(_WORK, [_step(step) for step in shown_steps])


def _is_told(step: StepRecord) -> bool:
    if step.comparison is StepComparison.NOT_YET:
        return False
    return step.comparison is not StepComparison.AS_PLANNED or step.action not in _QUIET


def _step(step: StepRecord) -> Row:
    band = f"{step.low_mm:.1f} to {step.high_mm:.1f}" if step.low_mm is not None and step.high_mm is not None else ""
    band += ", as if straight" if band and step.as_if_straight else ""
    action = "" if step.instrument and step.action is Action.INSTRUMENT else plain(step.action)
    what = ", ".join(each for each in (step.instrument, action) if each)
    if step.pass_number > 1:
        what += f", time {step.pass_number}"
    return Row(
        cells=(
            "" if step.position is None else str(step.position),
            plain(step.phase),
            what,
            cells.mm(step.stop_mm),
            cells.mm(step.depth_mm) or (plain(step.how) if step.how else ""),
            band,
            _AGAINST[step.against_band],
            _STANDING[step.comparison],
        )
    )


_TIMELINE = (
    Column(head="Entry", width=8, right=True),
    Column(head="At (device)", width=27),
    Column(head="Who", width=27),
    Column(head="Canal", width=9),
    Column(head="What", width=58),
)


def _entry(entry: TimelineEntry) -> Row:
    marks = [
        f"Out of course: {entry.out_of_course_says}" if entry.out_of_course else "",
        f"Not checked: {entry.not_checked_says}" if entry.not_checked_says else "",
    ]
    marks += ["TAKEN BACK" if entry.undone else ""]
    says = ". ".join(each for each in (entry.says, *marks) if each)
    return Row(
        cells=(
            str(entry.position),
            f"{cells.time(entry.at)} ({_device(entry)})",
            cells.person(entry.who),
            entry.canal or "tooth",
            says,
        ),
        struck=entry.undone,
    )


def _device(entry: TimelineEntry) -> str:
    """The time by the device's own clock; with the day where it is not the server's."""
    at = entry.device_time.astimezone(UTC)
    return f"{at:%H:%M}" if at.date() == entry.at.astimezone(UTC).date() else cells.time(at)


def _timeline(paper: Paper, record: Record) -> None:
    """Every entry, in the order of the server."""
    paper.heading("Timeline")
    paper.paragraph("Times are UTC. What was taken back is struck through and says so.")
    paper.table_of(_TIMELINE, [_entry(entry) for entry in record.timeline])
