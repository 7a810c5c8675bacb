"""A fold that is kept and gone on from is the fold from the start, whatever happened; that one is the judge."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping, Sequence
from datetime import UTC, datetime
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from cases.domain.access.roles import Role
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import InspectedPayload, NotePayload, StepPayload
from cases.domain.progress import kept, summary
from cases.domain.progress.canal_progress import CanalProgress
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.course import fold, go_on
from cases.domain.progress.kept import Folded, KeptFold
from cases.domain.progress.lacking import lacking
from cases.domain.progress.uses import uses
from cases.domain.uuid7 import uuid7
from cases.mapping import courses, folds
from cases.models import Case, FoldKept, InstrumentUse, Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.services.treatment import after_events
from planning.foundation.encoding import canonical_text, kept_text, read_back
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Step
from planning.techniques.technique import Setting
from tests import factories
from tests.cases.test_treatment import event, record
from tests.draws import WHOLE
from tests.walkers import drawn
from tests.walkers.drawn import CALM, STUDENT, WILD, Drawn
from tests.walkers.test_same_state import plans

SEED = "20261130"
COURSES = 1_000 if WHOLE else 60
LONGEST = {WILD: 90, CALM: 160}


def drawn_courses(count: int) -> Iterator[tuple[Mapping[str, Sheets], Setting, list[CourseEvent]]]:
    teeth, by = plans(), drawn.dice(SEED)
    for number in range(count):
        sheets, luck = teeth[by.choice(sorted(teeth))], CALM if number % 3 == 0 else WILD
        course = Drawn(sheets, by.choice(list(Setting)), drawn.dice(f"{SEED} kept {number}"), luck)
        course.draw(by.randint(2, LONGEST[luck]))
        yield sheets, course.setting, course.events


def instrument_in(sheets: Mapping[str, Sheets], event_: CourseEvent) -> str | None:
    if isinstance(event_.payload, InspectedPayload):
        return event_.payload.instrument
    sheet = sheets.get(event_.plan, {}).get(event_.canal) if isinstance(event_.payload, StepPayload) else None
    node = sheet.nodes.get(event_.node) if sheet else None
    return node.instrument if isinstance(node, Step) else None


def used_in(sheets: Mapping[str, Sheets], folded: Folded) -> frozenset[str]:
    used = uses(folded.events, frozenset(folded.course.undone), lambda event_: instrument_in(sheets, event_))
    return frozenset(use.event for use in used)


def from_the_start(sheets: Mapping[str, Sheets], setting: Setting, events: Sequence[CourseEvent]) -> Folded:
    folded = Folded(course=fold(sheets, events, setting=setting), events=events)
    return dataclasses.replace(folded, used=used_in(sheets, folded))


def written(value: KeptFold) -> KeptFold:
    """As it comes back from the database."""
    return read_back(KeptFold, kept_text(value))


def answers(course: CaseState, events: Sequence[CourseEvent], sheets: Sheets) -> dict[str, Any]:
    """What is asked of a fold beside its state."""
    gone = set(course.undone)
    return {
        "canals": summary.canals(course, events, {}),
        "in hand": [summary.in_hand(course, events, who, {}) for who in (STUDENT, "vale", "ward")],
        "lacking": {
            name: lacking(name, canal, LengthState.MISSING, events, sheets, gone)
            for name, canal in course.canals.items()
        },
        "in order": [list(course.canals), list(course.emergencies.by_id), list(course.emergencies.halting)],
    }


def test_a_fold_kept_after_every_event_is_the_fold_from_the_start() -> None:
    seen, gone_on = set(), 0
    for sheets, setting, events in drawn_courses(COURSES):
        now: KeptFold | None = None
        for count, event_ in enumerate(events, start=1):
            whole = from_the_start(sheets, setting, events[:count])
            in_force = sheets[whole.course.plan]
            followed = kept.follow(now, in_force, [event_]) if now is not None else None
            if followed is not None:
                gone_on += 1
                seen.add(event_.kind)
                assert answers(followed.course, followed.events, in_force) == answers(
                    whole.course, whole.events, in_force
                )
                followed = dataclasses.replace(followed, used=used_in(sheets, followed))
                assert kept.put_away(followed, in_force) == kept.put_away(whole, in_force)
            now = written(kept.put_away(followed or whole, in_force))
    # Courses in which little happens, or where everything is folded from the start, would prove nothing.
    assert seen == set(EventKind) - kept.REACHES_BACK
    assert gone_on > COURSES * 20


def test_what_still_speaks_does_not_grow_with_what_was_done() -> None:
    """A thousand notes, irrigations and turns leave as many events to be kept as ten."""
    sheets, setting, events = next(drawn_courses(1))
    quiet = [
        CourseEvent(id=f"n{n}", actor=STUDENT, plan=events[0].plan, canal="P", payload=NotePayload(text="Seen."))
        for n in range(1_000)
    ]
    few, many = (
        kept.put_away(folded_, sheets[folded_.course.plan])
        for folded_ in (from_the_start(sheets, setting, [*events, *quiet[:count]]) for count in (10, 1_000))
    )
    assert few == many


def test_every_field_of_a_state_is_kept() -> None:
    of_canal = {field.name for field in dataclasses.fields(CanalProgress)} - {"walk", "every"}
    assert of_canal == set(kept.OF_CANAL)
    assert {field.name for field in dataclasses.fields(CaseState)} - {"canals"} == set(kept.OF_CASE)


# --- in the database -----------------------------------------------------------------------------------------------


def rows_of(version: ToothPlanVersion, events: Sequence[CourseEvent], people: Mapping[str, Person]) -> list[Any]:
    """Drawn events as rows of the case, told of its plan."""
    ids = {event_.id: uuid7() for event_ in events}

    def known(text: str) -> str:
        """Events name each other, and people, by their ids here."""
        for id_, row_id in ids.items():
            text = text.replace(f'"{id_}"', f'"{row_id}"')
        for name, person in people.items():
            text = text.replace(f'"{name}"', f'"{person.pk}"')
        return text.replace(f'"{events[0].plan}"', f'"{version.hash}"')

    first = version.case.events.count()
    return [
        TreatmentEvent(
            id=ids[event_.id],
            sent_hash="",
            case=version.case,
            version=version,
            position=first + number,
            actor=people[event_.actor],
            device=ids[event_.id],
            device_seq=1,
            device_time=datetime(2026, 3, 5, 12, tzinfo=UTC),
            seen_position=0,
            plan_hash=version.hash if event_.plan == events[0].plan else "0" * 64,
            canal=event_.canal,
            node=event_.node,
            kind=event_.kind,
            not_checked=event_.not_checked or "",
            text=known(canonical_text(event_.payload)),
        )
        for number, event_ in enumerate(events, start=1)
    ]


def kept_and_whole(case: Case) -> tuple[list[Any], list[Any]]:
    """What was kept bit by bit, and what comes out where nothing was kept."""

    def now() -> list[Any]:
        text = FoldKept.objects.get(case=case).text
        uses_kept = InstrumentUse.objects.filter(case=case).order_by("pk").values_list("pk", "instrument", "discarded")
        line = RunningWork.objects.filter(case=case).values("position", "halted", "finished", "on_site", "text")
        return [read_back(KeptFold, text), list(uses_kept), list(line)]

    bit_by_bit = now()
    FoldKept.objects.filter(case=case).delete()
    InstrumentUse.objects.filter(case=case).delete()
    RunningWork.objects.filter(case=case).delete()
    after_events.keep(case)
    return bit_by_bit, now()


@pytest.mark.parametrize("number", range(6))
def test_what_is_kept_bit_by_bit_is_what_comes_out_of_all(
    priya: Person, vale: Person, approved: ToothPlanVersion, number: int
) -> None:
    sheets = courses.plan_facts(approved.pk).sheets
    ward = factories.member(approved.programme, "ward", Role.SUPERVISOR)
    course_ = Drawn(
        {"the plan": sheets},
        Setting(approved.case.setting),
        drawn.dice(f"{SEED} rows {number}"),
        WILD if number % 2 else CALM,
    )
    course_.draw(60)
    by = drawn.dice(f"{SEED} batches {number}")
    rows = rows_of(approved, course_.events[1:], {STUDENT: priya, "vale": vale, "ward": ward})
    while rows:
        size = by.randint(1, 8)
        batch, rows = rows[:size], rows[size:]
        TreatmentEvent.objects.bulk_create(batch)
        after_events.keep(approved.case)
    bit_by_bit, whole = kept_and_whole(approved.case)
    assert bit_by_bit == whole


def test_what_other_code_kept_is_not_read(priya: Person, approved: ToothPlanVersion) -> None:
    record(priya, approved, event(approved, 1))
    FoldKept.objects.update(code="0" * 64, text="{}")
    record(priya, approved, event(approved, 2))
    read_back = folds.folded(approved.case_id)
    assert read_back is not None
    assert (FoldKept.objects.get().code, read_back.whole, read_back.position) == (folds.CODE, False, 3)


def test_the_code_that_folds_is_known_by_its_text() -> None:
    """A change of any of it drops what was kept: nobody has to think of a number."""
    read = {source.name for source in folds.sources()}
    assert {"course.py", "undone.py", "payloads.py", "walk.py", "kept.py", "folds.py", "courses.py"} <= read


def test_a_batch_folds_what_is_new_and_reads_no_other_event(
    priya: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    record(priya, approved, event(approved, 1))
    note = NotePayload(text="Seen.")
    record(priya, approved, *(event(approved, seq, note, canal="P", node="") for seq in range(2, 62)))
    folded: list[str] = []
    real = go_on

    def counted(course: CaseState, of: Any, events: Sequence[CourseEvent]) -> None:
        folded.extend(event_.id for event_ in events)
        real(course, of, events)

    monkeypatch.setattr("cases.domain.progress.kept.go_on", counted)
    monkeypatch.setattr(folds, "_from_the_start", lambda case_id: pytest.fail("folded from the start"))
    with CaptureQueriesContext(connection) as asked:
        stored = record(priya, approved, *(event(approved, seq, note, canal="P", node="") for seq in range(62, 72)))
    assert folded == [str(row.pk) for row in stored]
    whole = [
        query["sql"] for query in asked if "cases_treatmentevent" in query["sql"] and "LIMIT 1" not in query["sql"]
    ]
    # What was sent before, by its id; what is written; what is told of it, from its first position on.
    assert len(whole) == 3, whole
    assert f"position >= {stored[0].position}" in whole[2]
