"""What is charted of a tooth as a whole, beside which tooth it is, where it is worked, its roots and its canals.

A field here is the whole telling of a fact, as in `canal_facts`: its type, what it means, what people call it, what a
change of it bears on and where it is asked for. The stored case, the API both ways, the phone's form, the comparison of
plans and the record read this.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from planning.foundation.counts import at_most
from planning.foundation.facts import Bears, Fact
from planning.techniques.technique import Setting


class Anatomy(StrEnum):
    USUAL = "usual"
    FUSED_OR_C_SHAPED = "fused_or_c_shaped"
    CHARTED_BY_SUPERVISOR = "charted_by_supervisor"
    """An unusual tooth, a third molar for instance, whose canals a supervisor entered."""


@dataclass(frozen=True, slots=True)
class AskedIn:
    """A note on the type of a yes-or-no fact: a form asks for it in these settings alone."""

    settings: tuple[Setting, ...]


_PATIENT = AskedIn((Setting.CLINIC,))
_TOOTH = AskedIn((Setting.EXTRACTED, Setting.CLINIC))
"""A training block has neither a filling nor a perforation."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToothFacts:
    """Facts of one tooth. As they are here they say that nothing was seen or recorded."""

    isolated: Annotated[bool, Fact("dam in place and tight", Bears.SAFETY), _PATIENT] = False
    """Dam in place and tight: in the clinic nothing opens without it."""
    root_filled: Annotated[bool, Fact("already root-filled", Bears.SAFETY), _TOOTH] = False
    perforation: Annotated[bool, Fact("perforation suspected", Bears.SAFETY), _TOOTH] = False
    anatomy: Annotated[Anatomy, Fact("anatomy", Bears.SAFETY)] = Anatomy.USUAL
    factors: Annotated[tuple[str, ...], at_most("factors"), Fact("what makes the case difficult", Bears.SAFETY)] = ()
    """All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level."""
