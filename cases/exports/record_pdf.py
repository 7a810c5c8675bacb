"""The record of a case on paper. The same record is the same bytes."""

from __future__ import annotations

import string
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from cases.domain.course import CanalState
from cases.domain.plan_life import Decision
from cases.domain.record.value import (
    CanalRecord,
    CautionEnd,
    Record,
    RecordPerson,
    StepRecord,
    StepStanding,
    TimelineEntry,
)
from cases.domain.record.words import irrigant, plain
from cases.exports.paper import Column, Paper, Row
from cases.exports.typefaces import faces
from planning.encoding import canonical_text
from planning.graph import Action

STATE = {
    CanalState.OPEN: "open",
    CanalState.NOT_RELEASED: "not released",
    CanalState.HOLD_POINT: "waits for a word",
    CanalState.PAUSED: "paused",
    CanalState.PAST_STOP: "past its stop",
    CanalState.TO_PLAN: "to be planned",
    CanalState.TO_CHECK: "to be checked",
    CanalState.FINISHED: "finished",
}
_STANDING = {
    StepStanding.AS_PLANNED: "as planned",
    StepStanding.ADDED: "added",
    StepStanding.LEFT_OUT: "LEFT OUT",
    StepStanding.NOT_YET: "not yet",
}
_AGAINST = {None: "", "as_expected": "within", "shorter": "shorter", "longer": "longer"}
_ENDED = {CautionEnd.STANDS: "stands", CautionEnd.LET_PASS: "let pass", CautionEnd.GONE: "gone in a later version"}
# Said of every step these would fill pages; where one was left out it stands in the table all the same.
_QUIET = frozenset({Action.IRRIGATE, Action.RECAPITULATE})
_LETTERS = string.ascii_letters + string.digits + string.punctuation + " ·"


def record_pdf(record: Record, record_hash: str) -> bytes:
    """The record as a PDF for A4. `record_hash` is printed, so that it can be compared with the one kept."""
    with TemporaryDirectory() as folder:
        # The glyph of the Palmer notation is not printed, and only one large typeface has it.
        text = canonical_text(record).replace(record.tooth.palmer_glyph, "")
        found = faces(text + _LETTERS, Path(folder))
        top = f"Training record · {record.patient_alias} · tooth {record.tooth.iso} · case {record.case}"
        below = f"{record.notice} SHA-256 {record_hash}"
        paper = Paper(top=top, below=below, seal=record_hash, at=record.last_at, faces=found)
        paper.set_title(f"Record, {record.patient_alias}, tooth {record.tooth.iso}")
        paper.add_page()
        _head(paper, record, record_hash)
        for head, columns, rows in _tables(record):
            if there := list(rows):
                paper.heading(head)
                paper.table_of(columns, there)
        for canal in record.canals:
            _work(paper, canal)
        if record.timeline:
            paper.heading("Timeline")
            paper.paragraph("Times are UTC. What was taken back is struck through and says so.")
            paper.table_of(_TIMELINE, [_entry(entry) for entry in record.timeline])
        return bytes(paper.output())


def _head(paper: Paper, record: Record, record_hash: str) -> None:
    paper.headline(f"Record: {record.tooth.name} ({record.tooth.iso})")
    paper.paragraph(record.notice, bold=True, boxed=True)
    paper.ln(2)
    if record.invented:
        paper.paragraph("Demonstration: the programme, its people and this case are invented.", bold=True)
    supervisor = _person(record.supervisor) if record.supervisor else "none named"
    for line in (
        f"Patient alias: {record.patient_alias}. Setting: {plain(record.setting)}. Programme: {record.programme}.",
        f"Student: {record.student.name}. Supervisor: {supervisor}. Opened {_time(record.opened_at)}.",
        f"{record.position} entries, the last at {_time(record.last_at)}.",
        f"SHA-256 of this record: {record_hash}",
    ):
        paper.paragraph(line)


Table = tuple[str, Sequence[Column], Iterator[Row]]


def _tables(record: Record) -> Iterator[Table]:
    yield "Canals", _CANALS, (_canal(canal) for canal in record.canals)
    yield "Plans and decisions", _VERSIONS, _versions(record)
    yield "Sign-offs at hold points", _WORDS, _words(record)
    yield "Cautions", _CAUTIONS, _cautions(record)
    yield "Let pass by a supervisor", _LET_PASS, _let_pass(record)
    yield "Pauses, stops passed, emergencies", _HALTS, _halts(record)
    yield "Visits", _VISITS, _visits(record)
    yield "Irrigants", _IRRIGANTS, _irrigants(record)
    yield "Instruments used", _INSTRUMENTS, _instruments(record)
    yield "Instruments discarded", _DISCARDED, _discarded(record)
    yield "Images", _IMAGES, _images(record)


