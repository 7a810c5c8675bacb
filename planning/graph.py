"""The order of work of one canal as a finite graph of steps. Depths are whole micrometres: two walkers compare them."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Literal


class Exit(StrEnum):
    """How a step is left. The set is closed: a walker that meets another stops and asks for an update."""

    DONE = "done"
    REACHED = "reached"
    SHORT = "short"
    BLOCKED = "blocked"
    APPROVED = "approved"
    RETURNED = "returned"
    YES = "yes"
    NO = "no"


class Action(StrEnum):
    INSTRUMENT = "instrument"
    IRRIGATE = "irrigate"
    RECAPITULATE = "recapitulate"
    IMAGE = "image"
    SIGN_OFF = "sign_off"
    GAUGE = "gauge"
    """A hand instrument that feels the size at the end; it must not cut."""
    FIT_CONE = "fit_cone"
    DRY = "dry"
    FILL = "fill"


class Target(StrEnum):
    TO_LENGTH = "to_length"
    TO_RESISTANCE = "to_resistance"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShorterThan:
    """A stop that depends on where another instrument stopped: `less_um` short of its last depth."""

    node: str
    less_um: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Do:
    """One step for the hand, the eye or the supervisor."""

    id: str
    action: Action
    phase: str
    exits: dict[Exit, str]
    instrument: str | None = None
    """Key of the instrument in the kit."""
    stop_um: int | None = None
    target: Target | None = None
    shorter_than: ShorterThan | None = None
    hold_point: str | None = None
    irrigant: str | None = None
    volume_ml: float | None = None
    needle_at_most_um: int | None = None
    say: str = ""
    """One sentence: what to do and why."""
    kind: Literal["do"] = "do"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gained:
    """Some instrument of this pass went at least `least_um` deeper than the same one in the pass before."""

    nodes: tuple[str, ...]
    least_um: int
    test: Literal["gained"] = "gained"


@dataclass(frozen=True, slots=True, kw_only=True)
class AtLength:
    """Every one of the nodes last stood at its stop."""

    nodes: tuple[str, ...]
    test: Literal["at_length"] = "at_length"


@dataclass(frozen=True, slots=True, kw_only=True)
class VisitsBelow:
    """The node has been visited fewer than `n` times. Every loop passes through one of these."""

    node: str
    n: int
    test: Literal["visits_below"] = "visits_below"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A question that the walker answers from what was recorded."""

    id: str
    phase: str
    question: Gained | AtLength | VisitsBelow
    exits: dict[Exit, str]
    kind: Literal["ask"] = "ask"


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    id: str
    outcome: Literal["finished", "plan_again"]
    say: str = ""
    kind: Literal["end"] = "end"


Node = Do | Ask | End


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheet:
    """The step graph of one canal."""

    canal: str
    start: str
    nodes: dict[str, Node] = field(default_factory=dict)
    form: Literal[1] = 1
