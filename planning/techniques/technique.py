"""A technique is data: ordered phases, each of a known kind, limited to the settings it is for."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

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

    key: str
    title: str
    kind: PhaseKind
    why: str
    settings: tuple[Setting, ...] = ALL_SETTINGS
    from_size: int | None = None
    to_size: int | None = None
    """Last hand size of a TO_LENGTH phase; none means up to the final size."""
    to_estimate: bool = False
    """Works to the estimated length: before the length is known."""
    repeat_from: str | None = None
    most_passes: int | None = None
    expected_passes: int | None = None
    steps: int | None = None
    step_mm: float | None = None
    hold_point: str | None = None
    image: bool = False
    hold_point_in: tuple[Setting, ...] = ALL_SETTINGS
    """Settings in which a supervisor's sign-off is asked for at it; a programme may ask for it in all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Technique:
    """A technique as a programme keeps it."""

    key: str
    name: str
    says: str
    source: str
    know: str
    motions: tuple[Motion, ...]
    """Motions it is written for; an instrument of another motion is refused."""
    recapitulate_size: int
    recapitulate_with_final: bool
    """Step-back recapitulates with the final apical size instead of the small one."""
    series_above_glide_path: int
    """The smallest of the series lies this many ISO sizes above the last glide-path size."""
    series_sizes_up: int
    """The largest of the series lies this many ISO sizes above the smallest."""
    phases: tuple[Phase, ...]
    schema_version: int = 1
