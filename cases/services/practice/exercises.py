"""An exercise from its start to its end."""

from __future__ import annotations

from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May, refuse_unless
from cases.domain.errors import ChangedSince, Conflict, NotAllowed
from cases.domain.uuid7 import uuid7
from cases.mapping.practice import points_of, worked_anew
from cases.models import Membership, Person, PracticeAct, PracticeExercise, PracticeTask
from cases.services.common import audit, idempotency
from cases.services.common.guard import actor_in
from cases.services.practice import seeds
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.foundation.version import VERSION
from planning.practice.exercise import Act, Exercise
from planning.practice.levels import proposed
from planning.practice.shown import known, revealed

MOST_UNENDED = 20  # exercises of one student: more are forgotten ones


@transaction.atomic
def start(
    *,
    actor: Person,
    programme_id: UUID,
    level: str | None = None,
    task: PracticeTask | None = None,
    id: UUID | None = None,
) -> tuple[PracticeExercise, bool]:
    """A new exercise with a canal of its own and True; False where it was sent, or the task begun, before.

    A task says which level and canal; with neither the level is the one proposed. Raises UnknownLevel, NotAllowed,
    Conflict, SentDifferently.
    """
    refuse_unless(May.PRACTISE, actor_in(actor, programme_id))
    # One student starts one at a time: the same sent twice at once finds the first.
    Membership.objects.select_for_update(no_key=True).get(person=actor, programme_id=programme_id)
    what = {"level": level, "task": str(task.pk) if task else None}
    sent_hash = idempotency.fingerprint(actor=actor, to=programme_id, what=what)
    if before := idempotency.sent_before(PracticeExercise, id, sent_hash):
        return before, False
    rows = PracticeExercise.objects.filter(student=actor, programme_id=programme_id)
    if task and (begun := rows.filter(task=task).first()):
        return begun, False
    if task and task.withdrawn_at:
        raise Conflict(reason="This task was withdrawn. Begin a canal of your own.")
    if rows.filter(ended_at=None).count() >= MOST_UNENDED:
        raise Conflict(reason=f"{MOST_UNENDED} exercises are not ended. End one of them first.")
    if task:
        level = task.level
    elif level is None:
        level = proposed(points_of(rows))
    row = _begun(level, task.seed if task else seeds.new_seed())
    row.pk, row.sent_hash = id or uuid7(), sent_hash
    row.programme_id, row.student, row.task = programme_id, actor, task
    row.save(force_insert=True)
    audit.changed(actor=actor, verb="start", subject=row, programme_id=programme_id, after={"level": level})
    return row, True


def _begun(level: str, seed: int) -> PracticeExercise:
    try:
        exercise = Exercise.begun(level, seed)
    except PlanningError as refusal:
        raise refusal.below("level") from None
    return PracticeExercise(
        level=level,
        seed=seed,
        planner_version=VERSION,
        canals_text=canonical_text(known(exercise)),
        first_due_text=canonical_text(exercise.due),
    )


@transaction.atomic
def act(
    *, actor: Person, exercise: PracticeExercise, act: Act, seen_revision: int, id: UUID | None = None
) -> tuple[PracticeAct, bool]:
    """What came of an act, and True; False where it was sent before. The row of the act is the log of it.

    Raises ActRefused, NotAllowed, ChangedSince, Conflict, SentDifferently.
    """
    row = _locked(actor, exercise)
    sent_hash = idempotency.fingerprint(actor=actor, to=row.pk, what={"act": act})
    if before := idempotency.sent_before(PracticeAct, id, sent_hash):
        return before, False
    _refuse_changed(row, seen_revision)
    if row.ended_at is not None:
        raise Conflict(reason="This exercise was ended. Begin another.")
    if row.planner_version != VERSION:
        raise Conflict(reason="The planner was renewed since this exercise was begun. End it and begin another.")
    course = worked_anew(row)
    try:
        done = course.act(act)
    except PlanningError as refusal:
        raise refusal.below("act") from None
    done_row = PracticeAct(
        id=id or uuid7(),
        sent_hash=sent_hash,
        exercise=row,
        number=done.number,
        done_text=canonical_text(done),
        due_text=canonical_text(course.due) if course.due else "",
    )
    done_row.save(force_insert=True)
    row.revision += 1
    row.save(update_fields=["revision"])
    return done_row, True


@transaction.atomic
def end(*, actor: Person, exercise: PracticeExercise, seen_revision: int) -> PracticeExercise:
    """The exercise with what was hidden, and its score where all canals are worked.

    Nothing is revealed where the planner has changed since: the canal would be another. Raises NotAllowed,
    ChangedSince.
    """
    row = _locked(actor, exercise)
    if row.ended_at is not None:
        return row  # sent twice
    _refuse_changed(row, seen_revision)
    if row.planner_version == VERSION:
        reveal = revealed(worked_anew(row), row.seed)
        row.reveal_text, row.points = canonical_text(reveal), reveal.score.points if reveal.score else None
    row.ended_at = timezone.now()
    row.revision += 1
    row.save(update_fields=["ended_at", "reveal_text", "points", "revision"])
    audit.changed(actor=actor, verb="end", subject=row, programme_id=row.programme_id, after={"points": row.points})
    return row


def _locked(actor: Person, exercise: PracticeExercise) -> PracticeExercise:
    """The exercise as it is, held until the transaction ends. Raises NotAllowed for all but its student."""
    refuse_unless(May.PRACTISE, actor_in(actor, exercise.programme_id))
    if exercise.student_id != actor.pk:
        raise NotAllowed(reason="An exercise is worked and ended by its own student.")
    return PracticeExercise.objects.select_for_update(no_key=True).get(pk=exercise.pk)


def _refuse_changed(row: PracticeExercise, seen_revision: int) -> None:
    """Raises ChangedSince: the student went on at another device."""
    if row.revision != seen_revision:
        raise ChangedSince(what="The exercise")
