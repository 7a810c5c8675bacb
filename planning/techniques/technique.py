"""A technique is data: ordered phases, each of a known kind, limited to the settings it is for."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Literal

from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.facts import Bears, Fact, NotTold
from planning.instruments.iso_3630 import Motion


class Setting(StrEnum):
    BLOCK = "block"
    """A training block with a moulded canal."""
    EXTRACTED = "extracted"
    CLINIC = "clinic"


class PhaseKind(StrEnum):
    SIGN_OFF = "sign_off"
    """A hold point, with an image where the phase says so."""
    TO_LENGTH = "to_length"
    """Hand sizes, each worked until it is loose at length."""
    FLARE = "flare"
    """Coronal instruments to resistance, steepest taper first."""
    GAUGE = "gauge"
    """The first hand size that binds at the end, felt after coronal flaring and before anything shapes."""
    DESCEND = "descend"
    """The series from its largest to its smallest, to resistance; passes repeat until the smallest is at length."""
    ASCEND = "ascend"
    """The series up to the final size, one size at a time, to length."""
    STEP_BACK = "step_back"
    """Larger hand sizes, each a step shorter than the one before."""
    CONFIRM = "confirm"
    """Gauges the final size with hand instruments."""
    RINSE = "rinse"
    CONE = "cone"
    FILL = "fill"


ALL_SETTINGS = (Setting.BLOCK, Setting.EXTRACTED, Setting.CLINIC)


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """One phase. Which of the optional fields it needs depends on its kind."""

    key: Annotated[str, Fact("key", Bears.MEANS)]
    title: Annotated[str, Fact("title", Bears.MEANS)]
    kind: Annotated[PhaseKind, Fact("kind", Bears.MEANS)]
    why: Annotated[str, Fact("why", Bears.MEANS)]
    settings: Annotated[tuple[Setting, ...], at_most("kinds"), Fact("settings", Bears.MEANS)] = ALL_SETTINGS
    from_size: Annotated[int, within("hand_size"), Fact("from size", Bears.MEANS)] | None = None
    to_size: Annotated[int, within("hand_size"), Fact("to size", Bears.MEANS)] | None = None
    """Last hand size of a TO_LENGTH phase; none means up to the final size."""
    to_estimate: Annotated[bool, Fact("works to the estimated length", Bears.DEPTH)] = False
    """Works to the estimated length: before the length is known."""
    repeat_from: Annotated[str, Fact("begins again from", Bears.MEANS)] | None = None
    most_passes: Annotated[int, within("technique_count"), Fact("passes at most", Bears.MEANS)] | None = None
    expected_passes: Annotated[int, within("technique_count"), Fact("passes expected", Bears.MEANS)] | None = None
    steps: Annotated[int, within("technique_count"), Fact("steps", Bears.MEANS)] | None = None
    step_mm: Annotated[float, within("depth"), Fact("each step shorter by", Bears.DEPTH)] | None = None
    hold_point: Annotated[str, Fact("hold point", Bears.SAFETY)] | None = None
    image: Annotated[bool, Fact("asks for an image", Bears.SAFETY)] = False
    hold_point_in: Annotated[
        tuple[Setting, ...], at_most("kinds"), Fact("settings with its hold point", Bears.SAFETY)
    ] = ALL_SETTINGS
    """Settings in which a supervisor's sign-off is asked for at it; a programme may ask for it in all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Technique:
    """A technique as a programme keeps it."""

    key: Annotated[str, Fact("technique", Bears.MEANS)]
    name: Annotated[str, Fact("technique's name", Bears.MEANS)]
    says: Annotated[str, Fact("what it is", Bears.MEANS)]
    source: Annotated[str, Fact("where it is from", Bears.MEANS)]
    know: Annotated[str, Fact("how it is known", Bears.MEANS)]
    motions: Annotated[tuple[Motion, ...], at_most("kinds"), Fact("motions it is for", Bears.MEANS)]
    """Motions it is written for; an instrument of another motion is refused."""
    recapitulate_size: Annotated[int, within("hand_size"), Fact("recapitulating size", Bears.MEANS)]
    recapitulate_with_final: Annotated[bool, Fact("recapitulates with the final size", Bears.MEANS)]
    """Step-back recapitulates with the final apical size instead of the small one."""
    series_above_glide_path: Annotated[
        int, within("technique_count"), Fact("sizes from glide path to series", Bears.MEANS)
    ]
    """The smallest of the series lies this many ISO sizes above the last glide-path size."""
    series_sizes_up: Annotated[
        int, within("technique_count"), Fact("sizes in the series above its smallest", Bears.MEANS)
    ]
    """The largest of the series lies this many ISO sizes above the smallest."""
    phases: Annotated[tuple[Phase, ...], at_most("phases"), Fact("phase", Bears.MEANS)]
    schema_version: Annotated[
        Literal[1], NotTold("says how the file was written; what it says is told field by field")
    ] = 1