_CANALS = (
    Column(head="Canal", width=10),
    Column(head="Reference point", width=18),
    Column(head="Length, mm", width=12, right=True),
    Column(head="Rests on", width=32),
    Column(head="Final size planned", width=16),
    Column(head="Largest at length", width=16),
    Column(head="Stands", width=16),
)


def _canal(canal: CanalRecord) -> Row:
    length = canal.length
    rests = ", ".join(plain(method) for method in length.rests_on) if length else ""
    state = f"{plain(length.state)}: {rests}" if length and rests else canal.length_problem
    return Row(
        cells=(
            canal.canal,
            canal.reference_point,
            _mm(length.stop_mm if length else None),
            state,
            canal.planned_size or "",
            canal.largest_at_length or "",
            STATE[canal.state] if canal.state else "not begun",
        )
    )


_VERSIONS = (
    Column(head="Version", width=9, right=True),
    Column(head="Technique and kit", width=32),
    Column(head="By", width=22),
    Column(head="Decision", width=62),
)


def _versions(record: Record) -> Iterator[Row]:
    for one in record.versions:
        decisions = "\n".join(
            f"{plain(each.decision)} by {_person(each.who)}, {_time(each.at)}" + (f": {each.note}" if each.note else "")
            for each in one.decisions
        )
        yield Row(cells=(str(one.number), f"{one.technique}, {one.kit}", one.author.name, decisions or "none"))


_WORDS = (
    Column(head="Entry", width=8, right=True),
    Column(head="Canal", width=9),
    Column(head="Hold point", width=16),
    Column(head="Said", width=34),
    Column(head="By", width=30),
    Column(head="At", width=22),
)


def _words(record: Record) -> Iterator[Row]:
    for one in record.words:
        marks = [
            "APPROVED" if one.said is Decision.APPROVED else "RETURNED",
            "in spite of what is missing" if one.in_spite else "",
            "at the bench" if one.at_bench else "",
            "" if one.in_course else "out of course",
            one.reason,
        ]
        said = ", ".join(mark for mark in marks if mark)
        who = _person(one.who)
        yield Row(cells=(str(one.position), one.canal, plain(one.hold_point), said, who, _time(one.at)))


_CAUTIONS = (
    Column(head="Canal", width=9),
    Column(head="Severity", width=11),
    Column(head="What it says", width=72),
    Column(head="Version", width=9, right=True),
    Column(head="How it ended", width=20),
)


def _cautions(record: Record) -> Iterator[Row]:
    for one in record.cautions:
        severity = "STOP" if one.severity == "stop" else one.severity
        yield Row(cells=(one.canal or "tooth", severity, one.says, str(one.version), _ENDED[one.settled]))


_LET_PASS = (
    Column(head="Caution", width=24),
    Column(head="Canal", width=9),
    Column(head="Reason", width=44),
    Column(head="By", width=30),
    Column(head="Taken back", width=24),
)


def _let_pass(record: Record) -> Iterator[Row]:
    for one in record.let_pass:
        by = f"{_person(one.who)}, {_time(one.at)}"
        back = f"{_person(one.withdrawn_by)}, {_time(one.withdrawn_at)}" if one.withdrawn_by else ""
        yield Row(cells=(one.code, one.canal or "tooth", one.reason, by, back))


_HALTS = (
    Column(head="Entry", width=8, right=True),
    Column(head="Canal", width=9),
    Column(head="What", width=42),
    Column(head="By", width=26),
    Column(head="Went on", width=44),
)


def _halts(record: Record) -> Iterator[Row]:
    for one in record.halts:
        ended = "STILL STANDS"
        if one.ended:
            ended = f"entry {one.ended.position}, {_person(one.ended.who)}, {_time(one.ended.at)}: {one.ended.reason}"
        says = f"{one.says}. Cause: {one.cause}" if one.cause else one.says
        by = f"{_person(one.who)}, {_time(one.at)}"
        yield Row(cells=(str(one.position), one.canal or "tooth", says, by, ended))


_VISITS = (
    Column(head="Visit", width=8, right=True),
    Column(head="Opened", width=36),
    Column(head="In the room", width=34),
    Column(head="Closed", width=46),
)


def _visits(record: Record) -> Iterator[Row]:
    for one in record.visits:
        closed = "still open"
        if one.closed_by:
            sealed = "access sealed" if one.access_sealed else "access open"
            closed = f"{_time(one.closed_at)}, {one.closed_by.name}, {sealed}" + (f": {one.note}" if one.note else "")
        opened = f"{_time(one.opened_at)}, {one.opened_by.name}"
        here = ", ".join(_person(who) for who in one.on_site) or "nobody named"
        yield Row(cells=(str(one.number), opened, here, closed))


_IRRIGANTS = (
    Column(head="Irrigant", width=30),
    Column(head="In all, ml", width=14, right=True),
    Column(head="Of it, by canal", width=76),
)


