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
    """An instrument went past its stop, and nobody has said why yet."""
    TO_PLAN = "to_plan"
    """Waits for a new version: a length was taken, something came late, or the plan no longer fits."""
    TO_CHECK = "to_check"
    """Not found as it was left at the last visit: nothing engine-driven enters it."""
    WAITS = "waits"
    """Its next step waits until a canal that it joins has come far enough."""
    FINISHED = "finished"


@dataclass(frozen=True, slots=True)
class SignOff:
    """A supervisor's approval at a hold point, as long as no step has followed it."""

    by: str
    """Id of the event."""
    images: frozenset[str]
    """Ids of the images that it rested on: those recorded in the canal since the sign-off before it."""


@dataclass(slots=True)
class CanalProgress:
    """Where one canal stands: its place in the run sheet (`walk`), and what withholds it besides (`held`)."""

    walk: Walk
    held: CanalState | None = None
    asked_by: str | None = None
    """The event whose question is open."""
    to_plan: bool = False
    """A length was taken, or something was done by an earlier plan: its stops have to be computed anew."""
    released: bool = True
    asking: str | None = None
    """The event by which the student asked for a supervisor's sign-off; none once it was given."""
    coming: str | None = None
    """The event by which a supervisor said that they come."""
    images: set[str] = field(default_factory=set)
    """Ids of the images recorded in the canal since its last sign-off."""
    sign_off: SignOff | None = None
    """The last one; None as soon as a step has followed it."""
    reopened: set[str] = field(default_factory=set)
    """Ids of sign-offs that no longer count: an image that they rested on was put right before a step followed them."""
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
        """Notes an image that was recorded in the canal."""
        if image_id:
            self.images.add(image_id)

    def signed(self, event: str, *, approved: bool) -> None:
        """Notes a supervisor's sign-off. It uses the images up: the next sign-off rests on new ones."""
        self.sign_off = SignOff(event, frozenset(self.images)) if approved else None
        self.images = set()

    def reopen(self, image_id: str) -> None:
        """The image no longer counts in the canal. A sign-off that rested on it has to be given again if no step has
        followed it; otherwise it stays, and the record marks it."""
        if self.sign_off is None or image_id not in self.sign_off.images:
            return
        # Back to the hold point, which waits for another sign-off.
        self.walk.take_back()
        self.reopened.add(self.sign_off.by)
        self.images |= self.sign_off.images
        self.sign_off = None

    @property
    def state(self) -> CanalState:
        # The strictest reason first: of a canal that is not released nothing else needs to be known.
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
