"""Where cones, pluggers and spreaders rest in the prepared canal, and what has to be filled."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from planning.foundation.bounds import within
from planning.foundation.facts import Bears, Fact


@dataclass(frozen=True, slots=True, kw_only=True)
class FillingItem:
    """A cone, plugger or spreader of the kit."""

    kind: Annotated[Literal["cone", "plugger", "spreader"], Fact("kind", Bears.MEANS)]
    size: Annotated[int, within("instrument_size"), Fact("size", Bears.MEANS)]
    """Tip in hundredths of a millimetre."""
    taper: Annotated[int, within("instrument_taper"), Fact("taper", Bears.MEANS)]
    """Hundredths of a millimetre per millimetre."""

    @property
    def name(self) -> str:
        return f"{self.size:02d}/.{self.taper:02d}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """Where one item comes to rest in the prepared canal."""

    kind: Literal["cone", "plugger", "spreader"]
    name: str
    rests_mm: float
    """Depth of its tip from the reference point."""
    short_mm: float
    """Distance from its tip to the canal's end."""
    earliest_short_mm: float
    """The same for the widest it may be within the standard's tolerance."""
    fits: bool
    says: str
    """What it means: fits, binds early, is loose and passes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Volumes:
    """Of the canal from orifice to end: an ellipse, and in its middle the round shape that instruments have left."""

    before_mm3: float | None
    """None where the natural widths are not known."""
    prepared_mm3: float
    cone_mm3: float | None
    """The master cone's part inside the canal."""
    to_fill_mm3: float
    """The prepared volume less that of the cone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Obturation:
    master_cone: str | None
    """Name of the proposed cone: the one of the kit that rests at the end within tolerance; none where none does."""
    rests: tuple[Rest, ...]
    volumes: Volumes
