"""Practice as its student and the supervisors of the programme see it: nothing hidden before an exercise is ended."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from uuid import UUID

from django.db.models import Count, OuterRef, Q, QuerySet, Subquery

from cases.domain.access.permissions import May
from cases.domain.access.roles import Role
from cases.mapping.practice import canals_of, done_of, due_of, points_of, reveal_of, score_of
from cases.models import Membership, Person, PracticeAct, PracticeExercise, PracticeTask
from cases.queries import seen
from planning.practice.exercise import ActDone, StepDue
from planning.practice.levels import PracticeLevel, levels, proposed
from planning.practice.score import PracticeScore, standing
from planning.practice.shown import PracticeCanal, PracticeReveal


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseListed:
    row: PracticeExercise
    score: PracticeScore | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseShown:
    row: PracticeExercise
    score: PracticeScore | None
    canals: tuple[PracticeCanal, ...]
    due: StepDue | None
    done: Sequence[ActDone]
    reveal: PracticeReveal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ActShown:
    row: PracticeAct
    done: ActDone
    due: StepDue | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeShown:
    levels: tuple[PracticeLevel, ...]
    proposed: str
    unended: PracticeExercise | None
    """The newest of the asker's own that is not ended."""
    worked: int
    """How many of their own were worked to the end."""
    points: int | None
    """Mean of the last few of those."""


def exercises(asker: Person, programme_id: UUID) -> QuerySet[PracticeExercise]:
    """A student's own; for a supervisor all of the programme. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.SEE_PRACTICE, asker, programme_id)
    rows: QuerySet[PracticeExercise] = _seen(asker).filter(programme=programme_id)
    return rows


def _seen(asker: Person) -> QuerySet[PracticeExercise]:
    member = Membership.objects.filter(person=asker)
    whole, own = (member.filter(role=role).values("programme") for role in (Role.SUPERVISOR, Role.STUDENT))
    rows = PracticeExercise.objects.filter(Q(programme__in=whole) | Q(student=asker, programme__in=own))
    return rows.select_related("student", "task")


def exercise(asker: Person, id_: UUID) -> PracticeExercise:
    """Raises NotHere."""
    return seen.row_of(_seen(asker), id_, "exercise")


def listed(row: PracticeExercise) -> ExerciseListed:
    return ExerciseListed(row=row, score=score_of(row))


def shown(row: PracticeExercise) -> ExerciseShown:
    acts = list(row.acts.order_by("number"))
    reveal = reveal_of(row)
    return ExerciseShown(
        row=row,
        score=reveal.score if reveal else None,
        canals=canals_of(row),
        due=None if row.ended_at else due_of(acts[-1].due_text if acts else row.first_due_text),
        done=[done_of(act) for act in acts],
        reveal=reveal,
    )


def act_shown(row: PracticeAct) -> ActShown:
    return ActShown(row=row, done=done_of(row), due=due_of(row.due_text))


def practice(asker: Person, programme_id: UUID) -> PracticeShown:
    """What can be practised, and how far the asker is. Raises NotHere and NotAllowed."""
    own = exercises(asker, programme_id).filter(student=asker).order_by("-created_at", "-pk")
    scored = points_of(own)
    return PracticeShown(
        levels=levels(),
        proposed=proposed(scored),
        unended=own.filter(ended_at=None).first(),
        worked=len(scored),
        points=standing([points for _, points in scored]),
    )


def tasks(asker: Person, programme_id: UUID) -> QuerySet[PracticeTask]:
    """What is set for the asker or was begun by them; for a supervisor all, with how many have begun and ended it.

    Raises NotHere and NotAllowed.
    """
    seen.refuse_unless_may(May.SEE_PRACTICE, asker, programme_id)
    own = PracticeExercise.objects.filter(student=asker, task=OuterRef("pk"))
    rows = PracticeTask.objects.filter(programme=programme_id).annotate(
        exercise_id=Subquery(own.values("pk")[:1]),
        begun=Count("exercises"),
        ended=Count("exercises", filter=Q(exercises__ended_at__isnull=False)),
    )
    member = Membership.objects.get(person=asker, programme=programme_id)
    if member.role == Role.STUDENT:
        is_set = Q(withdrawn_at=None, group__in=("", member.group))
        rows = rows.filter(is_set | Q(exercise_id__isnull=False))
    return rows.select_related("set_by").order_by("-created_at", "-pk")


def task(asker: Person, programme_id: UUID, id_: UUID) -> PracticeTask:
    """Raises NotHere and NotAllowed."""
    return seen.row_of(tasks(asker, programme_id), id_, "task")
