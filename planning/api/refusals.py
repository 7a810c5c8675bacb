"""What an operation may refuse, said beside it for the API's description."""

from __future__ import annotations

from planning.foundation.errors import (
    CanalsDoNotFit,
    ChoiceNotPossible,
    FactorNotKnown,
    InstrumentNotDescribed,
    InstrumentTooShort,
    JunctionBeyondCanal,
    KitLacks,
    LengthOutOfBounds,
    MotionNotAccepted,
    NoCanals,
    OutOfBounds,
    OverrideNotPossible,
    ReadingNotUsable,
    Refusal,
    TechniqueNotUsable,
    TooMuchWork,
    ToothNotPlanned,
)

REFUSES = "x-refuses"  # of an operation, until the description is made of it
OF_A_PLAN = (
    ToothNotPlanned,
    NoCanals,
    CanalsDoNotFit,
    OutOfBounds,
    LengthOutOfBounds,
    ReadingNotUsable,
    JunctionBeyondCanal,
    InstrumentNotDescribed,
    InstrumentTooShort,
    KitLacks,
    MotionNotAccepted,
    TechniqueNotUsable,
    ChoiceNotPossible,
    OverrideNotPossible,
    FactorNotKnown,
    TooMuchWork,
)


def refuses(*kinds: type[Refusal]) -> dict[str, list[str]]:
    """For `extensions` of an operation: what it refuses by its own rules. What follows from its address, its body and
    who may ask is known without."""
    return {REFUSES: [kind.code for kind in kinds]}
