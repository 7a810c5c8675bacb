"""The order of work of one canal as a finite graph of steps.

Depths are whole micrometres, so that the server and the phone compare them exactly.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from graphlib import CycleError, TopologicalSorter
from typing import Annotated, Literal

from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.facts import Bears, Fact


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
    """How far an instrument is led in: to its stop, or until it meets resistance."""

    TO_LENGTH = "to_length"
    TO_RESISTANCE = "to_resistance"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShorterThan:
    """A stop that depends on where another instrument stopped: `less_um` short of its last depth."""

    node: str
    less_um: int


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitsFor:
    """How far another canal has to have come before this step is done."""

    canal: str
    phases: tuple[str, ...]
    """It stands in one of these phases, or is finished."""
    nodes: tuple[str, ...] = ()
    """Or it stands at one of these steps."""
    says: str
    """Why, in one sentence."""

    def met_by(self, node: Node) -> bool:
        """Whether the other canal has come so far, with its walk at `node`."""
        if isinstance(node, End):
            return node.outcome == "finished"
        return node.phase in self.phases or node.id in self.nodes


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
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
    waits_for: tuple[WaitsFor, ...] = ()
    """Canals that join this one, and how far each has to have come."""
    kind: Literal["do"] = "do"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gained:
    """Some instrument of this pass went at least `least_um` deeper than the same one in the pass before."""

    nodes: tuple[str, ...]
    least_um: int
    test: Literal["gained"] = "gained"


@dataclass(frozen=True, slots=True, kw_only=True)
class AtLength:
    """Each of these steps reached its stop when it was last worked."""

    nodes: tuple[str, ...]
    test: Literal["at_length"] = "at_length"


@dataclass(frozen=True, slots=True, kw_only=True)
class PassesBelow:
    """The step has been worked fewer than `n` times. Every loop passes through one of these."""

    node: str
    n: int
    test: Literal["passes_below"] = "passes_below"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A question that the walker answers from what was recorded."""

    id: str
    phase: str
    question: Gained | AtLength | PassesBelow
    exits: dict[Exit, str]
    kind: Literal["ask"] = "ask"


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    id: str
    outcome: Literal["finished", "plan_again"]
    say: str = ""
    kind: Literal["end"] = "end"


Node = Step | Ask | End


@dataclass(frozen=True, slots=True, kw_only=True)
class Walked:
    """What was walked before the sheet starts; the sheet's questions go on counting from there."""

    passes: Annotated[
        dict[str, Annotated[int, within("walked")]], at_most("steps"), Fact("times come to", Bears.PROGRESS)
    ] = field(default_factory=dict)
    """How often the walk came to each step."""
    depths_um: Annotated[
        dict[str, Annotated[tuple[Annotated[int, within("told_depth")] | None, ...], at_most("felt")]],
        at_most("steps"),
        Fact("depths reached", Bears.PROGRESS),
    ] = field(default_factory=dict)
    """Where an instrument stopped at every pass of a step; None where no depth was given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheet:
    """The step graph of one canal."""

    canal: str
    start: str
    nodes: dict[str, Node] = field(default_factory=dict)
    walked_before: Walked | None = None
    """None for a sheet that starts before anything was done."""
    schema_version: Literal[1] = 1


def next_ids(node: Node) -> tuple[str, ...]:
    """Where a node can lead."""
    return () if isinstance(node, End) else tuple(node.exits.values())


def asked_of(node: Node) -> tuple[str, ...]:
    """The steps that a question is about."""
    if not isinstance(node, Ask):
        return ()
    return (node.question.node,) if isinstance(node.question, PassesBelow) else node.question.nodes


def why_unsound(sheet: RunSheet) -> str:
    """Why a walk through the sheet might not come to an end, or '' where every walk does.

    Every loop has to pass through the YES of a `passes_below`, which a walker can take only a fixed number of times.
    So without those edges the graph must have no cycle.
    """
    for node in sheet.nodes.values():
        if isinstance(node, End):
            continue
        for target in node.exits.values():
            if target not in sheet.nodes:
                return f"step '{node.id}' leads to '{target}', which does not exist"
        if not node.exits:
            return f"step '{node.id}' has no way out"
    if sheet.start not in sheet.nodes:
        return f"it starts at '{sheet.start}', which does not exist"
    ways = {node.id: _bounded_away(node) for node in sheet.nodes.values()}
    if _leads_round(ways):
        # The sorter knows which way, and takes several times as long to tell that there is none.
        try:
            TopologicalSorter(ways).prepare()
        except CycleError as cycle:
            # It goes from what comes after to what comes before: told backwards, it is the way as it is walked.
            return f"it could go round for ever: {' → '.join(reversed(cycle.args[1]))}"
    return ""


def _leads_round(ways: Mapping[str, Sequence[str]]) -> bool:
    """Whether the graph has a cycle: whether some of it stays when every node that nothing leads to is taken away, over
    and over (Kahn 1962, from memory)."""
    leading_to = Counter(target for targets in ways.values() for target in targets)
    free = [node for node in ways if node not in leading_to]
    taken = 0
    while free:
        taken += 1
        for target in ways[free.pop()]:
            leading_to[target] -= 1
            if not leading_to[target]:
                free.append(target)
    return taken < len(ways)


def _bounded_away(node: Node) -> tuple[str, ...]:
    """Where a node leads without the YES of a `passes_below`."""
    if isinstance(node, Ask) and isinstance(node.question, PassesBelow):
        return tuple(target for exit_, target in node.exits.items() if exit_ is not Exit.YES)
    return next_ids(node)
