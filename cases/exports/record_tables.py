"""What a record tells in tables: lengths, what was used, and all that was put right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from cases.domain.progress.canal_progress import CanalState
from cases.domain.record.values.plans import CautionEnd
from cases.domain.record.values.record import Record
from cases.domain.record.values.work import CanalRecord
from cases.domain.record.words import STRUCK_WHY, irrigant, plain, put_right
from cases.exports import cells
from cases.exports.table import Column, Row

STATE = {
    CanalState.OPEN: "open",
    CanalState.NOT_RELEASED: "not released",
    CanalState.HOLD_POINT: "waits for sign-off",
    CanalState.PAUSED: "paused",
    CanalState.PAST_STOP: "past its stop",
    CanalState.TO_PLAN: "to be planned",
    CanalState.TO_CHECK: "to be checked",
    CanalState.WAITS: "waits for a canal that it joins",
    CanalState.FINISHED: "finished",
}
_ENDED = {CautionEnd.STANDS: "stands", CautionEnd.OVERRIDDEN: "let pass", CautionEnd.GONE: "gone in a later version"}
Table = tuple[str, Sequence[Column], Iterator[Row]]


def tables(record: Record) -> Iterator[Table]:
    """Each with its heading; one without rows is left out."""
    yield "Lengths and sizes", _CANALS, (_canal(canal) for canal in record.canals)
    yield "Instruments used", _INSTRUMENTS, _instruments(record)
    yield "Irrigants", _IRRIGANTS, _irrigants(record)
    yield "Visits", _VISITS, _visits(record)
    yield "Pauses, stops passed, emergencies", _HALTS, _halts(record)
    yield "Cautions", _CAUTIONS, _cautions(record)
    yield "Let pass by a supervisor", _OVERRIDES, _overrides(record)
    yield "Entered by other systems", _ENTERED, _entered(record)
    yield "Readings that were struck", _STRUCK, _struck(record)
    yield "Images that were put right", _PUT_RIGHT, _put_right(record)
    yield "Instruments discarded", _DISCARDED, _discarded(record)
    yield "Images", _IMAGES, _images(record)


_CANALS = (
    Column(head="Canal", width=9),
    Column(head="Reference point", width=16),
    Column(head="Length, mm", width=12, right=True),
    Column(head="Rests on", width=32),
    Column(head="Charted", width=27),
    Column(head="Planned size", width=12),
    Column(head="Largest at length", width=14),
    Column(head="Stands", width=22),
)


def _canal(canal: CanalRecord) -> Row:
    length = canal.length
    rests = ", ".join(plain(method) for method in length.rests_on) if length else ""
    state = f"{plain(length.state)}: {rests}" if length and rests else canal.length_problem
    return Row(
        cells=(
            canal.canal,
            canal.reference_point,
            cells.mm(length.stop_mm if length else None),
            state,
            canal.charted,
            canal.planned_size or "",
            canal.largest_at_length or "",
            STATE[canal.state] if canal.state else "not begun",
        )
    )


_ENTERED = (
    Column(head="By", width=34),
    Column(head="For", width=34),
    Column(head="What", width=40),
    Column(head="When", width=22),
)


def _entered(record: Record) -> Iterator[Row]:
    for row in record.entered:
        yield Row(cells=(row.service, cells.person(row.person), row.says, cells.time(row.at)))


_STRUCK = (
    Column(head="Canal", width=10),
    Column(head="Read", width=50),
    Column(head="Taken", width=30),
    Column(head="Struck", width=35),
)


def _struck(record: Record) -> Iterator[Row]:
    for reading in record.struck:
        taken = cells.by(reading.taken_by, reading.taken_at)
        struck = f"{cells.by(reading.who, reading.at)}: {STRUCK_WHY[reading.why]}"
        yield Row(cells=(reading.canal, reading.says, taken, struck), struck=True)


_PUT_RIGHT = (
    Column(head="Shows", width=14),
    Column(head="Was in", width=12),
    Column(head="Taken", width=30),
    Column(head="What was done", width=34),
    Column(head="By", width=30),
)


def _put_right(record: Record) -> Iterator[Row]:
    for image in record.images_put_right:
        taken = cells.by(image.taken_by, image.taken_at)
        by = cells.by(image.who, image.at)
        done = put_right(image.why, image.moved_to)
        yield Row(cells=(plain(image.purpose), image.canal or "tooth", taken, done, by), struck=image.moved_to is None)


_CAUTIONS = (
    Column(head="Canal", width=9),
    Column(head="Severity", width=11),
    Column(head="What it says", width=72),
    Column(head="Version", width=9, right=True),
    Column(head="How it ended", width=20),
)


def _cautions(record: Record) -> Iterator[Row]:
    for caution in record.cautions:
        severity = "PUT RIGHT" if caution.severity == "stop" else caution.severity
        yield Row(
            cells=(caution.canal or "tooth", severity, caution.says, str(caution.version), _ENDED[caution.settled])
        )


_OVERRIDES = (
    Column(head="Caution", width=24),
    Column(head="Canal", width=9),
    Column(head="Reason", width=44),
    Column(head="By", width=30),
    Column(head="Taken back", width=24),
)


def _overrides(record: Record) -> Iterator[Row]:
    for override in record.overrides:
        by = cells.by(override.who, override.at)
        back = cells.by(override.withdrawn_by, override.withdrawn_at) if override.withdrawn_by else ""
        size = "" if override.final_size is None else f"Final size {override.final_size}. "
        yield Row(cells=(override.code, override.canal or "tooth", f"{size}{override.reason}", by, back))


_HALTS = (
    Column(head="Entry", width=8, right=True),
    Column(head="Canal", width=9),
    Column(head="What", width=42),
    Column(head="By", width=26),
    Column(head="Went on", width=44),
)


def _halts(record: Record) -> Iterator[Row]:
    for halt in record.halts:
        ended = "STILL STANDS"
        if halt.ended:
            by, at = cells.person(halt.ended.who), cells.time(halt.ended.at)
            ended = f"entry {halt.ended.position}, {by}, {at}: {halt.ended.reason}"
        says = f"{halt.says}. Cause: {halt.cause}" if halt.cause else halt.says
        if halt.review_by:
            seen = f"SEEN {cells.time(halt.seen_again)}" if halt.seen_again else "NO VISIT SINCE"
            says = f"{says}. Patient to be seen again by {cells.time(halt.review_by)}: {seen}"
        by = cells.by(halt.who, halt.at)
        yield Row(cells=(str(halt.position), halt.canal or "tooth", says, by, ended))


_VISITS = (
    Column(head="Visit", width=8, right=True),
    Column(head="Opened", width=36),
    Column(head="In the room", width=34),
    Column(head="Closed", width=46),
)


def _visits(record: Record) -> Iterator[Row]:
    for visit in record.visits:
        closed = "still open"
        if visit.closed_by:
            sealed = "access sealed" if visit.access_sealed else "access open"
            closed = f"{cells.time(visit.closed_at)}, {visit.closed_by.name}, {sealed}" + (
                f": {visit.note}" if visit.note else ""
            )
        opened = f"{cells.time(visit.opened_at)}, {visit.opened_by.name}"
        here = ", ".join(cells.person(who) for who in visit.on_site) or "nobody named"
        yield Row(cells=(str(visit.number), opened, here, closed))


_IRRIGANTS = (
    Column(head="Irrigant", width=30),
    Column(head="In all, ml", width=14, right=True),
    Column(head="Of it, by canal", width=76),
)


def _irrigants(record: Record) -> Iterator[Row]:
    for used in record.irrigants:
        canals = ", ".join(f"{each.canal or 'no canal named'} {each.volume_ml:g} ml" for each in used.canals)
        yield Row(cells=(irrigant(used.irrigant), f"{used.volume_ml:g}", canals))


_INSTRUMENTS = (
    Column(head="Instrument", width=26),
    Column(head="Canals entered", width=46),
    Column(head="Discarded", width=14, right=True),
    Column(head="Uses of the present one", width=20, right=True),
    Column(head="Allowed", width=14, right=True),
)


def _instruments(record: Record) -> Iterator[Row]:
    for used in record.instruments:
        allowed = "not stated" if used.most_uses is None else str(used.most_uses)
        over = used.most_uses is not None and used.uses > used.most_uses
        uses = f"{used.uses} TOO MANY" if over else str(used.uses)
        yield Row(cells=(used.key, ", ".join(used.canals), str(used.discarded), uses, allowed))


_DISCARDED = (
    Column(head="Entry", width=8, right=True),
    Column(head="Instrument", width=20),
    Column(head="Canal", width=9),
    Column(head="Why", width=50),
    Column(head="By", width=32),
)


def _discarded(record: Record) -> Iterator[Row]:
    for discard in record.discarded:
        by = cells.by(discard.who, discard.at)
        yield Row(cells=(str(discard.position), discard.instrument, discard.canal, discard.why, by))


_IMAGES = (
    Column(head="Entry", width=8, right=True),
    Column(head="Shows", width=20),
    Column(head="Canal", width=9),
    Column(head="Image", width=50),
    Column(head="By", width=32),
)


def _images(record: Record) -> Iterator[Row]:
    for listed in record.images:
        by = cells.by(listed.who, listed.at)
        image = listed.image_id if listed.counts else f"{listed.image_id} COUNTS HERE NO MORE"
        if gone := listed.removed:
            image += f" REMOVED: {gone.reason.says}. {cells.by(gone.who, gone.at)}"
        yield Row(cells=(str(listed.position), plain(listed.purpose), listed.canal, image, by))
