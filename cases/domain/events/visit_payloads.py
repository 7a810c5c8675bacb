"""What is told of a visit: how it ends, how the next begins, who is in the room, the dam."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from planning.foundation.counts import at_most
from planning.foundation.errors import PlanningError

MOST_POINT = 40  # characters, as in the chart of a canal
Dressing = Literal["none", "calcium_hydroxide", "other"]
Temporary = Literal["none", "zinc_oxide", "glass_ionomer", "other"]

Dam = Literal["on", "off", "leaking"]


class FoundNotClear(PlanningError):
    """What was found in a canal contradicts itself.

    Say of the canal what the sentence names.
    """

    code = "found-not-clear"
    sentence = "{canal}: {reason}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClosePayload:
    """The visit ends."""

    access_sealed: bool
    dressing: Dressing | None = None
    """What was left in the canals; None where nobody said."""
    temporary: Temporary | None = None
    """What the access was sealed with."""
    note: str = ""
    kind: Literal["close"] = "close"


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One canal at the beginning of the next visit."""

    canal: str
    reference_there: bool
    """The point that its lengths are measured from is as it was."""
    small_as_deep: bool | None = None
    """The small instrument went as deep as before; None in a canal that had not been worked."""
    length_agrees: bool | None = None
    """A locator or an image agrees with the length before; None where there was none."""
    reference_point: str = ""
    """Where lengths are measured from now, if the point has gone: those taken before count no more."""

    def __post_init__(self) -> None:
        if len(self.reference_point) > MOST_POINT:
            reason = f"A reference point is named in at most {MOST_POINT} characters."
            raise FoundNotClear(canal=self.canal, reason=reason, at=("reference_point",))
        if self.reference_there == bool(self.reference_point.strip()):
            reason = "Name a new reference point where the old one has gone, and only there."
            raise FoundNotClear(canal=self.canal, reason=reason, at=("reference_point",))

    @property
    def as_left(self) -> bool:
        return self.reference_there and self.small_as_deep is not False and self.length_agrees is not False


@dataclass(frozen=True, slots=True, kw_only=True)
class ReopenPayload:
    """The next visit begins."""

    as_left: Annotated[tuple[str, ...], at_most("canals")]
    """Canals that were found as they were left, or have not been worked yet; the others wait for a supervisor."""
    protected: bool = False
    """In the clinic the dam is on; on the bench eyes and skin are protected."""
    supervisor_id: str = ""
    """The licensed clinician who is in the room, in the clinic."""
    found: Annotated[tuple[Found, ...], at_most("canals")] = ()
    """What was looked at, canal by canal."""
    kind: Literal["reopen"] = "reopen"

    def __post_init__(self) -> None:
        for number, check in enumerate(self.found):
            if check.canal in self.as_left and not check.as_left:
                reason = "It cannot be as it was left when one of its checks failed."
                raise FoundNotClear(canal=check.canal, reason=reason, at=("found", number))


@dataclass(frozen=True, slots=True, kw_only=True)
class OnSitePayload:
    """The licensed clinician who is in the room for this visit."""

    supervisor_id: str
    kind: Literal["on_site"] = "on_site"


@dataclass(frozen=True, slots=True, kw_only=True)
class DamPayload:
    """How the dam was found. In the clinic nothing goes on unless it is on."""

    state: Dam
    kind: Literal["dam"] = "dam"
