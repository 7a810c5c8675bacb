"""500 simulated students of known skill: the score orders them as their skill does.

Judged by Spearman's rank correlation as scipy has it.
"""

from __future__ import annotations

import numpy as np
from scipy.stats import spearmanr

from planning.practice.exercise import Act, ActKind, Exercise
from planning.practice.score import PracticeScore
from planning.run_sheet.graph import Action
from tests.draws import draws

STUDENTS = 500
LEVELS = ("straight-block", "incisor", "distal-canal", "curved-canal")
LEAST = 0.8
FARTHEST_MM = 2.5  # how far off the predictions of one without any skill are: one standard deviation
SLIPS = 0.08  # of each kind at each step, by one without any skill


def simulated(skill: float, level: str, seed: int) -> PracticeScore:
    """The score of a student who predicts the better, and slips the less, the greater the skill, from 0 to 1."""
    chance, course = np.random.default_rng(seed), Exercise.begun(level, seed)
    while course.due is not None:
        course.act(_act(course, skill, chance))
    return PracticeScore.of(course.done, Exercise.faultless(level, seed).done)


def _act(course: Exercise, skill: float, chance: np.random.Generator) -> Act:
    due = course.due
    assert due is not None
    slips = [chance.random() < SLIPS * (1 - skill) for _ in range(4)]
    band = course.band_mm(due.node)
    predicted_mm = (sum(band) / 2 if band else due.stop_mm) + chance.normal(0, FARTHEST_MM * (1 - skill))
    if slips[0] and due.action is not Action.GAUGE:
        return Act(kind=ActKind.SKIP)
    if slips[1] and due.action is not Action.GAUGE:
        return Act(kind=ActKind.INSERT, instrument=due.instrument)
    past_mm = 1.0 if slips[2] else 0.0
    return Act(kind=ActKind.WORK, predicted_mm=max(0.0, predicted_mm), force=slips[3], past_mm=past_mm)


def test_the_score_over_time_orders_students_as_their_skill_does() -> None:
    """One exercise is a few predictions in one canal, and mostly luck: a student is known by the mean of some."""
    count = draws(STUDENTS, share=6)
    skills = [number / count for number in range(count)]
    points = [
        sum(simulated(skill, level, seed=number + count * at).points for at, level in enumerate(LEVELS))
        for number, skill in enumerate(skills)
    ]
    assert spearmanr(skills, points).statistic >= LEAST
    assert 0 <= min(points) <= max(points) <= 100 * len(LEVELS)


def test_whoever_predicts_the_middle_of_the_band_and_keeps_to_the_plan_has_all_parts_whole() -> None:
    best = simulated(1.0, "straight-block", 1)
    assert (best.steps, best.needless, best.consequences, best.mistakes) == (100, 100, 100, 0)


def test_a_prediction_that_was_not_made_counts_as_the_greatest_error() -> None:
    silent = Exercise.faultless("straight-block", 1).done
    assert PracticeScore.of(silent, silent).prediction == 0
    assert PracticeScore.of(silent, silent).error_mm is None
