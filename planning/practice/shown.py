"""What an exercise shows: of its canals what is known from the start, and at the end what was hidden."""

from __future__ import annotations

from dataclasses import dataclass

from planning.canal.profile import Line, narrow_line
from planning.contract.expected import ProfilePoint
from planning.contract.plan_value import TrayItem
from planning.foundation.quantities import mm, um
from planning.practice.exercise import Exercise, laid_out
from planning.practice.score import PracticeScore


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeCanal:
    """One canal of an exercise, as it is known before anything was in it."""

    canal: str
    reference_point: str
    working_length_mm: float
    curvature_deg: float | None
    curve_start_mm: float | None
    """Where it begins to curve, from the reference point; None: it is straight."""
    joins: str | None
    """The canal that it joins."""
    usual: tuple[ProfilePoint, ...]
    """How wide such canals are as a rule, reference point side first."""
    instruments: tuple[TrayItem, ...]
    """All that is laid out for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealedCanal:
    """One canal as it was, and as it is after the work."""

    canal: str
    was: tuple[ProfilePoint, ...]
    """Before anything was in it, reference point side first."""
    now: tuple[ProfilePoint, ...]
    """After the work."""
    block_mm: float | None
    """Packed dust blocks it from this depth on; None: it is open."""
    ledge_mm: float | None
    """A ledge at this depth stops all but a small hand instrument; None: there is none."""
    over_wide_mm: float
    """How much wider its end is than instruments at their stops would have left it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeReveal:
    """What was hidden, and the score of an exercise that was worked to its end."""

    canals: tuple[RevealedCanal, ...]
    score: PracticeScore | None
    """None where the exercise was ended before all canals were worked."""


def known(exercise: Exercise) -> tuple[PracticeCanal, ...]:
    """The canals in the order in which they are worked: nothing of what is hidden."""
    return tuple(
        PracticeCanal(
            canal=canal.canal,
            reference_point=canal.reference_point,
            working_length_mm=canal.length.working_length_mm or 0.0,
            curvature_deg=hidden.asked.curvature_deg,
            curve_start_mm=hidden.asked.curve_start_mm,
            joins=canal.joins,
            usual=_points(narrow_line(canal.expectation.initial_shape)) if canal.expectation else (),
            instruments=tuple(item for item in exercise.plan.tray_list if item.instrument.key in laid_out(canal)),
        )
        for canal, hidden in zip(exercise.plan.canals, exercise.hidden, strict=True)
    )


def revealed(exercise: Exercise, seed: int) -> PracticeReveal:
    """What was hidden. The score is that of the work against one who keeps to the order of work in this very canal."""
    faultless = Exercise.faultless(exercise.level, seed).done
    return PracticeReveal(
        canals=tuple(
            RevealedCanal(
                canal=hidden.asked.name,
                was=_points(hidden.shape),
                now=_points(worked.shape),
                block_mm=_rounded(worked.block_mm),
                ledge_mm=_rounded(worked.ledge_mm),
                over_wide_mm=mm(um(worked.over_wide_mm)),
            )
            for hidden, worked in zip(exercise.hidden, exercise.worked, strict=True)
        ),
        score=PracticeScore.of(exercise.done, faultless) if exercise.finished else None,
    )


def _points(line: Line) -> tuple[ProfilePoint, ...]:
    return tuple(ProfilePoint(from_reference_mm=mm(um(at)), diameter_mm=mm(um(wide))) for at, wide in line)


def _rounded(depth_mm: float | None) -> float | None:
    return None if depth_mm is None else mm(um(depth_mm))
