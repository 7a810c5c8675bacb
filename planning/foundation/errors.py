"""What the planner refuses, each with a code, the fields that explain it and a sentence that says what to do."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, ClassVar, NamedTuple

Pointer = tuple[str | int, ...]


class Refusal(Exception):
    """`code` is for programs, `str()` for people, `pointer` is the path into what was given."""

    code: ClassVar[str] = "refused"
    sentence: ClassVar[str] = "{reason}"

    def __init__(self, *, at: Pointer = (), **fields: Any) -> None:
        self.pointer = at
        self.fields = fields
        super().__init__(self.sentence.format(**fields))


class PlanningError(Refusal, ValueError):
    """What the planner refuses; a value that refuses itself is a ValueError to whoever builds values."""

    code = "planning-refused"

    def below(self, *prefix: str | int) -> PlanningError:
        """The same refusal seen from further out: `prefix` is put before its path."""
        self.pointer = (*prefix, *self.pointer)
        return self


class UnknownTooth(PlanningError):
    code = "unknown-tooth"
    sentence = "'{designation}' is no tooth in {notation}. {hint}"


class ToothNotPlanned(PlanningError):
    code = "charted-not-planned"
    sentence = "Tooth {tooth} can be charted but not planned here: {reason}. Ask your supervisor."


class OutOfBounds(PlanningError):
    code = "out-of-bounds"
    sentence = "{reason}"


class LengthOutOfBounds(OutOfBounds):
    code = "length-out-of-bounds"


class ReadingNotUsable(PlanningError):
    code = "reading-not-usable"
    sentence = "{canal}: {reason}"


class NoCanals(PlanningError):
    code = "no-canals"
    sentence = "A plan needs at least one canal. Add the canals of tooth {tooth}."


class CanalsDoNotFit(PlanningError):
    code = "canals-do-not-fit"
    sentence = "{reason}"


class JunctionBeyondCanal(PlanningError):
    code = "junction-beyond-canal"
    sentence = (
        "{canal}: a junction {from_terminus_mm} mm from the terminus lies outside its length of {length_mm} mm. "
        "Check the reading."
    )


class InstrumentTooShort(PlanningError):
    code = "instrument-too-short"
    sentence = (
        "{instrument} is {length_mm} mm long and reaches {reach_mm} mm with its stop on; {canal} needs {need_mm} mm. "
        "Choose a longer one."
    )


class KitLacks(PlanningError):
    code = "kit-lacks-instrument"
    sentence = "The kit has no {wanted}, which {technique} needs for {canal}. Add it or choose otherwise."


class MotionNotAccepted(PlanningError):
    code = "motion-not-accepted"
    sentence = "{technique} is written for {accepted} motion; {instrument} is {motion}. Use a technique made for it."


class InstrumentNotDescribed(PlanningError):
    code = "instrument-not-described"
    sentence = "{instrument}: {reason}"


class TechniqueNotUsable(PlanningError):
    code = "technique-not-usable"
    sentence = "{where}: {reason}"


class TechniqueFileRefused(PlanningError):
    """The text of a technique; `faults` lists every one with its line and its path in the technique."""

    code = "technique-not-usable"
    sentence = "{where}, line {line}: {reason}{more}"

    def __init__(self, where: str, faults: Sequence[tuple[int, Pointer, str]], *, at: Pointer = ()) -> None:
        self.where = where
        self.faults = tuple(faults)
        line, _, reason = self.faults[0]
        more = f" And {len(self.faults) - 1} more." if len(self.faults) > 1 else ""
        super().__init__(at=at, where=where, line=line, reason=reason, more=more)


class TooMuchWork(PlanningError):
    code = "too-much-work"
    sentence = "{reason}"


class ChoiceNotPossible(PlanningError):
    code = "choice-not-possible"
    sentence = "{canal}: {reason}"


class OverrideNotPossible(PlanningError):
    code = "override-not-possible"
    sentence = "'{overridden}' cannot be overridden: {reason}"


class PointsDoNotFit(PlanningError):
    code = "points-do-not-fit"
    sentence = "The curve cannot be measured: {reason}"


class ScaleNotUsable(PlanningError):
    code = "scale-not-usable"
    sentence = "The image cannot be measured: {reason}"


class ViewsDoNotFit(PlanningError):
    code = "views-do-not-fit"
    sentence = "The two views cannot be used together: {reason}"


class FactorNotKnown(PlanningError):
    code = "factor-not-known"
    sentence = "{reason}"


class Fault(NamedTuple):
    """What is wrong at one place of data that came from outside."""

    at: Pointer
    code: str
    sentence: str


class NotUnderstood(PlanningError):
    """Data that has not the shape of what was asked for; `faults` lists every place with what is wrong there."""

    code = "not-understood"
    sentence = "{first}"

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        first = self.faults[0]
        more = f" And {len(self.faults) - 1} more." if len(self.faults) > 1 else ""
        where = "/".join(str(part) for part in first.at) or "The whole"
        super().__init__(at=first.at, first=f"{where}: {first.sentence}{more}")
