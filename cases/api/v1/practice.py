"""Practice: exercises on canals with a hidden truth, and tasks that supervisors set."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, NewestFirst, View, answer, given, me, page_of
from cases.api.etags import seen_revision
from cases.api.fields import Id, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.filters import OF_PAGES, PAGES, PRACTICE_FILTERS, PracticeFilters, filtered
from cases.api.v1.shapes import PersonRef
from cases.domain.errors import Conflict, NotAllowed, NotUsable, SentDifferently
from cases.queries import practice, seen
from cases.services.practice import exercises, tasks
from planning.api.refusals import refuses
from planning.foundation.errors import OutOfBounds
from planning.practice.exercise import Act, ActDone, ActRefused, StepDue
from planning.practice.levels import PracticeLevel, UnknownLevel
from planning.practice.score import PracticeScore
from planning.practice.shown import PracticeCanal, PracticeReveal

TAGS = ["practice"]
MOST_LEVEL, MOST_GROUP = 40, 60  # characters
IF_MATCH = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, required=True, description="The ETag of the exercise as you saw it."
)
SCORE = "Null until it is ended, and where it was ended before all canals were worked."


class PracticeShown(serializers.Serializer[Any]):
    """What can be practised, and how far the person who asks is."""

    levels = Value(tuple[PracticeLevel, ...], help_text="The easiest first.")
    proposed = serializers.CharField(help_text="Key of the level to go on with.")
    unended_id = serializers.UUIDField(
        source="unended.pk", default=None, allow_null=True, help_text="The newest exercise to go on with; null: none."
    )
    worked = serializers.IntegerField(help_text="How many exercises were worked to the end.")
    points = serializers.IntegerField(allow_null=True, help_text="Mean of the last four of those; null: none yet.")


class ExerciseListed(serializers.Serializer[Any]):
    """A stored exercise without what was done in it."""

    id = serializers.UUIDField(source="row.pk")
    student = PersonRef(source="row.student")
    task_id = serializers.UUIDField(source="row.task_id", allow_null=True, help_text="Null: begun by the student.")
    level = serializers.CharField(source="row.level", help_text="Key of the level.")
    created_at = serializers.DateTimeField(source="row.created_at")
    ended_at = serializers.DateTimeField(source="row.ended_at", allow_null=True, help_text="Null: it goes on.")
    score = Value(PracticeScore, allow_null=True, help_text=SCORE)


class ExerciseShown(ExerciseListed):
    """A stored exercise. What is hidden in it is shown once it is ended."""

    revision = serializers.IntegerField(
        source="row.revision", help_text="The ETag begins with it: If-Match takes it alone."
    )
    canals = Value(tuple[PracticeCanal, ...], help_text="In the order in which they are worked.")
    due = Value(StepDue, allow_null=True, help_text="Null: all canals are worked, or it was ended.")
    done = Value(tuple[ActDone, ...], help_text="In order.")
    reveal = Value(
        PracticeReveal,
        allow_null=True,
        help_text="Null until it is ended, and where the planner was renewed since it was begun.",
    )


class ExerciseGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    level = Text(
        max_length=MOST_LEVEL, required=False, allow_null=True, help_text="Left out: the level that is proposed."
    )
    task_id = Id(required=False, allow_null=True, help_text="Of a task that is set; its level counts.")


class ActGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    act = Value(Act, help_text="What the student does.")


class ActShown(serializers.Serializer[Any]):
    """A stored act, what came of it, and what is due after it."""

    id = serializers.UUIDField(source="row.pk")
    at = serializers.DateTimeField(source="row.at")
    revision = serializers.IntegerField(source="row.number", help_text="Of the exercise after it: If-Match takes it.")
    done = Value(ActDone, help_text="The act and what came of it.")
    due = Value(StepDue, allow_null=True, help_text="Null: all canals are worked.")


class TaskGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    level = Text(max_length=MOST_LEVEL, help_text="Key of the level.")
    group = Text(
        max_length=MOST_GROUP,
        required=False,
        allow_blank=True,
        default="",
        help_text="The students' group, by its whole name; empty: all students of the programme.",
    )


class TaskShown(serializers.Serializer[Any]):
    """A stored task: one hidden canal, the same for all for whom it is set."""

    id = serializers.UUIDField()
    level = serializers.CharField(help_text="Key of the level.")
    group = serializers.CharField(help_text="Empty: all students of the programme.")
    set_by = PersonRef(help_text="The supervisor who set it.")
    created_at = serializers.DateTimeField()
    withdrawn_at = serializers.DateTimeField(allow_null=True, help_text="Null: it can be begun.")
    exercise_id = serializers.UUIDField(allow_null=True, help_text="Your own exercise of it; null: not begun.")
    begun = serializers.IntegerField(help_text="How many students have begun it.")
    ended = serializers.IntegerField(help_text="How many of those have ended it.")


class PracticeView(View):
    @extend_schema(
        operation_id="practice_retrieve",
        tags=TAGS,
        summary="What can be practised",
        description="And how far you are. Nothing has to be set up: an exercise is begun with an empty body.",
        extensions=refuses(NotAllowed),
        responses=PracticeShown,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(PracticeShown, practice.practice(me(request), programme_id))


class ExercisesView(View):
    shape = ExerciseListed
    query = {"GET": (*PracticeFilters.base_filters, *OF_PAGES)}

    @extend_schema(
        operation_id="practice_exercises_list",
        tags=TAGS,
        summary="Exercises, newest first",
        description="Students see their own; supervisors all of the programme.",
        parameters=[*PRACTICE_FILTERS, *PAGES],
        extensions=refuses(NotAllowed),
        responses=page_of("PracticeExercisePage", ExerciseListed),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        pages = NewestFirst()
        asked = filtered(PracticeFilters, practice.exercises(me(request), programme_id), request)
        rows = pages.paginate_queryset(asked, request, self) or []
        return pages.get_paginated_response(ExerciseListed([practice.listed(row) for row in rows], many=True).data)

    @extend_schema(
        operation_id="practice_exercises_create",
        tags=TAGS,
        summary="Begin an exercise",
        description="By a student. The server draws a hidden canal; it is shown once the exercise is ended. A task is "
        "begun once: begun again, the exercise of before is answered.",
        parameters=[LOCATION],
        request=ExerciseGiven,
        extensions=refuses(NotAllowed, SentDifferently, Conflict, UnknownLevel),
        responses={200: ExerciseShown, 201: ExerciseShown},
        examples=[examples.EXERCISE],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        read = given(ExerciseGiven, request)
        task_id = read.pop("task_id", None)
        task = practice.task(me(request), programme_id, task_id) if task_id else None
        row, created = exercises.start(actor=me(request), programme_id=programme_id, task=task, **read)
        return _shown(row, created=created)


def _shown(row: Any, *, created: bool = False) -> Response:
    at = f"practice-exercises/{row.pk}"
    return answer(ExerciseShown, practice.shown(row), state=row.revision, created=created, at=at)


class ExerciseView(View):
    @extend_schema(
        operation_id="practice_exercise_retrieve",
        tags=TAGS,
        summary="An exercise",
        description="With what was done in it and what is due. What was hidden is shown once it is ended.",
        responses=ExerciseShown,
    )
    def get(self, request: Request, exercise_id: UUID) -> Response:
        return _shown(practice.exercise(me(request), exercise_id))


class ActsView(View):
    @extend_schema(
        operation_id="practice_acts_create",
        tags=TAGS,
        summary="Do something in an exercise",
        description="By its student: work the step that is due, skip it, or put in another instrument. A prediction "
        "comes with it. The answer says where the instrument stopped and what came of it.",
        parameters=[IF_MATCH, LOCATION],
        request=ActGiven,
        extensions=refuses(NotAllowed, SentDifferently, Conflict, ActRefused, OutOfBounds),
        responses={200: ActShown, 201: ActShown},
        examples=[examples.ACT],
    )
    def post(self, request: Request, exercise_id: UUID) -> Response:
        exercise = practice.exercise(me(request), exercise_id)
        revision = seen_revision(request)
        row, created = exercises.act(
            actor=me(request), exercise=exercise, seen_revision=revision, **given(ActGiven, request)
        )
        at = f"practice-exercises/{exercise.pk}"
        return answer(ActShown, practice.act_shown(row), state=row.number, created=created, at=at)


class EndView(View):
    @extend_schema(
        operation_id="practice_exercise_end",
        tags=TAGS,
        summary="End an exercise and see what was hidden",
        description="By its student, at any time. It is scored where all canals are worked.",
        parameters=[IF_MATCH],
        request=None,
        extensions=refuses(NotAllowed),
        responses=ExerciseShown,
    )
    def post(self, request: Request, exercise_id: UUID) -> Response:
        exercise = practice.exercise(me(request), exercise_id)
        row = exercises.end(actor=me(request), exercise=exercise, seen_revision=seen_revision(request))
        return _shown(row)


class TasksView(View):
    shape = TaskShown
    query = {"GET": OF_PAGES}

    @extend_schema(
        operation_id="practice_tasks_list",
        tags=TAGS,
        summary="Tasks of practice, newest first",
        description="Students see what is set for their group and what they have begun; supervisors all.",
        parameters=PAGES,
        extensions=refuses(NotAllowed),
        responses=page_of("PracticeTaskPage", TaskShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        pages = NewestFirst()
        rows = pages.paginate_queryset(practice.tasks(me(request), programme_id), request, self) or []
        return pages.get_paginated_response(TaskShown(rows, many=True).data)

    @extend_schema(
        operation_id="practice_tasks_create",
        tags=TAGS,
        summary="Set practice as a task",
        description="By a supervisor, for a group or all students. All work the same hidden canal, which stays hidden "
        "from each student until their own exercise is ended; a supervisor sees it in every exercise that is.",
        parameters=[LOCATION],
        request=TaskGiven,
        extensions=refuses(NotAllowed, SentDifferently, NotUsable, UnknownLevel),
        responses={200: TaskShown, 201: TaskShown},
        examples=[examples.PRACTICE_TASK],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        row, created = tasks.set_task(actor=me(request), programme_id=programme_id, **given(TaskGiven, request))
        shown = practice.task(me(request), programme_id, row.pk)
        return answer(TaskShown, shown, created=created, at=f"programmes/{programme_id}/practice-tasks/{row.pk}")


class TaskView(View):
    shape = TaskShown

    @extend_schema(
        operation_id="practice_task_retrieve",
        tags=TAGS,
        summary="A task of practice",
        extensions=refuses(NotAllowed),
        responses=TaskShown,
    )
    def get(self, request: Request, programme_id: UUID, task_id: UUID) -> Response:
        return answer(TaskShown, practice.task(me(request), programme_id, task_id))


class WithdrawView(View):
    @extend_schema(
        operation_id="practice_task_withdraw",
        tags=TAGS,
        summary="Withdraw a task of practice",
        description="By a supervisor. Nobody begins it any more; what was begun is worked on and stays.",
        request=None,
        extensions=refuses(NotAllowed),
        responses=TaskShown,
    )
    def post(self, request: Request, programme_id: UUID, task_id: UUID) -> Response:
        task = practice.task(me(request), programme_id, task_id)
        tasks.withdraw(actor=me(request), task=task)
        return answer(TaskShown, practice.task(me(request), programme_id, task_id))
