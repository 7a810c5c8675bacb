"""Exercises of practice as the planner's frozen values."""

from __future__ import annotations

import json

from django.db.models import QuerySet

from cases.models.practice import PracticeAct, PracticeExercise
from planning.foundation.encoding import Mode, decode
from planning.practice.exercise import ActDone, Exercise, StepDue
from planning.practice.score import PracticeScore
from planning.practice.shown import PracticeCanal, PracticeReveal


def canals_of(row: PracticeExercise) -> tuple[PracticeCanal, ...]:
    return decode(tuple[PracticeCanal, ...], json.loads(row.canals_text), Mode.KEPT)


def reveal_of(row: PracticeExercise) -> PracticeReveal | None:
    """None before the end, and where the planner has changed since."""
    return decode(PracticeReveal, json.loads(row.reveal_text), Mode.KEPT) if row.reveal_text else None


def score_of(row: PracticeExercise) -> PracticeScore | None:
    """None where it was not worked to its end."""
    reveal = reveal_of(row)
    return reveal.score if reveal else None


def points_of(rows: QuerySet[PracticeExercise]) -> list[tuple[str, int]]:
    """Level and points of those that were worked to the end, in the order of the rows."""
    return [(level, points) for level, points in rows.values_list("level", "points") if points is not None]


def done_of(row: PracticeAct) -> ActDone:
    return decode(ActDone, json.loads(row.done_text), Mode.KEPT)


def due_of(text: str) -> StepDue | None:
    """None where all canals are worked."""
    return decode(StepDue, json.loads(text), Mode.KEPT) if text else None


def worked_anew(row: PracticeExercise) -> Exercise:
    """The exercise with its hidden truth, after all that was done in it."""
    acts = [done_of(act).act for act in row.acts.order_by("number")]
    return Exercise.after(row.level, row.seed, acts)