def _irrigants(record: Record) -> Iterator[Row]:
    for one in record.irrigants:
        canals = ", ".join(f"{each.canal or 'no canal named'} {each.volume_ml:g} ml" for each in one.canals)
        yield Row(cells=(irrigant(one.irrigant), f"{one.volume_ml:g}", canals))


_INSTRUMENTS = (
    Column(head="Instrument", width=26),
    Column(head="Canals entered", width=46),
    Column(head="Discarded", width=14, right=True),
    Column(head="Uses of the present one", width=20, right=True),
    Column(head="Allowed", width=14, right=True),
)


def _instruments(record: Record) -> Iterator[Row]:
    for one in record.instruments:
        allowed = "not stated" if one.most_uses is None else str(one.most_uses)
        over = one.most_uses is not None and one.uses > one.most_uses
        uses = f"{one.uses} TOO MANY" if over else str(one.uses)
        yield Row(cells=(one.key, ", ".join(one.canals), str(one.discarded), uses, allowed))


_DISCARDED = (
    Column(head="Entry", width=8, right=True),
    Column(head="Instrument", width=20),
    Column(head="Canal", width=9),
    Column(head="Why", width=50),
    Column(head="By", width=32),
)


def _discarded(record: Record) -> Iterator[Row]:
    for one in record.discarded:
        by = f"{_person(one.who)}, {_time(one.at)}"
        yield Row(cells=(str(one.position), one.instrument, one.canal, one.why, by))


_IMAGES = (
    Column(head="Entry", width=8, right=True),
    Column(head="Shows", width=20),
    Column(head="Canal", width=9),
    Column(head="Image", width=50),
    Column(head="By", width=32),
)


def _images(record: Record) -> Iterator[Row]:
    for one in record.images:
        by = f"{_person(one.who)}, {_time(one.at)}"
        yield Row(cells=(str(one.position), plain(one.shows), one.canal, one.image, by))


# --- work on one canal ---

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


def _work(paper: Paper, canal: CanalRecord) -> None:
    """Everything done, and what was passed over; what is still ahead only as a number."""
    told = [step for step in canal.steps if _is_told(step)]
    ahead = sum(step.standing is StepStanding.NOT_YET for step in canal.steps)
    if not told:
        return
    paper.heading(f"Work on {canal.canal}")
    quiet = "Irrigating and recapitulating stand here only where left out or added."
    estimate = "Expected is the estimate of the plan, for teaching, and never a target."
    paper.paragraph(f"{quiet} {estimate} {ahead} planned steps are ahead." if ahead else f"{quiet} {estimate}")
    paper.table_of(_WORK, [_step(step) for step in told])


def _is_told(step: StepRecord) -> bool:
    if step.standing is StepStanding.NOT_YET:
        return False
    return step.standing is not StepStanding.AS_PLANNED or step.action not in _QUIET


def _step(step: StepRecord) -> Row:
    band = f"{step.low_mm:.1f} to {step.high_mm:.1f}" if step.low_mm is not None and step.high_mm is not None else ""
    action = "" if step.instrument and step.action is Action.INSTRUMENT else plain(step.action)
    what = ", ".join(each for each in (step.instrument, action) if each)
    if step.visit > 1:
        what += f", time {step.visit}"
    return Row(
        cells=(
            "" if step.position is None else str(step.position),
            plain(step.phase),
            what,
            _mm(step.stop_mm),
            _mm(step.depth_mm) or (plain(step.how) if step.how else ""),
            band,
            _AGAINST[step.against_band],
            _STANDING[step.standing],
        )
    )


# --- the timeline ---

_TIMELINE = (
    Column(head="Entry", width=8, right=True),
    Column(head="At (device)", width=27),
    Column(head="Who", width=27),
    Column(head="Canal", width=9),
    Column(head="What", width=58),
)


def _entry(entry: TimelineEntry) -> Row:
    marks = [f"Out of course: {entry.out_of_course_says}" if entry.out_of_course else ""]
    marks += ["TAKEN BACK" if entry.undone else ""]
    says = ". ".join(each for each in (entry.says, *marks) if each)
    return Row(
        cells=(
            str(entry.position),
            f"{_time(entry.at)} ({_device(entry)})",
            _person(entry.who),
            entry.canal or "tooth",
            says,
        ),
        struck=entry.undone,
    )


def _device(entry: TimelineEntry) -> str:
    """By the device's own clock; with the day where that is another one."""
    at = entry.device_time.astimezone(UTC)
    return f"{at:%H:%M}" if at.date() == entry.at.astimezone(UTC).date() else _time(at)


def _person(person: RecordPerson) -> str:
    return f"{person.name} ({person.role})" if person.role else person.name


def _time(at: datetime | None) -> str:
    return "" if at is None else f"{at.astimezone(UTC):%Y-%m-%d %H:%M}"


def _mm(value: float | None) -> str:
    return "" if value is None else f"{value:.2f}".removesuffix("0")
