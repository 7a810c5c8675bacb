"""A calm score of one exercise: one number from 0 to 100 and its four parts, each from 0 to 100 too.

prediction     falls evenly with the mean error of the predictions that could be wrong, less what the middle of the
               expected band was off: that is the canal's luck; one that was not made counts as the greatest error
steps          the steps of one who keeps to the order of work in this very canal, as a share of those taken
needless       falls by the share of insertions that were not in the order of work
consequences   falls with every mistake, faster with those that harm the canal

The number is their weighted mean. Costs and weights are rows of the figures.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum, sqrt

from planning.foundation.tables import Figures
from planning.practice.exercise import ActDone, ActKind

MOST_POINTS = 100  # of a score and of each of its parts
NEEDLESS = "needless"


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeScore:
    """The score of one exercise."""

    points: int
    """The whole, from 0 to 100."""
    prediction: int
    """Its part for predictions, from 0 to 100."""
    steps: int
    """Its part for steps, from 0 to 100."""
    needless: int
    """Its part for insertions that were needed, from 0 to 100."""
    consequences: int
    """Its part for a canal without consequences of mistakes, from 0 to 100."""
    error_mm: float | None
    """Mean error of the predictions that were made; None where none was."""
    steps_taken: int
    steps_planned: int
    """Of one who keeps to the order of work in this very canal."""
    insertions_needless: int
    mistakes: int
    """Needless insertions are not among them."""

    @classmethod
    def of(cls, done: Sequence[ActDone], faultless: Sequence[ActDone]) -> PracticeScore:
        """The score of what was done, against the work of one who keeps to the order of work in the same canal."""
        figures = Figures()
        needless = sum(each.act.kind is ActKind.INSERT for each in done)
        mistakes = [mistake for each in done for mistake in each.mistakes if mistake.code != NEEDLESS]
        costs = fsum(figures["practice.harm_costs" if each.harms else "practice.mistake_costs"] for each in mistakes)
        parts = {
            "prediction": _prediction(done, figures["practice.error_most"]),
            "steps": min(1.0, len(faultless) / len(done)) if done else 0.0,
            "needless": 1 - needless / len(done) if done else 0.0,
            "consequences": max(0.0, 1 - costs / MOST_POINTS),
        }
        points = fsum(figures[f"practice.weigh_{name}"] * share for name, share in parts.items())
        errors = [error for each in done if (error := _error_mm(each)) is not None]
        return cls(
            points=round(points * MOST_POINTS),
            **{name: round(share * MOST_POINTS) for name, share in parts.items()},
            error_mm=round(fsum(errors) / len(errors), 2) if errors else None,
            steps_taken=len(done),
            steps_planned=len(faultless),
            insertions_needless=needless,
            mistakes=len(mistakes),
        )


def standing(points: Sequence[int]) -> int | None:
    """The mean of the last exercises, the newest first; None where there is none."""
    last = points[: Figures().count("practice.standing_of")]
    return round(sum(last) / len(last)) if last else None


def _prediction(done: Sequence[ActDone], most_mm: float) -> float:
    counted = [_beyond_luck_mm2(each, most_mm) for each in done if each.judged]
    return max(0.0, 1 - sqrt(max(0.0, fsum(counted) / len(counted))) / most_mm) if counted else 0.0


def _beyond_luck_mm2(done: ActDone, most_mm: float) -> float:
    """The square of the error, less that of the band's middle: what a student adds to it is left as a mean."""
    error_mm = _error_mm(done)
    if error_mm is None:
        return most_mm * most_mm
    luck_mm = 0.0
    if done.low_mm is not None and done.high_mm is not None and done.depth_mm is not None:
        luck_mm = abs((done.low_mm + done.high_mm) / 2 - done.depth_mm)
    return min(error_mm, most_mm) ** 2 - min(luck_mm, most_mm) ** 2


def _error_mm(done: ActDone) -> float | None:
    predicted_mm = done.act.predicted_mm
    if not done.judged or predicted_mm is None or done.depth_mm is None:
        return None
    return abs(predicted_mm - done.depth_mm)
