"""Practice on canals with a hidden truth: tasks, exercises and what was done in them.

Seeds are secret until an exercise is ended: whoever knows one can compute the canal.
"""

from __future__ import annotations

from django.core.validators import MinValueValidator
from django.db import models
from django.db.models import Q

from cases.models.base import AppendOnly, ClientCreated
from cases.models.people import Person, Programme

MOST_LEVEL = 40  # characters of a level's key


class PracticeTask(ClientCreated):
    """A level and one hidden canal that a supervisor sets for a group."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="practice_tasks")
    level = models.CharField(max_length=MOST_LEVEL)
    seed = models.PositiveBigIntegerField(editable=False)
    group = models.CharField(max_length=60, blank=True, help_text="Empty: all students of the programme.")
    set_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    created_at = models.DateTimeField(auto_now_add=True)
    withdrawn_at = models.DateTimeField(null=True)

    class Meta:
        indexes = [models.Index(fields=["programme", "created_at"], name="practice_task_by_time")]

    def __str__(self) -> str:
        return f"{self.level}, {self.group or 'all'}"


class PracticeExercise(ClientCreated):
    """One student's exercise. What was shown is kept as it was shown: a later planner may count otherwise."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="practice_exercises")
    student = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="practice_exercises")
    task = models.ForeignKey(PracticeTask, on_delete=models.PROTECT, related_name="exercises", null=True)
    level = models.CharField(max_length=MOST_LEVEL)
    seed = models.PositiveBigIntegerField(editable=False)
    planner_version = models.CharField(max_length=40)
    canals_text = models.TextField(help_text="What is known of its canals from the start, in canonical JSON.")
    first_due_text = models.TextField(help_text="The step that is due first, in canonical JSON.")
    revision = models.PositiveIntegerField(default=0, help_text="Counts what was done, and its end.")
    created_at = models.DateTimeField(auto_now_add=True)
    ended_at = models.DateTimeField(null=True)
    reveal_text = models.TextField(blank=True, help_text="What was hidden and the score, in canonical JSON.")
    points = models.PositiveSmallIntegerField(null=True, help_text="Null: not worked to its end.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["student", "task"], name="practice_task_is_begun_once"),
            models.CheckConstraint(
                condition=Q(ended_at__isnull=False) | Q(reveal_text="", points=None),
                name="practice_is_revealed_at_its_end",
            ),
        ]
        indexes = [
            models.Index(fields=["student", "created_at"], name="practice_by_student"),
            models.Index(fields=["programme", "created_at"], name="practice_by_programme"),
        ]

    def __str__(self) -> str:
        return self.level


class PracticeAct(ClientCreated, AppendOnly):
    """One thing that a student did in an exercise, what came of it, and what was due then."""

    exercise = models.ForeignKey(PracticeExercise, on_delete=models.PROTECT, related_name="acts", db_index=False)
    number = models.PositiveIntegerField(validators=[MinValueValidator(1)])
    at = models.DateTimeField(auto_now_add=True)
    done_text = models.TextField(help_text="The act and what came of it, in canonical JSON.")
    due_text = models.TextField(blank=True, help_text="The step that is due after it; empty: all canals are worked.")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["exercise", "number"], name="practice_act_number_unique")]

    def __str__(self) -> str:
        return f"act {self.number}"
