"""A case's events folded from what was kept of their fold, and what of it is kept next."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path
from uuid import UUID

import cases.domain as domain
import planning
from cases.domain.events.event import CourseEvent
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.kept import Folded, KeptFold, follow, put_away
from cases.mapping import courses
from cases.mapping.courses import course_event
from cases.models.events import FoldKept, TreatmentEvent
from cases.models.plans import ToothPlanVersion
from cases.models.prepared import Prepared
from planning.foundation.encoding import kept_text, read_back

FOLDS = (
    (domain, ("events", "progress")),
    (planning, ("run_sheet", "foundation/encoding")),
)
"""Packages whose code decides what a fold is and how it is stored."""


def sources() -> list[Path]:
    """The files of those packages, this file, and the one of `courses`."""
    folders = (Path(package.__path__[0]) / name for package, names in FOLDS for name in names)
    return [*chain(*(sorted(folder.glob("*.py")) for folder in folders)), Path(__file__), Path(courses.__file__)]


def _code() -> str:
    digest = hashlib.sha256()
    for source in sources():
        digest.update(source.read_bytes())
    return digest.hexdigest()


CODE = _code()
"""SHA-256 of that code. A fold that other code has stored is not read, but made anew."""


_KEPT = Prepared(lambda case: FoldKept.objects.filter(case=case, code=CODE))


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseFolded:
    """A case's events, folded up to the last one."""

    folded: Folded
    version_id: UUID
    """Of the plan in force."""
    position: int
    last_id: UUID
    """The last event in it."""
    new: Sequence[TreatmentEvent]
    """The events that the stored fold did not have; all of them where everything was folded from the start."""
    whole: bool
    """Everything was folded from the start."""

    @property
    def facts(self) -> courses.PlanFacts:
        return courses.plan_facts(self.version_id)


def folded(case_id: UUID, *, new: Sequence[TreatmentEvent] = (), after: UUID | None = None) -> CaseFolded | None:
    """The fold of the case's events; None before a plan was in force.

    `new` are the last events of the case, where the caller has them at hand, and `after` is the one before them: then
    they are not read again.

    It goes on from the stored fold, unless other code has stored that, the events are not the same as they were, or an
    event that came since reaches back.
    """
    kept = _KEPT.first(case_id)
    # All is folded anew where nothing was kept, where the last event in it is gone, or where a later one reaches back.
    later = _later(kept, new, after) if kept else None
    return (_gone_on(kept, later) if kept and later is not None else None) or _from_the_start(case_id)


def course_of(case_id: UUID, events: Sequence[TreatmentEvent] = ()) -> CaseState | None:
    """Where the work on the case stands; None before a plan was in force. `events` are all of the case, where the
    caller has them at hand.
    """
    work = folded(case_id, new=events)
    return work.folded.course if work else None


@dataclass(frozen=True, slots=True)
class OngoingWork:
    """Work that goes on."""

    course: CaseState
    plans: Mapping[str, Sheets]
    """Run sheets of every version that something was recorded on."""
    events: Sequence[CourseEvent]


def ongoing_work(case_id: UUID) -> OngoingWork | None:
    """The work on the case; None before anything was done."""
    events = courses.events_of(case_id)
    course = course_of(case_id, events) if courses.work_has_begun(events) else None
    if course is None:
        return None
    versions = ToothPlanVersion.objects.filter(case_id=case_id, hash__in={event.plan_hash for event in events})
    plans = {version.hash: courses.plan_facts(version.pk).sheets for version in versions}
    return OngoingWork(course, plans, [course_event(event) for event in events])


def _gone_on(kept: FoldKept, later: Sequence[TreatmentEvent]) -> CaseFolded | None:
    sheets = courses.plan_facts(kept.version_id).sheets
    folded = follow(read_back(KeptFold, kept.text), sheets, [course_event(row) for row in later])
    if folded is None:
        return None
    return CaseFolded(
        folded=folded,
        version_id=kept.version_id,
        position=later[-1].position if later else kept.position,
        last_id=later[-1].pk if later else kept.last_id,
        new=later,
        whole=False,
    )


def _later(kept: FoldKept, new: Sequence[TreatmentEvent], after: UUID | None) -> Sequence[TreatmentEvent] | None:
    """The events after the last one of the stored fold; None where that one is no longer there."""
    # The usual case: the caller has just written what comes right after the kept fold, so nothing is read.
    if new and kept.last_id == after:
        return new
    ids = [row.pk for row in new]
    if kept.last_id not in ids:
        # With the last folded event itself: that it is still there tells that the events before are the same ones.
        rows = TreatmentEvent.objects.filter(case_id=kept.case_id, position__gte=kept.position)
        new = list(rows.order_by("position"))
        ids = [row.pk for row in new[:1]]
    return new[ids.index(kept.last_id) + 1 :] if kept.last_id in ids else None


def _from_the_start(case_id: UUID) -> CaseFolded | None:
    rows = list(TreatmentEvent.objects.filter(case_id=case_id).order_by("position"))
    events = [course_event(row) for row in rows]
    folded = courses.fold_events(case_id, events)
    if folded is None:
        return None
    course, version_id = folded
    return CaseFolded(
        folded=Folded(course=course, events=events),
        version_id=version_id,
        position=rows[-1].position,
        last_id=rows[-1].pk,
        new=rows,
        whole=True,
    )


def text_of(of: CaseFolded, used: frozenset[str]) -> str:
    """The fold as it is stored, as JSON whose mappings keep their order."""
    return kept_text(put_away(replace(of.folded, used=used), of.facts.sheets))
