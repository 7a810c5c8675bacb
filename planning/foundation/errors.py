"""What the planner refuses, each with a code, the fields that explain it and a sentence that says what to do.

Docstrings explain the codes to those who ask the API: what a code means, then what to do.
"""

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
    """There is no such tooth in that notation.

    Take a designation of the notation, or another notation.
    """

    code = "unknown-tooth"
    sentence = "'{designation}' is no tooth in {notation}. {hint}"


class ToothNotPlanned(PlanningError):
    """The tooth can be charted, and not planned here.

    Chart it, and ask the supervisor.
    """

    code = "charted-not-planned"
    sentence = "Tooth {tooth} can be charted but not planned here: {reason}. Ask your supervisor."


class OutOfBounds(PlanningError):
    """A number lies outside the bounds of its quantity.

    Look at its unit; the sentence names the bounds.
    """

    code = "out-of-bounds"
    sentence = "{reason}"


class LengthOutOfBounds(OutOfBounds):
    """A length that no tooth has.

    Look at the unit and measure again.
    """

    code = "length-out-of-bounds"


class ReadingNotUsable(PlanningError):
    """A reading that no length can be taken from.

    Take another one; the sentence says why.
    """

    code = "reading-not-usable"
    sentence = "{canal}: {reason}"


class NoCanals(PlanningError):
    """A plan without a canal.

    Add the canals of the tooth.
    """

    code = "no-canals"
    sentence = "A plan needs at least one canal. Add the canals of tooth {tooth}."


class CanalsDoNotFit(PlanningError):
    """Canals, roots or names that do not go together.

    Change what the sentence names.
    """

    code = "canals-do-not-fit"
    sentence = "{reason}"


class JunctionBeyondCanal(PlanningError):
    """A junction that lies outside its canal.

    Check the reading.
    """

    code = "junction-beyond-canal"
    sentence = (
        "{canal}: a junction {from_terminus_mm} mm from the terminus lies outside its length of {length_mm} mm. "
        "Check the reading."
    )


class InstrumentTooShort(PlanningError):
    """An instrument that does not reach as deep as it has to.

    Choose a longer one.
    """

    code = "instrument-too-short"
    sentence = (
        "{instrument} is {length_mm} mm long and reaches {reach_mm} mm with its stop on; {canal} needs {need_mm} mm. "
        "Choose a longer one."
    )


class KitLacks(PlanningError):
    """The technique needs an instrument that the kit has not.

    Add it to the kit, or choose another kit or technique.
    """

    code = "kit-lacks-instrument"
    sentence = "The kit has no {wanted}, which {technique} needs for {canal}. Add it or choose otherwise."


class MotionNotAccepted(PlanningError):
    """The technique is written for another motion than the instrument's.

    Choose a technique made for it.
    """

    code = "motion-not-accepted"
    sentence = "{technique} is written for {accepted} motion; {instrument} is {motion}. Use a technique made for it."


class InstrumentNotDescribed(PlanningError):
    """An instrument of which something is not said that planning needs.

    Add to the kit what the sentence names.
    """

    code = "instrument-not-described"
    sentence = "{instrument}: {reason}"


class TechniqueNotUsable(PlanningError):
    """A technique that breaks a rule of techniques, or that is not there.

    Change what is named; `compute/technique-check` lists all its faults.
    """

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
    """Working it out would take more than one request may.

    Ask for less: the sentence names what is too much.
    """

    code = "too-much-work"
    sentence = "{reason}"


class ChoiceNotPossible(PlanningError):
    """A choice for a canal that its findings do not allow.

    Choose otherwise; the sentence says why.
    """

    code = "choice-not-possible"
    sentence = "{canal}: {reason}"


class OverrideNotPossible(PlanningError):
    """A caution that nobody may override, or that is not there.

    Look at the cautions of the plan and what each says of it.
    """

    code = "override-not-possible"
    sentence = "'{overridden}' cannot be overridden: {reason}"


class PointsDoNotFit(PlanningError):
    """Points from which no curve can be measured.

    Mark them anew, in order along the canal.
    """

    code = "points-do-not-fit"
    sentence = "The curve cannot be measured: {reason}"


class ScaleNotUsable(PlanningError):
    """An image that cannot be measured.

    Mark an object of known length in it, or look at what was said of its spacing.
    """

    code = "scale-not-usable"
    sentence = "The image cannot be measured: {reason}"


class ViewsDoNotFit(PlanningError):
    """Two views that cannot be read together.

    Take two of one root between which the tube moved.
    """

    code = "views-do-not-fit"
    sentence = "The two views cannot be used together: {reason}"


class FactorNotKnown(PlanningError):
    """No such factor of difficulty, or no such level of it.

    Take both from `difficulty-factors`.
    """

    code = "factor-not-known"
    sentence = "{reason}"


class Fault(NamedTuple):
    """What is wrong at one place of data that came from outside."""

    at: Pointer
    code: str
    sentence: str


class NotUnderstood(PlanningError):
    """Data that has not the shape of what was asked for, in one place or several.

    Put right each place that `errors` names, and send it again.
    """

    faults: tuple[Fault, ...]
    """Every place, with what is wrong there."""

    code = "not-understood"
    sentence = "{first}"

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        first = self.faults[0]
        more = f" And {len(self.faults) - 1} more." if len(self.faults) > 1 else ""
        where = "/".join(str(part) for part in first.at) or "The whole"
        super().__init__(at=first.at, first=f"{where}: {first.sentence}{more}")
