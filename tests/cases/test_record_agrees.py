"""Many drawn courses: the record answers to the events alone, and both papers say every number of the record.

What the record says is held to sums over the events by loops written here; the papers are read by pypdf.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import combinations

import pytest

from cases.domain.events import payloads as p
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.values.record import Record
from cases.domain.record.words import irrigant
from cases.exports.record_course import course_pdf
from cases.exports.record_pdf import record_pdf
from cases.mapping.plans import plan_of
from cases.models import ToothPlanVersion
from planning.contract.plan_value import CanalPlan
from planning.foundation.quantities import mm, um
from planning.run_sheet.graph import Action, Exit, Step
from tests.cases import paper
from tests.cases.drawn_records import drawn_history, record_of
from tests.draws import draws
from tests.planning.claims import Claim, disagreements
from tests.walkers.drawn import CALM, WILD, dice

SEED = 20261204
COURSES = draws(120, share=20)
HASH = "5f" * 32


@pytest.mark.one_database
def test_the_record_is_what_the_events_say_and_the_papers_say_what_it_is(approved: ToothPlanVersion) -> None:
    drawn, seen = dice(str(SEED)), Counter[str]()
    for number in range(COURSES):
        luck, longest = (CALM, 140) if number % 2 else (WILD, 80)
        history = drawn_history(approved, f"{SEED} {number}", luck, drawn.randint(20, longest))
        record = record_of(approved, history)
        about = f"course {number}"
        assert disagreements(_of_events(history, record, approved)) == {}, about
        _on_paper(record, about)
        seen.update("done" for canal in record.canals if canal.done)
        seen.update("undone" for entry in record.timeline if entry.undone)
        seen.update(f"deviation {each.sign}" for each in record.deviations)
    # Courses in which something never happens would prove nothing of it.
    assert {"done", "undone", "deviation note", "deviation caution", "deviation stop"} <= seen.keys()


def _of_events(history: CaseHistory, record: Record, version: ToothPlanVersion) -> Iterator[Claim]:
    undone = history.course.undone if history.course else ()
    counting = [fact for fact in history.facts if fact.event.id not in undone and not _is(fact, p.UndoPayload)]
    yield ("entries", ""), "events", [(fact.position, fact.canal) for fact in history.facts]
    yield ("entries", ""), "record", [(entry.position, entry.canal) for entry in record.timeline]
    volumes: Counter[str] = Counter()
    for fact in counting:
        if _is(fact, p.StepPayload, p.IrrigatedPayload) and fact.payload.irrigant and fact.payload.volume_ml:  # type: ignore[union-attr]
            volumes[fact.payload.irrigant] += round(100 * fact.payload.volume_ml)  # type: ignore[union-attr]
    yield ("irrigants", ""), "events", dict(volumes)
    yield ("irrigants", ""), "record", {used.irrigant: round(100 * used.volume_ml) for used in record.irrigants}
    yield ("sign-offs", ""), "events", [fact.position for fact in counting if _is(fact, p.SignOffPayload)]
    yield ("sign-offs", ""), "record", [each.position for each in record.sign_offs]
    for canal in plan_of(version).canals:
        made = next(each for each in record.canals if each.canal == canal.canal)
        yield ("done", canal.canal), "events", _done(canal, [fact for fact in counting if fact.canal == canal.canal])
        yield ("done", canal.canal), "record", made.done and (made.done.end_mm, made.done.size)
        yield ("planned", canal.canal), "plan", (canal.end_mm, canal.final_name)
        yield ("planned", canal.canal), "record", made.planned and (made.planned.end_mm, made.planned.size)


def _is(fact: RecordedEvent, *kinds: type[p.EventPayload]) -> bool:
    return isinstance(fact.payload, kinds)


def _done(canal: CanalPlan, facts: list[RecordedEvent]) -> tuple[float, str] | None:
    """Where the largest at the planned end stood and its name, else the deepest: all insertions, one by one."""
    stood: list[tuple[int, int, int, str]] = []
    end_um = um(canal.end_mm or 0)
    for fact in facts:
        step = canal.run_sheet.nodes.get(fact.event.node)
        if not isinstance(fact.payload, p.StepPayload) or not isinstance(step, Step) or not step.instrument:
            continue
        answer = fact.payload
        reached_um = answer.stop_um or step.stop_um if answer.exit is Exit.REACHED else None
        depth_um = answer.depth_um or reached_um
        if step.action is Action.INSTRUMENT and depth_um:
            if step.stop_um and step.stop_um > end_um:
                depth_um = min(depth_um, end_um)
            name = step.instrument.split()[0]
            size, taper = name.split("/.")
            stood.append((depth_um, int(size), int(taper), name))
    at_end = [each for each in stood if each[0] >= end_um]
    if at_end:
        widest = max(at_end, key=lambda each: (each[1], each[2], each[0]))
        return mm(widest[0]), widest[3]
    return (mm(max(stood)[0]), max(stood)[3]) if stood else None


def _on_paper(record: Record, about: str) -> None:
    printed, course = record_pdf(record, HASH), course_pdf(record, HASH)
    text, entries = paper.whole_text(printed), paper.whole_text(course)
    for canal in record.canals:
        length = f"{canal.length.stop_mm:.1f}" if canal.length and canal.length.stop_mm is not None else ""
        assert f"{canal.canal} {canal.reference_point} {length}" in text, about
        assert f"{canal.end_mm:.1f}" in text, about
        assert all(each in text for each in canal.differs), about
    for each in record.deviations:
        assert " ".join(f"{each.canal or 'tooth'}: {each.says}".split()) in text, about
    for used in record.irrigants:
        assert f"{irrigant(used.irrigant)} {used.volume_ml:g}" in text, about
    for tool in record.instruments:
        assert f"{tool.key} {', '.join(tool.canals)}" in text, about
    asked = record.asked
    assert f"Sign-offs by a supervisor: {asked.sign_offs} (planned: {asked.planned_sign_offs})" in text, about
    assert f"Exposures: {asked.exposures} (planned: {asked.planned_exposures})" in text, about
    for entry in record.timeline:
        assert f"{entry.position} {entry.at:%Y-%m-%d %H:%M}" in entries, about
    for pdf in (printed, course):
        boxes = paper.boxes(pdf)
        pages = {box.page for box in boxes}
        on = [[box for box in boxes if box.page == page] for page in pages]
        assert [(a.text, b.text) for page in on for a, b in combinations(page, 2) if a.overlaps(b)] == [], about
