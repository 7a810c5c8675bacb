"""What is expected of each step: how deep the instrument goes, how sure that is, and what it leaves behind.

An estimate for teaching. What the hand feels always wins.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Against = Literal["as_expected", "shorter", "longer"]
"""How a recorded depth compares with what was expected."""


def against(depth_mm: float, limits_mm: tuple[float, float]) -> Against:
    """How a recorded depth compares with its limits. Not with the band: one correct depth in five lies outside that."""
    least, most = limits_mm
    if depth_mm < least:
        return "shorter"
    return "longer" if depth_mm > most else "as_expected"


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalWidth:
    """The canal before anything has been in it, at one depth."""

    from_reference_mm: float
    narrow_mm: float
    """The narrow diameter: it is what binds an instrument."""
    wide_mm: float
    """The diameter across the narrow one: a round instrument leaves a part of it untouched."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InitialShape:
    """The canal's widths from the orifice down to its end, and where they are from."""

    points: tuple[CanalWidth, ...]
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfilePoint:
    from_reference_mm: float
    diameter_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpectedStep:
    """One insertion of one instrument on the expected path."""

    node: str
    """The step in the run sheet."""
    pass_number: int
    """Which time the step is worked, from 1: in the descending series, the pass."""
    instrument: str
    depth_mm: float
    """Median of the estimate, from the reference point; the recorded depth where there is one."""
    low_mm: float | None
    """10 % of the samples stop short of this; none without samples or once recorded."""
    high_mm: float | None
    """90 % of the samples stop short of this."""
    reach_share: float | None
    """Share of the samples that reach the stop."""
    removes_mm3: float
    """Volume that this insertion takes off the wall: the part of its round shape that was not canal before."""
    shape: tuple[ProfilePoint, ...]
    """Outline of the canal after it, reference point side first."""
    felt: Against | None = None
    """How the recorded depth compares with what was expected just before it; none where nothing was recorded."""
    short_below_mm: float | None = None
    """A recorded depth less than this is shorter than expected; one correct depth in a hundred is. None without
    samples, once a depth is recorded, and in older plans."""
    deep_above_mm: float | None = None
    """The same for a depth greater than this, which is deeper than expected."""
    as_if_straight: bool = False
    """The canal is bent, and the estimate treats it as straight."""

    @property
    def limits_mm(self) -> tuple[float, float] | None:
        """The least and the greatest depth that count as expected; None where nothing is expected.

        Older plans have only the band, which then serves.
        """
        least = self.low_mm if self.short_below_mm is None else self.short_below_mm
        most = self.high_mm if self.deep_above_mm is None else self.deep_above_mm
        return None if least is None or most is None else (least, most)


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A recorded depth, and the band that it was expected in just before it was recorded."""

    node: str
    pass_number: int
    depth_mm: float
    low_mm: float
    high_mm: float
    felt: Against
    as_if_straight: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SeriesPasses:
    """How often the descending series is worked until its smallest is at length."""

    expected: int
    low: int | None
    high: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Expectation:
    """The contact-depth estimate of one canal."""

    initial_shape: InitialShape
    steps: tuple[ExpectedStep, ...]
    series_passes: SeriesPasses | None
    """None in a technique without a descending series."""
    makes_room: bool
    """A larger size is expected to be needed to make room."""
    samples: int
    few_agree: bool
    """Hardly any sample fits the recorded depths, so the bands are not to be relied on."""
    narrows: bool
    """The widths narrow towards the orifice somewhere, so load may fall with depth."""
    prepared: tuple[ProfilePoint, ...] = ()
    """Outline of the canal before the first of the steps, where instruments have been in it; else empty."""
