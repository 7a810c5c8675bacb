"""Where the work on one canal stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from planning.run_sheet.graph import Action, End, WaitsFor
from planning.run_sheet.walk import Walk


class CanalState(StrEnum):
    OPEN = "open"
    NOT_RELEASED = "not_released"
    """A supervisor's decision on the plan leaves this canal out for now."""
    HOLD_POINT = "hold_point"
    """Waits for a supervisor's sign-off."""
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


@dataclass(frozen=True, slots=True)
class SignOff:
    """A supervisor's approval at a hold point, beyond which nothing has been done."""

    by: str
    """The event."""
    images: frozenset[str]
    """What it rested on: the images told of the canal since the sign-off before."""


@dataclass(slots=True)
class CanalProgress:
    """One canal. `held` is what withholds it beside its place in the run sheet."""

    walk: Walk
    held: CanalState | None = None
    asked_by: str | None = None
    """The event whose question is open."""
    to_plan: bool = False
    """A length was taken, or something was done by an earlier plan: its stops are to be computed anew."""
    released: bool = True
    asking: str | None = None
    """The event by which the student asked for a supervisor's sign-off; none once it was given."""
    coming: str | None = None
    """The event by which a supervisor said that they come."""
    images: set[str] = field(default_factory=set)
    """Told of the canal since its last sign-off."""
    sign_off: SignOff | None = None
    """None as soon as the canal has gone on from it."""
    reopened: set[str] = field(default_factory=set)
    """Sign-offs that count no more: an image that they rested on was put right before anything went on from them."""
    every: Mapping[str, CanalProgress] = field(default_factory=dict, repr=False)
    """All canals of the tooth."""

    @property
    def waits_for(self) -> tuple[WaitsFor, ...]:
        """What the present step waits for in other canals."""
        node = self.walk.node
        if isinstance(node, End):
            return ()
        return tuple(wait for wait in node.waits_for if not self._met(wait))

    def _met(self, wait: WaitsFor) -> bool:
        return wait.canal in self.every and wait.met_by(self.every[wait.canal].walk.node)

    def add_image(self, image_id: str | None) -> None:
        """An image was told of the canal."""
        if image_id:
            self.images.add(image_id)

    def signed(self, event: str, *, approved: bool) -> None:
        """A supervisor's sign-off was given."""
        self.sign_off = SignOff(event, frozenset(self.images)) if approved else None
        self.images = set()

    def reopen(self, image_id: str) -> None:
        """The image counts no more in the canal. A sign-off that rested on it is asked for again, where nothing has
        gone on from it; else it stays, and is marked."""
        if self.sign_off is None or image_id not in self.sign_off.images:
            return
        self.walk.take_back()
        self.reopened.add(self.sign_off.by)
        self.images |= self.sign_off.images
        self.sign_off = None

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
