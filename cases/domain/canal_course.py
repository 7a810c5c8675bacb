"""Where the work on one canal stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from planning.graph import Action, End, WaitsFor
from planning.walk import Walk


class CanalState(StrEnum):
    OPEN = "open"
    NOT_RELEASED = "not_released"
    """A supervisor's decision on the plan leaves this canal out for now."""
    HOLD_POINT = "hold_point"
    """Waits for a supervisor's word."""
    PAUSED = "paused"
    PAST_STOP = "past_stop"
    """An instrument went past its stop and why has not been answered."""
    TO_PLAN = "to_plan"
    """Waits for a new version: a length was taken, something came late, or the plan no longer fits."""
    TO_CHECK = "to_check"
    """Not found as it was left at the last visit: nothing engine-driven enters it."""
    WAITS = "waits"
    """Waits for a canal that it joins to come so far."""
    FINISHED = "finished"


@dataclass(slots=True)
class CanalCourse:
    """One canal. `held` is what withholds it beside its place in the run sheet."""

    walk: Walk
    held: CanalState | None = None
    asked_by: str | None = None
    """The event whose question is open."""
    to_plan: bool = False
    """A length was taken, or something was done by an earlier plan: its stops are to be computed anew."""
    released: bool = True
    asking: str | None = None
    """The event by which the student asked for a supervisor's word; none once it was given."""
    coming: str | None = None
    """The event by which a supervisor said that they come."""
    every: Mapping[str, CanalCourse] = field(default_factory=dict, repr=False)
    """All canals of the tooth."""

    @property
    def waits_for(self) -> tuple[WaitsFor, ...]:
        """What the present step waits for in other canals."""
        node = self.walk.node
        if isinstance(node, End):
            return ()
        return tuple(one for one in node.waits_for if not self._met(one))

    def _met(self, one: WaitsFor) -> bool:
        return one.canal in self.every and one.met_by(self.every[one.canal].walk.node)

    @property
    def state(self) -> CanalState:
        node = self.walk.node
        if not self.released and not (isinstance(node, End) and node.outcome == "finished"):
            return CanalState.NOT_RELEASED
        if self.held is not None:
            return self.held
        if self.to_plan:
            return CanalState.TO_PLAN
        if isinstance(node, End):
            return CanalState.FINISHED if node.outcome == "finished" else CanalState.TO_PLAN
        if self.waits_for:
            return CanalState.WAITS
        return CanalState.HOLD_POINT if node.action is Action.SIGN_OFF else CanalState.OPEN
