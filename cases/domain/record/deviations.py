"""What was not as planned, in one line each. It follows from the other parts of the record alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.canal_progress import CanalState
from cases.domain.record.shapes import is_deeper
from cases.domain.record.values.record import Record
from cases.domain.record.values.sign_offs import SignOffRecord
from cases.domain.record.values.times import HaltKind
from cases.domain.record.values.work import CanalRecord, Deviation, StepComparison, StepRecord
from cases.domain.record.words import plain
from planning.contract.plan_value import Severity
from planning.foundation.quantities import in_mm, um
from planning.run_sheet.graph import Action, Exit

NOTE, CAUTION, STOP = Severity.NOTE, Severity.CAUTION, Severity.STOP
_COMPARED = {StepComparison.LEFT_OUT: (CAUTION, "left out"), StepComparison.ADDED: (NOTE, "added")}
_WORST_FIRST = (STOP, CAUTION, NOTE)


def deviations(record: Record) -> tuple[Deviation, ...]:
    """Everything that was not as planned: canal by canal, then the whole tooth; the worst first in each."""
    everything = [
        *(each for canal in record.canals for each in _of_canal(canal)),
        *(each for sign_off in record.sign_offs for each in _sign_off(sign_off)),
        *_halts(record),
        *_instruments(record),
        *_asked(record),
        *_out_of_course(record),
        *_let_pass(record),
    ]
    order = {canal.canal: number for number, canal in enumerate(record.canals)}
    return tuple(
        sorted(everything, key=lambda each: (order.get(each.canal, len(order)), _WORST_FIRST.index(each.sign)))
    )


def _of_canal(canal: CanalRecord) -> Iterator[Deviation]:
    deeper = is_deeper(canal.planned, canal.done)
    if canal.done and (deeper or canal.state is CanalState.FINISHED) and canal.differs != ("as planned",):
        at = f"{in_mm(um(canal.done.end_mm or 0))} mm"
        yield Deviation(sign=CAUTION, canal=canal.canal, says=", ".join((f"{canal.done.size} at {at}", *canal.differs)))
    for comparison, (sign, says) in _COMPARED.items():
        steps = Counter(_named(step) for step in canal.steps if step.comparison is comparison)
        if steps:
            listed = ", ".join(name if times == 1 else f"{name} ({times} times)" for name, times in steps.items())
            yield Deviation(sign=sign, canal=canal.canal, says=f"{says}: {listed}")
    yield from (each for step in canal.steps if (each := _step(canal.canal, step)))


def _named(step: StepRecord) -> str:
    if step.instrument and step.action is Action.INSTRUMENT:
        return step.instrument
    return ", ".join(each for each in (step.instrument, plain(step.action)) if each)


def _step(canal: str, step: StepRecord) -> Deviation | None:
    """A step that does not pass, or stopped at another depth than expected."""
    if step.how is Exit.BLOCKED:
        return Deviation(sign=CAUTION, canal=canal, says=f"{_named(step)} does not pass", position=step.position)
    if step.against_band not in ("shorter", "longer") or step.low_mm is None or step.high_mm is None:
        return None
    expected = f"expected {step.low_mm:.1f} to {step.high_mm:.1f}"
    says = f"{_named(step)} stopped at {step.depth_mm:.1f}, {expected}"
    return Deviation(sign=NOTE, canal=canal, says=says, position=step.position)


def _sign_off(sign_off: SignOffRecord) -> Iterator[Deviation]:
    of = plain(sign_off.hold_point)
    for holds, says in (
        (sign_off.said is Decision.RETURNED, f"{of} was returned"),
        (sign_off.despite_missing, f"{of} was approved in spite of what is missing"),
        (sign_off.image_gone, f"an image on which {of} rested was put right since"),
    ):
        if holds:
            yield Deviation(sign=CAUTION, canal=sign_off.canal, says=says, position=sign_off.position)


def _halts(record: Record) -> Iterator[Deviation]:
    for halt in record.halts:
        sign = CAUTION if halt.kind is HaltKind.PAUSE else STOP
        still = "" if halt.ended else ", still stands"
        yield Deviation(sign=sign, canal=halt.canal, says=f"{halt.says}{still}", position=halt.position)


def _instruments(record: Record) -> Iterator[Deviation]:
    for each in record.discarded:
        says = ": ".join(part for part in (f"{each.instrument} was discarded", each.why) if part)
        yield Deviation(sign=NOTE, canal=each.canal, says=says, position=each.position)
    for used in record.instruments:
        if used.most_uses is not None and used.uses > used.most_uses:
            says = f"{used.instrument} was used {used.uses} times, {used.most_uses} allowed"
            yield Deviation(sign=CAUTION, canal="", says=says)


def _asked(record: Record) -> Iterator[Deviation]:
    asked = record.asked
    if asked.planned_exposures is not None and asked.exposures > asked.planned_exposures:
        says = f"{asked.exposures} exposures, {asked.planned_exposures} planned"
        yield Deviation(sign=NOTE, canal="", says=says)


def _out_of_course(record: Record) -> Iterator[Deviation]:
    """Entries that moved nothing, by canal and why."""
    kept = Counter((entry.canal, entry.out_of_course_says) for entry in record.timeline if entry.out_of_course_says)
    for (canal, why), times in kept.items():
        entries = "1 entry" if times == 1 else f"{times} entries"
        yield Deviation(sign=NOTE, canal=canal, says=f"{entries} out of course: {why}")


def _let_pass(record: Record) -> Iterator[Deviation]:
    for override in record.overrides:
        if override.withdrawn_by is None:
            says = f"{plain(override.code)} was let pass: {override.reason}"
            yield Deviation(sign=NOTE, canal=override.canal or "", says=says)
